"""A run once more, from the list or the guided panel: the new result stands where the old one was, or has a name of its
own, and the forms that follow know which results belong together."""

import pytest

qgis_core = pytest.importorskip("qgis.core")


@pytest.fixture
def project(host, window_library):
    found = qgis_core.QgsProject.instance()
    found.clear()
    yield found
    found.clear()


def shown(project):
    return sorted(layer.name() for layer in project.mapLayers().values())


def cell(layer, row, field, value=None):
    feature = list(layer.getFeatures())[row]
    if value is not None:
        index = layer.fields().indexOf(field)
        assert layer.dataProvider().changeAttributeValues({feature.id(): {index: value}})
    return feature[field]


def move(layer, row, dx):
    feature = list(layer.getFeatures())[row]
    place = feature.geometry().asPoint()
    there = qgis_core.QgsGeometry.fromPointXY(qgis_core.QgsPointXY(place.x() + dx, place.y()))
    assert layer.dataProvider().changeGeometryValues({feature.id(): there})


@pytest.fixture
def made(project, toolbox):
    """(stations, axis, {output: layer in memory}) of one run of designheights, all in the project."""
    stations, axis = toolbox.straight()
    for layer in (stations, axis):
        project.addMapLayer(layer)
    return stations, axis, results(project, stations, axis)


def results(project, stations, axis, names=("Residuals", "Each axis"), **given):
    """{output: layer in memory} of a run of designheights from the window, dressed and with its record."""
    from tautline.plugin import toolbox

    keys = ("OUTPUT", "SUMMARY")
    places = {key: qgis_core.QgsProcessingOutputLayerDefinition("TEMPORARY_OUTPUT", project) for key in keys}
    given = {"STATIONS": stations.id(), "AXIS": axis.id(), "TOLERANCE": 0.01, **places, **given}
    done = toolbox.run("tautline:designheights", given)
    found = {}
    for key, name in zip(keys, names):
        layer = done.context.takeResultLayer(done.results[key])
        details = done.context.layersToLoadOnCompletion()[done.results[key]]
        details.postProcessor().postProcessLayer(layer, done.context, done.feedback)
        layer.setName(name)
        found[key] = layer
    return found


# Run again ----------------------------------------------------------------------------------------------------------


def added(project, layers):
    for layer in layers.values():
        project.addMapLayer(layer)
    return layers


def test_run_again_fills_the_layers_in_memory_anew(project, made):
    from tautline.plugin.review.run_again import RunAgain

    stations, _, layers = made
    added(project, layers)
    before = sorted(project.mapLayers())
    cell(stations, 4, "height", 50.5)
    again = RunAgain(layers["OUTPUT"])
    assert "layer 'Residuals', in memory" in again.question() and "'Each axis'" in again.question()
    again.run()
    assert sorted(project.mapLayers()) == before and shown(project).count("Residuals") == 1
    assert abs(cell(layers["OUTPUT"], 4, "residual")) > 0.4
    assert cell(layers["SUMMARY"], 0, "max_abs") > 0.4
    # What was written is known of the new rows.
    from tautline.plugin.review.comparing import has_own_edits

    assert not has_own_edits(layers["OUTPUT"])
    assert "Edited by hand" not in RunAgain(layers["OUTPUT"]).question()
    cell(layers["OUTPUT"], 4, "residual", 0.25)
    assert has_own_edits(layers["OUTPUT"])
    assert "Edited by hand since, which this undoes: 'Residuals'." in RunAgain(layers["OUTPUT"]).question()


def test_layers_in_memory_that_were_filled_anew_say_so(project, made):
    """Their rows come by the provider, of which nobody hears: what was compared before would be kept."""
    from tautline.plugin.review.run_again import RunAgain

    stations, _, layers = made
    added(project, layers)
    heard = []
    for key, layer in layers.items():
        layer.dataChanged.connect(lambda key=key: heard.append(key))
    RunAgain(layers["OUTPUT"]).run()
    assert sorted(set(heard)) == ["OUTPUT", "SUMMARY"]


def test_run_again_writes_into_the_file_a_temporary_layer_was_kept_in(project, made, toolbox, tmp_path):
    from tautline.plugin.review.run_again import RunAgain

    stations, _, layers = made
    record = layers["OUTPUT"].customProperty("tautline/record")
    path = tmp_path / "kept.gpkg"
    kept = toolbox.saved(layers["OUTPUT"], path, "kept")
    kept.setCustomProperty("tautline/record", record)
    toolbox.saved(stations, path, "other")
    project.addMapLayer(kept)
    cell(stations, 4, "height", 50.5)
    again = RunAgain(kept)
    assert f"{path}, kept" in again.question()
    again.run()
    assert shown(project) == ["Residuals", "axis", "stations"] and abs(cell(kept, 4, "residual")) > 0.4
    other = qgis_core.QgsVectorLayer(f"{path}|layername=other", "other", "ogr")
    assert other.isValid() and other.featureCount() == 11, "other tables stay"


def test_edits_that_are_not_saved_are_never_written_over(project, made):
    from tautline.plugin.review.run_again import CannotRunAgain, RunAgain

    layer = added(project, made[2])["OUTPUT"]
    assert layer.startEditing() and layer.deleteFeature(next(layer.getFeatures()).id())
    with pytest.raises(CannotRunAgain, match="'Residuals' would be overwritten"):
        RunAgain(layer)
    layer.rollBack()


# The guided run -----------------------------------------------------------------------------------------------------


def guided(made, title="Guided run: heights", place=""):
    from tautline.plugin.guided.running import Outcome, show

    tables = {"OUTPUT": "residuals", "SUMMARY": "summary"}
    return show(Outcome({tables[key]: layer for key, layer in made.items()}), title, place)


def test_a_second_guided_run_in_memory_takes_the_place_of_the_first(project, made):
    stations, axis, layers = made
    guided(layers)
    layers["OUTPUT"].setCustomProperty("tautline/decisions", "/p/chosen.gpkg")
    first = layers["OUTPUT"].id()
    second = results(project, stations, axis, TOLERANCE=0.02)
    guided(second)
    assert shown(project) == ["Each axis", "Residuals", "axis", "stations"]
    assert first not in project.mapLayers() and second["OUTPUT"].id() in project.mapLayers()
    assert second["OUTPUT"].customProperty("tautline/decisions") == "/p/chosen.gpkg"
    assert [group.name() for group in project.layerTreeRoot().findGroups()] == ["Guided run: heights"]


def test_what_was_edited_by_hand_stays_and_the_new_one_has_another_name(project, made):
    stations, axis, layers = made
    guided(layers)
    move(layers["OUTPUT"], 2, 0.5)
    for number in (2, 3):
        guided(results(project, stations, axis))
        # Once more: the numbered ones are replaced, the edited one stays.
        assert shown(project) == ["Each axis", "Residuals", "Residuals (2)", "axis", "stations"], number
        groups = [group.name() for group in project.layerTreeRoot().findGroups()]
        assert groups == ["Guided run: heights (2)", "Guided run: heights"], number


def test_results_of_other_heights_have_names_of_their_own(project, made):
    stations, axis, layers = made
    guided(layers)
    guided(results(project, stations, axis), "Guided run: others")
    assert shown(project) == ["Each axis", "Each axis (2)", "Residuals", "Residuals (2)", "axis", "stations"]


# The forms that follow ----------------------------------------------------------------------------------------------


def compared(layer):
    from tautline.plugin import follow_up_forms

    return follow_up_forms.known("tautline:comparesurveys", layer)["SURVEYS"]


def test_a_comparison_begins_with_the_placed_stations_as_the_guide_does(project, toolbox, made):
    _, axis, layers = made
    added(project, layers)
    assert compared(layers["OUTPUT"]) == [layers["OUTPUT"].id()], "points that were never placed have no chainage"
    rows = [{"station": f"0+{k}00", "height": 50.0, "levelled": 50.001} for k in range(1, 10)]
    placed = toolbox.run("placestations", INPUT=toolbox.table(rows), AXIS=axis).layer()
    project.addMapLayer(placed)
    found = added(project, results(project, placed, axis))["OUTPUT"]
    assert compared(found) == [placed.id()]
    # Of heights in another field the comparison would know nothing; the residuals tell them.
    other = added(project, results(project, placed, axis, HEIGHT_FIELD="levelled"))["OUTPUT"]
    assert compared(other) == [other.id()]
    project.removeMapLayer(placed.id())
    assert compared(found) == [found.id()]


def test_of_several_results_the_forms_take_those_of_the_same_stations(project, made, toolbox):
    from tautline.plugin import follow_up_forms

    stations, axis, layers = made
    added(project, layers)
    other = toolbox.straight(height=60.0)[0]
    project.addMapLayer(other)
    others = added(project, results(project, other, axis))
    for one in (layers, others):
        assert follow_up_forms.known("tautline:reviewreport", one["OUTPUT"])["SUMMARY"] == one["SUMMARY"].id()
    # Two of the same stations: only the user knows which is meant.
    added(project, results(project, stations, axis))
    assert "SUMMARY" not in follow_up_forms.known("tautline:reviewreport", layers["OUTPUT"])
    assert follow_up_forms.known("tautline:reviewreport", others["OUTPUT"])["SUMMARY"] == others["SUMMARY"].id()
    # The only one of its kind, but of other stations.
    for layer in (layers["OUTPUT"], layers["SUMMARY"]):
        project.removeMapLayer(layer.id())
    project.removeMapLayers([one.id() for one in project.mapLayers().values() if one.name() == "Each axis"][1:])
    (summary,) = (one for one in project.mapLayers().values() if one.name() == "Each axis")
    of_it = [one for one in project.mapLayers().values() if one.name() == "Residuals"]
    known = [follow_up_forms.known("tautline:reviewreport", one).get("SUMMARY") for one in of_it]
    assert sorted(map(bool, known)) == [False, True] and summary.id() in known
