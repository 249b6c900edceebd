"""Layers made in a test, and toolbox entries run through the registry with all they say caught."""

import hashlib
import os
import pathlib
import sqlite3
from contextlib import closing
from dataclasses import dataclass, field

import pytest

qgis_core = pytest.importorskip("qgis.core")

TYPES = {float: "double", int: "integer", str: "string"}


class Log(qgis_core.QgsProcessingFeedback):
    """Keeps what an entry says; with ``cancel_at`` it cancels at that question for it, counted from 1."""

    def __init__(self, cancel_at=None):
        super().__init__(False)
        self.info, self.warnings, self.errors, self.asked, self.cancel_at = [], [], [], 0, cancel_at

    def pushInfo(self, text):  # noqa: N802 - the host's name
        self.info.append(text)

    def pushWarning(self, text):  # noqa: N802 - the host's name
        self.warnings.append(text)

    def reportError(self, text, fatalError=False):  # noqa: N802,N803 - the host's names
        self.errors.append(text)

    def isCanceled(self):  # noqa: N802 - the host's name
        self.asked += 1
        return super().isCanceled() or (self.cancel_at is not None and self.asked >= self.cancel_at)


def plain(value):
    """A cell with None for the host's NULL."""
    return None if value is None or (hasattr(value, "isNull") and value.isNull()) else value


def rows_of(layer):
    """All rows of a layer as dicts by field name."""
    names = [f.name() for f in layer.fields()]
    return [dict(zip(names, map(plain, feature.attributes()))) for feature in layer.getFeatures()]


@dataclass
class Run:
    """What a run has given: results by key, and what was said."""

    results: dict
    info: list = field(default_factory=list)
    warnings: list = field(default_factory=list)

    def layer(self, key="OUTPUT"):
        value = self.results[key]
        if not isinstance(value, str):
            return value
        if value.startswith("ogr:"):
            uri = qgis_core.QgsDataSourceUri(value[4:])
            value = f"{uri.database()}|layername={uri.table()}"
        layer = qgis_core.QgsVectorLayer(value, key, "ogr")
        assert layer.isValid(), value
        return layer

    def rows(self, key="OUTPUT"):
        return rows_of(self.layer(key))

    def column(self, name, key="OUTPUT"):
        return [row[name] for row in self.rows(key)]

    def by(self, name, key="OUTPUT"):
        return {row[name]: row for row in self.rows(key)}

    def titles(self, key="OUTPUT"):
        """{field: title in the attribute table} of an output in a GeoPackage, from the style saved with it."""
        layer = self.layer(key)
        assert layer.loadDefaultStyle()[1], key
        return {field.name(): layer.attributeAlias(place) for place, field in enumerate(layer.fields())}

    @property
    def said(self):
        return "\n".join(self.info + self.warnings)


class Toolbox:
    """Makes layers and runs entries."""

    def run(self, entry, feedback=None, context=None, **parameters):
        import processing

        log = feedback or Log()
        given = {"OUTPUT": "memory:", **parameters}
        results = processing.run(
            f"tautline:{entry}", {k: v for k, v in given.items() if v is not None}, feedback=log, context=context
        )
        return Run(results, log.info, log.warnings)

    def refusal(self, entry, feedback=None, **parameters):
        """The one sentence a run is refused with."""
        with pytest.raises(qgis_core.QgsProcessingException) as caught:
            self.run(entry, feedback, **parameters)
        text = str(caught.value).replace("Unable to execute algorithm", "").strip()
        assert text and "\n" not in text and "Traceback" not in text, text
        assert text[-1] in ".?", text
        return text

    @staticmethod
    def layer(name, kind, crs, rows, types=None):
        """A memory layer. ``rows``: dicts of attributes and, for 'at', well-known text or coordinates, None for no
        geometry; ``types``: {field: host's type name} where the first value does not tell."""
        kinds = {}
        for row in rows:
            for key, value in row.items():
                if key != "at" and (key not in kinds or kinds[key] is None):
                    kinds[key] = TYPES[type(value)] if value is not None else None
        kinds = {key: (types or {}).get(key, kind_ or "double") for key, kind_ in kinds.items()}
        for key, kind_ in (types or {}).items():
            kinds.setdefault(key, kind_)
        fields = "".join(f"&field={key}:{kind_}" for key, kind_ in kinds.items())
        layer = qgis_core.QgsVectorLayer(f"{kind}?{'crs=' + crs if crs else ''}{fields}", name, "memory")
        if not crs:
            layer.setCrs(qgis_core.QgsCoordinateReferenceSystem())
        features = []
        for row in rows:
            feature = qgis_core.QgsFeature(layer.fields())
            for key, value in row.items():
                if key != "at":
                    feature[key] = value
            if row.get("at") is not None:
                feature.setGeometry(geometry(row["at"]))
            features.append(feature)
        assert layer.dataProvider().addFeatures(features)[0]
        layer.updateExtents()
        return layer

    def points(self, rows, crs="EPSG:4326", kind="Point", name="stations", types=None):
        return self.layer(name, kind, crs, rows, types)

    def lines(self, rows, crs="EPSG:4326", kind="LineString", name="axis", types=None):
        return self.layer(name, kind, crs, rows, types)

    def table(self, rows, name="list", types=None):
        return self.layer(name, "NoGeometry", "", rows, types)

    @staticmethod
    def saved(layer, path, table=None):
        """The layer written to a file (or a further table of a GeoPackage), read back from there."""
        options = qgis_core.QgsVectorFileWriter.SaveVectorOptions()
        options.driverName = qgis_core.QgsVectorFileWriter.driverForExtension(os.path.splitext(str(path))[1])
        if table:
            options.layerName = table
            if os.path.exists(path):
                options.actionOnExistingFile = qgis_core.QgsVectorFileWriter.ActionOnExistingFile.CreateOrOverwriteLayer
        context = qgis_core.QgsProject.instance().transformContext()
        assert qgis_core.QgsVectorFileWriter.writeAsVectorFormatV3(layer, str(path), context, options)[0] == 0
        found = qgis_core.QgsVectorLayer(f"{path}|layername={table}" if table else str(path), layer.name(), "ogr")
        assert found.isValid()
        return found

    def straight(self, number=11, spacing=100.0, height=50.0, crs="EPSG:32631", **more):
        """Stations every ``spacing`` metres of map on a line to the east at 50° north, and the axis through them."""
        x = [500000.0 + spacing * k for k in range(number)]
        stations = [{"at": (at, 5540000.0), "height": height + 0.001 * (k % 3), **more} for k, at in enumerate(x)]
        axis = [{"at": [(x[0], 5540000.0), (x[-1], 5540000.0)], "name": "line"}]
        return self.points(stations, crs), self.lines(axis, crs)


def geometry(value):
    """A geometry from well-known text, one coordinate tuple, or a list of them."""
    if isinstance(value, str):
        return qgis_core.QgsGeometry.fromWkt(value)
    if isinstance(value, tuple):
        return qgis_core.QgsGeometry(qgis_core.QgsPoint(*value))
    return qgis_core.QgsGeometry.fromPolyline([qgis_core.QgsPoint(*at) for at in value])


def fingerprints(paths):
    """{path: hash} of files, of a GeoPackage of the rows of its tables: the host itself changes its first page on
    opening, and its own books where a table was begun and given up."""
    tails = ("-wal", "-shm", "-journal")
    return {path: _hash(pathlib.Path(path)) for path in paths if os.path.isfile(path) and not str(path).endswith(tails)}


def _hash(path):
    if path.suffix != ".gpkg":
        return hashlib.sha256(path.read_bytes()).hexdigest()
    with closing(sqlite3.connect(f"{path.as_uri()}?mode=ro", uri=True)) as connection:
        names = [
            name for (name,) in connection.execute("SELECT name FROM sqlite_master WHERE type = 'table' ORDER BY 1")
        ]
        names = [name for name in names if not name.startswith(("gpkg_", "sqlite_", "rtree_", "layer_styles"))]
        rows = [(name, connection.execute(f'SELECT * FROM "{name}"').fetchall()) for name in names]  # noqa: S608
    return hashlib.sha256(repr(rows).encode()).hexdigest()


@pytest.fixture
def toolbox(host):
    return Toolbox()


@pytest.fixture(scope="session")
def log():
    return Log
