"""The whole job with the line in plan, over the geoid, after an edit by hand, in metres, feet and US survey feet.

A list with offsets and undulations is placed; station 12 is then edited in the map, in height and in place, and the
chain runs on from there. NIST: 0.3048 m and 1200/3937 m. What is asked for is stated once; later forms are left alone.
"""

import re

import pytest

pytest.importorskip("pyproj")
qgis_core = pytest.importorskip("qgis.core")

from tests.host.unit_job import AZIMUTH, EARTH, LABELS, METRES, STEP, N, UnitJob, height, undulation  # noqa: E402

EDITED = 12
RISE, ASIDE = 0.060, 0.045


def survey(later=False):
    """Rows of a list in metres: offsets with readings of some millimetres; ``later``: station 20 has settled by 20 mm
    and moved right by 15."""
    for k in range(N):
        moved = later and k == 20
        offset = 0.001 * ((11 * k) % 7 - 3) + (0.015 if moved else 0.0)
        yield STEP * k, height(k) - (0.020 if moved else 0.0), offset, undulation(k)


class Job(UnitJob):
    """The chain in one unit; ``before`` is what designheights made before the edit."""

    def work(self):
        stations = self.placed("first", survey(), ["Offset"])
        later = self.placed("later", survey(later=True), ["Offset"])
        common = {"STATIONS": stations, "AXIS": self.axis}
        asked = {"LINE": "fitted", "TOLERANCE": 0.010 / self.per, "LINE_TOLERANCE": 0.008 / self.per}
        self.before = self.run("designheights", **common, **asked, OUTPUT=self.file("before.gpkg"))
        self.edit(stations)
        self.late = self.run(
            "drawdeviations", STATIONS=self.file("before.gpkg"), AXIS=self.axis, BARS="memory:", OUTPUT=None
        )
        made = self.file("residuals.gpkg")
        self.residuals = self.run("designheights", **common, **asked, OUTPUT=made)
        sigmas = {"SIGMA": 0.003 / self.per, "SIGMA_LINE": 0.003 / self.per}
        tested = {"REFERENCE": self.file("reference.gpkg"), "OUTPUT": self.file("tested.gpkg")}
        self.fit = self.run("fitreference", **common, LINE="fitted", **sigmas, **tested)
        bars = {"BARS": "memory:", "LINE_BARS": "memory:", "OUTPUT": None}
        self.bars = self.run("drawdeviations", STATIONS=made, AXIS=self.axis, **bars)
        sheet = {"SHEET": self.file("sheet.html")}
        self.schedule = self.run("scheduleadjustments", STATIONS=made, TESTED=tested["OUTPUT"], LINE="lateral", **sheet)
        # The point was moved, the column with its offset was not: measured again.
        again = self.run("measurestations", **common, OUTPUT=self.file("again.gpkg")).results["OUTPUT"]
        self.compared = self.run(
            "comparesurveys",
            **{"SURVEYS": [again, later], "DATES": "2025-01-01; 2026-01-01", "LINE": "offset", **sigmas},
            CHANGES=self.file("changes.gpkg"),
        )
        report = {"TESTED": tested["OUTPUT"], "REFERENCE": tested["REFERENCE"], "OUTPUT": None}
        self.report = self.run("reviewreport", STATIONS=made, **report, HTML=self.file("report.html"))

    def edit(self, path):
        """Raise one station and move it to the right by hand."""
        layer = qgis_core.QgsVectorLayer(path, "edited", "ogr")
        feature = sorted(layer.getFeatures(), key=lambda one: one["chainage"])[EDITED]
        point = feature.geometry().asPoint()
        lon, lat, _ = EARTH.fwd(point.x(), point.y(), AZIMUTH + 90.0, ASIDE)
        layer.startEditing()
        field = layer.fields().indexOf("height")
        assert layer.changeAttributeValue(feature.id(), field, feature["height"] + RISE / self.per)
        there = qgis_core.QgsGeometry.fromPointXY(qgis_core.QgsPointXY(lon, lat))
        assert layer.changeGeometry(feature.id(), there) and layer.commitChanges()


@pytest.fixture(scope="module")
def jobs(host, tmp_path_factory):
    return Job.in_every_unit(tmp_path_factory.mktemp("line"))


@pytest.mark.parametrize("unit", ["foot", "us_foot"])
def test_feet_give_the_same_millimetres(jobs, unit):
    one, other = jobs["metre"], jobs[unit]
    for run, name, key in (
        ("before", "lateral", "OUTPUT"),
        ("residuals", "residual", "OUTPUT"),
        ("residuals", "lateral", "OUTPUT"),
        ("fit", "lateral", "OUTPUT"),
        ("fit", "lat_blund", "OUTPUT"),
        ("bars", "residual", "BARS"),
        ("bars", "lateral", "LINE_BARS"),
        ("schedule", "move", "OUTPUT"),
        ("schedule", "lat_move", "OUTPUT"),
        ("compared", "change", "OUTPUT"),
        ("compared", "lat_change", "OUTPUT"),
    ):
        got, due = (job.metres(getattr(job, run), name, key) for job in (other, one))
        # 1e-6 mm; the list itself holds nine decimals.
        assert len(got) == len(due) >= N - 1 and got == pytest.approx(due, abs=4e-9), (run, name)
    for run, name in (("residuals", "status"), ("residuals", "side"), ("fit", "flag"), ("fit", "lat_flag")):
        assert getattr(other, run).column(name) == getattr(one, run).column(name)
    assert other.fit.column("lat_w") == pytest.approx(one.fit.column("lat_w"), abs=1e-4)


@pytest.mark.parametrize("unit", METRES)
def test_the_edit_goes_through_to_the_end(jobs, unit):
    """Residual and departure change by what was edited, less what the fitted line and the chord take of it: nothing of
    the height (the chord's controls are the ends), less than a tenth of the line (31 stations)."""
    job = jobs[unit]
    rows = [sorted(run.rows(), key=lambda row: row["chainage"]) for run in (job.before, job.residuals, job.fit)]
    before, after, fit = (row[EDITED] for row in rows)
    assert (after["residual"] - before["residual"]) * job.per == pytest.approx(RISE, abs=1e-6)
    assert 0.9 * ASIDE < (after["lateral"] - before["lateral"]) * job.per < ASIDE
    assert (after["status"], after["side"]) == ("high", "right")
    assert (fit["flag"], fit["lat_flag"]) == ("suspected blunder", "suspected blunder")
    schedule = sorted(job.schedule.rows(), key=lambda row: row["chainage"])[EDITED]
    # Suspected of a blunder in both, it is to be measured again, not moved.
    assert schedule["move"] in (None, 0.0) and schedule["lat_move"] in (None, 0.0), schedule
    change = sorted(job.compared.rows(), key=lambda row: row["chainage"])[EDITED]
    assert change["change"] * job.per == pytest.approx(-RISE, abs=1e-6)
    assert change["lat_change"] * job.per == pytest.approx(-ASIDE, abs=1e-6)


@pytest.mark.parametrize("unit", METRES)
def test_what_is_older_than_the_edit_is_said_to_be(jobs, unit):
    job = jobs[unit]
    assert "is older than what it was made from" in " ".join(job.late.warnings)
    for run in (job.bars, job.schedule, job.report):
        assert "older than" not in " ".join(run.warnings)


@pytest.mark.parametrize("unit", METRES)
def test_every_page_says_its_unit_for_both(jobs, unit):
    job, label = jobs[unit], LABELS[unit]
    small = "mm" if unit == "metre" else r"(?:US )?(?:ft|in)"
    for name, line in (("sheet.html", "Move left or right"), ("report.html", "Lateral")):
        page = (job.folder / name).read_text("utf-8")
        assert f"As-built ({label})" in page and re.search(rf"{line} \({small}\)", page), name
        if unit != "metre":
            assert not re.search(r"\d mm\b", page), name
