"""What a run has found, verdicts first: residuals, shape, fit and its test, blunders against stretches that moved.

Each is one sentence of the entry or the report that found it, and what to do about it. Nothing is cut off: where there
are many of one kind they are told in one sentence.
"""

from ...algorithms.entry import messages as m
from ...algorithms.language.number_text import listed
from ...algorithms.language.translation import tr
from ...algorithms.report.line_sentences import line_basis, line_headline, line_stretches
from ...algorithms.report.sentences import headline, moved_sentences

# More of one kind than these are told in one sentence, which names them all.
MOST_ALONE = 4
_STRAIGHT = ("chord", "tangent", "inclined", "reference")
# In the order in which they are told.
_OF_BLUNDERS = (m.OTHER_SHAPE, m.MANY_FLAGGED, m.STRETCH_MOVED, m.STEP_SUSPECTED, m.SUSPECTED_BLUNDER, m.NO_BLUNDER)
VERDICT_CODES = (m.FIT_FOUND, m.GLOBAL_TEST_FAILED, m.SET_ASIDE, *_OF_BLUNDERS)


def _with(sentence, to_do):
    """A sentence and, in a line of its own, what to do."""
    return f"{sentence}\n\u2192 {to_do}" if to_do else sentence


def of_residuals(found, structure, told_by_fit=()):
    """[(kind, text)] of the report's Findings; ``told_by_fit``: axes whose stretches the fit tells already."""
    to_do = {
        "nothing to judge": tr("Give heights, then run again."),
        "no tolerance": tr("Give a tolerance to have them judged."),
        "not within": tr("Open the profile, then decide on each of the flagged stations."),
        "not within, not certain": tr("Measure those near the limit more accurately before anything is decided."),
        "doubtful": tr("Have the doubted stations read again, then run again."),
        "accepted": tr("Nothing, unless a decision is changed."),
        "within, not certain": tr(
            "Measure those near the limit more accurately, or state the accuracy of the heights."
        ),
        "within": tr("Nothing; the report is under \u2018Reports\u2019."),
    }
    kind = found.verdict.kind
    sign = {"within": "fact", "accepted": "fact", "no tolerance": "todo"}.get(kind, "doubt")
    told = [(sign, _with(headline(found, structure), to_do[kind]))]
    axes = [found.reviewed.axis[rows[0]] for rows in found.moved]
    if any(axis not in told_by_fit for axis in axes):
        told += [
            ("doubt", _with(text, tr("Look there in the profile; compare with an earlier survey.")))
            for text in moved_sentences(found)
        ]
    return told


def of_line(found, structure):
    """[(kind, text)] of what the Findings say of the line; [] where none was judged."""
    if found.line is None:
        return []
    to_do = {
        "no tolerance": tr("Give a tolerance of the line to have it judged."),
        "not within": tr(
            "Open the profile and switch \u2018Line\u2019 on, then decide on each of the flagged stations."
        ),
        "not within, not certain": tr("Have those near the limit set out again before anything is decided."),
        "doubtful": tr("Have the doubted stations measured again, then run again."),
        "accepted": tr("Nothing, unless a decision is changed."),
        "within, not certain": tr("Have those near the limit measured more accurately."),
        "within": tr("Nothing; the profile shows it with \u2018Line\u2019."),
    }
    kind = found.line.verdict.kind
    sign = {"within": "fact", "accepted": "fact", "no tolerance": "todo"}.get(kind, "doubt")
    look = tr("Look there in the profile; compare with an earlier survey.")
    return [
        (sign, _with(line_headline(found, structure), to_do[kind])),
        *(("doubt", _with(text, look)) for text in line_stretches(found)),
        *(("todo", text) for text in line_basis(found)),
    ]


def of_shapes(rows, designs):
    """[(kind, text)] of rows of the curvature table, dicts with 'axis', 'verdict' and 'sentence'. ``designs``: {axis:
    the design it was compared with}; under '' that of all others, None where it is not known."""
    if len(rows) <= MOST_ALONE:
        return [_shape(row["verdict"], row["sentence"], designs.get(row["axis"], designs.get(""))) for row in rows]
    groups = {}
    for row in rows:
        design = designs.get(row["axis"], designs.get(""))
        groups.setdefault((row["verdict"], design), []).append(row)
    found = []
    for (verdict, design), some in groups.items():
        sentence = some[0]["sentence"]
        if len(some) > 1:
            names = listed([row["axis"] for row in some], len(some))
            sentence = _shapes_in_words()[verdict].format(len(some), names)
        found.append(_shape(verdict, sentence, design))
    return found


def _shapes_in_words():
    return {
        "straight": tr("{} axes or legs are straight in space: {}."),
        "level": tr("{} axes or legs follow the level surface at a constant grade: {}."),
        "neither": tr("{} axes or legs are neither straight in space nor at a constant grade: {}."),
        "undecided": tr("Whether {} axes or legs are straight or level is undecided: {}."),
        "straight on average": tr("{} axes or legs bend on average like a straight line, but do not follow one: {}."),
        "level on average": tr(
            "{} axes or legs follow the level surface on average, but not from station to station: {}."
        ),
    }


def _shape(verdict, sentence, design):
    meant = None if design is None else "straight" if design in _STRAIGHT else "level"
    to_do = {
        "neither": tr("Check unit, height system and undulations; then look at the profile."),
        "undecided": tr("Do not call it straight or level from these heights."),
        "straight on average": tr("Look in the profile where it departs; a stretch may have moved there."),
        "level on average": tr("Look in the profile where it departs; a stretch may have moved there."),
    }.get(verdict)
    if to_do is None and meant not in (None, verdict):
        to_do = tr("The design chosen says otherwise: ask which of the two was meant.")
        return "doubt", _with(sentence, to_do)
    if to_do is None and meant is not None:
        return "fact", _with(sentence, tr("Nothing; the design chosen is of this shape."))
    return "doubt" if to_do else "fact", _with(sentence, to_do)


def of_fits(said):
    """[(kind, text)] of the Messages of a fit: each fit with its global test; none that failed is left out."""
    failed = [one for one in said if one.code == m.GLOBAL_TEST_FAILED]
    held = [one for one in said if one.code == m.FIT_FOUND]
    above, below = ([one for one in failed if one.about[1] == side] for side in ("above", "below"))
    rough = tr(
        "The heights are rougher than stated, or the shape is another: check the accuracy stated, then what is named "
        "below."
    )
    fine = tr("The heights agree better than stated: check the accuracy stated.")
    keep = tr("Nothing; later surveys can be compared with the reference layer.")
    return [
        *_each_or_all(above, "doubt", tr("The global test failed in {} fits, above its limit: {}."), rough),
        *_each_or_all(below, "doubt", tr("The global test failed in {} fits, below its limit: {}."), fine),
        *_each_or_all(held, "fact", tr("{} fits pass the global test, or were not tested: {}."), keep),
    ]


def _each_or_all(some, kind, words, to_do):
    if len(some) <= MOST_ALONE:
        return [(kind, _with(one.text, to_do)) for one in some]
    return [(kind, _with(words.format(len(some), listed([one.about[0] for one in some], len(some))), to_do))]


def of_blunders(said):
    """[(kind, text)] of the Messages of fit and test of the shape: stretches that moved, and blunders of each fit."""
    fits = {one.about[0] for one in said if one.code in (m.FIT_FOUND, m.GLOBAL_TEST_FAILED)}
    found = []
    for code in _OF_BLUNDERS:
        some = [one for one in said if one.code == code]
        found += {m.STRETCH_MOVED: _stretches, m.SUSPECTED_BLUNDER: _suspects, m.NO_BLUNDER: _without}.get(
            code, _as_they_are
        )(some)
    if not fits:
        found += _as_they_are([one for one in said if one.code == m.SET_ASIDE])
    return found


def _as_they_are(some):
    to_do = {
        m.OTHER_SHAPE: tr("Have the shape tested before any single height is blamed."),
        m.STEP_SUSPECTED: tr("Look into the field book of that section."),
    }
    return [("doubt", _with(one.text, to_do.get(one.code, ""))) for one in some]


def _stretches(some):
    to_do = tr("Compare with an earlier survey, and have its first and last station read again.")
    if len(some) <= MOST_ALONE:
        return [("doubt", _with(one.text, to_do)) for one in some]
    places = tr("{} to {} of '{}'")
    names = [places.format(first, last, axis) for _, axis, first, last in (one.about for one in some)]
    sentence = tr("{} stretches seem to have moved, since neighbours lie off on the same side: {}.")
    return [("doubt", _with(sentence.format(len(some), listed(names, len(names))), to_do))]


def _suspects(some):
    to_do = tr("Have them read again; decide in ‘Flagged stations’. No reading is deleted.")
    found = []
    for fit in dict.fromkeys(one.about[0] for one in some):
        mine = [one for one in some if one.about[0] == fit]
        sentence = mine[0].text
        if len(mine) > 1:
            places = [tr("{} of '{}' ({})").format(station, axis, size) for _, axis, station, size in _abouts(mine)]
            sentence = tr("'{}': {} suspected blunders: {}.").format(fit, len(mine), listed(places, len(places)))
        found.append(("doubt", _with(sentence, to_do)))
    return found


def _abouts(some):
    return [one.about for one in some]


def _without(some):
    if len(some) <= MOST_ALONE:
        return [("fact", one.text) for one in some]
    names = listed([one.about[0] for one in some], len(some))
    return [("fact", tr("No blunder is suspected in {} fits: {}.").format(len(some), names))]
