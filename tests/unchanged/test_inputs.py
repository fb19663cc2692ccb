"""What calculators and a record's sheets ask for, as it was: no proof, it shows when something changes."""

from pathlib import Path

from calc import catalog
from calc.declaring import Input, folds_of, inputs_of
from calc.record import sheets
from tests.unchanged.storing import Parts, held_to


def test_unchanged_inputs():
    held_to(Path(__file__).with_name("inputs.json"),
            lambda _: {**asked_by_calculators(), **asked_by_sheets()})


def asked_by_calculators() -> Parts:
    """Return each input, and what the forms fold away."""
    parts: Parts = {}
    for calculator in map(catalog.find, catalog.IDS):
        for each in inputs_of(calculator):
            parts |= told(calculator.id, each)
        parts[f"{calculator.id}, folded"] = [
            ": ".join([fold.title, *[part.title for part in fold.groups], *[each.id for each in fold.inputs]])
            for fold in folds_of(calculator)]
    return parts


def asked_by_sheets() -> Parts:
    return {name: part for sheet in sheets.SHEETS for group in sheet.groups for each in group.inputs
            for name, part in told(f"a record's {sheet.id}", each).items()}


def told(of: str, each: Input) -> Parts:
    """Return what an input is, where it matters, its example, choices and bounds; the same of its columns."""
    name = f"{of}.{each.id}"
    when = f"{each.when[0]} {' '.join(each.when[1])}" if each.when else ""
    words = (each.kind, each.role, "optional" * each.optional, when, each.default,
             " ".join([choice.id for choice in each.choices]))
    bounds: list[str | float] = [bound for bound in (each.low, each.usual_low, each.usual_high, each.high)
                                 if bound is not None]
    return {name: " | ".join(words), **({f"{name}, bounds": bounds} if bounds else {}),
            **{part: said for column in each.columns for part, said in told(name, column).items()}}
