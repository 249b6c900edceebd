"""Toolbox entry convertheights: ellipsoidal heights and heights above the geoid, both ways (method page 5)."""

import numpy as np
from qgis.core import QgsProcessing, QgsProcessingParameterEnum, QgsProcessingParameterFeatureSource

from .boundary.height_column import height_column
from .boundary.output_rows import OutputTable
from .boundary.points import read_points
from .core.errors import InputError
from .entry import parameter_builders as build
from .entry import parameters as p
from .entry.base import Result, ToolboxEntry
from .entry.recorded_system import UNKNOWN, recorded_kind
from .language.number_text import counted, number_text
from .language.translation import tr
from .structure.geoid_profiles import GeoidProfiles, grid_described
from .structure.height_system import height_system, undulation_index
from .structure.structure import units_of_stations
from .structure.vertical_system import check_vertical
from .styles.layer_kinds import StyleSpec

DIRECTIONS = ("ellipsoidal", "geoid")
SOURCES = ("grid", "field", "constant")


class ConvertHeights(ToolboxEntry):
    """Points with heights in; the same with undulation, ellipsoidal height and height above the geoid out."""

    ID = "convertheights"
    TITLE = "Convert between ellipsoidal and orthometric heights"
    GROUP, GROUP_ID = "Heights", "heights"
    TAGS = ("geoid", "undulation", "ellipsoidal", "orthometric", "height", "GNSS")
    HELP = (
        "Adds to each point the undulation N, the ellipsoidal height h and the orthometric height H above the geoid, "
        "with h = H + N. The undulation comes from a grid (a raster of yours, or the EGM96 grid that PROJ has), from a "
        "field, or is one value. A grid that is not installed is never read as zero: the run stops and says what to "
        "install.\n\n"
        "EGM96 is good to about 1 m as a height and to some seconds of arc as a slope; over a few kilometres it shows "
        "the geoid's slope, not its bending."
    )

    def entry_parameters(self):
        undulation = QgsProcessingParameterEnum(
            "UNDULATION", tr("Undulation from"), options=list(SOURCES), usesStaticStrings=True, optional=True
        )
        undulation.setHelp(
            tr(
                "grid: a raster or the grid of PROJ; field: of the points; constant: one value. Empty: as the record "
                "of the layer says, else the grid."
            )
        )
        given = QgsProcessingParameterEnum(
            "HEIGHTS_ARE", tr("The heights given are"), options=list(DIRECTIONS), usesStaticStrings=True, optional=True
        )
        given.setHelp(
            tr(
                "ellipsoidal: as from GNSS; geoid: above the geoid, as from levelling. Empty: as the record of the "
                "layer says, else ellipsoidal."
            )
        )
        return [
            p.any_points(),
            p.height_field(),
            p.height_unit(),
            given,
            undulation,
            p.geoid(),
            p.geoid_name(),
            p.geoid_between(),
            p.undulation_field(),
            p.undulation_value(),
            _optional_axis(),
            p.axis_field(),
            p.sink(
                "OUTPUT",
                tr("Converted heights"),
                tr(
                    "The points with undulation N, ellipsoidal height h and orthometric height H: "
                    "3742.600 and 43.612 give 3786.212."
                ),
            ),
            p.sink(
                "CURVE",
                tr("Geoid along the axes"),
                tr(
                    "Points along each axis with the change of N since its start, and the bending "
                    "of the geoid between its ends."
                ),
                optional=True,
            ),
        ]

    def result_numbers(self):
        return {"COUNT": tr("Converted heights")}

    def computed(self, asked):
        source = asked.source("STATIONS")
        run_units = units_of_stations(asked)
        heights = height_column(source, asked.text("HEIGHT_FIELD"))
        find = undulation_index(asked)
        points = read_points(source, asked.feedback, {"height": heights.index, "undulation": find(source)})
        field = source.fields()[heights.index].name() if heights.index >= 0 else ""
        check_vertical(asked, points, run_units.height_name, field, key="HEIGHTS_ARE", said=_direction(asked))
        given = points.columns["height"] if heights.index >= 0 else points.z
        asked.progress(30)
        system = height_system(asked, points, run_units.height)
        n = system.undulation / run_units.height
        from_ellipsoid = _direction(asked) == "ellipsoidal"
        columns = {
            "undulation": n,
            "height_ell": given if from_ellipsoid else given + n,
            "height_geo": given - n if from_ellipsoid else given,
        }
        self._tell(points, heights, system, given, n, from_ellipsoid, run_units, asked)
        described = grid_described(asked, system)
        if described:
            asked.say(described)
        style = StyleSpec(
            "converted",
            tr("Converted heights"),
            run_units.height_name,
            run_units.chainage_name,
            None,
            asked.record(
                units=run_units,
                crs=points.crs,
                **system.recorded,
                height_fields=_kinds(source, heights.index, system.kind, from_ellipsoid),
            ).text(),
        )
        table = OutputTable(
            "OUTPUT",
            columns,
            source.sourceCrs(),
            source.wkbType(),
            style,
            source,
            np.arange(len(points)),
            points.ids,
            features=points.features,
        )
        tables = [table]
        if asked.optional_source("AXIS") is not None:
            profiles = GeoidProfiles(asked, points, system, run_units)
            profiles.tell()
            tables.append(profiles.table(style.record))
        elif asked.given("CURVE"):
            raise InputError(tr("CURVE needs an axis: give AXIS."), keys=("AXIS", "CURVE"))
        return Result(tables, {"COUNT": int(np.isfinite(given).sum())})

    @staticmethod
    def _tell(points, heights, system, given, n, from_ellipsoid, run_units, asked):
        asked.say(
            tr("Understood: {} of layer '{}'; heights from {} in {}, taken as {}.").format(
                counted(len(points), tr("point"), tr("points")),
                points.name,
                heights.described,
                run_units.height_label,
                tr("ellipsoidal") if from_ellipsoid else tr("above the geoid"),
            )
        )
        asked.say(
            tr("Undulations {} to {} {} ({}).").format(
                number_text(n.min(), 3), number_text(n.max(), 3), run_units.height_label, system.source
            )
        )
        asked.say(
            tr("{} converted; {} none.").format(
                counted(int(np.isfinite(given).sum()), tr("height"), tr("heights")),
                counted(int(np.isnan(given).sum()), tr("point has"), tr("points have")),
            )
        )


def _direction(asked):
    """HEIGHTS_ARE: the record's, else the form's, else 'ellipsoidal'. InputError where the two contradict each other,
    both named."""
    typed, record = asked.choice("HEIGHTS_ARE"), asked.record_of("STATIONS")
    kind = recorded_kind(record, asked.text("HEIGHT_FIELD"))
    recorded = "" if not kind else "ellipsoidal" if kind == "ellipsoidal" else "geoid"
    if typed and recorded and typed != recorded:
        raise InputError(
            tr("HEIGHTS_ARE is '{}', but the record of layer '{}' says '{}'; they cannot both be right.").format(
                typed, asked.source("STATIONS").sourceName(), kind
            ),
            keys=("HEIGHTS_ARE", "STATIONS"),
        )
    # A run that did not know the undulation took the heights as above the geoid.
    return typed or recorded or ("geoid" if record.height_system == UNKNOWN else "ellipsoidal")


def _kinds(source, index, kind, from_ellipsoid):
    """What the heights in each field of the result are, for its record: {name: of UNDULATION}."""
    given = {source.fields()[index].name(): "ellipsoidal" if from_ellipsoid else kind} if index >= 0 else {}
    return {**given, "height_ell": "ellipsoidal", "height_geo": kind}


def _optional_axis():
    parameter = QgsProcessingParameterFeatureSource(
        "AXIS", tr("Axis"), [QgsProcessing.SourceType.TypeVectorLine], optional=True
    )
    parameter.setHelp(
        tr(
            "Line of the structure: the run then says how the geoid slopes and bends along it. Chainages are those on "
            "the ellipsoid, from 0."
        )
    )
    return build.advanced(parameter)
