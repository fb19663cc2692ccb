"""Facts that nobody typed, as texts for a calculator's form: each says from which entry it comes."""

from calc.record import checks, derive, finishing
from calc.record.derived_fact import Asked, Derived, Told
from calc.record.derived_limbs import LIMBS
from calc.record.derived_strokes import STROKES
from calc.record.derived_weights import WEIGHTS
from calc.record.fold import State
from calc.record.values import is_on
from calc.tables.woods import CORE_WOODS, RISER_WOODS, WOODS

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Callable

OTHER_NAMES = (("hard maple", "sugar-maple"), ("sugar maple", "sugar-maple"), ("hickory", "shagbark-hickory"),
               ("walnut", "black-walnut"), ("cherry", "black-cherry"), ("ash", "white-ash"))
"""What people write for a wood of the table."""


def _wood(fact: str, woods: tuple[str, ...], own: str) -> "Callable[[State], Told]":
    def work(state: State) -> Told:
        found, strength = state.latest(fact), state.latest(own)
        wood = wood_called(found.text) if found else ""
        if found is not None and wood in woods:
            return Told(wood, found.entry)
        return Told("own", strength.entry) if strength is not None else Told()
    return work


def wood_called(words: str) -> str:
    """Return the id of the wood that somebody wrote down.

    Args:
        words: as typed.

    Returns:
        id of a row of the table of woods; empty where it has none of that name.
    """
    plain = words.strip().lower()
    name: str
    id: str
    for name, id in OTHER_NAMES + tuple([(each.name.lower(), each.id) for each in WOODS]):
        if plain in (name, id):
            return id
    return ""


def _lettered(state: State) -> Told:
    typed, words = state.latest("agreed.lettered"), state.latest("agreed.lettering")
    if typed is not None:
        return Told(typed.text, typed.entry)
    return Told("yes", words.entry, False, "lettering was agreed") if words is not None else Told()


def _laid(state: State) -> Told:
    laid = finishing.coat_entries(state)
    return Told(finishing.laid_text(laid), laid[-1]) if laid else Told()


def _look(state: State, asked: Asked) -> Told:
    """Return whether a part has been looked at; what an inspection does not name was not looked at."""
    looked = state.of("look")
    if not looked:
        return Told()
    for entry in reversed(looked):
        if is_on(entry, asked.input):
            return Told("yes", entry, derive.is_stale_in(state, "look." + asked.input, entry))
    return Told("no", looked[-1])


def _finding(state: State, asked: Asked) -> Told:
    """Return whether a finding stands open; without any inspection nobody knows."""
    if any(each.id == asked.input for each in checks.open_findings(state)):
        entry = [each for each in state.of("finding") if each.fact("which") == asked.input][-1]
        return Told("yes", entry)
    looked = state.of("look")
    return Told("no", looked[-1]) if looked else Told()


_INSPECT = "Inspect it, and tick on the sheet “An inspection” what has been looked at."

DERIVED: dict[str, Derived] = {
    "core": Derived("choice", _wood("bow.core", tuple([id for id, _ in CORE_WOODS]), "bow.core_modulus"),
                    "Name the core's wood as the table of woods does, or give its modulus: sheet “The bow”."),
    "riser_wood": Derived("choice", _wood("bow.riser_wood", RISER_WOODS, "bow.riser_strength"), "Name the "
                          "riser's wood as the table of woods does, or give its strength: sheet “The bow”."),
    "lettered": Derived("switch", _lettered, "Say on the sheet “What was agreed” whether it is lettered."),
    "laid": Derived("rows", _laid, "Write down each coat when it is laid: sheet “A coat laid”."),
    "look": Derived("switch", None, _INSPECT, _look),
    "finding": Derived("switch", None, _INSPECT, _finding),
}
DERIVED.update(WEIGHTS)
DERIVED.update(STROKES)
DERIVED.update(LIMBS)
"""By name."""
