"""The rooms of the house and who may enter which, read from the sources: plugin -> algorithms -> core, never back.

The table is that of DEVELOPERS.md. An import inside a function counts like one at the top.
"""

import ast
import functools
import pathlib
import subprocess
import sys

import pytest

ROOT = pathlib.Path(__file__).resolve().parents[1]
ALGORITHMS, SHELL = ROOT / "algorithms", ROOT / "plugin"
CORE = ALGORITHMS / "core"
HOST = {"qgis", "osgeo", "PyQt5", "PyQt6", "processing"}
FAMILIES = {"design", "levelling", "deviations", "comparison", "schedule", "report"}
BELOW = {  # room: the rooms below it that it may import, beside itself
    "core": set(),
    "language": {"core"},
    "boundary": {"language", "core"},
    "documents": {"language", "core"},
    "styles": {"boundary", "language", "core"},
    "entry": {"boundary", "documents", "styles", "language", "core"},
    "structure": {"entry", "boundary", "documents", "styles", "language", "core"},
}
BELOW.update({family: BELOW["structure"] | {"structure"} for family in FAMILIES})
# Whose parts an entry is made of; the others live in the rooms below the families.
FAMILY_OF = {
    "design_heights": "design",
    "fit_reference": "design",
    "test_curvature": "design",
    "reduce_sights": "levelling",
    "adjust_levelling": "levelling",
    "draw_deviations": "deviations",
    "compare_surveys": "comparison",
    "schedule_adjustments": "schedule",
    "review_report": "report",
}
# What a file of the core may import at its top, beside its siblings: the standard library and numpy.
PLAIN = set(sys.stdlib_module_names) | {"numpy"}
# Rooms in which nothing knows the host.
HOST_FREE = ("core", "language")
# Modules of other rooms that keep it out too.
ALONE = ("entry.messages", "entry.run_record")


def files(folder):
    return sorted(folder.rglob("*.py"))


def imports(path):
    """[(module, inside a function)] of a file; our own modules in full, as 'algorithms.core.fit'."""
    package = list(path.relative_to(ROOT).parts[:-1])
    found = []

    def add(module, inside):
        found.append((module, inside))

    def walk(node, inside):
        for child in ast.iter_child_nodes(node):
            deeper = inside or isinstance(child, (ast.FunctionDef, ast.AsyncFunctionDef, ast.Lambda))
            if isinstance(child, ast.Import):
                for alias in child.names:
                    add(alias.name, inside)
            elif isinstance(child, ast.ImportFrom):
                base = package[: len(package) - child.level + 1] if child.level else []
                base = base + (child.module.split(".") if child.module else [])
                for alias in child.names if child.level else ():
                    # 'from .room import module' and 'from .module import name' look alike: the folder tells.
                    target = ROOT.joinpath(*base, alias.name)
                    is_module = target.is_dir() or target.with_suffix(".py").exists()
                    add(".".join([*base, alias.name] if is_module else base), inside)
                if not child.level:
                    add(".".join(base), inside)
            walk(child, deeper)

    walk(ast.parse(path.read_text(encoding="utf-8")), False)
    return found


def top(module):
    return module.split(".")[0]


def room_of(module):
    """The room of a module of algorithms: 'core', 'design' ...; the entry's own name for a toolbox entry."""
    return module.split(".")[1] if module.startswith("algorithms.") else ""


def entries():
    """Modules of the toolbox entries: all there is in algorithms itself."""
    return {path.stem for path in ALGORITHMS.glob("*.py") if path.stem != "__init__"}


def id_of(path):
    return str(path.relative_to(ROOT))


@pytest.mark.parametrize("path", files(CORE), ids=id_of)
def test_core_knows_no_host(path):
    for module, inside in imports(path):
        if top(module) == "algorithms":
            assert room_of(module) == "core", module
            continue
        assert top(module) not in HOST, module
        if top(module) == "pyproj":
            assert path.name == "geodesy.py", "pyproj is imported by geodesy.py alone"
        elif top(module) == "scipy":
            assert inside, "scipy is imported inside the functions that need it"
        else:
            assert top(module) in PLAIN, module


@pytest.mark.parametrize("path", [p for p in files(ALGORITHMS) if p.parent != ALGORITHMS], ids=id_of)
def test_a_room_knows_those_below_it(path):
    room = path.relative_to(ALGORITHMS).parts[0]
    for module, _ in imports(path):
        if top(module) == "algorithms":
            assert room_of(module) in BELOW[room] | {room}, f"{room} imports {module}"
        assert top(module) != "plugin", module


@pytest.mark.parametrize("path", [p for p in files(ALGORITHMS) if p.parent == ALGORITHMS], ids=id_of)
def test_an_entry_knows_its_own_family(path):
    allowed = BELOW["structure"] | {"structure", FAMILY_OF.get(path.stem)}
    for module, _ in imports(path):
        if top(module) == "algorithms":
            assert room_of(module) in allowed, f"{path.stem} imports {module}"
        assert top(module) != "plugin", module


@pytest.mark.parametrize("path", [p for p in files(ALGORITHMS) if CORE not in p.parents], ids=id_of)
def test_algorithms_know_no_window(path):
    for module, inside in imports(path):
        assert not module.startswith(("qgis.gui", "qgis.utils")), module
        assert top(module) not in ("pyproj", "PyQt5", "PyQt6"), module
        # GDAL beside the host's own interface only where features and files are dealt with.
        assert top(module) != "osgeo" or path.parent.name == "boundary", module
        if top(module) in ("scipy", "matplotlib", "jinja2"):
            assert inside, f"{module} is imported inside the functions that need it"


@pytest.mark.parametrize("path", files(SHELL), ids=id_of)
def test_shell_imports_the_shim_only(path):
    for module, _ in imports(path):
        assert top(module) not in ("PyQt5", "PyQt6", "pyproj", "osgeo"), module


# Which functions of ours import our own modules: those that the host calls in its main thread, before a run.
BEFORE_A_RUN = {"computing", "prepared", "checkParameterValues", "prepareAlgorithm"}


@pytest.mark.parametrize("path", files(ALGORITHMS), ids=id_of)
def test_a_run_imports_nothing_of_ours(path):
    """Where the plugin is unloaded while a run goes on, what that imports then would stay behind."""
    for function in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(function, ast.FunctionDef) and function.name not in BEFORE_A_RUN:
            own = [node for node in ast.walk(function) if isinstance(node, ast.ImportFrom) and node.level]
            assert not own, f"{function.name}, line {own[0].lineno}"


def attributes_asked_for(path):
    """Names asked of an object by hasattr, or by getattr with another answer: doors that no import shows."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if not isinstance(node, ast.Call) or not isinstance(node.func, ast.Name):
            continue
        doubtful = node.func.id == "hasattr" or (node.func.id == "getattr" and len(node.args) == 3)
        if doubtful and isinstance(node.args[1], ast.Constant):
            yield node.args[1].value


@functools.cache
def names_defined(folder):
    """Names of methods, and of attributes set on self, in the classes of a folder."""
    found = set()
    for path in files(folder):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.ClassDef):
                found |= {line.name for line in node.body if isinstance(line, ast.FunctionDef)}
                found |= {
                    part.attr
                    for part in ast.walk(node)
                    if isinstance(part, ast.Attribute)
                    and isinstance(part.ctx, ast.Store)
                    and isinstance(part.value, ast.Name)
                    and part.value.id == "self"
                }
    return found


@pytest.mark.parametrize("path", files(ALGORITHMS), ids=id_of)
def test_no_door_to_the_shell_by_asking(path):
    """hasattr(feedback, 'readings') is an arrow back as much as an import: the shell alone has such a thing."""
    host = {"source", "finalize", "sink", "isNull", "isValid", "name", "record"}
    doors = (set(attributes_asked_for(path)) & names_defined(SHELL)) - names_defined(ALGORITHMS) - host
    assert not doors, doors


def test_package_imports_nothing_at_its_top():
    assert all(inside for _, inside in imports(ROOT / "__init__.py"))


def test_entries_are_found_and_listed():
    """The tests above would pass on an empty folder; algorithms itself holds the entries and nothing else."""
    assert len(entries()) >= 13 and {"design_heights", "place_stations"} <= entries()
    assert len(files(CORE)) > 10 and len(imports(ALGORITHMS / "design" / "design_run.py")) > 8
    assert set(FAMILY_OF) <= entries() and set(BELOW) == {p.name for p in ALGORITHMS.iterdir() if p.is_dir()} - {
        "__pycache__"
    }
    provider = (SHELL / "provider.py").read_text(encoding="utf-8")
    for name in entries():
        assert f"algorithms.{name} import" in provider
        assert "    ID = " in (ALGORITHMS / f"{name}.py").read_text(encoding="utf-8")
    assert ("algorithms.design.design_run", True) in imports(ALGORITHMS / "design_heights.py")


def without_host(names):
    """What of the named modules of algorithms cannot be imported where there is no host, a line each."""
    code = (
        "import sys, types, importlib\n"
        "class Wall:\n"
        "    def find_spec(self, name, path=None, target=None):\n"
        "        if name.split('.')[0] in ('qgis', 'osgeo', 'PyQt5', 'PyQt6', 'processing'):\n"
        "            raise ImportError('no host here: ' + name)\n"
        "sys.meta_path.insert(0, Wall())\n"
        "package = types.ModuleType('algorithms'); package.__path__ = [sys.argv[1]]\n"
        "sys.modules['algorithms'] = package\n"
        "for name in sys.argv[2:]:\n"
        "    try:\n"
        "        importlib.import_module('algorithms.' + name)\n"
        "    except ImportError as error:\n"
        "        print(name, error)\n"
        "print('scipy' if 'scipy' in sys.modules else '')\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, str(ALGORITHMS), *names], check=True, capture_output=True, text=True
    )
    return done.stdout.strip()


def modules(folder):
    """{name under algorithms, as 'core.fit': path} of the modules of a folder."""
    return {
        ".".join(path.relative_to(ALGORITHMS).with_suffix("").parts): path
        for path in files(folder)
        if path.stem != "__init__"
    }


def test_host_free_rooms_run_without_the_host():
    """In a fresh interpreter in which the host cannot be imported; nor does the core bring in scipy by itself."""
    assert not without_host([*(name for room in HOST_FREE for name in modules(ALGORITHMS / room)), *ALONE])


def test_share_of_lines_that_run_without_the_host():
    """Computing and sentences pull in no host through a constant or a dataclass that lives beside a reader."""
    lines = {name: len(path.read_text(encoding="utf-8").splitlines()) for name, path in modules(ALGORITHMS).items()}
    refused = {line.split()[0] for line in without_host(lines).splitlines()} & set(lines)
    share = 1.0 - sum(lines[name] for name in refused) / sum(lines.values())
    print(f"{share:.1%} of the lines of algorithms run without the host")
    assert refused and share >= 0.45, "\n".join(sorted(refused))


def test_no_source_is_read_with_the_hosts_check_of_geometries():
    """It throws out of the loop over the features: Python itself is damaged by that on the oldest host."""
    unsound = []
    for path in sorted((ROOT / "algorithms").rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            called = isinstance(node, ast.Call) and getattr(node.func, "attr", "") == "getFeatures"
            if called and ast.unparse(node.func.value).endswith("source") and "UNCHECKED" not in ast.unparse(node):
                unsound.append(f"{path.name}:{node.lineno}")
    assert unsound == []
