"""Whole jobs in a made-up language: no word that layers store reaches a person as it is stored."""

import importlib
import re

import pytest

qgis_core = pytest.importorskip("qgis.core")

# Nobody's language: every vowel of a translated text gets two dots, so that a plain word was not translated.
_DOTTED = str.maketrans("aeiouAEIOU", "äëïöüÄËÏÖÜ")
_KEPT = re.compile(r"(\{[^}]*\}|<[^>]*>|&\w+;)")


def dotted(_context, text):
    return "".join(k if _KEPT.fullmatch(k) else k.translate(_DOTTED) for k in _KEPT.split(text))


def module(name):
    return importlib.import_module(f"tautline.algorithms.{name}")


@pytest.fixture
def foreign():
    translation = module("language.translation")
    before = translation._TRANSLATE[0], translation.language(), translation.decimal_sign()
    translation.speak_by(dotted, "de", ",")
    yield
    translation.speak_by(*before)


def stored_words():
    words = module("language.stored_words")
    found = {word for field in words._WORDS for word in words._WORDS[field]}
    return found | {"raise", "lower", "neither"}


RAW = re.compile(r"(?<![\w.='/-])(" + "|".join(sorted(stored_words(), key=len, reverse=True)) + r")(?![\w.='/-])")


def raw_words(text):
    """Stored words in what a person reads; commands, pictures and what stands in quotes are to be as they are."""
    for part in (r"<(style|script|pre|code|svg)\b.*?</\1>", r"<[^>]*>", r"(?<!\w)'[^'\n]{1,80}'"):
        text = re.sub(part, " ", text, flags=re.DOTALL)
    return [text[max(m.start() - 40, 0) : m.end() + 20].replace("\n", " ") for m in RAW.finditer(text)]


def shown(place):
    """What labels, legend and tips of a stored layer say of its features."""
    layer = qgis_core.QgsVectorLayer(place, "layer", "ogr")
    layer.loadDefaultStyle()
    texts = [item.label() for item in layer.renderer().legendSymbolItems()] if layer.renderer() else []
    tip = layer.mapTipTemplate()
    rules = layer.labeling().rootRule().descendants() if layer.labeling() else []
    labels = [qgis_core.QgsExpression(rule.settings().fieldName) for rule in rules if rule.settings()]
    for feature in layer.getFeatures():
        context = layer.createExpressionContext()
        context.setFeature(feature)
        texts.append(qgis_core.QgsExpression.replaceExpressionText(tip, context))
        texts += [str(label.evaluate(context)) for label in labels]
    assert tip
    return texts


def structure(toolbox, tmp_path):
    """Stations on a bent bridge, some of them high, low, unread, off axis, and moved to the side; a later survey."""
    place = {name: str(tmp_path / f"{name}.gpkg") for name in ("placed", "later", "designed", "tested", "reference")}
    heights = [50.0 + 0.002 * (k % 5) for k in range(31)]
    heights[7], heights[20] = 50.2, 49.9
    offsets = [0.001 * (k % 4) for k in range(31)]
    offsets[12], offsets[25] = 0.08, -0.08
    rows = [
        {"station": f"{k // 10}+{100 * (k % 10):03d}", "height": h if k != 15 else None, "offset": o}
        for k, (h, o) in enumerate(zip(heights, offsets))
    ]
    later = [dict(row) for row in rows]
    later[9]["height"] += 0.05
    axis = toolbox.lines([{"at": [(500000.0, 5540000.0), (503100.0, 5540000.0)], "name": "A1"}], "EPSG:32631")
    for name, some in (("placed", rows), ("later", later)):
        toolbox.run("placestations", INPUT=toolbox.table(some), AXIS=axis, OUTPUT=place[name])
    return axis, place


def test_no_page_sheet_or_tip_shows_a_word_as_it_is_stored(toolbox, tmp_path, foreign):
    axis, place = structure(toolbox, tmp_path)
    page = {name: str(tmp_path / f"{name}.html") for name in ("shape", "sheet", "set_out", "change", "report", "net")}
    given = {"STATIONS": place["placed"], "AXIS": axis}
    toolbox.run("designheights", **given, TOLERANCE=0.01, LINE="fitted", LINE_TOLERANCE=0.02, OUTPUT=place["designed"])
    toolbox.run(
        "fitreference", **given, SIGMA=0.003, LINE="fitted", OUTPUT=place["tested"], REFERENCE=place["reference"]
    )
    toolbox.run("testcurvature", **given, SIGMA=0.003, HTML=page["shape"])
    schedule, change = str(tmp_path / "schedule.gpkg"), str(tmp_path / "change.gpkg")
    toolbox.run(
        "scheduleadjustments",
        STATIONS=place["designed"],
        TESTED=place["tested"],
        LINE="lateral",
        LIMIT=0.05,
        OUTPUT=schedule,
        SHEET=page["sheet"],
        SETOUT=page["set_out"],
    )
    toolbox.run(
        "comparesurveys",
        SURVEYS=[place["placed"], place["later"]],
        DATES="2024-01-01; 2025-01-01",
        SIGMA=0.003,
        OUTPUT=change,
        REPORT=page["change"],
    )
    toolbox.run(
        "reviewreport",
        OUTPUT=None,
        STATIONS=place["designed"],
        TESTED=place["tested"],
        REFERENCE=place["reference"],
        AXIS=axis,
        HTML=page["report"],
    )
    net = [("P1", "P2", 1.0), ("P2", "P3", 1.2), ("P3", "P1", -2.25), ("P3", "P4", 0.5), ("P8", "P9", 0.3)]
    lines, points = str(tmp_path / "lines.gpkg"), str(tmp_path / "points.gpkg")
    toolbox.run(
        "adjustlevelling",
        INPUT=toolbox.table([{"from_pt": a, "to_pt": b, "dh": dh, "length": 900.0, "sd": 0.001} for a, b, dh in net]),
        BENCHMARKS=toolbox.table([{"name": "P1", "height": 10.0}]),
        LIMIT_FACTOR=4.0,
        OUTPUT=points,
        LINES=lines,
        SUMMARY=page["net"],
    )
    found = {}
    for name, path in page.items():
        with open(path, encoding="utf-8") as file:
            found[name] = raw_words(file.read())
    for layer in (place["designed"], place["tested"], place["reference"], schedule, change):
        found[layer] = [words for text in shown(layer) for words in raw_words(text)]
    assert {name: words for name, words in found.items() if words} == {}


def test_map_tips_show_the_words_that_tables_show(host, foreign):
    words, wording = module("language.stored_words"), module("styles.wording")
    for name in ("status", "side", "flag", "lat_verd", "role", "after"):
        layer = qgis_core.QgsVectorLayer(f"NoGeometry?field={name}:string", "layer", "memory")
        context, feature = layer.createExpressionContext(), qgis_core.QgsFeature(layer.fields())
        for stored in (*words.words_of(name), "never heard of", "O'Hara"):
            feature[name] = stored
            context.setFeature(feature)
            expression = qgis_core.QgsExpression(wording.word(layer.fields(), name))
            assert expression.evaluate(context) == words.stored_text(name, stored)
        assert wording.word(layer.fields(), "nothing") == "NULL" if name != "nothing" else True
