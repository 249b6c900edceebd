"""The height system of a run: undulations of the stations and between them, and how it is said (method page 5)."""

from dataclasses import dataclass, field

import numpy as np

from ..boundary.input_fields import field_of_kind
from ..boundary.reference_systems import definition
from ..core import geodesy
from ..core.errors import InputError
from ..core.undulations import ConstantUndulation, StationUndulations, SurfaceUndulation
from ..entry.recorded_system import height_kind
from ..language.number_text import number_text, plain_text
from ..language.translation import tr
from .geoid_grid import accuracy_described, between_nodes, geoid_layer, grid_around, grid_name, grid_told, warn_holes

# A degree of the meridian, metres: enough to compare a cell with the length of an axis.
_DEGREE = 111_000.0


@dataclass(frozen=True)
class HeightSystem:
    """``kind``: of UNDULATION. ``undulation``: N of each station, metres (n,), zeros where none is applied.

    ``surface``, ``cell``, ``between``: of a grid. ``told``: {name: value} for the record: field, value in the unit of
    heights, or raster that the undulations came from. ``described``: a sentence for the log; ``source``: for the
    record.
    """

    kind: str
    undulation: np.ndarray
    described: str
    source: str = ""
    constant: float = 0.0
    surface: object = None
    cell: float = 0.0
    between: str = ""
    told: dict = field(default_factory=dict)

    @property
    def cell_metres(self):
        """Length of a cell of the grid, metres."""
        return self.cell * _DEGREE

    @property
    def knows_ellipsoid(self):
        """True where the heights, with their undulations, show how the ellipsoid lies under them: not with an unknown
        undulation, nor with one for all, which knows no slope of the geoid."""
        return self.kind in ("ellipsoidal", "field", "grid")

    def shows_bending(self, length):
        """True where undulations come from a grid that shows bending over ``length`` metres, more than two cells."""
        return self.kind == "grid" and length > 2.0 * self.cell_metres

    @property
    def recorded(self):
        """What the record of a run says of it; the next run on its result goes on from there."""
        more = {"geoid_between": self.between} if self.between else {}
        return {"height_system": self.kind, "undulation_source": self.source, **more, **self.told}

    def along(self, chainages, undulations, ellipsoid, stated=None):
        """The core's source of undulations along one axis whose stations have these chainages and N, metres.

        ``stated``: slope of the geoid to the east and north, see stated_slope; the horizon of ellipsoidal heights
        takes it. Heights above the geoid lie in their own horizon already.
        """
        if self.kind == "grid":
            return SurfaceUndulation(self.surface, self.cell, ellipsoid)
        if self.kind == "field":
            return StationUndulations(chainages, undulations)
        return ConstantUndulation(self.constant, stated if self.kind == "ellipsoidal" else None)


def undulation_text(system):
    """How a reference says where its undulations came from; a run that uses it must say the same."""
    if system.kind == "constant":
        return f"constant {system.constant:g} m"
    return f"grid: {system.source}, {system.between}" if system.kind == "grid" else system.kind


def undulation_index(asked):
    """A function that finds the field with undulations in a source: -1 where the run uses none."""
    kind = height_kind(asked)

    def find(source):
        if kind != "field":
            return -1
        index = undulation_column(source, asked.record_of(asked.main), asked.text("UNDULATION_FIELD"))
        if index < 0:
            raise InputError(
                tr(
                    "Layer '{}' has no field 'undulation'; choose the field with the undulations (UNDULATION_FIELD)."
                ).format(source.sourceName()),
                keys=("UNDULATION_FIELD",),
            )
        return index

    return find


def undulation_column(source, record, given="", *, ambiguous_refused=True):
    """Index of the field with undulations: ``given``, else as the layer's ``record`` says, else by its name; -1 for
    none. See ``field_of_kind``."""
    recorded = record.more.get("undulation_field")
    first = (recorded,) if isinstance(recorded, str) and recorded else ()
    return field_of_kind(source, given, "UNDULATION_FIELD", "undulation", (*first, "undulation"), ambiguous_refused)


def height_system(asked, points, unit, needed=None):
    """The run's HeightSystem. ``unit``: metres per unit of heights; ``needed``: stations that need N (n,), default all.

    InputError where an undulation is missing, or the geoid grid is: it must never read as zero.
    """
    kind = height_kind(asked)
    number = len(points)
    if kind == "ellipsoidal":
        return HeightSystem(kind, np.zeros(number), tr("The heights are ellipsoidal."))
    if kind == "constant":
        value = _constant(asked)
        if value is None:
            raise InputError(
                tr("UNDULATION 'constant' needs UNDULATION_VALUE."), keys=("UNDULATION_VALUE", "UNDULATION")
            )
        text = tr(
            "The heights are above the geoid, with one undulation for all; the geoid's slope and bending are not known "
            "to this run."
        )
        return HeightSystem(
            kind, np.full(number, value * unit), text, f"{value:g}", value * unit, told={"undulation_value": value}
        )
    if kind == "field":
        return _from_field(asked, points, unit, needed)
    if kind == "grid":
        return _from_grid(asked, points, needed)
    return HeightSystem(
        kind,
        np.zeros(number),
        tr(
            "The heights are taken as above a geoid whose undulation is not known: its slope and bending are not "
            "allowed for, and heights above the geoid stand in for ellipsoidal ones."
        ),
    )


def undulations_told(asked):
    """What the record of a run that applies no undulations to its heights says of them, so that the next run on its
    result takes the same: {name: value}."""
    kind = height_kind(asked)
    if kind == "constant":
        value = _constant(asked)
        return {} if value is None else {"undulation_value": value, "undulation_source": f"{value:g}"}
    if kind == "grid":
        return {**grid_told(asked, geoid_layer(asked)), "geoid_between": between_nodes(asked)}
    return _field_told(asked) if kind == "field" else {}


def _constant(asked):
    """The one undulation of a run in the unit of heights, None without; InputError where the record says another."""
    typed, recorded = asked.number("UNDULATION_VALUE"), asked.record_of(asked.main).more.get("undulation_value")
    recorded = recorded if isinstance(recorded, (int, float)) and not isinstance(recorded, bool) else None
    if None not in (typed, recorded) and not np.isclose(typed, recorded, rtol=1e-12, atol=0.0):
        raise InputError(
            tr("UNDULATION_VALUE is {}, but the record of layer '{}' says {}; they cannot both be right.").format(
                plain_text(typed), asked.source(asked.main).sourceName(), plain_text(recorded)
            ),
            keys=("UNDULATION_VALUE", asked.main),
        )
    return recorded if typed is None else typed


def _from_field(asked, points, unit, needed):
    values = points.columns["undulation"] * unit
    missing = np.flatnonzero(np.isnan(values) & (np.ones(len(values), bool) if needed is None else needed))
    if len(missing):
        raise InputError(
            tr("Layer '{}', row {}: there is no undulation, but UNDULATION is 'field'.").format(
                points.name, missing[0] + 1
            ),
            keys=("UNDULATION",),
        )
    return HeightSystem(
        "field",
        np.nan_to_num(values),
        tr("The heights are above the geoid, with each station's own undulation from a field."),
        "field",
        told=_field_told(asked),
    )


def _field_told(asked):
    """The field that undulations were read from, for the record, where it goes by another name than usual."""
    name = asked.text("UNDULATION_FIELD") or asked.record_of(asked.main).more.get("undulation_field")
    return {"undulation_field": name} if isinstance(name, str) and name else {}


def _from_grid(asked, points, needed):
    layer = geoid_layer(asked)
    needed = np.ones(len(points), bool) if needed is None else needed
    lat, lon = points.lat[needed], points.lon[needed]
    ellipsoid = geodesy.ellipsoid_of(definition(points.crs))
    if not geodesy.is_like_wgs84(ellipsoid):
        raise InputError(
            tr(
                "Layer '{}' is on the datum '{}', but geoid grids refer to the ellipsoid of WGS 84 or GRS 80; "
                "transform the stations first."
            ).format(points.name, geodesy.datum_name(definition(points.crs)))
        )
    between, name = between_nodes(asked), grid_name(asked, layer)
    surface = grid_around(layer, lat, lon, between)
    undulation = np.zeros(len(points))
    undulation[needed] = surface(lat, lon)
    warn_holes(asked, surface, name)
    values = undulation[needed]
    text = tr(
        "The heights are above the geoid; undulations from {} ({} between its nodes; {}), {} to {} m at the stations."
    )
    text = text.format(
        name, between, accuracy_described(asked, layer), number_text(values.min(), 3), number_text(values.max(), 3)
    )
    return HeightSystem("grid", undulation, text, name, 0.0, surface, surface.cell, between, grid_told(asked, layer))
