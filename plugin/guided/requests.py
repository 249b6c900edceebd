"""Parameters of the toolbox entries from the panel's answers, and the entries' messages in the panel's words."""

import re

from qgis.PyQt.QtCore import QLocale

from ...algorithms.core.errors import InputError
from ...algorithms.core.number_reading import typed_number
from ...algorithms.core.station_notation import notation
from ...algorithms.language.translation import tr, translatable

# The parameter of an entry, the answer it comes from, and what the panel calls it.
ANSWERS = {
    "STATION_FIELD": ("station_field", translatable("Station")),
    "HEIGHT_FIELD": ("height_field", translatable("Height")),
    "OFFSET_FIELD": ("offset_field", translatable("Offset")),
    "STATION_AXIS_FIELD": ("axis_name_field", translatable("Name of the axis")),
    "HEIGHT_UNIT": ("height_unit", translatable("Heights are in")),
    "CHAINAGE_UNIT": ("chainage_unit", translatable("Distances are in")),
    "UNDULATION": ("undulation", translatable("Heights are")),
    "UNDULATION_FIELD": ("undulation_field", translatable("Undulation")),
    "UNDULATION_VALUE": ("undulation_value", translatable("Undulation")),
    "DESIGN": ("design", translatable("Design")),
    "CHAINAGE_A": ("chainage_a", translatable("Station A")),
    "HEIGHT_A": ("height_a", translatable("Height at A")),
    "CHAINAGE_B": ("chainage_b", translatable("Station B")),
    "HEIGHT_B": ("height_b", translatable("Height at B")),
    "SLOPE": ("slope", translatable("Slope")),
    "REFERENCE": ("reference", translatable("Reference layer")),
    "TOLERANCE": ("tolerance", translatable("Tolerance")),
    "SIGMA": ("sigma", translatable("Accuracy of a height")),
    "LINE": ("line", translatable("Line in plan")),
    "LINE_TOLERANCE": ("line_tolerance", translatable("Tolerance of the line")),
    "AXIS": ("axis", translatable("Axis layer")),
    "STATIONS": ("heights", translatable("Heights from")),
    "INPUT": ("heights", translatable("Heights from")),
    "OUTPUT": ("place", translatable("Keep the results in")),
}
# What the entries' sentences call the answers: by the parameters, and the controls as fields of the axis layer.
_LABELS = {key: label for key, (_, label) in ANSWERS.items()}
_LABELS.update(
    chain_a=_LABELS["CHAINAGE_A"],
    chain_b=_LABELS["CHAINAGE_B"],
    height_a=_LABELS["HEIGHT_A"],
    height_b=_LABELS["HEIGHT_B"],
)
# Not asked here, but told of by its name in the form.
_LABELS["EXAGGERATION"] = translatable("Exaggeration")
_LABELS["LINE_EXAGGERATION"] = translatable("Exaggeration of the lateral bars")
_NAMED = re.compile(r"\b(" + "|".join(sorted(_LABELS, key=len, reverse=True)) + r")\b")
# Parameters that the panel does not ask for, as the entries' sentences add them in brackets.
_OTHER_KEYS = re.compile(r" \((?!(?:" + "|".join(ANSWERS) + r")\))[A-Z][A-Z_]{3,}\)| or raise MAX_DISTANCE")
_HEIGHTS = ("undulation_value", "height_a", "height_b", "tolerance", "sigma", "line_tolerance")
_NUMBERS = (*_HEIGHTS, "slope")
_STATIONS = ("chainage_a", "chainage_b")
CONTROLS = {
    "chord": ("A", "B"),
    "tangent": ("A",),
    "inclined": ("A",),
    "reference": (),
    "level": ("A",),
    "grade": ("A", "B"),
}
WITH_SLOPE = ("inclined", "grade")


def in_panel_words(text):
    """The sentence ``text`` with the panel's names for the entries' parameters, to be shown."""
    return _NAMED.sub(lambda match: "\u2018" + tr(_LABELS[match[1]]) + "\u2019", _OTHER_KEYS.sub("", text))


def answer_of(keys):
    """The answer behind the first of these parameters that the panel asks for, '' where it asks for none."""
    return next((ANSWERS[key][0] for key in keys if key in ANSWERS), "")


def label_of(answer):
    """What the panel calls an answer."""
    return tr(next(label for name, label in ANSWERS.values() if name == answer))


def _comma():
    """What a comma means here that could be either, see ``typed_number``: the user's locale says."""
    return "comma" if QLocale().decimalPoint() == "," else ""


def read_answer(settings, name):
    """A typed answer as the entries take it: a number, or a station's notation with a decimal point; None where it is
    empty. InputError for what cannot be read."""
    typed = getattr(settings, name)
    if typed == "":
        return None
    if name in _NUMBERS:
        return typed_number(typed, comma=_comma(), in_feet=name in _HEIGHTS and settings.height_unit != "metre")
    if name in _STATIONS and "," in typed:
        before, plus, rest = typed.partition("+")
        # Behind the plus nobody groups thousands.
        typed = (
            before + plus + rest.replace(",", ".")
            if before.strip() and plus
            else repr(typed_number(typed, comma=_comma()))
        )
    if name in _STATIONS:
        notation(typed)
    return typed


def controls_of(design):
    """The answers that a design's controls are typed into, in the panel's order."""
    found = [f"{kind}_{letter.lower()}" for letter in CONTROLS[design] for kind in ("chainage", "height")]
    return found + (["slope"] if design in WITH_SLOPE else [])


def _given(settings, keys):
    """{key: answer} of the answers that are given; numbers as numbers where they are."""
    found = {}
    for key in keys:
        name = ANSWERS[key][0]
        value = getattr(settings, name)
        # The one axis that is drawn has no name that a column could hold.
        if value == "" or key == "STATION_AXIS_FIELD" and settings.drawn:
            continue
        if name in (*_NUMBERS, *_STATIONS):
            try:
                value = read_answer(settings, name)
            except InputError:
                pass  # The panel says so beside the answer, and does not run.
        found[key] = value
    return found


def _height_system(settings):
    """Keys of the height system and what it needs."""
    return [
        "UNDULATION",
        *{"field": ["UNDULATION_FIELD"], "constant": ["UNDULATION_VALUE"]}.get(settings.undulation, []),
    ]


def placing(settings, axis):
    """Parameters of placestations but for its outputs."""
    keys = (
        "STATION_FIELD",
        "OFFSET_FIELD",
        "HEIGHT_FIELD",
        "HEIGHT_UNIT",
        "STATION_AXIS_FIELD",
        "CHAINAGE_UNIT",
        *_height_system(settings),
    )
    return {"INPUT": settings.heights, "AXIS": axis, **_given(settings, keys)}


def measuring(settings, axis):
    """Parameters of measurestations but for its output."""
    keys = ("HEIGHT_FIELD", "HEIGHT_UNIT", "STATION_AXIS_FIELD", "CHAINAGE_UNIT")
    return {"STATIONS": settings.heights, "AXIS": axis, **_given(settings, keys)}


def _reading(settings, stations, axis, placed):
    """What every entry that reads stations is given. ``placed``: they come from placestations, with its own fields."""
    keys = ["HEIGHT_UNIT", "CHAINAGE_UNIT", *_height_system(settings)]
    keys += [] if placed else ["HEIGHT_FIELD", "STATION_AXIS_FIELD"]
    return {"STATIONS": stations, "AXIS": axis, **_given(settings, keys)}


def comparing(settings, stations, axis, placed):
    """Parameters of designheights but for its outputs."""
    keys = ["DESIGN", "TOLERANCE"]
    for letter in CONTROLS[settings.design]:
        keys += [f"CHAINAGE_{letter}", f"HEIGHT_{letter}"]
    if settings.design in WITH_SLOPE:
        keys.append("SLOPE")
    if settings.design == "reference":
        keys.append("REFERENCE")
    keys += ["LINE", "LINE_TOLERANCE"] if settings.line else []
    return {**_reading(settings, stations, axis, placed), **_given(settings, keys)}


def fitting(settings, stations, axis, placed, several):
    """Parameters of fitreference but for its outputs: each axis alone, unless ``several`` are said to share a plane."""
    return {
        **_reading(settings, stations, axis, placed),
        **_given(settings, ["SIGMA"]),
        "FIT": "plane" if several and settings.one_plane else "line",
    }


def testing(settings, stations, axis, placed):
    """Parameters of testcurvature but for its outputs."""
    return {**_reading(settings, stations, axis, placed), **_given(settings, ["SIGMA"])}
