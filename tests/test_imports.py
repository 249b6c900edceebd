"""The one arrow, plugin -> algorithms -> algorithms/core, read from the sources; never back."""

import ast
import pathlib
import sys

import pytest

ROOT = pathlib.Path(__file__).resolve().parents[1]
CORE, HOST_SIDE, SHELL = ROOT / "algorithms" / "core", ROOT / "algorithms", ROOT / "plugin"
THE_HOST = {"qgis", "osgeo", "PyQt5", "PyQt6", "processing"}
# What a file of the core may import at its top, beside its siblings: the standard library and numpy.
PLAIN = set(sys.stdlib_module_names) | {"numpy"}


def files(folder):
    return sorted(path for path in folder.rglob("*.py"))


def imports(path):
    """(module as written from the package's root, inside a function) for each import of a file."""
    package = path.relative_to(ROOT).parts[:-1]
    found = []

    def walk(node, inside):
        for child in ast.iter_child_nodes(node):
            deeper = inside or isinstance(child, (ast.FunctionDef, ast.AsyncFunctionDef, ast.Lambda))
            if isinstance(child, ast.Import):
                found.extend((alias.name, inside) for alias in child.names)
            elif isinstance(child, ast.ImportFrom):
                base = list(package[: len(package) - child.level + 1]) if child.level else []
                module = base + (child.module.split(".") if child.module else [])
                if child.level and not child.module:
                    found.extend((".".join(["."] + module + [alias.name]), inside) for alias in child.names)
                else:
                    found.append((".".join((["."] if child.level else []) + module), inside))
            walk(child, deeper)

    walk(ast.parse(path.read_text(encoding="utf-8")), False)
    return found


def top(module):
    return module.split(".")[0]


def own(module):
    """Path within the package of a relative import, as dotted text; '' for others."""
    return module[2:] if module.startswith("..") else module[1:].lstrip(".") if module.startswith(".") else ""


def entries():
    """Modules of the toolbox entries: those in which a class states an ID."""
    found = set()
    for path in HOST_SIDE.glob("*.py"):
        for node in ast.parse(path.read_text(encoding="utf-8")).body:
            if (
                isinstance(node, ast.ClassDef)
                and path.name != "base.py"
                and any(
                    isinstance(line, ast.Assign) and getattr(line.targets[0], "id", "") == "ID" for line in node.body
                )
            ):
                found.add(path.stem)
    return found


def id_of(path):
    return str(path.relative_to(ROOT))


@pytest.mark.parametrize("path", files(CORE), ids=id_of)
def test_core_knows_no_host(path):
    for module, inside in imports(path):
        if module.startswith("."):
            assert own(module).startswith("algorithms.core"), module
            continue
        assert top(module) not in THE_HOST, module
        if top(module) == "pyproj":
            assert path.name == "geodesy.py", "pyproj is imported by geodesy.py alone"
        elif top(module) == "scipy":
            assert inside, "scipy is imported inside the functions that need it"
        else:
            assert top(module) in PLAIN, module


@pytest.mark.parametrize("path", [p for p in files(HOST_SIDE) if CORE not in p.parents], ids=id_of)
def test_algorithms_know_no_shell(path):
    others = entries() - {path.stem}
    for module, inside in imports(path):
        mine = own(module)
        assert not mine.startswith("plugin") and mine != "plugin", module
        assert not module.startswith(("qgis.gui", "qgis.utils", "pyproj", "osgeo", "PyQt")), module
        assert top(module) not in ("pyproj", "osgeo"), module
        if top(module) in ("scipy", "matplotlib"):
            assert inside, f"{module} is imported inside the functions that need it"
        if mine.startswith("algorithms."):
            assert mine.split(".")[1] not in others, f"an entry imports another: {module}"


@pytest.mark.parametrize("path", files(SHELL), ids=id_of)
def test_shell_imports_the_shim_only(path):
    for module, _ in imports(path):
        assert top(module) not in ("PyQt5", "PyQt6", "pyproj", "osgeo"), module


def test_package_imports_nothing_at_its_top():
    assert all(inside for _, inside in imports(ROOT / "__init__.py"))


def test_entries_are_found_and_listed():
    """The tests above would pass on an empty folder."""
    assert {"design_heights", "place_stations", "generate_stations", "measure_stations", "convert_heights"} <= entries()
    assert len(files(CORE)) > 10 and len(imports(HOST_SIDE / "design_heights.py")) > 8
    provider = (SHELL / "provider.py").read_text(encoding="utf-8")
    assert all(f"algorithms.{name} import" in provider for name in entries())
    assert own(imports(HOST_SIDE / "design_heights.py")[3][0]).startswith("algorithms.")


def test_core_runs_without_the_host():
    """In a fresh interpreter, importing the whole core brings in no module of the host."""
    import subprocess

    names = [path.stem for path in CORE.glob("*.py") if path.stem != "__init__"]
    code = (
        "import sys, types, importlib; package = types.ModuleType('algorithms'); package.__path__ = [sys.argv[1]]; "
        "sys.modules['algorithms'] = package; [importlib.import_module('algorithms.core.' + name) for name in "
        "sys.argv[2:]]; sys.exit(bool({'qgis', 'osgeo', 'PyQt5', 'scipy'} & set(sys.modules)))"
    )
    subprocess.run([sys.executable, "-c", code, str(HOST_SIDE), *names], check=True)
