"""The map of a review report: stations styled by status over imagery, in a layout of the host; works in any thread."""

import numpy as np
from qgis.core import (
    QgsCoordinateReferenceSystem,
    QgsCoordinateTransform,
    QgsLayoutExporter,
    QgsLayoutItemMap,
    QgsLayoutItemPicture,
    QgsLayoutItemScaleBar,
    QgsLayoutPoint,
    QgsLayoutSize,
    QgsPointXY,
    QgsPrintLayout,
    QgsProject,
    QgsPropertyCollection,
    QgsRectangle,
    QgsTextFormat,
    QgsUnitTypes,
)
from qgis.PyQt.QtCore import QBuffer, QByteArray, QIODevice, QSize
from qgis.PyQt.QtGui import QColor, QFont

from ..boundary.reference_systems import definition
from ..core.errors import InputError
from ..core.exaggeration import round_number
from ..core.geodesy import ellipsoid_of
from ..language.translation import tr
from .map_layers import axis_layer, imagery_layer, stations_layer

MM = QgsUnitTypes.LayoutUnit.LayoutMillimeters
_DISTANCE = QgsUnitTypes.DistanceUnit
NORTH = ":/images/north_arrows/layout_default_north_arrow.svg"
_CORNERS = ((False, False), (True, False), (False, True), (True, True))  # right, top
_NARROW = 100.0  # millimetres
SCREEN = (150.0, 220)  # width of the screen's map in millimetres, and its dots per inch


class ReportMap:
    """Layers and extent of the map; one object per run, used in the thread that made it."""

    def __init__(self, found, axis_source, imagery, asked):
        one = found.reviewed
        self.project = QgsProject()
        self.units = one.units
        stations = stations_layer(found)
        self.imagery = imagery_layer(imagery)
        crs = _map_crs(one.points, self.imagery)
        self.project.setCrs(crs)
        self.project.setEllipsoid(one.points.crs.ellipsoidAcronym())
        self.axis = axis_layer(axis_source, crs, self.project)
        self.layers = [layer for layer in (stations, self.axis, self.imagery) if layer is not None]
        self.stations = stations
        self.places = _places(one, crs, self.project)
        self.extent = _extent(self.places, crs)
        if self.imagery is not None and not self._covers(asked):
            self.layers.remove(self.imagery)
            self.imagery = None

    def _covers(self, asked):
        there = QgsCoordinateTransform(self.imagery.crs(), self.project.crs(), self.project)
        if there.transformBoundingBox(self.imagery.extent()).intersects(self.extent):
            return True
        asked.warn(
            tr("The imagery '{}' does not cover the stations, so the map has no background.").format(
                self.imagery.name()
            )
        )
        return False

    def height(self, width, most):
        """Height of a map of this width, as the structure's shape asks for, at most ``most``."""
        shape = self.extent.height() / self.extent.width()
        return min(max(width * shape, 0.42 * width), most)

    def place(self, layout, page, x, y, width, height):
        """Put map, scale bar and north arrow on a page; millimetres."""
        item = QgsLayoutItemMap(layout)
        layout.addLayoutItem(item)
        # The oldest host makes the extent of an item without a size NaN: first the size, then the extent.
        _place(item, page, x, y, width, height)
        item.setLayers(self.layers)
        item.setCrs(self.project.crs())
        item.setExtent(_with_shape(self.extent, width / height))
        item.setBackgroundColor(QColor("#ececf0"))
        item.setFrameEnabled(True)
        item.setFrameStrokeColor(QColor("#45454d"))
        bar, arrow = self._corners(item.extent(), width, height)
        self._scale_bar(layout, item, page, (x, y, width, height), bar)
        north = QgsLayoutItemPicture(layout)
        layout.addLayoutItem(north)
        _place(north, page, *_in_corner(x, y, width, height, arrow, 10.0, 13.0), 10.0, 13.0)
        _grounded(north)
        north.setPicturePath(NORTH)
        north.setLinkedMap(item)
        north.setNorthMode(QgsLayoutItemPicture.NorthMode.TrueNorth)

    def _corners(self, extent, width, height):
        """Corners (right, top) of scale bar and arrow: where the fewest stations are, never the same."""
        x = (self.places[0] - extent.xMinimum()) / extent.width() * width
        y = (self.places[1] - extent.yMinimum()) / extent.height() * height

        def covered(corner, wide, high):
            right, top = corner
            return int(np.sum((x > width - wide if right else x < wide) & (y > height - high if top else y < high)))

        bar = min(_CORNERS, key=lambda corner: covered(corner, 58.0, 18.0))
        return bar, min(
            (corner for corner in _CORNERS[::-1] if corner != bar), key=lambda corner: covered(corner, 18.0, 20.0)
        )

    def _scale_bar(self, layout, item, page, frame, corner):
        x, y, width, height = frame
        feet = self.units.chainage_name != "metre"
        unit = self.project.crs().mapUnits()
        ground = item.extent().width() * QgsUnitTypes.fromUnitToUnitFactor(unit, _DISTANCE.DistanceMeters)
        half = round_number(ground / (0.3048 if feet else 1.0) * 0.14)
        kilo = not feet and half >= 1000
        bar = QgsLayoutItemScaleBar(layout)
        layout.addLayoutItem(bar)
        bar.setStyle("Single Box")
        bar.setLinkedMap(item)
        bar.setUnits(
            _DISTANCE.DistanceFeet if feet else _DISTANCE.DistanceKilometers if kilo else _DISTANCE.DistanceMeters
        )
        bar.setUnitLabel("ft" if feet else "km" if kilo else "m")
        # The numbers of a short bar would run into each other.
        parts = 1 if width < _NARROW else 2
        bar.setNumberOfSegments(parts)
        bar.setNumberOfSegmentsLeft(0)
        bar.setUnitsPerSegment(2.0 / parts * (half / 1000.0 if kilo else half))
        bar.setHeight(2.0)
        form = QgsTextFormat()
        form.setFont(QFont("DejaVu Sans"))
        form.setSize(8.0)
        bar.setTextFormat(form)
        _grounded(bar)
        # Its box asks for what it needs; what is given here is the least.
        _place(bar, page, x, y, 20.0, 11.0)
        wide = bar.sizeWithUnits().width()
        _place(bar, page, *_in_corner(x, y, width, height, corner, wide, 11.0), wide, 11.0)

    def image(self):
        """The map for the screen: (bytes, kind)."""
        width, dpi = SCREEN
        kind = "JPG" if self.imagery is not None else "PNG"
        return self.rendered(width, self.height(width, 150.0), dpi, kind), "jpeg" if kind == "JPG" else "png"

    def rendered(self, width, height, dpi, kind="PNG"):
        """The map as the bytes of a picture of ``kind``; millimetres, dots per inch."""
        layout = QgsPrintLayout(self.project)
        layout.initializeDefaults()
        layout.pageCollection().page(0).setPageSize(QgsLayoutSize(width + 0.6, height + 0.6, MM))
        self.place(layout, 0, 0.3, 0.3, width, height)
        picture = QgsLayoutExporter(layout).renderPageToImage(0, QSize(), dpi)
        if picture.isNull():
            raise InputError(tr("The map could not be drawn."))
        return _encoded(picture, kind)

    def legend(self):
        """(text, PNG bytes) of every look on the map."""
        entries = []
        for item in self.stations.renderer().legendSymbolItems():
            if item.symbol() is not None and item.label() != tr("Other"):
                entries.append((item.label(), _encoded(_symbol(item.symbol()), "PNG")))
        return tuple(entries)


def _symbol(symbol):
    large = symbol.clone()
    for part in large.symbolLayers():
        part.setDataDefinedProperties(QgsPropertyCollection())  # sizes by residual, which a legend has none of
    large.setSize(40.0 / 3.78)
    return large.asImage(QSize(64, 64))


def _place(item, page, x, y, width, height):
    item.attemptResize(QgsLayoutSize(width, height, MM))
    item.attemptMove(QgsLayoutPoint(x, y, MM), True, False, page)
    return item


def _grounded(item):
    """A light ground under scale bar and arrow, which imagery would swallow."""
    item.setBackgroundEnabled(True)
    item.setBackgroundColor(QColor(255, 255, 255, 215))


def _encoded(image, kind):
    data = QByteArray()
    buffer = QBuffer(data)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    image.save(buffer, kind, 86 if kind == "JPG" else -1)
    buffer.close()
    return bytes(data)


def _map_crs(points, imagery):
    """That of the stations, or where it is in degrees that of the imagery, or a transverse Mercator about
    the stations.
    """
    if not points.crs.isGeographic():
        return points.crs
    if imagery is not None and not imagery.crs().isGeographic():
        return imagery.crs()
    ellipsoid = ellipsoid_of(definition(points.crs))
    lat, lon = float(np.median(points.lat)), float(np.median(points.lon))
    return (
        QgsCoordinateReferenceSystem.fromProj(
            f"+proj=tmerc +lat_0={lat:.6f} +lon_0={lon:.6f} +k=1 +x_0=0 +y_0=0 +a={ellipsoid.a:.10g} "
            f"+rf={1.0 / ellipsoid.f:.12g} +units=m "
            "+no_defs"
        )
        if ellipsoid.f
        else points.crs
    )


def _in_corner(x, y, width, height, corner, wide, high):
    """Upper left corner of something that is to stand in a corner of a frame, 2 mm off its sides."""
    right, top = corner
    return x + width - wide - 2.0 if right else x + 2.0, y + 2.0 if top else y + height - high - 2.0


def _places(one, crs, project):
    """Map coordinates (x, y) of the stations on an axis, of all where there are none."""
    there = QgsCoordinateTransform(one.points.crs, crs, project)
    on = one.order[one.status != "off axis"] if np.any(one.status != "off axis") else one.order
    places = [there.transform(QgsPointXY(float(one.points.x[k]), float(one.points.y[k]))) for k in on.tolist()]
    return np.array([at.x() for at in places]), np.array([at.y() for at in places])


def _extent(places, crs):
    x, y = places
    extent = QgsRectangle(float(x.min()), float(y.min()), float(x.max()), float(y.max()))
    size = max(extent.width(), extent.height(), 10.0 if not crs.isGeographic() else 1e-4)
    # Room about the structure for its labels, also where it runs along a side of the map.
    extent.grow(0.09 * size)
    return extent


def _with_shape(extent, shape):
    """``extent`` widened to ``shape``, width by height."""
    width = max(extent.width(), extent.height() * shape)
    return QgsRectangle.fromCenterAndSize(extent.center(), width, width / shape)
