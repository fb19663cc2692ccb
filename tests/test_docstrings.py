"""The fixed parts of docstrings in the rooms that compute: what, arguments, returns, errors, source."""

import ast
from pathlib import Path

import pytest

from calc.bibliography import SOURCES

ROOT = Path(__file__).parent.parent
COMPUTING = sorted(path for room in ("mechanics", "shop") for path in (ROOT / "calc" / room).glob("*.py"))
MODULES = sorted([*COMPUTING, *(ROOT / "calc/tables").glob("*.py")])
KEYS = {source.key for source in SOURCES}
ORDER = ("Args:", "Yields:", "Returns:", "Raises:", "Limits:", "Source:")


def public_functions(path):
    tree = ast.parse(path.read_text("utf-8"))
    for node in tree.body:
        if isinstance(node, ast.FunctionDef) and not node.name.startswith("_"):
            yield node


FUNCTIONS = [(path, node) for path in COMPUTING for node in public_functions(path)]


@pytest.mark.parametrize(("path", "node"), FUNCTIONS,
                         ids=[f"{path.stem}.{node.name}" for path, node in FUNCTIONS])
def test_public_functions_say_what_style_asks(path, node):
    text = ast.get_docstring(node) or ""
    assert text, f"{path.name}:{node.lineno} {node.name} has no docstring"
    if path.stem == "checks":  # one sentence says all of them
        return
    lines = [line.strip() for line in text.splitlines()]
    parts = [part for part in ORDER if any(line.startswith(part) for line in lines)]
    places = [next(i for i, line in enumerate(lines) if line.startswith(part)) for part in parts]
    assert places == sorted(places), "the parts stand in the order " + " ".join(ORDER)
    assert "Source:" in parts
    if node.args.args:
        assert "Args:" in parts
        for argument in node.args.args:
            assert argument.arg in text, f"{node.name} does not explain {argument.arg}"
    if any(isinstance(each, ast.Raise) for each in ast.walk(node)):
        assert "Raises:" in parts


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(ROOT)))
def test_named_sources_exist(path):
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if not isinstance(node, ast.FunctionDef | ast.ClassDef | ast.Module):
            continue
        for line in (ast.get_docstring(node) or "").splitlines():
            if line.strip().startswith("Source:"):
                for each in line.strip().removeprefix("Source:").split(";"):
                    key = each.split(",")[0].strip().rstrip(".")  # a place in the source may follow a comma
                    assert key in KEYS, f"{path.name}: no source {key}"
