"""Real runs of the host's command line in a profile of their own: exit status, results, sentences."""

import json
import os
import pathlib
import shutil
import subprocess

import pytest

pyproj = pytest.importorskip("pyproj")
ROOT = pathlib.Path(__file__).resolve().parents[2]
SAMPLE = ROOT / "sample_layers" / "range"
COMMAND = shutil.which("qgis_process.bin") or shutil.which("qgis_process")


@pytest.fixture(scope="module")
def command(tmp_path_factory):
    """A function that runs the host's command line with the plugin enabled, in a home of its own."""
    if COMMAND is None:
        pytest.skip("the host's command line is not installed")
    home = tmp_path_factory.mktemp("home")
    (home / "plugins").mkdir()
    (home / "plugins" / "tautline").symlink_to(ROOT)
    profile = home / "config" / "profiles" / "default" / "QGIS"
    profile.mkdir(parents=True)
    (profile / "QGIS3.ini").write_text("[PythonPlugins]\ntautline=true\n", encoding="utf-8")
    place = {
        "HOME": str(home),
        "QGIS_CUSTOM_CONFIG_PATH": str(home / "config"),
        "QGIS_PLUGINPATH": str(home / "plugins"),
        "QT_QPA_PLATFORM": "offscreen",
        "PYTHONDONTWRITEBYTECODE": "1",
        "LANG": "C.UTF-8",
    }

    def run(entry, *given, environment=None):
        return subprocess.run(
            [COMMAND, "--json", "run", f"tautline:{entry}", *given],
            capture_output=True,
            text=True,
            env={**os.environ, **place, **(environment or {})},
            check=False,
        )

    return run


def layer_of(path):
    from qgis.core import QgsVectorLayer

    layer = QgsVectorLayer(str(path), "out", "ogr")
    assert layer.isValid()
    return layer


def test_place_then_design(host, command, tmp_path):
    """The main job as the demo runs it; numbers in the results, style in the file."""
    placed = command(
        "placestations",
        f"--INPUT={SAMPLE}/heights.csv",
        f"--AXIS={SAMPLE}/axis.gpkg",
        f"--OUTPUT={tmp_path}/placed.gpkg",
    )
    assert placed.returncode == 0, placed.stderr
    assert json.loads(placed.stdout)["results"]["REJECTED_COUNT"] == 0
    design = command(
        "designheights",
        f"--STATIONS={tmp_path}/placed.gpkg",
        f"--AXIS={SAMPLE}/axis.gpkg",
        "--UNDULATION=field",
        "--UNDULATION_FIELD=undulation",
        f"--OUTPUT={tmp_path}/out.gpkg",
        f"--SUMMARY={tmp_path}/sum.gpkg",
    )
    assert design.returncode == 0, design.stderr
    results = json.loads(design.stdout)["results"]
    want = json.loads((SAMPLE / "expected.json").read_text(encoding="utf-8"))
    assert results["COUNT"] == sum(axis["number"] for axis in want["axes"].values())
    assert results["MAX_ABS"] == pytest.approx(max(axis["max_abs"] for axis in want["axes"].values()), abs=2e-6)
    layer = layer_of(tmp_path / "out.gpkg")
    assert layer.featureCount() == len(want["stations"]) and layer.loadDefaultStyle()[1]


@pytest.fixture
def files(toolbox, tmp_path):
    stations, axis = toolbox.straight()
    toolbox.saved(stations, tmp_path / "stations.gpkg", "stations")
    toolbox.saved(axis, tmp_path / "axis.gpkg", "axis")
    return [f"--STATIONS={tmp_path}/stations.gpkg", f"--AXIS={tmp_path}/axis.gpkg"]


def bytes_of(folder):
    return {name: (folder / name).read_bytes() for name in sorted(os.listdir(folder))}


@pytest.mark.parametrize(
    "given, said",
    [
        (["--HEIGHT_FIELD=nope", "--OUTPUT=out.gpkg"], "has no field 'nope' (HEIGHT_FIELD); it has fid, height."),
        (["--TOLERANCE=wide", "--OUTPUT=out.gpkg"], "TOLERANCE"),
        (["--TOLERANC=1", "--OUTPUT=out.gpkg"], "There is no parameter TOLERANC; there are"),
        (["--OUTPUT=stations.gpkg"], "is the place of the input STATIONS"),
    ],
)
def test_refusals_have_an_exit_status(command, files, tmp_path, given, said):
    """Nothing is written, and inputs stay as they are, byte for byte."""
    before = bytes_of(tmp_path)
    run = command("designheights", *files, *[text.replace("OUTPUT=", f"OUTPUT={tmp_path}/") for text in given])
    assert run.returncode != 0 and said in run.stderr and not run.stdout.strip(), (run.stdout, run.stderr)
    assert bytes_of(tmp_path) == before


def test_missing_geoid_grid_is_never_read_as_zero(command, files, tmp_path):
    """PROJ offers a ballpark step without a word where the grid is not installed."""
    data = tmp_path / "proj"
    data.mkdir()
    shutil.copy(os.path.join(pyproj.datadir.get_data_dir().split(os.pathsep)[0], "proj.db"), data)
    environment = {"PROJ_DATA": str(data), "PROJ_LIB": str(data), "PROJ_NETWORK": "OFF"}
    for entry, given in (("designheights", [*files, "--UNDULATION=grid"]), ("convertheights", files[:1])):
        run = command(entry, *given, f"--OUTPUT={tmp_path}/out.gpkg", environment=environment)
        assert run.returncode != 0 and "The geoid grid EGM96 is not installed" in run.stderr, run.stdout
        assert not (tmp_path / "out.gpkg").exists()
