"""Stations before the origin: a true minus where people read, the hyphen in fields and tables, which are read again."""

import pathlib
import re

import pytest

qgis_core = pytest.importorskip("qgis.core")

HYPHEN, MINUS = re.compile(r"(?<![\w.])-\d+\+"), "−0+"


@pytest.fixture
def chain(toolbox, tmp_path):
    """(axis, residuals, what the runs have said): ten stations, five of them before the origin."""
    axis = toolbox.saved(toolbox.straight()[1], tmp_path / "axis.gpkg")
    rows = [
        {"station": f"{'-' if k < 0 else ''}0+{abs(k):03d}", "height": 50.0 + (0.05 if k == -90 else 0.001 * (k % 7))}
        for k in range(-90, 100, 20)
    ]
    placed = toolbox.run("placestations", INPUT=toolbox.table(rows), AXIS=axis, OUTPUT=str(tmp_path / "placed.gpkg"))
    given = {"STATIONS": placed.layer(), "AXIS": axis, "TOLERANCE": 0.01, "LINE": "chord", "SUMMARY": "memory:"}
    made = toolbox.run("designheights", OUTPUT=str(tmp_path / "made.gpkg"), **given)
    return axis, made, placed.said + made.said


def test_fields_keep_the_hyphen_and_sentences_have_a_minus(chain):
    _, made, said = chain
    assert made.column("station")[:2] == ["-0+090", "-0+070"], "what other software reads"
    assert made.column("max_at", "SUMMARY") == ["-0+070"]
    assert MINUS in said and not HYPHEN.search(said)


def test_labels_and_tips_have_a_minus(chain):
    layer = chain[1].layer()
    layer.loadDefaultStyle()
    context = layer.createExpressionContext()
    context.setFeature(next(layer.getFeatures()))
    tip = qgis_core.QgsExpression.replaceExpressionText(layer.mapTipTemplate(), context)
    rule = layer.labeling().rootRule().children()[0]
    label = str(qgis_core.QgsExpression(rule.settings().fieldName).evaluate(context))
    for text in (tip, label):
        assert MINUS + "090" in text and not HYPHEN.search(text)


@pytest.mark.parametrize("entry", ["reviewreport", "scheduleadjustments", "comparesurveys", "fitreference"])
def test_pages_and_logs_have_a_minus(toolbox, chain, tmp_path, entry):
    axis, made, _ = chain
    layer, page = made.layer(), str(tmp_path / "page.html")
    if entry == "comparesurveys":
        copy = toolbox.saved(layer, tmp_path / "copy.gpkg")
        given = {"SURVEYS": [layer, copy], "REPORT": page, "MATCH": "name"}
    else:
        given = {"STATIONS": layer}
    if entry == "reviewreport":
        given.update(HTML=page, OUTPUT=None)
    if entry == "scheduleadjustments":
        given.update(SHEET=page, CSV=str(tmp_path / "s.csv"), TOLERANCE=0.01)
    if entry == "fitreference":
        given.update(AXIS=axis, SIGMA=0.001, REFERENCE="memory:")
    run = toolbox.run(entry, **given)
    text = run.said
    if pathlib.Path(page).exists():
        text += re.sub(r"<(style|script).*?</\1>", "", pathlib.Path(page).read_text("utf-8"), flags=re.DOTALL)
    assert MINUS in text and not HYPHEN.search(text), HYPHEN.search(text)
    if entry == "scheduleadjustments":
        # A table for spreadsheets: a text, and not a sum.
        assert "'-0+090" in (tmp_path / "s.csv").read_text("utf-8-sig")
    if entry != "reviewreport":
        assert "−" not in "".join(str(row.get("station", "")) for row in run.rows())
