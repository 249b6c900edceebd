"""One run of fitreference: stations measured, grouped and fitted, their tests, and the tables of it."""

from functools import cached_property

import numpy as np

from ..boundary.cells import as_text
from ..boundary.fields import OF_DESIGN
from ..boundary.input_fields import named_field
from ..boundary.output_rows import OutputTable
from ..boundary.reference_systems import definition
from ..boundary.tables import read_table
from ..core.geodesy import ellipsoid_of
from ..core.segments import joined
from ..entry.base import Result
from ..language.decision_words import SUSPECTED
from ..language.number_text import listed
from ..language.translation import tr
from ..styles.layer_kinds import StyleSpec
from .fit_geoid import RunGeoid
from .fit_messages import tell_fits
from .fitted_lines import FittedLines
from .reference_groups import fitted_groups, groups_of_axes, groups_of_lines
from .reference_tables import ellipse_table, reference_table
from .surveyed_heights import SurveyedHeights


class FitRun(SurveyedHeights):
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

    @cached_property
    def _dates(self):
        """Texts of the stations' field 'date', None without one."""
        source = self.structure.source
        field = named_field(source, "", "", ("date",))
        return None if field < 0 else read_table(source, {}, {"date": field}, self.asked.feedback).columns["date"]

    def dates(self, stations):
        """First and last text of the stations' field 'date', '' without one."""
        if self._dates is None:
            return "", ""
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
        rows, at = _told_rows(fits)
        residual[rows] = joined([fit.surface.residuals for fit in fits])[at]
        for column, name in ((w, "w"), (redundancy, "redundancies"), (detectable, "detectable")):
            column[rows] = joined([getattr(fit.surface.search, name) for fit in fits])[at]
        flag[rows] = np.where(joined([fit.upwards.suspected for fit in fits])[at], SUSPECTED, "kept")
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
            OutputTable.beside(
                "OUTPUT",
                columns,
                style("fitted", tr("Tested stations")),
                source,
                feet.station,
                self.structure.points,
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


def _told_rows(fits):
    """Output rows that the fits tell of, and the index of each into all the fits' own rows one after another. A bent
    axis' corner takes part in both legs: the first tells."""
    before = np.cumsum([0, *(len(fit.rows) for fit in fits)]).tolist()
    rows, first = np.unique(joined([fit.all_rows for fit in fits]), return_index=True)
    return rows, joined([fit.at + own for fit, own in zip(fits, before)])[first]
