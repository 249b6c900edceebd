"""The design of each axis: the form's, overridden by the fields of the axis layer."""

import numpy as np

from ..boundary.references import read_references
from ..core.choices import DESIGNS, LINES
from ..core.design import DesignSpec
from ..core.errors import InputError
from ..core.geodesy import position
from ..core.plane import Plane
from ..core.units import metres_per
from ..entry.parameters import GRAVITY
from ..language.core_sentences import worded
from ..language.number_text import listed, plain_text
from ..language.translation import tr
from ..structure.height_system import undulation_text

_CONTROLS = ("chain_a", "height_a", "chain_b", "height_b", "slope")
_CHAINAGES = {"chain_a": "CHAINAGE_A", "chain_b": "CHAINAGE_B"}


class Designs:
    """Makes the DesignSpec and tolerance of each axis, in metres, from the form and the axis layer's fields."""

    def __init__(self, asked, fields, notation, run_units, height_system, datum):
        self._fields, self._notation, self._units = fields, notation, run_units
        self._kind, self._line = asked.choice("DESIGN"), asked.choice("LINE") or "none"
        self._form = {name: asked.text(key) for name, key in _CHAINAGES.items()}
        for name, key in (
            ("height_a", "HEIGHT_A"),
            ("height_b", "HEIGHT_B"),
            ("slope", "SLOPE"),
            ("tolerance", "TOLERANCE"),
            ("line_tol", "LINE_TOLERANCE"),
        ):
            self._form[name] = asked.number(key)
        self._earth = {
            "earth": asked.choice("EARTH"),
            "radius": asked.number("RADIUS"),
            "refraction": asked.number("REFRACTION") or 0.0,
        }
        self._references = self._read_references(asked)
        self._system, self._datum = height_system, datum
        recorded = asked.record_of("STATIONS").more.get("gravity")
        self.gravity = asked.choice("GRAVITY") or (recorded if recorded in GRAVITY else "none")
        self.datum_height = (asked.number("DATUM_HEIGHT") or 0.0) * run_units.height
        self._overridden, self.line_tolerance_given, self._found = {}, False, {}

    @staticmethod
    def _read_references(asked):
        source = asked.optional_source("REFERENCE")
        return None if source is None else (source.sourceName(), read_references(source, asked.feedback))

    def spec(self, axis, row):
        """DesignSpec of one axis; InputError names the axis."""
        return self._once("spec", axis, row, self._spec)

    def _once(self, name, axis, row, find):
        """What ``find`` finds for an axis; where no axis states anything of its own, what it found for the first."""
        if self._fields.names or self._kind == "reference":
            return find(axis, row)
        if name not in self._found:
            self._found[name] = find(axis, row)
        return self._found[name]

    def _spec(self, axis, row):
        own = self._fields.choice(axis, row, "design", DESIGNS)
        kind = own or self._kind
        values = {}
        for name in _CONTROLS:
            values[name], typed = self._value(axis, row, name)
            if typed:
                self._note(axis, name)
        if own:
            self._note(axis, "design")
        scaled = {"chainage_a": values["chain_a"], "chainage_b": values["chain_b"], "slope": values["slope"]}
        for name in ("height_a", "height_b"):
            scaled[name] = None if values[name] is None else values[name] * self._units.height
        try:
            plane = self._plane(axis) if kind == "reference" else None
            return DesignSpec(kind, plane=plane, datum_height=self._water(kind), **scaled, **self._earth)
        except InputError as error:
            # The core knows no parameters; of its refusals this one has one place where it is mended.
            keys = ("SLOPE",) if kind == "inclined" and values["slope"] is None else error.keys
            raise InputError(
                tr("Axis '{}': {}").format(axis.line.name, worded(error, self._notation.shown, self._units)),
                code=error.code,
                keys=keys,
            ) from None

    def _water(self, kind):
        """Height of the datum above the sea for a level surface of water, None for any other design."""
        if kind != "level" or self.gravity != "normal":
            return None
        if self._system.kind == "ellipsoidal":
            raise InputError(
                tr("GRAVITY 'normal' needs heights above the sea, but these are ellipsoidal."),
                keys=("GRAVITY", "UNDULATION"),
            )
        return self.datum_height

    def tolerance(self, axis, row):
        """Tolerance of one axis in metres, None without one; InputError where it is negative."""
        return self._once("tolerance", axis, row, self._tolerance)

    def _tolerance(self, axis, row):
        return self._limit(axis, row, "tolerance", "TOLERANCE", tr("Axis '{}': the tolerance {} is negative."))

    def line(self, axis, row):
        """What the line of one axis is judged by, a word of choices.LINES, and its tolerance in metres, None without
        one; InputError for another word and where the tolerance is negative."""
        return self._once("line", axis, row, self._own_line)

    def _own_line(self, axis, row):
        own = self._fields.choice(axis, row, "line", LINES)
        if own:
            self._note(axis, "line")
        words = tr("Axis '{}': the tolerance of the line {} is negative.")
        tolerance = self._limit(axis, row, "line_tol", "LINE_TOLERANCE", words)
        self.line_tolerance_given |= tolerance is not None
        return own or self._line, tolerance

    def _limit(self, axis, row, name, key, negative):
        value, typed = self._value(axis, row, name)
        if typed:
            self._note(axis, name)
        if value is not None and value < 0:
            raise InputError(negative.format(axis.line.name, plain_text(value)), keys=() if typed else (key,))
        return None if value is None else value * self._units.height

    def _value(self, axis, row, name):
        """The value in the run's units (chainages in metres), and whether it is the axis layer's."""
        if name.startswith("chain"):
            own = self._fields.text(axis, name)
            text = own or self._form[name]
            try:
                return (self._notation.chainage(text) if text else None), bool(own)
            except InputError as error:
                keys = () if own else (_CHAINAGES[name],)
                raise InputError(
                    tr("Axis '{}', {}: {}").format(axis.line.name, name, worded(error)), keys=keys
                ) from None
        own = self._fields.number(axis, row, name)
        return (own, True) if own is not None else (self._form[name], False)

    def _note(self, axis, name):
        noted = self._overridden.setdefault(axis.line.name, [])
        if name not in noted:
            noted.append(name)

    @property
    def overridden(self):
        """(name of an axis, fields that it overrides the form with): a list."""
        return list(self._overridden.items())

    def _plane(self, axis):
        if self._references is None:
            raise InputError(tr("the design 'reference' needs a reference layer (REFERENCE)."), keys=("REFERENCE",))
        layer, rows = self._references
        chosen = [row for row in rows if row.serves(axis.line.name)]
        if not chosen and len(rows) == 1 and not rows[0].values["axes"]:
            chosen = rows
        if len(chosen) != 1:
            raise InputError(
                tr("layer '{}' has {} references for it; there are {}.").format(
                    layer, len(chosen) or tr("no"), listed([row.name for row in rows])
                )
            )
        values = chosen[0].values
        if not _same_heights(values["undul"], self._system):
            raise InputError(
                tr("the reference '{}' was made with UNDULATION '{}', but this run has '{}'.").format(
                    chosen[0].name, values["undul"], undulation_text(self._system)
                ),
                keys=("UNDULATION",),
            )
        if values["datum"] and values["datum"] != self._datum:
            raise InputError(
                tr("the reference '{}' is on the datum '{}', but the stations are on '{}'.").format(
                    chosen[0].name, values["datum"], self._datum
                )
            )
        unit = metres_per(values["h_unit"]) if values["h_unit"] else self._units.height
        ellipsoid = axis.line.ellipsoid
        point = position(values["lat0"], values["lon0"], values["h0"] * unit, ellipsoid)
        return Plane(point, np.array([values["nx"], values["ny"], values["nz"]]))


def _same_heights(undulation, system):
    """Whether a reference made with an ``undulation`` (a text of height_system.undulation_text) serves a run's system.

    A plane fitted to H + N of a field lies at its ellipsoidal place, so that ellipsoidal heights may use it too.
    """
    if not undulation or undulation == undulation_text(system):
        return True
    return undulation == "field" and system.kind == "ellipsoidal"
