"""Cells of text pasted from a spreadsheet, a mail or a page."""

import csv
import io
import re

# A comma here can only be a decimal sign or a group of thousands: nothing tells cells apart by it.
_NUMBER = re.compile(r"^\s*[-+\u2212(]?\s*(?:\d+\s*\+\s*)?\d*(?:[.,]\d+)*\)?\s*$")


def pasted_rows(text):
    """Rows of cells, lists of texts without blanks around them, all of one length; [] for nothing.

    Parted by tabs where there are any, else by semicolons, else by commas, unless every line by itself could be one
    number with a decimal comma: '148,20' is one cell. Cells in quotes may hold the parting sign and line ends.
    """
    if not text.strip():
        return []
    mark = _parting(text)
    if mark is None:
        rows = [[line] for line in text.splitlines()]
    else:
        rows = list(csv.reader(io.StringIO(text, newline=""), delimiter=mark, strict=False))
    rows = [[" ".join(cell.split()) for cell in row] for row in rows]
    while rows and not any(rows[-1]):
        rows.pop()
    width = max((len(row) for row in rows), default=0)
    return [row + [""] * (width - len(row)) for row in rows]


def _parting(text):
    """The sign that parts cells, None where there is none."""
    for mark in ("\t", ";"):
        if mark in text:
            return mark
    if "," not in text or all(_NUMBER.match(line) for line in text.splitlines()):
        return None
    return ","


def copied_text(rows):
    """Text of ``rows``, lists of texts, for a spreadsheet: parted by tabs."""
    return "\n".join("\t".join(row) for row in rows) + "\n"
