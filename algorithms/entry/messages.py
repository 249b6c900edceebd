"""What a run says, as messages: beside each sentence the kind, and a code and parameters for a part that acts on it.

A sentence is for people, is translated and may be reworded any day: nothing is decided from its words.
"""

import weakref
from dataclasses import dataclass

FACT, READING, DOUBT, REFUSAL = KINDS = ("fact", "reading", "doubt", "refusal")

ROW_REJECTED = "row rejected"
STATION_TWICE = "station twice"
BEYOND_ENDS = "beyond ends"
NO_AXIS_NAMED = "no axis named"
FIT_FOUND = "fit found"
GLOBAL_TEST_FAILED = "global test failed"
NO_BLUNDER = "no blunder"
SUSPECTED_BLUNDER = "suspected blunder"
STRETCH_MOVED = "stretch moved"
STEP_SUSPECTED = "step suspected"
MANY_FLAGGED = "many flagged"
OTHER_SHAPE = "other shape"
SET_ASIDE = "set aside"
# The table of codes; only what another part acts on has one.
CODES = {
    ROW_REJECTED: "rows of a list cannot be placed; (how many, row in the list or 0 for several, reason or '')",
    STATION_TWICE: "stations stand at one place more than once",
    BEYOND_ENDS: "stations lie beyond the ends of their axis, on its continuation",
    NO_AXIS_NAMED: "a field found by its usual name names no axis at all",
    FIT_FOUND: "a line or plane is fitted, and its global test passed or could not be made; (its name,)",
    GLOBAL_TEST_FAILED: "a line or plane is fitted, and its global test failed; (its name, 'below' or 'above')",
    NO_BLUNDER: "no blunder is suspected in a fit, or too little is left over to test; (its name,)",
    SUSPECTED_BLUNDER: "a station of a fit is a suspected blunder; (name of the fit, axis, station, residual), texts",
    STRETCH_MOVED: "neighbours lie off a fit on one side; (name of the fit, axis, first, last station), texts",
    STEP_SUSPECTED: "a step is suspected in the levelling of an axis; (name of the fit, axis)",
    MANY_FLAGGED: "more than a tenth of a fit's stations is flagged; (its name,)",
    SET_ASIDE: "the test of the shape has set stations aside; (axis or leg,)",
    OTHER_SHAPE: "heights do not have the shape that was fitted, so none was set aside; (its name,)",
}


@dataclass(frozen=True)
class Message:
    """One sentence of a run.

    ``kind``: 'fact', 'reading' (how an input was read), 'doubt' (a warning) or 'refusal' (why there is no result).
    ``code``: one of CODES, '' where nobody acts on it. ``text``: the sentence. ``keys``: the parameters concerned, that
    to be looked at first before the others. ``about``: what the sentence is about, for a part that tells several at
    once; CODES says what. ValueError for an unknown kind or code.
    """

    kind: str
    code: str
    text: str
    keys: tuple = ()
    about: tuple = ()

    def __post_init__(self):
        if self.kind not in KINDS:
            raise ValueError(f"A message is no '{self.kind}'; there are {', '.join(KINDS)}.")
        if self.code and self.code not in CODES:
            raise ValueError(f"The code '{self.code}' is not in the table; there are {', '.join(CODES)}.")
        if isinstance(self.keys, str):
            raise ValueError("The keys of a message are a tuple.")


# {id of a feedback: (weak reference to it, its messages)}: by identity, and gone with the feedback.
_LISTENING = {}


def listen(feedback):
    """The list that the messages of runs with this ``feedback`` are appended to from now on, in the run's thread.

    One list for one feedback, however often it is asked for. Within a model the host gives each step a feedback of its
    own, so nobody hears those.
    """
    heard = _heard(feedback)
    if heard is None:
        number, heard = id(feedback), []
        reference = weakref.ref(feedback, lambda gone: _LISTENING.pop(number, None))
        _LISTENING[number] = (reference, heard)
    return heard


def hand(feedback, message):
    """Give a Message to who listens to ``feedback``, if anyone does."""
    heard = _heard(feedback)
    if heard is not None:
        heard.append(message)


def _heard(feedback):
    reference, heard = _LISTENING.get(id(feedback), (None, None))
    # The number of an object that is gone may come again with another.
    return heard if reference is not None and reference() is feedback else None
