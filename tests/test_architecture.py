"""Imports run one way, and what the small engine lacks is not used."""

import ast
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
MODULES = sorted((ROOT / "calc").rglob("*.py"))
ALLOWED = {
    "quantities": set(),
    "bibliography": set(),
    "listing": set(),
    "dates": set(),
    "fields": {"quantities", "dates"},
    "tables": {"tables", "quantities", "bibliography"},
    "mechanics": {"mechanics", "quantities", "tables"},
    "shop": {"shop", "quantities", "tables", "dates"},
    "lookups": {"lookups", "listing", "shop", "mechanics", "tables", "quantities"},
    "paths": {"paths", "listing", "tables"},
    "drawings": {"drawings", "fields", "quantities", "mechanics", "shop"},
    "calculators": {"calculators", "drawings", "mechanics", "shop", "tables", "fields", "quantities",
                    "dates", "bibliography"},
    "record": {"record", "fields", "quantities", "dates", "shop", "tables", "mechanics", "report"},
    "command": {"command", "record", "dates", "fields", "quantities", "report"},
    "report": {"fields", "quantities"},
    "catalog": {"fields", "listing"},
    "answer": {"catalog", "fields", "listing", "quantities", "report"},
    "former": set(),
    "links": {"fields", "former", "quantities"},
    "__main__": {"catalog", "command", "answer", "dates", "fields", "links", "quantities", "report"},
    "__init__": set(),
}
LIBRARY = {"math", "json", "collections"}
COMMAND_LINE_ONLY = {"argparse", "os", "pathlib", "secrets", "sys", "time", "urllib"}
OFF_THE_ENGINES = {"__main__", "command", "links"}
NOT_IN_THE_SMALL_ENGINE = {
    "hypot", "fsum", "prod", "comb", "dist", "cbrt", "log1p", "is_integer", "as_integer_ratio",
    "_replace", "casefold", "removeprefix", "removesuffix", "zfill",
}


def room(path):
    """Return the first name below calc: a package or a module."""
    return path.relative_to(ROOT / "calc").parts[0].removesuffix(".py")


def imports(tree):
    """Yield what is imported when the module runs, not what only the type checker reads."""
    for node in ast.walk(tree):
        if isinstance(node, ast.If) and isinstance(node.test, ast.Name) and node.test.id == "TYPE_CHECKING":
            node.body = []  # for the type checker only; no engine imports it
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            if node.module == "calc":
                yield from (f"calc.{alias.name}" for alias in node.names)
            else:
                yield node.module


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(ROOT)))
def test_imports_run_one_way(path):
    for name in imports(ast.parse(path.read_text("utf-8"))):
        first, _, rest = name.partition(".")
        if first == "calc":
            assert rest.partition(".")[0] in ALLOWED[room(path)], f"{path.name} imports {name}"
        else:
            assert first in (LIBRARY | COMMAND_LINE_ONLY if room(path) in OFF_THE_ENGINES else LIBRARY)


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(ROOT)))
def test_what_the_small_engine_lacks_is_not_used(path):
    if room(path) in OFF_THE_ENGINES:
        return
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Attribute):
            assert node.attr not in NOT_IN_THE_SMALL_ENGINE, f"{path.name}:{node.lineno} uses {node.attr}"
        if isinstance(node, ast.FormattedValue):
            assert node.format_spec is None, f"{path.name}:{node.lineno} formats a number"
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
            assert node.func.id not in ("format", "round"), f"{path.name}:{node.lineno}"
        if isinstance(node, ast.List | ast.Tuple | ast.Set) and isinstance(node.ctx, ast.Load):
            assert not any(isinstance(each, ast.Starred) for each in node.elts), f"{path.name}:{node.lineno}"
        if isinstance(node, ast.Dict):
            assert None not in node.keys, f"{path.name}:{node.lineno} merges dicts"
        assert not isinstance(node, ast.Match), f"{path.name}:{node.lineno} uses match"
