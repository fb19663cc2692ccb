"""Links that people kept: what one means when it leaves inputs out, and how its text is read."""

from urllib.parse import parse_qsl, urlsplit

from calc.declaring import (
    ROWS,
    Calculator,
    Input,
    inputs_of,
)
from calc.former import FORMER
from calc.quantities import KINDS, SYSTEMS, shown_unit
from calc.reading import CELL_MARK, ROW_MARK, matters

PATH = "calculators/"
KIND_IDS = tuple([kind.id for kind in KINDS])


def pairs_of(calculator: Calculator, address: str) -> list[tuple[str, str]]:
    """Return the pairs that a link to a calculator carries in its fragment.

    Args:
        calculator: whose link it should be.
        address: a whole address, the part from `calculators/`, or the fragment alone with its `#`.

    Raises:
        ValueError: the link is another page's, or carries no figures.
    """
    parts = urlsplit(address.strip())
    page = parts.path.strip("/")
    if page and not ("/" + page).endswith("/" + PATH + calculator.id):
        raise ValueError("is a link to another page than " + PATH + calculator.id + "/")
    pairs = parse_qsl(parts.fragment, keep_blank_values=True)
    if "=" not in parts.fragment or not pairs:
        raise ValueError("carries no figures behind a #")
    return pairs


def complete(calculator: Calculator, pairs: list[tuple[str, str]]) -> list[tuple[str, str]]:
    """Return a link's pairs with what it left out, as far as that matters for its choices.

    A share without a sign, such as `0.5`, gets the sign of percent that it was read with when it was written.
    """
    pairs = with_units(calculator, pairs, SYSTEMS[0], ("ratio",))
    given = dict(reversed(pairs))
    former = FORMER[calculator.id]
    texts: dict[str, object] = {}
    added = []
    for each in inputs_of(calculator):
        if each.id in given:
            texts[each.id] = given[each.id].strip()
        elif matters(each, texts):
            texts[each.id] = former[each.id]
            added.append((each.id, former[each.id]))
    return pairs + added


def with_units(
    calculator: Calculator, pairs: list[tuple[str, str]], system: str, kinds: tuple[str, ...] = KIND_IDS
) -> list[tuple[str, str]]:
    """Return a link's pairs with the units of its system behind bare numbers: any system may read them.

    Args:
        calculator: whose link it is.
        pairs: of the link.
        system: unit system of the link.
        kinds: of quantities that get their unit; others stay as they are.
    """
    inputs = {each.id: each for each in inputs_of(calculator)}
    return [(name, _with_unit(inputs[name], text, system, kinds) if name in inputs else text)
            for name, text in pairs]


def _with_unit(each: Input, text: str, system: str, kinds: tuple[str, ...]) -> str:
    if each.kind == ROWS:
        return ROW_MARK.join(_row_with_units(each, line, system, kinds) for line in text.split(ROW_MARK))
    if each.kind not in kinds or not text.strip()[-1:].isnumeric():
        return text
    return f"{text.strip()} {shown_unit(each.kind, system).name}".strip()


def _row_with_units(each: Input, line: str, system: str, kinds: tuple[str, ...]) -> str:
    cells = line.split(CELL_MARK)
    known = [_with_unit(column, cell, system, kinds) for column, cell in zip(each.columns, cells)]
    return CELL_MARK.join(known + cells[len(known):])
