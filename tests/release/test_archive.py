"""The archive for the plugin portal: what it holds, and that its checks can fail."""

import importlib.util
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]


@pytest.fixture(scope="module")
def archive():
    if not (ROOT / ".git").exists():
        pytest.skip("an archive is made of what is under version control, and this is a copy without it")
    spec = importlib.util.spec_from_file_location("archive", Path(__file__).with_name("archive.py"))
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def test_the_archive_is_fit_and_always_the_same(archive, tmp_path):
    (tmp_path / "again").mkdir()
    first, second = archive.made(tmp_path), archive.made(tmp_path / "again")
    assert archive.faults(first) == []
    assert first.read_bytes() == second.read_bytes()
    with zipfile.ZipFile(first) as opened:
        names = opened.namelist()
    assert {"tautline/LICENSE", "tautline/plugin/guide/method.html", "tautline/sample_layers/range/axis.gpkg"} <= set(
        names
    )
    assert not [name for name in names if "/tests/" in name or name.endswith((".sh", ".pyc"))]


@pytest.mark.parametrize(
    "name, mode, said",
    [
        ("tautline/run.sh", 0o644, "run.sh does not belong"),
        ("tautline/.hidden", 0o644, "does not belong"),
        ("tautline/core/__pycache__/a.pyc", 0o644, "does not belong"),
        ("other/a.py", 0o644, "is not below tautline/"),
        ("tautline/a.py", 0o755, "is executable"),
    ],
)
def test_a_fault_is_told(archive, tmp_path, name, mode, said):
    path = archive.made(tmp_path)
    entry = zipfile.ZipInfo(name)
    entry.external_attr = mode << 16
    with zipfile.ZipFile(path, "a") as opened:
        opened.writestr(entry, b"")
    assert [said in fault for fault in archive.faults(path)] == [True]


def test_what_is_missing_is_told(archive, tmp_path):
    path = tmp_path / "empty.zip"
    with zipfile.ZipFile(path, "w") as opened:
        opened.writestr("tautline/__init__.py", b"")
    assert "tautline/LICENSE is missing." in archive.faults(path)
