"""The profile dock's widgets: what it is made of, without what it does."""

from qgis.gui import QgsDockWidget
from qgis.PyQt.QtCore import Qt
from qgis.PyQt.QtWidgets import (
    QComboBox,
    QHBoxLayout,
    QLabel,
    QMenu,
    QSlider,
    QSplitter,
    QStackedWidget,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from ...algorithms.language.translation import tr
from ..review.scrolled import scrolled
from .flow import FlowLayout

# The slider's steps of one tenfold, and its ends: 1 to 100,000 times.
STEPS, DECADES = 100, 5


class ProfilePanel(QgsDockWidget):
    """Lays out ``chart``, ``ranges_panel`` and ``table``, which the dock makes, and the controls above them."""

    def _build(self):
        page = QWidget(self)
        column = QVBoxLayout(page)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        controls = QWidget(page)
        flow = FlowLayout(controls, 8)
        self.layers, self.axes, self.views = (QComboBox(controls) for _ in range(3))
        self.views.addItem(tr("Heights above the level surface"), "level")
        self.views.addItem(tr("Heights from the straight line"), "straight")
        self.views.setToolTip(
            tr("The same heights seen in two ways: with the level surface flat, or with the straight line flat.")
        )
        self.views.setAccessibleName(tr("View"))
        for label, box in ((tr("Layer"), self.layers), (tr("Axis"), self.axes), ("", self.views)):
            flow.addWidget(self._labelled(label, box, controls) if label else box)
            box.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToContents)
        self.scale = QSlider(Qt.Orientation.Horizontal, controls)
        self.scale.setRange(0, STEPS * DECADES)
        self.scale.setPageStep(STEPS // 5)
        self.scale.setMinimumWidth(110)
        self.scale.setToolTip(tr("How many times larger heights are drawn than chainages."))
        self.scale_box = self._labelled(tr("Exaggeration"), self.scale, controls)
        self.factor = QLabel(self.scale_box)
        self.factor.setTextFormat(Qt.TextFormat.PlainText)
        self.factor.setMinimumWidth(self.factor.fontMetrics().horizontalAdvance("× 00,000"))
        self.scale_box.layout().addWidget(self.factor)
        flow.addWidget(self.scale_box)
        self.whole = self._button(controls, flow, tr("Show all"), tr("Show all stations of the axis."))
        self.go = self._button(
            controls, flow, tr("Zoom map"), tr("Zoom the map to the selected stations, or to all of this axis.")
        )
        self.fix = self._button(controls, flow, tr("Ranges"), tr("Type the ranges of the chart, and keep them."), True)
        self.line = self._button(
            controls,
            flow,
            tr("What if"),
            tr(
                "Try a straight line through two stations: click one, then the other; nothing is run or written. With "
                "Ctrl the very point of the chart is taken, Enter takes the current station, Esc leaves."
            ),
            True,
        )
        self.beside = self._button(
            controls,
            flow,
            tr("Line"),
            tr("Show the lateral departures from the line as a third chart: left of it up, right of it down."),
            True,
        )
        self.beside.setObjectName("tautline_line")
        self.values = self._button(controls, flow, tr("Table"), tr("Show the values as a table."), True)
        self.export = self._button(controls, flow, tr("Export"), tr("Save the chart as PNG, SVG or PDF, or copy it."))
        self.export.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        self.export.setMenu(self._export_menu())
        self.follow_up = self._button(
            controls,
            flow,
            tr("Reports"),
            tr("Report, schedule and comparison of the stations shown: opens their forms."),
        )
        self.follow_up.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        column.addWidget(controls)
        self.ranges_panel.hide()
        column.addWidget(self.ranges_panel)
        column.addWidget(self.what_if.bar)
        self.splitter = QSplitter(Qt.Orientation.Horizontal, page)
        self.splitter.addWidget(self.chart)
        self.splitter.addWidget(self.table)
        self.splitter.setStretchFactor(0, 3)
        self.splitter.setStretchFactor(1, 2)
        self.splitter.setChildrenCollapsible(False)
        self.table.hide()
        column.addWidget(self.splitter, 1)
        self.story = QLabel(page)
        self.story.setTextFormat(Qt.TextFormat.PlainText)
        self.story.setObjectName("tautline_story")
        self.story.setMargin(6)
        self.story.setWordWrap(True)
        self.story.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        column.addWidget(self.story)
        self.empty = QLabel(self)
        self.empty.setTextFormat(Qt.TextFormat.PlainText)
        self.empty.setObjectName("tautline_empty")
        self.empty.setWordWrap(True)
        self.empty.setMargin(24)
        self.empty.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.pages = QStackedWidget(self)
        self.pages.addWidget(scrolled(page, self.pages))
        self.pages.addWidget(self.empty)
        self.setWidget(self.pages)
        self._order(
            [
                self.layers,
                self.axes,
                self.views,
                self.scale,
                self.whole,
                self.go,
                self.fix,
                self.line,
                self.beside,
                self.values,
                self.export,
                self.follow_up,
                *self.ranges_panel.in_order,
                self.chart,
                self.table,
            ]
        )

    @staticmethod
    def _order(widgets):
        for before, after in zip(widgets, widgets[1:]):
            QWidget.setTabOrder(before, after)

    @staticmethod
    def _labelled(text, widget, parent):
        box = QWidget(parent)
        row = QHBoxLayout(box)
        row.setContentsMargins(0, 0, 0, 0)
        label = QLabel(text, box)
        label.setBuddy(widget)
        widget.setAccessibleName(text.replace("&", ""))
        row.addWidget(label)
        row.addWidget(widget)
        return box

    @staticmethod
    def _button(parent, layout, text, tip, checkable=False):
        button = QToolButton(parent)
        button.setText(text)
        button.setToolTip(tip)
        button.setCheckable(checkable)
        # By the Tab key too, which tool buttons leave out.
        button.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        layout.addWidget(button)
        return button

    def _export_menu(self):
        menu = QMenu(self)
        for ending, text in (
            (".png", tr("Save as P&NG…")),
            (".svg", tr("Save as &SVG…")),
            (".pdf", tr("Save as &PDF…")),
        ):
            menu.addAction(text).triggered.connect(lambda _checked=False, ending=ending: self._ask_and_save(ending))
        slide = menu.addAction(tr("Save one s&lide: map, profile and verdict…"))
        slide.setObjectName("tautline_save_slide")
        slide.triggered.connect(lambda: self.save_slide())
        menu.addSeparator()
        menu.addAction(tr("&Copy the chart")).triggered.connect(lambda: self.copy_chart())
        menu.addAction(tr("Copy the &table")).triggered.connect(lambda: self.table.copy())
        return menu
