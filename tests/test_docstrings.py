"""The fixed parts of docstrings in the rooms that compute: what, arguments, returns, errors, source."""

import ast
import re
from pathlib import Path

import pytest

from calc.bibliography import SOURCES

ROOT = Path(__file__).parent.parent
COMPUTING = sorted(path for room in ("mechanics", "numerics", "shop")
                   for path in (ROOT / "calc" / room).rglob("*.py"))
MODULES = sorted([*COMPUTING, *(ROOT / "calc/tables").glob("*.py")])
KEYS = {source.key: source for source in SOURCES}
ORDER = ("Args:", "Yields:", "Returns:", "Raises:", "Limits:", "Source:")
NUMBERS = {"float", "float | None"}
ARGUMENT = re.compile(r"(\w+(?:, \w+)*)( \[[^]]+])?: ")
LIKE_A_KEY = re.compile(r"[a-z0-9]+(-[a-z0-9]+)+")


def public_functions(path):
    """Yield (name, function) for public functions and for the public methods of public classes."""
    for node in ast.parse(path.read_text("utf-8")).body:
        if getattr(node, "name", "_").startswith("_"):
            continue
        if isinstance(node, ast.FunctionDef):
            yield node.name, node
        elif isinstance(node, ast.ClassDef):
            yield from ((f"{node.name}.{each.name}", each) for each in node.body
                        if isinstance(each, ast.FunctionDef) and is_asked(node, each))


def is_asked(cls, method):
    """Say whether a method owes a docstring of all parts; a constructor may leave its own to the class."""
    if method.name == "__init__":
        return bool(ast.get_docstring(method)) or not ast.get_docstring(cls)
    return not method.name.startswith("_") and not method.decorator_list


FUNCTIONS = [(path, name, node) for path in COMPUTING
             if path.stem != "checks"  # where one sentence says all
             for name, node in public_functions(path)]
EVERY_FUNCTION = pytest.mark.parametrize(
    ("node"), [node for _, _, node in FUNCTIONS], ids=[f"{path.stem}.{name}" for path, name, _ in FUNCTIONS])


def parts_of(node):
    """Return a docstring's parts, each as its lines, by the word that each begins with."""
    parts, name = {"": []}, ""
    for line in (ast.get_docstring(node) or "").splitlines():
        found = [each for each in ORDER if line.startswith(each)]
        name = found[0] if found else name
        parts.setdefault(name, []).append(line.removeprefix(name) if found else line)
    return parts


def arguments_of(node):
    return [each for each in node.args.args + node.args.kwonlyargs if each.arg != "self"]


@EVERY_FUNCTION
def test_parts_stand_in_order(node):
    parts = parts_of(node)
    assert parts[""]
    assert re.match(r"[A-Z].*[.]$", parts[""][0]), parts[""][0]
    named = [each for each in parts if each]
    assert named == [each for each in ORDER if each in named], "the order is " + " ".join(ORDER)
    assert "Source:" in named


@EVERY_FUNCTION
def test_every_argument_is_explained_and_numbers_have_a_unit(node):
    explained = {}
    for line in parts_of(node).get("Args:", []):
        if found := ARGUMENT.match(line.removeprefix("    ")):
            explained |= dict.fromkeys(found[1].split(", "), found[2])
    arguments = arguments_of(node)
    assert list(explained) == [each.arg for each in arguments]
    for each in arguments:
        if each.annotation is not None and ast.unparse(each.annotation) in NUMBERS:
            assert explained[each.arg], f"{each.arg} has no unit"


@EVERY_FUNCTION
def test_what_comes_back_is_told_with_its_unit(node):
    parts = parts_of(node)
    returned = ast.unparse(node.returns) if node.returns else ""
    if node.name == "__init__" or returned == "None":
        assert "Returns:" not in parts
        return
    assert "Returns:" in parts
    if returned in NUMBERS:
        said = " ".join(parts["Returns:"]).strip()
        assert re.match(r"\[[^]]+] ", said), said


@EVERY_FUNCTION
def test_errors_are_told(node):
    raised = {ast.unparse(each.exc).split("(")[0] for each in ast.walk(node)
              if isinstance(each, ast.Raise) and each.exc is not None}
    checked = any(isinstance(each, ast.Call) and ast.unparse(each.func).split(".")[-1].startswith("require_")
                  for each in ast.walk(node))
    if raised or checked:
        assert "ValueError:" in " ".join(parts_of(node).get("Raises:", []))


def sources_in(node):
    """Yield (key, place in it) for every source that a docstring names."""
    lines = parts_of(node).get("Source:", [])
    for each in " ".join(line.strip() for line in lines).split(";"):
        key, _, place = each.strip().rstrip(".").partition(",")
        if key:
            yield key, place.strip()


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(ROOT)))
def test_named_sources_exist_and_own_work_says_what_it_is(path):
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if not isinstance(node, ast.FunctionDef | ast.ClassDef | ast.Module):
            continue
        for key, place in sources_in(node):
            assert key in KEYS, f"{path.name}: no source {key}"
            for piece in place.split(", "):  # a second source stands behind a semicolon
                assert not LIKE_A_KEY.fullmatch(piece), f"{path.name}: {piece} looks like a source"
            if path in COMPUTING:
                assert place, f"{path.name}: {getattr(node, 'name', '')} names {key} alone"
