"""A raster of undulations as a grid of the core."""

import numpy as np
from qgis.core import Qgis, QgsRasterLayer, QgsRectangle

from ..core.errors import InputError
from ..core.undulations import Grid
from ..language.translation import tr

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
    north = extent.yMaximum() - first * step_lat
    window = QgsRectangle(extent.xMinimum(), extent.yMaximum() - last * step_lat, extent.xMaximum(), north)
    block = raster.dataProvider().block(1, window, raster.width(), last - first)
    if not block.isValid():
        raise InputError(tr("The geoid raster '{}' cannot be read.").format(layer.name()))
    return _grid_of(block, extent.xMinimum() + 0.5 * step_lon, north - 0.5 * step_lat, step_lon, step_lat)


def _grid_of(block, west, north, step_lon, step_lat):

    block.convert(Qgis.DataType.Float64)
    values = np.frombuffer(bytes(block.data()), dtype=np.float64).reshape(block.height(), block.width()).copy()
    if block.hasNoDataValue():
        values[values == block.noDataValue()] = np.nan
    return Grid(values, west, north, step_lon, step_lat)
