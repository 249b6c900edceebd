"""How often intervals, ellipses and tests of fits keep their word: 2,000 simulated surveys each, with known truth.

    /usr/bin/python3 tests/benchmarks/honesty.py [NUMBER [--json]]

Random places between 76 degrees south and north, random azimuths; 31 stations on a line, 53 on two arms of a plane,
1.5 to 3 km long. Independent heights with a standard deviation of 3 mm; levelled ones with 1.5 mm over 1 km and 0.5 mm
of reading. Owed without removal: 95 +- 1.5 %.
"""

import json
import os
import pathlib
import sys

os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")  # matrices are small: threads cost more than they save
HERE = pathlib.Path(__file__).resolve().parent
sys.path[:0] = [str(HERE.parent), str(HERE)]
import conftest  # noqa: E402,F401  (registers the package by its name)
import numpy as np  # noqa: E402
import simulated_surveys as simulated  # noqa: E402

COUNTS = ("false alarms", "steps suspected")
KINDS = (("line", 1, False), ("plane", 2, False), ("correlated line", 1, True), ("correlated plane", 2, True))


def blocks(number):
    """Title and Tally of each kind of survey. The dice are seeded for repetition, one for each block."""
    for kind, arms, correlated in KINDS:
        for known in (True, False):
            what = f"{kind}, sigma {'known' if known else 'unknown'}"
            options = {"correlated": correlated, "known": known}
            yield f"{what}, no removal: 95 % owed", simulated.fits(np.random.default_rng(1), number, arms, **options)
            yield (
                f"{what}, with removal",
                simulated.fits(np.random.default_rng(2), number, arms, remove=True, **options),
            )
            yield (
                f"{what}, one blunder of twice the smallest detectable",
                simulated.blunders(np.random.default_rng(3), number, arms, **options),
            )
    for known in (True, False):
        sigma = f"sigma {'known' if known else 'unknown'}"
        for system in ("above the geoid", "ellipsoidal"):
            for words, away in (("anywhere", None), ("1.5 km off", 1500.0)):
                yield (
                    f"plane over a geoid that slopes and bends, {system}, correlated, {sigma}, {words}: 95 % owed",
                    simulated.both_points(
                        np.random.default_rng(4),
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
                    simulated.curvature_factors(
                        np.random.default_rng(5), number, correlated=correlated, known=known, bent=bent
                    ),
                )
    for system in ("above the geoid", "ellipsoidal"):
        for kind in ("independent", "correlated"):
            yield (
                f"line over a geoid that slopes and bends, {system}, {kind}: 95 % owed",
                simulated.both_chainages(
                    np.random.default_rng(7),
                    number,
                    ellipsoidal=system == "ellipsoidal",
                    correlated=kind == "correlated",
                    sigma=2.5,
                ),
            )
    yield (
        "correlated plane fitted as if independent, ellipse of the tangent point, sigma",
        simulated.ignored_correlation(np.random.default_rng(6), number),
    )


def show(number):
    for title, tally in blocks(number):
        print(title)
        for name in tally.held:
            share = tally.share(name)
            value = f"{share:6.3f} per survey" if name in COUNTS else f"{100 * share:6.2f} %"
            print(f"    {name:34s} {value}", flush=True)


if __name__ == "__main__":
    surveys = int(sys.argv[1]) if len(sys.argv) > 1 else 2000
    if "--json" in sys.argv:
        print(json.dumps({title: tally.held for title, tally in blocks(surveys)}))
    else:
        show(surveys)
