"""Random cases over all entries: every one ends in a result that is whole or in one sentence, and no input changes.

``--long``: 10,000 cases; the few of an ordinary run are always the same.
"""

import math
import os
import sqlite3
from contextlib import closing

import pytest

qgis_core = pytest.importorskip("qgis.core")
hypothesis = pytest.importorskip("hypothesis")
from hypothesis import HealthCheck, given, settings  # noqa: E402
from hypothesis import strategies as st  # noqa: E402

FEW, MANY = 120, 10_000
SYSTEMS = ["EPSG:32631", "EPSG:4326", "EPSG:27572", "EPSG:3857", "EPSG:4979", "EPSG:3413", "EPSG:4902", "EPSG:4978", ""]
KINDS = ["Point", "PointZ", "MultiPoint", "LineString", "MultiLineString", "Polygon", "NoGeometry"]
PROVIDERS = ["memory", "gpkg", "shp", "geojson"]
NAMES = ["axis", "name", "height", "station", "Sta", "sd", "residual", "status", "design", "HEIGHT", "chainage", "fid_"]
WORDS = [
    "",
    "0+100",
    "1+250.5",
    "a<b>&\"'",
    "1_000",
    "\u0661\u0662",
    "nan",
    "x" * 250,
    "within",
    "=1+1",
    "\u0007bell",
    "12,5",
]
NUMBERS = [0.0, 1.0, -1.0, 0.01, 50.0, 1e5, -9999.0, 1e12, math.nan, math.inf, 1e308, 1e-300]
ODD = [True, 5, -1, "no", "1_0", "\uff11", "x" * 10_000, [], [1, 2], b"ab", {}, "a\0b", "memory:", "\u202e<script>"]

coordinates = st.one_of(
    st.floats(0.0, 1.0).map(lambda part: (500000.0 + 1000.0 * part, 5540000.0)),
    st.tuples(st.floats(-180.0, 180.0), st.floats(-90.0, 90.0)),
    st.tuples(st.floats(allow_nan=False), st.floats(allow_nan=False)),
)


def shape(kind, places):
    """Well-known text of a geometry of ``kind`` through some places; None for a row without one."""
    if kind == "NoGeometry" or not places:
        return None
    pairs = [f"{x!r} {y!r}" for x, y in places]
    if kind in ("Point", "MultiPoint"):
        return f"Point({pairs[0]})" if kind == "Point" else f"MultiPoint({', '.join(f'({p})' for p in pairs)})"
    if kind == "PointZ":
        return f"PointZ({pairs[0]} 7.5)"
    if kind == "Polygon":
        return f"Polygon(({', '.join([*pairs, pairs[0]])}))"
    line = "(" + ", ".join(pairs if len(pairs) > 1 else pairs * 2) + ")"
    return f"LineString{line}" if kind == "LineString" else f"MultiLineString({line})"


@st.composite
def layers(draw):
    """What a layer is made of: kind, reference system, provider and rows."""
    kind = draw(st.sampled_from(KINDS))
    names = draw(st.lists(st.sampled_from(NAMES), min_size=1, max_size=4, unique_by=str.lower))
    types = {name: draw(st.sampled_from(["double", "string", "integer"])) for name in names}
    cells = {
        "double": st.sampled_from([*NUMBERS, None]),
        "string": st.sampled_from([*WORDS, None]),
        "integer": st.sampled_from([0, 1, 50, -5, None]),
    }
    rows = []
    for _ in range(draw(st.integers(0, 8))):
        row = {name: draw(cells[types[name]]) for name in names}
        row["at"] = shape(kind, draw(st.lists(coordinates, max_size=3)))
        rows.append(row)
    return kind, draw(st.sampled_from(SYSTEMS)), draw(st.sampled_from(PROVIDERS)), tuple(names), types, rows


class World:
    """Layers and places of one case, in a folder of its own; everything that exists is watched."""

    def __init__(self, toolbox, folder, sound):
        self.toolbox, self.folder, self.sound, self.made = toolbox, folder, sound, 0

    def layer(self, spec):
        kind, crs, provider, _, types, rows = spec
        layer = self.toolbox.layer(f"layer{self.made}", kind, crs, rows, types)
        self.made += 1
        if provider == "memory":
            return layer
        path = self.folder / f"in{self.made}.{provider}"
        options = qgis_core.QgsVectorFileWriter.SaveVectorOptions()
        options.driverName = qgis_core.QgsVectorFileWriter.driverForExtension("." + provider)
        context = qgis_core.QgsProject.instance().transformContext()
        qgis_core.QgsVectorFileWriter.writeAsVectorFormatV3(layer, str(path), context, options)
        return str(path)

    def place(self, kind):
        standing = self.folder / "standing.gpkg"
        return {
            "memory": "memory:",
            "new": str(self.folder / "new.gpkg"),
            "standing": str(standing),
            "table": f"ogr:dbname='{standing}' table=\"fresh\" (geom)",
            "other table": f"ogr:dbname='{standing}' table=\"standing\" (geom)",
            "csv": str(self.folder / "new.csv"),
            "shp": str(self.folder / "new.shp"),
            "json": str(self.folder / "new.json"),
            "html": str(self.folder / "page.html"),
            "input": str(self.folder / "in1.gpkg"),
            "no folder": str(self.folder / "none" / "new.gpkg"),
            "folder": str(self.folder),
            "odd": str(self.folder / "a\nb.gpkg"),
        }[kind]


PLACES = [
    "memory",
    "new",
    "standing",
    "table",
    "other table",
    "csv",
    "shp",
    "json",
    "html",
    "input",
    "no folder",
    "folder",
    "odd",
]


# Places that something can be written at.
WRITABLE = PLACES[:8]


@st.composite
def values(draw, definition):
    """A value of one parameter: mostly of its kind, now and then something else."""
    kind = definition.type()
    if draw(st.integers(0, 19)) == 0:
        return "plain", draw(st.sampled_from(ODD))
    if kind in ("source", "vector"):
        return draw(
            st.one_of(
                st.sampled_from(["stations", "axis", "designed", "fitted", "reference", "placed"]).map(
                    lambda n: ("sound", n)
                ),
                layers().map(lambda spec: ("layer", spec)),
                st.just(("plain", "/no/such/file.gpkg")),
            )
        )
    if kind in ("sink", "fileDestination"):
        return "place", draw(st.sampled_from(PLACES))
    if kind in ("number", "distance"):
        return "plain", draw(st.sampled_from([*NUMBERS, "1.5", "x"]))
    if kind == "enum":
        return "plain", draw(st.sampled_from([*definition.options(), definition.options()[0]]))
    if kind == "boolean":
        return "plain", draw(st.booleans())
    if kind == "field":
        return "plain", draw(st.sampled_from(NAMES))
    return "plain", draw(st.sampled_from(WORDS))


# What each input of an entry takes in a run that goes well; STATIONS where nothing else is said.
SOUND = {"AXIS": "axis", "INPUT": "list", "REFERENCE": "reference"}
RESULTS = {"drawdeviations", "scheduleadjustments", "reviewreport"}
LISTS = {"adjustlevelling": "levelled", "reducesights": "sights"}


# What else such a run needs.
MORE = {"adjustlevelling": {"FREE": ("plain", True)}, "reviewreport": {"HTML": ("place", "html")}}


@st.composite
def cases(draw, entries):
    """An entry and its parameters: a run that goes well, with up to five of them drawn anew."""
    entry = draw(st.sampled_from(entries))
    definitions = {definition.name(): definition for definition in entry.parameterDefinitions()}
    optional = qgis_core.QgsProcessingParameterDefinition.Flag.FlagOptional
    given = {}
    for name, definition in definitions.items():
        needed = not definition.flags() & optional
        if definition.type() in ("source", "vector", "multilayer") and needed:
            usual = "designed" if entry.name() in RESULTS else "stations"
            given[name] = ("sound", LISTS.get(entry.name()) or SOUND.get(name, usual))
            if definition.type() == "multilayer":
                given[name] = ("several", ["placed", "placed later"])
        elif definition.type() in ("sink", "fileDestination") and needed:
            given[name] = ("place", draw(st.sampled_from(WRITABLE)))
    given.update(MORE.get(entry.name(), {}))
    for name in draw(st.lists(st.sampled_from(sorted(definitions)), max_size=5, unique=True)):
        given[name] = draw(values(definitions[name]))
    return entry.name(), given


@pytest.fixture(scope="module")
def entries(host):
    return sorted(
        qgis_core.QgsApplication.processingRegistry().providerById("tautline").algorithms(), key=lambda one: one.name()
    )


@pytest.fixture(scope="module")
def sound(host, tmp_path_factory):
    """Layers of a chain that goes well, by name, and the toolbox."""
    from tests.host.conftest import Toolbox

    toolbox, folder = Toolbox(), tmp_path_factory.mktemp("sound")
    stations, axis = toolbox.straight()
    stations, axis = toolbox.saved(stations, folder / "s.gpkg"), toolbox.saved(axis, folder / "a.gpkg")
    rows = [{"station": f"{k}+000", "height": 50.0 + k} for k in range(2)]
    found = {"stations": str(folder / "s.gpkg"), "axis": str(folder / "a.gpkg")}
    toolbox.saved(toolbox.table(rows), folder / "l.gpkg")
    found["list"] = str(folder / "l.gpkg")
    for name, rows in (
        (
            "levelled",
            [
                {"from": "A", "to": "B", "dh": 0.1, "length": 100.0},
                {"from": "A", "to": "B", "dh": 0.101, "length": 100.0},
            ],
        ),
        ("sights", [{"from": "A", "to": "B", "zenith": 89.5, "distance": 500.0, "instrument": 1.5, "target": 1.5}]),
    ):
        toolbox.saved(toolbox.table(rows), folder / f"{name}.gpkg")
        found[name] = str(folder / f"{name}.gpkg")
    later, _ = toolbox.straight(height=50.01)
    toolbox.saved(later, folder / "later.gpkg")
    found["later"] = str(folder / "later.gpkg")
    out = {name: str(folder / f"{name}.gpkg") for name in ("designed", "fitted", "reference", "placed")}
    toolbox.run("designheights", STATIONS=stations, AXIS=axis, OUTPUT=out["designed"])
    toolbox.run("fitreference", STATIONS=stations, AXIS=axis, OUTPUT=out["fitted"], REFERENCE=out["reference"])
    toolbox.run("measurestations", STATIONS=stations, AXIS=axis, OUTPUT=out["placed"])
    out["placed later"] = str(folder / "placed later.gpkg")
    toolbox.run("measurestations", STATIONS=found["later"], AXIS=axis, OUTPUT=out["placed later"])
    return toolbox, {**found, **out}


def one_run(case, toolbox, sound_layers, folder):
    """Run a case; what is owed holds whatever comes of it. Returns whether it gave a result."""
    import processing

    from tests.host.conftest import Log, fingerprints

    world = World(toolbox, folder, sound_layers)
    standing, _ = toolbox.straight(3)
    toolbox.saved(standing, folder / "standing.gpkg")
    entry, given = case
    made = {"plain": lambda v: v, "sound": sound_layers.get, "layer": world.layer, "place": world.place}
    made["several"] = lambda names: [sound_layers[name] for name in names]
    parameters = {key: made[kind](value) for key, (kind, value) in given.items()}
    before = fingerprints([*folder.iterdir(), *sound_layers.values()])
    places = {value for kind, value in given.values() if kind == "place"}
    try:
        results = processing.run(f"tautline:{entry}", parameters, feedback=Log())
    except qgis_core.QgsProcessingException as error:
        text = str(error).replace("Unable to execute algorithm", "").strip()
        assert text and "Traceback" not in text and "There were errors" not in text, text
        assert "Error:" not in text and "Exception" not in text, text
        assert len(text) < 1500, len(text)
        assert fingerprints([*folder.iterdir(), *sound_layers.values()]) == before
        return False
    finally:
        assert not [name for name in os.listdir(folder) if name.startswith(".tautline-")]
    after = fingerprints([*folder.iterdir(), *sound_layers.values()])
    written = {"standing.gpkg"} if places & {"standing", "table", "other table"} else set()
    assert {
        path: value for path, value in after.items() if path in before and os.path.basename(path) not in written
    } == {path: value for path, value in before.items() if os.path.basename(path) not in written}
    for path in folder.glob("*.gpkg"):
        with closing(sqlite3.connect(path)) as connection:
            assert connection.execute("PRAGMA integrity_check").fetchone() == ("ok",)
    assert isinstance(results, dict)
    return True


def test_random_cases(entries, sound, tmp_path_factory, request, monkeypatch):
    # Names without a folder are written where one is.
    monkeypatch.chdir(tmp_path_factory.mktemp("here"))
    toolbox, sound_layers = sound
    long = request.config.getoption("--long")
    ended = {True: 0, False: 0}

    @settings(
        max_examples=MANY if long else FEW,
        derandomize=not long,
        database=None,
        deadline=None,
        suppress_health_check=list(HealthCheck),
    )
    @given(cases(entries))
    def run(case):
        ended[one_run(case, toolbox, sound_layers, tmp_path_factory.mktemp("case"))] += 1

    run()
    print(f"{ended[True]} cases gave a result, {ended[False]} were refused")
    # Cases that are all refused would prove nothing of what is written.
    assert ended[True] > 0.1 * sum(ended.values())
