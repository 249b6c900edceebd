"""A whole job on one list, written in metres, in feet or in US survey feet (NIST: 0.3048 m and 1200/3937 m)."""

import pyproj
from qgis.core import QgsVectorLayer

METRES = {"metre": 1.0, "foot": 0.3048, "us_foot": 1200.0 / 3937.0}
LABELS = {"metre": "m", "foot": "ft", "us_foot": "US ft"}
# Stations and the metres between them; place and azimuth of the axis.
N, STEP = 31, 100.0
START, AZIMUTH = (8.0, 50.0), 60.0
EARTH = pyproj.Geod(ellps="WGS84")


def height(k):
    """Height of station ``k`` above the geoid, metres: a chord's bend with readings of some millimetres."""
    s = STEP * k
    return 120.0 + s * (s - STEP * (N - 1)) / (2 * 6.38e6) + 0.001 * ((7 * k) % 5 - 2)


def undulation(k):
    """Undulation there, metres: it slopes."""
    return 46.0 + 2e-5 * STEP * k


class UnitJob:
    """One job in a ``folder`` of its own; ``work`` runs it. ``per``: metres of its unit; ``axis``: its layer."""

    # Metres by which the axis goes on beyond the last station, its columns, and their types where a value is missing.
    BEYOND, COLUMNS, TYPES = 0.0, {}, None

    def __init__(self, toolbox, folder, unit):
        self.toolbox, self.folder, self.unit, self.per = toolbox, folder, unit, METRES[unit]
        folder.mkdir()
        ends = [START, EARTH.fwd(*START, AZIMUTH, STEP * (N - 1) + self.BEYOND)[:2]]
        axis = toolbox.lines([{"at": ends, "name": "A", "chain_h": 0.0, **self.COLUMNS}], types=self.TYPES)
        self.axis = toolbox.saved(axis, folder / "axis.gpkg")
        self.work()

    @classmethod
    def in_every_unit(cls, folder):
        """{unit: job}."""
        from tests.host.conftest import Toolbox

        return {unit: cls(Toolbox(), folder / unit, unit) for unit in METRES}

    def work(self):
        raise NotImplementedError

    def file(self, name):
        return str(self.folder / name)

    def run(self, entry, **parameters):
        return self.toolbox.run(entry, **parameters)

    def placed(self, name, rows, more=()):
        """Source of the stations of a list; ``rows``: metres of station, height, ``more`` (headings without unit) and
        undulation."""
        path, label = self.folder / f"{name}.csv", LABELS[self.unit]
        lines = "".join(";".join(f"{value / self.per:.9f}" for value in row) + "\n" for row in rows)
        heads = ";".join(f"{head} ({label})" for head in ("Sta", "Elev", *more))
        path.write_text(f"{heads};undulation\n{lines}", encoding="utf-8")
        table = QgsVectorLayer(str(path), name, "ogr")
        given = {"HEIGHT_UNIT": self.unit, "UNDULATION": "field", "OUTPUT": self.file(f"{name}.gpkg")}
        for field in table.fields():
            if field.name().startswith("Offset"):
                given["OFFSET_FIELD"] = field.name()
        return self.run("placestations", INPUT=table, AXIS=self.axis, **given).results["OUTPUT"]

    def metres(self, run, name, key="OUTPUT"):
        return [value * self.per for value in run.column(name, key) if value is not None]
