"""The height system and reference system of a run on a layer of ours: what its record says holds, and a form that says
otherwise is refused."""

from ..core.errors import InputError
from ..language.translation import tr
from .layer_records import layer_of

# Left at this, a form says nothing: it stands for not knowing, and the record may know.
UNKNOWN = "unknown"


def recorded_kind(record, height_field=""):
    """How the ``record`` of a layer says its heights in a field (default 'height') are: of UNDULATION, '' where it says
    nothing or does not know. A layer with heights of several kinds tells that of each field."""
    fields = record.more.get("height_fields")
    kind = fields.get(height_field or "height", "") if isinstance(fields, dict) else record.height_system
    return kind if isinstance(kind, str) and kind != UNKNOWN else ""


def height_kind(asked):
    """UNDULATION of a run: the record's, else the form's, else 'unknown', or the first that the entry offers.
    InputError where record and form contradict each other, both named."""
    typed, key = asked.choice("UNDULATION"), asked.main
    offered = asked.entry.parameterDefinition("UNDULATION").options()
    recorded = recorded_kind(asked.record_of(key), asked.text("HEIGHT_FIELD"))
    recorded = recorded if recorded in offered else ""
    if recorded and typed not in ("", UNKNOWN, recorded):
        raise InputError(
            tr("UNDULATION is '{}', but the record of layer '{}' says '{}'; they cannot both be right.").format(
                typed, asked.source(key).sourceName(), recorded
            ),
            keys=("UNDULATION", key),
        )
    return recorded or typed or (UNKNOWN if UNKNOWN in offered else offered[0])


def check_reference_system(key, value, record, context):
    """InputError where a layer stands in another reference system than its record says: its coordinates would be read
    as another place. In the host's main thread."""
    layer = layer_of(value, context)
    crs = layer.crs() if layer is not None else None
    if crs is None or not crs.isValid() or ":" not in record.crs or ":" not in crs.authid():
        return
    if crs.authid() != record.crs:
        raise InputError(
            tr(
                "Layer '{}' ({}) is in {}, but its record says that its coordinates are in {}; set that reference "
                "system, or transform the layer into a new one."
            ).format(layer.name(), key, crs.authid(), record.crs),
            keys=(key,),
        )
