"""The pieces a report is made of; both documents are written from the same list of them."""

from dataclasses import dataclass


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
class Facts:
    """Names and values, one pair in a row."""

    pairs: tuple


@dataclass(frozen=True)
class Signatures:
    """The title block. ``facts``: names and values; ``people``: (role, name) with room for signature and date."""

    facts: tuple
    people: tuple


@dataclass(frozen=True)
class Column:
    """One column of a table. ``kind``: 'n' for numbers, 'k' for text on one line, '' for other text; ``width``:
    millimetres on paper."""

    heading: str
    kind: str
    width: float


@dataclass(frozen=True)
class Table:
    """``rows``: lists of texts; ``kinds``: '' or 'out' for each row, which is shaded."""

    columns: tuple
    rows: list
    caption: str = ""
    kinds: tuple = ()


@dataclass(frozen=True)
class Picture:
    """A chart: ``svg`` text for the screen, ``png`` bytes for paper; ``shape``: height by width."""

    svg: str
    png: bytes
    alt: str
    caption: str
    shape: float


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
    """Lines to be typed."""

    text: str
    caption: str


@dataclass(frozen=True)
class Caution:
    texts: tuple
