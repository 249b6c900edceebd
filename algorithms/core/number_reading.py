"""Numbers as old lists hold them: decimal commas, thousands in groups, signs behind, units beside, feet and inches.

A column is read as a whole, since one cell alone often leaves the decimal sign open; what a cell says is never changed.
"""

import re
from dataclasses import dataclass

import numpy as np

from .choices import SIGNS
from .errors import InputError, Sentence, Word
from .plain_number import plain_numbers

# What a cell is called where nobody says.
_CELL = Word("number")
_BLANKS = " \u00a0\u2009\u202f\t"
_MINUS = "-\u2212\u2013"
_UNIT = re.compile(
    r"(?<=[0-9.,])\s*(?:(?P<metres>metres?|meters?|m)|(?P<feet>feet|foot|ft|\u2032|'))\.?$", re.IGNORECASE
)
_INCHES = r"(?P<inches>[0-9]+(?:\.[0-9]+)?)?(?:[\s-]*(?P<top>[0-9]+)\s*/\s*(?P<bottom>[0-9]+))?"
_FEET = re.compile(
    r"^(?P<feet>[0-9]+(?:\.[0-9]+)?)\s*(?:'|\u2032|\u2019|ft\.?|feet)[\s-]*(?:"
    + _INCHES
    + r"\s*(?:\"|\u2033|\u201d|''|in\.?|inches)?)?$",
    re.IGNORECASE,
)
_ONLY_INCHES = re.compile(r"^" + _INCHES + r"\s*(?:\"|\u2033|\u201d|''|in\.|inches|in)$", re.IGNORECASE)
_GROUPED = {
    sign: re.compile(rf"^[0-9]{{1,3}}(?:[{group}][0-9]{{3}})+(?:{mark}[0-9]*)?$")
    for sign, group, mark in (("point", rf",'\u2019{_BLANKS}", r"\."), ("comma", rf".'\u2019{_BLANKS}", ","))
}
_PLAIN = {
    "point": re.compile(r"^(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]+)?$"),
    "comma": re.compile(r"^(?:[0-9]+,?[0-9]*|,[0-9]+)$"),
}


@dataclass(frozen=True)
class Column:
    """A column as read. ``values``: (n,), NaN for blank and unreadable cells; ``reasons``: {row: Sentence, why it is
    unreadable}; ``sign``: 'point' or 'comma'; ``notes``: what was found besides plain numbers, for the log; ``feet``:
    rows in feet and inches (n,)."""

    values: np.ndarray
    reasons: dict
    sign: str
    notes: tuple
    feet: np.ndarray


def read_column(texts, *, name=_CELL, sign="", in_feet=False):
    """Read the cells of one column: Column.

    ``texts``: (n,) as written; ``name``: what the reasons call a cell; ``sign``: the decimal sign where it is known;
    ``in_feet``: True where the run counts in feet: only then can cells in feet and inches be taken. InputError where
    the decimal sign cannot be told: every comma may part thousands or decimals.
    """
    plain = _all_plain(texts) if sign != "comma" else None
    if plain is not None:
        return Column(plain, {}, "point", (), np.zeros(len(texts), bool))
    sign = sign or decimal_sign(texts, name)
    values, reasons, notes = np.full(len(texts), np.nan), {}, set()
    feet = np.zeros(len(texts), bool)
    for row, text in enumerate(texts):
        text = text.strip(_BLANKS)
        if not text or text.lower() in ("nan", "null", "-", "\u2013", "n/a"):
            continue
        body, negative, signed = _without_sign(text)
        number = None if _GROUPED[sign].match(body) else _feet_and_inches(body)
        unit = _UNIT.search(body)
        feet[row] = number is not None or bool(unit and unit["feet"])
        if feet[row] and not in_feet or unit and unit["metres"] and in_feet:
            reasons[row] = Sentence("The {} '{}' is not in the unit of the run.", name, text)
            continue
        if number is not None:
            notes.add("feet and inches")
        else:
            number, found = _number(body, sign)
            notes |= found
        if number is None:
            other = SIGNS[1 - SIGNS.index(sign)]
            mixed = _number(body, other)[0] is not None
            if body.lower() in ("inf", "infinity"):
                reasons[row] = Sentence("The {} '{}' is infinite.", name, text)
            elif not mixed:
                reasons[row] = Sentence("The {} '{}' is not a number.", name, text)
            elif sign == "comma":
                reasons[row] = Sentence(
                    "The {} '{}' is not a number. The other cells have a decimal comma.", name, text
                )
            else:
                reasons[row] = Sentence(
                    "The {} '{}' is not a number. The other cells have a decimal point.", name, text
                )
            continue
        if signed:
            notes.add(signed)
        values[row] = -number if negative else number
    if sign == "comma":
        notes.add("decimal comma")
    return Column(values, reasons, sign, tuple(sorted(notes)), feet)


def typed_number(text, *, comma="", in_feet=False):
    """The number that one field of a form holds: float, in the unit that the form states.

    ``comma``: what a comma is that could be either, 'comma' (the decimal sign where the user lives) or '' (not known);
    ``in_feet``: as in ``read_column``. InputError for what is no number, and for such a comma where it is not known.
    """
    try:
        column = read_column([text], name=Word("entry"), in_feet=in_feet)
    except InputError:
        if comma != "comma":
            raise InputError(
                "'{}' may have a decimal comma or a group of thousands: write it with a point, or without a comma.",
                text,
            ) from None
        column = read_column([text], name=Word("entry"), sign=comma, in_feet=in_feet)
    if column.reasons:
        raise column.reasons[0].refused()
    if np.isnan(column.values[0]):
        raise InputError("The {} '{}' is not a number.", Word("entry"), text)
    return float(column.values[0])


def _all_plain(texts):
    """Values of a column of nothing but plain numbers and blanks, as most are; None for any other."""
    numbers = plain_numbers(texts)
    values = None if numbers is None else np.array(numbers, float)
    return None if values is None or np.any(np.isinf(values)) else values


def _without_sign(text):
    """Body of a number, whether it is negative, and a note on an unusual sign."""
    if text[0] == "(" and text[-1] == ")":
        return text[1:-1].strip(_BLANKS), True, "negative numbers in brackets"
    if text[-1] in _MINUS and text[0] not in _MINUS:
        return text[:-1].strip(_BLANKS), True, "signs behind the number"
    if text[0] in _MINUS:
        return text[1:].strip(_BLANKS), True, ""
    return text[1:].strip(_BLANKS) if text[0] == "+" else text, False, ""


def _number(body, sign):
    """A number without its sign, None where it is none, and notes on how it was written."""
    notes = set()
    if _GROUPED[sign].match(body):
        notes.add("thousands in groups")
        return float(_bare(body, sign)), notes
    plain = _UNIT.sub("", body)
    if plain != body:
        notes.add("units beside the numbers")
    if _PLAIN[sign].match(plain):
        return float(plain.replace(",", ".")), notes
    if _GROUPED[sign].match(plain):
        return float(_bare(plain, sign)), notes | {"thousands in groups"}
    return None, set()


def _bare(body, sign):
    mark = "." if sign == "point" else ","
    whole, _, rest = body.partition(mark)
    return re.sub(r"\D", "", whole) + "." + (rest or "0")


def _feet_and_inches(body):
    """Feet of 12'-6 3/4", 12 ft 6 in, 6 3/4"; None where it is not that. A bare 12' is a number with its unit."""
    found = _FEET.match(body)
    if found and (found["inches"] or found["top"]):
        whole = float(found["feet"])
    else:
        found = _ONLY_INCHES.match(body)
        if not found or not (found["inches"] or found["top"]):
            return None
        whole = 0.0
    inches, top, bottom = found["inches"], found["top"], found["bottom"]
    if bottom is not None and float(bottom) == 0.0:
        return None
    return whole + (float(inches or 0.0) + (float(top) / float(bottom) if top else 0.0)) / 12.0


def decimal_sign(texts, name=_CELL):
    """'point' or 'comma', from all cells of a column. ``texts``: (n,) as written. InputError where every comma could
    part thousands as well."""
    votes, open_cells = set(), []
    for text in texts:
        body = _without_sign(text.strip(_BLANKS))[0] if text.strip(_BLANKS) else ""
        body = _UNIT.sub("", body)
        if "," not in body and body.count(".") < 2:
            if "." in body and not re.match(r"^[0-9]{1,3}\.[0-9]{3}$", body):
                votes.add("point")
            continue
        vote = _vote(body)
        votes |= {vote} if vote else set()
        if not vote and _PLAIN["comma"].match(body):
            open_cells.append(text.strip())
    if votes == {"comma"} or votes == {"point"}:
        return votes.pop()
    if len(votes) == 2:
        # Mixed: the greater part decides, the others are refused one by one.
        commas = sum(_PLAIN["comma"].match(t.strip()) is not None and "," in t for t in texts)
        points = sum(_PLAIN["point"].match(t.strip()) is not None and "." in t for t in texts)
        return "comma" if commas > points else "point"
    if open_cells:
        raise InputError(
            "The {} '{}' may have a decimal comma or a group of thousands, and no other cell of the "
            "column tells; give the decimal sign (DECIMAL_SIGN).",
            name,
            open_cells[0],
        )
    return "point"


def _vote(body):
    """What one cell with commas or several points says about the decimal sign; '' where it leaves it open."""
    last = max(body.rfind(","), body.rfind("."))
    if "," in body and "." in body:
        return "comma" if body[last] == "," else "point"
    mark = body[last]
    if body.count(mark) > 1:
        return "point" if mark == "," else "comma"
    whole, _, rest = body.partition(mark)
    if mark == "," and rest.isdigit() and (len(rest) != 3 or len(whole) > 3 or whole in ("", "0") or whole[0] == "0"):
        return "comma"
    return ""


def decimals_written(text):
    """How many digits stand behind the decimal sign of a number as written, without unit; 0 where there is none."""
    found = re.search(r"[.,]([0-9]*)\s*$", text)
    return len(found[1]) if found else 0


def has_digits(text):
    """Whether a cell has digits in it, without unit: headings have none."""
    return re.search(r"[0-9]", text) is not None
