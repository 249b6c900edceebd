"""Heights with their accuracies on the axes of a structure: what a fit or a test of shape begins with."""

from functools import cached_property

import numpy as np

from ..core.errors import InputError
from ..core.legs import stretches
from ..core.segments import Segments, joined
from ..language.translation import tr
from ..structure.axis_overrides import AxisFields
from ..structure.height_system import height_system, undulation_index
from ..structure.notation import station_style
from ..structure.recorded_covariance import given_covariance
from ..structure.structure import read_structure, units_of_stations
from .height_accuracies import accuracies, sigma_index


class SurveyedHeights:
    """One run's stations, read and checked. Arrays of rows (a station and an axis): ``height`` as built and ``n``,
    metres; ``usable``: those on an axis that have a height.
    """

    def __init__(self, asked, more_numbers=None):
        """``more_numbers``: {key: function of the source to a field index}, read beside the heights."""
        self.asked = asked
        self.units = units_of_stations(asked)
        sigma, undulation = sigma_index(asked), undulation_index(asked)
        self.structure, self.heights = read_structure(
            asked, self.units, more_numbers={"undulation": undulation, "sigma": sigma, **(more_numbers or {})}
        )
        self.notation = station_style(asked, self.units, len(self.structure.axes))
        feet, points = self.structure.feet, self.structure.points
        needed = np.zeros(len(points), bool)
        needed[feet.station[~self.structure.off]] = True
        self.system = height_system(asked, points, self.units.height, needed)
        known = needed & np.isfinite(points.columns["height"])
        typed = asked.number("SIGMA")
        source = self.structure.source
        self._sigma_field, field = (_name(source, k) for k in (sigma(source), self.heights.index))
        given = given_covariance(asked, source, None if typed is None else typed * self.units.height, field)
        self.accuracies = accuracies(asked, points, self.units, known, self._sigma_field, given)
        self.height = points.columns["height"][feet.station] * self.units.height
        self.n = self.system.undulation[feet.station]
        self.usable = ~self.structure.off & np.isfinite(self.height)
        if not np.any(self.usable):
            raise InputError(tr("Layer '{}': no station on an axis has a height.").format(points.name))
        self._fields = AxisFields(self.structure.axis_source)

    @cached_property
    def placed(self):
        """PlacedAxes at their chainage heights, taken from the heights of their stations where not given."""
        return self.structure.placed(self.asked, self._fields, self.notation, self.units, self.height + self.n)

    def rows_of_axes(self, used):
        """The rows on each axis, a list of index arrays (n,) in their order; ``used``: those that count, (n,)."""
        return self.structure.rows_on_axes(used)

    def stretches(self, rows):
        """The straight Stretches of each axis between the outermost of its ``rows``, a list of index arrays: a list of
        tuples, empty where it has none."""
        counts = np.array([len(own) for own in rows])
        filled = np.flatnonzero(counts)
        low, size = Segments(counts[filled]).range(self.placed.chainage[joined(rows)])
        found = [()] * len(rows)
        for number, first, last in zip(filled.tolist(), low.tolist(), (low + size).tolist()):
            found[number] = stretches(self.placed.axes[number], first, last)
        return found

    def pieces(self, rows):
        """What is known of many pieces of the structure, each with ``rows``, index arrays: their stations, latitudes
        and longitudes, degrees, heights and undulations, metres, and covariances (see Accuracies.of_pieces). Six lists.
        """
        legs, rows = Segments([len(own) for own in rows]), joined(rows)
        station, points = self.structure.feet.station[rows], self.structure.points
        values = station, points.lat[station], points.lon[station], self.height[rows], self.n[rows]
        return *(legs.parts(one) for one in values), self.accuracies.of_pieces(station, legs)

    def record(self):
        """The RunRecord of the run."""
        return self.asked.record(
            units=self.units,
            crs=self.structure.points.crs,
            **self.system.recorded,
            accuracy=self._accuracy(),
            **self._covariance(),
        )

    def _accuracy(self):
        """How accurate the heights were taken to be, in the unit of heights: numbers of the form, field used."""
        given = {"sigma": self.asked.number("SIGMA"), "sigma_km": self.asked.number("SIGMA_KM")}
        given["field"] = self._sigma_field
        return {key: value for key, value in given.items() if value not in (None, "")}

    def _covariance(self):
        """Source of the table with the covariance of the heights where one was given; else the record of the stations
        tells."""
        given = self.asked.inputs("COVARIANCE")
        return {"covariance": given[0].source} if given else {}


def _name(source, index):
    """Name of a field of a source, '' for the index -1."""
    return source.fields()[index].name() if index >= 0 else ""
