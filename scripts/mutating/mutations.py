"""What may be changed in a file: one operator, number, comparison or condition at a time."""

import ast
from collections.abc import Iterator
from typing import NamedTuple

SWAPPED = {
    ast.Add: "-", ast.Sub: "+", ast.Mult: "/", ast.Div: "*", ast.Mod: "*", ast.FloorDiv: "*", ast.Pow: "*",
    ast.Lt: "<=", ast.LtE: "<", ast.Gt: ">=", ast.GtE: ">", ast.Eq: "!=", ast.NotEq: "==",
    ast.Is: "is not", ast.IsNot: "is", ast.In: "not in", ast.NotIn: "in", ast.And: "or", ast.Or: "and",
}
SIGNS = {
    ast.Add: "+", ast.Sub: "-", ast.Mult: "*", ast.Div: "/", ast.Mod: "%", ast.FloorDiv: "//", ast.Pow: "**",
    ast.Lt: "<", ast.LtE: "<=", ast.Gt: ">", ast.GtE: ">=", ast.Eq: "==", ast.NotEq: "!=",
    ast.Is: "is", ast.IsNot: "is not", ast.In: "in", ast.NotIn: "not in", ast.And: "and", ast.Or: "or",
}
OTHER_NAMES = {"min": "max", "max": "min", "sin": "cos", "cos": "sin", "floor": "ceil", "ceil": "floor"}
LARGER = 1.1  # what a number with decimals is multiplied by
SLACK = 1e-5  # smaller ones allow for rounding and stay as they are


class Mutation(NamedTuple):
    """A change: the line it is in, that line before and after, and the whole file with it."""

    number: int
    before: str
    after: str
    source: str


def mutations_of(source: str) -> Iterator[Mutation]:
    """Yield every change that may be made to a file, from its start to its end."""
    lines = source.splitlines(keepends=True)
    starts = [0]
    for line in lines:
        starts.append(starts[-1] + len(line))

    def place(line: int, column: int) -> int:
        return starts[line - 1] + len(lines[line - 1].encode()[:column].decode())

    for node in _computing(ast.parse(source), False):
        for start, end, text in _changes(node, source, place):
            changed = source[:start] + text + source[end:]
            number = source.count("\n", 0, start) + 1
            after = changed.splitlines()[number - 1].strip()
            yield Mutation(number, lines[number - 1].strip(), after, changed)


def _computing(node: ast.AST, tells: bool) -> Iterator[ast.AST]:
    """Walk what is computed: no annotations, no docstrings, no words of errors, nothing for type checkers.

    tells: within a function that yields how far it is: told while it works, and no part of the answer.
    """
    if isinstance(node, ast.JoinedStr | ast.Raise | ast.Import | ast.ImportFrom):
        return
    if isinstance(node, ast.If | ast.Assign) and "TYPE_CHECKING" in ast.unparse(node):
        return
    if isinstance(node, ast.FunctionDef):
        tells = node.returns is not None and "Generator[float, " in ast.unparse(node.returns)
    if tells and (_is_told(node) or (isinstance(node, ast.If) and all(map(_is_told, node.body)))):
        return
    yield node
    for name, value in ast.iter_fields(node):
        if name in ("annotation", "returns"):
            continue
        for child in value if isinstance(value, list) else [value]:
            if isinstance(child, ast.AST):
                yield from _computing(child, tells)


def _is_told(node: ast.AST) -> bool:
    return isinstance(node, ast.Expr) and isinstance(node.value, ast.Yield)


def _changes(node: ast.AST, source: str, place) -> Iterator[tuple[int, int, str]]:  # type: ignore[no-untyped-def]
    """Yield (start, end, new text) for one node."""
    def span(of: ast.AST) -> tuple[int, int]:
        return place(of.lineno, of.col_offset), place(of.end_lineno, of.end_col_offset)  # type: ignore[attr-defined]

    def sign_between(left: ast.AST, right: ast.AST, kind: type[ast.AST]) -> Iterator[tuple[int, int, str]]:
        low, high = span(left)[1], span(right)[0]
        at = source.find(SIGNS[kind], low, high)
        if at >= 0:
            yield at, at + len(SIGNS[kind]), SWAPPED[kind]

    if isinstance(node, ast.BinOp) and type(node.op) in SWAPPED:
        yield from sign_between(node.left, node.right, type(node.op))
    elif isinstance(node, ast.AugAssign) and type(node.op) in SWAPPED:
        yield from sign_between(node.target, node.value, type(node.op))
    elif isinstance(node, ast.Compare):
        before: ast.AST = node.left
        for operator, after in zip(node.ops, node.comparators):
            yield from sign_between(before, after, type(operator))
            before = after
    elif isinstance(node, ast.BoolOp):
        yield from sign_between(node.values[0], node.values[1], type(node.op))
    elif isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.Not | ast.USub):
        start, _ = span(node)
        yield start, span(node.operand)[0], ""
    elif isinstance(node, ast.If | ast.IfExp | ast.While):
        start, end = span(node.test)
        yield start, end, f"(not ({source[start:end]}))"
    elif isinstance(node, ast.Constant) and isinstance(node.value, int | float) and not _is_slack(node.value):
        start, end = span(node)
        yield start, end, _other(node.value)
    elif isinstance(node, ast.Name | ast.Attribute):
        name = node.id if isinstance(node, ast.Name) else node.attr
        if name in OTHER_NAMES:
            _, end = span(node)
            yield end - len(name), end, OTHER_NAMES[name]


def _is_slack(value: int | float) -> bool:
    return 0 < value < SLACK


def _other(value: int | float) -> str:
    """Return another number than this one."""
    if isinstance(value, bool):
        return str(not value)
    if isinstance(value, int):
        return str(value + 1)
    return repr(value * LARGER) if value else "1.0"
