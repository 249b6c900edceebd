"""What all toolbox entries share: identity, checks, and THE run sequence: read, compute, write, style."""

import os
import traceback
from contextlib import contextmanager
from dataclasses import dataclass, field, replace

import numpy as np
from qgis.core import (
    Qgis,
    QgsProcessingAlgorithm,
    QgsProcessingContext,
    QgsProcessingException,
    QgsProcessingFeatureSourceDefinition,
    QgsProcessingOutputLayerDefinition,
    QgsProcessingParameterFeatureSink,
    QgsProcessingParameterFeatureSource,
    QgsProcessingParameterFileDestination,
    QgsProcessingParameterMultipleLayers,
    QgsProcessingParameterRasterLayer,
    QgsProcessingUtils,
)
from qgis.PyQt.QtCore import QCoreApplication

from ..boundary import output_places, output_rows
from ..boundary.cancel import Cancelled
from ..boundary.output_stage import OutputStage
from ..boundary.reference_systems import definition as definition_of
from ..boundary.stored_rows import stored_layer
from ..boundary.written_check import check_written
from ..core.errors import InputError
from ..core.geodesy import datum_name, library_versions
from ..core.input_record import InputRecord
from ..documents.files import write_document
from ..language.core_sentences import worded
from ..language.translation import speak_by, tr
from ..styles import saved_styles
from .layer_records import layer_of, record_of_layer
from .messages import REFUSAL, Message, hand
from .recorded_system import check_reference_system, height_kind
from .request import Request
from .run_record import RunRecord, record_with_output
from .stale_inputs import warn_of_stale_inputs
from .strict_values import check_value
from .trial_runs import is_trial
from .version import VERSION
from .written_rows import written_reading

speak_by(QCoreApplication.translate)

# Characters of a refusal at most.
_MOST_SAID = 1200
# Parameters that count only where another has this value: given without it, a wrong result would be the reward.
_ONLY_WITH = {
    "UNDULATION_FIELD": ("UNDULATION", "field"),
    "UNDULATION_VALUE": ("UNDULATION", "constant"),
    "GEOID": ("UNDULATION", "grid"),
    "GEOID_NAME": ("UNDULATION", "grid"),
    "GEOID_BETWEEN": ("UNDULATION", "grid"),
    "RADIUS": ("EARTH", "sphere"),
}
# Inputs whose coordinates are measured.
_MEASURED = ("STATIONS", "SURVEYS")
_INPUTS = (QgsProcessingParameterFeatureSource, QgsProcessingParameterRasterLayer, QgsProcessingParameterMultipleLayers)
# What an entry states of its run that the record has a name for, beside units and reference system.
_STATED = ("height_system", "undulation_source", "accuracy", "covariance", "axes")
_OWN = {"ID", "TITLE", "GROUP", "GROUP_ID", "HELP", "TAGS"}


@dataclass
class Result:
    """What an entry has computed: tables and documents to write, and numbers for the results."""

    tables: list
    numbers: dict = field(default_factory=dict)
    documents: list = field(default_factory=list)


class ToolboxEntry(QgsProcessingAlgorithm):
    """One entry of the toolbox. A subclass states ID, TITLE, GROUP, GROUP_ID, HELP and TAGS and defines

    - ``entry_parameters()``: list of fresh parameters;
    - ``result_numbers()``: {name: label} of number outputs;
    - ``computed(asked)``: reads, checks and computes; returns a Result. It opens no sink;
    - ``prepared(asked)``, where it needs one: reads before the run, in the main thread, what only that may touch.

    Anything else in capitals is refused when the class is made, so that a misspelt name is not silently dead.
    """

    ID = TITLE = GROUP = GROUP_ID = HELP = ""
    TAGS = ()

    def __init_subclass__(cls, **kwargs):
        super().__init_subclass__(**kwargs)
        unknown = {name for name in vars(cls) if name.isupper()} - _OWN
        if unknown:
            raise TypeError(f"{cls.__name__} states {sorted(unknown)}, which no entry has")

    def name(self):
        return self.ID

    def displayName(self):  # noqa: N802 - the host's name
        return self.tr(self.TITLE)

    def group(self):
        return self.tr(self.GROUP)

    def groupId(self):  # noqa: N802 - the host's name
        return self.GROUP_ID

    def shortHelpString(self):  # noqa: N802 - the host's name
        return self.tr(self.HELP)

    def shortDescription(self):  # noqa: N802 - the host's name
        return self.tr(self.TITLE)

    def tags(self):
        return [self.tr(tag) for tag in self.TAGS]

    def tr(self, text):
        return tr(text)

    def createInstance(self):  # noqa: N802 - the host's name
        return type(self)()

    def entry_parameters(self):
        raise NotImplementedError

    def result_numbers(self):
        return {}

    def computed(self, asked):
        raise NotImplementedError

    def prepared(self, asked):
        """Before the run, in the main thread; InputError where the run is refused."""

    def initAlgorithm(self, configuration=None):  # noqa: N802 - the host's name
        from qgis.core import QgsProcessingOutputNumber

        for parameter in self.entry_parameters():
            self.addParameter(parameter)
        for name, label in self.result_numbers().items():
            self.addOutput(QgsProcessingOutputNumber(name, label))

    def checkParameterValues(self, parameters, context):  # noqa: N802 - the host's name
        try:
            self._check_keys(parameters)
            for definition in self.parameterDefinitions():
                check_value(definition, parameters.get(definition.name()), context)
            valid, message = super().checkParameterValues(parameters, context)
            if not valid:
                raise InputError(message, keys=self._refused_by_host(parameters, context))
            self._check_places(parameters, context)
            for key, value in self._inputs(parameters):
                if key in _MEASURED:
                    check_reference_system(key, value, record_of_layer(value, context), context)
        except InputError as error:
            _tell_refusal(context.feedback(), error)
            return False, _sentence(error)
        return True, ""

    def _refused_by_host(self, parameters, context):
        """The first parameter whose value the host does not take, in a tuple: its sentence alone names it."""
        for definition in self.parameterDefinitions():
            if not definition.checkValueIsAcceptable(parameters.get(definition.name()), context):
                return (definition.name(),)
        return ()

    def _check_keys(self, parameters):
        """The host ignores a misspelt parameter and runs with its default; a wrong result would be the reward."""
        known = {definition.name() for definition in self.parameterDefinitions()}
        unknown = sorted(set(parameters) - known)
        if unknown:
            raise InputError(
                tr("There is no parameter {}; there are {}.").format(", ".join(unknown), ", ".join(sorted(known))),
                keys=unknown,
            )

    def _definitions(self, kind, parameters):
        return [d.name() for d in self.parameterDefinitions() if isinstance(d, kind) and parameters.get(d.name())]

    def _inputs(self, parameters):
        """(name, layer) of every input, a list of layers one by one."""
        for name in self._definitions(_INPUTS, parameters):
            value = parameters[name]
            yield from ((name, one) for one in (value if isinstance(value, (list, tuple)) else [value]))

    def _check_places(self, parameters, context):
        """The host destroys an input that is also the output and calls it a success; nor does it look for folders."""
        sinks = self._definitions(
            (QgsProcessingParameterFeatureSink, QgsProcessingParameterFileDestination), parameters
        )
        files = self._definitions(QgsProcessingParameterFileDestination, parameters)
        places = {}
        for key in sinks:
            text = output_places.destination_text(parameters[key])
            message = output_places.unfit_place(key, text)
            if message:
                raise InputError(message, keys=(key,))
            places[key] = output_places.place_of_file(text) if key in files else output_places.place_of(text)
        for source, value in self._inputs(parameters):
            for place in output_places.places_behind(value, context):
                for key in sinks:
                    if output_places.same_place(place, places[key]):
                        raise InputError(
                            tr(
                                "{} is the place of the input {} ({}); choose another, or the input would be lost."
                            ).format(key, source, place[0]),
                            keys=(key, source),
                        )
        for key in files:
            text = output_places.destination_text(parameters[key])
            message = output_places.unfit_document(key, text, self.parameterDefinition(key).fileFilter())
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

    # --- the run

    def prepareAlgorithm(self, parameters, context, feedback):  # noqa: N802 - the host's name
        # Here, in the main thread: a layer's own properties must not be touched from the run's.
        with _refusals_told(feedback):
            self._records, self._stored, inputs = {}, {}, []
            for key, value in self._inputs(parameters):
                record = record_of_layer(value, context)
                self._records.setdefault(key, []).append(record)
                if not _is_part(value):
                    self._stored[key] = stored_layer(layer_of(value, context))
                inputs.append((key, value, record))
            asked = Request(self, parameters, context, feedback, self._records)
            for key, value, record in inputs:
                if record.doubt:
                    asked.warn(tr("Layer '{}': {}").format(layer_of(value, context).name(), record.doubt), keys=(key,))
            self.prepared(asked)
        return True

    def processAlgorithm(self, parameters, context, feedback):  # noqa: N802 - the host's name
        # The oldest host reads a numpy number as 0.
        parameters = {
            key: value.item() if isinstance(value, np.generic) else value for key, value in parameters.items()
        }
        asked = Request(self, parameters, context, feedback, self._records, self._stored)
        with _refusals_told(feedback):
            self._warn_of_unused(asked)
            for key in dict.fromkeys(key for key, _ in self._inputs(parameters)):
                warn_of_stale_inputs(asked, key)
            result = self.computed(asked)
            asked.check_cancel()
            written = self._write(result, asked)
        return {**written, **result.numbers}

    def _warn_of_unused(self, asked):
        for key, (other, value) in _ONLY_WITH.items():
            if not asked.has(key) or asked.given(key) in (None, ""):
                continue
            if not asked.has(other):
                continue
            if (height_kind(asked) if other == "UNDULATION" else asked.choice(other)) != value:
                asked.warn(
                    tr("{} is given, but not used, since {} is not '{}'.").format(key, other, value), keys=(key, other)
                )

    def _write(self, result, asked):
        """Write what was computed beside the places asked for, and put it there when all of it is whole."""
        stage, written, final = OutputStage(asked.say), {}, {}
        try:
            wanted = [table for table in result.tables if asked.given(table.key)]
            total = max(sum(len(table) for table in wanted), 1)
            done = 0
            for table in wanted:
                share = (60.0 + 40.0 * done / total, 60.0 + 40.0 * (done + len(table)) / total)
                written[table.key], final[table.key] = self._write_one(table, asked, stage, share)
                done += len(table)
            styles = {table.key: self._told_style(table, written[table.key], asked) for table in wanted}
            for table in wanted:
                self._save_style(table.key, styles[table.key], written[table.key], asked)
            for document in result.documents:
                if asked.given(document.key):
                    final[document.key] = asked.file(document.key)
                    path = final[document.key]
                    write_document(document, stage.document(document.key, path), path)
            asked.check_cancel()
            stage.commit()
        except BaseException:
            stage.discard()
            raise
        for table in wanted:
            if final[table.key] != written[table.key]:
                self._load_on_completion(table.key, final[table.key], asked)
            saved_styles.attach(asked.context, final[table.key], styles[table.key])
        return final

    def _write_one(self, table, asked, stage, progress):
        """Write one layer: (where it is written, where it will stand), both as the host names destinations."""
        place = output_places.destination_text(asked.given(table.key))
        staged = stage.layer(table.key, place)
        given = asked.parameters
        if staged:
            beside = QgsProcessingOutputLayerDefinition(staged)
            beside.createOptions = getattr(asked.given(table.key), "createOptions", {})
            given = {**given, table.key: beside}
        try:
            sink, destination = self.parameterAsSink(
                given, table.key, asked.context, table.fields(), table.wkb, table.crs
            )
        except QgsProcessingException as error:
            raise InputError(output_rows.not_written(table.key, error), keys=(table.key,)) from None
        if sink is None:
            raise InputError(self.invalidSinkError(asked.parameters, table.key), keys=(table.key,))
        try:
            output_rows.write_rows(sink, table, asked.feedback, progress)
        finally:
            # The file is complete only when the sink is gone; on the oldest host its spatial index is built now.
            sink.finalize() if hasattr(sink, "finalize") else None
            del sink
        missing = check_written(place, destination, table)
        if missing:
            asked.warn(missing, keys=(table.key,))
        if "record" in table.columns and place.lower().endswith(output_places.SHORT_TEXTS):
            asked.warn(
                tr(
                    "{}: this format cuts texts at 254 characters, so the record of the run is not whole there; a "
                    "GeoPackage keeps it."
                ).format(table.key),
                keys=(table.key,),
            )
        return destination, output_places.final_destination(place, destination) if staged else destination

    def _load_on_completion(self, key, destination, asked):
        """Ask the desktop to load a layer where the form does, as the host's own sinks do."""
        given = asked.given(key)
        project = getattr(given, "destinationProject", None)
        if project is not None:
            name = given.destinationName or self.parameterDefinition(key).description()
            details = QgsProcessingContext.LayerDetails(name, project, key, QgsProcessingUtils.LayerHint.Vector)
            asked.context.addLayerToLoadOnCompletion(destination, details)

    @staticmethod
    def _told_style(table, destination, asked):
        """The table's style, its record with the output's key and a fingerprint of the rows as written: from them an
        edit made by hand would be known.

        All are read before the first is saved: on the oldest host a GeoPackage that is open cannot be written to
        through a second opening of it.
        """
        layer = saved_styles.geopackage_layer(destination)
        if not table.style.record:
            return table.style
        read = None if is_trial(asked.feedback) else written_reading(destination, layer, asked.context)
        return replace(table.style, record=record_with_output(table.style.record, table.key, read))

    def _save_style(self, key, style, destination, asked):
        """Save it beside the layer where that is in a GeoPackage."""
        try:
            saved_styles.save_into_geopackage(destination, style)
        except saved_styles.StyleNotSaved as error:
            asked.warn(tr("The style of {} could not be saved into the GeoPackage: {}").format(key, error), keys=(key,))

    @staticmethod
    def source_text(value, context):
        """An input's value as a text: a layer by its source."""
        return _recorded(value, context)

    def run_record(self, asked, *, units=None, crs=None, keeps_heights=True, **more):
        """The RunRecord of the run: entry, parameters as given, versions, what was read of each input, and ``more``.

        ``units``: language.units.Units, None where the run has none; ``crs``: of the output layer. Of ``more`` what
        RunRecord has a name for is taken as such, the rest goes into its ``more``. ``keeps_heights``: what the record
        of the layer that the run goes on from tells of its heights holds for the result too, save what ``more`` says.
        """
        more = {**(asked.record_of(asked.main).carried() if keeps_heights else {}), **more}
        given = {}
        for definition in self.parameterDefinitions():
            value = asked.given(definition.name())
            if value is not None and value != "":
                given[definition.name()] = _recorded(value, asked.context)
        known = {name: more.pop(name) for name in _STATED if name in more}
        if crs is not None and crs.isValid():
            known.update(crs=crs.authid() or crs.description(), datum=datum_name(definition_of(crs)))
        return RunRecord(
            f"tautline:{self.ID}",
            given,
            units.height_name if units else "",
            units.chainage_name if units else "",
            versions={"Tautline": VERSION, "QGIS": Qgis.version(), **library_versions()},
            inputs={key: self.inputs_read(asked, key) for key in self._definitions(_INPUTS, asked.parameters)},
            more=more,
            **known,
        )

    def inputs_read(self, asked, key):
        """InputRecords of an input that was given: what was read of it, else its source alone."""
        value = asked.given(key)
        several = value if isinstance(value, (list, tuple)) else [value]
        readings = asked.readings(key)
        if not isinstance(value, (list, tuple)):
            place = _input_source(value, asked.context)
            return tuple(one.of(place, _is_part(value)) for _, one in readings) or (InputRecord(place),)
        read = {layer.source() for layer, _ in readings}
        found = [one.of(layer.source()) for layer, one in readings]
        found += [InputRecord(place) for place in (_recorded(one, asked.context) for one in several) if not read]
        return tuple(found)


def _sentence(error):
    """The sentence of a refusal, its middle left out where a path or a value in it is longer than anybody reads."""
    text = worded(error)
    return text if len(text) <= _MOST_SAID else text[: _MOST_SAID // 2] + " ... " + text[-_MOST_SAID // 2 :]


def _tell_refusal(feedback, error):
    """Hand the refusal of an InputError to who listens to ``feedback``."""
    hand(feedback, Message(REFUSAL, error.code, _sentence(error), error.keys))


@contextmanager
def _refusals_told(feedback):
    """What ends a run is handed to who listens, and becomes the host's processing error where it is a sentence."""
    try:
        yield
    except InputError as error:
        _tell_refusal(feedback, error)
        raise QgsProcessingException(_sentence(error)) from None
    except Cancelled:
        error = InputError(tr("Cancelled; no output was written."))
        _tell_refusal(feedback, error)
        raise QgsProcessingException(str(error)) from None
    except QgsProcessingException as error:
        hand(feedback, Message(REFUSAL, "", str(error)))
        raise
    except Exception as error:
        # A fault of ours: the host shows its traceback, who listens gets its last line.
        hand(feedback, Message(REFUSAL, "", traceback.format_exception_only(type(error), error)[-1].strip()))
        raise


def _recorded(value, context):
    """A parameter's value as JSON takes it: layers by their source."""
    if isinstance(value, (bool, int, float, str)):
        layer = context.getMapLayer(value) if isinstance(value, str) else None
        return layer.source() if layer is not None else value
    if isinstance(value, (list, tuple)):
        return [_recorded(one, context) for one in value]
    for part in ("source", "sink"):
        inner = getattr(value, part, None)
        if hasattr(inner, "staticValue"):
            return _recorded(inner.staticValue() or inner.asExpression(), context)
    return value.source() if hasattr(value, "source") and callable(value.source) else str(value)


def _input_source(value, context):
    """The source of an input, a file by its full path: the record may be read in another folder."""
    text = _recorded(value, context)
    path, bar, rest = text.partition("|")
    return os.path.abspath(path) + bar + rest if os.path.isfile(path) else text


def _is_part(value):
    """Whether only some rows of a layer are handed to the run: a selection, a filter, a limit."""
    if not isinstance(value, QgsProcessingFeatureSourceDefinition):
        return False
    return bool(value.selectedFeaturesOnly or value.featureLimit > 0 or getattr(value, "filterExpression", ""))
