"""The grid of undulations that a run asks for: a raster, a grid that PROJ has by its name, or EGM96 (method page 5)."""

from qgis.core import QgsRasterLayer

from ..boundary.rasters import raster_grid
from ..core import geodesy
from ..core.errors import InputError
from ..core.undulations import SmoothGrid, library_grid
from ..entry.parameters import BETWEEN
from ..language.number_text import number_text
from ..language.translation import tr


def geoid_layer(asked):
    """The raster layer of GEOID, or that of the installed grid that GEOID_NAME names; None where neither is given."""
    layer, name = asked.raster("GEOID"), asked.text("GEOID_NAME")
    if not name:
        return layer
    if layer is not None:
        raise InputError(
            tr("GEOID and GEOID_NAME are both given; the undulations can come from one of them only."),
            keys=("GEOID", "GEOID_NAME"),
        )
    path = geodesy.installed_grid(name)
    if path is None:
        raise InputError(
            tr(
                "PROJ has no grid '{}' (GEOID_NAME) in its folders ({}); install it there, or give a raster (GEOID)."
            ).format(name, ", ".join(geodesy.grid_folders())),
            keys=("GEOID_NAME",),
        )
    return QgsRasterLayer(path, name, "gdal")


def between_nodes(asked):
    """How N runs between the nodes of a grid: GEOID_BETWEEN, else as the run that made the stations."""
    recorded = asked.record_of("STATIONS").more.get("geoid_between")
    return asked.choice("GEOID_BETWEEN") or (recorded if recorded in BETWEEN else BETWEEN[0])


def grid_around(layer, lat, lon, between):
    """Undulations around places at lat, lon degrees: core Grid or SmoothGrid, of ``layer`` or of EGM96 without one."""
    grid = library_grid() if layer is None else raster_grid(layer, lat, lon)
    return SmoothGrid(grid) if between == "smooth" else grid


def grid_name(asked, layer):
    """How a sentence, a record and a reference name the grid of a run."""
    if layer is None:
        return tr("the grid EGM96 of PROJ")
    return (tr("the grid {} of PROJ") if asked.text("GEOID_NAME") else tr("the raster '{}'")).format(layer.name())


def accuracy_described(asked, layer):
    """What is stated of the accuracy of a grid's undulations, a clause for the log."""
    if layer is not None and not asked.text("GEOID_NAME"):
        return tr("a raster does not state its accuracy, its publisher does")
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
