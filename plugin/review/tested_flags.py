"""What a test for blunders has found of stations whose own layer does not say: flags and w of a tested layer in the
project that was made from the same stations."""

from qgis.core import QgsProject, QgsVectorLayer

from ...algorithms.core.errors import InputError
from ...algorithms.entry.layer_records import record_of_layer
from ...algorithms.structure.reviewed_stations import StationIndex, layer_columns, review_fields

_TESTS = "tautline:fitreference"


OF_HEIGHTS, OF_LINE = ("w", "flag"), ("lat_w", "lat_flag")


def tested_flags(stations, record, names=OF_HEIGHTS):
    """{row: (test value, flag)} of stations with ``axis`` and ``station`` (texts); {} where no layer of the project
    tells.

    ``record``: RunRecord of their layer; ``names``: of the fields, OF_HEIGHTS or OF_LINE. Of several layers that have
    them the one added last tells.
    """
    source = _source(record)
    if not source:
        return {}
    for layer in reversed(list(QgsProject.instance().mapLayers().values())):
        if not isinstance(layer, QgsVectorLayer) or not layer.isValid():
            continue
        fields = review_fields(layer)
        if fields[names[1]] < 0 or fields["station"] < 0:
            continue
        made_by = record_of_layer(layer)
        if made_by.entry == _TESTS and _source(made_by) == source:
            return _flags(stations, layer, made_by, names)
    return {}


def _source(record):
    """Where the stations of a run came from, '' where it is not known."""
    return next((one.source for one in record.inputs.get("STATIONS", ())), "")


def _flags(stations, layer, record, names):
    index, found = StationIndex(stations), {}
    columns = layer_columns(layer, record, ("axis", "station", *names)).columns
    for k, (axis, station) in enumerate(zip(columns["axis"], columns["station"])):
        try:
            rows = index.rows(axis, station, layer.name(), k + 1)
        except InputError:  # a station that several axes have, without its axis
            continue
        found.update((row, tuple(columns[name][k] for name in names)) for row in rows)
    return found
