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
SURVEYS = {f"SURVEYS {number}": look for number, look in enumerate(palette.SURVEYS)}
# Blunders stand as stars on the map, the other two are told on pages: none of them lies on the band of the tolerance.
NOT_ON_THE_BAND = {"SUSPECT", "UNCHANGED", "NOTICE", *SURVEYS}
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
@pytest.mark.parametrize("name", [name for name in {**LOOKS, **SURVEYS} if name != "BAND"])
def test_marks_are_seen_on_their_grounds(name, is_dark):
    """Ratio 3 (WCAG 2.1, 1.4.11) on charts and windows, bright and dark, and on the band of the tolerance."""
    grounds = {False: ("#ffffff", "#efefef", palette.SIDEWAYS), True: ("#232629", "#222222", "#323232")}[is_dark]
    band = () if name in NOT_ON_THE_BAND else (palette.BAND.on(is_dark),)
    for ground in (*grounds, *band):
        assert contrast({**LOOKS, **SURVEYS}[name].on(is_dark), ground) >= 3.0, ground


def test_ink_is_read_where_there_is_a_ground_below_it():
    """Ratio 4.5 (WCAG 2.1, 1.4.3): on paper, on tinted charts, and in the bar of 'What if'."""
    for ground in (palette.PAPER, palette.SIDEWAYS, palette.BAND.light, palette.NOTICE.dark):
        assert contrast(palette.INK, ground) >= 4.5
    assert contrast(palette.PANEL_INK, palette.PAPER) >= 4.5


def declared(sheet, name):
    """Colours that the rules of a style sheet give for a property, and what stands in its place where it is short."""
    found = re.findall(rf"(?<![-\w]){name}:[^;}}]*?(#[0-9a-fA-F]{{6}}|#[0-9a-fA-F]{{3}})\b", sheet)
    return {"#" + "".join(2 * digit for digit in one[1:]) if len(one) == 4 else one.lower() for one in found}


def test_pages_can_be_read():
    """Any text of the pages on any ground of theirs; the report is light in both themes."""
    sheet = (ROOT / "algorithms" / "documents" / "templates" / "page.css").read_text(encoding="utf-8")
    texts, grounds = declared(sheet, "color"), declared(sheet, "background")
    assert len(texts) >= 3 and len(grounds) >= 5 and "color-scheme: light;" in sheet
    assert min(contrast(text, ground) for text in texts for ground in grounds) >= 4.5
    marks = {one for side in ("border", "border-left", "border-top", "outline") for one in declared(sheet, side)}
    assert len(marks) >= 3 and min(contrast(mark, "#ffffff") for mark in marks) >= 3.0


def test_the_guide_can_be_read_in_both_themes():
    sheet = (ROOT / "plugin" / "guide" / "guide.css").read_text(encoding="utf-8")
    themes = [dict(re.findall(r"--(\w+): (#[0-9a-f]{6})", part)) for part in re.findall(r":root {([^}]*)}", sheet)]
    assert len(themes) == 2 and themes[0].keys() == themes[1].keys() == {
        "text",
        "quiet",
        "ground",
        "shade",
        "line",
        "link",
    }
    assert set(re.findall(r"color: ([^;}]+)", sheet)) == {"var(--text)", "var(--quiet)", "var(--link)"}
    for one in themes:
        for ground in (one["ground"], one["shade"]):
            assert min(contrast(one[name], ground) for name in ("text", "quiet", "link")) >= 4.5
            assert contrast(one["line"], ground) >= 3.0


def test_paper_can_be_read():
    pages, tables, whole = (
        (ROOT / "algorithms" / "documents" / name).read_text(encoding="utf-8")
        for name in ("pdf_pages.py", "pdf_tables.py", "pdf.py")
    )
    ink, quiet = re.search(r'INK, QUIET = "(#\w+)", "(#\w+)"', pages).groups()
    grid = re.search(r'_GRID = "(#\w+)"', tables)[1]
    grounds = ({*HEX.findall(tables)} - {grid}) | {"#ffffff", *re.findall(r'"(#f\w+)"', whole)}
    assert len(grounds) >= 4 and min(contrast(text, ground) for text in (ink, quiet) for ground in grounds) >= 4.5
    assert contrast(grid, "#ffffff") >= 3.0


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
