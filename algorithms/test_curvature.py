"""Toolbox entry testcurvature: which shape was built, straight, level or neither (method page 6)."""

from qgis.core import QgsProcessingParameterFileDestination

from .design import parameters as own
from .entry import parameters as p
from .entry.base import ToolboxEntry
from .language.translation import tr


class TestCurvature(ToolboxEntry):
    """Stations and axes in; the curvature factor of each axis or leg with its verdict out, and a page that shows it."""

    __test__ = False  # pytest would collect it by its name

    ID = "testcurvature"
    TITLE = "Test which shape was built"
    GROUP, GROUP_ID = "Design", "design"
    TAGS = ("curvature", "straight", "level", "flat", "shape", "radius", "test", "curved")
    HELP = (
        "Asks the heights themselves which shape was built, without a design: the curvature factor f is 1 for a "
        "structure that is straight in space and 0 for one at a constant slope above the level surface, such as "
        "water. Its 95 % interval, which allows for the accuracy of the heights and for the bending of the geoid, "
        "decides: straight, level, neither, or undecided, with what would decide it.\n\n"
        "A straight line computed with no curvature and a constant grade on the real Earth are the same curve, so the "
        "test cannot tell them apart; it tells what the structure follows. 31 equally spaced stations good to 3 mm "
        "decide from about 600 m on, good to 10 mm from about 1.1 km, as far as the geoid does not bend; fewer "
        "stations need more length.\n\n"
        "Outputs are a table and, if asked, one HTML page with a picture that a layman can read."
    )

    def entry_parameters(self):
        html = QgsProcessingParameterFileDestination(
            "HTML", tr("Page"), tr("HTML files (*.html)"), optional=True, createByDefault=True
        )
        html.setHelp(tr("One file that opens offline: a sentence, a picture and the numbers for each axis."))
        bending = own.geoid_bending()
        return [
            p.stations(),
            p.axis(),
            p.height_field(),
            p.height_unit(),
            own.sigma(),
            own.remove_blunders(),
            own.sigma_field(),
            own.sigma_km(),
            *own.given_covariance(),
            bending,
            *p.on_axes(),
            *p.height_system(),
            p.table(
                "OUTPUT",
                tr("Curvature of each axis"),
                tr(
                    "A row for each axis or leg: curvature factor with its 95 % interval, verdict, "
                    "and RMS of each shape."
                ),
                optional=False,
            ),
            html,
        ]

    def result_numbers(self):
        return {"COUNT": tr("Axes and legs tested"), "FACTOR": tr("Curvature factor of the first")}

    def computing(self):
        from .design.curvature_run import CurvatureRun

        return CurvatureRun
