"""How accurate each residual of a report is: the heights' own errors and those of the controls they are seen from."""

import numpy as np

from ..core.residual_accuracy import control_shares, residual_deviations

# A control that is a station stands at its chainage.
_SAME_PLACE = 0.01


def deviations_of_residuals(reviewed):
    """(standard deviations of the residuals, metres (n,), NaN where not known; whether a control is a station)."""
    found, any_control = reviewed.sd.copy(), False
    for axis in reviewed.axes:
        rows = reviewed.rows(axis)
        controls = reviewed.record.axis(axis).get("controls", ())
        places = [_number(control, "chainage") * reviewed.units.chainage for control in controls]
        at = np.array([_station(reviewed, rows, control, place) for control, place in zip(controls, places)], int)
        if not np.any(at >= 0) or len(at) > 2 or len(at) == 2 and not abs(places[1] - places[0]) > _SAME_PLACE:
            continue
        any_control = True
        matrix = None if reviewed.covariance is None else reviewed.covariance[np.ix_(rows, rows)]
        shares = control_shares(reviewed.chainage[rows], places)
        found[rows] = residual_deviations(reviewed.sd[rows] ** 2, at, shares, matrix)
    return found, any_control


def _number(control, key):
    value = control.get(key)
    return float(value) if isinstance(value, (int, float)) else np.nan


def _station(reviewed, rows, control, place):
    """Position in ``rows`` of the station that is a control, -1 where its height was typed or no station is there."""
    if control.get("typed") is not False or not np.isfinite(place) or not len(rows):
        return -1
    away = np.where(np.isfinite(reviewed.residual[rows]), np.abs(reviewed.chainage[rows] - place), np.inf)
    nearest = np.lexsort((np.abs(np.nan_to_num(reviewed.offset[rows])), np.nan_to_num(away, nan=np.inf)))[0]
    return int(nearest) if away[nearest] <= _SAME_PLACE else -1
