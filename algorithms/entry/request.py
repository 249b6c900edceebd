"""What a run was asked for: parameters, context and feedback in one object, read by key."""

from qgis.core import QgsProcessingParameterFeatureSource, QgsProcessingParameters, QgsRasterLayer

from ..boundary.cancel import check_cancel
from ..boundary.readings import readings_of
from ..boundary.stored_rows import remember, stored_layer
from ..core.errors import InputError
from ..language.translation import tr
from ..language.units import Units
from .given_values import is_part, recorded_value
from .layer_records import layer_of, record_of_layer
from .messages import DOUBT, FACT, READING, Message, hand
from .own_record import inputs_read, own_record
from .run_record import RunRecord
from .stale_inputs import layer_behind
from .strict_values import choice_of, flag_of, number_of, text_of, unreadable


class Request:
    """What one run of a toolbox entry was asked for.

    ``entry``: the host's algorithm; ``parameters``: as given; ``context``: to read in, see ``run_context``;
    ``feedback``: the host's. ``records``: {key of an input: list of the RunRecords of its layers}, ``stored``: {id of a
    map layer: StoredLayer or None}, ``sources``: {key: feature source or None}, and ``known_layers``: {source: map
    layer}, as found before the run in the host's main thread.
    """

    def __init__(
        self, entry, parameters, context, feedback, records=None, stored=None, sources=None, known_layers=None
    ):
        self.entry, self.parameters, self.context, self.feedback = entry, parameters, context, feedback
        self.records, self.stored = records or {}, stored or {}
        self.sources, self.known_layers = sources or {}, known_layers or {}
        self._opened = {}

    def has(self, key):
        """Whether the entry has the parameter at all."""
        return self.entry.parameterDefinition(key) is not None

    def given(self, key):
        """The value as it was given, None where it was not."""
        return self.parameters.get(key)

    def source(self, key):
        """The feature source of a mandatory parameter; InputError where it cannot be read."""
        source = self.optional_source(key)
        if source is None:
            raise InputError(tr("{} is empty; choose a layer.").format(key), keys=(key,))
        return source

    def optional_source(self, key):
        """The feature source of a parameter, None where it is empty; InputError where what is given is no layer."""
        given = self.given(key)
        if given is None or given == "":
            return None
        source = self.sources.get(key)
        if source is None:
            source = self.entry.parameterAsSource(self.parameters, key, self.context)
        if source is None:
            raise unreadable(key, recorded_value(given, self.context))
        if not is_part(given):
            self._read_in_bulk(source, self.layer(key))
        return self._kept(key, source)

    def raster(self, key):
        """The raster layer of a parameter, None where it is empty."""
        layer = self.layer(key)
        return self._kept(key, layer if isinstance(layer, QgsRasterLayer) else None)

    def source_of(self, key, layer):
        """The feature source of one of the layers of a parameter that takes several."""
        definition = QgsProcessingParameterFeatureSource(key, "")
        source = QgsProcessingParameters.parameterAsSource(definition, {key: layer}, self.context)
        self._read_in_bulk(source, layer)
        return self._kept(key, source, layer)

    def _read_in_bulk(self, source, layer):
        if source is not None and layer is not None:
            remember(source, self.stored.get(layer.id()) or stored_layer(layer))

    def _kept(self, key, source, layer=None):
        """``source``, kept as long as the request is: what is read of it is asked for later."""
        if source is not None:
            self._opened.setdefault(key, []).append((source, layer))
        return source

    def readings(self, key):
        """What was read of an input: [(layer or None, InputRecord)], each reading once; ``layer``: of several."""
        found = [(layer, one) for source, layer in self._opened.get(key, ()) for one in readings_of(source)]
        return list(dict.fromkeys(found))

    def inputs(self, key):
        """InputRecords of what was read of an input so far, with their source; () where it is empty."""
        return inputs_read(self, key) if self.given(key) else ()

    def layers(self, key):
        """The layers of a parameter that takes several."""
        value = self.given(key)
        values = value if isinstance(value, (list, tuple)) else [value]
        return [layer for layer in (layer_of(one, self.context) for one in values) if layer is not None]

    def number(self, key):
        """A number parameter, None where it is empty; InputError for what is no number, or out of bounds."""
        return self._read(number_of, key)

    def choice(self, key):
        """The text of an enumeration, '' where it is empty."""
        return self._read(choice_of, key, "")

    def text(self, key):
        """A text parameter without blanks around it, '' where it is empty."""
        return self._read(text_of, key, "")

    def flag(self, key):
        """A yes-or-no parameter."""
        return self._read(flag_of, key, False)

    def _read(self, reader, key, nothing=None):
        """The value of a parameter by one of the strict readers; ``nothing`` where the entry has no such parameter."""
        definition = self.entry.parameterDefinition(key)
        return nothing if definition is None else reader(definition, self.parameters.get(key), self.context)

    def file(self, key):
        """The path of an output file."""
        return self.entry.parameterAsFileOutput(self.parameters, key, self.context)

    @property
    def main(self):
        """Key of the layer that the run goes on from: STATIONS, else INPUT."""
        return "STATIONS" if self.has("STATIONS") else "INPUT"

    def units(self):
        """Units of a run on no layer of ours, as the form says: chainage as heights unless set."""
        height = self.choice("HEIGHT_UNIT") or "metre"
        return Units(height, self.choice("CHAINAGE_UNIT") or height)

    def record_of(self, key):
        """The RunRecord of the run that made the layer of an input; an empty one, which is false, where there is
        none."""
        return next(iter(self.records.get(key, ())), RunRecord())

    def record_behind(self, source):
        """The record of the run that made the layer which a ``source``, a text, opens; in the host's main thread."""
        return record_of_layer(source, self.context)

    def layer(self, key):
        """The map layer of an input, None where it is empty."""
        return layer_of(self.given(key), self.context)

    def layer_behind(self, source):
        """The map layer that a recorded ``source``, a text, opens; None where it is not there any more."""
        layer = self.known_layers.get(source)
        if layer is None:
            layer, _ = layer_behind(source, self.context)
        return layer if layer is not None and layer.isValid() else None

    def record(self, **more):
        """The RunRecord of this run, see ``own_record``; ``more``: what the entry knows of it."""
        return own_record(self, **more)

    def say(self, text, code="", keys=(), about=()):
        """Put a fact into the log. ``code``: one of messages.CODES, which say what ``about`` holds; ``keys``: the
        parameters it is about."""
        self.feedback.pushInfo(text)
        hand(self.feedback, Message(FACT, code, text, tuple(keys), tuple(about)))

    def warn(self, text, code="", keys=(), about=()):
        """Put a doubt into the log; ``code``, ``keys`` and ``about`` as in ``say``."""
        self.feedback.pushWarning(text)
        hand(self.feedback, Message(DOUBT, code, text, tuple(keys), tuple(about)))

    def read_as(self, text, short=""):
        """Put into the log how an input was read. ``short``: what a listener gets of it, where not the whole."""
        self.feedback.pushInfo(text)
        hand(self.feedback, Message(READING, "", short or text))

    def check_cancel(self):
        """Raise Cancelled where the user has asked for it."""
        check_cancel(self.feedback)

    def progress(self, percent):
        """Tell how far the run has come."""
        self.feedback.setProgress(percent)
