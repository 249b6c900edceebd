"""What a killed run leaves beside its outputs' places, and what the next one makes of it."""

import importlib
import os

import pytest

pytest.importorskip("qgis.core")


@pytest.fixture
def stage(host):
    return importlib.import_module("tautline.algorithms.boundary.stage_folder")


def killed_when_ready(stage, place, texts):
    """The folder of a run that was killed when its outputs were whole, before the first was moved."""
    folder = stage.StageFolder(str(place))
    for name, text in texts.items():
        path = os.path.join(folder.slot(), name)
        with open(path, "w", encoding="utf-8") as file:
            file.write(text)
        folder.files.append((os.path.relpath(path, folder.path), name))
    folder._note(ready=True)
    # The system gives up the lock of a process that is gone.
    folder._lock.unlock()
    return folder


def later(path, folder, seconds):
    """Let a file be written so long after the folder's list."""
    at = os.stat(os.path.join(folder.path, "moves.json")).st_mtime + seconds
    os.utime(path, (at, at))


def test_outputs_that_were_whole_are_put_in_place(stage, tmp_path):
    (tmp_path / "a.csv").write_text("old")
    folder = killed_when_ready(stage, tmp_path, {"a.csv": "new", "b.csv": "new"})
    later(tmp_path / "a.csv", folder, -1)
    assert stage.settle_leftovers(str(tmp_path)) == (["a.csv", "b.csv"], 1)
    assert sorted(os.listdir(tmp_path)) == ["a.csv", "b.csv"]
    assert [(tmp_path / name).read_text() for name in ("a.csv", "b.csv")] == ["new", "new"]


def test_a_later_result_is_not_written_over(stage, tmp_path):
    folder = killed_when_ready(stage, tmp_path, {"a.csv": "left over", "b.csv": "left over"})
    (tmp_path / "a.csv").write_text("later")
    later(tmp_path / "a.csv", folder, 1)
    assert stage.settle_leftovers(str(tmp_path)) == ([], 1)
    assert os.listdir(tmp_path) == ["a.csv"] and (tmp_path / "a.csv").read_text() == "later"


def test_moves_that_had_begun_are_ended(stage, tmp_path):
    folder = killed_when_ready(stage, tmp_path, {"a.csv": "new", "b.csv": "new"})
    staged, name = folder.files[0]
    os.replace(os.path.join(folder.path, staged), tmp_path / name)
    # As the host does that opens a GeoPackage.
    later(tmp_path / name, folder, 1)
    assert stage.settle_leftovers(str(tmp_path)) == (["a.csv", "b.csv"], 1)
    assert (tmp_path / "b.csv").read_text() == "new" and sorted(os.listdir(tmp_path)) == ["a.csv", "b.csv"]


def test_the_folder_of_a_run_that_goes_on_is_left_alone(stage, tmp_path):
    folder = stage.StageFolder(str(tmp_path))
    assert stage.settle_leftovers(str(tmp_path)) == ([], 0) and os.path.isdir(folder.path)
    folder.remove()
    assert os.listdir(tmp_path) == []
