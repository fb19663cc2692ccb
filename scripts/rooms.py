"""The rooms of `calc` in storeys, drawn from what they import.

`python -m scripts.rooms` writes them into DEVELOPERS.md. A room stands above everything that it imports, as
low as that allows.
"""

import ast
import re
from collections.abc import Iterator, Mapping
from pathlib import Path

ROOT = Path(__file__).parents[1]
PACKAGE = ROOT / "calc"
GUIDE = ROOT / "DEVELOPERS.md"
PLACE = re.compile(r"(<!-- rooms -->\n```\n).*?(```\n<!-- end of rooms -->)", re.DOTALL)
MOST_LETTERS = 110


def room(path: Path) -> str:
    """Return the first name below calc: a package or a module."""
    return path.relative_to(PACKAGE).parts[0].removesuffix(".py")


def imports(tree: ast.AST) -> Iterator[str]:
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
            elif node.module:
                yield node.module


def imported_by_rooms() -> dict[str, set[str]]:
    """Return what each room imports of the others."""
    found: dict[str, set[str]] = {}
    for path in sorted(PACKAGE.rglob("*.py")):
        names = [name.split(".") for name in imports(ast.parse(path.read_text("utf-8")))]
        below = {parts[1] for parts in names if parts[0] == "calc" and parts[1:]}
        found.setdefault(room(path), set()).update(below)
    return {name: below - {name} for name, below in found.items()}


def storeys(imported: Mapping[str, set[str]]) -> list[list[str]]:
    """Return the rooms from the lowest storey up.

    Raises:
        ValueError: some rooms import each other.
    """
    above = dict(imported)
    found: list[list[str]] = []
    while above:
        lowest = sorted(name for name, below in above.items() if not below & above.keys())
        if not lowest:
            raise ValueError("these rooms import each other: " + ", ".join(sorted(above)))
        found.append(lowest)
        for name in lowest:
            del above[name]
    return found


def drawing() -> str:
    """Return the storeys as text, the highest first, each room with what it imports."""
    imported = imported_by_rooms()
    lines = []
    for number, rooms in reversed(list(enumerate(storeys(imported)))):
        for name in rooms:
            if name == "__init__":
                continue
            lines += _line(f"{number}  {name:<14}", ", ".join(sorted(imported[name])) or "nothing")
    return "\n".join(lines) + "\n"


def _line(start: str, text: str) -> list[str]:
    lines = [start]
    for word in text.split(" "):
        if len(lines[-1]) + 1 + len(word) > MOST_LETTERS:
            lines.append(" " * len(start))
        lines[-1] += " " + word
    return lines


def guide_with(text: str) -> str:
    """Return the guide with the drawing in its place."""
    return PLACE.sub(lambda found: found[1] + text + found[2], GUIDE.read_text("utf-8"))


if __name__ == "__main__":
    GUIDE.write_text(guide_with(drawing()), "utf-8")
