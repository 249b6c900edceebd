"""A raster of undulations as a grid of the core."""

import numpy as np
from qgis.core import Qgis, QgsRasterLayer, QgsRectangle

from ..core.errors import InputError
from ..core.input_record import InputRecord, fingerprint
from ..core.undulations import Grid
from ..language.translation import tr
from .readings import note

# Rows around the stations: the margin of a smooth grid's tile and the tile itself.
_AROUND = 80


def raster_grid(layer, lat, lon):
    """Undulations of a raster layer around stations at lat, lon degrees, as a core Grid; metres.

    Opened anew from its source, since a layer of the project lives in another thread. InputError where the raster is
    not in latitude and longitude or cannot be read.
    """

    raster = QgsRasterLayer(layer.source(), layer.name(), layer.providerType())
    if not raster.isValid() or raster.width() < 2 or raster.height() < 2:
        raise InputError(tr("The geoid raster '{}' cannot be read.").format(layer.name()))
    if not raster.crs().isGeographic():
        raise InputError(tr("The geoid raster '{}' is not in latitude and longitude.").format(layer.name()))
    extent, step_lon = raster.extent(), raster.extent().width() / raster.width()
    step_lat = extent.height() / raster.height()
    first, last = 0, raster.height()
    if raster.width() * raster.height() > 2_000_000:
        # A fine global grid does not fit the memory; the rows of the stations and some around them do.
        first = int(np.clip((extent.yMaximum() - np.max(lat)) / step_lat - _AROUND, 0, last - 2))
        last = int(np.clip((extent.yMaximum() - np.min(lat)) / step_lat + _AROUND + 1, first + 2, last))
    values = _values(raster, first, last)
    note(layer, _reading(values, first, last))
    north = extent.yMaximum() - first * step_lat
    return Grid(values, extent.xMinimum() + 0.5 * step_lon, north - 0.5 * step_lat, step_lon, step_lat)


def _values(raster, first, last):
    """Cells of the rows from ``first`` up to before ``last``, NaN where there is no value; InputError where they cannot
    be read."""
    extent, step = raster.extent(), raster.extent().height() / raster.height()
    window = QgsRectangle(
        extent.xMinimum(), extent.yMaximum() - last * step, extent.xMaximum(), extent.yMaximum() - first * step
    )
    block = raster.dataProvider().block(1, window, raster.width(), last - first)
    if not block.isValid():
        raise InputError(tr("The geoid raster '{}' cannot be read.").format(raster.name()))
    block.convert(Qgis.DataType.Float64)
    values = np.frombuffer(bytes(block.data()), dtype=np.float64).reshape(block.height(), block.width()).copy()
    if block.hasNoDataValue():
        values[values == block.noDataValue()] = np.nan
    return values


def _reading(values, first, last):
    return InputRecord(rows=last - first, shape="raster", window=(first, last), hash=fingerprint([values]))


def read_window(layer, first, last):
    """What there is to be read of some rows of a raster: InputRecord; InputError where it cannot be read or is
    smaller."""
    raster = QgsRasterLayer(layer.source(), layer.name(), layer.providerType())
    if not raster.isValid() or not 0 <= first < last <= raster.height():
        raise InputError(tr("The geoid raster '{}' cannot be read.").format(layer.name()))
    return _reading(_values(raster, first, last), first, last)
