"""Text on paper: fonts, widths and lines that fit."""

from functools import lru_cache

from qgis.PyQt.QtGui import QFont, QFontMetricsF

from .svg import FORBIDDEN

FAMILY, MONO = "DejaVu Sans", "DejaVu Sans Mono"
_POINT = 25.4 / 72.0
_MEASURE = 200  # pixels of the font that widths are measured with
_SLACK = 1.02


@lru_cache(maxsize=16)
def _metrics(family, bold):
    font = QFont(family)
    font.setPixelSize(_MEASURE)
    font.setBold(bold)
    return QFontMetricsF(font)


@lru_cache(maxsize=65536)
def text_width(text, size, bold=False, family=FAMILY):
    """Width of one line in millimetres, a little more than measured: hosts round the advance of letters."""
    return _metrics(family, bold).horizontalAdvance(text) * size * _POINT / _MEASURE * _SLACK


@lru_cache(maxsize=64)
def font_of(family, size, bold=False):
    """A font of ``size`` points, which must not be changed."""
    font = QFont(family)
    font.setPointSizeF(size)
    font.setBold(bold)
    return font


def ascent(size, family=FAMILY):
    """From the top of a line to its baseline, millimetres."""
    return _metrics(family, False).ascent() * size * _POINT / _MEASURE


def line_height(size):
    """Distance from line to line, millimetres."""
    return 1.19 * size * _POINT


def wrapped(text, size, width, *, bold=False, family=FAMILY):
    """Lines of at most ``width`` millimetres; words that are longer are cut; [] for no text."""
    lines = []
    for part in FORBIDDEN.sub("", str(text)).replace("\r", "").replace("\t", " ").split("\n"):
        indent = part[: len(part) - len(part.lstrip(" "))]
        line = ""
        for word in _pieces(part, size, width, bold, family):
            longer = word if not line else f"{line} {word}" if line.strip() else line + word
            if line and text_width(longer, size, bold, family) > width:
                lines.append(line)
                line = word
            else:
                line = longer
        lines.append(indent + line if indent and not line.startswith(" ") else line)
    return lines if any(lines) else []


def _pieces(text, size, width, bold, family):
    """Words, the too long ones in pieces that fit, with a hyphen where only letters are parted."""
    for word in text.split():
        while text_width(word, size, bold, family) > width and len(word) > 1:
            fits = next(
                (k for k in range(len(word) - 1, 1, -1) if text_width(word[:k], size, bold, family) <= width), 1
            )
            if fits > 2 and word.isalpha():
                yield f"{word[: fits - 1]}-"
                word = word[fits - 1 :]
            else:
                yield word[:fits]
                word = word[fits:]
        yield word
