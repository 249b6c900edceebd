"""Print the summary of a demo result as a table and draw its map: draw_map.py RESULT.gpkg IMAGERY.tif MAP.png"""

import sys

from qgis.core import (
    QgsApplication,
    QgsLayerTreeLayer,
    QgsLayoutExporter,
    QgsLayoutItemLabel,
    QgsLayoutItemLegend,
    QgsLayoutItemMap,
    QgsLayoutItemPicture,
    QgsLayoutItemScaleBar,
    QgsLayoutPoint,
    QgsLayoutSize,
    QgsLegendStyle,
    QgsLineSymbol,
    QgsPalLayerSettings,
    QgsPrintLayout,
    QgsProject,
    QgsRasterLayer,
    QgsRectangle,
    QgsSimpleLineSymbolLayer,
    QgsSingleSymbolRenderer,
    QgsTextBufferSettings,
    QgsTextFormat,
    QgsUnitTypes,
    QgsVectorLayer,
    QgsVectorLayerSimpleLabeling,
)
from qgis.PyQt.QtGui import QColor, QFont

MM = QgsUnitTypes.LayoutUnit.LayoutMillimeters


def layers_of(result, imagery):
    """The imagery, the ellipses, the axis, the styled residuals and the fitted plane, bottom first."""
    ground = QgsRasterLayer(imagery, "Imagery (synthesised)")
    axis = QgsVectorLayer(f"{result}|layername=axis", "Axis", "ogr")
    stations = QgsVectorLayer(f"{result}|layername=residuals", "Residuals", "ogr")
    plane = QgsVectorLayer(f"{result}|layername=plane", "Fitted plane", "ogr")
    ellipses = QgsVectorLayer(f"{result}|layername=ellipses", "Tangent and level points, 95 %", "ogr")
    for layer in (ground, axis, stations, plane, ellipses):
        if not layer.isValid():
            raise SystemExit(f"{layer.name()}: the layer cannot be read")
    symbol = QgsLineSymbol()
    symbol.changeSymbolLayer(0, QgsSimpleLineSymbolLayer(QColor("white"), 1.1))
    symbol.appendSymbolLayer(QgsSimpleLineSymbolLayer(QColor("#222222"), 0.4))
    axis.setRenderer(QgsSingleSymbolRenderer(symbol))
    _name_axes(axis)
    return ground, ellipses, axis, stations, plane


def _name_axes(axis):
    settings = QgsPalLayerSettings()
    settings.fieldName = "name"
    settings.placement = QgsPalLayerSettings.Placement.Line
    settings.dist = 3
    buffer = QgsTextBufferSettings()
    buffer.setEnabled(True)
    buffer.setSize(0.9)
    form = QgsTextFormat()
    form.setFont(QFont("DejaVu Sans"))
    form.setSize(10)
    form.setBuffer(buffer)
    settings.setFormat(form)
    axis.setLabeling(QgsVectorLayerSimpleLabeling(settings))
    axis.setLabelsEnabled(True)


def print_table(result):
    """The summary, a row for each axis: level, then line."""
    table = QgsVectorLayer(f"{result}|layername=summary", "summary", "ogr")
    print(
        f"   {'axis':<12}{'design':<10}{'stations':>9}{'RMS mm':>9}{'greatest mm':>13}  {'at':<8}{'within':>7}"
        f"{'high':>6}{'low':>5}{'no height':>11}"
    )
    for row in table.getFeatures():
        print(
            f"   {row['axis']:<12}{row['design']:<10}{row['number']:>9}{row['rms'] * 1000:>9.1f}"
            f"{row['max_abs'] * 1000:>13.1f}  {row['max_at']:<8}{row['within']:>7}{row['high']:>6}{row['low']:>5}"
            f"{row['no_height']:>11}"
        )
    print(
        f"\n   {'axis':<12}{'line':<10}{'stations':>9}{'RMS mm':>9}{'greatest mm':>13}  {'at':<8}{'within':>7}"
        f"{'left':>6}{'right':>6}"
    )
    for row in table.getFeatures():
        print(
            f"   {row['axis']:<12}{row['line']:<10}{row['lat_number']:>9}{row['lat_rms'] * 1000:>9.1f}"
            f"{row['lat_max'] * 1000:>13.1f}  {row['lat_max_at']:<8}{row['lat_within']:>7}{row['left']:>6}"
            f"{row['right']:>6}"
        )


def _place(layout, item, x, y, width, height):
    layout.addLayoutItem(item)
    item.attemptMove(QgsLayoutPoint(x, y, MM))
    item.attemptResize(QgsLayoutSize(width, height, MM))
    return item


def _label(layout, text, x, y, width, height, size, bold=False):
    item = QgsLayoutItemLabel(layout)
    item.setText(text)
    font = QFont("DejaVu Sans", size)
    font.setBold(bold)
    item.setFont(font)
    return _place(layout, item, x, y, width, height)


def _with_shape(extent, shape):
    """``extent`` widened to ``shape``, width by height."""
    centre = extent.center()
    width = max(extent.width(), extent.height() * shape)
    return QgsRectangle.fromCenterAndSize(centre, width, width / shape)


def draw(layers, picture):
    """One A4 page, landscape: map over imagery, legend, scale bar, north arrow, and what is seen."""
    stations = layers[3]
    project = QgsProject.instance()
    project.setCrs(stations.crs())
    # The host writes the author into the picture: the user's name, unless another stands there.
    about = project.metadata()
    about.setAuthor("Tautline")
    project.setMetadata(about)
    for layer in layers:
        project.addMapLayer(layer, False)
    layout = QgsPrintLayout(project)
    layout.initializeDefaults()
    extent = QgsRectangle(stations.extent())
    extent.scale(1.12)
    # The oldest host makes the extent of an item without a size NaN: first the size, then the extent.
    page = _place(layout, QgsLayoutItemMap(layout), 10, 24, 205, 176)
    page.setLayers(list(reversed(layers)))
    page.setExtent(_with_shape(extent, 205 / 176))
    page.setFrameEnabled(True)
    _label(layout, "Range: as built against the design, level and line", 10, 6, 277, 9, 16, True)
    _label(
        layout,
        "Three straight runs in one plane. A straight structure rises above the level surface on both sides of its "
        "level point. Labels: height, then line.",
        10,
        15,
        277,
        7,
        9,
    )
    legend = QgsLayoutItemLegend(layout)
    legend.setAutoUpdateModel(False)
    root = legend.model().rootGroup()
    root.clear()
    for layer in (stations, layers[4], layers[1], layers[2]):
        root.addChildNode(QgsLayerTreeLayer(layer))
    legend.setTitle("")
    for part, size in ((QgsLegendStyle.Style.Subgroup, 11), (QgsLegendStyle.Style.SymbolLabel, 9)):
        legend.setStyleFont(part, QFont("DejaVu Sans", size))
    # As high as the largest mark: newer hosts cut marks at generated places.
    legend.setSymbolHeight(6.6)
    legend.setLinkedMap(page)
    legend.setLegendFilterByMapEnabled(True)
    _place(layout, legend, 218, 24, 70, 90)
    bar = QgsLayoutItemScaleBar(layout)
    bar.setStyle("Single Box")
    bar.setLinkedMap(page)
    bar.setUnits(QgsUnitTypes.DistanceUnit.DistanceMeters)
    bar.setUnitLabel("m")
    bar.setNumberOfSegments(2)
    bar.setNumberOfSegmentsLeft(0)
    bar.setUnitsPerSegment(250)
    form = QgsTextFormat()
    form.setFont(QFont("DejaVu Sans"))
    form.setSize(9)
    bar.setTextFormat(form)
    _place(layout, bar, 219, 160, 66, 14)
    north = QgsLayoutItemPicture(layout)
    north.setPicturePath(":/images/north_arrows/layout_default_north_arrow.svg")
    _place(layout, north, 222, 140, 12, 16)
    _label(
        layout,
        "Invented data, synthesised imagery. For review only: field work follows local codes, and a licensed surveyor "
        "or engineer decides.",
        219,
        180,
        68,
        20,
        7,
    )
    settings = QgsLayoutExporter.ImageExportSettings()
    settings.dpi = 150
    outcome = QgsLayoutExporter(layout).exportToImage(picture, settings)
    if outcome != QgsLayoutExporter.ExportResult.Success:
        raise SystemExit(f"The map could not be drawn: {picture}")


def main(result, imagery, picture):
    application = QgsApplication([], True)
    application.initQgis()
    print_table(result)
    draw(layers_of(result, imagery), picture)
    QgsProject.instance().clear()
    application.exitQgis()


if __name__ == "__main__":
    main(*sys.argv[1:4])
