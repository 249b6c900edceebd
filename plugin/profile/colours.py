"""Colours of the chart: from the window's palette, so that a dark theme gets a dark chart; print is always light."""

from dataclasses import dataclass

from qgis.PyQt.QtGui import QColor, QPalette

from ...algorithms.styles.palette import BAND, BUILT, CHOSEN, HIGH, INK, LOW, PAPER, WITHIN


@dataclass(frozen=True)
class Colours:
    """Colours as matplotlib takes them, of frame, text and marks; ``is_dark``: the ground, which says the variant of
    the lines too; ``size`` of the text in points."""

    back: str
    text: str
    faint: str
    grid: str
    is_dark: bool
    band: str
    built: str
    high: str
    low: str
    within: str
    edge: str
    chosen: str
    size: float = 9.0

    @property
    def band_edge(self):
        """How the limits of the tolerance are drawn: the band alone is too pale to be seen by everybody."""
        return {"color": self.within, "linewidth": 0.8}


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


def ground_and_text(palette):
    """Ground and text of a QPalette; some themes leave the text of one role as dark as its ground."""
    roles = QPalette.ColorRole
    back = palette.color(roles.Base)
    text = max(
        (palette.color(role) for role in (roles.Text, roles.WindowText, roles.ButtonText)),
        key=lambda one: _contrast(one, back),
    )
    if _contrast(text, back) < 100:
        text = QColor(BUILT.on(back.lightness() < 128))
    return back, text


def look_of(palette, size):
    """The Look that fits a QPalette; ``size``: points of the window's own text."""
    back, text = ground_and_text(palette)
    is_dark = text.lightness() > back.lightness()
    return Colours(
        back=_hex(back),
        text=_hex(text),
        faint=_mixed(back, text, 0.72),
        grid=_mixed(back, text, 0.14),
        is_dark=is_dark,
        band=BAND.on(is_dark),
        built=BUILT.on(is_dark),
        high=HIGH.on(is_dark),
        low=LOW.on(is_dark),
        within=WITHIN.on(is_dark),
        edge=_hex(back) if is_dark else INK,
        chosen=CHOSEN.on(is_dark),
        size=size,
    )


def print_look(size):
    """The Look of exported files: dark on white whatever the theme."""
    palette = QPalette()
    palette.setColor(QPalette.ColorRole.Base, QColor(PAPER))
    palette.setColor(QPalette.ColorRole.Text, QColor(INK))
    return look_of(palette, size)
