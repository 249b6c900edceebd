"""CSV for spreadsheets: numbers stay numbers, and text that would run as a formula is made text."""

import csv
import io

# What spreadsheets take for the start of a formula, the full-width forms among them. Source: the OWASP page on CSV
# injection, from memory.
_STARTS = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")


def plain_cell(text):
    """The text with an apostrophe before it where a spreadsheet would run it; blanks before the sign do not hide it."""
    return "'" + text if text.startswith(_STARTS) or text.lstrip().startswith(_STARTS) else text


def text_of_cell(cell):
    """The text of a cell that ``plain_cell`` has written: without the apostrophe that it put there."""
    return cell[1:] if cell.startswith("'") and plain_cell(cell[1:]) == cell else cell


def number_cell(value, decimals):
    """A number with fixed decimals and a plain minus, '' for NaN; never '-0'."""
    if value != value:
        return ""
    text = f"{value:.{decimals}f}"
    return text.lstrip("-") if float(text) == 0.0 else text


def csv_bytes(columns):
    """A CSV file in UTF-8 with its mark, which spreadsheets need. ``columns``: (heading, values, decimals), decimals
    None for text columns."""
    file = io.StringIO(newline="")
    writer = csv.writer(file)
    writer.writerow([plain_cell(name) for name, _, _ in columns])
    texts = [
        [plain_cell(str(value or "")) for value in values]
        if decimals is None
        else [number_cell(float(value), decimals) for value in values]
        for _, values, decimals in columns
    ]
    writer.writerows(zip(*texts))
    return file.getvalue().encode("utf-8-sig")
