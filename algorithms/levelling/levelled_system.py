"""The height system of levelled heights, for the record: they are above the geoid, whatever the stations' own were."""

from ..boundary.fields import LEVELLED
from ..entry.recorded_system import UNKNOWN
from ..language.translation import tr
from ..structure.height_system import undulation_column

# What a run records that takes heights as above a geoid of which it knows no more.
ABOVE_GEOID = {"height_system": UNKNOWN}
# What the stations' record tells of an adjustment that their own heights came from.
_OF_OLD_HEIGHTS = ("covariance", "heights_of", "adjustment")


def levelled_heights(asked, source):
    """What the record of POINTS tells of its heights, {name: value}, and the log of where it is from; ``source``: the
    STATIONS, whose columns and record POINTS goes on from.

    Undulations hold for a place, not for a way of measuring its height: those of the stations hold for the levelled
    heights too. What the stations say of their own heights, as that these are ellipsoidal, does not.
    """
    record = asked.record_of("STATIONS")
    told = {key: value for key, value in record.carried().items() if key not in _OF_OLD_HEIGHTS}
    kind = told.get("height_system", UNKNOWN)
    if kind == "ellipsoidal":
        asked.warn(
            tr(
                "The record of layer '{}' says that its heights are ellipsoidal; levelled heights are above the geoid, "
                "and the record of the result says so. Their undulation is not known to it."
            ).format(source.sourceName()),
            keys=("STATIONS",),
        )
    elif kind == "field" and not _carried(source, record):
        asked.say(
            tr("Layer '{}' no longer holds the undulations of its stations: they are taken as not known.").format(
                source.sourceName()
            )
        )
    elif kind != UNKNOWN:
        asked.say(
            tr("Levelled heights are above the geoid; UNDULATION is '{}', as the record of layer '{}' says.").format(
                kind, source.sourceName()
            )
        )
        return {**told, **_fields(told, kind)}
    return {**ABOVE_GEOID, **_fields(told, UNKNOWN)}


def _carried(source, record):
    """Whether POINTS holds the column of undulations too."""
    index = undulation_column(source, record, ambiguous_refused=False)
    return index >= 0 and source.fields()[index].name().lower() not in LEVELLED


def _fields(told, kind):
    """Where the stations have heights of several kinds, that of each field: the levelled ones are of ``kind``."""
    fields = told.get("height_fields")
    return {"height_fields": {**fields, "height": kind}} if isinstance(fields, dict) else {}
