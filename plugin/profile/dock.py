"""The profile dock: chart, table and controls of one axis, linked to layer and map."""

import math
from pathlib import Path

import numpy as np
from qgis.core import Qgis, QgsSettings
from qgis.PyQt.QtCore import QEvent
from qgis.PyQt.QtGui import QImage
from qgis.PyQt.QtWidgets import QApplication, QFileDialog

from ...algorithms.core.errors import InputError
from ...algorithms.language.height_text import amounts_for
from ...algorithms.language.shown_stations import shown_stations
from ...algorithms.language.translation import tr
from ...algorithms.language.units import UNIT_LABELS
from .. import slide
from ..message_bar import tell
from ..review.station_texts import factor_text, station_story, waiting_text
from .axis_view import AxisView
from .panel import STEPS, ProfilePanel

# Where the user's profile keeps whether the line is shown.
LINE_SHOWN = "tautline/profile/line_shown"


class ProfileDock(ProfilePanel):
    """Shows the subject's stations, one axis at a time. Made when it is first asked for: matplotlib takes its time."""

    chart = None

    def __init__(self, iface, subject, link):
        super().__init__(tr("Axis profile"), iface.mainWindow())
        self.setObjectName("tautline_profile")
        # Here, not above: loading the plugin must not wait for the charts, and one may be without them.
        from .chart import ProfileCanvas
        from .ranges_panel import RangesPanel
        from .table import StationTable
        from .what_if import WhatIf

        self.iface, self.subject, self.link = iface, subject, link
        self.rows, self._kept, self._shown_of = np.zeros(0, int), {}, None
        self.ranges_panel, self.table = RangesPanel(self), StationTable(self)
        self.chart = ProfileCanvas(self, self.table)
        self.what_if = WhatIf(self)
        self._build()
        self.beside.setChecked(QgsSettings().value(LINE_SHOWN, False, type=bool))
        self._connect()
        self.refresh()

    def _connect(self):
        subject, chart = self.subject, self.chart
        subject.changed.connect(self.refresh)
        subject.candidates_changed.connect(self._fill_layers)
        subject.current_changed.connect(self._follow_current)
        subject.selection_changed.connect(self._follow_selection)
        self.link.hovered.connect(self._pointed_on_map)
        self.layers.activated.connect(lambda _index: self._layer_chosen())
        self.axes.activated.connect(lambda _index: self._draw())
        self.views.currentIndexChanged.connect(lambda _index: self._draw())
        self.scale.valueChanged.connect(self._scaled)
        self.whole.clicked.connect(lambda: self.show_whole())
        self.go.clicked.connect(lambda: self.zoom_map())
        self.fix.toggled.connect(self.ranges_panel.setVisible)
        self.values.toggled.connect(self._show_table)
        self.beside.toggled.connect(self._show_line)
        self.ranges_panel.typed.connect(chart.set_ranges)
        self.ranges_panel.keep_changed.connect(lambda _keep: self._remember())
        chart.ranges_changed.connect(self._tell_ranges)
        chart.hovered.connect(self._pointed_in_chart)
        chart.picked.connect(self._picked)
        chart.boxed.connect(lambda places, more: self.subject.select(self.rows[places], more))
        chart.escaped.connect(self.what_if.leave)
        self.line.toggled.connect(lambda on: self.what_if.start() if on else self.what_if.leave())
        chart.stepped.connect(self._stepped)
        chart.opened.connect(self._opened)
        self.table.chosen.connect(lambda lines: self.subject.select(self.rows[lines]))
        self.table.entered_line.connect(lambda line: self.subject.set_current(self.rows[line]))

    def release(self):
        """Let go of what outlives the dock."""
        self.subject.changed.disconnect(self.refresh)
        self.subject.candidates_changed.disconnect(self._fill_layers)
        self.subject.current_changed.disconnect(self._follow_current)
        self.subject.selection_changed.disconnect(self._follow_selection)
        self.link.hovered.disconnect(self._pointed_on_map)

    def changeEvent(self, event):  # noqa: N802 - the host's name
        """A theme that is switched on or off switches the chart."""
        super().changeEvent(event)
        if (
            event.type() in (QEvent.Type.PaletteChange, QEvent.Type.StyleChange, QEvent.Type.FontChange)
            and self.chart is not None
        ):
            self.chart.restyle()

    # --- filling

    @property
    def axis(self):
        return self.axes.currentData()

    @property
    def view(self):
        return self.views.currentData()

    def _fill_layers(self):
        found = self.subject.candidates()
        self.layers.clear()
        for layer in found:
            self.layers.addItem(layer.name(), layer.id())
        if self.subject.layer in found:
            self.layers.setCurrentIndex(found.index(self.subject.layer))
        else:
            self.layers.setCurrentIndex(-1)

    def _layer_chosen(self):
        self.subject.set_layer(
            next((layer for layer in self.subject.candidates() if layer.id() == self.layers.currentData()), None)
        )

    def refresh(self):
        """Show the subject anew: another layer, or other values of the same."""
        self._fill_layers()
        stations = self.subject.stations
        if stations is None or not len(stations):
            self.chart.current = -1
            self.rows, self._shown_of = np.zeros(0, int), None
            self.table.show_stations(None, self.rows)
            self.what_if.leave()
            self.empty.setText(self._why_empty())
            self.pages.setCurrentIndex(1)
            return
        before = self.axis
        self.axes.clear()
        for name in stations.axes:
            self.axes.addItem(name or tr("(no name)"), name)
        current = self.subject.current
        wanted = stations.axis[current] if current >= 0 else before
        self.axes.setCurrentIndex(max(self.axes.findData(wanted), 0))
        self.pages.setCurrentIndex(0)
        self._draw()

    def _why_empty(self):
        if self.subject.is_waiting:
            return waiting_text(self.subject.layer)
        if self.subject.layer is not None:
            return tr("Layer '{}' has no station with a chainage.").format(self.subject.layer.name())
        return tr(
            "There are no stations to show yet.\n\nRun 'Design heights and residuals' from the toolbox, or open the "
            "example from the menu Plugins, Tautline. The layer with its results then appears here."
        )

    def _draw(self):
        """Draw the chosen axis in the chosen view; the ranges stay where the same thing is shown."""
        stations = self.subject.stations
        if stations is None or not len(stations):
            return
        self.rows = stations.rows_of(self.axis)
        rows = self.rows
        shown = AxisView(
            self.axis,
            stations.profile(rows),
            stations.status[rows],
            stations.suspected[rows],
            np.array(shown_stations(stations.station[rows]), dtype=object),
            stations.height_unit,
            stations.chainage_unit,
            self.view,
            stations.side[rows],
            stations.line_suspected[rows],
            stations.has_line and self.beside.isChecked(),
        )
        # Whoever has heights only does not hear of a line.
        self.beside.setVisible(stations.has_line)
        self.ranges_panel.show_line(shown.with_line)
        self.scale_box.setEnabled(shown.profile.has_design)
        self.views.setEnabled(shown.profile.has_design)
        self.table.show_stations(stations, rows)
        self.chart.chosen, self.chart.current = self._places(self.subject.selected()), self._place(self.subject.current)
        self.line.setEnabled(shown.profile.has_design)
        self.chart.show_axis(shown, self._ranges_for(shown))
        self.what_if.shown_anew()
        self._follow_selection()
        self._tell_story()

    def _ranges_for(self, shown):
        """Ranges of what was shown before where it is the same axis; kept ones where asked; else all of it."""
        whole, before, here = shown.whole(), self._shown_of, (self.subject.layer.id(), shown.name)
        self._shown_of = (here, shown.view)
        if self.ranges_panel.keep.isChecked() and shown.view in self._kept:
            return self._kept[shown.view]
        if before is None or before[0] != here:
            return whole
        if before[1] == shown.view:
            return self.chart.ranges
        return type(whole)(self.chart.ranges.x, whole.y, self.chart.ranges.r)

    def _remember(self):
        """Keep the ranges of each view by itself: heights are others in each."""
        self._kept = {**self._kept, self.view: self.chart.ranges} if self.ranges_panel.keep.isChecked() else {}

    def _tell_ranges(self):
        shown, factor = self.chart.shown, self.chart.drawing.factor
        if shown is None:
            return
        if self.ranges_panel.keep.isChecked():
            self._remember()
        self.ranges_panel.show_ranges(
            self.chart.ranges,
            UNIT_LABELS[shown.height_unit],
            amounts_for(shown.height_unit).label,
            UNIT_LABELS[shown.chainage_unit],
        )
        self.factor.setText("" if factor is None else "× " + factor_text(factor))
        if factor is not None:
            self.scale.blockSignals(True)
            self.scale.setValue(round(STEPS * math.log10(max(factor, 1.0))))
            self.scale.blockSignals(False)

    def _scaled(self, value):
        try:
            self.chart.set_factor(10.0 ** (value / STEPS))
        except InputError:
            return  # a chart that has no size yet has no exaggeration either

    # --- the links

    def _places(self, rows):
        """Places in the chart of rows of the subject; those of other axes are left out."""
        places = np.searchsorted(self.rows, rows)
        inside = places < len(self.rows)
        inside[inside] = self.rows[places[inside]] == np.asarray(rows)[inside]
        return places[inside]

    def _place(self, row):
        found = self._places(np.array([row])) if row >= 0 and len(self.rows) else ()
        return int(found[0]) if len(found) else -1

    def _go_to_axis(self, row):
        """Show the axis of a row where another is shown."""
        name = self.subject.stations.axis[row]
        if name != self.axis:
            self.axes.setCurrentIndex(self.axes.findData(name))
            self._draw()

    def _follow_current(self):
        row = self.subject.current
        if row >= 0:
            self._go_to_axis(row)
            self.chart.bring_into_view(self._place(row))
        self.chart.mark(current=self._place(row))
        if not self.table.hasFocus():
            self.table.choose(self.chart.chosen, self.chart.current)
        self._tell_story()

    def _follow_selection(self):
        if self.subject.stations is None:
            return
        rows = self.subject.selected()
        places = self._places(rows)
        if len(rows) and not len(places):
            self._go_to_axis(int(rows[0]))
            places = self._places(rows)
        self.chart.mark(chosen=places)
        if not self.table.hasFocus():
            self.table.choose(places, self.chart.current)
        self._tell_story()

    def _pointed_in_chart(self, place):
        row = int(self.rows[place]) if 0 <= place < len(self.rows) else -1
        self.link.point_at(row)
        self._tell_story(row)

    def _pointed_on_map(self, row):
        self.chart.mark(hover=self._place(row))
        self._tell_story(row)

    def what_if_left(self):
        """The line that was tried is gone."""
        self.line.setChecked(False)
        self._tell_story()

    def _picked(self, place, more):
        if self.what_if.active:
            if self.what_if.pick(place, self.chart.clicked_at if more else None):
                self._tell_story(self.rows[place] if place >= 0 else -1)
            return
        if place < 0:
            if not more:
                self.subject.select([])
            return
        self.subject.select([self.rows[place]], more)
        self.subject.set_current(self.rows[place])

    def _stepped(self, place):
        self.subject.set_current(self.rows[place])
        self.link.show(int(self.rows[place]))

    def _opened(self, place):
        if self.what_if.active:
            self.what_if.pick(place)
            return
        self.subject.set_current(self.rows[place])
        self.link.zoom_to([self.rows[place]])

    def _tell_story(self, row=-1):
        stations, row = self.subject.stations, row if row >= 0 else self.subject.current
        tried = self.what_if.point_at(self._place(row))
        if tried:
            self.story.setText(tried)
            return
        if stations is not None and 0 <= row < len(stations):
            self.story.setText(station_story(stations, row))
            return
        number = len(self.chart.chosen)
        self.story.setText(
            tr("{} selected.").format(number)
            if number
            else tr(
                "Point at a station to read it; click to select it, drag to select several, turn the wheel to zoom."
            )
        )

    # --- the buttons

    def _show_line(self, shown):
        """Show the line as a third chart or not, here and from now on."""
        QgsSettings().setValue(LINE_SHOWN, shown)
        self._draw()

    def _show_table(self, shown):
        """Show or hide the table; at first with room for its most telling columns."""
        first = shown and self.table.width() < 200 or not self.splitter.sizes()[1]
        self.table.setVisible(shown)
        if shown and first:
            width = self.splitter.width()
            self.splitter.setSizes([int(0.55 * width), int(0.45 * width)])

    def show_whole(self):
        """Show all of the axis."""
        if self.chart.shown is not None:
            self.chart.set_ranges(self.chart.shown.whole())

    def zoom_map(self):
        """Zoom the map to the selected stations, or to all of the axis."""
        chosen = self.rows[self.chart.chosen] if len(self.chart.chosen) else self.rows
        self.link.zoom_to(chosen)

    def _note(self):
        return tr("Layer '{}'. For review; no setting-out data.").format(self.subject.layer.name())

    def _ask_and_save(self, ending):
        from .export import KINDS

        if self.chart.shown is None:
            return
        name = " ".join(filter(None, (self.subject.layer.name(), self.axis))).replace("/", "-") + ending
        path, _kind = QFileDialog.getSaveFileName(
            self, tr("Save the chart"), str(Path.home() / name), f"{tr(KINDS[ending])} (*{ending})"
        )
        if path:
            self.save_chart(path if path.lower().endswith(ending) else path + ending)

    def save_chart(self, path):
        """Write the chart to ``path``; say in the message bar where it is, or why it could not be written."""
        from .export import write_chart

        bar = self.iface.messageBar()
        try:
            write_chart(path, self.chart.shown, self.chart.ranges, self._note())
        except (OSError, ValueError) as error:
            tell(
                bar,
                tr("The chart could not be saved as {}: {}").format(path, getattr(error, "strerror", None) or error),
                Qgis.MessageLevel.Critical,
            )
            return
        tell(bar, tr("The chart is saved as {}.").format(path), Qgis.MessageLevel.Success, 6)

    def save_slide(self):
        """Ask for a file, and make one slide of the axis shown."""
        slide.ask(self, self.subject.layer, self.axis or "")

    def copy_chart(self):
        """Put the chart onto the clipboard as a picture."""
        from .export import chart_image

        if self.chart.shown is not None:
            image: QImage = chart_image(self.chart.shown, self.chart.ranges, self._note())
            QApplication.clipboard().setImage(image)
