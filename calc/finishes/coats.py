"""Coats of a finish: products, films, and the schedule of a job."""

from collections import namedtuple

from calc.dates import DAY
from calc.outcome import Refused
from calc.quantities import show
from calc.shop.film import dry_film_thickness, volume_to_mix, wet_film_thickness
from calc.shop.schedule import Planned, WorkingHours, WorkStep, plan
from calc.tables.finish_families import FinishFamily
from calc.tables.practice import find as find_limit

HOUR = 3600
WORKING_DAYS = (
    ("six", "Monday to Saturday", (0, 1, 2, 3, 4, 5)),
    ("five", "Monday to Friday", (0, 1, 2, 3, 4)),
    ("all", "Every day", (0, 1, 2, 3, 4, 5, 6)),
    ("weekend", "Saturday and Sunday", (5, 6)),
)
REFERENCE = 25.0  # degC, for which data sheets state their times
LIMB_FILM = find_limit("limb-film")

Product = namedtuple("Product", "family solids reducer recoat_from recoat_to cure parts pot_life")
"""What is laid on; times [s] at the shop's temperature.

parts: of base and hardener by volume, (1, 0) without a hardener, None where nobody said. pot_life: of what is
mixed, or None.
"""

Coat = namedtuple("Coat", "role product wet dry volume")
"""One coat, or the lettering, which has no product."""


def product_of(
    family: FinishFamily,
    solids: float | None,
    reducer: float,
    recoat_from: float | None,
    recoat_to: float | None,
    cure: float | None,
    factor: float,
    parts: tuple[float, float] | None,
    pot_life: float | None,
) -> Product:
    """Return a product: what the reader gave, and the family's typical figure where nothing was given."""
    window_from, window_to = _window(family, recoat_from, recoat_to)
    return Product(
        family, family.volume_solids if solids is None else solids, reducer, window_from * factor,
        None if window_to is None else window_to * factor, (family.cure if cure is None else cure) * factor,
        parts, pot_life)


def _window(
    family: FinishFamily, given_from: float | None, given_to: float | None
) -> tuple[float, float | None]:
    """Return the recoat window at 25 °C; a typical end never bends to fit a figure that was given."""
    opens = family.recoat_from if given_from is None else given_from
    closes = family.recoat_to if given_to is None else given_to
    if closes is None or opens <= closes:
        return opens, closes
    if given_to is None:
        raise Refused("recoat_to", "You let the recoat window begin at " + show(opens, "hours") + ", and one "
                      "typical of " + family.name + " ends at " + show(closes, "hours") + ". Type its end "
                      "from the same sheet, too.")
    if given_from is None:
        raise Refused("recoat_from", "You let the recoat window end at " + show(closes, "hours") + ", and "
                      "one typical of " + family.name + " begins at " + show(opens, "hours") + ". Type its "
                      "beginning from the same sheet, too.")
    raise Refused("recoat_to", "The recoat window ends before it begins: swap the two times, or mend one.")


def riser_surface(length: float, girth: float) -> float:
    """Return the surface of a riser by its girth [m2]."""
    if length <= 0:
        raise Refused("riser_length", "Hand-rubbed oil goes on a riser of bare wood only. Give the riser's "
                      "length.")
    return length * girth


def wet_most_of(layers: list[Coat], main: Product) -> float | None:
    """Return the wet film at which all coats together come to the most that is usual on a limb."""
    own = [each for each in layers if each.product is main]
    left = LIMB_FILM.high - sum([each.dry for each in layers if each.product is not main])
    if not own or not main.family.makes_film or left <= 0:
        return None
    return wet_film_thickness(left / len(own), main.solids, main.reducer)


def coats_of(
    counts: tuple[int, int, int, int],
    lettering: bool,
    seal: Product,
    main: Product,
    wet: float,
    surface: float,
    efficiency: float,
) -> list[Coat]:
    """Return all coats in order, the lettering among them."""
    coats = [_coat("seal", seal, wet, surface, efficiency)] * counts[0]
    coats += [_coat("build", main, wet, surface, efficiency)] * counts[1]
    if lettering:
        coats.append(Coat("lettering", None, 0.0, 0.0, 0.0))
    coats += [_coat("build", main, wet, surface, efficiency)] * counts[2]
    coats += [_coat("sheen", main, wet, surface, efficiency)] * counts[3]
    return coats


def _coat(role: str, product: Product, wet: float, surface: float, efficiency: float) -> Coat:
    dry = dry_film_thickness(wet, product.solids, product.reducer) if product.family.makes_film else 0.0
    return Coat(role, product, wet, dry, volume_to_mix(surface, wet, efficiency))


def hours_of(opens: int, closes: int, days: str) -> WorkingHours:
    """Return the hours in which the shop works."""
    for id, _, worked in WORKING_DAYS:
        if id == days:
            return WorkingHours(opens * HOUR, closes * HOUR, worked)
    raise ValueError("no working week is called " + days)


def schedule_of(
    coats: list[Coat], coat_time: float, lettering_dry: float, start: int, hours: WorkingHours
) -> list[Planned]:
    """Return when each coat goes on: within the window of the film below, and once the lettering is dry."""
    steps = []
    film = None  # index of the coat below
    for index, coat in enumerate(coats):
        below = None if film is None else coats[film].product
        wait = 0.0 if below is None else below.recoat_from
        if index and coats[index - 1].product is None:
            wait = lettering_dry
        closes = None if below is None or below.recoat_to is None else int(below.recoat_to)
        steps.append(WorkStep(step_name(coats, index), int(coat_time), int(wait), closes, film))
        film = index if coat.product is not None else film
    return plan(tuple(steps), start, hours)


ROLE_NAMES = {"seal": "Seal", "build": "Build", "sheen": "Last"}


def step_name(coats: list[Coat], index: int) -> str:
    """Return what a coat is called, numbered where there are more of its kind."""
    role = coats[index].role
    same = [place for place, each in enumerate(coats) if each.role == role]
    if role == "lettering":
        return "Lettering"
    name = ROLE_NAMES[role] + " coat"
    return name if len(same) == 1 else name + " " + str(same.index(index) + 1)


def last_coat(planned: list[Planned], coats: list[Coat]) -> Planned:
    """Return when the last coat goes on, lettering left out."""
    return [each for each, coat in zip(planned, coats) if coat.product is not None][-1]


def whole_day(moment: int) -> int:
    """Return the first day that begins at or after a moment."""
    return -(-moment // DAY)
