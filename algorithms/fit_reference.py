"""Toolbox entry fitreference: a straight line for each axis, or a plane for each group of axes (method page 6)."""

import numpy as np
from qgis.core import QgsProcessing

from .boundary.cells import as_text
from .boundary.fields import OF_DESIGN
from .boundary.input_fields import named_field
from .boundary.output_rows import OutputTable
from .boundary.reference_systems import definition
from .boundary.tables import read_table
from .core.geodesy import ellipsoid_of
from .design import parameters as own
from .design.fit_geoid import RunGeoid
from .design.fit_messages import tell_fits
from .design.fitted_lines import FittedLines
from .design.reference_groups import fitted_groups, groups_of_axes, groups_of_lines
from .design.reference_tables import ellipse_table, reference_table
from .design.surveyed_heights import SurveyedHeights
from .entry import parameters as p
from .entry.base import Result, ToolboxEntry
from .language.decision_words import SUSPECTED
from .language.number_text import listed
from .language.translation import tr
from .styles.layer_kinds import StyleSpec


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

    def computed(self, asked):
        return _Run(asked).result()


class _Run(SurveyedHeights):
    """One run: stations measured, grouped, fitted."""

    def __init__(self, asked):
        self.line = FittedLines(asked)
        super().__init__(asked, self.line.columns)
        self.line.read(self)
        self.ellipsoid = ellipsoid_of(definition(self.structure.points.crs))
        self.axes, self.chainage, self.offset = self.placed.axes, self.placed.chainage, self.placed.offset
        self.geoid = RunGeoid(asked, self.system, self.ellipsoid)

    def result(self):
        kind = self.asked.choice("FIT")
        make = groups_of_axes if kind == "plane" else groups_of_lines
        options = {"remove": self.asked.flag("REMOVE_BLUNDERS"), "robust": self.asked.flag("ROBUST")}
        fits = fitted_groups(self, make(self), **options)
        tell_fits(self, fits)
        return Result(self._tables(fits), self._numbers(fits))

    def dates(self, stations):
        """First and last text of the stations' field 'date', '' without one."""
        source = self.structure.source
        field = named_field(source, "", "", ("date",))
        if field < 0:
            return "", ""
        if not hasattr(self, "_dates"):
            self._dates = read_table(source, {}, {"date": field}, self.asked.feedback).columns["date"]
        found = sorted(text for text in (self._dates[k] for k in stations) if text)
        return (found[0], found[-1]) if found else ("", "")

    def group_name(self, axis):
        """Name of an axis' group: of GROUP_FIELD, or of a field 'group', else ''."""
        given = self.asked.text("GROUP_FIELD")
        field = named_field(self.structure.axis_source, given, "GROUP_FIELD", ("group",))
        if field < 0:
            return ""
        return as_text(axis.values[self.structure.axis_source.fields()[field].name()])

    def _tables(self, fits):
        feet, source, unit, crs = (
            self.structure.feet,
            self.structure.source,
            self.units,
            self.structure.source.sourceCrs(),
        )
        record = self.record()
        residual, w, redundancy, detectable = (np.full(len(feet.station), np.nan) for _ in range(4))
        flag = np.where(self.structure.off, "off axis", np.where(self.usable, "not fitted", "no height")).astype(object)
        for fit in fits:
            found = fit.surface.search
            # A bent axis' corner takes part in both legs: the first tells.
            fresh = np.isnan(residual[fit.all_rows])
            rows, at = fit.all_rows[fresh], fit.at[fresh]
            residual[rows], w[rows] = fit.surface.residuals[at], found.w[at]
            redundancy[rows], detectable[rows] = found.redundancies[at], found.detectable[at]
            flag[rows] = np.where(fit.upwards.suspected[at], SUSPECTED, "kept")
        names, line = np.array(self.structure.names, dtype=object), self.line.fields(fits, self, flag)
        columns = {
            "axis": names[feet.axis].tolist(),
            "station": self.notation.texts(self.chainage),
            "chainage": self.chainage / unit.chainage,
            "offset": self.offset / unit.chainage,
            "residual": residual / unit.height,
            "w": w,
            "redund": redundancy,
            "min_blund": np.where(np.isfinite(detectable), detectable, np.nan) / unit.height,
            "flag": flag.tolist(),
            **line,
        }

        def style(kind, title):
            return StyleSpec(kind, title, unit.height_name, unit.chainage_name, None, record.text())

        tables = [
            OutputTable(
                "OUTPUT",
                columns,
                crs,
                source.wkbType(),
                style("fitted", tr("Tested stations")),
                source,
                feet.station,
                self.structure.points.ids,
                features=self.structure.points.features,
                replaced=self._replaced(),
                reserved=self.line.reserved(),
            )
        ]
        tables.append(reference_table(self, fits, crs, record, style("reference", tr("Reference"))))
        ellipses = ellipse_table(self, fits, crs, style("ellipse", tr("Tangent and level points, 95 % ellipses")))
        return tables + [ellipses]

    def _replaced(self):
        """Fields of an earlier run that must not stay beside what this one found, told where they are of a design."""
        source, found = self.structure.source, ()
        names = [field.name().lower() for field in source.fields()]
        if {"design_h", "residual"} <= set(names):
            found = tuple(name for k, name in enumerate(names) if name in OF_DESIGN and k != self.heights.index)
            self.asked.say(
                tr("Layer '{}': {} belong to the residuals of an earlier run and are left out.").format(
                    source.sourceName(), listed(found)
                )
            )
        return (*found, *self.line.replaced())

    def _numbers(self, fits):
        residuals = np.concatenate([fit.surface.residuals[fit.surface.search.kept] for fit in fits]) / self.units.height
        return {
            "COUNT": int(sum(fit.surface.search.kept.sum() for fit in fits)),
            "SUSPECTED": int(sum(fit.upwards.suspected.sum() for fit in fits)),
            "RMS": float(np.sqrt(np.mean(residuals**2))),
            **self.line.numbers(fits, self.units),
        }
