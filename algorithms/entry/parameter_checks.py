"""The checks of what an entry is given, before its run: keys, values, places, reference systems."""

from qgis.core import (
    QgsProcessingParameterFeatureSink,
    QgsProcessingParameterFileDestination,
    QgsProcessingParameterMultipleLayers,
)

from ..boundary import output_places
from ..core.errors import InputError
from ..language.number_text import listed
from ..language.translation import tr
from .given_values import given_inputs, given_keys
from .layer_records import layer_of, record_of_layer
from .recorded_system import check_reference_system
from .refusals import sentence_of, tell_refusal
from .strict_values import check_value

# Inputs whose coordinates are measured.
_MEASURED = ("STATIONS", "SURVEYS")


def checked(entry, parameters, context, by_host):
    """(Whether the parameters are fit for a run, the sentence of the refusal or ''); ``by_host``: the host's own check,
    which answers so too."""
    try:
        _check_keys(entry, parameters)
        for definition in entry.parameterDefinitions():
            check_value(definition, parameters.get(definition.name()), context)
        valid, message = by_host(parameters, context)
        if not valid:
            refused = _refused_by_host(entry, parameters, context)
            unread = [_unread(entry.parameterDefinition(key), parameters.get(key), context) for key in refused]
            raise InputError(next(filter(None, unread), message), keys=refused)
        _check_places(entry, parameters, context)
        for key, value in given_inputs(entry, parameters):
            if key in _MEASURED:
                check_reference_system(key, value, record_of_layer(value, context), context)
    except InputError as error:
        tell_refusal(context.feedback(), error)
        return False, sentence_of(error)
    return True, ""


def _refused_by_host(entry, parameters, context):
    """The first parameter whose value the host does not take, in a tuple: its sentence alone names it."""
    for definition in entry.parameterDefinitions():
        if not definition.checkValueIsAcceptable(parameters.get(definition.name()), context):
            return (definition.name(),)
    return ()


def _unread(definition, value, context):
    """The sentence for the layers of a list that cannot be read, which the host does not name; '' for none."""
    if not isinstance(definition, QgsProcessingParameterMultipleLayers):
        return ""
    lost = [one for one in (value if isinstance(value, (list, tuple)) else [value]) if isinstance(one, str)]
    lost = [f"'{one}'" for one in lost if layer_of(one, context) is None]
    return (
        tr("{}: no layer can be read from {}; check the path.").format(definition.name(), listed(lost)) if lost else ""
    )


def _check_keys(entry, parameters):
    """The host ignores a misspelt parameter and runs with its default; a wrong result would be the reward."""
    known = {definition.name() for definition in entry.parameterDefinitions()}
    unknown = sorted(set(parameters) - known)
    if unknown:
        raise InputError(
            tr("There is no parameter {}; there are {}.").format(", ".join(unknown), ", ".join(sorted(known))),
            keys=unknown,
        )


def _check_places(entry, parameters, context):
    """The host destroys an input that is also the output and calls it a success; nor does it look for folders."""
    sinks = given_keys(entry, (QgsProcessingParameterFeatureSink, QgsProcessingParameterFileDestination), parameters)
    files = given_keys(entry, QgsProcessingParameterFileDestination, parameters)
    places = {}
    for key in sinks:
        text = output_places.destination_text(parameters[key])
        message = output_places.unfit_place(key, text)
        if message:
            raise InputError(message, keys=(key,))
        places[key] = output_places.place_of_file(text) if key in files else output_places.place_of(text)
    for source, value in given_inputs(entry, parameters):
        for place in output_places.places_behind(value, context):
            for key in sinks:
                if output_places.same_place(place, places[key]):
                    raise InputError(
                        tr("{} is the place of the input {} ({}); choose another, or the input would be lost.").format(
                            key, source, place[0]
                        ),
                        keys=(key, source),
                    )
    for key in files:
        text = output_places.destination_text(parameters[key])
        message = output_places.unfit_document(key, text, entry.parameterDefinition(key).fileFilter())
        if message:
            raise InputError(message, keys=(key,))
    for k, key in enumerate(sinks):
        for other in sinks[:k]:
            if output_places.same_place(places[key], places[other]):
                raise InputError(
                    tr("{} and {} are the same place ({}); choose different files or tables.").format(
                        other, key, places[key][0]
                    ),
                    keys=(other, key),
                )
