"""How figures of every kind are shown and read, as it was: no proof, it shows when something changes."""

from pathlib import Path

from calc.quantities import KINDS, SYSTEMS, Kind, parse, show
from tests.unchanged.storing import Parts, held_to

FIGURES = (0.0, -0.0123456789, 0.98765432, 1.0, 23.456789, 4567.891234, 8.7654321e8)


def test_unchanged_quantities():
    held_to(Path(__file__).with_name("quantities.json"), lambda _: {
        name: part for kind in KINDS for name, part in parts_of_kind(kind).items()})


def parts_of_kind(kind: Kind) -> Parts:
    """Return a kind's words, figures as each system shows them, and each unit in SI by all its names."""
    shown = [" | ".join([f"{figure} {kind.si}", *[show(figure, kind.id, system) for system in SYSTEMS]])
             for figure in FIGURES]
    names = [name for unit in kind.units for name in (unit.name, *unit.aliases)]
    return {kind.id: [kind.noun, *kind.example, *kind.words, *shown],
            f"{kind.id}, units": " ".join(names),
            f"{kind.id}, in {kind.si}": [parse(f"1 {name}", kind.id) for name in names]}
