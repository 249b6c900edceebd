"""Flags and decisions on stations: the words in the tables, what each means, and the names of file and fields."""

from .translation import tr

# As they stand in the field 'decision', whatever the user's language; other entries read them.
ACCEPT, MEASURE_AGAIN, READING_ERROR, MOVE = "accept", "measure again", "reading error", "move the support"
DECISIONS = (ACCEPT, MEASURE_AGAIN, READING_ERROR, MOVE)
# Flags of a test, as they stand in the field 'flag'; 'measure again' is one too.
SUSPECTED = "suspected blunder"
# What others write for the same.
_ALIKE = {
    "accepted": ACCEPT,
    "keep": ACCEPT,
    "blunder": READING_ERROR,
    "leave out": READING_ERROR,
    "left out": READING_ERROR,
}
_FLAGS = {SUSPECTED: SUSPECTED, "blunder": SUSPECTED, MEASURE_AGAIN: MEASURE_AGAIN}
# Beside the result residuals.gpkg stands residuals_decisions.gpkg, which no run writes.
ENDING = "_decisions.gpkg"
TABLE = "decisions"
FIELDS = ("axis", "station", "chainage", "decision", "note", "by", "at")


def decision_of(text):
    """The decision that a text means, in any case of letters; None for a word that is not known, '' for ''."""
    word = text.strip().casefold()
    return word if word in ("", *DECISIONS) else _ALIKE.get(word)


def flag_of(text):
    """The flag that a text means, in any case of letters: SUSPECTED or MEASURE_AGAIN; '' for all else, which raises no
    doubt."""
    return _FLAGS.get(text.strip().casefold(), "")


def line_doubt(*, moved=False):
    """What a person reads of a station that a test suspects in plan; ``moved``: neighbours are suspected with it on one
    side."""
    return tr("stretch that moved in line") if moved else tr("suspected blunder in line")


def decision_label(decision):
    """What a person reads for a decision; '' is 'None yet'. A word that is not known is shown as it stands."""
    return {
        "": tr("None yet"),
        ACCEPT: tr("Accept as it is"),
        MEASURE_AGAIN: tr("Measure again"),
        READING_ERROR: tr("Reading error"),
        MOVE: tr("Move the support"),
    }.get(decision, decision)


def decision_help(decision):
    """One sentence that tells when a decision is the right one."""
    return {
        "": tr("Nothing has been decided about this station."),
        ACCEPT: tr("The station stays as it was built, although it is flagged."),
        MEASURE_AGAIN: tr("The height is doubted; nothing is moved before it has been measured again."),
        READING_ERROR: tr(
            "The height is wrong, not the structure; the station is left out of the adjustment schedule."
        ),
        MOVE: tr("The height is right; the support is to be raised or lowered."),
    }.get(decision, "")
