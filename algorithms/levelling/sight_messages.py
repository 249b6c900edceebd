"""What a run of reducesights says."""

import numpy as np

from ..core.angles import reads_like_the_other_unit
from ..core.sights import MEAN_RADIUS
from ..entry.messages import ROW_REJECTED
from ..language.height_text import height_with_unit, small_text
from ..language.number_text import counted, listed, number_text
from ..language.translation import tr
from .reduced_sights import BOTH_WAYS, SECTION, SETUP, TRIGONOMETRIC

# A staff is seldom longer; beyond it the unit is in doubt. Metres.
LONGEST_STAFF = 5.5
USUAL_K = (-0.5, 0.6)


def tell_sights(table, reduction, found, units, asked):
    """Push the sentences of a run: what was understood, used and found, and what is doubtful."""
    say, warn = asked.say, asked.warn
    say(_understood(table, units))
    say(_stated(reduction, found))
    if _horizontal(table, reduction):
        say(_horizontal(table, reduction))
    if reduction.peg is not None or reduction.collimation:
        say(_collimation(reduction, units))
    for sentence in _reciprocal(found, reduction):
        say(sentence)
    say(_greatest(found, units))
    for sentence in _doubts(table, reduction, found):
        warn(sentence)
    _rejections(table, warn)


def _understood(table, units):
    def named(key, words):
        name = table.described(key)
        return tr("{} from '{}'").format(words, name) if name else ""

    parts = (
        [named("FROM_FIELD", tr("start")), named("TO_FIELD", tr("end"))]
        if not table.is_book
        else [named("POINT_FIELD", tr("point"))]
    )
    parts += [
        named("SLOPE_FIELD", tr("slope distance")),
        named("HORIZONTAL_FIELD", tr("horizontal distance")),
        named("ZENITH_FIELD", tr("zenith angle")),
        named("VERTICAL_FIELD", tr("vertical angle")),
        named("INSTRUMENT_FIELD", tr("instrument height")),
        named("TARGET_FIELD", tr("target height")),
        named("BACK_FIELD", tr("back sight")),
        named("FORE_FIELD", tr("fore sight")),
        named("INTER_FIELD", tr("intermediate sight")),
        named("BACK_LENGTH_FIELD", tr("its length")),
        named("FORE_LENGTH_FIELD", tr("length of the fore sight")),
        named("K_FIELD", tr("k")),
        named("DAY_FIELD", tr("day")),
    ]
    return tr("Understood: {} of layer '{}'; {}; heights in {}, distances in {}.").format(
        counted(len(table), tr("row"), tr("rows")),
        table.source.sourceName(),
        "; ".join(filter(None, parts)),
        units.height_label,
        units.chainage_label,
    )


def _stated(reduction, found):
    kinds = [
        tr("{}").format(text)
        for kind, text in (
            (
                TRIGONOMETRIC,
                counted(
                    found.kind.count(TRIGONOMETRIC), tr("single trigonometric sight"), tr("single trigonometric sights")
                ),
            ),
            (BOTH_WAYS, counted(found.pairs, tr("reciprocal pair"), tr("reciprocal pairs"))),
            (SETUP, counted(found.kind.count(SETUP), tr("setup of a level"), tr("setups of a level"))),
            (
                SECTION,
                counted(
                    found.kind.count(SECTION), tr("section of the levelling book"), tr("sections of the levelling book")
                ),
            ),
        )
        if kind in found.kind
    ]
    used = found.k[np.isfinite(found.k)]
    k = (
        tr("k {} to {}").format(number_text(used.min(), 3), number_text(used.max(), 3))
        if len(used) and np.ptp(used)
        else (tr("k = {}").format(number_text(used[0], 3)) if len(used) else tr("no k needed"))
    )
    radius = _radius_words(reduction)
    stated = np.isfinite(found.deviation)
    if np.all(stated):
        sigma = tr("every height difference has a standard deviation")
    elif np.any(stated):
        sigma = tr("{} have no standard deviation: state ANGLE_SIGMA and READING_SIGMA").format(
            counted(int((~stated).sum()), tr("height difference"), tr("height differences"))
        )
    else:
        sigma = tr("no standard deviations, since neither ANGLE_SIGMA nor READING_SIGMA is stated")
    return tr("{}; {}; {}; {}.").format(", ".join(kinds), k, radius, sigma)


def _radius_words(reduction):
    if np.isfinite(reduction.radius):
        return tr("Earth's radius {} km as given").format(number_text(reduction.radius / 1000.0, 3))
    if reduction.named is not None:
        return tr("Earth's radius from the points' positions")
    if reduction.asked.number("LATITUDE") is not None:
        return tr("Earth's radius at the latitude")
    return tr("Earth's radius {} km").format(number_text(MEAN_RADIUS / 1000.0, 0))


def _horizontal(table, reduction):
    """What the horizontal distances were taken as; '' where none was used."""
    used = np.isfinite(table.columns["horizontal"]) & np.isnan(table.columns["slope"]) & np.isfinite(table.zenith)
    if not np.any(used) or not reduction.horizontal_at:
        return ""
    if reduction.horizontal_at == "instrument":
        return tr("Horizontal distances lie at the instrument (HORIZONTAL_AT).")
    if np.isnan(reduction.site_height):
        return tr("Horizontal distances are arcs on the ellipsoid (HORIZONTAL_AT).")
    return tr("Horizontal distances are arcs on the ellipsoid, the sights {} above it (SITE_HEIGHT).").format(
        height_with_unit(reduction.site_height, reduction.units)
    )


def _collimation(reduction, units):
    c = reduction.collimation
    way = tr("up") if c > 0 else tr("down")
    text = tr("The level's line of sight points {} by {}\u2033, which is {} in 30 m").format(
        way, number_text(abs(reduction.collimation_seconds), 1), small_text(abs(c) * 30.0, units)
    )
    if reduction.peg is None:
        return text + "."
    own = (
        ""
        if np.isnan(reduction.peg.deviation)
        else tr(", standard deviation {}\u2033").format(number_text(np.degrees(reduction.peg.deviation) * 3600.0, 1))
    )
    return tr("Two-peg test: {}{}.").format(text[0].lower() + text[1:], own)


def _reciprocal(found, reduction):
    if not found.pairs:
        return
    k = found.k_solved[np.isfinite(found.k_solved)]
    sentence = (
        tr("Reciprocal sights: k {} to {}, weighted mean {}.").format(
            number_text(k.min(), 4), number_text(k.max(), 4), number_text(found.mean_k, 4)
        )
        if len(k) > 1
        else tr("Reciprocal sights: k = {}.").format(number_text(k[0], 4))
    )
    at_level = any(kind == BOTH_WAYS and np.isfinite(imbalance) for kind, imbalance in zip(found.kind, found.imbalance))
    if at_level and not reduction.collimation:
        sentence += tr(" The level's line of sight is taken as level in it: a two-peg test would tell.")
    yield sentence
    for day, (mean, deviation, number) in list(found.day_k.items())[:20]:
        if day:
            own = "" if np.isnan(deviation) else tr(", standard deviation {}").format(number_text(deviation, 4))
            yield tr("Day '{}': k = {} from {}{}.").format(
                day, number_text(mean, 4), counted(number, tr("pair"), tr("pairs")), own
            )


def _greatest(found, units):
    at = int(np.argmax(np.abs(found.curvature)))
    sentence = tr("Greatest correction for curvature and refraction: {} ({} to {}).").format(
        small_text(found.curvature[at], units, True), found.start[at], found.end[at]
    )
    imbalance = np.nan_to_num(found.imbalance)
    unbalanced = np.where([kind != BOTH_WAYS for kind in found.kind], imbalance, 0.0)
    if np.any(unbalanced):
        at = int(np.argmax(np.abs(unbalanced)))
        sentence += tr(
            " Greatest imbalance of sights: {} {} ({} to {}), which made {} by curvature and {} by collimation."
        ).format(
            number_text(found.imbalance[at] / units.chainage, 1),
            units.chainage_label,
            found.start[at],
            found.end[at],
            small_text(-found.curvature[at], units, True),
            small_text(-found.collimation[at], units, True),
        )
    return sentence


def _doubts(table, reduction, found):
    name, zenith = table.source.sourceName(), table.zenith[np.isfinite(table.zenith)]
    if len(zenith) and np.median(np.abs(zenith - 90.0)) > 45.0:
        yield tr(
            "Layer '{}': most sights point steeply up or down; are the angles zenith or vertical angles, and is their "
            "unit right?"
        ).format(name)
    yield from _doubtful_unit(table, reduction)
    for column, words in (("back", tr("back sight")), ("fore", tr("fore sight"))):
        far = np.flatnonzero(np.abs(np.nan_to_num(table.columns[column])) > LONGEST_STAFF)
        if len(far):
            yield tr("Layer '{}': a {} is beyond {} m, longer than a staff: {} {}; check the unit.").format(
                name, words, number_text(LONGEST_STAFF, 1), tr("row") if len(far) == 1 else tr("rows"), listed(far + 1)
            )
    strange = np.flatnonzero((found.k_solved < USUAL_K[0]) | (found.k_solved > USUAL_K[1]))
    if len(strange):
        yield tr("Reciprocal sights imply an unusual k: {}; a sight, a target height or a name may be wrong.").format(
            listed(
                [
                    tr("{} to {} k = {}").format(found.start[j], found.end[j], number_text(found.k_solved[j], 2))
                    for j in strange
                ]
            )
        )
    for first, second in reduction.unpaired[:10]:
        yield tr(
            "Layer '{}', rows {} and {}: sights both ways with lengths that differ by more than 1 percent are not "
            "combined."
        ).format(name, first + 1, second + 1)
    bare = [k for k, kind in enumerate(found.kind) if kind in (SETUP, SECTION) and np.isnan(found.length[k])]
    if bare:
        yield tr("{} of a level without both sight lengths: nothing is corrected there.").format(
            counted(len(bare), tr("line"), tr("lines"))
        )


def _doubtful_unit(table, reduction):
    """A sentence where zenith angles in gon look like degrees, or the reverse."""
    unit = reduction.asked.choice("ANGLE_UNIT")
    if table.fields["ZENITH_FIELD"] < 0 or not reads_like_the_other_unit(table.zenith, unit, reduction.pairs_of_rows):
        return
    per = 0.9 if unit == "gon" else 1.0
    text = tr(
        "Layer '{}', field '{}': the zenith angles are read in {} (ANGLE_UNIT), and look like {}: their middle is {}, "
        "and a level sight has {} in gon, {} in degrees; check the unit."
    )
    yield text.format(
        table.source.sourceName(),
        table.described("ZENITH_FIELD"),
        tr("gon") if unit == "gon" else tr("degrees"),
        tr("degrees") if unit == "gon" else tr("gon"),
        number_text(float(np.nanmedian(table.zenith)) / per, 2),
        100,
        90,
    )


def _rejections(table, warn):
    rows = sorted(table.rejected)
    for row in rows[:20]:
        warn(
            tr("Layer '{}', row {} is rejected: {}").format(table.source.sourceName(), row + 1, table.rejected[row]),
            ROW_REJECTED,
        )
    if len(rows) > 20:
        warn(
            tr("{} rejected; see REJECTED.").format(counted(len(rows) - 20, tr("more row is"), tr("more rows are"))),
            ROW_REJECTED,
        )
