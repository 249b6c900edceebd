"""What is told apart on the map is told apart without its colours: by shape, direction, dash, width or lightness."""

import itertools

import pytest

qgis_core = pytest.importorskip("qgis.core")

from tautline.algorithms.styles import (  # noqa: E402 - needs the host
    bar_strokes,
    change_look,
    lateral_strokes,
    level_lines,
    reference_marks,
    review_symbols,
    schedule_look,
)

FIELDS = {
    "review": ("status", "residual"),
    "change": ("verdict", "change"),
    "schedule": ("action", "move", "after"),
    "lines": ("w", "flag"),
    "heights": ("role",),
    "fitted": ("flag",),
    "bars": ("status", "residual", "cut"),
    "lateral": ("side", "lateral", "cut"),
}
VALUES = {
    "status": ("high", "low", "within", "no tolerance", "no height", "off axis"),
    "verdict": ("risen", "settled", "possible", "not significant", "no sd"),
    "action": ("raise", "lower", "keep", "measure again", "left out", "no height", "off axis"),
    "side": ("left", "right", "within", "no tolerance"),
}
# Of a bar and of what moves to a side the direction itself says which; nothing else is drawn alike.
ALIKE = {"bars": [{"high", "low", "no tolerance"}], "lateral": [{"left", "right"}]}


def layer_of(name):
    geometry = "LineString" if name in ("lines", "bars", "lateral") else "Point"
    fields = "&".join(
        f"field={field}:{'string' if field in (*VALUES, 'flag', 'after', 'role') else 'double'}"
        for field in FIELDS[name]
    )
    layer = qgis_core.QgsVectorLayer(f"{geometry}?crs=EPSG:32631&{fields}", name, "memory")
    rows = []
    for value in VALUES.get(FIELDS[name][0], ("",)):
        row = qgis_core.QgsFeature(layer.fields())
        row[FIELDS[name][0]] = value
        rows.append(row)
    layer.dataProvider().addFeatures(rows)
    return layer


def looks_of(name):
    """[(label, filter, what is drawn)] of every rule; the renderer owns them, and lives as long as they are read."""
    layer = layer_of(name)
    renderer = {
        "review": lambda: review_symbols.review_renderer(layer, 0.01, 0.05),
        "change": lambda: change_look.change_renderer(layer),
        "schedule": lambda: schedule_look.schedule_renderer(layer),
        "lines": lambda: level_lines.line_renderer(layer.fields()),
        "heights": lambda: level_lines.height_renderer(layer.fields()),
        "fitted": lambda: reference_marks.fitted_renderer(layer.fields()),
        "bars": lambda: bar_strokes.bar_renderer(layer, "Residuals", True),
        "lateral": lambda: lateral_strokes.lateral_renderer(layer, "Lateral"),
    }[name]()
    return [(rule.label(), rule.filterExpression(), drawn(rule.symbol())) for rule in leaves(renderer.rootRule())]


def leaves(rule):
    return [one for child in rule.children() for one in (leaves(child) if child.children() else [child])]


def drawn(symbol):
    """A symbol without its colours: (shape, direction, dash, width or size, whether it is white, open, or else)."""
    found = []
    for part in symbol.symbolLayers():
        if isinstance(part, qgis_core.QgsSimpleMarkerSymbolLayer):
            color = part.color()
            fill = "open" if color.alpha() == 0 else "white" if color.lightness() > 240 else "filled"
            found.append((part.shape(), round(part.angle()) % 360, fill, part.size() > 2.5))
        elif isinstance(part, qgis_core.QgsSimpleLineSymbolLayer):
            dash = tuple(part.customDashVector()) if part.useCustomDashPattern() else ()
            found.append((part.penStyle(), dash, round(part.width(), 2)))
        elif part.subSymbol() is not None:
            found.append(drawn(part.subSymbol()))
    return tuple(found)


@pytest.mark.parametrize("name", FIELDS)
def test_told_apart_without_colour(host, name):
    looks = looks_of(name)
    assert len(looks) >= 4
    for (one, test, look), (other, another, twin) in itertools.combinations(looks, 2):
        alike = any(
            any(f"'{word}'" in test for word in words) and any(f"'{word}'" in another for word in words)
            for words in ALIKE.get(name, ())
        )
        assert look != twin or alike, (one, other)


def test_high_points_up_and_low_down_without_a_tolerance_too(host):
    """And a spot in the middle tells those that were not judged."""
    found = {label: look for label, _, look in looks_of("review")}
    shape = qgis_core.QgsSimpleMarkerSymbolLayerBase.Shape.EquilateralTriangle
    for label, angle, layers in (
        ("High: above the tolerance", 0, 2),
        ("Low: below the tolerance", 180, 2),
        ("Built high, no tolerance", 0, 3),
        ("Built low, no tolerance", 180, 3),
    ):
        assert found[label][1][:2] == (shape, angle) and len(found[label]) == layers
