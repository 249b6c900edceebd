"""One colour and dash for each thing: told apart on their grounds and by colour-blind eyes, and told nowhere else."""

import colorsys
import importlib.util
import itertools
import pathlib
import re

import numpy as np
import pytest

ROOT = pathlib.Path(__file__).resolve().parents[1]
PALETTE = ROOT / "algorithms" / "styles" / "palette.py"
_SPEC = importlib.util.spec_from_file_location("palette_alone", PALETTE)
palette = importlib.util.module_from_spec(_SPEC)
_SPEC.loader.exec_module(palette)  # alone: it knows no host

LOOKS = {name: look for name, look in vars(palette).items() if isinstance(look, palette.Look)}
LINES = {name: LOOKS[name] for name in ("DESIGN", "LEVEL", "FLAT", "BUILT", "GRADE", "FREE")}
GROUNDS = {False: "#ffffff", True: "#232629"}
# Frames of the report's map, which mean nothing.
ALLOWED = {"algorithms/report/map.py": {"#ececf0", "#45454d"}}
HEX = re.compile(r"#[0-9a-fA-F]{6}\b")
# Of linear RGB, at full strength.
# Source: Machado, Oliveira and Fernandes (2009), table of the supplement (from memory).
BLIND = {
    "none": np.eye(3),
    "protan": np.array(
        [[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216], [-0.003882, -0.048116, 1.051998]]
    ),
    "deutan": np.array(
        [[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413], [-0.011820, 0.042940, 0.968881]]
    ),
}
NEUTRAL = {palette.UNJUDGED.light, palette.UNJUDGED.dark}  # greys, of tables too


def rgb(name):
    return np.array([int(name[k : k + 2], 16) / 255.0 for k in (1, 3, 5)])


def linear(name):
    value = rgb(name)
    return np.where(value <= 0.04045, value / 12.92, ((value + 0.055) / 1.055) ** 2.4)


def contrast(one, other):
    """Ratio of luminances as WCAG 2 defines it."""
    low, high = sorted(float(linear(name) @ (0.2126, 0.7152, 0.0722)) for name in (one, other))
    return (high + 0.05) / (low + 0.05)


def lab(color):
    """CIELAB of linear sRGB, white D65."""
    xyz = np.array([[0.4124, 0.3576, 0.1805], [0.2126, 0.7152, 0.0722], [0.0193, 0.1192, 0.9505]]) @ color
    f = [t ** (1 / 3) if t > (6 / 29) ** 3 else t / (3 * (6 / 29) ** 2) + 4 / 29 for t in xyz / (0.9505, 1.0, 1.089)]
    return np.array([116 * f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2])])


def test_dashes_tell_the_lines_apart():
    """In grey too: one is solid, the others differ in what a period looks like."""
    assert len({look.dash for look in LINES.values()}) == len(LINES) and LOOKS["DESIGN"].dash == ()
    dashed = [np.array(LOOKS[name].dash) for name in ("LEVEL", "FLAT", "BUILT")]
    for one, other in itertools.combinations(dashed, 2):
        assert len(one) != len(other) or one.max() > 2.0 * other.max() or other.max() > 2.0 * one.max()
    assert all(len(look.dash) % 2 == 0 and min(look.dash, default=1.0) > 0.0 for look in LOOKS.values())
    # The line is dashed otherwise than any line of heights.
    assert palette.LINE.dash not in {look.dash for look in LINES.values()}
    assert len({look.dash for look in palette.SURVEYS}) == len({look.light for look in palette.SURVEYS}) == 7


@pytest.mark.parametrize("is_dark", GROUNDS)
@pytest.mark.parametrize("name", [*LINES, "HIGH", "LOW", "WITHIN", "SUSPECT", "LINE"])
def test_seen_on_its_ground(name, is_dark):
    assert contrast(LOOKS[name].on(is_dark), GROUNDS[is_dark]) >= 3.0


@pytest.mark.parametrize("eyes", BLIND)
@pytest.mark.parametrize("is_dark", GROUNDS)
@pytest.mark.parametrize(
    "names", (("DESIGN", "LEVEL", "FLAT", "BUILT"), ("HIGH", "LOW", "WITHIN", "LINE")), ids="-".join
)
def test_colours_stay_apart(names, is_dark, eyes):
    """By 12 units of CIELAB; two are told apart from about 2."""
    seen = {name: lab(np.clip(BLIND[eyes] @ linear(LOOKS[name].on(is_dark)), 0.0, 1.0)) for name in names}
    for one, other in itertools.combinations(names, 2):
        assert np.linalg.norm(seen[one] - seen[other]) > 12.0, (one, other)


def is_of(name, low, high):
    hue, _light, saturation = colorsys.rgb_to_hls(*rgb(name))
    return low <= 360.0 * hue <= high and saturation > 0.35


def test_orange_and_blue_are_for_high_and_low_alone():
    assert all(is_of(name, 15, 40) for name in (palette.HIGH.light, palette.HIGH.dark))
    assert all(is_of(name, 195, 240) for name in (palette.LOW.light, palette.LOW.dark))
    others = [look for name, look in LOOKS.items() if name not in ("HIGH", "LOW")] + list(palette.SURVEYS)
    for name in (name for look in others for name in (look.light, look.dark)):
        assert not is_of(name, 15, 40) and not is_of(name, 195, 240), name


def test_only_the_palette_has_colours():
    """A file with a colour of its own would drift from the rest; paper and ink of pages stand in their style sheets."""
    found = {}
    for folder in ("algorithms", "plugin"):
        for path in sorted((ROOT / folder).rglob("*.py")):
            inside = path.relative_to(ROOT).as_posix()
            if path != PALETTE and not inside.startswith("algorithms/documents/"):
                found[inside] = {name.lower() for name in HEX.findall(path.read_text(encoding="utf-8"))}
    own = {inside: names - ALLOWED.get(inside, set()) for inside, names in found.items()}
    assert len(found) > 100 and not {inside: names for inside, names in own.items() if names}


def test_style_sheets_do_not_say_high_and_low():
    things = {look.on(is_dark) for look in LOOKS.values() for is_dark in GROUNDS} - {palette.INK}
    for path in (ROOT / "algorithms" / "documents").glob("*.py"):
        assert not things & {name.lower() for name in HEX.findall(path.read_text(encoding="utf-8"))} - NEUTRAL, path
