"""The grid of undulations that a run asks for: a raster, a grid that PROJ has by its name, or EGM96 (method page 5)."""

import os

from qgis.core import QgsRasterLayer

from ..boundary.rasters import raster_grid
from ..core import geodesy
from ..core.errors import InputError
from ..core.undulations import SmoothGrid, library_grid
from ..entry.parameters import BETWEEN
from ..language.number_text import number_text
from ..language.translation import tr


def geoid_layer(asked):
    """The raster layer of GEOID, that of the installed grid that GEOID_NAME names, or what the record of the stations
    says; None for the EGM96 of PROJ. InputError where two of these contradict each other, or the grid is gone."""
    name = _file_name(asked)
    if not name:
        return _raster(asked)
    path = geodesy.installed_grid(name)
    if path is None:
        raise InputError(
            tr(
                "PROJ has no grid '{}' (GEOID_NAME) in its folders ({}); install it there, or give a raster (GEOID)."
            ).format(name, ", ".join(geodesy.grid_folders())),
            keys=("GEOID_NAME",),
        )
    return QgsRasterLayer(path, name, "gdal")


def _file_name(asked):
    """File name of the installed grid: GEOID_NAME, else that of the record; '' where the grid has none."""
    typed, record = asked.text("GEOID_NAME"), asked.record_of(asked.main)
    known = record.height_system == "grid" and isinstance(record.more.get("geoid"), str)
    recorded = record.more.get("geoid_name", "") if known else ""
    if typed and asked.raster("GEOID") is not None:
        raise InputError(
            tr("GEOID and GEOID_NAME are both given; the undulations can come from one of them only."),
            keys=("GEOID", "GEOID_NAME"),
        )
    other = asked.raster("GEOID") is not None and bool(recorded)
    if known and (other or (typed and typed != recorded)):
        raise InputError(
            tr(
                "{} is given, but the record of layer '{}' says that its undulations are from {}; they cannot both be "
                "right."
            ).format(
                "GEOID" if other else "GEOID_NAME",
                asked.source(asked.main).sourceName(),
                tr("the grid {} of PROJ").format(recorded) if recorded else record.undulation_source,
            ),
            keys=("GEOID" if other else "GEOID_NAME", asked.main),
        )
    return typed or (recorded if isinstance(recorded, str) else "")


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
                "The record of layer '{}' says that its undulations are from the raster '{}', which no longer exists; "
                "give it (GEOID)."
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


def between_nodes(asked):
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


def grid_told(asked, layer):
    """What the record of a run says of its grid, so that the next run on its result takes the same: {name: value}."""
    name = _file_name(asked)
    return {"geoid": layer.source() if layer is not None else "", **({"geoid_name": name} if name else {})}


def grid_around(layer, lat, lon, between):
    """Undulations around places at lat, lon degrees: core Grid or SmoothGrid, of ``layer`` or of EGM96 without one."""
    grid = library_grid() if layer is None else raster_grid(layer, lat, lon)
    return SmoothGrid(grid) if between == "smooth" else grid


def grid_name(asked, layer):
    """How a sentence, a record and a reference name the grid of a run."""
    if layer is None:
        return tr("the grid EGM96 of PROJ")
    return (tr("the grid {} of PROJ") if _file_name(asked) else tr("the raster '{}'")).format(layer.name())


def accuracy_described(asked, layer):
    """What is stated of the accuracy of a grid's undulations, a clause for the log."""
    if layer is not None and not _file_name(asked):
        return tr("a raster does not state its accuracy; its publisher does")
    if layer is None:
        name, accuracy = geodesy.library_geoid()
    else:
        name, accuracy = layer.name(), geodesy.grid_accuracy(layer.name())
    if accuracy != accuracy:
        return tr("PROJ states no accuracy for the file {}").format(name)
    return tr("file {}, accuracy of an undulation {} m as PROJ states it").format(name, number_text(accuracy, 2))


def warn_holes(asked, surface, name):
    """Say where a smooth surface has less around it than it should, because nodes of the grid are unknown."""
    found = surface.shortened if isinstance(surface, SmoothGrid) else ()
    if found:
        lat, lon, hole_lat, hole_lon = found[0]
        asked.warn(
            tr(
                "The grid has no value at latitude {}°, longitude {}°, within twelve cells of latitude {}°, longitude "
                "{}°: the smooth surface there ends at the hole and is less sure (from {})."
            ).format(*(number_text(v, 4) for v in (hole_lat, hole_lon, lat, lon)), name),
            keys=("GEOID",),
        )


def say_coarse(asked, system, lengths):
    """Say that the grid of a run cannot show bending on axes of ``lengths`` metres, where it has two cells for none."""
    if system.kind == "grid" and not any(system.shows_bending(length) for length in lengths):
        asked.say(
            tr(
                "The grid is too coarse to show bending: its cells are {} km long, and no axis is longer than two of "
                "them."
            ).format(number_text(system.cell_metres / 1000.0, 1))
        )
