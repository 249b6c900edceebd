"""Styles of the output layers: symbols, labels, map tips, and their way through a GeoPackage."""

import threading

import pytest

qgis_core = pytest.importorskip("qgis.core")

from tautline.algorithms.styles import layer_kinds, saved_styles  # noqa: E402 - needs the host

UTM = "EPSG:32631"
SCHEMA = (
    "name:string",
    "axis:string(80)",
    "station:string(20)",
    "chainage:double",
    "offset:double",
    "design_h:double",
    "residual:double",
    "adjust:double",
    "flat_h:double",
    "curv_eff:double",
    "status:string(20)",
)
SUMMARY = "NoGeometry?field=axis:string&field=rms:double&field=record:string"
WHOLE = {
    "name": "P1",
    "axis": "West wing",
    "station": "1+250",
    "chainage": 1250.0,
    "offset": -0.35,
    "design_h": 10.0,
    "residual": 0.0124,
    "adjust": -0.0124,
    "flat_h": 9.88,
    "curv_eff": 0.12,
    "status": "high",
}
RESIDUALS = {
    "within": (0.004, 0.0),
    "high": (0.02,),
    "low": (-0.02,),
    "no tolerance": (0.02, 0.0, -0.02),
    "no height": (None,),
    "off axis": (None, 0.5),
}


def review_layer(rows, left_out=()):
    schema = [field for field in SCHEMA if field.split(":")[0] not in left_out]
    layer = qgis_core.QgsVectorLayer(f"Point?crs={UTM}&field=" + "&field=".join(schema), "stations", "memory")
    features = []
    for place, row in enumerate(rows):
        feature = qgis_core.QgsFeature(layer.fields())
        for name, value in {**WHOLE, **row}.items():
            if name not in left_out:
                feature[name] = value
        feature.setGeometry(qgis_core.QgsGeometry.fromPointXY(qgis_core.QgsPointXY(500000 + 50 * place, 100)))
        features.append(feature)
    assert layer.dataProvider().addFeatures(features)[0]
    layer.updateExtents()
    return layer


def write_table(layer, path, table, new_file):
    options = qgis_core.QgsVectorFileWriter.SaveVectorOptions()
    options.driverName = "GPKG"
    options.layerName = table
    actions = qgis_core.QgsVectorFileWriter.ActionOnExistingFile
    options.actionOnExistingFile = actions.CreateOrOverwriteFile if new_file else actions.CreateOrOverwriteLayer
    context = qgis_core.QgsProject.instance().transformContext()
    assert qgis_core.QgsVectorFileWriter.writeAsVectorFormatV3(layer, str(path), context, options)[0] == 0


def opened(path, table):
    layer = qgis_core.QgsVectorLayer(f"{path}|layername={table}", table, "ogr")
    assert layer.isValid()
    return layer, layer.loadDefaultStyle()[1]


def context_of(layer, feature):
    context = qgis_core.QgsExpressionContext(qgis_core.QgsExpressionContextUtils.globalProjectLayerScopes(layer))
    context.setFeature(feature)
    return context


def evaluated(text, layer, feature):
    expression = qgis_core.QgsExpression(text)
    value = expression.evaluate(context_of(layer, feature))
    assert not expression.hasParserError() and not expression.hasEvalError(), (text, expression.evalErrorString())
    return value


def tip_of(layer, row=0):
    feature = list(layer.getFeatures())[row]
    template = layer.mapTipTemplate()
    for part in template.split("[%")[1:]:
        evaluated(part.split("%]")[0], layer, feature)
    return qgis_core.QgsExpression.replaceExpressionText(template, context_of(layer, feature))


def labels_of(layer, row=0):
    feature = list(layer.getFeatures())[row]
    return [
        evaluated(rule.settings().fieldName, layer, feature).replace("\u00a0", "")
        for rule in layer.labeling().rootRule().children()
        if rule.settings().drawLabels and rule.minimumScale() and evaluated(rule.filterExpression(), layer, feature)
    ]


def matching_rules(layer, feature):
    return [
        rule
        for rule in layer.renderer().rootRule().children()
        if not rule.isElse() and evaluated(rule.filterExpression(), layer, feature)
    ]


def dressed(host, rows, left_out=(), kind="stations_review", **options):
    layer = review_layer(rows, left_out)
    layer_kinds.dress(layer, layer_kinds.StyleSpec(kind, "Stations", **options))
    return layer


def test_spec_refuses_what_it_does_not_know(host):
    for wrong in (
        {"kind": "table"},
        {"title": ""},
        {"height_unit": "inch"},
        {"chainage_unit": ""},
        {"tolerance": -1.0},
        {"tolerance": float("nan")},
    ):
        with pytest.raises(ValueError):
            layer_kinds.StyleSpec(**{"kind": "summary", "title": "T", **wrong})


@pytest.mark.parametrize("tolerance", [None, 0.01])
def test_each_status_falls_into_exactly_one_rule(host, tolerance):
    rows = [{"status": status, "residual": value} for status, values in RESIDUALS.items() for value in values]
    layer = dressed(host, rows, tolerance=tolerance)
    labels = set()
    for feature in layer.getFeatures():
        rules = matching_rules(layer, feature)
        assert len(rules) == 1, (feature["status"], feature["residual"])
        labels.add(rules[0].label())
    assert len(labels) == 7


def test_station_of_unknown_status_does_not_vanish(host):
    layer = dressed(host, [{"status": None}, {"status": "?"}])
    for feature in layer.getFeatures():
        assert matching_rules(layer, feature) == []
    assert layer.renderer().rootRule().children()[-1].isElse()


def test_legend_has_only_statuses_that_can_occur(host):
    def legend(tolerance, status):
        layer = dressed(host, [{"status": status}], tolerance=tolerance)
        return " ".join(rule.label() for rule in layer.renderer().rootRule().children())

    assert "no tolerance" not in legend(0.01, "within") and "High: above the tolerance" in legend(0.01, "within")
    assert "above the tolerance" not in legend(None, "no tolerance")
    assert "above the tolerance" in legend(None, "high")


def symbol_size(layer, row):
    feature = list(layer.getFeatures())[row]
    symbol = matching_rules(layer, feature)[0].symbol()
    return symbol.dataDefinedSize().value(context_of(layer, feature))[0]


def test_size_follows_the_residual_and_is_clamped(host):
    rows = [{"status": "high", "residual": value} for value in (0.011, 0.02, 0.04, 4.0)]
    layer = dressed(host, rows, tolerance=0.01)
    sizes = [symbol_size(layer, row) for row in range(4)]
    assert sizes[0] < sizes[1] < sizes[2] == pytest.approx(6.0) and sizes[3] == pytest.approx(6.0)
    layer = dressed(host, [{"status": "no tolerance", "residual": value} for value in (0.0, 0.5, -2.0)])
    assert [symbol_size(layer, row) for row in range(3)] == pytest.approx([2.8, 3.0, 6.0])


def test_worst_is_drawn_last(host):
    layer = dressed(host, [{"residual": value} for value in (0.03, None, -0.05, 0.001)], tolerance=0.01)
    order = layer.renderer().orderBy()
    request = qgis_core.QgsFeatureRequest().setOrderBy(order)
    assert [feature.id() for feature in layer.getFeatures(request)] == [4, 2, 1, 3]
    assert layer.renderer().orderByEnabled()


@pytest.mark.parametrize(
    "unit, residual, text",
    [
        ("metre", 0.0124, "1+250\n+12.4 mm"),
        ("metre", -0.0124, "1+250\n\u221212.4 mm"),
        ("metre", 0.0004, "1+250\n+0.4 mm"),
        ("metre", -0.00004, "1+250\n0.0 mm"),
        ("foot", 0.039, "1+250\n+0.039 ft"),
        ("us_foot", -0.039, "1+250\n\u22120.039 US ft"),
        ("metre", None, "1+250\nno as-built height"),
    ],
)
def test_label(host, unit, residual, text):
    status = "no height" if residual is None else "high"
    layer = dressed(host, [{"residual": residual, "status": status}], tolerance=0.01, height_unit=unit)
    assert labels_of(layer) == [text]


def test_every_status_has_one_label(host):
    rows = [{"status": status, "residual": values[0]} for status, values in RESIDUALS.items()]
    layer = dressed(host, rows, tolerance=0.01)
    assert [len(labels_of(layer, row)) for row in range(len(rows))] == [1] * len(rows)
    assert labels_of(dressed(host, [{"status": "off axis", "station": None}])) == ["off axis"]


def priority_of(layer, row):
    feature = list(layer.getFeatures())[row]
    rule = next(
        rule for rule in layer.labeling().rootRule().children() if evaluated(rule.filterExpression(), layer, feature)
    )
    key = qgis_core.QgsPalLayerSettings.Property.Priority
    return rule.settings().dataDefinedProperties().value(key, context_of(layer, feature)), rule


def test_the_worst_are_named_at_every_scale(host):
    cases = (("high", 0.04), ("low", -0.017), ("high", 0.015), ("within", 0.009), ("low", None))
    rows = [{"status": status, "residual": residual} for status, residual in cases]
    layer = dressed(host, rows, tolerance=0.01)
    (rule,) = [rule for rule in layer.labeling().rootRule().children() if not rule.minimumScale()]
    assert rule.maximumScale() == 25000 and rule.settings().drawLabels
    named = [bool(evaluated(rule.filterExpression(), layer, feature)) for feature in layer.getFeatures()]
    assert named == [True, True, False, False, False]


def test_labels_are_for_large_scales_and_the_worst_come_first(host):
    rows = [
        {"status": status, "residual": residual}
        for status, residual in (("high", 4.0), ("high", 0.02), ("within", 0.009), ("within", 0.0), ("no height", None))
    ]
    layer = dressed(host, rows, tolerance=0.01)
    priorities, rules = zip(*(priority_of(layer, row) for row in range(len(rows))))
    assert list(priorities) == pytest.approx([10, 8, 1.9, 1, 1])
    bold, small = rules[0], rules[2]
    assert bold.minimumScale() == 25000 and 0 < small.minimumScale() < 25000
    large_type, small_type = bold.settings().format(), small.settings().format()
    assert large_type.size() > small_type.size()
    # Asked in one go, 3.22 reads the buffer of a format that is gone.
    large_buffer, small_buffer = large_type.buffer(), small_type.buffer()
    assert large_buffer.enabled() and small_buffer.enabled()
    assert not any(rule.settings().displayAll for rule in rules)


def test_without_tolerance_the_large_residuals_are_labelled_first(host):
    layer = dressed(host, [{"status": "no tolerance", "residual": value} for value in (0.06, -0.1, 0.01)])
    assert [priority_of(layer, row)[1].minimumScale() for row in range(3)] == [25000, 25000, 10100]


def test_map_tip_tells_the_story(host):
    tip = tip_of(dressed(host, [{}], tolerance=0.01))
    for piece in (
        "<b>1+250</b> on axis West wing",
        "As built 10.0124 m, design 10.0000 m",
        "Built high by 12.4 mm, above the tolerance",
        "Lower by 12.4 mm",
        "Curvature raises the design by 120.0 mm",
    ):
        assert piece in tip
    tip = tip_of(
        dressed(
            host,
            [{"residual": -0.5, "adjust": 0.5, "status": "low", "curv_eff": -0.2, "design_h": -0.2}],
            height_unit="foot",
        )
    )
    for piece in (
        "As built \u22120.700 ft, design \u22120.200 ft",
        "Built low by 0.500 ft",
        "Raise by 0.500 ft",
        "Curvature lowers the design by 0.200 ft",
    ):
        assert piece in tip


def test_map_tip_without_height_axis_or_status(host):
    empty = dict.fromkeys(WHOLE)
    layer = dressed(
        host,
        [
            {"residual": None, "adjust": None, "status": "no height"},
            {**empty, "status": "off axis"},
            empty,
            {"residual": 0.002, "adjust": -0.002, "status": "within"},
        ],
    )
    tips = [tip_of(layer, row) for row in range(4)]
    assert "Design 10.0000 m; no as-built height here" in tips[0] and "Built" not in tips[0]
    assert "<b>Station</b>" in tips[1] and "Too far from every axis" in tips[1]
    assert "NULL" not in tips[2] and "Built" not in tips[2]
    assert "within the tolerance. No adjustment needed" in tips[3]


def test_map_tip_escapes_text(host):
    layer = dressed(host, [{"axis": "<script>&'\"", "station": "<b>[% 1+1 %]", "status": "<i>"}])
    tip = tip_of(layer)
    assert "&lt;script&gt;&amp;'&quot;" in tip
    assert "<script>" not in tip and "<i>" not in tip and "<b><b>" not in tip
    layer = dressed(host, [{"axis": "<script>", "station": "<i>"}], kind="stations")
    assert "<script>" not in tip_of(layer) and "<i>" not in tip_of(layer)


@pytest.mark.parametrize(
    "missing", ["axis", "station", "offset", "design_h", "residual", "adjust", "curv_eff", "status"]
)
def test_missing_field_spoils_nothing(host, missing):
    for kind in ("stations_review", "stations"):
        layer = dressed(host, [{}], (missing,), kind=kind)
        tip_of(layer)
        labels = layer.labeling().rootRule().children()
        for rule in labels:
            evaluated(rule.settings().fieldName, layer, next(layer.getFeatures()))
        assert labels
        if kind == "stations_review":
            matching_rules(layer, next(layer.getFeatures()))


def test_plain_stations(host):
    layer = dressed(host, [{}], kind="stations", chainage_unit="foot")
    tip = tip_of(layer)
    assert "Chainage 1250.000 ft" in tip.replace(",", "") and "Offset 0.350 ft left of the axis" in tip
    assert layer.labeling().rootRule().children()[0].minimumScale() == 10100
    assert layer.attributeAlias(layer.fields().indexOf("offset")) == "Offset (ft)"


def test_input_field_of_an_output_name_keeps_its_name(host):
    source = "Point?crs=EPSG:4326&field=height:double&field=axis:string&field=chainage:double"
    layer = qgis_core.QgsVectorLayer(source, "measured", "memory")
    layer_kinds.dress(layer, layer_kinds.StyleSpec("stations", "Measured"))
    assert layer.attributeAlias(0) == "" and layer.attributeAlias(2) == "Chainage (m)"
    assert "Height" not in layer.mapTipTemplate()


@pytest.mark.parametrize("level, tangent, sides", [((10, 20), (10, 50), "TB"), ((10, 50), (10, 20), "BT")])
def test_labels_of_the_two_points_stand_away_from_each_other(host, level, tangent, sides):
    """The northern point's label is first tried above its mark, the southern one's below."""
    from tautline.algorithms.styles.reference_marks import reference_labeling

    place = ", ".join(f"{x} {y}" for x, y in (level, tangent))
    layer = qgis_core.QgsVectorLayer(
        "MultiPoint?field=name:string&field=lev_lat:double&field=tan_lat:double", "R", "memory"
    )
    feature = qgis_core.QgsFeature(layer.fields())
    feature.setGeometry(qgis_core.QgsGeometry.fromWkt(f"MultiPoint ({place})"))
    feature.setAttributes(["plane", 0.0, 0.0])
    key = qgis_core.QgsPalLayerSettings.Property.PredefinedPositionOrder
    labeling, found = reference_labeling(layer.fields()), []
    for rule in labeling.rootRule().children():
        if evaluated(rule.filterExpression(), layer, feature):
            order = rule.settings().dataDefinedProperties().value(key, context_of(layer, feature))
            assert sorted(order.split(",")) == ["B", "BL", "BR", "L", "R", "T", "TL", "TR"]
            found.append(order[0])
    assert "".join(found) == sides


def test_columns(host):
    layer = dressed(host, [{}], height_unit="us_foot")
    residual = layer.fields().indexOf("residual")
    assert layer.attributeAlias(residual) == "Residual (US ft)"
    assert layer.attributeAlias(layer.fields().indexOf("chainage")) == "Chainage (m)"
    setup = layer.editorWidgetSetup(residual)
    formatter = qgis_core.QgsApplication.fieldFormatterRegistry().fieldFormatter(setup.type())
    assert formatter.representValue(layer, residual, setup.config(), None, 0.0123456) == "0.0123"
    assert layer.editFormConfig().readOnly(residual)
    columns = [column.name for column in layer.attributeTableConfig().columns()]
    assert columns[0] == "axis" and columns.index("name") > columns.index("status")


def test_summary_hides_its_record(host):
    layer = qgis_core.QgsVectorLayer(SUMMARY, "s", "memory")
    layer_kinds.dress(layer, layer_kinds.StyleSpec("summary", "Summary", height_unit="foot", record="{}"))
    assert {column.name: column.hidden for column in layer.attributeTableConfig().columns()}["record"]
    assert layer.attributeAlias(1) == "RMS residual (ft)"
    assert layer.displayExpression() == '"axis"'


def test_style_comes_back_from_a_geopackage(host, tmp_path):
    path = tmp_path / "out.gpkg"
    write_table(review_layer([{}, {"status": "low", "residual": -0.03}]), path, "out", new_file=True)
    spec = layer_kinds.StyleSpec(
        "stations_review", "Design heights", tolerance=0.01, record='{"entry": "a <b> \u00e9"}'
    )
    assert saved_styles.save_into_geopackage(str(path), spec)
    layer, loaded = opened(path, "out")
    assert loaded and layer.name() == "out"
    assert isinstance(layer.renderer(), qgis_core.QgsRuleBasedRenderer)
    assert len(matching_rules(layer, next(layer.getFeatures()))) == 1
    assert layer.customProperty("tautline/record") == spec.record
    assert layer.attributeAlias(layer.fields().indexOf("residual")) == "Residual (m)"
    assert labels_of(layer) == ["1+250\n+12.4 mm"] and "Lower by 12.4 mm" in tip_of(layer)
    assert symbol_size(layer, 1) == pytest.approx(6.0 * 0.75**0.5)
    assert layer.renderer().orderByEnabled()


def test_second_save_replaces_the_first(host, tmp_path):
    path = tmp_path / "out.gpkg"
    write_table(review_layer([{}]), path, "out", new_file=True)
    for record in ("first", "second"):
        assert saved_styles.save_into_geopackage(
            str(path), layer_kinds.StyleSpec("stations_review", "It's mine", record=record)
        )
    layer, loaded = opened(path, "out")
    assert loaded and layer.customProperty("tautline/record") == "second"
    assert layer.listStylesInDatabase()[0] == 1


def test_name_of_a_style_fits_the_hosts_table(host, tmp_path):
    """30 letters; a style that was saved under its longer name is replaced too."""
    path, title = tmp_path / "out.gpkg", "Tangent and level points, 95 % ellipses"
    write_table(review_layer([{}]), path, "out", new_file=True)
    opened(path, "out")[0].saveStyleToDatabase(title, "", True, "")
    assert saved_styles.save_into_geopackage(str(path), layer_kinds.StyleSpec("stations_review", title))
    number, _ids, names = opened(path, "out")[0].listStylesInDatabase()[:3]
    assert (number, names[0]) == (1, "Tangent and level points, 95 %")


@pytest.mark.parametrize("threaded", [False, True])
def test_two_tables_in_one_file(host, tmp_path, threaded):
    path = tmp_path / "two.gpkg"
    write_table(review_layer([{}]), path, "stations", new_file=True)
    summary = qgis_core.QgsVectorLayer(SUMMARY, "s", "memory")
    write_table(summary, path, "summary", new_file=False)
    done = []

    def save():
        for _run in range(2):
            for table, kind in (("stations", "stations_review"), ("summary", "summary")):
                spec = layer_kinds.StyleSpec(kind, "One title", record=table)
                geometry = " (geom)" if table == "stations" else ""
                done.append(saved_styles.save_into_geopackage(f"ogr:dbname='{path}' table=\"{table}\"{geometry}", spec))

    if threaded:
        worker = threading.Thread(target=save)
        worker.start()
        worker.join(30)
    else:
        save()
    assert done == [True] * 4
    for table in ("stations", "summary"):
        layer, loaded = opened(path, table)
        assert loaded and layer.customProperty("tautline/record") == table
        assert layer.listStylesInDatabase()[0] == 1
    assert layer.attributeAlias(layer.fields().indexOf("rms")) == "RMS residual (m)"


def test_plain_path_means_the_table_of_that_name(host, tmp_path):
    path = tmp_path / "b.gpkg"
    write_table(review_layer([{}]), path, "a", new_file=True)
    write_table(review_layer([{}]), path, "b", new_file=False)
    assert saved_styles.geopackage_layer(str(path)).source().endswith("layername=b")
    assert saved_styles.geopackage_layer(f"{path}|layername=a").source().endswith("layername=a")
    assert saved_styles.geopackage_layer(f"{path}|layername=c") is None


def test_only_a_geopackage_gets_a_style(host, tmp_path):
    spec = layer_kinds.StyleSpec("summary", "Summary")
    (tmp_path / "x.geojson").write_text("{}")
    for destination in (str(tmp_path / "x.geojson"), str(tmp_path / "none.gpkg"), "memory_layer_id", "memory:", ""):
        assert saved_styles.save_into_geopackage(destination, spec) is False
    assert [path.name for path in tmp_path.iterdir()] == ["x.geojson"]


class TestDesktop:
    """What the desktop does when it loads an output."""

    def context(self, layer_id):
        context = qgis_core.QgsProcessingContext()
        details = qgis_core.QgsProcessingContext.LayerDetails("Output", qgis_core.QgsProject.instance(), "OUTPUT")
        context.addLayerToLoadOnCompletion(layer_id, details)
        return context

    def test_memory_layer_is_dressed(self, host):
        layer = review_layer([{}])
        context = self.context(layer.id())
        spec = layer_kinds.StyleSpec("stations_review", "Design heights", tolerance=0.01, record="r")
        assert saved_styles.attach(context, layer.id(), spec)
        assert layer.id() in saved_styles.LayerDresser.waiting
        dresser = context.layerToLoadOnCompletionDetails(layer.id()).postProcessor()
        dresser.postProcessLayer(layer, context, qgis_core.QgsProcessingFeedback())
        assert layer.name() == "Design heights" and layer.customProperty("tautline/record") == "r"
        assert isinstance(layer.renderer(), qgis_core.QgsRuleBasedRenderer)
        assert layer.id() not in saved_styles.LayerDresser.waiting

    def test_saved_style_is_loaded(self, host, tmp_path):
        path = tmp_path / "out.gpkg"
        write_table(review_layer([{}]), path, "out", new_file=True)
        spec = layer_kinds.StyleSpec("stations_review", "Design heights", record="r")
        saved_styles.save_into_geopackage(str(path), spec)
        layer = qgis_core.QgsVectorLayer(str(path), "Output", "ogr")
        context = self.context(str(path))
        assert saved_styles.attach(context, str(path), spec)
        saved_styles.LayerDresser.waiting[str(path)].postProcessLayer(layer, context, qgis_core.QgsProcessingFeedback())
        assert layer.name() == "Design heights" and layer.customProperty("tautline/record") == "r"

    def test_geopackage_without_a_style_is_dressed(self, host, tmp_path):
        path = tmp_path / "out.gpkg"
        write_table(review_layer([{}]), path, "out", new_file=True)
        layer = qgis_core.QgsVectorLayer(str(path), "Output", "ogr")
        dresser = saved_styles.LayerDresser(str(path), layer_kinds.StyleSpec("stations_review", "Design heights"))
        dresser.postProcessLayer(layer, qgis_core.QgsProcessingContext(), qgis_core.QgsProcessingFeedback())
        assert isinstance(layer.renderer(), qgis_core.QgsRuleBasedRenderer)

    def test_nothing_is_attached_where_nothing_is_loaded(self, host):
        context = qgis_core.QgsProcessingContext()
        assert saved_styles.attach(context, "a", layer_kinds.StyleSpec("summary", "Summary")) is False
        assert "a" not in saved_styles.LayerDresser.waiting
