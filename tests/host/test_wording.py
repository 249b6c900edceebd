"""Labels and tips of the map word heights as everything else does: the host's expressions against height_text."""

import random

import pytest

qgis_core = pytest.importorskip("qgis.core")

from tautline.algorithms.core.units import metres_per  # noqa: E402 - needs the host
from tautline.algorithms.language import height_text as ht  # noqa: E402
from tautline.algorithms.language.units import Units  # noqa: E402
from tautline.algorithms.styles import wording  # noqa: E402

UNITS = ("metre", "foot", "us_foot")
# With halves of the last decimal, zeros of both signs, and both sides of a metre.
VALUES = (
    *(0.0, -0.0, 0.00004, -0.00004, 0.00005, -0.00005, 0.00025, 0.0005, -0.0005, 0.00075, 0.00125, 0.0124, -0.039),
    *(0.9994, 0.99994, 0.99996, 0.9999999, 1.0, -1.0, 1.00004, 2.5, -12.34565, 999.99996, 1234.5678, -98765.4321),
)


@pytest.fixture(scope="module")
def worded():
    """Text of an expression with the variable h; in a country that writes 1.234,5."""
    from qgis.PyQt.QtCore import QLocale

    before = QLocale()
    QLocale.setDefault(QLocale("de_DE"))

    def text(expression, value):
        context, scope = qgis_core.QgsExpressionContext(), qgis_core.QgsExpressionContextScope()
        scope.setVariable("h", value)
        context.appendScope(scope)
        parsed = qgis_core.QgsExpression(expression)
        found = parsed.evaluate(context)
        assert not parsed.hasParserError() and not parsed.hasEvalError(), parsed.evalErrorString()
        return found

    yield text
    QLocale.setDefault(before)


def values(unit):
    """(as the field has it, in metres): what height_text divides by the unit must be the field's very number."""
    chance = random.Random(7)
    drawn = [chance.uniform(-1.0, 1.0) * 10.0 ** chance.randint(-5, 3) for _ in range(400)]
    drawn += [chance.randint(-40000, 40000) / 2e4 for _ in range(200)]
    pairs = [(value, value * metres_per(unit)) for value in (*VALUES, *drawn)]
    return [(metres / metres_per(unit), metres) for _, metres in pairs]


@pytest.mark.parametrize("unit", UNITS)
@pytest.mark.parametrize("amounts_of", (ht.amounts_for, ht.levelled_amounts), ids=("usual", "levelled"))
def test_small_heights(host, worded, unit, amounts_of):
    amounts = amounts_of(unit)
    plain, signed = (make("@h", unit, amounts) for make in (wording.small_height, wording.signed_height))
    for value, metres in values(unit):
        assert worded(plain, value) == amounts.with_unit(abs(metres)), value
        assert worded(signed, value) == amounts.with_unit(metres, True), value
    assert wording.signed_height("@h", unit) == wording.signed_height("@h", unit, ht.amounts_for(unit))


@pytest.mark.parametrize("unit", UNITS)
def test_lateral_departures(host, worded, unit):
    for value, metres in values(unit):
        assert worded(wording.side_text("@h", unit), value) == ht.side_text(metres, Units(unit, "metre")), value


@pytest.mark.parametrize("unit", UNITS)
def test_full_heights(host, worded, unit):
    for value, metres in values(unit):
        assert worded(wording.full_height("@h", unit), value) == ht.full_height(metres, unit), value


@pytest.mark.parametrize("unit", UNITS)
def test_null_stays_null(host, worded, unit):
    for make in (wording.small_height, wording.signed_height, wording.full_height, wording.height_sign):
        assert worded(make("@h", unit), None) in (None, qgis_core.NULL)
