"""What a run of adjustlevelling says: sentences for the log and the page, and warnings."""

import numpy as np

from ..core.matching import near_names
from ..language.height_text import height_with_unit, levelled_amounts
from ..language.number_text import counted, listed, number_text, signed_text
from ..language.translation import tr

_MOST = 10


def tell_net(run):
    """Push the sentences of a run; returns (what was understood and found, what is doubtful) for the page."""
    said = [_understood(run), _datum(run), *_gravity(run), *_adjustment(run), *_misclosures(run)]
    doubts = [
        *_names(run),
        *_gravity_left_out(run),
        *_loose(run),
        *_global(run),
        *_suspects(run),
        *_moved(run),
        *_beyond(run),
        *_unchecked(run),
    ]
    for sentence in said:
        run.asked.say(sentence)
    for sentence in doubts:
        run.asked.warn(sentence)
    return said, doubts


def _fine(value, units, sign=False):
    return levelled_amounts(units.height_name).with_unit(value, sign)


def line_name(run, line):
    """'A – B' of a line of the net."""
    net = run.lines.net
    return f"{net.names[net.start[line]]} \u2013 {net.names[net.end[line]]}"


def _understood(run):
    lines = run.lines
    parts = [
        tr("{} from '{}'").format(words, lines.named(key))
        for key, words in (
            ("FROM_FIELD", tr("start")),
            ("TO_FIELD", tr("end")),
            ("DIFFERENCE_FIELD", tr("height difference")),
            ("LENGTH_FIELD", tr("length")),
            ("SETUPS_FIELD", tr("setups")),
        )
        if lines.named(key)
    ]
    return tr("Understood: {} between {} of layer '{}'; {}; {}; heights in {}, lengths in {}.").format(
        counted(len(lines.net), tr("line"), tr("lines")),
        counted(len(lines.net.names), tr("point"), tr("points")),
        lines.source.sourceName(),
        "; ".join(parts),
        lines.described,
        run.units.height_label,
        run.units.chainage_label,
    )


def _datum(run):
    names, units = run.lines.net.names, run.units
    if run.free:
        return tr("Free adjustment; held: {}.").format(
            listed([tr("{} at {}").format(names[k], height_with_unit(height, units)) for k, height in run.held.items()])
        )
    fixed = [
        tr("{} at {}").format(names[k], height_with_unit(m.height, units))
        for k, m in run.tied.items()
        if m.deviation == 0.0
    ]
    weighted = [
        tr("{} at {}, standard deviation {}").format(
            names[k], height_with_unit(m.height, units), _fine(m.deviation, units)
        )
        for k, m in run.tied.items()
        if m.deviation > 0.0
    ]
    parts = [tr("held fixed: {}").format(listed(fixed, 8))] if fixed else []
    parts += [tr("taking part with their standard deviation: {}").format(listed(weighted, 8))] if weighted else []
    return tr("Benchmarks {}.").format("; ".join(parts))


def _gravity(run):
    if not run.gravity.applied:
        return
    found = run.gravity.correction
    zero = (
        tr("heights taken as above the sea")
        if not run.gravity.datum_height
        else tr("the datum {} above the sea").format(height_with_unit(run.gravity.datum_height, run.units))
    )
    yield tr("Gravity: normal-orthometric correction of {} to {} a line (normal gravity on GRS 80; {}).").format(
        _fine(found.min(), run.units, True), _fine(found.max(), run.units, True), zero
    )


def _gravity_left_out(run):
    """A sentence where the correction that is left out is more than a tenth of what a line may be wrong by."""
    if run.gravity.applied:
        return
    share = np.abs(run.gravity.correction) / run.line_tolerances
    if np.any(share > 0.1):
        line = int(np.nanargmax(share))
        yield tr(
            "Gravity: line {} would be corrected by {} (normal-orthometric, heights taken as above the sea), more "
            "than a tenth of {}, {}; GRAVITY 'normal' does it."
        ).format(
            line_name(run, line),
            _fine(run.gravity.correction[line], run.units, True),
            _fine(run.line_tolerances[line], run.units),
            tr("its limit") if run.has_limit else tr("3.29 of its standard deviations"),
        )


def _adjustment(run):
    a, units = run.adjustment, run.units
    sd = a.height_deviations[a.points]
    text = tr("Adjusted: {} from {}, {} degrees of freedom.").format(
        counted(len(a.points), tr("height"), tr("heights")),
        counted(len(a.residuals), tr("observation"), tr("observations")),
        a.freedom,
    )
    if len(sd) and np.all(np.isfinite(sd)):
        text += tr(" Standard deviations of the heights {} to {}.").format(
            _fine(sd.min(), units), _fine(sd.max(), units)
        )
    yield text
    if a.freedom > 0 and not run.lines.known:
        what = {"km": tr("1 km"), "setup": tr("a setup")}.get(run.lines.weights, tr("a line"))
        unit = np.sqrt(a.variance_factor) * (1e-3 if run.lines.weights in ("km", "setup") else 1.0)
        yield tr("Standard deviation of {} as estimated: {}.").format(what, _fine(unit, units))
    test = a.global_test
    if test is not None:
        yield tr(
            "Global test {}: weighted sum of squares {}, between {} and {} expected (95 percent); variance factor {}."
        ).format(
            tr("passed") if test[3] else tr("failed"),
            number_text(test[0], 2),
            number_text(test[1], 2),
            number_text(test[2], 2),
            number_text(a.variance_factor, 3),
        )
    if a.freedom == 0:
        yield tr("Every height is determined once only: no line is checked.")


def _misclosures(run):
    for kind, one, many in (
        ("section", tr("section levelled more than once"), tr("sections levelled more than once")),
        ("loop", tr("independent loop"), tr("independent loops")),
        ("benchmarks", tr("route between fixed benchmarks"), tr("routes between fixed benchmarks")),
    ):
        mine = [m for m in run.misclosures if m.kind == kind]
        if mine:
            worst = max(mine, key=lambda m: abs(m.value))
            limit = run.limit(worst)
            allowed = "" if np.isnan(limit) else tr(" of {} allowed").format(_fine(limit, run.units))
            yield tr("{}: greatest misclosure {}{} ({}).").format(
                counted(len(mine), one, many), _fine(worst.value, run.units, True), allowed, run.path(worst)
            )


def _names(run):
    missing = [name for name in run.benchmarks if name not in run.index]
    if missing:
        yield tr("No line touches {}: {}.").format(
            tr("the benchmark") if len(missing) == 1 else tr("the benchmarks"), listed(missing, 8)
        )
        alike = near_names(missing, run.index)
        if alike:
            yield tr("Benchmarks and points whose names are nearly the same: {}.").format(_pairs_text(alike))
    alike = near_names(run.index, reversed(list(run.index)))
    if alike:
        yield tr("Points whose names are nearly the same, taken as different: {}.").format(_pairs_text(alike))
    if run.named is not None:
        absent = [name for name in run.index if name not in run.named.place]
        if len(absent) == len(run.index):
            yield tr("No point of the net is among the stations of layer '{}'.").format(run.named.source.sourceName())


def _pairs_text(pairs):
    return listed([tr("'{}' and '{}'").format(*pair) for pair in pairs], 3)


def _loose(run):
    for names in run.loose_parts[:_MOST]:
        yield tr(
            "The part of the net with {} ({}) reaches no benchmark and gets no heights: tie it to the rest, or give it "
            "a benchmark."
        ).format(listed(names, 4), counted(len(names), tr("point"), tr("points")))
    if len(run.loose_parts) > _MOST:
        yield tr("{} more parts reach no benchmark.").format(len(run.loose_parts) - _MOST)


def _global(run):
    test = run.adjustment.global_test
    if test is not None and not test[3]:
        yield tr("The global test fails: the lines agree {} than their stated accuracy would suggest; {}.").format(
            *(
                (tr("worse"), tr("a blunder, a moved benchmark, or an accuracy that is too good"))
                if test[0] > test[2]
                else (tr("better"), tr("the stated accuracy is too poor"))
            )
        )


def _observation(run, k):
    """A line or a weighted benchmark by name."""
    a = run.adjustment
    if a.observed[k] >= 0:
        return line_name(run, a.observed[k])
    return tr("benchmark {}").format(run.lines.net.names[a.benchmarks[k - len(a.residuals)]])


def _suspects(run):
    a, units = run.adjustment, run.units
    found = sorted(np.flatnonzero(run.suspected), key=lambda k: -abs(a.w[k]))
    told = set()
    for k in found[:_MOST]:
        if k in told:
            continue
        text = tr("{}: w = {}, observed minus adjusted {}: a blunder is suspected, of about {}.").format(
            _observation(run, k),
            signed_text(a.w[k], 1),
            _fine(a.residuals[k], units, True),
            _fine(a.residuals[k] / a.redundancies[k], units, True),
        )
        twins = a.twins(k)
        told.update(twins.tolist())
        if len(twins):
            text += tr(" A blunder in {} would look the same.").format(listed([_observation(run, j) for j in twins], 4))
        yield text
    if len(found) > 1:
        more = tr(" {} more are in LINES.").format(len(found) - _MOST) if len(found) > _MOST else ""
        yield tr(
            "A blunder raises the test values around it too: check the first of these, leave it out if it proves "
            "wrong, and run again before you doubt the others.{}"
        ).format(more)


def _moved(run):
    if not run.free:
        return
    net = run.lines.net
    for k in np.flatnonzero(np.abs(np.nan_to_num(run.point_w)) > 1.96)[:_MOST]:
        difference = run.adjustment.heights[k] - run.given[k]
        yield tr(
            "Benchmark {} comes out {} {} than given, {} times its standard deviation: it may have moved, or its given "
            "height may be wrong."
        ).format(
            net.names[k],
            _fine(abs(difference), run.units),
            tr("higher") if difference > 0 else tr("lower"),
            number_text(abs(run.point_w[k]), 1),
        )


def _beyond(run):
    for one in run.beyond[:_MOST]:
        yield tr("Misclosure {} of {} exceeds its limit {} ({}).").format(
            _fine(one.value, run.units, True),
            run.path(one),
            _fine(run.limit(one), run.units),
            tr("section")
            if one.kind == "section"
            else tr("loop")
            if one.kind == "loop"
            else tr("between fixed benchmarks"),
        )
    if len(run.beyond) > _MOST:
        yield tr("{} more misclosures exceed their limit; see MISCLOSURES.").format(len(run.beyond) - _MOST)
    lacking = [one for one in run.misclosures if not np.isfinite(one.length)]
    if lacking and (run.level_class or run.factor is not None):
        yield tr("{} without a limit, since a line in it has no length.").format(
            counted(len(lacking), tr("misclosure stays"), tr("misclosures stay"))
        )


def _unchecked(run):
    rows = np.flatnonzero(run.flags == "unchecked")
    if len(rows) and run.adjustment.freedom > 0:
        yield tr("{} checked by no other: {}.").format(
            counted(len(rows), tr("line is"), tr("lines are")), listed([line_name(run, k) for k in rows], 4)
        )
