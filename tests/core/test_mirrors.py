"""Every module of the core has tests of its own name beside it."""

import pathlib

HERE = pathlib.Path(__file__).resolve().parent
CORE = HERE.parents[1] / "algorithms" / "core"


def test_every_core_module_has_its_mirror():
    modules = {path.stem for path in CORE.glob("*.py")} - {"__init__"}
    mirrors = {path.stem[len("test_") :] for path in HERE.glob("test_*.py")}
    assert modules and not modules - mirrors
