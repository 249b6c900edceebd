"""Decisions as they are kept: read by other programs, found again by name, never written by a run."""

import sqlite3
import subprocess

import pytest

pytest.importorskip("qgis.core")


@pytest.fixture
def store_of(host):
    from tautline.plugin.decisions.decision_store import DecisionStore

    return DecisionStore


def decision(station="0+850", word="accept", **more):
    from tautline.plugin.decisions.decision_store import Decision

    return Decision(**{"axis": "left rail", "station": station, "chainage": 850.0, "decision": word, **more})


def rows(path):
    with sqlite3.connect(f"file:{path}?mode=ro", uri=True) as connection:
        return connection.execute(
            'select "axis", "station", "chainage", "decision", "note", "by", "at" from decisions order by fid'
        ).fetchall()


def test_words_are_those_that_the_schedule_reads(host):
    from tautline.algorithms.language.decision_words import DECISIONS, decision_help, decision_label
    from tautline.algorithms.schedule.supports import MEANINGS

    assert set(DECISIONS) <= set(MEANINGS)
    assert [MEANINGS[word] for word in DECISIONS] == ["keep", "measure again", "left out", ""]
    for word in (*DECISIONS, ""):
        assert decision_label(word)[0].isupper() and decision_help(word).endswith(".")


def test_file_is_made_with_the_first_decision(store_of, tmp_path):
    store = store_of(tmp_path / "x_decisions.gpkg")
    assert store.read() == {} and not list(tmp_path.iterdir())
    store.put(decision(note="a ‘note’ with ünïcode", by="Someone", at="2026-01-02T03:04:05+00:00"))
    assert rows(store.path) == [
        ("left rail", "0+850", 850.0, "accept", "a ‘note’ with ünïcode", "Someone", "2026-01-02T03:04:05+00:00")
    ]
    assert list(store.read().values()) == [
        decision(note="a ‘note’ with ünïcode", by="Someone", at="2026-01-02T03:04:05+00:00")
    ]


def test_one_row_for_a_station_and_none_when_dropped(store_of, tmp_path):
    store = store_of(tmp_path / "x.gpkg")
    store.put(decision())
    store.put(decision(word="measure again"))
    store.put(decision("1+650", "move the support"))
    assert [row[1:4] for row in rows(store.path)] == [
        ("0+850", 850.0, "measure again"),
        ("1+650", 850.0, "move the support"),
    ]
    store.drop(decision().key)
    store.drop(decision("9+999").key)
    assert [row[1] for row in rows(store.path)] == ["1+650"]


def test_found_again_whatever_the_way_the_station_is_written(store_of, tmp_path):
    from tautline.plugin.decisions.decision_store import key_of

    store = store_of(tmp_path / "x.gpkg")
    store.put(decision("0+850"))
    store.put(decision("850", "reading error"))
    assert len(rows(store.path)) == 1 and store.read()[key_of("left rail", "0+850.000")].decision == "reading error"
    assert key_of("right rail", "0+850") not in store.read()


def test_undo_and_redo_restore_the_row(store_of, tmp_path):
    from tautline.plugin.decisions.decision_store import History

    store, history = store_of(tmp_path / "x.gpkg"), History()
    first, second = decision(note="one"), decision(word="move the support", note="two")
    for before, after in ((None, first), (first, second)):
        store.put(after)
        history.add(before, after)
    history.undo(store)
    assert list(store.read().values()) == [first]
    history.undo(store)
    assert store.read() == {} and not history.can_undo
    history.redo(store)
    history.redo(store)
    assert list(store.read().values()) == [second] and not history.can_redo
    history.undo(store)
    history.add(first, None)
    assert not history.can_redo


def test_other_tables_of_a_chosen_file_stay(store_of, toolbox, tmp_path):
    path = tmp_path / "mine.gpkg"
    toolbox.saved(toolbox.table([{"a": 1.0}]), path, "mine")
    store_of(path).put(decision())
    assert len(rows(path)) == 1
    with sqlite3.connect(path) as connection:
        assert connection.execute("select a from mine").fetchall() == [(1.0,)]


def test_table_that_is_none_of_decisions_is_refused_and_kept(store_of, toolbox, tmp_path):
    from tautline.plugin.decisions.decision_store import DecisionsNotSaved

    path = tmp_path / "other.gpkg"
    toolbox.saved(toolbox.table([{"axis": "x"}]), path, "decisions")
    for use in (lambda: store_of(path).read(), lambda: store_of(path).put(decision())):
        with pytest.raises(DecisionsNotSaved, match="lacks the field station, chainage") as caught:
            use()
        assert "\n" not in str(caught.value)
    with sqlite3.connect(path) as connection:
        assert connection.execute("select axis from decisions").fetchall() == [("x",)]


@pytest.mark.parametrize("name", ["nowhere/x.gpkg", "folder.gpkg", "x.txt"])
def test_place_that_cannot_be_written(store_of, tmp_path, name):
    from tautline.plugin.decisions.decision_store import DecisionsNotSaved

    (tmp_path / "folder.gpkg").mkdir()
    with pytest.raises(DecisionsNotSaved, match=name.split("/")[-1]) as caught:
        store_of(tmp_path / name).put(decision())
    assert str(caught.value).endswith(".") and "\n" not in str(caught.value)
    assert [path.name for path in tmp_path.iterdir()] == ["folder.gpkg"]


def test_read_only_place(store_of, tmp_path):
    from tautline.plugin.decisions.decision_store import DecisionsNotSaved

    place = tmp_path / "small"
    place.mkdir()
    if subprocess.run(["mount", "-t", "tmpfs", "-o", "size=1m", "tmpfs", str(place)], capture_output=True).returncode:
        pytest.skip("mounting a small file system is not allowed here")
    try:
        store_of(place / "old.gpkg").put(decision())
        subprocess.run(["mount", "-o", "remount,ro", str(place)], check=True)
        before = rows(f"{place}/old.gpkg")
        for name in ("old.gpkg", "new.gpkg"):
            with pytest.raises(DecisionsNotSaved, match=name):
                store_of(place / name).put(decision(word="measure again"))
        assert rows(f"{place}/old.gpkg") == before and [path.name for path in place.iterdir()] == ["old.gpkg"]
    finally:
        subprocess.run(["umount", "-l", str(place)], check=True)


def test_place_beside_the_result(host, toolbox, tmp_path):
    from qgis.core import QgsVectorLayer

    from tautline.plugin.decisions.decision_store import PLACE_PROPERTY, place_of

    points, axis = toolbox.straight()
    toolbox.run("designheights", STATIONS=points, AXIS=axis, OUTPUT=str(tmp_path / "tunnel.gpkg"))
    layer = QgsVectorLayer(f"{tmp_path}/tunnel.gpkg|layername=tunnel", "Residuals", "ogr")
    assert place_of(layer) == str(tmp_path / "tunnel_decisions.gpkg")
    assert place_of(points) == ""
    points.setCustomProperty(PLACE_PROPERTY, "/elsewhere.gpkg")
    assert place_of(points) == "/elsewhere.gpkg"


@pytest.mark.parametrize("key", ["OUTPUT", "SUMMARY"])
def test_no_run_writes_where_decisions_are_kept(store_of, toolbox, tmp_path, key):
    path = tmp_path / "tunnel_decisions.gpkg"
    store_of(path).put(decision())
    before = path.read_bytes()
    points, axis = toolbox.straight()
    for place in (str(path), f"ogr:dbname='{path}' table=\"other\" (geom)"):
        text = toolbox.refusal("designheights", STATIONS=points, AXIS=axis, **{key: place})
        assert key in text and "tunnel_decisions.gpkg" in text and "decisions are kept" in text
    assert path.read_bytes() == before


def test_decisions_survive_a_run_over_the_result(store_of, toolbox, tmp_path):
    store = store_of(tmp_path / "tunnel_decisions.gpkg")
    points, axis = toolbox.straight()
    for _ in range(2):
        toolbox.run("designheights", STATIONS=points, AXIS=axis, OUTPUT=str(tmp_path / "tunnel.gpkg"))
        if not store.read():
            store.put(decision("0+300"))
            before = (tmp_path / "tunnel_decisions.gpkg").read_bytes()
    assert (tmp_path / "tunnel_decisions.gpkg").read_bytes() == before


def test_schedule_takes_the_decisions(store_of, toolbox, tmp_path):
    """The file as it is, given to the schedule: accepted stays, a reading error is left out, the moved moves."""
    points, axis = toolbox.straight()
    run = toolbox.run(
        "designheights", STATIONS=points, AXIS=axis, TOLERANCE=0.0005, OUTPUT=str(tmp_path / "tunnel.gpkg")
    )
    names = [row["station"] for row in run.rows() if row["status"] in ("high", "low")]
    assert len(names) >= 4
    store = store_of(tmp_path / "tunnel_decisions.gpkg")
    for name, word in zip(names, ("accept", "measure again", "reading error", "move the support")):
        store.put(decision(name, word, axis="line"))
    schedule = toolbox.run("scheduleadjustments", STATIONS=run.layer(), DECISIONS=store.path, TOLERANCE=0.0005)
    actions = {row["station"]: row["action"] for row in schedule.rows()}
    assert [actions[name] for name in names[:3]] == ["keep", "measure again", "left out"]
    assert actions[names[3]] in ("raise", "lower")
