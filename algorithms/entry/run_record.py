"""The record of a run: what made a layer, in which units and height system, from which inputs; written and read here.

One line of JSON travels with each output layer. A record comes from outside: it may be of an older version, edited by
hand or cut off, so the one reader, ``RunRecord.read``, doubts all of it and never fails.
"""

import json
import math
from dataclasses import dataclass, field, replace
from typing import Optional

from ..core.input_record import InputRecord
from ..core.units import METRES
from ..language.translation import tr

# Raised when a key changes its meaning; records of before it was stated hold none.
SCHEMA = 1
# What is nested deeper than this is no record.
_DEEPEST = 12
# Stands for the axes while what surrounds them is written once; no value of a record holds it.
_MARK = "\x00axes\x00"
# Axes whose controls stand in the record of their layer.
_MOST_AXES = 100
_TEXTS = ("entry", "height_system", "undulation_source", "covariance")
_AXIS_TEXTS = ("design", "earth", "horizon", "line")
_AXIS_NUMBERS = ("slope", "chainage_height", "refraction", "tolerance", "line_tolerance")
_ACCURACY_NUMBERS = ("sigma", "sigma_km")
# What a record tells of undulations, of the heights in its fields and of their adjustment, beside the height system.
_OF_HEIGHTS = ("geoid_between", "geoid", "undulation_field", "undulation_value", "height_fields", "adjustment")
# The entry whose heights share their errors.
_ADJUSTMENT = "tautline:adjustlevelling"
_KNOWN = {
    *_TEXTS,
    "schema",
    "parameters",
    "units",
    "reference_system",
    "accuracy",
    "versions",
    "axes",
    "every_axis",
    "inputs",
}


@dataclass(frozen=True)
class RunRecord:
    """What is known of the run that made a layer; an empty record is false.

    ``entry``: its id, 'tautline:designheights'; ``parameters``: {key: text, number, truth or list of these} as given,
    layers by their source; ``height_unit``, ``chainage_unit``: names, '' where not known; ``height_system``,
    ``undulation_source``: texts; ``crs``: of the layer by its code, ``datum``: by its name; ``accuracy``: {'sigma',
    'sigma_km': numbers in the unit of heights, 'field': name}, each where it was used; ``covariance``: source of the
    table that holds the covariance of the heights, '' for none; ``versions``: {name: text}; ``axes``: {name: {'design',
    'controls', 'slope', 'chainage_height', 'refraction', 'tolerance', 'earth', 'horizon', and where the line was judged
    'line', 'line_tolerance'}} in the run's units;
    ``every_axis``: the same of all axes that state nothing else;
    ``inputs``: {key: tuple of InputRecord}; ``more``: anything else, as JSON has it. ``output``: key of the
    output that the layer is; ``written``: InputRecord of its rows as they were written, None where not known.
    ``doubt``: '' or one sentence
    which says that the record is damaged and what does not count.
    """

    entry: str = ""
    parameters: dict = field(default_factory=dict)
    height_unit: str = ""
    chainage_unit: str = ""
    height_system: str = ""
    undulation_source: str = ""
    crs: str = ""
    datum: str = ""
    accuracy: dict = field(default_factory=dict)
    covariance: str = ""
    versions: dict = field(default_factory=dict)
    axes: dict = field(default_factory=dict)
    inputs: dict = field(default_factory=dict)
    more: dict = field(default_factory=dict)
    every_axis: dict = field(default_factory=dict)
    schema: int = SCHEMA
    output: str = ""
    written: Optional[InputRecord] = None
    doubt: str = ""

    def __bool__(self):
        return bool(self.entry or self.axes or self.every_axis)

    @classmethod
    def read(cls, given):
        """The record in a JSON text or a dict; an empty one for '' and None. It never fails: see ``doubt``."""
        return _Reader().record(given)

    def text(self):
        """The record as one line of JSON."""
        return json.dumps(self.as_dict(), ensure_ascii=False, sort_keys=True, allow_nan=False)

    def as_dict(self):
        """The record as JSON has it: dicts, lists, texts, finite numbers; what is empty is left out."""
        units = {"height_name": self.height_unit, "chainage_name": self.chainage_unit}
        parts = {
            "units": {key: unit for key, unit in units.items() if unit},
            "reference_system": {key: text for key, text in (("crs", self.crs), ("datum", self.datum)) if text},
            "inputs": {key: [_input_dict(one) for one in many] for key, many in self.inputs.items()},
            "written": {} if self.written is None else _input_dict(self.written),
            "output": self.output,
            **{key: getattr(self, key) for key in (*_TEXTS, "accuracy", "axes", "every_axis")},
        }
        known = {
            "schema": self.schema,
            "parameters": self.parameters,
            "versions": self.versions,
            **{key: value for key, value in parts.items() if value},
        }
        return _json({**self.more, **known})

    def brief(self):
        """The same record for a layer's style: of many axes without their controls, and what all have said once.

        A style is read whenever the layer is opened; the controls of thousands of axes stand in the summary's rows.
        """
        if len(self.axes) <= _MOST_AXES:
            return self
        first = next(iter(self.axes.values()))
        alike = {
            key: value
            for key, value in first.items()
            if key != "controls" and all(one.get(key) == value for one in self.axes.values())
        }
        alike["from_stations"] = any(
            control.get("typed") is False for one in self.axes.values() for control in one.get("controls", ())
        )
        axes = {
            name: {key: value for key, value in one.items() if key != "controls" and key not in alike}
            for name, one in self.axes.items()
        }
        return replace(self, axes={name: one for name, one in axes.items() if one}, every_axis=alike)

    # --- what is asked of it

    @property
    def adjusted(self):
        """Whether the heights in the layer's field 'height' come from an adjustment, and so share errors."""
        return self.entry == _ADJUSTMENT or self.more.get("heights_of") == _ADJUSTMENT

    @property
    def adjustment(self):
        """How the adjustment went that the heights in the field 'height' come from: (whether its global test failed,
        its variance factor, number of blunders suspected); nothing is doubted where it does not tell."""
        told = self.more.get("adjustment")
        told = told if isinstance(told, dict) else {}
        factor, suspected = told.get("variance_factor"), told.get("suspected")
        failed = told.get("global_test") == "failed" and _is_number(factor)
        return failed, float(factor) if failed else 1.0, int(suspected) if _is_number(suspected) else 0

    def carried(self):
        """What a run that keeps the layer's heights hands on, for its own record: {name: value}."""
        found = {"height_system": self.height_system, "undulation_source": self.undulation_source}
        found.update(covariance=self.covariance, heights_of=_ADJUSTMENT if self.adjusted else "")
        found.update({key: self.more[key] for key in _OF_HEIGHTS if key in self.more})
        return {key: value for key, value in found.items() if value not in ("", None)}

    def with_heights(self, told):
        """The same record with what is ``told`` of its heights, {name: value} as ``carried`` gives it."""
        texts = {key: told[key] for key in ("height_system", "undulation_source") if key in told}
        return replace(self, **texts, more={**self.more, **{key: told[key] for key in _OF_HEIGHTS if key in told}})

    def with_axes(self, axes):
        """The same record with what was used on each axis."""
        return replace(self, axes=axes)

    def texts_with_axes(self, axes):
        """For each (name, what was used on it) of ``axes`` the record with that axis alone, as a text: a list."""
        rest = {key: value for key, value in self.as_dict().items() if key != "axes"}
        before, after = json.dumps({**rest, "axes": _MARK}, ensure_ascii=False, sort_keys=True, allow_nan=False).split(
            json.dumps(_MARK)
        )
        return [before + _axis_text(name, used) + after for name, used in axes]

    def axis(self, name):
        """What was used on an axis, {} where nothing is known."""
        return {**self.every_axis, **self.axes.get(name, {})}

    def known_axes(self):
        """What was used on the axes that the record knows, a list; of all of them at once where it states no names."""
        return [self.axis(name) for name in self.axes] or ([self.every_axis] if self.every_axis else [])

    def axis_number(self, axis, name):
        """A number of one axis in the record's units, None where there is none."""
        value = self.axis(axis).get(name)
        return float(value) if _is_number(value) else None

    def parameter(self, key):
        """A parameter of the run as text, '' where it was not given or is no text."""
        value = self.parameters.get(key)
        return value if isinstance(value, str) else ""

    def parameter_number(self, key):
        """A parameter of the run as a finite number, None where it was not given or is none."""
        try:
            value = float(self.parameters.get(key, "nan"))
        except (TypeError, ValueError, OverflowError):
            return None
        return value if math.isfinite(value) else None


def record_with_output(text, key, written):
    """The ``text`` of a record of our own as it stands, with the output's ``key`` and what was ``written`` into it
    (InputRecord or None) beside the rest."""
    told = {**json.loads(text), "output": key}
    if written is not None:
        told["written"] = _input_dict(written)
    return json.dumps(told, ensure_ascii=False, sort_keys=True, allow_nan=False)


def _axis_text(name, used):
    try:
        return json.dumps({name: used}, ensure_ascii=False, sort_keys=True, allow_nan=False)
    except (TypeError, ValueError):  # numbers of arrays, or no numbers
        return json.dumps({name: _json(used)}, ensure_ascii=False, sort_keys=True, allow_nan=False)


def _is_number(value):
    """Whether a value of JSON is a finite number; truths are none."""
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        return False
    try:
        return math.isfinite(float(value))
    except OverflowError:
        return False


def _input_dict(one):
    told = {"source": one.source, "rows": one.rows, "numbers": one.numbers, "texts": one.texts, "shape": one.shape}
    told.update({"window": one.window, "hash": one.hash, "part": one.part, "marks": one.marks})
    return {key: value for key, value in told.items() if value not in ("", (), False, -1)}


def _json(value):
    """A value as strict JSON can hold it: numbers of arrays are plain ones, infinity and NaN are null."""
    if isinstance(value, RunRecord):
        return value.as_dict()
    if isinstance(value, dict):
        return {str(key): _json(one) for key, one in value.items()}
    if isinstance(value, (list, tuple)):
        return [_json(one) for one in value]
    if type(value).__module__ == "numpy":
        value = value.tolist()
        return _json(value) if isinstance(value, list) else _json_scalar(value)
    return _json_scalar(value)


def _json_scalar(value):
    if isinstance(value, float):
        return float(value) if math.isfinite(value) else None
    return value if value is None or isinstance(value, (str, bool, int)) else str(value)


class _Reader:
    """One reading: what is of the wrong kind is left out and its name kept."""

    def __init__(self):
        self._lost = []

    def record(self, given):
        parsed = self._parsed(given)
        record = self._record(parsed)
        if not self._lost:
            return record
        names = ", ".join(list(dict.fromkeys(self._lost))[:6])
        doubt = tr("the record of the run that made it is damaged; what cannot be read of it does not count: {}.")
        return replace(record, doubt=doubt.format(names))

    def _parsed(self, given):
        if given is None or (isinstance(given, str) and not given.strip()):
            return {}
        if isinstance(given, str):
            try:
                given = json.loads(given)
            # A text nested without end is refused by the parser's own depth, a number of thousands of digits by int.
            except (ValueError, RecursionError):
                given = None
        return given if isinstance(given, dict) else self._none(tr("all of it"))

    def _none(self, name):
        self._lost.append(name)
        return {}

    def _record(self, given):
        units, system = self._dict(given, "units"), self._dict(given, "reference_system")
        parameters = self._plain(self._dict(given, "parameters"), "parameters", lists=True)
        height, chainage = self._unit(units, "height_name"), self._unit(units, "chainage_name")
        if not units:
            # The oldest records tell units only where the form was told them.
            height, chainage = (self._known_unit(parameters.get(key)) for key in ("HEIGHT_UNIT", "CHAINAGE_UNIT"))
            chainage = chainage or height
        schema = given.get("schema", 0)
        if isinstance(schema, bool) or not isinstance(schema, int) or not 0 <= schema <= SCHEMA:
            self._lost.append("schema")
            schema = 0
        axes, alike = self._dict(given, "axes"), self._dict(given, "every_axis")
        return RunRecord(
            parameters=parameters,
            height_unit=height,
            chainage_unit=chainage,
            crs=self._text(system, "crs"),
            datum=self._text(system, "datum"),
            accuracy=self._accuracy(self._dict(given, "accuracy")),
            versions=self._texts(self._dict(given, "versions"), "versions"),
            axes={str(name): self._axis(one) for name, one in axes.items() if self._is_dict(one, "axes")},
            every_axis=self._axis(alike) if alike else {},
            inputs=self._inputs(self._dict(given, "inputs")),
            more=self._more({key: value for key, value in given.items() if key not in _KNOWN}),
            schema=schema,
            output=self._text(given, "output"),
            written=self._input(self._dict(given, "written")) if given.get("written") else None,
            **{key: self._text(given, key) for key in _TEXTS},
        )

    # --- of one kind each; JSON's null is no value

    def _is_dict(self, value, name):
        if isinstance(value, dict):
            return True
        self._lost.append(name)
        return False

    def _dict(self, given, key):
        value = given.get(key)
        return {} if value is None else value if self._is_dict(value, key) else {}

    def _text(self, given, key):
        value = given.get(key)
        if value is None or isinstance(value, str):
            return value or ""
        self._lost.append(key)
        return ""

    def _texts(self, given, name):
        found = {key: self._text(given, key) if isinstance(value, str) else None for key, value in given.items()}
        if None in found.values():
            self._lost.append(name)
        return {str(key): value for key, value in found.items() if value is not None}

    def _number(self, given, key):
        """A finite number, None where there is none."""
        value = given.get(key)
        if value is None or _is_number(value):
            return None if value is None else float(value)
        self._lost.append(key)
        return None

    @staticmethod
    def _known_unit(value):
        return value if isinstance(value, str) and value in METRES else ""

    def _unit(self, units, key):
        value = units.get(key)
        if value is not None and not self._known_unit(value):
            self._lost.append("units")
        return self._known_unit(value)

    def _plain(self, given, name, *, lists=False):
        """Texts, truths and finite numbers of a dict; ``lists``: also lists of such."""
        found = {}
        for key, value in given.items():
            if value is None:
                continue
            if isinstance(value, (str, bool)) or _is_number(value):
                found[str(key)] = value
            elif lists and isinstance(value, list):
                found[str(key)] = [one for one in value if isinstance(one, (str, bool)) or _is_number(one)]
                if len(found[str(key)]) < len(value):
                    self._lost.append(name)
            else:
                self._lost.append(name)
        return found

    def _accuracy(self, given):
        found = {key: self._number(given, key) for key in _ACCURACY_NUMBERS}
        found["field"] = self._text(given, "field")
        return {key: value for key, value in found.items() if value not in (None, "")}

    def _axis(self, given):
        others = {key: value for key, value in given.items() if key not in (*_AXIS_TEXTS, *_AXIS_NUMBERS, "controls")}
        axis = self._plain(others, "axes", lists=True)
        axis.update({key: self._text(given, key) for key in _AXIS_TEXTS})
        axis.update({key: self._number(given, key) for key in _AXIS_NUMBERS})
        axis["controls"] = []
        controls = given.get("controls")
        if controls is not None and not isinstance(controls, list):
            self._lost.append("controls")
        for one in controls if isinstance(controls, list) else ():
            if isinstance(one, dict) and _is_number(one.get("chainage")) and _is_number(one.get("height")):
                axis["controls"].append(self._plain(one, "controls"))
            else:
                self._lost.append("controls")
        return {key: value for key, value in axis.items() if value not in (None, "")}

    def _inputs(self, given):
        found = {}
        for key, many in given.items():
            if not isinstance(many, list):
                self._lost.append("inputs")
                continue
            found[str(key)] = tuple(self._input(one) for one in many if self._is_dict(one, "inputs"))
        return found

    def _input(self, given):
        rows, part = given.get("rows", -1), given.get("part", False)
        if not _is_number(rows) or not isinstance(part, bool):
            self._lost.append("inputs")
            rows, part = -1, False
        window = self._list(given, "window", int)
        return InputRecord(
            self._text(given, "source"),
            int(rows),
            self._list(given, "numbers", str),
            self._list(given, "texts", str),
            self._text(given, "shape"),
            window if len(window) == 2 and not any(isinstance(one, bool) for one in window) else (),
            self._text(given, "hash"),
            part,
            self._text(given, "marks"),
        )

    def _list(self, given, key, kind):
        value = given.get(key)
        if value is None:
            return ()
        if isinstance(value, list) and all(isinstance(one, kind) for one in value):
            return tuple(value)
        self._lost.append("inputs")
        return ()

    def _more(self, given):
        return {str(key): self._any(value, str(key), _DEEPEST) for key, value in given.items()}

    def _any(self, value, name, deepest):
        """Any value of JSON without infinities, nested no deeper than ``deepest``."""
        if isinstance(value, (list, dict)) and not deepest:
            self._lost.append(name)
            return None
        if isinstance(value, list):
            return [self._any(one, name, deepest - 1) for one in value]
        if isinstance(value, dict):
            return {str(key): self._any(one, name, deepest - 1) for key, one in value.items()}
        if value is None or isinstance(value, (str, bool)) or _is_number(value):
            return value
        self._lost.append(name)
        return None
