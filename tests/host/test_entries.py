"""What holds for every toolbox entry: identity, help, defaults, records, models, worker threads."""

import json

import pytest

# Source: the table of toolbox entries in the project's design, section 3.
TABLE = {
    "placestations": ("Stations", "Place a height list along an axis"),
    "generatestations": ("Stations", "Generate stations along an axis"),
    "measurestations": ("Stations", "Measure chainage and offset"),
    "convertheights": ("Heights", "Convert between ellipsoidal and orthometric heights"),
    "reducesights": ("Heights", "Reduce sights for curvature and refraction"),
    "adjustlevelling": ("Heights", "Adjust levelled height differences"),
    "designheights": ("Design", "Design heights and residuals"),
    "fitreference": ("Design", "Fit a straight line or plane"),
    "testcurvature": ("Design", "Test which shape was built"),
    "drawdeviations": ("Review", "Draw deviations on the map"),
    "comparesurveys": ("Review", "Compare surveys"),
    "scheduleadjustments": ("Review", "Schedule adjustments"),
    "reviewreport": ("Review", "Write the review report"),
}
# The entries that need stations, an axis or a list, and nothing else.
ENTRIES = ("placestations", "generatestations", "measurestations", "convertheights", "designheights")
# The form of the main job: what is not visible is advanced.
VISIBLE = [
    "STATIONS",
    "AXIS",
    "HEIGHT_FIELD",
    "HEIGHT_UNIT",
    "DESIGN",
    "CHAINAGE_A",
    "HEIGHT_A",
    "CHAINAGE_B",
    "HEIGHT_B",
    "SLOPE",
    "TOLERANCE",
    "OUTPUT",
    "SUMMARY",
]


def registered(host):
    from qgis.core import QgsApplication

    return {entry.name(): entry for entry in QgsApplication.processingRegistry().providerById("tautline").algorithms()}


def classes():
    pytest.importorskip("qgis.core")
    from tautline.plugin.provider import ENTRIES as found

    return {entry.ID: entry for entry in found}


@pytest.fixture(params=classes())
def entry(host, request):
    return registered(host)[request.param]


def layers(toolbox, name):
    """The layers an entry cannot do without, and nothing else."""
    stations, axis = toolbox.straight()
    return {
        "placestations": {"INPUT": toolbox.table([{"station": "0+100", "height": 5.0}]), "AXIS": axis},
        "generatestations": {"AXIS": axis},
        "convertheights": {"STATIONS": stations},
    }.get(name, {"STATIONS": stations, "AXIS": axis})


def test_all_entries_are_there(host):
    assert set(ENTRIES) <= set(registered(host)) == set(classes()) <= set(TABLE)


def test_identity(entry):
    group, title = TABLE[entry.name()]
    assert (entry.group(), entry.displayName(), entry.groupId()) == (group, title, group.lower())
    assert entry.id() == f"tautline:{entry.name()}" and entry.name().islower() and entry.name().isalpha()
    assert len(entry.shortHelpString()) > 200 and entry.shortDescription() and len(entry.tags()) >= 3


def test_help_on_every_parameter(entry):
    for parameter in entry.parameterDefinitions():
        if parameter.isDestination():
            assert parameter.description()
            continue
        text = parameter.help()
        assert len(text) > 20 and text[-1] == ".", parameter.name()


def test_names_of_parameters_and_units_in_labels(entry):
    for parameter in entry.parameterDefinitions():
        assert parameter.name() == parameter.name().upper() and parameter.description()[0].isupper()
    for name in ("MAX_DISTANCE", "RADIUS"):
        if entry.parameterDefinition(name):
            assert "(metres)" in entry.parameterDefinition(name).description()


def test_form_of_the_main_job(host):
    from qgis.core import QgsProcessingParameterDefinition

    hidden = QgsProcessingParameterDefinition.Flag.FlagAdvanced
    shown = [p.name() for p in registered(host)["designheights"].parameterDefinitions() if not p.flags() & hidden]
    assert shown == VISIBLE


def test_field_parameters_have_no_default(entry):
    """The host hands a default on even where the layer has no such field."""
    from qgis.core import QgsProcessingParameterField

    fields = [p for p in entry.parameterDefinitions() if isinstance(p, QgsProcessingParameterField)]
    assert all(p.defaultValue() is None for p in fields)


@pytest.mark.parametrize("name", ENTRIES)
def test_defaults_work_with_nothing_but_the_layers(toolbox, name):
    run = toolbox.run(name, **layers(toolbox, name))
    assert run.results["COUNT"] == len(run.rows()) > 0 and run.info and not run.warnings
    assert not any("Traceback" in text for text in run.info)


@pytest.mark.parametrize("name", ENTRIES)
def test_fields_out(toolbox, name):
    from tautline.algorithms.boundary.fields import FIELDS

    given = layers(toolbox, name)
    more = {"designheights": "SUMMARY", "placestations": "REJECTED"}.get(name)
    run = toolbox.run(name, **given, **({more: "memory:"} if more else {}))
    for key in ("OUTPUT", more) if more else ("OUTPUT",):
        own = [f.name() for f in run.layer(key).fields()]
        assert all(len(field) <= 10 for field in own)
        new = [field for field in own if field in FIELDS]
        assert new and own[-len(new) :] == new, "the own fields follow the rest"


def test_table_of_fields():
    from tautline.algorithms.boundary.fields import FIELDS

    assert all(0 < len(name) <= 10 and name == name.lower() for name in FIELDS)
    assert all(field.label and field.meaning for field in FIELDS.values())


def test_a_field_stands_once_in_the_table():
    """A second one of the name would hide the first: bars' exaggeration was once titled 'Curvature factor'."""
    from tautline.algorithms.boundary import fields

    assert len(fields.FIELDS) == len(fields._ALL)
    with pytest.raises(ValueError, match="twice: .'axis'"):
        fields._by_name(*fields._ALL, fields.FIELDS["axis"])


def test_one_title_for_each_field_of_a_kind_of_layer():
    from tautline.algorithms.boundary.fields import FIELDS
    from tautline.algorithms.styles.layer_kinds import KINDS

    for name, kind in KINDS.items():
        assert set(kind.fields) <= set(FIELDS) and kind.display in FIELDS and set(kind.titled) <= set(kind.fields)
        titles = [kind.title(one) for one in kind.fields]
        assert len(set(titles)) == len(titles), (name, sorted(title for title in titles if titles.count(title) > 1))
        for one, field in kind.titled.items():
            # A title may differ; what is written, and in which unit, may not.
            common = FIELDS[one]
            assert (field.name, field.kind, field.unit) == (one, common.kind, common.unit) and field != common


def test_titles_of_the_curvature_layer(toolbox, tmp_path):
    """As the attribute table shows them, from the style in the GeoPackage."""
    place = str(tmp_path / "out.gpkg")
    run = toolbox.run("testcurvature", OUTPUT=place, **layers(toolbox, "testcurvature"))
    titles = run.titles()
    assert (
        titles["factor"] == "Curvature factor" and titles["factor_sd"] == "Standard deviation of the curvature factor"
    )
    assert titles["verdict"] == "Verdict" and titles["rms_free"] == "RMS, free (m)" and titles["number"] == "Stations"


@pytest.mark.parametrize("name", ENTRIES)
def test_style_and_record_are_in_the_geopackage(toolbox, name, tmp_path):
    run = toolbox.run(name, OUTPUT=str(tmp_path / "out.gpkg"), **layers(toolbox, name))
    layer = run.layer()
    assert layer.loadDefaultStyle()[1]
    record = json.loads(layer.customProperty("tautline/record"))
    assert record["entry"] == f"tautline:{name}" and record["parameters"] and record["versions"]["Tautline"]
    assert layer.attributeAlias(layer.fields().count() - 1)


@pytest.mark.parametrize("name", ENTRIES)
def test_in_a_worker_thread(host, toolbox, name, tmp_path):
    from qgis.core import (
        QgsApplication,
        QgsProcessingAlgRunnerTask,
        QgsProcessingContext,
        QgsProcessingFeedback,
        QgsProject,
        QgsVectorLayer,
    )
    from qgis.PyQt.QtCore import QEventLoop, QTimer

    context, feedback = QgsProcessingContext(), QgsProcessingFeedback(False)
    context.setProject(QgsProject.instance())
    given = layers(toolbox, name)
    for layer in given.values():
        QgsProject.instance().addMapLayer(layer, False)
    try:
        path, answer, loop = str(tmp_path / "out.gpkg"), [], QEventLoop()
        parameters = {**{key: layer.id() for key, layer in given.items()}, "OUTPUT": path}
        task = QgsProcessingAlgRunnerTask(registered(host)[name], parameters, context, feedback)
        task.executed.connect(lambda well, results: (answer.append((well, results)), loop.quit()))
        QTimer.singleShot(300_000, loop.quit)
        QgsApplication.taskManager().addTask(task)
        loop.exec()
        assert answer and answer[0][0] and answer[0][1]["COUNT"] > 0
        assert QgsVectorLayer(path, "out", "ogr").featureCount() == answer[0][1]["COUNT"]
    finally:
        for layer in given.values():
            QgsProject.instance().removeMapLayer(layer.id())


def test_failure_in_a_worker_thread(host, toolbox, tmp_path):
    from qgis.core import QgsApplication, QgsProcessingAlgRunnerTask, QgsProcessingContext, QgsProject
    from qgis.PyQt.QtCore import QEventLoop, QTimer

    given = layers(toolbox, "designheights")
    for layer in given.values():
        QgsProject.instance().addMapLayer(layer, False)
    context = QgsProcessingContext()
    context.setProject(QgsProject.instance())
    from qgis.core import QgsProcessingFeedback

    feedback, answer, loop = QgsProcessingFeedback(False), [], QEventLoop()
    try:
        parameters = {
            **{key: layer.id() for key, layer in given.items()},
            "OUTPUT": str(tmp_path / "out.gpkg"),
            "HEIGHT_FIELD": "nope",
        }
        task = QgsProcessingAlgRunnerTask(registered(host)["designheights"], parameters, context, feedback)
        task.executed.connect(lambda well, results: (answer.append(well), loop.quit()))
        QTimer.singleShot(300_000, loop.quit)
        QgsApplication.taskManager().addTask(task)
        loop.exec()
        assert answer == [False] and not list(tmp_path.iterdir())
        assert "no field 'nope'" in feedback.textLog()
    finally:
        for layer in given.values():
            QgsProject.instance().removeMapLayer(layer.id())


@pytest.fixture
def chain(host):
    """A model: place a list, then the design heights of what was placed."""
    from qgis.core import (
        QgsProcessing,
        QgsProcessingModelAlgorithm,
        QgsProcessingModelChildAlgorithm,
        QgsProcessingModelChildParameterSource,
        QgsProcessingModelOutput,
        QgsProcessingModelParameter,
        QgsProcessingParameterFeatureSource,
    )

    source = QgsProcessingModelChildParameterSource
    model = QgsProcessingModelAlgorithm("chain", "tests")
    for name, kind in (
        ("list", QgsProcessing.SourceType.TypeVector),
        ("axis", QgsProcessing.SourceType.TypeVectorLine),
    ):
        model.addModelParameter(
            QgsProcessingParameterFeatureSource(name, name, [kind]), QgsProcessingModelParameter(name)
        )
    place = QgsProcessingModelChildAlgorithm("tautline:placestations")
    place.setChildId("place")
    place.addParameterSources("INPUT", [source.fromModelParameter("list")])
    place.addParameterSources("AXIS", [source.fromModelParameter("axis")])
    model.addChildAlgorithm(place)
    design = QgsProcessingModelChildAlgorithm("tautline:designheights")
    design.setChildId("design")
    design.addParameterSources("STATIONS", [source.fromChildOutput("place", "OUTPUT")])
    design.addParameterSources("AXIS", [source.fromModelParameter("axis")])
    design.addParameterSources("DESIGN", [source.fromStaticValue("tangent")])
    # A number of the first step as a number of the second: as many metres as rows were placed.
    design.addParameterSources("TOLERANCE", [source.fromChildOutput("place", "COUNT")])
    result, summary = QgsProcessingModelOutput("residuals", "residuals"), QgsProcessingModelOutput("summary", "summary")
    result.setChildOutputName("OUTPUT")
    result.setChildId("design")
    summary.setChildOutputName("SUMMARY")
    summary.setChildId("design")
    design.setModelOutputs({"residuals": result, "summary": summary})
    model.addChildAlgorithm(design)
    model.initAlgorithm()
    return model


def outputs_of(model, **places):
    """Parameters of a model's outputs, which older hosts call by their step as well: 'design:residuals'."""
    names = [definition.name() for definition in model.destinationParameterDefinitions()]
    return {next(name for name in names if name.split(":")[-1] == key): place for key, place in places.items()}


def test_in_a_model(toolbox, chain, log, tmp_path):
    import processing

    _, axis = toolbox.straight()
    rows = toolbox.table([{"station": f"0+{k}00", "height": 5.0 + 0.001 * k} for k in range(5)] + [{"station": "x"}])
    path = str(tmp_path / "out.gpkg")
    feedback = log()
    places = outputs_of(chain, residuals=path, summary="TEMPORARY_OUTPUT")
    results = processing.run(chain, {"list": rows, "axis": axis, **places}, feedback=feedback)
    layer = toolbox.run("measurestations", STATIONS=path, AXIS=axis)
    assert len(layer.rows()) == 5 and set(layer.column("status")) == {"within"}
    residuals, summary = (results[name] for name in places)
    assert residuals == path
    summary = list(summary.getFeatures())
    assert len(summary) == 1 and summary[0]["tolerance"] == 5.0 and summary[0]["design"] == "tangent"


def test_failure_in_a_model(toolbox, chain, log, tmp_path):
    import processing
    from qgis.core import QgsProcessingException

    _, axis = toolbox.straight()
    rows = toolbox.table([{"station": "0+100"}], types={"station": "string"})
    feedback = log()
    with pytest.raises(QgsProcessingException) as caught:
        processing.run(
            chain,
            {
                "list": rows,
                "axis": axis,
                **outputs_of(chain, residuals=str(tmp_path / "out.gpkg"), summary="TEMPORARY_OUTPUT"),
            },
            feedback=feedback,
        )
    assert not list(tmp_path.iterdir())
    assert "Axis 'line': control A has no chainage" in str(caught.value) + "".join(feedback.errors)


def test_a_misspelt_name_in_an_entry_is_refused():
    from tautline.algorithms.entry.base import ToolboxEntry

    with pytest.raises(TypeError, match="TITEL"):
        type("Bad", (ToolboxEntry,), {"TITEL": "x"})


def test_record_names_layers_by_their_source(toolbox, tmp_path):
    stations, axis = toolbox.straight()
    saved = toolbox.saved(stations, tmp_path / "in.gpkg", "stations")
    run = toolbox.run("designheights", STATIONS=saved, AXIS=axis, SUMMARY="memory:")
    record = json.loads(run.rows("SUMMARY")[0]["record"])
    assert record["parameters"]["STATIONS"] == saved.source() and record["height_system"] == "unknown"
    assert record["units"] == {"height_name": "metre", "chainage_name": "metre"}


def test_the_desktop_dresses_what_it_loads(toolbox, tmp_path, window_library):
    """As a run of the form does: results are loaded into the project, each with a style of its own."""
    import processing
    from qgis.core import QgsProcessingContext, QgsProject

    stations, axis = toolbox.straight()
    context, project = QgsProcessingContext(), QgsProject.instance()
    context.setProject(project)
    try:
        results = processing.runAndLoadResults(
            "tautline:designheights",
            {
                "STATIONS": stations,
                "AXIS": axis,
                "TOLERANCE": 0.01,
                "OUTPUT": "TEMPORARY_OUTPUT",
                "SUMMARY": str(tmp_path / "sum.gpkg"),
            },
            context=context,
        )
        loaded = {layer.name(): layer for layer in project.mapLayers().values()}
        assert set(loaded) == {"Residuals", "Summary of residuals"}
        assert json.loads(loaded["Residuals"].customProperty("tautline/record"))["parameters"]["TOLERANCE"] == 0.01
        assert loaded["Residuals"].renderer().type() != "singleSymbol" and results["COUNT"] == 11
    finally:
        project.clear()
