"""What who listens to a run's feedback gets: codes, parameters and refusals, whatever the sentences say."""

import time

import pytest
from qgis.core import (
    QgsApplication,
    QgsProcessingContext,
    QgsProcessingException,
    QgsProcessingFeedback,
    QgsProcessingModelAlgorithm,
    QgsProcessingModelChildAlgorithm,
    QgsProcessingModelChildParameterSource,
    QgsProject,
)

from tautline.algorithms.entry.messages import (
    BEYOND_ENDS,
    DOUBT,
    FACT,
    NO_AXIS_NAMED,
    READING,
    REFUSAL,
    ROW_REJECTED,
    STATION_TWICE,
    listen,
)

UTM = "EPSG:32631"
X, Y = 500000.0, 5540000.0


@pytest.fixture
def heard(log):
    """A feedback that is listened to; ``heard.messages`` is what arrives."""
    feedback = log()
    feedback.messages = listen(feedback)
    return feedback


@pytest.fixture
def axis(toolbox):
    return toolbox.lines([{"at": [(X, Y), (X + 1000.0, Y)], "name": "line"}], UTM)


def of_kind(feedback, kind):
    return [message for message in feedback.messages if message.kind == kind]


def codes(feedback):
    return [message.code for message in of_kind(feedback, DOUBT)]


# --- runs


def test_list_with_everything_that_the_guided_run_acts_on(toolbox, heard, axis):
    rows = [{"station": s, "height": 5.0} for s in ("0+000", "0+500", "0+500", "1+500", "here")]
    toolbox.run("placestations", heard, INPUT=toolbox.table(rows), AXIS=axis, REJECTED="memory:")
    assert codes(heard) == [ROW_REJECTED, BEYOND_ENDS, STATION_TWICE]
    # The log has each sentence once, as before.
    assert [message.text for message in of_kind(heard, DOUBT)] == heard.warnings
    assert of_kind(heard, READING)[0].text == (
        "Columns: station from field 'station', offset from none, height from field 'height', axis from none."
    )
    assert {message.text for message in of_kind(heard, FACT)} <= set(heard.info)
    assert sum("Understood" in text for text in heard.info) == 1 and not of_kind(heard, REFUSAL)


def test_more_rejected_rows_than_are_told_have_the_code_too(toolbox, heard, axis):
    rows = [{"station": "0+000", "height": 5.0}] + [{"station": "here", "height": 5.0}] * 23
    toolbox.run("placestations", heard, INPUT=toolbox.table(rows), AXIS=axis, REJECTED="memory:")
    assert codes(heard) == [ROW_REJECTED] * 21


@pytest.mark.parametrize("entry", ["measurestations", "designheights"])
def test_field_that_names_no_axis(toolbox, heard, axis, entry):
    points = toolbox.points([{"at": (X + 100.0 * k, Y), "height": 5.0, "axis": "other"} for k in range(5)], UTM)
    toolbox.run(entry, heard, STATIONS=points, AXIS=axis)
    (doubt,) = of_kind(heard, DOUBT)
    assert doubt.code == NO_AXIS_NAMED and doubt.keys == ("STATION_AXIS_FIELD",)
    assert doubt.text == (
        "No value of the field 'axis' of layer 'stations' names an axis; each station goes to its nearest axis."
    )


def test_empty_field_of_axes_is_no_doubt(toolbox, heard, axis):
    points = toolbox.points([{"at": (X + 100.0 * k, Y), "height": 5.0, "axis": ""} for k in range(5)], UTM)
    toolbox.run("measurestations", heard, STATIONS=points, AXIS=axis)
    assert codes(heard) == []


def test_stations_beyond_the_ends_and_a_field_in_another_unit(toolbox, heard, axis):
    """The field's name says feet: that counts, and a form that says metres is refused."""
    points = toolbox.points([{"at": (X + 260.0 * k, Y), "elev_ft": 5.0} for k in range(5)], UTM)
    toolbox.run("designheights", heard, STATIONS=points, AXIS=axis, HEIGHT_FIELD="elev_ft", SUMMARY="memory:")
    doubts = {message.code: message for message in of_kind(heard, DOUBT)}
    assert set(doubts) == {BEYOND_ENDS}
    text = toolbox.refusal("designheights", STATIONS=points, AXIS=axis, HEIGHT_FIELD="elev_ft", HEIGHT_UNIT="metre")
    assert "elev_ft" in text and "HEIGHT_UNIT" in text


def test_an_entry_warns_of_what_is_not_used(toolbox, heard, axis):
    points = toolbox.points([{"at": (X + 100.0 * k, Y), "height": 5.0} for k in range(5)], UTM)
    toolbox.run("designheights", heard, STATIONS=points, AXIS=axis, UNDULATION_VALUE=3.0)
    assert of_kind(heard, DOUBT)[0].keys == ("UNDULATION_VALUE", "UNDULATION")


# --- refusals


@pytest.mark.parametrize(
    ("given", "keys"),
    [
        ({"HEIGHT_FIELD": "nothing"}, ("HEIGHT_FIELD",)),
        ({"DESIGN": "inclined"}, ("SLOPE",)),
        ({"CHAINAGE_A": "12+5"}, ("CHAINAGE_A",)),
        ({"UNDULATION": "constant"}, ("UNDULATION_VALUE", "UNDULATION")),
        ({"DESIGN": "reference"}, ("REFERENCE",)),
        # What is refused before the run: by the values, the places, and by the host itself.
        ({"HEIGHT_A": "abc"}, ("HEIGHT_A",)),
        ({"DESIGN": "arch"}, ("DESIGN",)),
        ({"SLOPES": 1}, ("SLOPES",)),
        ({"OUTPUT": "/nowhere/at/all.gpkg"}, ("OUTPUT",)),
        ({"AXIS": "nothing"}, ("AXIS",)),
    ],
)
def test_refusals_state_their_parameters(toolbox, heard, axis, given, keys):
    stations, _ = toolbox.straight()
    context = QgsProcessingContext()
    context.setProject(QgsProject.instance())
    context.setFeedback(heard)
    # The sentences of the host itself are not ours to look at.
    with pytest.raises(QgsProcessingException) as caught:
        toolbox.run("designheights", heard, context, **{"STATIONS": stations, "AXIS": axis, **given})
    refusal = of_kind(heard, REFUSAL)[-1]
    assert refusal.keys == keys and refusal.text in str(caught.value)


def test_chainage_of_the_axis_layer_is_not_the_form_s(toolbox, heard):
    axis = toolbox.lines([{"at": [(X, Y), (X + 1000.0, Y)], "design": "chord", "chain_a": "12+5"}], UTM)
    toolbox.refusal("designheights", heard, STATIONS=toolbox.straight()[0], AXIS=axis)
    assert of_kind(heard, REFUSAL)[-1].keys == ()


def test_output_that_cannot_be_written_states_its_parameter(toolbox, heard, axis, monkeypatch):
    from tautline.algorithms.boundary import output_rows

    write = output_rows.write_rows
    monkeypatch.setattr(output_rows, "write_rows", lambda sink, *rest: write(Full(), *rest))
    toolbox.refusal("designheights", heard, STATIONS=toolbox.straight()[0], AXIS=axis)
    assert of_kind(heard, REFUSAL)[-1].keys == ("OUTPUT",)


class Full:
    """A sink on a place that is full."""

    def addFeatures(self, features, flags):  # noqa: N802 - the host's name
        return False

    def lastError(self):  # noqa: N802 - the host's name
        return "no space"


def test_cancel_is_a_refusal(toolbox, log, axis):
    feedback = log(cancel_at=2)
    heard = listen(feedback)
    toolbox.refusal("designheights", feedback, STATIONS=toolbox.straight()[0], AXIS=axis)
    assert (heard[-1].kind, heard[-1].text) == (REFUSAL, "Cancelled; no output was written.")


# --- others than who listens


def test_feedback_without_a_listener_and_models_run_as_before(toolbox, heard, axis):
    plain = QgsProcessingFeedback(False)
    model = QgsProcessingModelAlgorithm("m", "g")
    child = QgsProcessingModelChildAlgorithm("tautline:generatestations")
    child.setChildId("made")
    child.addParameterSources("AXIS", [QgsProcessingModelChildParameterSource.fromStaticValue(axis)])
    child.addParameterSources("INTERVAL", [QgsProcessingModelChildParameterSource.fromStaticValue(100.0)])
    child.addParameterSources("OUTPUT", [QgsProcessingModelChildParameterSource.fromStaticValue("memory:")])
    model.addChildAlgorithm(child)
    for feedback in (plain, heard):
        context = QgsProcessingContext()
        context.setProject(QgsProject.instance())
        results, done = model.run({}, context, feedback)
        assert done, feedback.textLog()
    assert heard.messages == []


# --- in the shell


def ended(entry, parameters):
    """What a run started by the shell ends with: (Run or None, refusal, feedback)."""
    from tautline.plugin import toolbox as shell

    outcome = []
    started = shell.start(entry, parameters, lambda *what: outcome.append(what))
    end = time.monotonic() + 60
    while not outcome and time.monotonic() < end:
        QgsApplication.processEvents()
        time.sleep(0.01)
    return (*outcome[0], started.feedback)


def on_disk(toolbox, tmp_path, axis):
    """Layers that a task's thread can read."""
    stations, _ = toolbox.straight()
    return {
        "STATIONS": str(toolbox.saved(stations, tmp_path / "stations.gpkg").source()),
        "AXIS": str(toolbox.saved(axis, tmp_path / "axis.gpkg").source()),
        "OUTPUT": "TEMPORARY_OUTPUT",
    }


def test_shell_hears_the_entry_and_not_the_host(toolbox, tmp_path, axis, window_library):
    given = on_disk(toolbox, tmp_path, axis)
    done, refusal, feedback = ended("tautline:designheights", {**given, "UNDULATION_VALUE": 1.0})
    assert done is not None and refusal is None
    (doubt,) = feedback.of_kind(DOUBT)
    assert doubt.keys == ("UNDULATION_VALUE", "UNDULATION")
    feedback.pushWarning("A remark of the host's.")
    assert feedback.of_kind(DOUBT) == [doubt]


def test_shell_gets_the_refusal_with_its_parameters(toolbox, tmp_path, axis, window_library):
    from tautline.plugin import toolbox as shell

    given = on_disk(toolbox, tmp_path, axis)
    done, refusal, _ = ended("tautline:designheights", {**given, "DESIGN": "inclined"})
    assert done is None and refusal.keys == ("SLOPE",)
    assert refusal.text == "Axis 'line': The design 'inclined' needs a slope."
    with pytest.raises(shell.Refused) as caught:
        shell.start("tautline:designheights", {**given, "HEIGHT_A": "abc"}, None)
    assert caught.value.refusal.keys == ("HEIGHT_A",) and isinstance(caught.value, QgsProcessingException)
    with pytest.raises(shell.Refused) as caught:
        shell.start("tautline:designheights", {**given, "AXIS": "nothing"}, None)
    assert caught.value.refusal.keys == ("AXIS",)


def test_shell_gets_the_last_line_of_a_fault(toolbox, tmp_path, axis, monkeypatch, window_library):
    from tautline.algorithms.design_heights import DesignHeights

    def faulty(asked):
        raise ZeroDivisionError("no Traceback wanted")

    monkeypatch.setattr(DesignHeights, "computing", lambda entry: faulty)
    done, refusal, _ = ended("tautline:designheights", on_disk(toolbox, tmp_path, axis))
    assert done is None and refusal.text == "ZeroDivisionError: no Traceback wanted"


def test_panel_words_are_for_showing_only(host):
    from tautline.plugin.guided.requests import answer_of, in_panel_words

    assert in_panel_words("Choose the field (HEIGHT_FIELD).") == "Choose the field (\u2018Height\u2019)."
    assert in_panel_words("They are far; raise MAX_DISTANCE.") and in_panel_words("x (GEOID)") == "x"
    assert answer_of(("MAX_DISTANCE", "HEIGHT_A", "SLOPE")) == "height_a" and answer_of(()) == ""
