"""The height system of a run: undulations of the stations and between them, and how it is said (method page 5)."""

import os
from dataclasses import dataclass, field

import numpy as np
from qgis.core import QgsRasterLayer

from ..boundary.input_fields import field_of_kind
from ..boundary.rasters import raster_grid
from ..core import geodesy
from ..core.errors import InputError
from ..core.undulations import ConstantUndulation, SmoothGrid, StationUndulations, SurfaceUndulation, library_grid
from ..entry.parameters import BETWEEN
from ..entry.recorded_system import height_kind
from ..language.number_text import number_text
from ..language.translation import tr


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
    def recorded(self):
        """What the record of a run says of it; the next run on its result goes on from there."""
        more = {"geoid_between": self.between} if self.between else {}
        return {"height_system": self.kind, "undulation_source": self.source, **more, **self.told}

    def along(self, chainages, undulations, ellipsoid):
        """The core's source of undulations along one axis whose stations have these chainages and N, metres."""
        if self.kind == "grid":
            return SurfaceUndulation(self.surface, self.cell, ellipsoid)
        if self.kind == "field":
            return StationUndulations(chainages, undulations)
        return ConstantUndulation(self.constant)


def undulation_text(system):
    """How a reference says where its undulations came from; a run that uses it must say the same."""
    if system.kind == "constant":
        return f"constant {system.constant:g} m"
    return f"grid: {system.source}, {system.between}" if system.kind == "grid" else system.kind


def undulation_index(asked):
    """A function that finds the field with undulations in a source: -1 where the run uses none."""
    kind = height_kind(asked)
    given = asked.text("UNDULATION_FIELD")
    recorded = asked.record_of(asked.main).more.get("undulation_field")

    def find(source):
        if kind != "field":
            return -1
        first = (recorded,) if isinstance(recorded, str) and recorded else ()
        index = field_of_kind(source, given, "UNDULATION_FIELD", "undulation", (*first, "undulation"))
        if index < 0:
            raise InputError(
                tr(
                    "Layer '{}' has no field 'undulation'; choose the field with the undulations (UNDULATION_FIELD)."
                ).format(source.sourceName()),
                keys=("UNDULATION_FIELD",),
            )
        return index

    return find


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
        layer = _raster(asked)
        return {"geoid": layer.source() if layer is not None else "", "geoid_between": _between(asked)}
    return _field_told(asked) if kind == "field" else {}


def _constant(asked):
    """The one undulation of a run in the unit of heights, None without; InputError where the record says another."""
    typed, recorded = asked.number("UNDULATION_VALUE"), asked.record_of(asked.main).more.get("undulation_value")
    recorded = recorded if isinstance(recorded, (int, float)) and not isinstance(recorded, bool) else None
    if None not in (typed, recorded) and not np.isclose(typed, recorded, rtol=1e-12, atol=0.0):
        raise InputError(
            tr("UNDULATION_VALUE is {:g}, but the record of layer '{}' says {:g}; they cannot both be right.").format(
                typed, asked.source(asked.main).sourceName(), recorded
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
    layer = _raster(asked)
    needed = np.ones(len(points), bool) if needed is None else needed
    lat, lon = points.lat[needed], points.lon[needed]
    ellipsoid = geodesy.ellipsoid_of(_definition(points))
    if not geodesy.is_like_wgs84(ellipsoid):
        raise InputError(
            tr(
                "Layer '{}' is on the datum '{}', but geoid grids refer to the ellipsoid of WGS 84 or GRS 80; "
                "transform the stations first."
            ).format(points.name, geodesy.datum_name(_definition(points)))
        )
    between = _between(asked)
    if layer is not None:
        surface, name = raster_grid(layer, lat, lon), tr("the raster '{}'").format(layer.name())
    else:
        surface, name = library_grid(), tr("the grid EGM96 of PROJ")
    cell = surface.cell
    surface = SmoothGrid(surface) if between == "smooth" else surface
    undulation = np.zeros(len(points))
    undulation[needed] = surface(lat, lon)
    values = undulation[needed]
    text = tr(
        "The heights are above the geoid; undulations from {} ({} between its nodes), {} to {} m at the stations."
    )
    text = text.format(name, between, number_text(values.min(), 3), number_text(values.max(), 3))
    told = {"geoid": layer.source() if layer is not None else ""}
    return HeightSystem("grid", undulation, text, name, 0.0, surface, cell, between, told)


def _between(asked):
    """GEOID_BETWEEN of a run: the record's, else the form's, else 'smooth'; InputError where the two differ."""
    typed, recorded = asked.choice("GEOID_BETWEEN"), asked.record_of(asked.main).more.get("geoid_between")
    recorded = recorded if recorded in BETWEEN else ""
    if typed and recorded and typed != recorded:
        raise InputError(
            tr("GEOID_BETWEEN is '{}', but the record of layer '{}' says '{}'; they cannot both be right.").format(
                typed, asked.source(asked.main).sourceName(), recorded
            ),
            keys=("GEOID_BETWEEN", asked.main),
        )
    return typed or recorded or BETWEEN[0]


def _raster(asked):
    """The raster of undulations: GEOID, else that of the record; None for the grid of PROJ. InputError where the
    record's is gone, or another one is given although it is there."""
    layer, record = asked.raster("GEOID"), asked.record_of(asked.main)
    recorded = record.more.get("geoid")
    if not isinstance(recorded, str) or record.height_system != "grid":
        return layer
    if not recorded:
        if layer is not None:
            raise InputError(
                tr(
                    "GEOID is the raster '{}', but the record of layer '{}' says that its undulations are from the "
                    "grid of PROJ; they cannot both be right."
                ).format(layer.name(), asked.source(asked.main).sourceName()),
                keys=("GEOID", asked.main),
            )
        return None
    found = asked.layer_behind(recorded)
    if layer is None and not isinstance(found, QgsRasterLayer):
        raise InputError(
            tr(
                "The record of layer '{}' says that its undulations are from the raster '{}', which is not there any "
                "more; give it (GEOID)."
            ).format(asked.source(asked.main).sourceName(), recorded),
            keys=("GEOID", asked.main),
        )
    if layer is not None and isinstance(found, QgsRasterLayer) and not _one_file(layer.source(), recorded):
        raise InputError(
            tr("GEOID is the raster '{}', but the record of layer '{}' says '{}'; they cannot both be right.").format(
                layer.source(), asked.source(asked.main).sourceName(), recorded
            ),
            keys=("GEOID", asked.main),
        )
    return found if layer is None else layer


def _one_file(one, other):
    return one == other or os.path.realpath(one) == os.path.realpath(other)


def _definition(points):
    from ..boundary.reference_systems import definition

    return definition(points.crs)
