"""Imports run one way, and what the small engine lacks is not used."""

import ast
from pathlib import Path

import pytest

from scripts import rooms
from tests.sentences import whole

ROOT = Path(__file__).parent.parent
MODULES = sorted((ROOT / "calc").rglob("*.py"))
ALLOWED = {
    "quantities": set(),
    "bibliography": set(),
    "checks": set(),
    "dates": set(),
    "former": set(),
    "listing": set(),
    "numerics": set(),
    "tables": {"quantities"},
    "mechanics": {"checks", "numerics", "quantities"},
    "shop": {"checks", "dates", "quantities", "tables"},
    "declaring": {"dates", "quantities"},
    "outcome": {"declaring", "quantities"},
    "reading": {"dates", "declaring", "outcome", "quantities"},
    "drawings": {"mechanics", "outcome", "quantities"},
    "bows": {"declaring", "drawings", "mechanics", "numerics", "outcome", "quantities", "shop", "tables"},
    "pictures": {"declaring", "numerics", "outcome", "quantities"},
    "inserts": {"declaring", "outcome", "quantities", "shop", "tables"},
    "offers": {"dates", "outcome"},
    "ventilation": {"declaring", "outcome", "quantities", "shop", "tables"},
    "finishes": {"dates", "declaring", "outcome", "quantities", "shop", "tables"},
    "calculators": {"bows", "dates", "declaring", "drawings", "finishes", "inserts", "mechanics",
                    "numerics", "offers", "outcome", "pictures", "quantities", "shop", "tables",
                    "ventilation"},
    "lookups": {"listing", "mechanics", "quantities", "shop", "tables"},
    "paths": {"listing", "tables"},
    "record": {"dates", "declaring", "finishes", "mechanics", "numerics", "offers", "outcome", "quantities",
               "reading", "report", "shop", "tables"},
    "report": {"declaring", "outcome", "quantities"},
    "catalog": {"declaring", "listing"},
    "answer": {"catalog", "declaring", "listing", "outcome", "quantities", "reading", "report"},
    "links": {"declaring", "former", "quantities", "reading"},
    "command": {"answer", "dates", "declaring", "outcome", "quantities", "record", "report"},
    "__main__": {"answer", "catalog", "command", "declaring", "links", "outcome", "quantities", "reading"},
    "__init__": set(),
}
"""What each room imports of the others; a room stands above all that it imports."""

LIBRARY = {"math", "json", "collections"}
COMMAND_LINE_ONLY = {"argparse", "hashlib", "os", "pathlib", "secrets", "sys", "time", "urllib"}
OFF_THE_ENGINES = {"__main__", "command", "links"}
NOT_IN_THE_SMALL_ENGINE = {
    "hypot", "fsum", "prod", "comb", "dist", "cbrt", "log1p", "is_integer", "as_integer_ratio",
    "_replace", "casefold", "removeprefix", "removesuffix", "zfill",
}


@pytest.fixture(scope="module")
def imported() -> dict[str, set[str]]:
    return rooms.imported_by_rooms()


@pytest.mark.parametrize("name", ALLOWED)
def test_a_room_imports_what_is_allowed_and_all_of_it_is_needed(name, imported):
    assert imported[name] == ALLOWED[name]


def test_imports_run_one_way():
    assert rooms.storeys(ALLOWED)


def test_rooms_that_import_each_other_are_refused():
    with pytest.raises(ValueError, match=whole("these rooms import each other: attic, cellar")):
        rooms.storeys({"attic": {"cellar"}, "cellar": {"attic"}, "porch": set()})


def test_the_guide_draws_the_rooms_as_they_are():
    drawn = rooms.drawing()
    assert drawn in rooms.GUIDE.read_text("utf-8"), "python -m scripts.rooms draws them anew"
    assert rooms.guide_with(drawn) == rooms.GUIDE.read_text("utf-8")


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(ROOT)))
def test_nothing_but_the_library_that_all_engines_have_is_used(path):
    for name in rooms.imports(ast.parse(path.read_text("utf-8"))):
        first = name.partition(".")[0]
        if first != "calc":
            assert first in (LIBRARY | COMMAND_LINE_ONLY if rooms.room(path) in OFF_THE_ENGINES else LIBRARY)


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(ROOT)))
def test_what_the_small_engine_lacks_is_not_used(path):
    if rooms.room(path) in OFF_THE_ENGINES:
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


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(ROOT)))
def test_a_type_of_parts_stands_only_where_types_are_read(path):
    """The small engine has no `list[float]`: what the build leaves in may not ask for it."""
    if rooms.room(path) not in OFF_THE_ENGINES:
        for node in run(ast.parse(path.read_text("utf-8"))):
            if isinstance(node, ast.Subscript) and isinstance(node.value, ast.Name):
                assert node.value.id not in ("list", "dict", "tuple", "set"), f"{path.name}:{node.lineno}"


def run(node):
    """Return all nodes below one but annotations, and what only a reader of types sees."""
    for name, inner in ast.iter_fields(node):
        if name in ("annotation", "returns"):
            continue
        for each in inner if isinstance(inner, list) else [inner]:
            if isinstance(each, ast.If) and ast.unparse(each.test) == "TYPE_CHECKING":
                continue
            if isinstance(each, ast.AST):
                yield each
                yield from run(each)
