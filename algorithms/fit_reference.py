"""Toolbox entry fitreference: a straight line for each axis, or a plane for each group of axes (method page 6)."""

from qgis.core import QgsProcessing

from .design import parameters as own
from .entry import parameters as p
from .entry.base import ToolboxEntry
from .language.translation import tr


class FitReference(ToolboxEntry):
    """Stations and axes in; fitted lines or planes, their tangent and level points, and tested stations out."""

    ID = "fitreference"
    TITLE = "Fit a straight line or plane"
    GROUP, GROUP_ID = "Design", "design"
    TAGS = (
        "fit",
        "plane",
        "line",
        "straightness",
        "blunder",
        "outlier",
        "tangent point",
        "level point",
        "least squares",
    )
    HELP = (
        "Fits the straight line of each axis, or the plane that several axes share, to the surveyed heights by least "
        "squares on the exact model, tests every station for a blunder, and tells where the line or plane is level, "
        "with what certainty.\n\n"
        "w is the residual over its standard deviation as the test sees it; beyond 3.29 a blunder is suspected. Each "
        "suspect is listed and stays in the output. Neighbours that are flagged together are more likely a stretch "
        "that has moved than blunders.\n\n"
        "Two places are told apart. At the level point the plane lies in the horizon, and water on it would stand "
        "still; at the tangent point it is parallel to the ellipsoid. Heights above the geoid know the level point, "
        "and the tangent point only as well as the slope of the geoid; ellipsoidal heights the reverse. One second of "
        "arc of slope is 31 m. Each point has a 95 % ellipse of its own.\n\n"
        "LINE fits the line in plan as well, and tests every station laterally too: a tripod that was knocked shows "
        "there. Heights and line are tested apart; lateral is the departure in plan, positive is right.\n\n"
        "The reference goes into 'Design heights and residuals' with the design 'reference', for this survey and "
        "later ones. Results are for review; a licensed surveyor or engineer decides."
    )

    def entry_parameters(self):
        return [
            p.stations(),
            p.axis(),
            own.fit_kind(),
            p.height_field(),
            p.height_unit(),
            own.sigma(),
            own.remove_blunders(),
            own.sigma_field(),
            own.sigma_km(),
            *own.given_covariance(),
            own.group_field(),
            own.robust(),
            *own.fitted_line(),
            *own.geoid_slope(),
            *p.on_axes(tr("Stations farther from every axis stay in the output with the flag 'off axis'.")),
            *p.height_system(),
            p.sink(
                "REFERENCE",
                tr("Reference"),
                tr(
                    "A row for each line or plane: point, normal, accuracy, straightness, tangent point and level "
                    "point, 31 m apart for each second of arc of geoid slope."
                ),
            ),
            p.sink(
                "OUTPUT",
                tr("Tested stations"),
                tr("The stations with residual, w, smallest detectable blunder and flag: suspected beyond 3.29."),
            ),
            p.sink(
                "ELLIPSE",
                tr("Ellipses of the tangent and level points"),
                tr("Each holds its point with a probability of 95 %, where the stated accuracies are true."),
                QgsProcessing.SourceType.TypeVectorPolygon,
                True,
            ),
        ]

    def result_numbers(self):
        return {
            "COUNT": tr("Stations fitted"),
            "SUSPECTED": tr("Suspected blunders"),
            "RMS": tr("RMS residual"),
            "LINE_COUNT": tr("Stations fitted in plan"),
            "LINE_SUSPECTED": tr("Suspected blunders in line"),
            "LINE_RMS": tr("RMS lateral departure"),
        }

    def computing(self):
        from .design.fit_run import FitRun

        return FitRun
