"""generatestations through the registry: an interval, vertices, listed chainages."""

import pytest

pyproj = pytest.importorskip("pyproj")
GEOD = pyproj.Geod(ellps="WGS84")


@pytest.fixture
def axis(toolbox):
    """Two legs of 500 m and 400 m of ellipsoid at 50° north, with a bend of 30° to the right."""
    middle = GEOD.fwd(8.0, 50.0, 40.0, 500.0)
    end = GEOD.fwd(middle[0], middle[1], middle[2] + 180.0 + 30.0, 400.0)
    return toolbox.lines([{"at": [(8.0, 50.0), middle[:2], end[:2]], "name": "line"}])


def test_defaults_are_the_vertices(toolbox, axis):
    run = toolbox.run("generatestations", AXIS=axis)
    assert run.column("chainage") == pytest.approx([0.0, 500.0, 900.0], abs=1e-6)
    assert list(run.rows()[0]) == ["axis", "station", "chainage", "offset", "azimuth"]
    assert run.column("station") == ["0+000", "0+500", "0+900"] and run.results["COUNT"] == 3
    assert run.info[0] == "Axis 'line' from 0+000 to 0+900: 3 stations."


def test_interval_and_list(toolbox, axis):
    run = toolbox.run("generatestations", AXIS=axis, INTERVAL=200.0, CHAINAGES="0+350; 450\n0+400")
    assert run.column("chainage") == pytest.approx([0, 200, 350, 400, 450, 500, 600, 800, 900], abs=1e-6)
    only = toolbox.run("generatestations", AXIS=axis, INTERVAL=300.0, AT_VERTICES=False)
    assert only.column("chainage") == pytest.approx([0, 300, 600, 900], abs=1e-6)


def test_azimuths(toolbox, axis):
    """Ahead of the bend the second leg's; the first leg's turns on its way by the convergence of the meridians."""
    run = toolbox.run("generatestations", AXIS=axis, CHAINAGES="0+499.999")
    at_bend = GEOD.fwd(8.0, 50.0, 40.0, 500.0)[2] + 180.0
    assert run.column("azimuth")[:3] == pytest.approx([40.0, at_bend, at_bend + 30.0], abs=1e-6)


def test_places(toolbox, axis):
    run = toolbox.run("generatestations", AXIS=axis, INTERVAL=250.0, AT_VERTICES=False)
    point = list(run.layer().getFeatures())[1].geometry().asPoint()
    assert (point.x(), point.y()) == pytest.approx(GEOD.fwd(8.0, 50.0, 40.0, 250.0)[:2], abs=1e-11)


def test_chainages_beyond_are_left_out(toolbox, axis):
    run = toolbox.run("generatestations", AXIS=axis, CHAINAGES="5+000;-0+010;0+100")
    assert len(run.rows()) == 4
    (told,) = run.warnings
    assert told == "Axis 'line': 2 listed chainages lie beyond its ends, by up to 4100.00 m: left out."


def test_start_unit_and_equations(toolbox, axis):
    run = toolbox.run(
        "generatestations", AXIS=axis, CHAINAGE_START="10+00", CHAINAGE_UNIT="foot", INTERVAL=500.0, AT_VERTICES=False
    )
    assert run.column("station") == ["10+00", "15+00", "20+00", "25+00", "30+00", "35+00"]
    assert run.column("chainage")[-1] == pytest.approx(3500.0)
    run = toolbox.run("generatestations", AXIS=axis, INTERVAL=300.0, AT_VERTICES=False, EQUATIONS="0+400=1+000")
    assert run.column("station") == ["0+000", "0+300", "1+200", "1+500"]


def test_interval_at_height(toolbox, axis):
    low = toolbox.run("generatestations", AXIS=axis, INTERVAL=100.0)
    high = toolbox.run("generatestations", AXIS=axis, INTERVAL=100.0, CHAINAGE_HEIGHT=4000.0)
    assert low.column("chainage")[-1] == pytest.approx(900.0, abs=1e-6)
    assert high.column("chainage")[-1] == pytest.approx(900.0 * (1 + 4000.0 / 6.38e6), abs=1e-2)


def test_generated_stations_get_design_heights(toolbox, axis):
    """For setting out: no heights, both controls typed."""
    stations = toolbox.run("generatestations", AXIS=axis, INTERVAL=100.0).layer()
    text = toolbox.refusal("designheights", STATIONS=stations, AXIS=axis, DESIGN="level", CHAINAGE_A="0", HEIGHT_A=5.0)
    assert "no field 'height'" in text and "HEIGHT_FIELD" in text
    # A level design typed in full needs no height at all: any empty column serves.
    run = toolbox.run(
        "designheights",
        STATIONS=stations,
        AXIS=axis,
        DESIGN="level",
        CHAINAGE_A="0",
        HEIGHT_A=5.0,
        HEIGHT_FIELD="offset",
    )
    assert set(run.column("design_h")) == {5.0}


def test_axes_with_their_own_start(toolbox):
    axes = toolbox.lines(
        [
            {"at": [(0.0, 0.0), (0.01, 0.0)], "name": n, "design": "level", "chain_0": s}
            for n, s in (("a", "1+000"), ("b", None))
        ],
        types={"chain_0": "string"},
    )
    run = toolbox.run("generatestations", AXIS=axes, CHAINAGE_START="0+200")
    assert run.column("station")[0] == "1+000" and run.column("station")[2] == "0+200"


def test_fields_of_an_axis_that_do_not_count_are_told(toolbox):
    """Without a field 'design' none does: many a road layer has a slope in percent."""
    row = {"at": [(0.0, 0.0), (0.01, 0.0)], "name": "line", "chain_0": "1+000", "chain_h": 12.0, "slope": 2.5}
    run = toolbox.run("generatestations", AXIS=toolbox.lines([row], types={"chain_0": "string"}), INTERVAL=100.0)
    assert "Layer 'axis' has 'chain_0', 'chain_h' and no field 'design', without which none of these counts" in run.said
    assert run.column("station")[0] == "0+000"
    run = toolbox.run("generatestations", AXIS=toolbox.lines([{**row, "design": ""}]), INTERVAL=100.0)
    assert "no field 'design'" not in run.said and run.column("station")[0] == "1+000"
