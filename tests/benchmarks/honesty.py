"""How often intervals, ellipses and tests keep their word: 2,000 simulated surveys each, with known truth.

    /usr/bin/python3 tests/benchmarks/honesty.py [NUMBER [--json | --table] [--only WORDS]]

``--table``: as a table in Markdown; ``--only``: the kinds whose title holds these words.

Random places between 76 degrees south and north, random azimuths; 31 stations on a line, 53 on two arms of a plane,
1.5 to 3 km long. Independent heights with a standard deviation of 3 mm; levelled ones with 1.5 mm over 1 km and 0.5 mm
of reading. Owed without removal: 95 +- 1.5 %.
"""

import json
import os
import pathlib
import sys
from functools import partial

os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")  # matrices are small: threads cost more than they save
HERE = pathlib.Path(__file__).resolve().parent
sys.path[:0] = [str(HERE.parent), str(HERE)]
import conftest  # noqa: E402,F401  (registers the package by its name)
import numpy as np  # noqa: E402
import simulated_changes  # noqa: E402
import simulated_levelling  # noqa: E402
import simulated_plans  # noqa: E402
import simulated_shapes  # noqa: E402
import simulated_surveys as simulated  # noqa: E402

COUNTS = ("false alarms", "steps suspected")
KINDS = (("line", 1, False), ("plane", 2, False), ("correlated line", 1, True), ("correlated plane", 2, True))


def fit_blocks(number):
    """(title, function that returns the Tally) of fits and curvature factors; dice seeded for repetition."""
    for kind, arms, correlated in KINDS:
        for known in (True, False):
            what = f"{kind}, sigma {'known' if known else 'unknown'}"
            options = {"correlated": correlated, "known": known}
            yield f"{what}, no removal: 95 % owed", partial(simulated.fits, _dice(1), number, arms, **options)
            yield (f"{what}, with removal", partial(simulated.fits, _dice(2), number, arms, remove=True, **options))
            yield (
                f"{what}, one blunder of twice the smallest detectable",
                partial(simulated.blunders, _dice(3), number, arms, **options),
            )
    for known in (True, False):
        sigma = f"sigma {'known' if known else 'unknown'}"
        for system in ("above the geoid", "ellipsoidal"):
            for words, away in (("anywhere", None), ("1.5 km off", 1500.0)):
                yield (
                    f"plane over a geoid that slopes and bends, {system}, correlated, {sigma}, {words}: 95 % owed",
                    partial(
                        simulated.both_points,
                        _dice(4),
                        number,
                        ellipsoidal=system == "ellipsoidal",
                        known=known,
                        correlated=True,
                        sigma=2.5,
                        away=away,
                    ),
                )
        for kind, correlated in (("independent", False), ("correlated", True)):
            for bent in (False, True):
                yield (
                    f"curvature factor, {kind}, {sigma}, geoid {'bends' if bent else 'does not bend'}",
                    partial(
                        simulated.curvature_factors, _dice(5), number, correlated=correlated, known=known, bent=bent
                    ),
                )
    for system in ("above the geoid", "ellipsoidal"):
        for kind in ("independent", "correlated"):
            yield (
                f"line over a geoid that slopes and bends, {system}, {kind}: 95 % owed",
                partial(
                    simulated.both_chainages,
                    _dice(7),
                    number,
                    ellipsoidal=system == "ellipsoidal",
                    correlated=kind == "correlated",
                    sigma=2.5,
                ),
            )
    yield (
        "correlated plane fitted as if independent, ellipse of the tangent point, sigma",
        partial(simulated.ignored_correlation, _dice(6), number),
    )


def plan_blocks(number):
    """The same of lines in plan."""
    for known in (True, False):
        sigma = f"sigma {'known' if known else 'unknown'}"
        lines, knocks = simulated_plans.lines, simulated_plans.knocks
        yield f"in plan, {sigma}, as it is: 95 % owed", partial(lines, _dice(13), number, known=known)
        yield f"in plan, {sigma}, after the search", partial(lines, _dice(14), number, known=known, remove=True)
        yield f"in plan, {sigma}, one station knocked sideways", partial(knocks, _dice(15), number, known=known)


def shape_blocks(number):
    """The same of the second half of the verdict on a shape, and of the smallest detectable blunder."""
    for known, owed in ((True, "3.5 % owed"), (False, "1 % owed")):
        sigma = f"sigma {'known' if known else 'unknown'}"
        for kind, correlated in (("independent", False), ("levelled", True)):
            yield (
                f"pure shapes, {kind}, {sigma}: {owed} not to fit",
                partial(simulated_shapes.shapes, _dice(7), number, correlated=correlated, known=known),
            )
        yield (
            f"waves of 3 sd, {simulated_shapes.SHORTEST_WAVE[known]:g} spacings to 0.6 of the axis, {sigma}: 99 % owed",
            partial(simulated_shapes.shapes, _dice(8), number, correlated=False, known=known, waves=True),
        )
    for stations in (8, 13, 31, 53):
        yield (
            f"smallest detectable blunder, sigma unknown, {stations} stations: 80 % owed",
            partial(simulated_shapes.least_blunders, _dice(9), number, stations=stations),
        )


def chain_blocks(number):
    """The same of surveys compared, of the chain from levelling, and of the chance within a tolerance."""
    for covariance in simulated_changes.COVARIANCES:
        for part in simulated_changes.PARTS:
            for tilt in (False, True):
                yield (
                    f"two surveys, {covariance}, shift{' and tilt' if tilt else ''}, {part}",
                    partial(
                        simulated_changes.changes_of_axes,
                        _dice(10),
                        number,
                        covariance=covariance,
                        part=part,
                        tilt=tilt,
                    ),
                )
    for line in simulated_changes.LINES:
        for part in simulated_changes.PARTS:
            yield (
                f"two surveys sideways, departures from: {line}, {part}",
                partial(simulated_changes.lateral_changes_of_axes, _dice(13), number, line=line, part=part),
            )
    yield "line fitted to adjusted levelling: 95 % owed", partial(simulated_levelling.chain, _dice(11), number)
    yield "chance within of 94 to 96 %: as stated owed", partial(simulated_levelling.chances, _dice(12), number)


def _dice(seed):
    return np.random.default_rng(seed)


def blocks(number, words=""):
    """Title and Tally of each kind of survey whose title holds ``words``."""
    kinds = (fit_blocks, plan_blocks, shape_blocks, chain_blocks)
    for title, made in (block for kind in kinds for block in kind(number)):
        if words in title:
            yield title, made()


def value_text(tally, name):
    share = tally.share(name)
    return f"{share:.3f} per survey" if name in COUNTS else f"{100 * share:.2f} %"


def table(number, words):
    """A table in Markdown: a row for each kind."""
    print("| kind | measured |\n| --- | --- |")
    for title, tally in blocks(number, words):
        print(f"| {title} | {'; '.join(f'{name} {value_text(tally, name)}' for name in tally.held)} |", flush=True)


def show(number, words):
    for title, tally in blocks(number, words):
        print(title)
        for name in tally.held:
            print(f"    {name:34s} {value_text(tally, name)}", flush=True)


if __name__ == "__main__":
    surveys = int(sys.argv[1]) if len(sys.argv) > 1 else 2000
    only = sys.argv[sys.argv.index("--only") + 1] if "--only" in sys.argv else ""
    if "--json" in sys.argv:
        print(json.dumps({title: tally.held for title, tally in blocks(surveys, only)}))
    elif "--table" in sys.argv:
        table(surveys, only)
    else:
        show(surveys, only)
