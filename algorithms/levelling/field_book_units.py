"""The units of a run on levelled lines or sights."""

from ..core.errors import InputError
from ..entry.stated_units import stated_units
from ..language.translation import tr


def field_book_units(asked):
    """Units of a run: as form and the record of its lines state, distances as heights unless set. InputError where
    these contradict each other, or the record of the benchmarks."""
    source, marks = asked.source("INPUT"), asked.record_of("BENCHMARKS")
    units = stated_units(asked, asked.record_of("INPUT"), source.sourceName(), chainage_key="DISTANCE_UNIT")
    if marks.height_unit and marks.height_unit != units.height_name:
        raise InputError(
            tr("Heights are in '{}', but the record of layer '{}' (BENCHMARKS) says '{}'.").format(
                units.height_name, asked.source("BENCHMARKS").sourceName(), marks.height_unit
            ),
            keys=("HEIGHT_UNIT", "BENCHMARKS"),
        )
    return units
