"""The record of the run itself: what it was given, what it read, and with which versions."""

from qgis.core import Qgis

from ..boundary.reference_systems import definition as definition_of
from ..core.geodesy import datum_name, library_versions
from ..core.input_record import InputRecord
from .given_values import INPUTS, given_keys, input_source, is_part, recorded_value
from .run_record import RunRecord
from .version import VERSION

# What an entry states of its run that the record has a name for, beside units and reference system.
_STATED = ("height_system", "undulation_source", "accuracy", "covariance", "axes")


def own_record(asked, *, units=None, crs=None, keeps_heights=True, **more):
    """The RunRecord of the run: entry, parameters as given, versions, what was read of each input, and ``more``.

    ``units``: language.units.Units, None where the run has none; ``crs``: of the output layer. Of ``more`` what
    RunRecord has a name for is taken as such, the rest goes into its ``more``. ``keeps_heights``: what the record of
    the layer that the run goes on from tells of its heights holds for the result too, save what ``more`` says.
    """
    more = {**(asked.record_of(asked.main).carried() if keeps_heights else {}), **more}
    given = {}
    for definition in asked.entry.parameterDefinitions():
        value = asked.given(definition.name())
        if value is not None and value != "":
            given[definition.name()] = recorded_value(value, asked.context)
    known = {name: more.pop(name) for name in _STATED if name in more}
    if crs is not None and crs.isValid():
        known.update(crs=crs.authid() or crs.description(), datum=datum_name(definition_of(crs)))
    return RunRecord(
        f"tautline:{asked.entry.ID}",
        given,
        units.height_name if units else "",
        units.chainage_name if units else "",
        versions={"Tautline": VERSION, "QGIS": Qgis.version(), **library_versions()},
        inputs={key: inputs_read(asked, key) for key in given_keys(asked.entry, INPUTS, asked.parameters)},
        more=more,
        **known,
    )


def inputs_read(asked, key):
    """InputRecords of an input that was given: what was read of it, else its source alone."""
    value = asked.given(key)
    several = value if isinstance(value, (list, tuple)) else [value]
    readings = asked.readings(key)
    if not isinstance(value, (list, tuple)):
        place = input_source(value, asked.context)
        return tuple(one.of(place, is_part(value)) for _, one in readings) or (InputRecord(place),)
    read = {layer.source() for layer, _ in readings}
    found = [one.of(layer.source()) for layer, one in readings]
    found += [InputRecord(place) for place in (recorded_value(one, asked.context) for one in several) if not read]
    return tuple(found)
