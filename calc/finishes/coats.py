"""Coats of a finish: products, films, and the schedule of a job."""

from collections import namedtuple

from calc.dates import DAY, HOUR
from calc.outcome import Refused
from calc.quantities import show
from calc.shop.film import dry_film_thickness, time_factor_doubling, volume_to_mix, wet_film_thickness
from calc.shop.schedule import Planned, WorkingHours, WorkStep, plan
from calc.tables.finish_families import FinishFamily
from calc.tables.practice import find as find_limit

ROLES = ("seal", "build", "lettering", "sheen")
WORKING_DAYS = (
    ("six", "Monday to Saturday", (0, 1, 2, 3, 4, 5)),
    ("five", "Monday to Friday", (0, 1, 2, 3, 4)),
    ("all", "Every day", (0, 1, 2, 3, 4, 5, 6)),
    ("weekend", "Saturday and Sunday", (5, 6)),
)
REFERENCE = 25.0  # degC, for which data sheets state their times
DOUBLING, LETTERING_DRY, COAT_TIME, WET_FILM = "18 °F", "12 h", "1 h", "1.5 mil"
"""What is usual where nobody says otherwise: by how much colder times double, and so on (common practice)."""

LIMB_FILM = find_limit("limb-film")

Product = namedtuple("Product", "family solids reducer recoat_from recoat_to cure parts pot_life")
"""What is laid on; times [s] at the shop's temperature.

parts: of base and hardener by volume, (1, 0) without a hardener, None where nobody said. pot_life: of what is
mixed, or None.
"""

Coat = namedtuple("Coat", "role product wet dry volume done")
"""One coat, or the lettering, which has no product. done: as a `Done`, or None while it is to come."""

Done = namedtuple("Done", "role start end wet temperature")
"""A coat as it was laid, or the lettering: its moments [s]. wet [m], temperature [degC]: None if not read."""


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
        coats.append(_lettering(None))
    coats += [_coat("build", main, wet, surface, efficiency)] * counts[2]
    coats += [_coat("sheen", main, wet, surface, efficiency)] * counts[3]
    return coats


def _coat(role: str, product: Product, wet: float, surface: float, efficiency: float) -> Coat:
    dry = dry_film_thickness(wet, product.solids, product.reducer) if product.family.makes_film else 0.0
    return Coat(role, product, wet, dry, volume_to_mix(surface, wet, efficiency), None)


def _lettering(done: Done | None) -> Coat:
    return Coat("lettering", None, 0.0, 0.0, 0.0, done)


def after_done(coats: list[Coat], done: list[Done], seal: Product, main: Product, wet: float) -> list[Coat]:
    """Return what was done as it was, in order of time, then of the coats planned what is still to come.

    Of coats of one kind the first ones planned count as laid. More coats than were planned are coats as well.
    """
    found = []
    for each in sorted(done, key=lambda one: one.start):
        if each.role == "lettering":
            found.append(_lettering(each))
            continue
        product, film = (seal if each.role == "seal" else main), (wet if each.wet is None else each.wet)
        dry = dry_film_thickness(film, product.solids, product.reducer) if product.family.makes_film else 0.0
        found.append(Coat(each.role, product, film, dry, 0.0, each))
    counts = {role: len([1 for each in done if each.role == role]) for role in ROLES}
    for coat in coats:
        if counts[coat.role]:
            counts[coat.role] -= 1
        else:
            found.append(coat)
    return found


def speeds_of(
    done: list[Done], temperature: float, doubling: float, from_now: int
) -> tuple[tuple[int, float], ...]:
    """Return how fast coats dried, against the shop's warmth from now on, by what was read at each."""
    if not done:
        return ()
    first_to_last = sorted(done, key=lambda each: each.start)
    read = [(each.start, time_factor_doubling(temperature, each.temperature, doubling))
            for each in first_to_last if each.temperature is not None]
    return tuple(read + [(max(from_now, first_to_last[-1].end), 1.0)])


def hours_of(
    opens: int, closes: int, days: str, other: tuple[tuple[int, int, int], ...] = ()
) -> WorkingHours:
    """Return the hours in which the shop works; other: (day, opens, closes) with hours of their own."""
    for id, _, worked in WORKING_DAYS:
        if id == days:
            return WorkingHours(opens * HOUR, closes * HOUR, worked,
                                tuple([(day, first * HOUR, last * HOUR) for day, first, last in other]))
    raise ValueError("no working week is called " + days)


def schedule_of(
    coats: list[Coat], coat_time: float, lettering_dry: float, start: int, hours: WorkingHours,
    speeds: tuple[tuple[int, float], ...] = (),
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
        done = None if coat.done is None else (coat.done.start, coat.done.end)
        steps.append(WorkStep(step_name(coats, index), int(coat_time), int(wait), closes, film, done))
        film = index if coat.product is not None else film
    return plan(tuple(steps), start, hours, speeds)


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
