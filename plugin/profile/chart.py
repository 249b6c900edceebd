"""The chart as a widget: hover, click, rubber band, wheel and keys. What lies on top is drawn by copying the rest."""

from dataclasses import replace

import numpy as np
from matplotlib.backends.backend_qtagg import FigureCanvasQTAgg
from matplotlib.figure import Figure
from matplotlib.patches import Rectangle
from qgis.PyQt.QtCore import Qt, pyqtSignal
from qgis.PyQt.QtWidgets import QSizePolicy

from ...algorithms.core.profile_views import nearest, thinned, within_box
from ...algorithms.language.translation import tr
from .axis_view import Ranges
from .colours import look_of
from .drawing import PIECES, Drawing
from .line_chart import inside_line
from .tried_line import TriedLine

# Pixels of the screen: what is still a click, and how far from a station one may point at it.
CLICK, REACH = 5, 40
_WHEEL = 1.25


class ProfileCanvas(FigureCanvasQTAgg):
    """Shows one axis. Rows in its signals are places in the ``AxisView`` it was given; -1 is none."""

    hovered = pyqtSignal(int)
    picked = pyqtSignal(int, bool)
    boxed = pyqtSignal(object, bool)
    opened = pyqtSignal(int)
    stepped = pyqtSignal(int)
    ranges_changed = pyqtSignal()
    escaped = pyqtSignal()
    # The host's widget sends events before this one is made.
    drawing = None

    def __init__(self, parent, pattern):
        """``pattern``: a widget whose colours the chart takes; the canvas itself is white whatever the theme."""
        super().__init__(Figure(dpi=96))
        self.setParent(parent)
        self.pattern = pattern
        self.setObjectName("tautline_chart")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(320, 240)
        self.setAccessibleName(tr("Profile chart"))
        self.setAccessibleDescription(
            tr(
                "Left and right arrows step from station to station, Page Up and Page Down by ten, Home and End to the "
                "ends. Space selects the current station, with Ctrl or Shift one more. Enter zooms the map to it, plus "
                "and minus zoom the chart."
            )
        )
        self.drawing = Drawing(self.figure, self._look())
        self.ranges = Ranges((0.0, 1.0), (0.0, 1.0), (0.0, 1.0))
        self.current, self.hover, self.chosen = -1, -1, np.zeros(0, int)
        self._ground, self._press, self._corner = None, None, None
        # A line that is tried over the heights, and where the last click was in the upper chart.
        self.over, self.clicked_at, self._pointing = None, None, False
        for name, slot in (
            ("draw_event", self._keep_ground),
            ("motion_notify_event", self._moved),
            ("button_press_event", self._pressed),
            ("button_release_event", self._released),
            ("scroll_event", self._scrolled),
            ("figure_leave_event", lambda _event: self._set_hover(-1)),
        ):
            self.mpl_connect(name, slot)

    def sizeHint(self):  # noqa: N802 - the host's name
        """No larger than needed: where the dock is low, the page around is scrolled before the chart is."""
        return self.minimumSize()

    def _look(self):
        # Only now does the pattern have the colours of the theme's style sheet.
        self.pattern.ensurePolished()
        points = self.font().pointSizeF()
        # Logical inches, so that the chart's text is as large as the window's.
        return look_of(self.pattern.palette(), (points if points > 0 else 9.0) * self.logicalDpiX() / 96.0)

    def restyle(self):
        """Take the colours and the text size of the window as they are now."""
        if self.shown is not None:
            self.show_axis(self.shown, self.ranges)

    @property
    def shown(self):
        return self.drawing.shown if self.drawing is not None else None

    # --- what is shown

    def show_axis(self, shown, ranges):
        """Draw one axis in the given ranges."""
        self.ranges, self.hover, self._press = ranges, -1, None
        self.drawing.draw(shown, ranges, self._look())
        self._make_overlay()
        self.draw_idle()
        self.ranges_changed.emit()

    def set_ranges(self, ranges):
        """Show other ranges of the same axis."""
        if self.shown is not None and ranges != self.ranges:
            self.show_axis(self.shown, ranges)

    def set_factor(self, factor):
        """Exaggerate heights ``factor`` times."""
        if self.drawing.factor is not None:
            self.set_ranges(self.drawing.at_factor(self.ranges, factor))

    def mark(self, current=None, chosen=None, hover=None):
        """Mark the current, the selected and the pointed-at stations; None leaves each as it is."""
        self.current = self.current if current is None else current
        self.chosen = self.chosen if chosen is None else chosen
        self.hover = self.hover if hover is None else hover
        self._draw_overlay()

    def lay_over(self, over):
        """Lay an Overlay over the heights, in place of the one before; None takes it away."""
        begins_or_ends, self.over = (over is None) != (self.over is None), over
        if begins_or_ends and self.shown is not None:
            # The legend lies in what is copied: drawing it takes longer than all that moves.
            self._tried.show_legend(over is not None)
            self.draw_idle()
        elif not self._pointing:
            self._draw_overlay()

    def make_room(self, over):
        """Show greater heights where an Overlay needs them."""
        self.set_ranges(self.shown.with_room(self.ranges, over))

    def bring_into_view(self, row):
        """Move the chainages shown so that a station is among them, and clear of the edges."""
        if self.shown is None or not 0 <= row < len(self.drawing.x):
            return
        (low, high), at = self.ranges.x, float(self.drawing.x[row])
        if not low <= at <= high:
            half = 0.5 * (high - low)
            self.set_ranges(replace(self.ranges, x=(at - half, at + half)))

    def resizeEvent(self, event):  # noqa: N802 - the host's name
        super().resizeEvent(event)
        if self.shown is not None:
            self.drawing.place()
            self.ranges_changed.emit()

    # --- what lies on top

    def _make_overlay(self):
        """Artists that are drawn again at every move; they lie on a copy of all the rest."""
        look = self.drawing.look
        self._over = []
        for chart in self.drawing.charts:
            y = self._heights_in(chart)
            ring = {"linestyle": "none", "marker": "o", "markerfacecolor": "none", "animated": True}
            (chosen,) = chart.plot([], [], markersize=9, markeredgecolor=look.chosen, markeredgewidth=1.6, **ring)
            (current,) = chart.plot([], [], markersize=13, markeredgecolor=look.chosen, markeredgewidth=2.0, **ring)
            (hover,) = chart.plot([], [], markersize=11, markeredgecolor=look.text, markeredgewidth=1.2, **ring)
            line = chart.axvline(0.0, color=look.faint, linewidth=0.9, animated=True)
            at = chart.axvline(0.0, color=look.chosen, linewidth=1.0, alpha=0.6, animated=True)
            box = Rectangle((0, 0), 0, 0, facecolor=look.chosen, edgecolor=look.chosen, alpha=0.25, animated=True)
            chart.add_patch(box)
            self._over.append((chart, y, chosen, current, hover, line, at, box))
        self._tried = TriedLine(self.drawing.upper, look)
        self._tried.show_legend(self.over is not None)

    def _heights_in(self, chart):
        """What the stations are drawn at in one of the charts (n,)."""
        if chart is self.drawing.upper:
            return self.drawing.built
        if chart is self.drawing.line:
            return inside_line(self.drawing.lateral, self.ranges)
        low, high = self.ranges.r
        return np.clip(self.drawing.residual, low + 0.03 * (high - low), high - 0.03 * (high - low))

    def _keep_ground(self, _event):
        self._ground = self.copy_from_bbox(self.figure.bbox)
        self._paint_overlay()

    def _draw_overlay(self):
        if self._ground is None or self.shown is None:
            return
        self.restore_region(self._ground)
        self._paint_overlay()
        self.blit(self.figure.bbox)

    def _paint_overlay(self):
        if self.shown is None:
            return
        x, count = self.drawing.x, len(self.drawing.x)
        chosen = self.chosen[self.chosen != self.current]
        chosen = chosen[thinned(x[chosen], np.zeros(len(chosen)), *self.ranges.x, PIECES)] if len(chosen) else chosen
        for chart, y, rings, current, hover, line, at, box in self._over:
            if not chart.get_visible():
                continue
            rings.set_data(x[chosen], y[chosen])
            for artist, bar, row in ((current, at, self.current), (hover, line, self.hover)):
                there = 0 <= row < count
                artist.set_data(x[row : row + 1] if there else [], y[row : row + 1] if there else [])
                bar.set_xdata([x[row], x[row]] if there else [np.nan, np.nan])
            if chart is self.drawing.upper and self.over is not None:
                self._tried.paint(self.over, self.ranges.x)
            for artist in (at, line, rings, current, hover):
                chart.draw_artist(artist)
            if self._corner is not None and self._press[1] is chart:
                (x1, y1), (x2, y2) = self._press[2], self._corner
                box.set_bounds(min(x1, x2), min(y1, y2), abs(x2 - x1), abs(y2 - y1))
                chart.draw_artist(box)

    # --- pointing

    def _place_of(self, row, chart):
        """Pixels of a station in one of the charts."""
        y = self._heights_in(chart)
        return chart.transData.transform((self.drawing.x[row], y[row]))

    def station_at(self, event):
        """Row of the station nearest to a mouse event, -1 where none is near along the chart."""
        chart = event.inaxes
        if chart is None or self.shown is None:
            return -1
        y = self._heights_in(chart)
        (x1, x2), (y1, y2), box = chart.get_xlim(), chart.get_ylim(), chart.bbox
        across, up = box.width / (x2 - x1), box.height / (y2 - y1)
        # Along the chart counts more: one points at a chainage first.
        row = nearest(self.drawing.x * across, y * up, event.xdata * across, event.ydata * up, across=0.3)
        return (
            row
            if row >= 0 and abs(self.drawing.x[row] - event.xdata) * across <= REACH * self.devicePixelRatioF()
            else -1
        )

    def _set_hover(self, row):
        if row != self.hover:
            # Drawn once, with what those who hear of it lay over the heights.
            self.hover, self._pointing = row, True
            try:
                self.hovered.emit(row)
            finally:
                self._pointing = False
            self._draw_overlay()

    def _moved(self, event):
        if self._press is None:
            self._set_hover(self.station_at(event))
            return
        start, chart, corner, button = self._press
        if np.hypot(event.x - start[0], event.y - start[1]) < CLICK * self.devicePixelRatioF() and self._corner is None:
            return
        here = chart.transData.inverted().transform((event.x, event.y))
        if button == 1:
            self._corner = (float(here[0]), float(here[1]))
            self._draw_overlay()
        else:
            self._pan(corner[0] - float(here[0]))

    def _pan(self, shift):
        low, high = self.ranges.x
        start, chart, corner, button = self._press
        self.set_ranges(replace(self.ranges, x=(low + shift, high + shift)))
        self._press = (start, chart, corner, button)

    def _pressed(self, event):
        self.setFocus()
        if event.inaxes is None or self.shown is None:
            return
        if event.dblclick:
            self._press = None
            row = self.station_at(event)
            if row >= 0:
                self.opened.emit(row)
        elif int(event.button) in (1, 2):
            self._press = ((event.x, event.y), event.inaxes, (event.xdata, event.ydata), int(event.button))

    def _released(self, event):
        press, corner = self._press, self._corner
        self.clicked_at = press[2] if press is not None and press[1] is self.drawing.upper else None
        self._press = self._corner = None
        if press is None or press[3] != 1:
            return
        more = bool(
            event.guiEvent.modifiers() & (Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier)
        )
        if corner is None:
            self.picked.emit(self.station_at(event), more)
            return
        y = self._heights_in(press[1])
        self._draw_overlay()
        self.boxed.emit(np.flatnonzero(within_box(self.drawing.x, y, press[2], corner)), more)

    def _scrolled(self, event):
        if event.inaxes is None or self.shown is None:
            return
        factor = _WHEEL**-event.step
        if event.guiEvent.modifiers() & Qt.KeyboardModifier.ControlModifier:
            name = dict(zip(self.drawing.charts, "yrl"))[event.inaxes]
            (low, high), at = getattr(self.ranges, name), event.ydata
        else:
            (low, high), at, name = self.ranges.x, event.xdata, "x"
        self.set_ranges(replace(self.ranges, **{name: (at - (at - low) * factor, at + (high - at) * factor)}))

    def zoom(self, factor):
        """Show ``factor`` times the chainages, about the current station or the middle."""
        low, high = self.ranges.x
        there = 0 <= self.current < len(self.drawing.x)
        at = float(self.drawing.x[self.current]) if there else 0.5 * (low + high)
        at = at if low <= at <= high else 0.5 * (low + high)
        self.set_ranges(replace(self.ranges, x=(at - (at - low) * factor, at + (high - at) * factor)))

    # --- keys

    def keyPressEvent(self, event):  # noqa: N802 - the host's name
        """Arrows step from station to station, Home and End go to the ends, Space selects, plus and minus zoom, Enter
        the map."""
        keys, count = Qt.Key, len(self.drawing.x) if self.shown is not None else 0
        steps = {keys.Key_Right: 1, keys.Key_Left: -1, keys.Key_PageDown: 10, keys.Key_PageUp: -10}
        if not count:
            return super().keyPressEvent(event)
        if event.key() in steps:
            first = 0 if steps[event.key()] > 0 else count - 1
            row = min(max(self.current + steps[event.key()], 0), count - 1) if self.current >= 0 else first
            self.stepped.emit(row)
        elif event.key() in (keys.Key_Home, keys.Key_End):
            self.stepped.emit(0 if event.key() == keys.Key_Home else count - 1)
        elif event.key() in (keys.Key_Plus, keys.Key_Minus):
            self.zoom(1.0 / _WHEEL if event.key() == keys.Key_Plus else _WHEEL)
        elif event.key() in (keys.Key_Return, keys.Key_Enter) and self.current >= 0:
            self.opened.emit(self.current)
        elif event.key() == keys.Key_Space and self.current >= 0:
            more = event.modifiers() & (Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier)
            # The station itself, not where the pointer was last: a key points at no place of the chart.
            self.clicked_at = None
            self.picked.emit(self.current, bool(more))
        elif event.key() == keys.Key_Escape:
            self.escaped.emit()
        else:
            return super().keyPressEvent(event)
        event.accept()
