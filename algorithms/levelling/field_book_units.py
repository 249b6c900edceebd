"""The units of a run on levelled lines or sights."""

from ..entry.stated_units import stated_units


def field_book_units(asked, *beside):
    """Units of a run: as form and records state, distances as heights unless set. ``beside``: keys of further inputs
    whose heights are read with the lines, or stand beside the result. InputError where two statements contradict each
    other, both named."""
    records = [(asked.record_of(key), asked.source(key).sourceName()) for key in beside if asked.given(key)]
    source = asked.source("INPUT")
    return stated_units(
        asked, asked.record_of("INPUT"), source.sourceName(), chainage_key="DISTANCE_UNIT", beside=records
    )
