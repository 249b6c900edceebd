"""Every name of Qt that the plugin uses exists in PyQt6 too: proved from the sources, for hosts that nobody here has.

PyQt6 is looked into by a process of its own: it cannot live beside the host's PyQt5. The names are resolved in it, so
an enum without its scope, a class that moved or a method that went is found, whatever the tests run on.
"""

import ast
import json
import pathlib
import subprocess
import sys

import pytest

ROOT = pathlib.Path(__file__).resolve().parents[1]
SOURCES = sorted([*(ROOT / "plugin").rglob("*.py"), *(ROOT / "algorithms").rglob("*.py"), ROOT / "__init__.py"])
SHIM = "qgis.PyQt."
# Methods that classes of PyQt5 have and none of PyQt6, called here of the host, numpy and matplotlib alone.
OTHERS = {"blit", "layers", "log", "logMessage", "parameters", "setLayers", "uri"}
LOOK = """
import importlib, json, sys
asked = json.load(sys.stdin)
missing = []
for module, chain in asked["chains"]:
    try:
        found = importlib.import_module("PyQt6." + module)
        for name in chain:
            found = getattr(found, name)
    except (ImportError, AttributeError):
        missing.append(".".join([module, *chain]))
names = set()
for module in asked["modules"]:
    for thing in vars(importlib.import_module("PyQt6." + module)).values():
        if isinstance(thing, type):
            names.update(dir(thing))
json.dump({"missing": missing, "names": sorted(names)}, sys.stdout)
"""
NAMES_OF_5 = """
import importlib, json, sys
names = set()
for module in json.load(sys.stdin):
    for thing in vars(importlib.import_module("PyQt5." + module)).values():
        if isinstance(thing, type):
            names.update(dir(thing))
json.dump(sorted(names), sys.stdout)
"""


def _asked(program, what):
    told = subprocess.run(
        [sys.executable, "-c", program], input=json.dumps(what), capture_output=True, text=True, check=True
    )
    return json.loads(told.stdout)


class Names(ast.NodeVisitor):
    """Names of Qt in one source: ``imported`` {name here: (module, its name)}, ``chains``: what is asked of them,
    ``called``: names of all attributes that are called of anything."""

    def __init__(self, path):
        self.imported, self.chains, self.called, self.guarded = {}, set(), set(), set()
        self.visit(ast.parse(path.read_text(encoding="utf-8")))

    def visit_Try(self, node):  # noqa: N802 - the visitor's name
        """What stands in 'except ImportError' is the old host's, what stands before it has to be there."""
        for part in [*node.body, *node.orelse, *node.finalbody]:
            self.visit(part)
        for handler in node.handlers:
            if not (isinstance(handler.type, ast.Name) and handler.type.id == "ImportError"):
                self.visit(handler)

    def visit_If(self, node):  # noqa: N802
        """A question for the host's version answers for the old host in 'else'."""
        self.visit(node.test)
        versions = "versionInt" in ast.dump(node.test)
        for part in [*node.body, *([] if versions else node.orelse)]:
            self.visit(part)

    def visit_ImportFrom(self, node):  # noqa: N802
        if node.module and node.module.startswith(SHIM) and not node.level:
            for alias in node.names:
                self.imported[alias.asname or alias.name] = (node.module[len(SHIM) :], alias.name)
                self.chains.add((node.module[len(SHIM) :], (alias.name,)))

    def visit_Call(self, node):  # noqa: N802
        if isinstance(node.func, ast.Attribute):
            self.called.add(node.func.attr)
        self.generic_visit(node)

    def visit_Attribute(self, node):  # noqa: N802
        chain, inner = [], node
        while isinstance(inner, ast.Attribute):
            chain.insert(0, inner.attr)
            inner = inner.value
        if isinstance(inner, ast.Name) and inner.id in self.imported:
            module, name = self.imported[inner.id]
            self.chains.add((module, (name, *chain)))
        else:
            self.generic_visit(node)


@pytest.fixture(scope="module")
def six():
    """What PyQt6 says of the sources' names."""
    try:
        _asked("import json, PyQt6.QtWidgets; print(json.dumps(1))", [])
    except subprocess.CalledProcessError:
        pytest.skip("PyQt6 is not installed beside this Python (python3-pyqt6 on Debian)")
    found = [Names(path) for path in SOURCES]
    chains = sorted(set().union(*(one.chains for one in found)))
    modules = sorted({module for module, _ in chains})
    return found, chains, modules, _asked(LOOK, {"chains": chains, "modules": modules})


def test_every_name_resolves(six):
    _, chains, _, told = six
    assert len(chains) > 150 and ("QtCore", ("Qt", "AlignmentFlag", "AlignTop")) in chains
    assert told["missing"] == []


def test_no_method_is_called_that_went(six):
    """A method that classes of PyQt5 have and none of PyQt6 has, exec_ before all."""
    found, _, modules, told = six
    try:
        old = set(_asked(NAMES_OF_5, modules))
    except subprocess.CalledProcessError:
        pytest.skip("this host has no PyQt5 to compare with")
    gone = old - set(told["names"]) - set(dir(int))
    assert "exec_" in gone
    called = set().union(*(one.called for one in found))
    assert sorted(called & gone - OTHERS) == []


def test_the_proof_finds_what_it_looks_for(six, tmp_path):
    """An enum without its scope, a class in its old home, and neither where the old host is asked for."""
    path = tmp_path / "a.py"
    path.write_text(
        "from qgis.PyQt.QtCore import Qt\n"
        "try:\n    from qgis.PyQt.QtGui import QAction\n"
        "except ImportError:\n    from qgis.PyQt.QtWidgets import QAction\n"
        "from qgis.PyQt.QtWidgets import QShortcut\nx = Qt.AlignTop\n"
    )
    chains = sorted(Names(path).chains)
    told = _asked(LOOK, {"chains": chains, "modules": ["QtCore"]})
    assert told["missing"] == ["QtCore.Qt.AlignTop", "QtWidgets.QShortcut"]


def test_nothing_goes_around_the_shim():
    """Neither PyQt by its number, nor a chart library bound to one Qt."""
    for path in SOURCES:
        text = path.read_text(encoding="utf-8")
        for word in ("PyQt5", "PyQt6", "backend_qt5", "backend_qt4", "PySide"):
            assert word not in text, f"{path.name}: {word}"
