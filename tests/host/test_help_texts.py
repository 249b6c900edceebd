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
