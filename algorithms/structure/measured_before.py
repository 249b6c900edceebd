"""Stations that a run of ours has measured before and that are measured anew: told where the columns it left contradict
what is measured now. A new axis is legitimate, so nothing is refused."""

import numpy as np

from ..boundary.fields import MEASURED
from ..boundary.input_fields import field_indices
from ..core.axis import chainages_and_offsets
from ..core.measured_again import measured_again
from ..core.units import metres_per
from ..language.number_text import listed
from ..language.translation import tr

# Of the points as read: the chainage that they had before, in the unit that their record tells.
BEFORE = "chainage before"


def chainage_before(record, source):
    """{BEFORE: index of the field 'chainage' of a source} where the ``record`` of the layer's run
    tells how it is measured, else {}."""
    if not (record.entry and record.chainage_unit):
        return {}
    found = field_indices(source)
    # Who has a chainage of his own seldom has all that a run of ours leaves beside it.
    return {BEFORE: found["chainage"]} if all(name in found for name in MEASURED) else {}


def warn_of_contradictions(asked, structure, placed, notation):
    """Warn once of stations that stand elsewhere than their column says, and of axes that run the other way.
    ``structure``: Structure, its points with a column BEFORE or without; ``placed``: PlacedAxes; ``notation``: of this
    run."""
    points, feet = structure.points, structure.feet
    before = _before(asked, points)
    if before is None:
        return
    other = asked.text("CHAINAGE_START") != asked.record_of("STATIONS").parameter("CHAINAGE_START")
    now, starts = np.where(structure.off, np.nan, placed.chainage), [axis.start for axis in placed.axes]
    found = measured_again(feet.axis, before[feet.station], now, starts, other_starts=other)
    _warn_turned(asked, points.name, [placed.axes[k].line.name for k in found.turned])
    # A station on several axes stands elsewhere where it does so on all.
    rows = np.flatnonzero(found.elsewhere)
    there = np.ones(len(points), bool)
    there[feet.station[~found.elsewhere]] = False
    rows = rows[there[feet.station[rows]]]
    if not len(rows):
        return
    stations = np.unique(feet.station[rows])
    first = rows[feet.station[rows] == stations[0]][0]
    asked.warn(
        tr(
            "{} of {} stations of layer '{}' stand elsewhere than their column 'chainage' says, the first in row {} "
            "({}, now {}): they are measured anew."
        ).format(
            len(stations),
            int(np.sum(np.isfinite(before))),
            points.name,
            stations[0] + 1,
            notation.shown(before[stations[0]]),
            notation.shown(placed.chainage[first]),
        ),
        keys=("STATIONS", "AXIS"),
    )


def warn_of_turned_axes(asked, points, feet, axes, off):
    """The second half of this alone, where the points' own chainages stay as they are. ``axes``: list of core Axis;
    ``off``: mask of the rows of ``feet`` that are too far away."""
    before = _before(asked, points)
    if before is None:
        return
    now = chainages_and_offsets(axes, feet.axis, feet.leg, feet.along, feet.across)[0]
    now, starts = np.where(off, np.nan, now), [axis.start for axis in axes]
    found = measured_again(feet.axis, before[feet.station], now, starts, other_starts=True)
    _warn_turned(asked, points.name, [axes[k].line.name for k in found.turned])


def _before(asked, points):
    """Chainages that the points had before, metres (n,), None where they are not known; the column is used up."""
    column = points.columns.pop(BEFORE, None)
    return None if column is None else column * metres_per(asked.record_of("STATIONS").chainage_unit)


def _warn_turned(asked, layer, names):
    if not names:
        return
    if len(names) == 1:
        text = tr(
            "Axis '{}' runs the other way than when layer '{}' was measured: chainages count from its other end, left "
            "and right are exchanged."
        ).format(names[0], layer)
    else:
        text = tr(
            "Axes {} run the other way than when layer '{}' was measured: chainages count from their other ends, left "
            "and right are exchanged."
        ).format(listed([f"'{name}'" for name in names]), layer)
    asked.warn(text, keys=("AXIS",))
