"""What if: a straight line through two stations, or two points of the chart, tried over the heights; nothing is
written."""

from qgis.PyQt.QtCore import QObject, Qt, pyqtSignal
from qgis.PyQt.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton

from ...algorithms.core.errors import InputError
from ...algorithms.core.what_if import line_through
from ...algorithms.language.core_sentences import worded
from ...algorithms.language.translation import tr
from ...algorithms.structure.what_if_places import LayerPlaces
from ...algorithms.styles.palette import INK, NOTICE
from .. import toolbox
from ..review.station_texts import what_if_sentence, what_if_story

DESIGN = "tautline:designheights"


class WhatIfBar(QFrame):
    """Stands over the chart while a line is tried: that nothing is written, what is asked next, and the way out."""

    def __init__(self, parent=None):
        super().__init__(parent)
        self.setObjectName("tautline_what_if")
        self.setStyleSheet(f"#tautline_what_if, #tautline_what_if QLabel {{background: {NOTICE.dark}; color: {INK};}}")
        row = QHBoxLayout(self)
        row.setContentsMargins(8, 3, 8, 3)
        self.text = QLabel(self)
        self.text.setTextFormat(Qt.TextFormat.PlainText)
        self.text.setWordWrap(True)
        # Room for two lines from the start: the chart must not jump while the text changes.
        self.text.setMinimumHeight(2 * self.text.fontMetrics().lineSpacing())
        self.text.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.use = QPushButton(tr("Use as design…"), self)
        self.use.setToolTip(tr("Open the form of 'Design heights and residuals' with this line as its chord."))
        self.leave = QPushButton(tr("Leave"), self)
        self.leave.setToolTip(tr("Take the line away (Esc)."))
        row.addWidget(self.text, 1)
        row.addWidget(self.use)
        row.addWidget(self.leave)
        self.hide()


class WhatIf(QObject):
    """The line that is tried on the axis shown: first one point, then the other, which follows the pointer until it is
    chosen. ``dock``: the profile dock, whose subject gives the stations and whose chart shows the line.
    """

    design_wanted = pyqtSignal(object, object, str)

    def __init__(self, dock):
        super().__init__(dock)
        self.dock, self.bar = dock, WhatIfBar(dock)
        self.active, self.line, self.points, self._features = False, None, [], []
        self._places = self._of = self._axis = self._before = self._layer_places = None
        self.bar.leave.clicked.connect(lambda: self.leave())
        self.bar.use.clicked.connect(lambda: self.hand_over())

    # --- beginning and end

    def start(self):
        """Begin; where exactly two stations of the axis are selected, with the line through them."""
        if self.active or self.dock.chart.shown is None:
            return
        chosen = self.dock.chart.chosen
        self.active, self._before = True, self.dock.chart.ranges
        self._begin()
        if len(chosen) == 2:
            for place in chosen.tolist():
                self.pick(place)
        self.dock.chart.setFocus()

    def leave(self):
        """Take the line away and show what was shown before."""
        if not self.active:
            return
        before, self._before = self._before, None
        self.active, self.line, self.points, self._features = False, None, [], []
        self.bar.hide()
        self.dock.chart.lay_over(None)
        if before is not None and self._axis == self.dock.axis:
            self.dock.chart.set_ranges(before)
        self.dock.what_if_left()

    def _begin(self):
        self.line, self.points, self._features, self._axis = None, [], [], self.dock.axis
        self.dock.chart.lay_over(None)
        self._tell()
        self.bar.show()

    def shown_anew(self):
        """The axis, the view or the stations have changed: the same points again where it is the same axis."""
        if not self.active:
            return
        if self.dock.chart.shown is None or not self.dock.chart.shown.profile.has_design:
            self._before = None
            self.leave()
            return
        known = not self.points or self._of is self.dock.subject.stations
        if self._axis != self.dock.axis or not (known or self._chosen_again()):
            self._before = None
            self._begin()
            return
        self._lay()
        if not known:
            self._tell()

    def _chosen_again(self):
        """Choose the same points of stations that were read anew; return whether all of them are still there."""
        try:
            places = self._axis_places()
            points = [
                places.point(point.chainage, point.height)
                if feature is None
                else places.station(self._place_of(feature))
                for point, feature in zip(self.points, self._features)
            ]
            line = line_through(places, *points) if len(points) == 2 else None
        except (InputError, LookupError):
            return False
        self.points, self.line = points, line
        return True

    def _feature(self, place):
        """What tells a station of the axis from all others, also after the layer was read anew: id and name."""
        stations, row = self.dock.subject.stations, self.dock.rows[place]
        return int(stations.ids[row]), stations.station[row]

    def _place_of(self, feature):
        """Place on the axis of the station that ``_feature`` tells; LookupError where it is gone."""
        ids = self.dock.subject.stations.ids[self.dock.rows].tolist()
        place = ids.index(feature[0]) if feature[0] in ids else -1
        if place < 0 or self._feature(place) != feature:
            raise LookupError(feature)
        return place

    # --- choosing

    def pick(self, place, at=None):
        """Take a station of the chart, or with ``at`` (chainage and height as shown) that very point; a third point
        begins anew. Return whether it could be taken; why not is told over the chart."""
        try:
            point = self._point(place, at)
            if point is None:
                return False
            if len(self.points) == 2:
                self._begin()
            if self.points:
                self.line = line_through(self._axis_places(), self.points[0], point)
            self.points.append(point)
            self._features.append(None if at is not None else self._feature(place))
        except InputError as error:
            self._tell(worded(error, self.dock.chart.shown.station_at))
            return False
        self._lay()
        if len(self.points) == 2:
            self.dock.chart.make_room(self.dock.chart.over)
        self._tell()
        return True

    def point_at(self, place):
        """The second point follows the pointer until it is chosen; return the story of a station, '' for none."""
        if not self.active:
            return ""
        if len(self.points) == 1 and place >= 0:
            try:
                self.line = line_through(self._axis_places(), self.points[0], self._axis_places().station(place))
            except InputError:
                self.line = None
            self._lay()
            self._tell()
        if self.line is None or place < 0:
            return ""
        shown = self.dock.chart.shown
        return what_if_story(
            self.line, place, self._axis_places().height[place], shown.station[place], shown.height_unit
        )

    def _point(self, place, at):
        if at is not None:
            return self._axis_places().point(*self.dock.chart.shown.place_of(*at))
        return self._axis_places().station(place) if place >= 0 else None

    def _axis_places(self):
        """The core's places of the stations shown; the layer's are read once until it changes."""
        subject, rows = self.dock.subject, self.dock.rows
        stations = subject.stations
        if self._of is not stations:
            self._layer_places = LayerPlaces(
                toolbox.entry(DESIGN), subject.layer, stations.record, stations.ids, stations.x, stations.y
            )
            self._of, self._places = stations, None
        if self._places is None or self._places[0] is not rows:
            profile = self.dock.chart.shown.profile
            self._places = (rows, self._layer_places.profile(rows, profile.chainage, profile.built))
        return self._places[1]

    # --- showing

    def _lay(self):
        shown = self.dock.chart.shown
        self.dock.chart.lay_over(shown.overlay(self.line, self.points) if self.line or self.points else None)

    def _tell(self, refusal=""):
        shown, record = self.dock.chart.shown, self.dock.subject.stations.record
        self.bar.text.setText(
            what_if_sentence(self.line, self.points, shown.station_at, shown.height_unit, record.height_system, refusal)
        )
        self.bar.text.setToolTip(self._layer_places.described if self._of is not None else "")
        self.bar.use.setEnabled(len(self.points) == 2)

    def hand_over(self):
        """Ask for the form of the design with this line as its chord."""
        if len(self.points) == 2 and self.line is not None:
            self.design_wanted.emit(self.dock.subject.layer, self.line.controls, self.dock.axis)
