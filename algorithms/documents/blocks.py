"""The pieces a document is made of: every page for the screen and the report on paper are written from a list of them.

Texts are plain: whoever writes a document escapes them.
"""

from dataclasses import dataclass

from ..language.translation import tr

# A page draws so many axes; of the others it has the numbers. A picture takes most of a second.
MOST_AXES_DRAWN = 12


@dataclass(frozen=True)
class Heading:
    """``level``: 2 for a section, 3 for a part of it."""

    text: str
    level: int = 2


@dataclass(frozen=True)
class Paragraph:
    """``kind``: '', 'lead', 'small' or 'warn'; ``strong``: a sentence before the others, of a 'lead'."""

    text: str
    kind: str = ""
    strong: str = ""


@dataclass(frozen=True)
class Bullets:
    """Sentences below each other, each with its mark."""

    texts: tuple


@dataclass(frozen=True)
class Facts:
    """Names and values, one pair in a row."""

    pairs: tuple


@dataclass(frozen=True)
class Blanks:
    """Names with a line each, to be filled in by hand."""

    names: tuple


@dataclass(frozen=True)
class Signatures:
    """The title block. ``facts``: names and values; ``people``: (role, name) with room for signature and date."""

    facts: tuple
    people: tuple


@dataclass(frozen=True)
class Column:
    """One column of a table.

    ``kind``: 'n' for numbers, 'k' for text on one line, 'b' for room to write, '' for other text; with ' side' on the
    ground of what is sideways; ``width``: millimetres on paper, 0 where there is no paper.
    """

    heading: str
    kind: str = ""
    width: float = 0.0


@dataclass(frozen=True)
class Table:
    """``rows``: lists of texts, one for each column; ``kinds``: for each row '', 'out' (shaded), 'act' (bold),
    'quiet' (grey) or 'out act'; ``groups``: headings above the columns' own, (text, columns that it stands over), on
    the screen only.
    """

    columns: tuple
    rows: list
    caption: str = ""
    kinds: tuple = ()
    groups: tuple = ()


@dataclass(frozen=True)
class Picture:
    """A chart: ``svg`` text for the screen, ``png`` bytes for paper, each '' where it is not asked for; ``alt``: what
    it shows in words; ``shape``: height by width, for paper.
    """

    svg: str
    alt: str
    caption: str
    png: bytes = b""
    shape: float = 0.0


@dataclass(frozen=True)
class Map:
    """A map: ``chart`` draws it in a layout; ``image`` bytes and its ``kind`` for the screen; ``legend``: (text, png
    bytes).
    """

    chart: object
    image: bytes
    kind: str
    alt: str
    caption: str
    legend: tuple


@dataclass(frozen=True)
class Code:
    """Lines to be typed or read as they stand."""

    text: str
    caption: str = ""


@dataclass(frozen=True)
class Caution:
    """The box that stands out, a paragraph for each text."""

    texts: tuple


@dataclass(frozen=True)
class SideBySide:
    """Pieces beside each other where there is room."""

    blocks: tuple


@dataclass(frozen=True)
class Fold:
    """Pieces behind a title that opens them; not printed."""

    title: str
    blocks: tuple


def cautions(*more):
    """The box that a page for the field carries; ``more``: further sentences."""
    return Caution(
        (
            tr(
                "For review. Field work follows local codes, and a licensed surveyor or engineer decides what is "
                "raised, lowered or left."
            ),
            *more,
        )
    )
