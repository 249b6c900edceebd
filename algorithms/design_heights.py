"""Toolbox entry designheights: design heights and residuals, the main job (method page 4)."""

from .design import parameters as own
from .entry import parameter_builders as build
from .entry import parameters as p
from .entry.base import ToolboxEntry
from .language.translation import tr


class DesignHeights(ToolboxEntry):
    """Stations and axes in; the same stations with design height, residual, curvature effect and status out."""

    ID = "designheights"
    TITLE = "Design heights and residuals"
    GROUP, GROUP_ID = "Design", "design"
    TAGS = ("design", "residual", "curvature", "chord", "tangent", "level", "grade", "as-built", "straight", "line")
    HELP = (
        "Computes for each station of a long structure the height it should have under the stated design on the "
        "real ellipsoid and geoid, and how far the as-built height is from it.\n\n"
        "Two layers are enough: points with heights and a line for the axis; the design is then the chord from "
        "the first to the last station. A straight structure is not level: a chord lies below the level surface "
        "between its ends, by 20 mm in the middle of a kilometre, and a tangent rises above it on both sides of "
        "its tangent point, by 78 mm at a kilometre. The column curv_eff shows by how much.\n\n"
        "An axis layer with a field 'design' states the design of each axis itself and overrides this form; the "
        "log says so.\n\n"
        "LINE judges the line in plan as well: lateral is the distance from it, positive is right.\n\n"
        "Residual is as-built minus design, positive is built high; adjust is its opposite, positive is raise. "
        "Stations without a height get a design height too, for setting out.\n\n"
        "Results are for review. Field work follows local codes, and a licensed surveyor or engineer decides."
    )

    def entry_parameters(self):
        advanced = build.advanced
        return [
            p.stations(),
            p.axis("design"),
            p.height_field(),
            p.height_unit(),
            own.design(),
            *own.control("A"),
            *own.control("B"),
            own.slope(),
            own.tolerance(),
            *p.on_axes(tr("Stations farther from every axis stay in the output with the status 'off axis'.")),
            *p.height_system(),
            own.reference(),
            own.refraction(),
            own.earth(),
            advanced(p.radius()),
            *own.line(),
            *own.geoid_slope(),
            p.gravity(
                tr(
                    "For the design 'level': a surface of still water, whose heights fall towards the poles. Empty: as "
                    "the run that made the stations, else none."
                )
            ),
            p.datum_height(),
            p.sink(
                "OUTPUT",
                tr("Stations with residuals"),
                tr(
                    "The stations with design height, residual, adjustment, curvature effect and "
                    "status. A residual of -0.021 in metres is 21 mm low."
                ),
            ),
            p.table(
                "SUMMARY",
                tr("Summary of each axis"),
                tr(
                    "A row for each axis: design and controls used, RMS, greatest residual and "
                    "where, numbers within, high and low."
                ),
            ),
        ]

    def result_numbers(self):
        return {
            "COUNT": tr("Stations with a residual"),
            "WITHIN": tr("Stations within tolerance"),
            "RMS": tr("RMS residual"),
            "MAX_ABS": tr("Greatest residual"),
            "LINE_COUNT": tr("Stations judged in line"),
            "LINE_WITHIN": tr("Stations within the line's tolerance"),
            "LINE_RMS": tr("RMS lateral departure"),
            "LINE_MAX_ABS": tr("Greatest lateral departure"),
        }

    def computing(self):
        from .design.design_run import DesignRun

        return DesignRun
