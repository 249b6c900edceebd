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
    text = record.text()
    rows = [_row(run, one, text) for one in tested]
    return {name: [row[name] for row in rows] for name in CURVATURE}


def _row(run, one, record_text):
    test, unit = one.test, run.units
    low, high = test.implied_interval
    row = {
        "axis": one.name,
        "number": int(one.kept.sum()),
        "removed": int(np.sum(~one.kept)),
        "length": test.profile.length / unit.chainage,
        "factor": test.factor,
        "factor_sd": test.sd,
        "geoid_sd": test.geoid,
        "factor_lo": test.interval[0],
        "factor_hi": test.interval[1],
        "radius": test.radius / unit.chainage,
        "imp_radius": test.implied_radius / unit.chainage if np.isfinite(test.implied_radius) else None,
        "radius_lo": low / unit.chainage,
        "radius_hi": high / unit.chainage if np.isfinite(high) else None,
        "verdict": test.verdict,
        "sentence": verdict_sentence(leg_title(one), test, unit),
        "record": record_text,
    }
    for model in test.models:
        row[f"rms_{_COLUMN[model.name]}"] = model.rms / unit.height
        row[f"chi_{_COLUMN[model.name]}"] = model.chi_squared
    return row
