"""Requests to every calculator: its example, random figures, the edges of its bounds, mistakes,
and figures that do not go together.

The same on every run: the dice are seeded with the calculator's id.
"""

from random import Random

from calc import (
    catalog,
    declaring,
    quantities,
    reading,
)
from calc.dates import show_date
from tests.calculators.together import TOGETHER

RANDOM_REQUESTS = 12
MISTAKES = (
    "", "   ", "abc", "-3", "1e999", "-1e999", "7 3/0", "NaN", "inf", "1,250", "7 lb", "7 in", "7 3/16",
    "7" * 10_000, "<script>", "7\u0000", "0x10", "1_000", "--", "1e-400", "\u00bd",
    "\u0667", "\uff17", "\U0001d7df",  # digits of other scripts and styles
)
MISTAKEN_INPUTS = 3

Request = dict[str, object]


def requests(id: str) -> list[Request]:
    """Return all requests to one calculator."""
    calculator = catalog.find(id)
    dice = Random(id)
    found = [request(id, [], system) for system in quantities.SYSTEMS]
    found += [request(id, random_pairs(calculator, dice), dice.choice(quantities.SYSTEMS))
              for _ in range(RANDOM_REQUESTS)]
    found += edges(calculator)
    found.append(request(id, exact_pairs(calculator, dice), dice.choice(quantities.SYSTEMS)))
    found += mistakes(calculator)
    found += [request(id, list(differs.items()), system) for of, _, differs in TOGETHER if of == id
              for system in quantities.SYSTEMS]
    return found


def request(id: str, pairs: list[tuple[str, str]], system: str) -> Request:
    return {"calculator": id, "pairs": [*pairs, ("units", system)]}


def random_pairs(calculator: declaring.Calculator, dice: Random) -> list[tuple[str, str]]:
    return [(each.id, random_text(each, dice)) for each in declaring.inputs_of(calculator)
            if each.kind == declaring.CHOICE or dice.random() < 0.7]


def random_text(each: declaring.Input, dice: Random) -> str:
    """Return what a reader might type: mostly usual, now and then only just allowed."""
    if each.kind == declaring.CHOICE:
        return dice.choice(each.choices).id
    if each.kind == declaring.SWITCH:
        return dice.choice(("yes", "no"))
    if each.kind == declaring.COUNT:
        return str(dice.randint(each.low, each.high))
    if each.kind == declaring.DATE:
        return show_date(dice.randint(int(each.low), int(each.high)))
    if each.kind == declaring.ROWS:
        return random_rows(each, dice)
    low, high = ((each.usual_low, each.usual_high) if dice.random() < 0.8 else (each.low, each.high))
    return quantities.show(dice.uniform(low, high), each.kind, dice.choice(quantities.SYSTEMS))


def exact_pairs(calculator: declaring.Calculator, dice: Random) -> list[tuple[str, str]]:
    """Return usual quantities in SI with every digit that a float has."""
    found = []
    for each in declaring.inputs_of(calculator):
        if isinstance(each.low, float):
            [unit] = [unit for unit in quantities.kind_of(each.kind).units
                      if (unit.factor, unit.offset) == (1.0, 0.0)][:1]
            found.append((each.id, f"{dice.uniform(each.usual_low, each.usual_high)!r} {unit.name}"))
    return found


def random_rows(each: declaring.Input, dice: Random) -> str:
    """Return the example's rows, some of their cells changed a little, now and then one row less."""
    lines = [line.split(reading.CELL_MARK) for line in each.default.split(reading.ROW_MARK)]
    for cells in lines:
        for position, column in enumerate(each.columns[: len(cells)]):
            if dice.random() < 0.3 and cells[position].strip():
                cells[position] = nearby(column, cells[position], dice)
    if dice.random() < 0.2 and len(lines) > each.low:
        lines.pop()
    return reading.ROW_MARK.join(reading.CELL_MARK.join(cells) for cells in lines)


def nearby(column: declaring.Input, text: str, dice: Random) -> str:
    if column.kind in (declaring.CHOICE, declaring.SWITCH, declaring.COUNT, declaring.DATE):
        return random_text(column, dice)
    value = quantities.parse(text, column.kind) * dice.uniform(0.95, 1.05)
    return quantities.show(value, column.kind, dice.choice(quantities.SYSTEMS))


def edges(calculator: declaring.Calculator) -> list[Request]:
    """Each quantity at both of its bounds, as shown and so now and then just outside."""
    return [request(calculator.id, [(each.id, quantities.show(bound, each.kind, system))], system)
            for each in declaring.inputs_of(calculator) if is_quantity(each)
            for bound, system in zip((each.low, each.high), quantities.SYSTEMS)]


def mistakes(calculator: declaring.Calculator) -> list[Request]:
    """Everything that may be typed wrongly, in some of the inputs, and all inputs wrong at once."""
    inputs = declaring.inputs_of(calculator)
    found = [request(calculator.id, [(each.id, text)], "imperial")
             for each in inputs[:MISTAKEN_INPUTS] for text in MISTAKES]
    found += [request(calculator.id, [(each.id, "abc") for each in inputs], system)
              for system in quantities.SYSTEMS]
    twice = [(inputs[0].id, "1"), (inputs[0].id, "2")]
    found.append(request(calculator.id, [("stranger", "1"), *twice], "ells"))
    found += [request(calculator.id, [(each.id, text)], "imperial") for each in inputs
              if each.kind == declaring.ROWS
              for text in ("", ":;:", "abc:abc", "1:2:3:4:5:6:7:8:9", ";" * 500)]
    return found


def is_quantity(each: declaring.Input) -> bool:
    return each.kind not in (declaring.CHOICE, declaring.SWITCH, declaring.COUNT, declaring.DATE,
                             declaring.ROWS)
