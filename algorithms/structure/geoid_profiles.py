"""The geoid along the axes of a run of convertheights: sentences and a layer of places."""

import numpy as np
from qgis.core import QgsWkbTypes

from ..boundary.axes import read_axes
from ..boundary.output_rows import OutputTable
from ..boundary.points import placed_points
from ..core.axis import Axis
from ..core.errors import InputError
from ..core.geoid_along import geoid_from_grid, geoid_from_stations
from ..core.measure import Measurer
from ..core.row_ranges import rows_of_each
from ..core.station_notation import station_equations
from ..language.core_sentences import worded
from ..language.height_text import small_text
from ..language.number_text import number_text
from ..language.translation import tr
from ..styles.layer_kinds import StyleSpec
from .geoid_grid import accuracy_described, geoid_layer, grid_around, grid_name
from .measured_before import BEFORE, warn_of_turned_axes
from .notation import Notation

# Points farther than this from an axis say nothing about it, metres.
NEAR = 100.0
SECOND = np.radians(1.0 / 3600.0)


class GeoidProfiles:
    """The geoid along each axis: ``found``, list of (Axis, GeoidAlong)."""

    def __init__(self, asked, points, system, run_units):
        source = asked.source("AXIS")
        rows = read_axes(source, asked.text("AXIS_FIELD"), asked.feedback, points.crs)
        self.units, self.asked, self.crs = run_units, asked, points.crs
        axes = [Axis(row.line) for row in rows]
        self.found, feet = [], None
        if system.kind != "constant" and (system.kind != "grid" or BEFORE in points.columns):
            feet = Measurer([axis.line for axis in axes]).feet(points.lat, points.lon, None)
            warn_of_turned_axes(asked, points, feet, axes, feet.distance > NEAR)
        if system.kind == "constant":
            asked.warn(
                tr(
                    "One undulation for all hides the geoid's slope and bending along the axes; give a grid or a field "
                    "to see them."
                )
            )
        elif system.kind == "grid":
            layer = geoid_layer(asked)
            self.found = [(axis, geoid_from_grid(axis, _surface(layer, axis, system), system.cell)) for axis in axes]
        else:
            self._from_points(axes, feet, system)

    def _from_points(self, axes, feet, system):
        near = np.flatnonzero(feet.distance <= NEAR)
        on_axis = rows_of_each(feet.axis[near].tolist())
        for k, axis in enumerate(axes):
            rows = near[on_axis.get(k, [])]
            try:
                along = geoid_from_stations(
                    axis.chainages(feet.leg[rows], feet.along[rows]), system.undulation[feet.station[rows]]
                )
            except InputError as error:
                self.asked.warn(tr("Axis '{}': {}").format(axis.line.name, worded(error)), error.code, error.keys)
                continue
            self.found.append((axis, along))

    def tell(self):
        """Push a sentence for each axis."""
        for axis, along in self.found:
            length = float(along.chainage[-1] - along.chainage[0])
            text = tr("Axis '{}': over its {} the geoid {} by {} ({}\u2033)").format(
                axis.line.name,
                _length(length, self.units),
                tr("rises") if along.slope >= 0 else tr("falls"),
                small_text(abs(along.slope) * length, self.units),
                number_text(abs(along.slope) / SECOND, 2),
            )
            if along.coarse:
                span = (
                    tr(", by the difference over {} (two cells of the grid)").format(_length(along.span, self.units))
                    if (along.span > length)
                    else ""
                )
                text += tr("{}; {}.").format(
                    span, tr("the grid is too coarse to show bending") if span else tr("two stations show no bending")
                )
            else:
                bend, at = along.greatest
                text += tr(
                    "; it bends by {} from the straight line between the ends, at {}. One undulation for all would "
                    "hide both."
                ).format(small_text(bend, self.units, True), _notation(self.units).shown(at))
            self.asked.say(text)

    def table(self, record):
        """The OutputTable CURVE: places along the axes."""
        height, chainage = self.units.height, self.units.chainage
        parts = [(axis, along, axis.place(along.chainage, np.zeros(len(along.chainage)))) for axis, along in self.found]

        def joined(name):
            return np.concatenate([getattr(along, name) for _, along, _ in parts]) if parts else np.zeros(0)

        lat, lon = (np.concatenate([place[k] for *_, place in parts]) if parts else np.zeros(0) for k in (0, 1))
        columns = {
            "axis": [axis.line.name for axis, along, _ in parts for _ in along.chainage],
            "station": list(_notation(self.units).texts(joined("chainage"))),
            "chainage": joined("chainage") / chainage,
            "undulation": joined("undulation") / height,
            "n_change": joined("change") / height,
            "n_bend": joined("bend") / height,
        }
        style = StyleSpec(
            "geoid_along", tr("Geoid along the axes"), self.units.height_name, self.units.chainage_name, None, record
        )
        x, y = placed_points(lat, lon, self.crs) if len(lat) else (lat, lon)
        return OutputTable("CURVE", columns, self.crs, QgsWkbTypes.Type.Point, style, points=(x, y))


def _notation(units):
    return Notation(units.chainage_name, units.chainage, station_equations(""))


def _length(metres, units):
    return tr("{} {}").format(number_text(metres / units.chainage, 0), units.chainage_label)


def _surface(layer, axis, system):
    """The undulations around one axis: a raster anew, since that of the points may not reach as far."""
    if layer is None:
        return system.surface
    margin = 3.0 * system.cell
    around = np.array([axis.line.lat.min() - margin, axis.line.lat.max() + margin])
    return grid_around(layer, around, axis.line.lon[:2], system.between)


def grid_described(asked, system):
    """Name, cell and stated accuracy of the grid of a run, for its log; '' where no grid is used."""
    if system.kind != "grid":
        return ""
    layer = geoid_layer(asked)
    return tr("Grid: {}, cells of {}\u2032; {}.").format(
        grid_name(asked, layer), number_text(system.cell * 60.0, 1), accuracy_described(asked, layer)
    )
