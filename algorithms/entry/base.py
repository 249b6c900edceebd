"""What all toolbox entries share: identity, checks, and THE run sequence: read, compute, write, style."""

import json
import math
from dataclasses import dataclass, field

import numpy as np
from qgis.core import (
    Qgis,
    QgsProcessingAlgorithm,
    QgsProcessingException,
    QgsProcessingParameterEnum,
    QgsProcessingParameterFeatureSink,
    QgsProcessingParameterFeatureSource,
    QgsProcessingParameterFileDestination,
    QgsProcessingParameterMultipleLayers,
    QgsProcessingParameterNumber,
    QgsProcessingParameterRasterLayer,
)
from qgis.PyQt.QtCore import QCoreApplication

from ..boundary import output_backup, output_places, output_rows
from ..boundary.cancel import Cancelled, check_cancel
from ..core.errors import InputError
from ..core.geodesy import library_versions
from ..documents.files import write_documents
from ..language.translation import speak_by, tr
from ..styles import saved_styles
from .version import VERSION

speak_by(QCoreApplication.translate)

# Parameters that count only where another has this value: given without it, a wrong result would be the reward.
_ONLY_WITH = {
    "UNDULATION_FIELD": ("UNDULATION", "field"),
    "UNDULATION_VALUE": ("UNDULATION", "constant"),
    "GEOID": ("UNDULATION", "grid"),
    "RADIUS": ("EARTH", "sphere"),
}
_INPUTS = (QgsProcessingParameterFeatureSource, QgsProcessingParameterRasterLayer, QgsProcessingParameterMultipleLayers)
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
    - ``computed(parameters, context, feedback)``: reads, checks and computes; returns a Result. It opens no sink.

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

    def computed(self, parameters, context, feedback):
        raise NotImplementedError

    def initAlgorithm(self, configuration=None):  # noqa: N802 - the host's name
        from qgis.core import QgsProcessingOutputNumber

        for parameter in self.entry_parameters():
            self.addParameter(parameter)
        for name, label in self.result_numbers().items():
            self.addOutput(QgsProcessingOutputNumber(name, label))

    def checkParameterValues(self, parameters, context):  # noqa: N802 - the host's name
        message = self._unknown_keys(parameters) or self._unfit_values(parameters)
        if message:
            return False, message
        valid, message = super().checkParameterValues(parameters, context)
        if not valid:
            return valid, message
        message = self._overwrites(parameters, context)
        return (False, message) if message else (True, "")

    def _unknown_keys(self, parameters):
        """The host ignores a misspelt parameter and runs with its default; a wrong result would be the reward."""
        known = {definition.name() for definition in self.parameterDefinitions()}
        unknown = sorted(set(parameters) - known)
        return (
            tr("There is no parameter {}; there are {}.").format(", ".join(unknown), ", ".join(sorted(known)))
            if (unknown)
            else ""
        )

    def _unfit_values(self, parameters):
        """The host says only that a value is incorrect, and takes text that is no number for 0."""
        for definition in self.parameterDefinitions():
            name, value = definition.name(), parameters.get(definition.name())
            if not isinstance(value, (str, int, float)) or value == "":
                continue
            if isinstance(definition, QgsProcessingParameterEnum) and value not in definition.options():
                return tr("{} is '{}', but can only be {}.").format(name, value, ", ".join(definition.options()))
            if isinstance(definition, QgsProcessingParameterNumber):
                try:
                    number = float(value)
                except ValueError:
                    return tr("{} is '{}', which is no number.").format(name, value)
                if not math.isfinite(number):
                    return tr("{} is {}, which is no number to compute with.").format(name, value)
                if number < definition.minimum():
                    return tr("{} is {}, but must be at least {:g}.").format(name, value, definition.minimum())
        return ""

    def _definitions(self, kind, parameters):
        return [d.name() for d in self.parameterDefinitions() if isinstance(d, kind) and parameters.get(d.name())]

    def _inputs(self, parameters):
        """(name, layer) of every input, a list of layers one by one."""
        for name in self._definitions(_INPUTS, parameters):
            value = parameters[name]
            yield from ((name, one) for one in (value if isinstance(value, (list, tuple)) else [value]))

    def _overwrites(self, parameters, context):
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
                return message
            places[key] = output_places.place_of_file(text) if key in files else output_places.place_of(text)
        for source, value in self._inputs(parameters):
            place = output_places.place_of_layer(value, context)
            for key in sinks:
                if output_places.same_place(place, places[key]):
                    return tr(
                        "{} is the place of the input {} ({}); choose another, or the input would be lost."
                    ).format(key, source, place[0])
        for k, key in enumerate(sinks):
            for other in sinks[:k]:
                if output_places.same_place(places[key], places[other]):
                    return tr("{} and {} are one place ({}); choose different files or tables.").format(
                        other, key, places[key][0]
                    )
        return ""

    # --- the run

    def processAlgorithm(self, parameters, context, feedback):  # noqa: N802 - the host's name
        # The oldest host reads a numpy number as 0.
        parameters = {
            key: value.item() if isinstance(value, np.generic) else value for key, value in parameters.items()
        }
        try:
            self._warn_of_unused(parameters, context, feedback)
            result = self.computed(parameters, context, feedback)
            check_cancel(feedback)
            written = self._write(result, parameters, context, feedback)
        except InputError as error:
            raise QgsProcessingException(str(error)) from None
        except Cancelled:
            raise QgsProcessingException(tr("Cancelled; no output was written.")) from None
        return {**written, **result.numbers}

    def _warn_of_unused(self, parameters, context, feedback):
        for key, (other, value) in _ONLY_WITH.items():
            if self.parameterDefinition(key) is None or parameters.get(key) in (None, ""):
                continue
            if self.choice(parameters, other, context) != value:
                feedback.pushWarning(tr("{} is given, but not used, since {} is not '{}'.").format(key, other, value))

    def _write(self, result, parameters, context, feedback):
        guard, written = output_backup.OutputBackup(), {}
        try:
            wanted = [table for table in result.tables if parameters.get(table.key)]
            total = max(sum(len(table) for table in wanted), 1)
            done = 0
            for table in wanted:
                share = (60.0 + 40.0 * done / total, 60.0 + 40.0 * (done + len(table)) / total)
                written[table.key] = self._write_one(table, parameters, context, feedback, guard, share)
                done += len(table)
            for table in wanted:
                self._style(table, written[table.key], context, feedback)
            placed = [
                (document, self.parameterAsFileOutput(parameters, document.key, context))
                for document in result.documents
                if parameters.get(document.key)
            ]
            write_documents(placed)
            written.update((document.key, path) for document, path in placed)
        except BaseException:
            guard.restore()
            raise
        guard.keep()
        return written

    def _write_one(self, table, parameters, context, feedback, guard, progress):
        asked = output_places.destination_text(parameters[table.key])
        guard.prepare(asked)
        try:
            sink, destination = self.parameterAsSink(
                parameters, table.key, context, table.fields(), table.wkb, table.crs
            )
        except QgsProcessingException as error:
            raise QgsProcessingException(output_rows.not_written(table.key, error)) from None
        if sink is None:
            raise QgsProcessingException(self.invalidSinkError(parameters, table.key))
        try:
            output_rows.write_rows(sink, table, feedback, progress)
        finally:
            # The file is complete only when the sink is gone; on the oldest host its spatial index is built now.
            sink.finalize() if hasattr(sink, "finalize") else None
            del sink
        output_places.check_written(asked, destination, table)
        if "record" in table.columns and asked.lower().endswith(output_places.SHORT_TEXTS):
            feedback.pushWarning(
                tr(
                    "{}: this format cuts texts at 254 characters, so the record of the run is not whole there; a "
                    "GeoPackage keeps it."
                ).format(table.key)
            )
        return destination

    def _style(self, table, destination, context, feedback):
        try:
            saved_styles.save_into_geopackage(destination, table.style)
        except saved_styles.StyleNotSaved as error:
            feedback.pushWarning(
                tr("The style of {} could not be saved into the GeoPackage: {}").format(table.key, error)
            )
        saved_styles.attach(context, destination, table.style)

    # --- what several entries read alike

    def source(self, parameters, key, context):
        """The feature source of a mandatory parameter, or a processing error that says it cannot be read."""
        source = self.parameterAsSource(parameters, key, context)
        if source is None:
            raise QgsProcessingException(self.invalidSourceError(parameters, key))
        return source

    def number(self, parameters, key, context):
        """A number parameter, None where it is empty."""
        value = parameters.get(key)
        default = self.parameterDefinition(key).defaultValue()
        if value is None and default is None or value == "":
            return None
        number = float(self.parameterAsDouble(parameters, key, context))
        if not math.isfinite(number):
            raise InputError(tr("{} is {}, which is no number to compute with.").format(key, number))
        return number

    def choice(self, parameters, key, context):
        """The text of an enumeration, '' where it is empty."""
        return self.parameterAsEnumString(parameters, key, context) or ""

    def text(self, parameters, key, context):
        """A text parameter without blanks around it, '' where it is empty."""
        return (self.parameterAsString(parameters, key, context) or "").strip()

    def record(self, parameters, context, **more):
        """The record of the run as a dict: entry, parameters as given, versions, and ``more``."""
        given = {}
        for definition in self.parameterDefinitions():
            value = parameters.get(definition.name())
            if value is not None and value != "":
                given[definition.name()] = _recorded(value, context)
        versions = {"Tautline": VERSION, "QGIS": Qgis.version(), **library_versions()}
        return {"entry": f"tautline:{self.ID}", "parameters": given, "versions": versions, **more}


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


def record_text(record):
    """A record as one line of JSON."""
    return json.dumps(record, ensure_ascii=False, sort_keys=True, default=str)
