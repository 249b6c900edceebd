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


def typed_words(field):
    """The words that a ``field`` may hold, as they are typed into it whatever the language, each with what a person
    reads for it where that is another word: 'chord, level', in German 'chord (Sehne), level (niveaugleich)'."""
    return ", ".join(word if text == word else f"{word} ({text})" for word, text in words_of(field).items())


def capitalised(text):
    """The same with its first letter raised, where it begins a cell or a sentence."""
    return text[:1].upper() + text[1:]
