"""What a run says of its axes as they were drawn: how sure the shift between the datums is, where a drawn line is no
geodesic (method page 2), and which fields of the layer are not read."""

from ..boundary.input_fields import field_indices
from ..language.number_text import listed, number_text
from ..language.translation import tr

# A shift stated worse than this, and a line drawn farther than this from the geodesic, are told; metres.
TOLD_FROM = 1.0
_MOST = 10
# Fields that no other layer is likely to have, as it may have a slope or a tolerance.
_OURS = ("chain_0", "chain_h", "chain_a", "chain_b", "height_a", "height_b")


def tell_axes(asked, axes, source, datum=""):
    """Warn of ``axes`` (list of boundary.axes.AxisRow) of ``source``; ``datum``: name of that of the stations."""
    shift = max((axis.shift for axis in axes if axis.shift > TOLD_FROM), default=0.0)
    if shift:
        asked.warn(
            tr(
                "Layer '{}': the shift to the datum of the stations, {}, is good to {} m only, as PROJ states it; the "
                "axes may lie that much beside the stations."
            ).format(source.sourceName(), datum, number_text(shift, 1))
        )
    away = [axis for axis in axes if axis.departure > TOLD_FROM]
    for axis in away[:_MOST]:
        asked.warn(
            tr(
                "Axis '{}': the line as drawn departs by up to {} m from the geodesics between its vertices, which are "
                "the axis here; where the drawn line is meant, give it more vertices."
            ).format(axis.line.name, number_text(axis.departure, 1))
        )
    if len(away) > _MOST:
        asked.warn(
            tr("{} more axes are drawn by more than 1 m beside the geodesics between their vertices.").format(
                len(away) - _MOST
            )
        )
    names = field_indices(source)
    unread = [] if "design" in names else [f"'{name}'" for name in _OURS if name in names]
    if unread:
        asked.warn(
            tr("Layer '{}' has {} and no field 'design', without which none of these counts; it may be empty.").format(
                source.sourceName(), listed(unread, len(unread))
            ),
            keys=("AXIS",),
        )
