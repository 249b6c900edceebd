"""The archive as people install it; what ``installed_script.py`` saw."""

import importlib.util
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]


@pytest.fixture(scope="module")
def archive(tmp_path_factory):
    spec = importlib.util.spec_from_file_location("archive", ROOT / "tests" / "release" / "archive.py")
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    if not (ROOT / ".git").exists():
        pytest.skip("an archive is made of what is under version control, and this is a copy without it")
    return module.made(tmp_path_factory.mktemp("archive"))


@pytest.fixture(scope="module")
def seen(drive_installed, archive):
    return drive_installed("installed_script.py", archive)


def test_the_host_installs_and_starts_it(seen):
    assert seen["provider"] and seen["version"]
    assert Path(seen["place"]).parts[-3:] == ("python", "plugins", "tautline")
    assert not Path(seen["place"]).is_symlink()


def test_the_example_opens(seen):
    assert seen["asked"]["unanswered"] == [] and seen["valid"]
    for name in ("Residuals", "Axis", "Imagery", "Residual bars"):
        assert [one for one in seen["layers"] if one.startswith(name)], name


def test_the_chain_runs(seen):
    assert seen["count"] > 50
    due = {"placed.gpkg", "residuals.gpkg", "fitted.gpkg", "schedule.gpkg", "report.html", "report.pdf"}
    assert due <= set(seen["files"]) and min(seen["files"][name] for name in due) > 10_000
