"""The map's side of the link: marks on stations, pointing at one in the map, and going there."""

import numpy as np
from qgis.core import QgsCoordinateTransform, QgsCsException, QgsPointXY, QgsProject, QgsRectangle
from qgis.gui import QgsVertexMarker
from qgis.PyQt.QtCore import QObject, pyqtSignal
from qgis.PyQt.QtGui import QColor

from ...algorithms.core.profile_views import nearest
from ...algorithms.styles.palette import CHOSEN, INK, PAPER

# Pixels on the map within which a station is pointed at.
REACH = 12
_CURRENT, _POINTED, _INK = QColor(CHOSEN.dark), QColor(PAPER), QColor(INK)


class MapLink(QObject):
    """Marks the current and the pointed-at station of a Subject on the map canvas."""

    hovered = pyqtSignal(int)

    def __init__(self, canvas, subject, parent=None):
        super().__init__(parent)
        self.canvas, self.subject, self.active = canvas, subject, False
        self._marks = {
            "current": [self._ring(22, _INK, 6), self._ring(22, _CURRENT, 3)],
            "hover": [self._ring(16, _INK, 5), self._ring(16, _POINTED, 2)],
        }
        self._hover = -1
        canvas.xyCoordinates.connect(self._pointed)
        canvas.destinationCrsChanged.connect(self.refresh)
        for signal in (subject.changed, subject.current_changed):
            signal.connect(self.refresh)

    def close(self):
        """Take the marks off the map and let go of it."""
        self.canvas.xyCoordinates.disconnect(self._pointed)
        self.canvas.destinationCrsChanged.disconnect(self.refresh)
        for marks in self._marks.values():
            for mark in marks:
                self.canvas.scene().removeItem(mark)
        self._marks = {}
        self.deleteLater()

    def _ring(self, size, colour, width):
        mark = QgsVertexMarker(self.canvas)
        mark.setIconType(QgsVertexMarker.IconType.ICON_CIRCLE)
        mark.setIconSize(size)
        mark.setColor(colour)
        mark.setFillColor(QColor(0, 0, 0, 0))
        mark.setPenWidth(width)
        mark.hide()
        return mark

    def set_active(self, active):
        """Marks are on the map only while a dock that needs them is to be seen."""
        self.active = active
        self.refresh()

    def refresh(self, *_):
        self._put("current", self.subject.current)
        self._put("hover", -1)

    def point_at(self, row):
        """Mark a station as pointed at; -1 takes the mark away."""
        self._put("hover", row)

    def marked(self, name):
        """Where the mark 'current' or 'hover' stands on the map (QgsPointXY), None where it is hidden."""
        mark = self._marks[name][1]
        return mark.center() if mark.isVisible() else None

    def _put(self, name, row):
        place = self.place(row) if self.active else None
        for mark in self._marks.get(name, ()):
            if place is not None:
                mark.setCenter(place)
            mark.setVisible(place is not None)

    # --- places

    def _transform(self, back=False):
        """From the layer to the map, or ``back``."""
        systems = (self.subject.layer.crs(), self.canvas.mapSettings().destinationCrs())
        return QgsCoordinateTransform(*(reversed(systems) if back else systems), QgsProject.instance())

    def place(self, row):
        """Where a station is on the map; None where there is none or it cannot be shown."""
        stations = self.subject.stations
        if stations is None or not 0 <= row < len(stations) or not np.isfinite(stations.x[row]):
            return None
        try:
            return self._transform().transform(QgsPointXY(float(stations.x[row]), float(stations.y[row])))
        except QgsCsException:
            return None

    def _pointed(self, point):
        row = self.row_at(point) if self.active else -1
        if row != self._hover:
            self._hover = row
            self.hovered.emit(row)

    def row_at(self, point):
        """Row of the station at a point of the map, -1 where none is near."""
        stations = self.subject.stations
        if stations is None or not len(stations):
            return -1
        reach = REACH * self.canvas.mapUnitsPerPixel()
        try:
            box = self._transform(back=True).transformBoundingBox(
                QgsRectangle(point.x() - reach, point.y() - reach, point.x() + reach, point.y() + reach)
            )
        except QgsCsException:
            return -1
        near = np.flatnonzero(
            (stations.x >= box.xMinimum())
            & (stations.x <= box.xMaximum())
            & (stations.y >= box.yMinimum())
            & (stations.y <= box.yMaximum())
        )
        if not len(near):
            return -1
        scale = max(box.width(), 1e-300), max(box.height(), 1e-300)
        found = nearest(
            stations.x[near] / scale[0],
            stations.y[near] / scale[1],
            box.center().x() / scale[0],
            box.center().y() / scale[1],
        )
        return int(near[found])

    # --- going there

    def show(self, row):
        """Move the map, not its scale, so that a station is well inside; do nothing where it is already."""
        place = self.place(row)
        if place is None:
            return
        inside = QgsRectangle(self.canvas.extent())
        inside.scale(0.8)
        if not inside.contains(place):
            self.canvas.setCenter(place)
            self.canvas.refresh()

    def zoom_to(self, rows):
        """Zoom the map to stations; to one alone so that its neighbours are seen too."""
        places = [place for place in map(self.place, np.asarray(rows, int)[:10000].tolist()) if place is not None]
        if not places:
            return
        extent = QgsRectangle(places[0], places[0])
        for place in places[1:]:
            extent.include(place)
        neighbours = self._spacing(int(np.asarray(rows, int)[0]))
        extent.grow(max(0.1 * max(extent.width(), extent.height()), neighbours))
        self.canvas.setExtent(extent)
        self.canvas.refresh()

    def _spacing(self, row):
        """Distance on the map that takes in a few neighbours of a station."""
        here = self.place(row)
        others = [self.place(other) for other in (row - 3, row + 3)]
        known = [place.distance(here) for place in others if place is not None and here is not None]
        return (
            max(min(known), 60 * self.canvas.mapUnitsPerPixel() * 1e-6)
            if known
            else 100 * self.canvas.mapUnitsPerPixel()
        )
