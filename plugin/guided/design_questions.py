"""The last two questions: what the structure was meant to be, and how exact it has to be and was measured."""

from qgis.core import QgsProject
from qgis.PyQt.QtCore import Qt, pyqtSignal
from qgis.PyQt.QtWidgets import (
    QButtonGroup,
    QCheckBox,
    QComboBox,
    QGridLayout,
    QLineEdit,
    QRadioButton,
    QVBoxLayout,
    QWidget,
)

from ...algorithms.language.height_text import full_height
from ...algorithms.language.translation import tr
from ...algorithms.language.units import UNIT_LABELS
from .. import toolbox
from .layer_box import KINDS_OF_LAYERS, LayerBox, is_reference
from .requests import CONTROLS, WITH_SLOPE
from .sketches import Sketch
from .widgets import Answer, Question, wrapped


def _designs():
    """(design, name, sentence)."""
    return (
        (
            "chord",
            tr("Chord"),
            tr("Straight in space through two stations. Between them it lies below the level surface."),
        ),
        (
            "tangent",
            tr("Tangent"),
            tr("Straight in space and level at one station. It rises above the level surface on both sides."),
        ),
        ("inclined", tr("Inclined"), tr("Straight in space with a slope given at one station.")),
        (
            "reference",
            tr("Fitted reference"),
            tr("In a line or plane that was fitted or fixed before, kept in a layer."),
        ),
        ("level", tr("Level"), tr("One height above the sea all along: it follows the Earth's curve, as water does.")),
        ("grade", tr("Grade"), tr("A constant slope above the level surface, as for rails, roads and pipes.")),
    )


class _Choice(QWidget):
    """One design: picture, name and sentence; a click anywhere chooses it."""

    def __init__(self, design, name, sentence, group):
        super().__init__()
        self.button = QRadioButton(name)
        self.button.setAccessibleDescription(sentence)
        group.addButton(self.button)
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(10)
        grid.setVerticalSpacing(0)
        grid.addWidget(Sketch(design), 0, 0, 2, 1, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(self.button, 0, 1)
        grid.addWidget(wrapped(sentence), 1, 1)
        grid.setColumnStretch(1, 1)

    def mouseReleaseEvent(self, event):  # noqa: N802 - the host's name
        self.button.setChecked(True)
        super().mouseReleaseEvent(event)


class DesignQuestion(Question):
    """The design in words and pictures, with its controls found by default."""

    answered = pyqtSignal()

    def __init__(self, parent=None):
        super().__init__(
            3,
            tr("Design"),
            tr("What was it meant to be? The solid line is the structure, the dash-dotted one the level surface."),
            parent,
            notes_first=True,
        )
        group, self.buttons, self.choices, self._given = QButtonGroup(self), {}, [], None
        column = QVBoxLayout()
        column.setSpacing(8)
        for design, name, sentence in _designs():
            choice = _Choice(design, name, sentence, group)
            self.buttons[design] = choice.button
            self.choices.append(choice)
            column.addWidget(choice)
            choice.button.toggled.connect(self._changed)
        self.body.addLayout(column)
        self.reference = LayerBox(KINDS_OF_LAYERS.VectorLayer, is_reference)
        self.reference.layerChanged.connect(self._changed)
        self.edits = {key: QLineEdit() for key in ("chainage_a", "height_a", "chainage_b", "height_b", "slope")}
        for edit in self.edits.values():
            edit.setClearButtonEnabled(True)
            edit.textChanged.connect(self._changed)
        self._lay_out()
        self.buttons["chord"].setChecked(True)

    def _lay_out(self):
        station, height = (
            tr("Station 12+50 or 1+250, or a distance."),
            tr("Design height there, in the unit of heights."),
        )
        self.answers = {
            "reference": Answer(
                tr("Reference layer"),
                self.reference,
                tr("Made by 'Fit a straight line or plane'; its row names the axis or is the only one."),
            ),
            "chainage_a": Answer(tr("Station A"), self.edits["chainage_a"], station),
            "height_a": Answer(tr("Height at A"), self.edits["height_a"], height),
            "chainage_b": Answer(tr("Station B"), self.edits["chainage_b"], station),
            "height_b": Answer(tr("Height at B"), self.edits["height_b"], height),
            "slope": Answer(
                tr("Slope"), self.edits["slope"], tr("Rise per distance without a unit: 0.003 is 3 mm per metre.")
            ),
        }
        grid = QGridLayout()
        grid.setHorizontalSpacing(10)
        for number in (0, 1):
            grid.setColumnStretch(number, 1)
        grid.addWidget(self.answers["reference"], 0, 0, 1, 2)
        for place, key in enumerate(("chainage_a", "height_a", "chainage_b", "height_b", "slope")):
            grid.addWidget(self.answers[key], 1 + place // 2, place % 2)
        self.body.addLayout(grid)
        self.hint = wrapped(tr("Fields left empty are found from the stations, as shown in them."))
        self.body.addWidget(self.hint)

    def set_overridden(self, stated):
        """Show the design that all axes state themselves, greyed out; ``stated``: of each axis, '' for none.

        The answer given stays, and comes back when it counts again.
        """
        overridden = bool(stated) and all(stated)
        for widget in (*self.choices, *self.answers.values(), self.hint):
            widget.setEnabled(not overridden)
        if overridden and self._given is None:
            self._given = self.shown()
        if overridden:
            shown = stated[0] if len(set(stated)) == 1 else self._given
        else:
            shown, self._given = self._given, None
        if shown in self.buttons and shown != self.shown():
            group = self.buttons[shown].group()
            group.blockSignals(True)
            for button in group.buttons():
                button.blockSignals(True)
            self.buttons[shown].setChecked(True)
            for button in group.buttons():
                button.blockSignals(False)
            group.blockSignals(False)
            self._show_what_counts()

    def shown(self):
        """The design that is marked."""
        return next((design for design, button in self.buttons.items() if button.isChecked()), "chord")

    def design(self):
        """The design that was answered."""
        return self._given or self.shown()

    def _changed(self, *_):
        self._show_what_counts()
        self.answered.emit()

    def _show_what_counts(self):
        design = self.shown()
        for letter in ("A", "B"):
            for key in (f"chainage_{letter.lower()}", f"height_{letter.lower()}"):
                self.answers[key].setVisible(letter in CONTROLS[design])
        self.answers["slope"].setVisible(design in WITH_SLOPE)
        self.answers["reference"].setVisible(design == "reference")
        self.hint.setVisible(bool(CONTROLS[design]))

    def suggest(self, looks, unit):
        """Show in the empty fields what a run will find by default; ``looks``: AxisLook list. Nothing where the axes
        state their designs."""
        design, found, overridden = self.shown(), {}, self._given is not None
        if looks and not overridden:
            ends = [_control(looks, which, unit) for which in ("middle" if design == "tangent" else "first", "last")]
            for letter, (station, height) in zip("ab", ends):
                found[f"chainage_{letter}"], found[f"height_{letter}"] = station, height
        slope = tr("needed") if design == "inclined" else tr("from A to B")
        for key, edit in self.edits.items():
            default = slope if key == "slope" and not overridden else ""
            edit.setPlaceholderText(found.get(key, default))

    def values(self):
        return {
            "design": self.design(),
            "reference": self.reference.layer_id(),
            **{key: edit.text().strip() for key, edit in self.edits.items()},
        }

    def fill(self, settings):
        self._given = None
        self.reference.update_layers()
        self.buttons.get(settings.design, self.buttons["chord"]).setChecked(True)
        self.reference.setLayer(QgsProject.instance().mapLayer(settings.reference))
        for key, edit in self.edits.items():
            edit.setText(getattr(settings, key))


def _control(looks, which, unit):
    """Station and height that a control is found at, as the empty fields show them."""
    words = {"first": tr("first of each axis"), "middle": tr("middle of each axis"), "last": tr("last of each axis")}
    if len(looks) > 1:
        return words[which], tr("as built")
    at = looks[0].with_height(which)
    if at is None:
        return "", ""
    station, height = at
    return station, full_height(height, unit)


def _lines():
    """(LINE, what it is called)."""
    return (
        ("", tr("not judged")),
        ("chord", tr("through both ends")),
        ("fitted", tr("the best fit")),
        ("axis", tr("the axis as drawn")),
    )


class AccuracyQuestion(Question):
    """Tolerance and accuracy, what else to run, and where the results are kept."""

    answered = pyqtSignal()

    def __init__(self, place, parent=None):
        super().__init__(4, tr("Accuracy"), tr("How accurate must it be, and how accurately was it measured?"), parent)
        self.edits = {key: QLineEdit() for key in ("tolerance", "sigma", "line_tolerance")}
        for edit in self.edits.values():
            edit.setClearButtonEnabled(True)
            edit.textChanged.connect(self._changed)
        self.show_stated(False)
        self.edits["sigma"].setPlaceholderText(tr("from the data"))
        self.edits["line_tolerance"].setPlaceholderText(tr("none"))
        self.line = QComboBox()
        for word, text in _lines():
            self.line.addItem(text, word)
        self.line.currentIndexChanged.connect(self._changed)
        self.place = place
        place.fileChanged.connect(self._changed)
        self.answers = {
            "tolerance": Answer(
                tr("Tolerance"),
                self.edits["tolerance"],
                tr("Greatest residual that counts as within, in the unit of heights."),
            ),
            "sigma": Answer(
                tr("Accuracy of a height"),
                self.edits["sigma"],
                tr(
                    "Standard deviation of one height, in the unit of heights. The fit and the test of the shape use "
                    "it. Empty: a column 'sd', else estimated from the residuals."
                ),
            ),
            "line": Answer(
                tr("Line in plan"),
                self.line,
                tr(
                    "Whether the stations are in line too, by their positions. An axis drawn by hand is no basis for "
                    "judging."
                ),
            ),
            "line_tolerance": Answer(
                tr("Tolerance of the line"),
                self.edits["line_tolerance"],
                tr("Greatest distance from the line that counts as within, in the unit of heights."),
            ),
            "place": Answer(
                tr("Keep the results in"),
                place,
                tr("A GeoPackage. Empty: temporary layers, which are lost when the program closes."),
            ),
        }
        grid = QGridLayout()
        grid.setHorizontalSpacing(10)
        for number, key in enumerate(("tolerance", "sigma", "line", "line_tolerance")):
            grid.addWidget(self.answers[key], number // 2, number % 2)
            grid.setColumnStretch(number % 2, 1)
        self.ask_for_line(False)
        self.body.addLayout(grid)
        self.body.addWidget(wrapped(tr("Design heights and residuals are computed in any case. Also:")))
        self.more = {}
        for key, entry, text in (
            ("test_shape", "tautline:testcurvature", tr("Test which shape was built")),
            ("fit", "tautline:fitreference", tr("Fit a straight line or plane, look for blunders")),
            ("draw", "tautline:drawdeviations", tr("Draw the deviations on the map")),
        ):
            box = QCheckBox(text)
            box.toggled.connect(self._changed)
            box.setVisible(toolbox.has(entry))
            self.more[key] = box
            self.body.addWidget(box)
            if key == "fit":
                self.body.addLayout(self._plane_question())
        self.body.addWidget(self.answers["place"])

    def show_stated(self, stated):
        """Show in the empty field that the tolerance is ``stated`` by every axis itself, or that there is none."""
        self.edits["tolerance"].setPlaceholderText(tr("from the axis layer") if stated else tr("none"))

    def ask_for_line(self, asked):
        """Ask whether the line is judged, where the stations have positions of their own."""
        self.answers["line"].setVisible(asked)
        self.answers["line_tolerance"].setVisible(asked and bool(self.line.currentData()))

    def _plane_question(self):
        """Whether several axes share a plane; below the fit, whose question it is."""
        self.plane_hint, self.one_plane = wrapped(), QCheckBox()
        self.one_plane.toggled.connect(self._changed)
        column = QVBoxLayout()
        column.setContentsMargins(24, 0, 0, 0)
        column.setSpacing(2)
        for widget in (self.plane_hint, self.one_plane):
            widget.setVisible(False)
            column.addWidget(widget)
        return column

    def ask_for_plane(self, axes, meet):
        """Ask where there are several: ``axes``, how many have stations; ``meet``: whether they all hang together by
        their ends. Each is fitted alone unless the user says otherwise."""
        asked = axes > 1 and self.more["fit"].isChecked()
        for widget in (self.plane_hint, self.one_plane):
            widget.setVisible(asked)
        self.plane_hint.setText(
            tr("The axes meet: do they share one plane? Otherwise a line is fitted to each alone.")
            if meet
            else tr("The axes do not all meet, so a line is fitted to each alone.")
        )
        self.one_plane.setText(tr("They share one plane") if meet else tr("They share one plane all the same"))

    def _changed(self, *_):
        self.answered.emit()

    def show_unit(self, unit):
        """Name the unit of heights at both fields."""
        for key, text in (
            ("tolerance", tr("Tolerance ({})")),
            ("sigma", tr("Accuracy of a height ({})")),
            ("line_tolerance", tr("Tolerance of the line ({})")),
        ):
            self.answers[key].label.setText(text.format(UNIT_LABELS[unit]))

    def values(self):
        return {
            "place": self.place.filePath().strip(),
            **{key: edit.text().strip() for key, edit in self.edits.items()},
            **{key: box.isChecked() and not box.isHidden() for key, box in self.more.items()},
            "one_plane": self.one_plane.isChecked(),
            "line": self.line.currentData(),
        }

    def fill(self, settings):
        for key, edit in self.edits.items():
            edit.setText(getattr(settings, key))
        for key, box in self.more.items():
            box.setChecked(getattr(settings, key))
        self.one_plane.setChecked(settings.one_plane)
        self.line.setCurrentIndex(max(self.line.findData(settings.line), 0))
        self.place.setFilePath(settings.place)
