"""Output rows of testcurvature."""

import numpy as np

from ..boundary.fields import CURVATURE
from .curvature_sentences import leg_title, verdict_sentence

_COLUMN = {
    "level": "level",
    "grade": "grade",
    "straight": "strght",
    "8-inch rule": "rule",
    "sphere": "sphere",
    "free": "free",
}


def curvature_table(run, tested, record):
    """Columns of the output table, a row for each axis or leg; in the run's units."""
    tests, unit = [one.test for one in tested], run.units
    kept = np.array([np.count_nonzero(one.kept) for one in tested])
    low, high = (_finite(column) for column in zip(*(test.implied_interval for test in tests)))
    columns = {
        "axis": [one.name for one in tested],
        "number": kept,
        "removed": np.array([len(one.kept) for one in tested]) - kept,
        "length": np.array([test.profile.length for test in tests]) / unit.chainage,
        "factor": [test.factor for test in tests],
        "factor_sd": [test.sd for test in tests],
        "geoid_sd": [test.geoid for test in tests],
        "factor_lo": [test.interval[0] for test in tests],
        "factor_hi": [test.interval[1] for test in tests],
        "radius": np.array([test.radius for test in tests]) / unit.chainage,
        "imp_radius": _finite([test.implied_radius for test in tests]) / unit.chainage,
        "radius_lo": low / unit.chainage,
        "radius_hi": high / unit.chainage,
        "verdict": [test.verdict for test in tests],
        "sentence": [verdict_sentence(leg_title(one), one.test, run) for one in tested],
        "record": [record.text()] * len(tested),
    }
    for models in zip(*(test.models for test in tests)):
        name = _COLUMN[models[0].name]
        columns[f"rms_{name}"] = np.array([model.rms for model in models]) / unit.height
        columns[f"chi_{name}"] = [model.chi_squared for model in models]
    return {name: columns[name] for name in CURVATURE}


def _finite(values):
    """``values`` (n,) as an array, NaN for those that are not finite."""
    found = np.array(values, float)
    return np.where(np.isfinite(found), found, np.nan)
