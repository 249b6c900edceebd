"""One run of testcurvature: the profile of each axis or leg tested, its table and its page."""

from functools import cached_property

import numpy as np

from ..boundary.output_rows import OutputTable
from ..core.curvature import SurveyedLeg, search_free, test_curvatures
from ..core.errors import InputError
from ..core.legs import LEAST_ON_LEG, rows_on
from ..core.moved_stretches import moved_stretches
from ..documents.files import Document
from ..entry.base import Result
from ..language.translation import tr
from ..styles.layer_kinds import StyleSpec
from .curvature_messages import tell_curvature
from .curvature_page import curvature_page
from .curvature_sentences import Tested
from .curvature_table import curvature_table
from .height_accuracies import levelling_arms
from .surveyed_heights import SurveyedHeights


class CurvatureRun(SurveyedHeights):
    """One run: profiles of axes and legs, tested."""

    def result(self):
        rows = self.rows_of_axes(self.usable)
        found = [part for one in zip(self.placed.axes, rows, self.stretches(rows)) for part in self._parts(*one)]
        if not found:
            raise InputError(
                tr("Nothing can be tested: no axis or leg has at least {} stations with heights.").format(LEAST_ON_LEG)
            )
        self.asked.check_cancel()
        tested = self._tested(self._legs(*zip(*found)))
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
        table = OutputTable.bare("OUTPUT", curvature_table(self, tested, record), style)
        documents = [Document("HTML", curvature_page(self, tested, record))] if self.asked.given("HTML") else []
        return Result([table], {"COUNT": len(tested), "FACTOR": tested[0].test.factor}, documents)

    def _parts(self, axis, rows, stretches):
        """Name, Axis and rows of the axis or of each of its legs: a list."""
        if len(rows) < LEAST_ON_LEG:
            self.asked.warn(
                tr("Axis '{}' has {} stations with heights; a test needs {}.").format(
                    axis.line.name, len(rows), LEAST_ON_LEG
                )
            )
            return []
        if not stretches[0].leg:
            return [(axis.line.name, axis, rows)]
        found, s = [], self.placed.chainage[rows]
        for stretch in stretches:
            mine = rows_on(stretch, s)
            name = tr("{}, leg {}").format(axis.line.name, stretch.leg)
            if mine.sum() < LEAST_ON_LEG:
                self.asked.warn(
                    tr("{} has {} stations with heights; a leg needs {}.").format(name, int(mine.sum()), LEAST_ON_LEG)
                )
                continue
            found.append((name, axis, rows[mine]))
        return found

    def _legs(self, names, axes, rows):
        """(name, SurveyedLeg) of each of many legs: a list."""
        chainages = [self.placed.chainage[own] for own in rows]
        columns = zip(names, axes, chainages, *self.pieces(rows))
        return [(name, self._leg(*one)) for name, *one in columns]

    def _leg(self, axis, s, station, lat, lon, height, undulation, covariance):
        if covariance is None:
            arms = distances = None
            if self.accuracies.by_arms:
                arms, distances, _ = levelling_arms([axis], np.zeros(len(s), int), s)
            covariance = self.accuracies.covariance(station, arms, distances)
        fine = self.system.shows_bending(float(s.max() - s.min()))
        known = self.accuracies.known
        return SurveyedLeg(axis, lat, lon, s, height, undulation, covariance, known, fine, self._bending)

    @cached_property
    def _bending(self):
        return self.asked.number("GEOID_BENDING")

    def _tested(self, legs):
        """Tested of all ``legs``, (name, SurveyedLeg) each: without the stations that are suspected of a blunder."""
        whole = test_curvatures([profile for _, profile in legs])
        searches, wanted = {}, self.asked.flag("REMOVE_BLUNDERS")
        for k in (k for k, one in enumerate(whole) if one.doubtful and wanted):
            self.asked.check_cancel()
            searches[k] = search_free(whole[k])
            self.asked.progress(40 + 20 * (k + 1) / len(whole))
        cleared = [k for k, search in searches.items() if not np.all(search.kept)]
        parts = test_curvatures([whole[k].profile.part(searches[k].kept) for k in cleared])
        tests = {**dict(enumerate(whole)), **dict(zip(cleared, parts))}
        return [_searched(name, profile, tests[k], searches.get(k)) for k, (name, profile) in enumerate(legs)]


def _searched(name, profile, test, search):
    """Tested of a leg; ``search``: least_squares.Search of its stations, None where none was needed."""
    everyone = np.ones(len(profile.height), bool)
    if search is None or search.kept.all():
        return Tested(name, test, profile, everyone, (), search.beyond if search else 0)
    moved = moved_stretches(np.zeros(len(everyone), int), profile.chainage, search.fitted.residuals, ~search.kept)
    return Tested(name, test, profile, search.kept, tuple(moved), search.beyond)
