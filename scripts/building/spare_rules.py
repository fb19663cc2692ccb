"""Leaves out of a library's style sheet what no page of the site can use."""

import re
from collections.abc import Container, Iterable

PIECE = re.compile(r'"(?:\\.|[^"\\])*"|' r"'(?:\\.|[^'\\])*'" r"|\\.|[^\"'\\(){}\[\],;]+|.", re.DOTALL)
GROUPS = ("@media", "@supports")
"""Rules that hold rules."""
ASIDE = re.compile(r"\([^()]*\)|\[[^\]]*\]")
"""What a selector says in brackets: it may speak of what is not there, or of one of several."""
NAME = re.compile(r"[.#](-?[A-Za-z_][\w-]*)")
PAINTS = re.compile(r"\[data-md-color-(?:primary|accent)=(?!custom\])")
"""A colour of the theme's own; this site has its own colours."""
READ = re.compile(r"var\((--[\w-]+)")
PROPERTY = re.compile(r"\s*(--md-[\w-]+)\s*:")


def trimmed(sheet: str, known: Container[str], others: str) -> str:
    """Return a minified sheet without rules for other names, and without properties that none reads.

    Args:
        sheet: the sheet.
        known: classes and ids that a page may carry.
        others: text of whatever else may read its properties.
    """
    sheet = _kept(sheet, known)
    while (fewer := _without_unread(sheet, {*READ.findall(sheet), *READ.findall(others)})) != sheet:
        sheet = fewer
    return sheet


def _kept(sheet: str, known: Container[str]) -> str:
    kept = []
    for prelude, body in _rules(sheet):
        if prelude.startswith(GROUPS):
            body = _kept(body, known)
        elif not prelude.startswith("@"):
            prelude = ",".join(each for each in _split(prelude, ",") if _can_be_met(each, known))
        kept += [prelude + "{" + body + "}"] if prelude and body else []
    return "".join(kept)


def _can_be_met(selector: str, known: Container[str]) -> bool:
    if PAINTS.search(selector):
        return False
    plain = selector
    while (shorter := ASIDE.sub("", plain)) != plain:
        plain = shorter
    return all(name in known for name in NAME.findall(plain))


def _without_unread(sheet: str, read: Container[str]) -> str:
    kept = []
    for prelude, body in _rules(sheet):
        if prelude.startswith(GROUPS):
            body = _without_unread(body, read)
        elif not prelude.startswith("@"):
            body = ";".join(each for each in _split(body, ";") if _is_read(each, read))
        kept += [prelude + "{" + body + "}"] if body else []
    return "".join(kept)


def _is_read(declaration: str, read: Container[str]) -> bool:
    found = PROPERTY.match(declaration)
    return bool(declaration.strip()) and (not found or found[1] in read)


def _rules(sheet: str) -> Iterable[tuple[str, str]]:
    """Yield what stands before and inside the outermost braces."""
    for rule in _split(sheet, "}"):
        prelude, _, body = rule.partition("{")
        if body:
            yield prelude.rpartition(";")[2].strip(), body  # behind a statement such as @charset


def _split(text: str, mark: str) -> list[str]:
    """Split a text at a mark that stands in no string and in no brackets."""
    parts: list[list[str]] = [[]]
    depth = 0
    for piece in PIECE.findall(text):
        depth += (piece in ("(", "[", "{")) - (piece in (")", "]", "}"))
        if piece == mark and depth == 0:
            parts.append([])
        else:
            parts[-1].append(piece)
    return ["".join(each) for each in parts]
