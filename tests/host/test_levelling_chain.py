"""From the field book to what is said of the structure: a benchmark is a station, and the covariance goes along by the
record alone."""

import numpy as np
import pytest

pyproj = pytest.importorskip("pyproj")
GEOD = pyproj.Geod(ellps="WGS84")
KM, NUMBER, SPACING = 0.0007, 21, 100.0
DISTANCE = SPACING * np.arange(NUMBER)
# Levelled outwards from P0, which is held: km^2 min(d_i, d_j), and 0.1 mm of setting up on it.
MATRIX = KM**2 / 1000.0 * np.minimum.outer(DISTANCE, DISTANCE)
MATRIX[0, 0] = 1e-8


class Chain:
    """Two levellings of one line, adjusted and measured along the axis; the second with a third settled by 15 mm."""

    def __init__(self, toolbox, folder):
        places = [GEOD.fwd(8.0, 50.0, 40.0, d)[:2] for d in DISTANCE.tolist()]
        self.axis = toolbox.lines([{"at": [places[0], places[-1]], "name": "A"}])
        points = toolbox.points([{"at": at, "point": f"P{k}"} for k, at in enumerate(places)])
        self.errors, self.paths = [], []
        for epoch in range(2):
            errors = np.cumsum(np.random.default_rng(epoch).normal(0.0, KM * np.sqrt(SPACING / 1000.0), NUMBER - 1))
            errors = np.concatenate(([0.0], errors)) - 0.015 * epoch * (np.arange(NUMBER) >= 14)
            heights = 100.0 + DISTANCE**2 / (2 * 6.38e6) + errors
            lines = [
                {"from": f"P{k}", "to": f"P{k + 1}", "dh": dh, "length": SPACING, "sd": KM * (SPACING / 1000.0) ** 0.5}
                for k, dh in enumerate(np.diff(heights).tolist())
            ]
            files = {key: str(folder / f"{key.lower()}{epoch}.gpkg") for key in ("POINTS", "COVARIANCE")}
            marks = toolbox.table([{"name": "P0", "height": 100.0}], "marks")
            toolbox.run(
                "adjustlevelling", INPUT=toolbox.table(lines, "lines"), BENCHMARKS=marks, STATIONS=points, **files
            )
            path = str(folder / f"measured{epoch}.gpkg")
            toolbox.run("measurestations", STATIONS=files["POINTS"], AXIS=self.axis, OUTPUT=path)
            self.errors.append(errors)
            self.paths.append(path)


@pytest.fixture
def chain(toolbox, tmp_path):
    return Chain(toolbox, tmp_path)


def test_line_and_shape(toolbox, chain):
    """The accuracy of the line's height midway and of the curvature factor by full matrices."""
    common = {"AXIS": chain.axis, "UNDULATION": "ellipsoidal", "CHAINAGE_HEIGHT": 0, "REMOVE_BLUNDERS": False}
    fit = toolbox.run("fitreference", STATIONS=chain.paths[0], REFERENCE="memory:", **common)
    a = np.column_stack((np.ones(NUMBER), DISTANCE - 1000.0))
    sd = np.sqrt(np.diag(np.linalg.inv(a.T @ np.linalg.solve(MATRIX, a))))
    assert fit.rows("REFERENCE")[0]["sd_h"] == pytest.approx(sd[0], rel=1e-5)
    assert "covariance of the heights from the layer" in fit.said and not fit.warnings
    del common["REMOVE_BLUNDERS"]
    shape = toolbox.run("testcurvature", STATIONS=chain.paths[0], **common).rows()[0]
    radius = 1.0 / (np.cos(np.radians(40)) ** 2 / 6_372_956.0 + np.sin(np.radians(40)) ** 2 / 6_390_702.0)
    bent = np.column_stack((a, a[:, 1] ** 2 / (2.0 * radius)))
    factor = np.sqrt(np.linalg.inv(bent.T @ np.linalg.solve(MATRIX, bent))[2, 2])
    assert shape["factor_sd"] == pytest.approx(factor, rel=2e-3)


def test_surveys_compared(toolbox, chain):
    """The change by generalised least squares on the fourteen stations that did not settle, with full matrices."""
    run = toolbox.run("comparesurveys", SURVEYS=chain.paths, DATES="2025-03-11; 2026-03-09", MOTIONS="memory:")
    assert run.column("bend_verd")[14:] == ["settled"] * 7 and "settled" not in run.column("bend_verd")[:14]
    both, change = 2.0 * MATRIX, chain.errors[1] - chain.errors[0]
    assert run.column("sd_change") == pytest.approx(np.sqrt(np.diag(both)).tolist(), rel=1e-6)
    one, stable = np.ones(14), both[:14, :14]
    weight = np.linalg.solve(stable, one)
    motion = run.rows("MOTIONS")[0]
    assert motion["shift"] == pytest.approx(weight @ change[:14] / weight.sum(), abs=1e-9)
    assert motion["sd_shift"] == pytest.approx(weight.sum() ** -0.5, rel=1e-6)
    assert (motion["stable"], motion["shift_verd"]) == (14, "not significant")
    assert motion["chi2"] == pytest.approx(change @ np.linalg.solve(both, change), rel=1e-6)
    assert "(14 stations)" not in run.said and "set aside: " in run.said and "(7 stations)" in run.said
    # The tables may be named, and another than the record's is refused.
    tables = {f"COVARIANCE_{k + 1}": chain.paths[0].replace("measured0", f"covariance{k}") for k in range(2)}
    again = toolbox.run("comparesurveys", SURVEYS=chain.paths, DATES="2025-03-11; 2026-03-09", **tables)
    assert again.column("sd_bend") == pytest.approx(run.column("sd_bend"), rel=1e-12)


def test_adjusted_against_a_survey_of_which_less_is_known(toolbox, chain):
    """The covariance of one survey and independent heights of the other, or heights of which nothing is known."""
    other = toolbox.points(
        [
            {"at": GEOD.fwd(8.0, 50.0, 40.0, d)[:2], "axis": "A", "chainage": d, "height": float(height), "sd": sd}
            for d, height, sd in zip(DISTANCE.tolist(), 100.0 + DISTANCE**2 / (2 * 6.38e6), [0.002] * NUMBER)
        ],
        name="other",
    )
    given = {"SURVEYS": [chain.paths[0], other], "DATES": "2025-03-11; 2026-03-09", "MOTIONS": "memory:"}
    run = toolbox.run("comparesurveys", **given)
    assert run.column("sd_change") == pytest.approx(np.sqrt(np.diag(MATRIX) + 4e-6).tolist(), rel=1e-6)
    assert run.rows("MOTIONS")[0]["shift_verd"] == "not judged" and "not known of 2026-03-09" in run.said
    levelled = toolbox.run("comparesurveys", SIGMAS=";0.0003", SIGMAS_KM=";1.5", **given)
    both = 2.25e-9 * DISTANCE + 9e-8 + np.diag(MATRIX)
    assert levelled.column("sd_change") == pytest.approx(np.sqrt(both).tolist(), rel=1e-6)
    assert levelled.rows("MOTIONS")[0]["shift_verd"] in ("shown", "not significant")
    other.startEditing()
    other.deleteAttribute(other.fields().indexOf("sd"))
    assert other.commitChanges()
    nothing = toolbox.run("comparesurveys", **given)
    assert set(nothing.column("verdict")) == {"no sd"} and nothing.rows("MOTIONS")[0]["shift_verd"] == "not judged"


def test_residuals_of_a_chord_through_adjusted_stations(toolbox, chain, tmp_path):
    """The chance within of a report, by full matrices and the normal distribution of the standard library."""
    from statistics import NormalDist

    from tests.host.test_review_report import Page

    path, page = str(tmp_path / "residuals.gpkg"), str(tmp_path / "report.html")
    run = toolbox.run(
        "designheights",
        STATIONS=chain.paths[0],
        AXIS=chain.axis,
        UNDULATION="ellipsoidal",
        TOLERANCE=0.001,
        OUTPUT=path,
    )
    toolbox.run("reviewreport", OUTPUT=None, STATIONS=path, HTML=page)
    read, rows = Page(page), run.rows()
    column = next(row for row in read.rows if "Probability within tolerance" in row).index(
        "Probability within tolerance"
    )
    shares = np.zeros((NUMBER, NUMBER))
    shares[:, 0], shares[:, -1] = 1.0 - DISTANCE / 2000.0, DISTANCE / 2000.0
    left = np.eye(NUMBER) - shares
    spread = np.sqrt(np.diag(left @ MATRIX @ left.T))
    for k in (5, 10, 16):
        chance = NormalDist(rows[k]["residual"], spread[k])
        wanted = 100.0 * (chance.cdf(0.001) - chance.cdf(-0.001))
        told = next(row for row in read.rows if row and row[0] == rows[k]["station"])[column]
        assert told == ("> 99 %" if wanted > 99 else "< 1 %" if wanted < 1 else f"{wanted:.0f} %")
