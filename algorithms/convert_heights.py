"""Toolbox entry convertheights: ellipsoidal heights and heights above the geoid, both ways (method page 5)."""

from qgis.core import QgsProcessing, QgsProcessingParameterEnum, QgsProcessingParameterFeatureSource

from .entry import parameter_builders as build
from .entry import parameters as p
from .entry.base import ToolboxEntry
from .language.translation import tr

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

    def computing(self):
        from .structure.conversion_run import ConversionRun

        return ConversionRun


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
