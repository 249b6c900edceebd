"""The widgets of the dock of flagged stations: what it is made of, without what it does."""

from qgis.gui import QgsDockWidget
from qgis.PyQt.QtCore import Qt
from qgis.PyQt.QtWidgets import (
    QAbstractItemView,
    QButtonGroup,
    QComboBox,
    QHBoxLayout,
    QHeaderView,
    QLabel,
    QLineEdit,
    QPushButton,
    QRadioButton,
    QStackedWidget,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from ...algorithms.language.decision_words import DECISIONS, decision_help, decision_label
from ...algorithms.language.translation import tr
from ..profile.flow import FlowLayout
from ..readable_text import ReadableFields
from ..review.scrolled import scrolled

CHOICES = (*DECISIONS, "")
KEYS = (*(str(number) for number in range(1, len(CHOICES))), "0")
ALL, OPEN = "all", "open"
# Rows of the list that are in sight however low the dock is: the rest of it is scrolled to.
FEWEST_ROWS = 6


class FlaggedPanel(QgsDockWidget):
    """Lays out the list of ``model``, which the dock makes, the choice of a decision and the buttons."""

    def _build(self):
        page = QWidget(self)
        column = QVBoxLayout(page)
        top = QHBoxLayout()
        self.summary = QLabel(page)
        self.summary.setTextFormat(Qt.TextFormat.PlainText)
        self.filter = QComboBox(page)
        self.filter.addItem(tr("All of them"), ALL)
        self.filter.addItem(tr("Without a decision"), OPEN)
        self.filter.setAccessibleName(tr("Stations listed"))
        self.filter.setToolTip(tr("Which stations are listed."))
        top.addWidget(self.summary, 1)
        top.addWidget(self.filter)
        column.addLayout(top)
        column.addWidget(self._made_list(page), 1)
        self.story = QLabel(page)
        self.story.setWordWrap(True)
        self.story.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        column.addWidget(self.story)
        self.choice = QWidget(page)
        column.addWidget(self.choice)
        self._build_choice()
        self._build_buttons(page, column)
        self.place = QLabel(page)
        self.place.setTextFormat(Qt.TextFormat.PlainText)
        self.place.setWordWrap(True)
        self.place.setObjectName("tautline_place")
        column.addWidget(self.place)
        self.empty = QLabel(self)
        self.empty.setTextFormat(Qt.TextFormat.PlainText)
        self.empty.setWordWrap(True)
        self.empty.setMargin(24)
        self.empty.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.pages = QStackedWidget(self)
        self.pages.addWidget(scrolled(page, self.pages))
        self.pages.addWidget(self.empty)
        self.setWidget(self.pages)
        ReadableFields(self)

    def _made_list(self, parent):
        view = self.list = QTableView(parent)
        view.setObjectName("tautline_flagged_list")
        view.setModel(self.model)
        view.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        view.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        view.setAlternatingRowColors(True)
        view.setShowGrid(False)
        view.setWordWrap(False)
        view.setTabKeyNavigation(False)
        view.verticalHeader().hide()
        row = int(view.fontMetrics().height() * 1.6)
        view.verticalHeader().setDefaultSectionSize(row)
        view.setMinimumHeight(FEWEST_ROWS * row + view.horizontalHeader().sizeHint().height() + 2 * view.frameWidth())
        view.horizontalHeader().setHighlightSections(False)
        view.horizontalHeader().setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        view.horizontalHeader().setStretchLastSection(True)
        view.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Interactive)
        view.setAccessibleName(tr("Flagged stations, worst first"))
        view.setToolTip(tr("Up and down go from station to station, the number keys decide, Enter zooms the map."))
        return view

    def _build_choice(self):
        box = QVBoxLayout(self.choice)
        box.setContentsMargins(0, 0, 0, 0)
        # As many side by side as the dock is wide: what they take from the height the list has.
        choices = QWidget(self.choice)
        flow = FlowLayout(choices, 6)
        flow.setContentsMargins(0, 0, 0, 0)
        box.addWidget(choices)
        self.group, self.radios = QButtonGroup(self), {}
        for number, (word, key) in enumerate(zip(CHOICES, KEYS)):
            radio = self.radios[word] = QRadioButton(f"{decision_label(word)} ({key})", choices)
            radio.setToolTip(decision_help(word))
            self.group.addButton(radio, number)
            flow.addWidget(radio)
        self.note = QLineEdit(self.choice)
        self.note.setPlaceholderText(tr("Note: why, or what is to be done"))
        self.note.setAccessibleName(tr("Note"))
        self.note.setClearButtonEnabled(True)
        box.addWidget(self.note)
        self.who = QLabel(self.choice)
        self.who.setTextFormat(Qt.TextFormat.PlainText)
        box.addWidget(self.who)

    def _build_buttons(self, parent, column):
        rows = (
            (
                ("previous", tr("Previous"), tr("Previous station (Alt+Up)")),
                ("next", tr("Next"), tr("Next station (Alt+Down)")),
                ("back", tr("Undo"), tr("Take the last decision back (Ctrl+Z)")),
                ("forward", tr("Redo"), tr("Decide again what was taken back (Ctrl+Shift+Z)")),
            ),
            (
                ("profile", tr("Show profile"), tr("Open the profile of these stations.")),
                (
                    "again",
                    tr("Run again"),
                    tr("Repeat the run that made this layer, with the same settings, after the stations were edited."),
                ),
            ),
        )
        for row in rows:
            line = QHBoxLayout()
            for name, text, tip in row:
                button = QPushButton(text, parent)
                button.setToolTip(tip)
                button.setObjectName(f"tautline_{name}")
                setattr(self, f"{name}_button", button)
                line.addWidget(button)
            column.addLayout(line)
