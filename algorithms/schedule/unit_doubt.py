"""Whether the unit of a schedule is in doubt: without a record of the stations, what they show must not contradict it.

A movement in the wrong unit is made by a crew before anybody sees it: a doubt stops the run.
"""

import numpy as np

from ..boundary.reference_systems import definition
from ..core.errors import InputError
from ..core.geodesy import ellipsoid_of, foot_and_normal
from ..core.row_ranges import rows_of_each
from ..core.unit_check import unit_by_bend, unit_by_distance
from ..language.translation import tr


def check_units(asked, stations, units):
    """InputError where nothing states a unit and the stations look as if they were in another one than is taken; where
    the form states it, a warning.

    ``stations``: ReviewedStations; ``units``: of the run. Two signs: the distances between the stations against their
    chainages, and the bend of a straight design against that of the Earth.
    """
    if asked.record_of("STATIONS").height_unit:
        return
    chainage = stations.chainage * units.chainage
    points = stations.points
    foot, _ = foot_and_normal(points.lat, points.lon, ellipsoid_of(definition(points.crs)))
    number = stations.axis_numbers
    seen = []
    by_distance = _of_chainages(stations.chainage, foot, number)
    if by_distance and by_distance != _kind(units.chainage_name):
        seen.append(("CHAINAGE_UNIT", units.chainage_name, by_distance, tr("distances between the stations")))
    # The distances tell the places' chainages in metres, whatever the field's unit is.
    metres = stations.chainage * {"foot": 0.3048, "metre": 1.0}.get(by_distance, units.chainage)
    metres = metres if by_distance else chainage
    bend = (stations.design - stations.flat) / units.height
    bends = {unit_by_bend(metres[rows], bend[rows]) for rows in rows_of_each(number.tolist()).values()} - {""}
    if len(bends) == 1 and bends != {_kind(units.height_name)}:
        seen.append(("HEIGHT_UNIT", units.height_name, bends.pop(), tr("bend of the straight design")))
    for key, taken, looks, sign in seen:
        text = tr(
            "Layer '{}' has no record of its run, and by the {} it is in '{}', not in '{}' ({}); state HEIGHT_UNIT and "
            "CHAINAGE_UNIT, or give the layer that 'Design heights and residuals' made."
        ).format(stations.name, sign, looks, taken, key)
        if not asked.choice("HEIGHT_UNIT"):
            raise InputError(text, keys=(key, "HEIGHT_UNIT"))
        asked.warn(text, keys=(key,))


def _kind(unit):
    return "metre" if unit == "metre" else "foot"


def _of_chainages(chainage, places, number):
    """The unit of chainages by the distances in space between the places (n, 3), metres."""
    order = np.lexsort((chainage, number))
    steps = np.concatenate([[0.0], np.linalg.norm(np.diff(places[order], axis=0), axis=1)])
    along = np.empty(len(order))
    along[order] = np.cumsum(steps)
    return unit_by_distance(chainage, along, np.zeros(len(along)), number)
