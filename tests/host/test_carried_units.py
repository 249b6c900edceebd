"""From step to step: units, height system and reference system are stated once and carried by the record of each layer.

The same survey is written as a list in metres, in feet and in US survey feet (NIST: 0.3048 m and 1200/3937 m), and goes
through the whole job with every later form left at its defaults.
"""

import csv
import io
import re

import pytest

pytest.importorskip("pyproj")
qgis_core = pytest.importorskip("qgis.core")

from tests.host.unit_job import LABELS, METRES, STEP, N, UnitJob, height, undulation  # noqa: E402

# As headings of a CSV write it.
SHORT = {"metre": "m", "foot": "ft", "us_foot": "usft"}


def survey(change=0.0):
    """Rows of a list in metres; ``change``: of the height of one station."""
    return [(STEP * k, height(k) + (change if k == 9 else 0.0), undulation(k)) for k in range(N)]


class Job(UnitJob):
    """The whole job on one list, every form after the first at its defaults."""

    BEYOND, COLUMNS, TYPES = 5.0, {"design": None}, {"design": "string"}

    def work(self):
        self.stations = self.placed("first", survey())
        common = {"STATIONS": self.stations, "AXIS": self.axis}
        self.residuals = self.run("designheights", **common, OUTPUT=self.file("residuals.gpkg"))
        fit = {"REFERENCE": self.file("reference.gpkg"), "OUTPUT": self.file("tested.gpkg")}
        self.fit = self.run("fitreference", **common, **fit)
        self.curvature = self.run("testcurvature", **common, OUTPUT=self.file("curvature.gpkg"))
        made = self.residuals.results["OUTPUT"]
        self.again = self.run("designheights", STATIONS=made, AXIS=self.axis, OUTPUT="memory:")
        sheets = {"CSV": self.file("sheet.csv"), "SHEET": self.file("sheet.html"), "SETOUT": self.file("setout.html")}
        self.schedule = self.run("scheduleadjustments", STATIONS=made, TESTED=fit["OUTPUT"], **sheets)
        self.bars = self.run("drawdeviations", STATIONS=made, AXIS=self.axis, BARS="memory:", OUTPUT=None)
        report = {"TESTED": fit["OUTPUT"], "REFERENCE": fit["REFERENCE"], "CURVATURE": self.file("curvature.gpkg")}
        self.report = self.run("reviewreport", STATIONS=made, **report, HTML=self.file("report.html"), OUTPUT=None)
        later = self.placed("later", survey(change=0.02))
        self.compared = self.run("comparesurveys", SURVEYS=[self.stations, later], DATES="2025-01-01; 2026-01-01")
        converted = self.run("convertheights", STATIONS=self.stations, OUTPUT=self.file("converted.gpkg"))
        self.converted = converted


@pytest.fixture(scope="module")
def jobs(host, tmp_path_factory):
    return Job.in_every_unit(tmp_path_factory.mktemp("jobs"))


@pytest.mark.parametrize("unit", ["foot", "us_foot"])
def test_feet_give_the_same_millimetres(jobs, unit):
    one, other = jobs["metre"], jobs[unit]
    for run, name in (
        ("residuals", "residual"),
        ("residuals", "design_h"),
        ("residuals", "curv_eff"),
        ("residuals", "chainage"),
        ("fit", "residual"),
        ("again", "residual"),
        ("schedule", "move"),
        ("compared", "change"),
        ("converted", "height_ell"),
    ):
        got, due = other.metres(getattr(other, run), name), one.metres(getattr(one, run), name)
        # 1e-6 mm; the list itself holds nine decimals.
        assert len(got) == len(due) >= N and got == pytest.approx(due, abs=2e-9), (run, name)
    w, due = other.fit.column("w"), one.fit.column("w")
    assert w == pytest.approx(due, abs=1e-4)
    assert other.curvature.column("factor") == pytest.approx(one.curvature.column("factor"), abs=1e-6)


@pytest.mark.parametrize("unit", METRES)
def test_every_sheet_says_the_unit(jobs, unit):
    job, label, short = jobs[unit], LABELS[unit], SHORT[unit]
    heads = next(csv.reader(io.StringIO((job.folder / "sheet.csv").read_text("utf-8-sig"))))
    numbers = [head for head in heads if head not in ("axis", "action", "after", "reason")]
    assert numbers and all(head.endswith(f"_{short}") for head in numbers), heads
    small = "mm" if unit == "metre" else label
    for name in ("sheet.html", "setout.html", "report.html"):
        page = (job.folder / name).read_text("utf-8")
        for words in (f"As-built ({label})", f"Station ({label})"):
            assert words in page, (name, words)
    page = (job.folder / "sheet.html").read_text("utf-8")
    assert re.search(rf"Movement \((?:{small}|in)\)", page) and f"Reading after ({label})" in page


@pytest.mark.parametrize(
    ("entry", "more"),
    [
        ("designheights", {"HEIGHT_UNIT": "metre"}),
        ("fitreference", {"HEIGHT_UNIT": "us_foot"}),
        ("testcurvature", {"CHAINAGE_UNIT": "metre"}),
        ("designheights", {"UNDULATION": "ellipsoidal"}),
        ("convertheights", {"HEIGHTS_ARE": "ellipsoidal"}),
        ("convertheights", {"HEIGHT_UNIT": "metre"}),
        ("scheduleadjustments", {"HEIGHT_UNIT": "metre"}),
        ("drawdeviations", {"HEIGHT_UNIT": "metre"}),
        ("reviewreport", {"CHAINAGE_UNIT": "us_foot"}),
    ],
)
def test_a_form_that_contradicts_the_record_is_refused(jobs, toolbox, entry, more):
    job = jobs["foot"]
    reviewed = entry in ("scheduleadjustments", "drawdeviations", "reviewreport")
    given = {"STATIONS": job.residuals.results["OUTPUT"] if reviewed else job.stations, **more}
    if entry in ("designheights", "fitreference", "testcurvature", "drawdeviations"):
        given["AXIS"] = job.axis
    if entry == "fitreference":
        given["REFERENCE"] = "memory:"
    if entry == "reviewreport":
        given.update(HTML=job.file("none.html"), OUTPUT=None)
    if entry == "drawdeviations":
        given.update(BARS="memory:", OUTPUT=None)
    ((key, value),) = more.items()
    said = toolbox.refusal(entry, **given)
    assert said.startswith(f"{key} is '{value}', but the record of layer '") and "cannot both be right" in said


def test_surveys_in_two_units_are_compared(jobs, toolbox):
    run = toolbox.run(
        "comparesurveys", SURVEYS=[jobs["metre"].stations, jobs["foot"].stations], DATES="2025-01-01; 2026-01-01"
    )
    assert run.column("change") == pytest.approx([0.0] * N, abs=2e-9)
    said = toolbox.refusal(
        "comparesurveys", SURVEYS=[jobs["metre"].stations, jobs["foot"].stations], HEIGHT_UNIT="metre"
    )
    assert "HEIGHT_UNIT is 'metre', but the record of layer" in said and "'foot'" in said


def test_the_height_system_is_carried_and_unknown_is_no_contradiction(jobs, toolbox):
    job = jobs["metre"]
    run = toolbox.run("designheights", STATIONS=job.stations, AXIS=job.axis, UNDULATION="unknown")
    assert run.column("residual") == pytest.approx(job.residuals.column("residual"), abs=1e-12)
    layer = qgis_core.QgsVectorLayer(job.stations, "bare", "ogr")
    for index in range(layer.fields().count()):
        # Newer hosts save the fields' titles, and these state the unit.
        layer.removeFieldAlias(index)
    flat = toolbox.saved(layer, job.folder / "bare.gpkg")
    bare = toolbox.run("designheights", STATIONS=flat, AXIS=job.axis)
    assert "nothing states the unit of heights; taken as metre" in bare.said and "not known" in bare.said


def test_another_reference_system_than_recorded_is_refused(jobs, toolbox):
    job = jobs["metre"]
    layer = qgis_core.QgsVectorLayer(job.stations, "moved", "ogr")
    layer.setCrs(qgis_core.QgsCoordinateReferenceSystem("EPSG:4258"))
    said = toolbox.refusal("designheights", STATIONS=layer, AXIS=job.axis)
    assert "'moved' (STATIONS) is in EPSG:4258, but its record says that its coordinates are in EPSG:4326" in said


def test_a_doubt_stops_a_schedule_without_a_record(jobs, toolbox):
    """Chainages and heights in feet, taken as metres: the distances between the stations say otherwise."""
    job = jobs["foot"]
    layer = qgis_core.QgsVectorLayer(job.residuals.results["OUTPUT"], "bare", "ogr")
    bare = toolbox.saved(layer, job.folder / "schedule.gpkg")
    said = toolbox.refusal("scheduleadjustments", STATIONS=bare)
    assert "'bare' has no record" in said and "state HEIGHT_UNIT and CHAINAGE_UNIT" in said
    run = toolbox.run("scheduleadjustments", STATIONS=bare, HEIGHT_UNIT="foot")
    assert job.metres(run, "move") == pytest.approx(job.metres(job.schedule, "move"), abs=1e-9)
    # Chainages stated, heights not: the bend of the chord tells.
    said = toolbox.refusal("scheduleadjustments", STATIONS=bare, CHAINAGE_UNIT="foot")
    assert "bend of the straight design" in said and "(HEIGHT_UNIT)" in said
    warned = toolbox.run("scheduleadjustments", STATIONS=bare, HEIGHT_UNIT="metre", CHAINAGE_UNIT="foot")
    assert "bend of the straight design" in " ".join(warned.warnings)
    metric = qgis_core.QgsVectorLayer(jobs["metre"].residuals.results["OUTPUT"], "bare", "ogr")
    metric = toolbox.saved(metric, jobs["metre"].folder / "schedule.gpkg")
    assert "taken as metre" in toolbox.run("scheduleadjustments", STATIONS=metric).said
