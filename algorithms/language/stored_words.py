"""Words that layers, CSV files and records store, the same in every language, and what a person reads for each.

Tables, pages, sheets, labels and map tips show them by ``stored_text``; no rule rests on what is shown.
"""

from .translation import tr, translatable

_STATUS = {
    "within": translatable("within"),
    "high": translatable("high"),
    "low": translatable("low"),
    "no height": translatable("no height"),
    "no tolerance": translatable("no tolerance"),
    "off axis": translatable("off axis"),
}
_SIDE = {
    "within": translatable("within"),
    "left": translatable("left"),
    "right": translatable("right"),
    "no tolerance": translatable("no tolerance"),
    "no line": translatable("no line"),
    "off axis": translatable("off axis"),
}
_FLAG = {
    "kept": translatable("kept"),
    "suspected blunder": translatable("suspected blunder"),
    "not fitted": translatable("not fitted"),
    "no height": translatable("no height"),
    "off axis": translatable("off axis"),
    "measure again": translatable("measure again"),
    # Of a levelled line.
    "unchecked": translatable("unchecked"),
    "no benchmark": translatable("no benchmark"),
}
_CHANGE = {
    "risen": translatable("risen"),
    "settled": translatable("settled"),
    "left": translatable("left"),
    "right": translatable("right"),
    "possible": translatable("possible"),
    "not significant": translatable("not significant"),
    "no sd": translatable("not judged"),
}
_STATE = {
    "inside": translatable("inside the structure"),
    "outside": translatable("outside the structure"),
    "poorly determined": translatable("poorly determined"),
}
# By the field they stand in.
_WORDS = {
    "status": _STATUS,
    "side": _SIDE,
    "flag": _FLAG,
    "verdict": _CHANGE,
    # Of what is common to an axis.
    "shift_verd": {
        "significant": translatable("significant"),
        "not significant": translatable("not significant"),
        "not judged": translatable("not judged"),
    },
    "state": _STATE,
    "global_t": {"passed": translatable("passed"), "failed": translatable("failed"), "none": translatable("none")},
    # What was fitted. Another word than that of a levelled line.
    "kind": {"line": translatable("straight line"), "plane": translatable("plane")},
    "design": {
        "chord": translatable("chord"),
        "tangent": translatable("tangent"),
        "inclined": translatable("inclined"),
        "reference": translatable("reference"),
        "level": translatable("level"),
        "grade": translatable("grade"),
    },
    "line": {
        "none": translatable("none"),
        "axis": translatable("axis"),
        "chord": translatable("chord"),
        "fitted": translatable("fitted"),
    },
    "height_system": {
        "ellipsoidal": translatable("above the ellipsoid"),
        "unknown": translatable("above the geoid; its undulation was not known to the run"),
        "field": translatable("above the geoid"),
        "grid": translatable("above the geoid"),
        "constant": translatable("above the geoid"),
    },
    "earth": {"ellipsoid": translatable("ellipsoid"), "sphere": translatable("sphere"), "flat": translatable("flat")},
    "decision": {
        "accept": translatable("accept"),
        "measure again": translatable("measure again"),
        "reading error": translatable("reading error"),
        "move the support": translatable("move the support"),
    },
    "action": {
        # Raise and lower, which are told with their amount, are worded where that is written.
        "keep": translatable("keep"),
        "measure again": translatable("measure again"),
        "left out": translatable("left out"),
        "no height": translatable("no height"),
        "off axis": translatable("off axis"),
    },
    "lat_action": {
        "left": translatable("left"),
        "right": translatable("right"),
        "keep": translatable("keep"),
        "measure again": translatable("measure again"),
        "set aside": translatable("set aside"),
        "no line": translatable("no line"),
        "off axis": translatable("off axis"),
    },
    "role": {
        "fixed": translatable("fixed"),
        "weighted": translatable("weighted"),
        "held": translatable("held"),
        "checked": translatable("checked"),
        "adjusted": translatable("adjusted"),
        "no benchmark": translatable("no benchmark"),
        "not in the net": translatable("not in the net"),
    },
    "misclosure": {
        "within": translatable("within"),
        "beyond": translatable("beyond"),
        "no limit": translatable("no limit"),
    },
}
# The same words where there is room to say what they stand for.
_DESCRIBED = {
    "design": {
        "chord": translatable("chord: straight between two controls"),
        "tangent": translatable("tangent: straight, level at its control"),
        "inclined": translatable("inclined: straight, with a slope at its control"),
        "reference": translatable("a fitted or fixed plane"),
        "level": translatable("level: follows the level surface"),
        "grade": translatable("grade: a constant slope above the level surface"),
    },
    "line": {
        "axis": translatable("the axis as drawn"),
        "chord": translatable("the vertical plane through two of its stations"),
        "fitted": translatable("the vertical plane that fits its stations best"),
    },
    "earth": {
        "ellipsoid": translatable("ellipsoid, exact"),
        "sphere": translatable("sphere, for comparison only"),
        "flat": translatable("no curvature, for comparison only"),
    },
    "height_system": {
        "ellipsoidal": translatable("ellipsoidal"),
        "unknown": translatable("above a geoid whose undulation is not known to the run"),
        "field": translatable("above the geoid, undulations of the stations from a field"),
        "grid": translatable("above the geoid, undulations from a grid"),
        "constant": translatable("above the geoid, one undulation for all"),
    },
}
# Fields that hold the same words as another.
_ALIKE = {
    "after": "status",
    "lat_after": "side",
    "lat_flag": "flag",
    "lat_verd": "verdict",
    "bend_verd": "verdict",
    "lbend_verd": "verdict",
    "lin_test": "global_t",
}


def words_of(field):
    """{stored word: what a person reads} of a ``field``, in the user's language."""
    return {stored: tr(text) for stored, text in _WORDS[_ALIKE.get(field, field)].items()}


def stored_text(field, word):
    """What a person reads for a ``word`` stored in ``field``. A word that is not known is shown as it stands."""
    text = _WORDS[_ALIKE.get(field, field)].get(word)
    return word if text is None else tr(text)


def described(field, word):
    """What a ``word`` stored in ``field`` stands for, in a few words; '' for one that is not known."""
    text = _DESCRIBED[field].get(word)
    return "" if text is None else tr(text)


def typed_words(field):
    """The words that a ``field`` may hold, as they are typed into it whatever the language, each with what a person
    reads for it where that is another word: 'chord, level', in German 'chord (Sehne), level (niveaugleich)'."""
    return ", ".join(word if text == word else f"{word} ({text})" for word, text in words_of(field).items())


def capitalised(text):
    """The same with its first letter raised, where it begins a cell or a sentence."""
    return text[:1].upper() + text[1:]
