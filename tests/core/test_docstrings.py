"""Every public part of the core says what it holds, in which unit and shape: the numbers are the product."""

import ast
import pathlib
import re

import pytest

CORE = pathlib.Path(__file__).resolve().parents[2] / "algorithms" / "core"
SOURCES = sorted(CORE.glob("*.py"))

# What counts as a unit, a shape or a kind of value: '(n,)', 'metres', 'seconds of arc', 'without unit', 'indices' ...
STATED = re.compile(
    r"\((?:\.\.\., |[a-z]\w*(?: [-+] 1)?, ?|\d, ?)(?:[a-z]\w*|\d)?\)"
    r"|\b(?:metres?|degrees?|seconds? of arc|kelvin|pixels|units?|lengths? without|share|indices|index"
    r"|masks?|booleans?|texts?|lists?|tuple|dict|True|notation|years?)\b|\{[^}]+:"
)
# Their arguments and results have neither unit nor shape.
WITHOUT_UNIT = {"python_thread.in_python_thread"}  # a decorator


def public_parts(path):
    """(qualified name, node) of the module and of its public classes, functions, methods and properties."""

    def walk(node, name):
        yield name, node
        for child in node.body if isinstance(node, (ast.Module, ast.ClassDef)) else ():
            if isinstance(child, (ast.FunctionDef, ast.ClassDef)) and not child.name.startswith("_"):
                yield from walk(child, f"{name}.{child.name}")

    return list(walk(ast.parse(path.read_text(encoding="utf-8")), path.stem))


def arguments(node):
    """Names of a function's arguments but for ``self`` and ``cls``; [] of anything else."""
    if not isinstance(node, ast.FunctionDef):
        return []
    given = node.args
    return [a.arg for a in (*given.posonlyargs, *given.args, *given.kwonlyargs) if a.arg not in ("self", "cls")]


@pytest.mark.parametrize("path", SOURCES, ids=lambda path: path.stem)
def test_every_public_part_says_what_it_is(path):
    assert not [name for name, node in public_parts(path) if not ast.get_docstring(node)]


@pytest.mark.parametrize("path", SOURCES, ids=lambda path: path.stem)
def test_every_public_function_states_units_and_shapes(path):
    silent = [
        name
        for name, node in public_parts(path)
        if arguments(node) and name not in WITHOUT_UNIT and not STATED.search(ast.get_docstring(node) or "")
    ]
    assert not silent


def test_the_check_can_fail_and_exempts_only_what_there_is():
    parts = {name for path in SOURCES for name, _ in public_parts(path)}
    assert len(parts) > 250 and WITHOUT_UNIT <= parts
    assert not STATED.search("Fit the plane that ``frame`` parametrises; returns SurfaceFit.")
    for said in ("Residuals (n,).", "Two arrays (..., 3).", "In metres.", "Azimuths (legs - 1,).", "{point: height}"):
        assert STATED.search(said), said
