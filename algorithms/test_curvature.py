"""Toolbox entry testcurvature: which shape was built, straight, level or neither (method page 6)."""

import numpy as np
from qgis.core import QgsCoordinateReferenceSystem, QgsProcessingParameterFileDestination, QgsWkbTypes

from .boundary.output_rows import OutputTable
from .core.curvature import SurveyedLeg, search_free, test_curvatures
from .core.errors import InputError
from .core.legs import LEAST_ON_LEG, rows_on, stretches
from .core.moved_stretches import moved_stretches
from .design import parameters as own
from .design.curvature_messages import tell_curvature
from .design.curvature_page import curvature_page
from .design.curvature_sentences import Tested
from .design.curvature_table import curvature_table
from .design.height_accuracies import levelling_arms
from .design.surveyed_heights import SurveyedHeights
from .documents.files import Document
from .entry import parameters as p
from .entry.base import Result, ToolboxEntry
from .language.translation import tr
from .styles.layer_kinds import StyleSpec


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

    def computed(self, asked):
        return _Run(asked).result()


class _Run(SurveyedHeights):
    """One run: profiles of axes and legs, tested."""

    def result(self):
        legs, rows = [], self.rows_of_axes(self.usable)
        for number, axis in enumerate(self.structure.axes):
            self.asked.check_cancel()
            legs += self._axis(number, axis, rows[number])
        if not legs:
            raise InputError(
                tr("Nothing can be tested: no axis or leg has at least {} stations with heights.").format(LEAST_ON_LEG)
            )
        tested = self._tested(legs)
        tell_curvature(self, tested)
        record = self.record()
        style = StyleSpec(
            "curvature",
            tr("Curvature of each axis"),
            self.units.height_name,
            self.units.chainage_name,
            None,
            record.text(),
        )
        table = OutputTable(
            "OUTPUT",
            curvature_table(self, tested, record),
            QgsCoordinateReferenceSystem(),
            QgsWkbTypes.Type.NoGeometry,
            style,
        )
        documents = [Document("HTML", curvature_page(self, tested, record))] if self.asked.given("HTML") else []
        return Result([table], {"COUNT": len(tested), "FACTOR": tested[0].test.factor}, documents)

    def _axis(self, number, axis, rows):
        """Name and SurveyedLeg of the axis or of each of its legs."""
        if len(rows) < LEAST_ON_LEG:
            self.asked.warn(
                tr("Axis '{}' has {} stations with heights; a test needs {}.").format(
                    axis.line.name, len(rows), LEAST_ON_LEG
                )
            )
            return []
        placed, s = self.placed.axes[number], self.placed.chainage[rows]
        found = []
        for stretch in stretches(placed, float(s.min()), float(s.max())):
            mine = rows_on(stretch, s)
            name = axis.line.name if not stretch.leg else tr("{}, leg {}").format(axis.line.name, stretch.leg)
            if mine.sum() < LEAST_ON_LEG:
                self.asked.warn(
                    tr("{} has {} stations with heights; a leg needs {}.").format(name, int(mine.sum()), LEAST_ON_LEG)
                )
                continue
            found.append((name, self._leg(placed, rows[mine], s[mine])))
        return found

    def _leg(self, axis, rows, s):
        points, station = self.structure.points, self.structure.feet.station[rows]
        arms = distances = None
        if self.accuracies.by_arms:
            arms, distances, _ = levelling_arms([axis], np.zeros(len(rows), int), s)
        covariance = self.accuracies.covariance(station, arms, distances)
        fine = self.system.shows_bending(float(np.ptp(s)))
        return SurveyedLeg(
            axis,
            points.lat[station],
            points.lon[station],
            s,
            self.height[rows],
            self.n[rows],
            covariance,
            self.accuracies.known,
            fine,
            self.asked.number("GEOID_BENDING"),
        )

    def _tested(self, legs):
        """Tested of all ``legs``, (name, SurveyedLeg) each: without the stations that are suspected of a blunder."""
        whole = test_curvatures([profile for _, profile in legs])
        searches = {}
        for k, one in enumerate(whole):
            self.asked.check_cancel()
            if one.doubtful and self.asked.flag("REMOVE_BLUNDERS"):
                searches[k] = search_free(one)
            self.asked.progress(40 + 20 * (k + 1) / len(whole))
        cleared = [k for k, search in searches.items() if not np.all(search.kept)]
        parts = test_curvatures([whole[k].profile.part(searches[k].kept) for k in cleared])
        tests = {**dict(enumerate(whole)), **dict(zip(cleared, parts))}
        return [_searched(name, profile, tests[k], searches.get(k)) for k, (name, profile) in enumerate(legs)]


def _searched(name, profile, test, search):
    """Tested of a leg; ``search``: least_squares.Search of its stations, None where none was needed."""
    everyone = np.ones(len(profile.height), bool)
    if search is None or np.all(search.kept):
        return Tested(name, test, profile, everyone, (), search.beyond if search else 0)
    moved = moved_stretches(np.zeros(len(everyone), int), profile.chainage, search.fitted.residuals, ~search.kept)
    return Tested(name, test, profile, search.kept, tuple(moved), search.beyond)
