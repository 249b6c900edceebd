"""Help texts of parameters and entries promise nothing that is not so."""

import re

import pytest

qgis_core = pytest.importorskip("qgis.core")


def entries():
    return qgis_core.QgsApplication.processingRegistry().providerById("tautline").algorithms()


def helps(host):
    for entry in entries():
        for parameter in entry.parameterDefinitions():
            yield entry.name(), parameter.name(), parameter.help()


def test_what_an_empty_parameter_means_is_said_once(host):
    twice = [(entry, key) for entry, key, text in helps(host) if len(re.findall(r"\bEmpty:", text)) > 1]
    assert twice == []


def test_no_status_is_promised_that_no_field_holds(host):
    """Stations off every axis are told by a status where there is one, by a flag, or by nothing."""
    told = {entry: text for entry, key, text in helps(host) if key == "MAX_DISTANCE"}
    words = {entry: re.findall(r"the (status|flag) 'off axis'", text) for entry, text in told.items()}
    assert words.pop("designheights") == ["status"] and words.pop("fitreference") == ["flag"]
    assert len(words) > 2 and not any(words.values())


def test_overrides_are_told_where_they_are(host):
    """Which fields of the axis layer count in which entry."""
    told = {entry: text for entry, key, text in helps(host) if key == "AXIS" and "'design'" in text}
    assert "chain_a, height_a, chain_b, height_b, slope, tolerance, chain_h and chain_0" in told.pop("designheights")
    assert "its fields tolerance, chain_h and chain_0" in told.pop("drawdeviations")
    assert len(told) >= 5 and not any("slope" in text or "tolerance" in text for text in told.values())
