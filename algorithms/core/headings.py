"""What headings of columns and names of fields mean: which quantity, in which unit. The one table for every path."""

import re

# What a column of each kind may be called: small letters, without brackets, unit and label.
HEADINGS = {
    "station": ("station", "sta", "stationing", "chainage", "ch", "kp", "pk"),
    "offset": ("offset", "off", "o/s"),
    "height": (
        *("height", "elevation", "elev", "el", "level", "as-built height", "as built", "asbuilt"),
        *("reduced level", "rl", "h", "z"),
    ),
    "axis": ("axis", "arm", "line", "alignment"),
    "undulation": ("undulation", "undul", "geoid undulation", "geoid height", "geoidheight"),
}
# Units by how they are written; what is no unit of heights here has itself for a name.
_WRITTEN = (
    ("us_foot", r"us[\s_-]*(?:survey[\s_-]*)?(?:ft|feet|foot)|(?:ft|feet|foot)[\s_-]*us|sft|u\.\s?s\.\s?(?:ft|feet)"),
    ("foot", r"(?:int(?:l|ernational)?\.?\s*)?(?:ft|feet|foot)"),
    ("metre", r"m|metres?|meters?"),
    ("mm", r"mm|millimetres?|millimeters?"),
    ("cm", r"cm|centimetres?|centimeters?"),
    ("inch", r"in|inch|inches"),
    ("km", r"km|kilometres?|kilometers?"),
    ("mile", r"mi|miles?"),
)


def _any_of(written):
    return "|".join(f"(?P<{name}>{pattern})" for name, pattern in written)


# Every one of HEADINGS has some.
_LETTER = re.compile(r"[^\W\d_]")
_IN_BRACKETS = re.compile(rf"[(\[]\s*(?:{_any_of(_WRITTEN)})\.?(?!\w)[^)\]]*[)\]]", re.IGNORECASE)
# Without brackets 'in' and 'mi' are more often words.
_AT_END = re.compile(rf"(?<=[^\W_]|[\s.)])[\s_,.\-/]+(?:{_any_of(_WRITTEN[:5])})\.?\s*$", re.IGNORECASE)


def unit_in_heading(text):
    """The unit that a heading or a field's name tells: 'metre', 'foot', 'us_foot', or one that heights are not read in
    ('mm', 'cm', 'inch', 'km', 'mile'); '' for none.

    It stands in brackets, 'Elev (ft)', or last after a blank or an underscore, 'height_ft'. 'ft' alone is 'foot'.
    """
    for pattern in (_IN_BRACKETS, _AT_END):
        found = pattern.search(text)
        if found:
            return found.lastgroup
    return ""


def plain_heading(text):
    """A heading's words: small letters, without what stands in brackets, the unit and marks around them."""
    words = re.split(r"[(\[]", text.strip())[0]
    words = _AT_END.sub("", words)
    return " ".join(words.lower().replace("_", " ").split()).strip(" :.*")


def column_kind(text):
    """Which of HEADINGS ('station', 'offset', 'height', 'axis', 'undulation') a heading means, '' for none; its unit
    does not matter."""
    if not _LETTER.search(text):
        return ""  # a reading: by far the most cells of a long list
    words = plain_heading(text)
    return next((kind for kind, names in HEADINGS.items() if words in names), "")


def columns_of(headings, kind):
    """Indices of the columns that mean ``kind``, [] for none: those of the word that stands first in HEADINGS.

    ``headings``: of each column, a tuple of what it is called (name, alias).
    """
    plain = [{plain_heading(text) for text in texts} for texts in headings]
    for word in HEADINGS[kind]:
        found = [number for number, words in enumerate(plain) if word in words]
        if found:
            return found
    return []


def units_agree(one, other):
    """Whether two units may be the same: equal, one of them not told (''), or 'ft' written for US survey feet."""
    return not one or not other or one == other or {one, other} == {"foot", "us_foot"}
