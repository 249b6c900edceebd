"""From the levelling to the fit: heights and covariance of adjustlevelling in fitreference."""

import html

import numpy as np
import pytest

pyproj = pytest.importorskip("pyproj")
qgis_core = pytest.importorskip("qgis.core")
GEOD = pyproj.Geod(ellps="WGS84")
KM = 0.0007


class Arm:
    """One arm of 2 km, levelled outwards from a benchmark at its origin with 0.7 mm over 1 km, single lines."""

    def __init__(self, toolbox):
        distances = np.arange(0.0, 2001.0, 100.0)
        places = [GEOD.fwd(8.0, 50.0, 40.0, d)[:2] for d in distances.tolist()]
        random = np.random.default_rng(5)
        self.heights = 100.0 + distances**2 / (2 * 6.38e6) + np.cumsum(random.normal(0.0, KM * np.sqrt(0.1), 21))
        rise = np.diff(self.heights).tolist()
        self.lines = toolbox.table(
            [
                {"from": f"P{k}", "to": f"P{k + 1}", "dh": dh, "length": 100.0, "sd": KM * 0.1**0.5}
                for k, dh in enumerate(rise)
            ],
            "lines",
        )
        self.marks = toolbox.table([{"name": "P0", "height": float(self.heights[0])}], "marks")
        self.places = toolbox.points([{"at": at, "point": f"P{k}"} for k, at in enumerate(places)])
        self.axis = toolbox.lines([{"at": [places[0], places[-1]], "name": "A"}])

    def adjusted(self, toolbox, tmp_path):
        files = {key: str(tmp_path / f"{key.lower()}.gpkg") for key in ("POINTS", "COVARIANCE")}
        toolbox.run("adjustlevelling", INPUT=self.lines, BENCHMARKS=self.marks, STATIONS=self.places, **files)
        return files

    @staticmethod
    def without_record(toolbox, files, folder):
        """The adjusted points as a layer that no record comes with."""
        layer = qgis_core.QgsVectorLayer(files["POINTS"], "bare", "ogr")
        return {"POINTS": toolbox.saved(layer, folder / "bare.gpkg")}

    def fitted(self, toolbox, files, **more):
        run = toolbox.run(
            "fitreference",
            STATIONS=files["POINTS"],
            AXIS=self.axis,
            UNDULATION="ellipsoidal",
            CHAINAGE_HEIGHT=0,
            REFERENCE="memory:",
            REMOVE_BLUNDERS=False,
            **more,
        )
        return run, run.rows("REFERENCE")[0]


@pytest.fixture
def arm(toolbox):
    return Arm(toolbox)


def test_covariance_of_the_adjustment_is_that_of_levelling_outwards(toolbox, arm, tmp_path):
    """A line levelled outwards from its benchmark has C_ij = km^2 min(d_i, d_j): the same fit as by SIGMA_KM."""
    files = arm.adjusted(toolbox, tmp_path)
    given, one = arm.fitted(toolbox, files, COVARIANCE=files["COVARIANCE"], SIGMA=0.001)
    bare = arm.without_record(toolbox, files, tmp_path)
    _, other = arm.fitted(toolbox, bare, SIGMA=0.001, SIGMA_KM=0.7)
    for name in ("h0", "nx", "ny", "nz"):
        assert one[name] == pytest.approx(other[name], abs=1e-8)
    for name in ("sd_h", "sd_slope", "var_factor", "tan_sd"):
        assert one[name] == pytest.approx(other[name], rel=1e-6)
    _, without = arm.fitted(toolbox, bare, SIGMA=0.001)
    assert one["sd_slope"] > 1.5 * without["sd_slope"]
    assert "covariance of the heights from the layer" in " ".join(given.info)


def test_record_of_the_stations_names_their_covariance(toolbox, arm, tmp_path):
    """Nothing is typed: the table is found behind the points, and behind what was measured from them."""
    files = arm.adjusted(toolbox, tmp_path)
    _, given = arm.fitted(toolbox, files, COVARIANCE=files["COVARIANCE"], SIGMA=0.001)
    found, one = arm.fitted(toolbox, files, SIGMA=0.001)
    measured = toolbox.run("measurestations", STATIONS=files["POINTS"], AXIS=arm.axis, OUTPUT=str(tmp_path / "m.gpkg"))
    _, two = arm.fitted(toolbox, {"POINTS": measured.results["OUTPUT"]}, SIGMA=0.001)
    for name in ("h0", "sd_h", "sd_slope"):
        assert one[name] == pytest.approx(given[name], rel=1e-12) == two[name]
    assert "covariance of the heights from the layer" in found.said


def test_sigma_beside_a_covariance_is_told(toolbox, arm, tmp_path):
    """It counts, so whoever reads the log or the page must know of it; nothing is said where none was typed."""
    files, page = arm.adjusted(toolbox, tmp_path), tmp_path / "shapes.html"
    common = {"STATIONS": files["POINTS"], "AXIS": arm.axis, "UNDULATION": "ellipsoidal", "HTML": str(page)}
    beside = "'covariance', plus a standard deviation of 1.0 mm for every height by itself"
    fit, _ = arm.fitted(toolbox, files, SIGMA=0.001)
    test = toolbox.run("testcurvature", SIGMA=0.001, **common)
    for text in (fit.said, test.said, html.unescape(page.read_text("utf-8"))):
        assert beside in text, text
    fit, _ = arm.fitted(toolbox, files)
    test = toolbox.run("testcurvature", **common)
    for text in (fit.said, test.said, page.read_text("utf-8")):
        assert "covariance of the heights" in text and "by itself" not in text
    surveys = [str(tmp_path / name) for name in ("first.gpkg", "second.gpkg")]
    for made in surveys:
        toolbox.run("measurestations", STATIONS=files["POINTS"], AXIS=arm.axis, OUTPUT=made)
    toolbox.run("comparesurveys", SURVEYS=surveys, SIGMA=0.001, REPORT=str(page))
    assert html.unescape(page.read_text("utf-8")).count(beside) == 2


def test_covariance_that_was_not_kept_is_told(toolbox, arm, tmp_path):
    files = {"POINTS": str(tmp_path / "points.gpkg")}
    toolbox.run("adjustlevelling", INPUT=arm.lines, BENCHMARKS=arm.marks, STATIONS=arm.places, **files)
    run, _ = arm.fitted(toolbox, files, SIGMA=0.001)
    assert "their correlation is ignored" in " ".join(run.warnings)
    files = arm.adjusted(toolbox, tmp_path)
    (tmp_path / "covariance.gpkg").unlink()
    run, _ = arm.fitted(toolbox, files, SIGMA=0.001)
    assert "covariance.gpkg', no longer exists; their correlation is ignored" in " ".join(run.warnings)


def test_another_covariance_than_the_recorded_one_is_refused(toolbox, arm, tmp_path):
    files = arm.adjusted(toolbox, tmp_path)
    names = [f"P{k}" for k in range(21)]
    texts = [" ".join("0" if j < k else "4" for j in range(k + 1)) for k in range(21)]
    other = toolbox.table([{"point": n, "covar": t} for n, t in zip(names, texts)], "other")
    with pytest.raises(Exception, match="COVARIANCE is the layer 'other', but the record of layer .*covariance.gpkg"):
        arm.fitted(toolbox, files, COVARIANCE=other, SIGMA=0.001)


def test_heights_of_another_field_have_no_recorded_covariance(toolbox, arm, tmp_path):
    files = arm.adjusted(toolbox, tmp_path)
    layer = qgis_core.QgsVectorLayer(files["POINTS"], "points", "ogr")
    layer.startEditing()
    layer.addAttribute(qgis_core.QgsField("old", layer.fields().field("height").type()))
    for feature in layer.getFeatures():
        layer.changeAttributeValue(feature.id(), layer.fields().indexFromName("old"), feature["height"])
    assert layer.commitChanges()
    run, one = arm.fitted(toolbox, files, SIGMA=0.001, HEIGHT_FIELD="old")
    assert "covariance" not in run.said and "correlation is ignored" not in run.said


def test_fixed_benchmark_without_sigma_is_good_to_a_tenth_of_a_millimetre(toolbox, arm, tmp_path):
    """Accuracies of the line by full matrices: levelled outwards, 0.1 mm of setting up at the benchmark."""
    files = arm.adjusted(toolbox, tmp_path)
    _, one = arm.fitted(toolbox, files)
    d = np.arange(0.0, 2001.0, 100.0)
    matrix = KM**2 / 1000.0 * np.minimum.outer(d, d)
    matrix[0, 0] = 1e-8
    a = np.column_stack((np.ones(21), d - 1000.0))
    sd = np.sqrt(np.diag(np.linalg.inv(a.T @ np.linalg.solve(matrix, a))))
    assert one["sd_h"] == pytest.approx(sd[0], rel=1e-5)


def test_a_fixed_benchmark_as_station_without_its_covariance(toolbox, arm, tmp_path):
    """The standard deviation 0 of an adjusted height is that of setting up; of any other it is refused."""
    files = {"POINTS": str(tmp_path / "points.gpkg")}
    toolbox.run("adjustlevelling", INPUT=arm.lines, BENCHMARKS=arm.marks, STATIONS=arm.places, **files)
    run, one = arm.fitted(toolbox, files)
    assert "their correlation is ignored" in " ".join(run.warnings) and one["sd_h"] > 0
    shape = toolbox.run("testcurvature", STATIONS=files["POINTS"], AXIS=arm.axis, UNDULATION="ellipsoidal")
    assert "their correlation is ignored" in " ".join(shape.warnings)
    with pytest.raises(Exception, match="row 1: the standard deviation in the field 'sd' is 0; it must be positive"):
        arm.fitted(toolbox, arm.without_record(toolbox, files, tmp_path))


def test_bad_covariance_is_one_sentence(toolbox, arm, tmp_path):
    files = arm.adjusted(toolbox, tmp_path)
    files = arm.without_record(toolbox, files, tmp_path)
    with pytest.raises(Exception, match="Layer 'lines' is not a table of covariances: it lacks the field point, covar"):
        arm.fitted(toolbox, files, COVARIANCE=arm.lines, SIGMA=0.001)
    short = toolbox.table([{"point": f"P{k}", "covar": "1"} for k in range(21)], "short")
    with pytest.raises(Exception, match="Layer 'short': .* is not complete"):
        arm.fitted(toolbox, files, COVARIANCE=short, SIGMA=0.001)
    foreign = toolbox.table([{"point": "Q", "covar": "1"}], "foreign")
    with pytest.raises(Exception, match="Layer 'foreign': The covariance has no point 'P0'"):
        arm.fitted(toolbox, files, COVARIANCE=foreign, SIGMA=0.001)


def test_numpy_numbers_are_numbers(toolbox, arm, tmp_path):
    """The oldest host reads a numpy number as 0."""
    files = arm.adjusted(toolbox, tmp_path)
    _, one = arm.fitted(toolbox, files, SIGMA=np.float64(0.002))
    _, other = arm.fitted(toolbox, files, SIGMA=0.002)
    assert one["sd_h"] == other["sd_h"] > 0
