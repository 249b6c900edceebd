"""Sizes of point symbols: by the map's scale, and by the greatest value of a layer."""


def zoomed(size):
    """The expression of a ``size``, millimetres at 1:5,000, as it shrinks towards 1:30,000."""
    return f"({size}) * scale_linear(coalesce(@map_scale, 5000), 5000, 30000, 1, 0.68)"


def greatest(layer, name):
    """The greatest of the values in a field of a layer without their signs; 0 where there is none."""
    index = layer.fields().indexOf(name)
    extremes = (layer.minimumValue(index), layer.maximumValue(index)) if index >= 0 else ()
    return max((abs(value) for value in extremes if isinstance(value, (int, float))), default=0.0)
