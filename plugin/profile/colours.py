"""Colours of the chart: from the window's palette, so that a dark theme gets a dark chart; print is always light."""

from dataclasses import dataclass

from qgis.PyQt.QtGui import QColor, QPalette

from ...algorithms.styles.review_symbols import HIGH, LOW


@dataclass(frozen=True)
class Colours:
    """Colours as matplotlib takes them; ``size`` of the text in points."""

    back: str
    text: str
    faint: str
    grid: str
    design: str
    flat: str
    level: str
    band: str
    built: str
    high: str
    low: str
    within: str
    edge: str
    chosen: str
    size: float = 9.0


def _hex(colour):
    return colour.name()


def _mixed(one, other, share):
    """A colour between two, ``share`` of the second."""
    parts = [
        round(a + (b - a) * share)
        for a, b in zip((one.red(), one.green(), one.blue()), (other.red(), other.green(), other.blue()))
    ]
    return "#{:02x}{:02x}{:02x}".format(*parts)


def _contrast(one, other):
    return abs(one.lightness() - other.lightness())


def _ground_and_text(palette):
    """Ground and text of a QPalette; some themes leave the text of one role as dark as its ground."""
    roles = QPalette.ColorRole
    back = palette.color(roles.Base)
    text = max(
        (palette.color(role) for role in (roles.Text, roles.WindowText, roles.ButtonText)),
        key=lambda one: _contrast(one, back),
    )
    if _contrast(text, back) < 100:
        text = QColor("#e6e6e6" if back.lightness() < 128 else "#1b1b1f")
    return back, text


def look_of(palette, size):
    """The Look that fits a QPalette; ``size``: points of the window's own text."""
    back, text = _ground_and_text(palette)
    shades = {
        "back": _hex(back),
        "text": _hex(text),
        "faint": _mixed(back, text, 0.72),
        "grid": _mixed(back, text, 0.14),
        "built": _mixed(back, text, 0.85),
        "high": _hex(HIGH),
        "low": _hex(LOW),
        "size": size,
    }
    if text.lightness() > back.lightness():
        return Colours(
            **shades,
            design="#d7a6ff",
            flat="#e3b95f",
            level="#7fc4e8",
            band="#3f5d56",
            within="#5fc4ae",
            edge=_hex(back),
            chosen="#ffe14d",
        )
    return Colours(
        **shades,
        design="#7b2fb8",
        flat="#96690a",
        level="#1f6f9c",
        band="#d3ebe5",
        within="#2f9d85",
        edge="#1b1b1f",
        chosen="#d4007a",
    )


def print_look(size):
    """The Look of exported files: dark on white whatever the theme."""
    palette = QPalette()
    palette.setColor(QPalette.ColorRole.Base, QColor("#ffffff"))
    palette.setColor(QPalette.ColorRole.Text, QColor("#1b1b1f"))
    return look_of(palette, size)
