"""Colours of the profile follow the window's: whatever the theme, text and marks stand out from their ground."""

import importlib

import pytest

pytest.importorskip("qgis.core")

# Ground and text of the host's windows: its own bright theme, its dark one (whose style sheet leaves some roles as they
# are), one in grey, and a theme with dark text on a dark ground.
THEMES = {
    "bright": ("#ffffff", "#000000"),
    "grey": ("#efefef", "#1b1b1f"),
    "dark": ("#222222", "#aaaaaa"),
    "window": ("#323232", "#dddddd"),
    "unreadable": ("#222222", "#111111"),
}


def luminance(name):
    """Relative luminance as WCAG 2.1 defines it."""
    parts = [int(name[k : k + 2], 16) / 255.0 for k in (1, 3, 5)]
    linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one, other):
    low, high = sorted(map(luminance, (one, other)))
    return (high + 0.05) / (low + 0.05)


@pytest.mark.parametrize("theme", THEMES)
def test_text_and_marks_stand_out(host, theme):
    from qgis.PyQt.QtGui import QColor, QPalette

    colours = importlib.import_module("tautline.plugin.profile.colours")
    palette, roles = QPalette(), QPalette.ColorRole
    ground, text = THEMES[theme]
    palette.setColor(roles.Base, QColor(ground))
    for role in (roles.Text, roles.WindowText, roles.ButtonText):
        palette.setColor(role, QColor(text))
    look = colours.look_of(palette, 9.0)
    assert look.back == ground and look.is_dark == (theme in ("dark", "window", "unreadable"))
    assert contrast(look.text, look.back) >= 4.5
    for mark in (look.faint, look.built, look.high, look.low, look.within, look.chosen):
        assert contrast(mark, look.back) >= 3.0, mark
    for mark in (look.built, look.high, look.low, look.within, look.text):
        assert contrast(mark, look.band) >= 3.0, mark
