"""The layers of a report's map, made anew for it: those of the project live in another thread."""

import math

import numpy as np
from qgis.core import (
    QgsCoordinateTransform,
    QgsCsException,
    QgsFeature,
    QgsFeatureRequest,
    QgsGeometry,
    QgsLineSymbol,
    QgsPalLayerSettings,
    QgsPointXY,
    QgsRasterLayer,
    QgsRuleBasedRenderer,
    QgsSimpleLineSymbolLayer,
    QgsSingleSymbolRenderer,
    QgsVectorLayer,
    QgsWkbTypes,
)
from qgis.PyQt.QtGui import QColor

from ..boundary.tables import UNCHECKED, check_geometry
from ..core.errors import InputError
from ..core.residuals import ASIDE
from ..language.translation import tr
from ..styles import layer_kinds, palette
from ..styles.markers import Shape, marker

_MOST_NAMED, _MOST_SYMBOLS_KEPT_FREE = 40, 400
_GREATEST, _END = 1, 2
_FARTHEST = 1e8


def _on_a_map(x, y):
    """Whether coordinates can be drawn: the oldest host writes beyond its memory where a transformation makes them
    infinite. No place on the Earth is as far as the bound."""
    return math.isfinite(x) and math.isfinite(y) and max(abs(x), abs(y)) < _FARTHEST


def stations_layer(found):
    """The stations as a layer of its own, dressed like the result of the run."""
    one = found.reviewed
    fields = "&".join(
        f"field={name}"
        for name in (
            "axis:string",
            "station:string",
            "residual:double",
            "status:string",
            "named:integer",
            "label:string",
            "beside:integer",
        )
    )
    layer = QgsVectorLayer(f"Point?{fields}", "stations", "memory")
    layer.setCrs(one.points.crs)
    named, beside, features = _named(one), beside_line(one), []
    for row, k in enumerate(one.order.tolist()):
        feature = QgsFeature(layer.fields())
        value = float(one.residual[row]) / one.units.height
        known = math.isfinite(value)
        label = one.station[row] + (
            f"\n{found.amounts.with_unit(one.residual[row], True)}" if named.get(row) == _GREATEST and known else ""
        )
        feature.setAttributes(
            [
                one.axis[row][:80],
                one.station[row][:80],
                value if known else None,
                str(one.status[row])[:80],
                named.get(row, 0),
                label[:120],
                int(beside[row]),
            ]
        )
        x, y = float(one.points.x[k]), float(one.points.y[k])
        if _on_a_map(x, y):
            feature.setGeometry(QgsGeometry.fromPointXY(QgsPointXY(x, y)))
        features.append(feature)
    layer.dataProvider().addFeatures(features)
    layer.updateExtents()
    known = one.tolerance[np.isfinite(one.tolerance)]
    layer_kinds.dress(
        layer,
        layer_kinds.StyleSpec(
            "stations_review",
            tr("Residuals"),
            one.units.height_name,
            one.units.chainage_name,
            float(known.max()) / one.units.height if len(known) else None,
        ),
    )
    _name(layer)
    if beside.any():
        _mark_line(layer)
    return layer


def beside_line(one):
    """Mask (n,) of the reviewed stations beyond the tolerance of the line."""
    return np.zeros(len(one.order), bool) if one.line is None else np.isin(one.line.side.astype(str), ASIDE)


def _mark_line(layer):
    """A square in the colour of the line around each station beyond its tolerance, whatever its height: to which side
    and how far, the report's chart and tables tell."""
    symbol = marker(Shape.Square, 5.4, outline=0.6, halo=0.4)
    symbol.symbolLayer(1).setStrokeColor(QColor(palette.LINE.light))
    layer.renderer().rootRule().appendChild(
        QgsRuleBasedRenderer.Rule(symbol, filterExp='"beside" = 1', label=beside_line_text())
    )


def beside_line_text():
    """What the square on the map says."""
    return tr("Beyond the tolerance of the line")


def _named(one):
    """{row: which label}: the greatest residuals, and the ends of every axis by their station alone."""
    size = np.nan_to_num(np.abs(one.residual))
    greatest = np.argsort(-size, kind="stable")[:_MOST_NAMED]
    by_axis = [one.rows(axis).tolist() for axis in one.axes]
    ends = [row for rows in by_axis for row in (*rows[:1], *rows[-1:])]
    beyond = np.isin(one.status.astype(str), ("high", "low"))
    beyond |= (one.status == "no tolerance") & (size >= 0.5 * size.max())
    return {**dict.fromkeys(ends[:_MOST_NAMED], _END), **{row: _GREATEST for row in greatest.tolist() if beyond[row]}}


def _name(layer):
    """Labels at every scale: it is for those that are out of tolerance that the map is made."""
    notable, ends, silent, worst = layer.labeling().rootRule().children()
    worst.setActive(False)
    for rule, which in ((notable, _GREATEST), (ends, _END)):
        settings = QgsPalLayerSettings(rule.settings())
        settings.fieldName = '"label"'
        rule.setSettings(settings)
        rule.setMinimumScale(0.0)
        rule.setFilterExpression(
            f'"named" = {which}' + (f" AND ({rule.filterExpression()})" if rule is notable else "")
        )
    silent.setMinimumScale(0.0)
    # Keeping labels off thousands of symbols takes longer than the rest of the report.
    silent.setActive(layer.featureCount() <= _MOST_SYMBOLS_KEPT_FREE)


def axis_layer(source, crs, project):
    """The lines of an axis layer in ``crs``, None for none."""
    if source is None:
        return None
    check_geometry(source, QgsWkbTypes.GeometryType.LineGeometry)
    layer = QgsVectorLayer("LineString", "axis", "memory")
    layer.setCrs(crs)
    there, features = QgsCoordinateTransform(source.sourceCrs(), crs, project), []
    for number, feature in enumerate(source.getFeatures(QgsFeatureRequest(), UNCHECKED), 1):
        for part in feature.geometry().asGeometryCollection():
            if not _moved(part, there):
                raise InputError(
                    tr("Layer '{}', row {}: a vertex has no place on the map of the stations.").format(
                        source.sourceName(), number
                    ),
                    keys=("AXIS",),
                )
            copy = QgsFeature()
            copy.setGeometry(part)
            features.append(copy)
    layer.dataProvider().addFeatures(features)
    symbol = QgsLineSymbol()
    symbol.changeSymbolLayer(0, QgsSimpleLineSymbolLayer(QColor(palette.PAPER), 1.0))
    symbol.appendSymbolLayer(QgsSimpleLineSymbolLayer(QColor(palette.INK), 0.35))
    layer.setRenderer(QgsSingleSymbolRenderer(symbol))
    return layer


def _moved(part, there):
    """Move a geometry by a transformation; whether all of it can be drawn then."""
    try:
        part.transform(there)
    except QgsCsException:
        return False
    return all(_on_a_map(vertex.x(), vertex.y()) for vertex in part.vertices())


def imagery_layer(layer):
    """The raster opened anew: a layer of the project lives in another thread."""
    if layer is None:
        return None
    found = QgsRasterLayer(layer.source(), layer.name(), layer.providerType())
    if not found.isValid():
        raise InputError(tr("The imagery '{}' cannot be read.").format(layer.name()))
    if not found.crs().isValid():
        found.setCrs(layer.crs())
    if not found.crs().isValid():
        raise InputError(tr("The imagery '{}' has no coordinate reference system; set it first.").format(layer.name()))
    return found
