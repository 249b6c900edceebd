"""One run of adjustlevelling: lines and benchmarks read, adjusted, told, and put into tables and a page."""

from dataclasses import replace

from ..boundary.output_places import destination_text, source_of
from ..documents.files import Document
from ..entry.base import Result
from ..language.translation import tr
from ..structure.named_points import read_named_points
from .field_book_units import field_book_units
from .gravity import with_gravity
from .levelled_system import ABOVE_GEOID, levelled_heights
from .net_input import read_benchmarks, read_lines
from .net_messages import tell_net
from .net_page import levelling_page
from .net_results import LevellingRun
from .net_tables import NetTables


class NetRun:
    """One run: adjusted heights, tested lines and misclosures."""

    def __init__(self, asked):
        self.asked = asked

    def result(self):
        asked = self.asked
        units = field_book_units(asked, "STATIONS", "BENCHMARKS")
        lines = read_lines(asked, units)
        benchmarks = read_benchmarks(asked, units.height)
        named = read_named_points(asked)
        asked.progress(20)
        lines, gravity = with_gravity(asked, lines, benchmarks, named, units.height)
        run = LevellingRun(asked, lines, benchmarks, named, units, gravity)
        record = self._record(asked, run)
        sentences = tell_net(run)
        if named is None and asked.given("POINTS"):
            asked.say(tr("POINTS is not made, since there are no STATIONS."))
        tables = NetTables(run, record, self._record_of_points(asked, run, record)).made(asked.given("COVARIANCE"))
        page = levelling_page(run, sentences, record) if asked.given("SUMMARY") else b""
        adjustment = run.adjustment
        return Result(
            tables,
            {
                "COUNT": len(adjustment.points),
                "FREEDOM": adjustment.freedom,
                "VARIANCE_FACTOR": adjustment.variance_factor if adjustment.freedom > 0 else None,
                "SUSPECTED": int(run.suspected.sum()),
                "BEYOND": len(run.beyond),
            },
            [Document("SUMMARY", page)],
        )

    @staticmethod
    def _record(asked, run):
        """The record of the run; it names the table with the covariance, so that whoever takes the points finds it."""
        crs = run.named.points.crs if run.named is not None else None
        table = source_of(destination_text(asked.given("COVARIANCE")))
        gravity = "normal" if run.gravity.applied else "none"
        return asked.record(
            keeps_heights=False,
            units=run.units,
            crs=crs,
            covariance=table,
            weights=run.lines.weights,
            free=run.free,
            gravity=gravity,
            adjustment=_outcome(run),
            **ABOVE_GEOID,
        )

    @staticmethod
    def _record_of_points(asked, run, record):
        """The record of POINTS: what that of STATIONS says of the columns that are carried holds for them."""
        if run.named is None:
            return record
        chainage_unit = asked.record_of("STATIONS").chainage_unit or record.chainage_unit
        return replace(record, chainage_unit=chainage_unit).with_heights(levelled_heights(asked, run.named.source))


def _outcome(run):
    """How the adjustment went, for the record, from which RunRecord.adjustment reads it: whoever takes the heights or
    their covariance is told."""
    test = run.adjustment.global_test
    found = {"suspected": int(run.suspected.sum())}
    if test is not None:
        found["global_test"] = "passed" if test[3] else "failed"
        found["variance_factor"] = float(run.adjustment.variance_factor)
    return found
