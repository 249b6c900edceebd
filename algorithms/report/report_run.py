"""One run of reviewreport: what was found, as a page for the screen, one for paper, and a slide."""

from datetime import date
from pathlib import Path

from qgis.core import Qgis

from ..boundary.cancel import check_cancel
from ..boundary.reference_systems import definition
from ..core.errors import InputError
from ..core.geodesy import library_versions
from ..documents.blocks import Map
from ..documents.files import Document
from ..documents.html import html_page
from ..documents.pdf import paper_document
from ..entry.base import Result
from ..entry.run_order import in_order
from ..entry.version import VERSION
from ..language.number_text import counted
from ..language.translation import tr
from ..structure.recorded_covariance import warn_of_adjustment
from .content import content
from .data import read_reviewed, structure_name
from .findings import findings
from .line_sentences import line_headline, line_sentences, together_sentence
from .map import ReportMap
from .old_inputs import old_inputs, without_flags
from .parameters import TITLE_BLOCK
from .sentences import headline, verdict_sentences
from .slide import KINDS, slide

OUTPUTS = ("HTML", "PDF", "SLIDE")


class ReportRun:
    """One run. ``records``: of the layers, {key: RunRecord}; ``behind``: of the runs on which those rest;
    ``imagery``: the raster layer behind the map, or None; all as found in the host's main thread."""

    def __init__(self, asked, records, behind, imagery):
        self.asked, self.records, self._behind, self._imagery = asked, records, behind, imagery

    def result(self):
        asked = self.asked
        if not any(asked.given(key) for key in OUTPUTS):
            raise InputError(
                tr("Neither HTML nor PDF nor SLIDE is given; say where a report is to be written."), keys=OUTPUTS
            )
        old, contradicting = old_inputs(asked)
        kind = _slide_kind(asked)
        reviewed = read_reviewed(asked, self.records["STATIONS"])
        adjustment = warn_of_adjustment(asked, "STATIONS", reviewed.record, reviewed.points.name)
        if contradicting:
            asked.warn(contradicting, keys=("TESTED",))
            reviewed = without_flags(reviewed)
        found = findings(reviewed)
        asked.progress(20)
        titles = self._titles(asked)
        titles["STRUCTURE"] = titles["STRUCTURE"] or structure_name(reviewed)
        structure = titles["STRUCTURE"]
        _tell_understood(reviewed, asked)
        line = (line_headline(found, structure), *line_sentences(found), together_sentence(found))
        for sentence in filter(None, (headline(found, structure), *verdict_sentences(found), *line)):
            asked.say(sentence)
        chart = ReportMap(found, asked.optional_source("AXIS"), self._imagery, asked)
        documents = self._pages(
            asked,
            found,
            titles,
            structure,
            chart,
            [*old, *filter(None, [reviewed.moved, reviewed.edited, adjustment, contradicting])],
        )
        if kind:
            check_cancel(asked.feedback)
            documents.append(Document("SLIDE", slide(found, chart, structure, kind, asked.text("SLIDE_AXIS"))))
        asked.progress(100)
        unit = reviewed.units.height
        numbers = {
            "COUNT": found.all.number,
            "WITHIN": int(sum(reviewed.status == "within")),
            "FLAGGED": len(found.flagged),
            "RMS": found.all.rms / unit,
            "MAX_ABS": abs(found.all.greatest) / unit,
        }
        return Result([], {**numbers, **self._line_numbers(found, unit)}, documents)

    @staticmethod
    def _line_numbers(found, unit):
        """Numbers of the line, none where it was not judged."""
        if found.line is None:
            return {}
        line, both = found.line.all, found.line.together
        numbers = {
            "LINE_COUNT": line.number,
            "LINE_WITHIN": int(sum(found.reviewed.line.side == "within")),
            "LINE_RMS": line.rms / unit,
            "LINE_MAX_ABS": abs(line.greatest) / unit,
        }
        if both is not None:
            v = both.verdict
            numbers["RADIAL_WITHIN"] = int(sum(v.judged & ~(v.out | v.doubted | v.accepted)))
            numbers["RADIAL_MAX"] = both.all.greatest / unit
        return numbers

    def _pages(self, asked, found, titles, structure, chart, old):
        """The report for the screen and that for paper, each where it is asked for."""
        if not (asked.given("HTML") or asked.given("PDF")):
            return []
        reviewed = found.reviewed
        drawn = self._map(chart, found, asked.given("HTML"))
        blocks = content(
            found,
            titles,
            drawn,
            self._runs(reviewed, asked),
            crs=definition(reviewed.points.crs),
            screen=asked.given("HTML"),
            paper=asked.given("PDF"),
            old=old,
        )
        title = tr("Review report: {}").format(structure)
        check_cancel(asked.feedback)
        asked.progress(50)
        documents = [Document("HTML", html_page(title, blocks))] if asked.given("HTML") else []
        if asked.given("PDF"):
            documents.append(
                Document(
                    "PDF",
                    paper_document(
                        title, blocks, lambda: check_cancel(asked.feedback), chart.project, author=titles["PREPARED_BY"]
                    ),
                )
            )
        return documents

    def _titles(self, asked):
        titles = {key: asked.text(key) for key, _, _ in TITLE_BLOCK}
        titles["DATE"] = titles["DATE"] or date.today().isoformat()
        versions = {"Tautline": VERSION, "QGIS": Qgis.version(), **library_versions()}
        return {**titles, "VERSIONS": ", ".join(f"{name} {value}" for name, value in versions.items())}

    def _runs(self, reviewed, asked):
        """Records of all runs that the report rests on, each once, after those that it needs itself; this one last."""
        records = [
            *self._behind,
            reviewed.record,
            self.records["TESTED"],
            *(row["record"] for row in (*reviewed.references, *reviewed.curvatures)),
        ]
        return [*in_order(records), asked.record()]

    @staticmethod
    def _map(chart, found, for_screen):
        image, kind = chart.image() if for_screen else (b"", "")
        one = found.reviewed
        names = ", ".join(name for name in one.axes if name) or tr("the axis")
        counts = [int((one.status == word).sum()) for word in ("within", "high", "low", "no tolerance", "no height")]
        if any(counts[:3]):
            alt = tr("Map of the stations along {}, by their status: {} within the tolerance, {} high, {} low.")
            alt = alt.format(names, *counts[:3])
        else:
            alt = tr("Map of {} stations along {}, built high or low; no tolerance was stated.")
            alt = alt.format(counts[3], names)
        if counts[4]:
            alt += " " + tr("{} without an as-built height.").format(counts[4])
        caption = tr("Stations by their status; size by the residual. North is up, as the arrow shows. ") + (
            tr("Background: {}.").format(chart.imagery.name())
            if chart.imagery is not None
            else tr("No imagery was supplied.")
        )
        return Map(chart, image, kind, alt, caption, chart.legend())


def _slide_kind(asked):
    """The kind of the slide by the ending of its file, '' where none is asked for; InputError for another."""
    if not asked.given("SLIDE"):
        return ""
    ending = Path(asked.file("SLIDE")).suffix.lower().lstrip(".")
    if ending not in KINDS:
        raise InputError(
            tr("SLIDE is a PNG picture or a PDF page; its file must end in .png or .pdf, not in '{}'.").format(ending),
            keys=("SLIDE",),
        )
    return ending


def _tell_understood(reviewed, asked):
    on = [name for name in reviewed.axes if len(reviewed.rows(name))]
    asked.say(
        tr("Understood: {} of layer '{}' on {}; heights in {}, {}.").format(
            counted(len(reviewed), tr("station"), tr("stations")),
            reviewed.points.name,
            counted(len(on), tr("axis"), tr("axes")),
            reviewed.units.height_label,
            tr("with the record of their run")
            if reviewed.record
            else tr("without a record of their run, so that design and height system are not told"),
        )
    )
