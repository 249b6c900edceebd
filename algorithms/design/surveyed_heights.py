"""Heights with their accuracies on the axes of a structure: what a fit or a test of shape begins with."""

import numpy as np

from ..core.errors import InputError
from ..entry.request import units
from ..language.translation import tr
from ..structure.axis_overrides import AxisFields, axis_at_height
from ..structure.height_system import height_system, undulation_index
from ..structure.notation import station_style
from ..structure.structure import read_structure
from .given_covariance import given_covariance
from .height_accuracies import accuracies, sigma_index


class Surveyed:
    """One run's stations, read and checked. Arrays of rows (a station and an axis): ``height`` as built and ``n``,
    metres; ``usable``: those on an axis that have a height.
    """

    def __init__(self, entry, parameters, context, feedback):
        self.entry, self.parameters, self.context, self.feedback = entry, parameters, context, feedback
        self.units = units(entry, parameters, context)
        sigma, undulation = sigma_index(entry, parameters, context), undulation_index(entry, parameters, context)
        self.structure, self.heights = read_structure(
            entry, parameters, context, feedback, self.units, more_numbers={"undulation": undulation, "sigma": sigma}
        )
        self.notation = station_style(entry, parameters, context, self.units, len(self.structure.axes))
        feet, points = self.structure.feet, self.structure.points
        needed = np.zeros(len(points), bool)
        needed[feet.station[~self.structure.off]] = True
        self.system = height_system(entry, parameters, context, points, self.units.height, needed)
        known = needed & np.isfinite(points.columns["height"])
        typed = entry.number(parameters, "SIGMA", context)
        given = given_covariance(
            entry,
            parameters,
            context,
            feedback,
            self.structure.source,
            None if typed is None else typed * self.units.height,
        )
        self.accuracies = accuracies(
            entry, parameters, context, points, self.units.height, known, sigma(self.structure.source) >= 0, given
        )
        self.height = points.columns["height"][feet.station] * self.units.height
        self.n = self.system.undulation[feet.station]
        self.usable = ~self.structure.off & np.isfinite(self.height)
        if not np.any(self.usable):
            raise InputError(tr("Layer '{}': no station on an axis has a height.").format(points.name))
        self._fields = AxisFields(self.structure.axis_source)

    def flag(self, key):
        """A yes-or-no parameter."""
        return self.entry.parameterAsBoolean(self.parameters, key, self.context)

    def placed_axis(self, number, rows):
        """Core Axis of the axis ``number`` at its chainage height, taken from the heights of ``rows`` where
        not given.
        """
        placed, _ = axis_at_height(
            self.entry,
            self.parameters,
            self.context,
            self.structure.axes[number],
            number + 1,
            self._fields,
            self.notation,
            self.units,
            self.height[rows] + self.n[rows],
        )
        return placed

    def record(self):
        """The record of the run, as a dict."""
        return self.entry.record(
            self.parameters,
            self.context,
            units=vars(self.units),
            height_system=self.system.kind,
            undulation_source=self.system.source,
        )
