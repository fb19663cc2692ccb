"""Finish: film and mixes from the bow's surface, and a dated schedule from the first coat to the string."""

from collections import namedtuple

from calc.dates import DAY, show_day, show_moment
from calc.declaring import (
    RULE,
    SHOP,
    TRIAL,
    Calculator,
    choice,
    count,
    date,
    group,
    quantity,
    result,
    switch,
)
from calc.finishes.mixing import (
    MIXED,
    MIXING_RESULTS,
    VOLUME,
    Can,
    Laid,
    Mix,
    measured,
    mix_values,
    mixes_of,
    mixing_checks,
    mixing_group,
    mixing_table,
    parts_of,
    pot_life_here,
)
from calc.finishes.product import (
    cold_checks,
    family_choice,
    hazard_checks,
    least_temperature_input,
)
from calc.finishes.product import least_temperature as least_of
from calc.outcome import (
    CALENDAR,
    OK,
    STOP,
    TEXT,
    WATCH,
    Amount,
    Axis,
    Chart,
    Check,
    Column,
    File,
    Line,
    Outcome,
    Refused,
    Sentence,
    Table,
    amount,
    check,
    sentence,
)
from calc.quantities import ROUNDING, show
from calc.shop.calendar import Event, calendar_text
from calc.shop.film import (
    bow_surface,
    coverage,
    dry_film_thickness,
    time_factor_doubling,
    volume_to_mix,
    wet_film_thickness,
)
from calc.shop.schedule import Planned, WorkingHours, WorkStep, plan
from calc.tables.finish_families import (
    METHODS,
    RATED_TRANSFER,
    FinishFamily,
    Method,
    find,
    find_method,
)
from calc.tables.gloss import levels_at, sheen_decides
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


def compute(
    family: str,
    seal_with: str,
    method: str,
    bow_length: float,
    riser_length: float,
    riser_girth: float,
    width_fadeout: float,
    width_tip: float,
    limb_thickness: float,
    seal_coats: int,
    build_coats: int,
    lettering: bool,
    over_coats: int,
    sheen_coats: int,
    wet_film: float,
    gloss: float,
    sheen: float | None,
    solids: float | None,
    reducer: float,
    transfer: float | None,
    left_over: float,
    recoat_from: float | None,
    recoat_to: float | None,
    lettering_dry: float | None,
    cure: float | None,
    least_temperature: float | None,
    parts_by: str | None,
    part_a: float | None,
    part_b: float | None,
    pot_life: float | None,
    pot_life_at: float | None,
    density_a: float | None,
    density_b: float | None,
    density_thinner: float | None,
    temperature: float,
    doubling: float,
    start: int,
    start_hour: int,
    opens: int,
    closes: int,
    days: str,
    coat_time: float,
    bow_number: int,
    plan_number: int,
) -> Outcome:
    """Return films, mixes and the schedule."""
    if bow_length <= riser_length:
        raise Refused("riser_length", "The riser is longer than the bow. Check both lengths.")
    if opens >= closes:
        raise Refused("closes", "Work must end after it begins, on the same day.")
    if coat_time > (closes - opens) * HOUR:
        raise Refused("coat_time", "One coat takes longer than a working day. Check the time and its unit.")
    if seal_coats + build_coats + over_coats + sheen_coats == 0:
        raise Refused("build_coats", "There is not one coat. Give at least one.")
    factor = time_factor_doubling(temperature, REFERENCE, doubling)
    can = Can(parts_by or VOLUME, (part_a, part_b), (density_a, density_b, density_thinner), pot_life,
              pot_life_at)
    main = _product(find(family), solids, reducer, recoat_from, recoat_to, cure, factor,
                    parts_of(family, can), pot_life_here(family, can, temperature, doubling))
    seal = main if seal_with == "same" else _product(
        find(seal_with), None, 0.0, None, None, None, factor, (1.0, 0.0), None)
    if main.family.makes_film:
        surface = bow_surface(bow_length, riser_length, riser_girth, width_fadeout, width_tip, limb_thickness)
    else:
        surface = _riser_surface(riser_length, riser_girth)
    efficiency = find_method(method).transfer_efficiency if transfer is None else transfer
    counts = (seal_coats, build_coats, over_coats, sheen_coats)
    coats = _coats(counts, lettering, seal, main, wet_film, surface, efficiency)
    planned = _schedule(coats, coat_time, (lettering_dry or 0.0) * factor,
                        start * DAY + start_hour * HOUR, _hours(opens, closes, days))
    last = _last_coat(planned, coats)
    string_from = last.end + int(main.cure)
    layers = [each for each in coats if each.product]
    mixes = mixes_of([Laid(step.step.name, coat.product, coat.volume, step.start, step.end)
                      for coat, step in zip(coats, planned) if coat.product is not None], left_over)
    volume = sum([each.volume for each in mixes])
    own = [each for each in mixes if each.product is main]
    one_coat = own[-1] if own else None
    film = sum([each.dry for each in layers])
    wet_most = _wet_most(layers, main)
    checks = (hazard_checks(family) + _film_checks(main.family, seal.family, film, wet_most)
              + cold_checks(temperature, least_of(family, least_temperature), main.family.name)
              + mixing_checks(own, coat_time)
              + _other_checks(planned, gloss, sheen))
    return Outcome(
        headline=_headline(checks, main, (one_coat, volume), len(layers), wet_film, planned[0].start,
                           string_from),
        values=(
            ("wet_film", wet_film),
        ) + _film_values(main, wet_film, film, wet_most) + (
            ("surface", surface),
            ("volume", volume),
            ("reducer_volume", sum([measured(each)[2] or 0.0 for each in mixes])),
        ) + mix_values(one_coat, can.densities, main.pot_life) + (
            ("time_factor", factor),
            ("last_coat", show_moment(last.start)),
            ("string_from", show_day(_whole_day(string_from))),
            ("gloss_level", _gloss_text(gloss, sheen)),
        ),
        checks=checks,
        tables=(_coat_table(coats, left_over), mixing_table(mixes),
                _schedule_table(planned, coats, string_from), _figures_table(main, seal, efficiency)),
        charts=(_chart(coats, planned, string_from),) if film > 0 else (),
        assumptions=_assumptions(factor, main.family, find_method(method) if transfer is None else None,
                                 bow_number),
        files=(_calendar(planned, coats, string_from, main.family, _bow(bow_number, (
            bow_length, riser_length, riser_girth, width_fadeout, width_tip, limb_thickness)), plan_number),),
    )


# Products, coats, schedule ---------------------------------------------------------


def _product(
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


def _riser_surface(length: float, girth: float) -> float:
    if length <= 0:
        raise Refused("riser_length", "Hand-rubbed oil goes on a riser of bare wood only. Give the riser's "
                      "length.")
    return length * girth


def _wet_most(layers: list[Coat], main: Product) -> float | None:
    """Return the wet film at which all coats together come to the most that is usual on a limb."""
    own = [each for each in layers if each.product is main]
    left = LIMB_FILM.high - sum([each.dry for each in layers if each.product is not main])
    if not own or not main.family.makes_film or left <= 0:
        return None
    return wet_film_thickness(left / len(own), main.solids, main.reducer)


def _film_values(
    main: Product, wet: float, film: float, wet_most: float | None
) -> tuple[tuple[str, float | None], ...]:
    dry = dry_film_thickness(wet, main.solids, main.reducer) if main.family.makes_film else None
    return (
        ("wet_most", wet_most),
        ("dry_film", dry),
        ("dry_build", film if film > 0 else None),
        ("covers", None if dry is None else coverage(dry, main.solids)),
    )


def _coats(
    counts: tuple[int, int, int, int],
    lettering: bool,
    seal: Product,
    main: Product,
    wet: float,
    surface: float,
    efficiency: float,
) -> list[Coat]:
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


def _hours(opens: int, closes: int, days: str) -> WorkingHours:
    for id, _, worked in WORKING_DAYS:
        if id == days:
            return WorkingHours(opens * HOUR, closes * HOUR, worked)
    raise ValueError("no working week is called " + days)


def _schedule(
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
        steps.append(WorkStep(_step_name(coats, index), int(coat_time), int(wait), closes, film))
        film = index if coat.product is not None else film
    return plan(tuple(steps), start, hours)


ROLE_NAMES = {"seal": "Seal", "build": "Build", "sheen": "Last"}


def _step_name(coats: list[Coat], index: int) -> str:
    role = coats[index].role
    same = [place for place, each in enumerate(coats) if each.role == role]
    if role == "lettering":
        return "Lettering"
    name = ROLE_NAMES[role] + " coat"
    return name if len(same) == 1 else name + " " + str(same.index(index) + 1)


def _last_coat(planned: list[Planned], coats: list[Coat]) -> Planned:
    return [each for each, coat in zip(planned, coats) if coat.product is not None][-1]


def _whole_day(moment: int) -> int:
    """Return the first day that begins at or after a moment."""
    return -(-moment // DAY)


# What is said --------------------------------------------------------------------


def _headline(
    checks: tuple[Check, ...], main: Product, amounts: tuple[Mix | None, float], coats: int, wet: float,
    first: int, string_from: int,
) -> Sentence:
    family = main.family
    stops = [each.id for each in checks if each.level == STOP]
    if stops:
        reasons = {"cold": "it is too cold here for " + family.name + ", and no date below holds",
                   "cap": "the film comes to more than " + family.name + " bears and can crack"}
        return sentence("Do not start like this: " + "; ".join([reasons[id] for id in stops]) + ".")
    dates = (show_moment(first), show_day(_whole_day(string_from)))
    one, total = amounts
    each = total / coats if one is None else one.volume
    many = str(coats) + (" coats" if coats > 1 else " coat")
    if not family.makes_film:
        return sentence(
            "Have about {} of oil for each coat, {} for " + many + " on the riser, each wiped off again. "
            "Start {}; string the bow no sooner than {}.", amount("volume", each), amount("volume", total),
            *dates)
    return sentence(
        "Mix about {} for each coat" + (", never for all at once" if family.id in MIXED else "") + "; {} in "
        "all for " + many + ", each {} wet. Start {}; string the bow no sooner than {}.",
        amount("volume", each), amount("volume", total), amount("film", wet), *dates)


def _gloss_text(gloss: float, sheen: float | None) -> str:
    names = [each.id + " " + each.name for each in levels_at(gloss, sheen)]
    return " or ".join(names) if names else "no level: the two readings do not go together"


def _film_checks(
    family: FinishFamily, seal: FinishFamily, film: float, wet_most: float | None
) -> tuple[Check, ...]:
    if not family.makes_film:
        return _oil_checks(seal)
    found = []
    if family.film_cap is not None and film > family.film_cap[0] * (1 + ROUNDING):
        stop = film > family.film_cap[1] * (1 + ROUNDING)
        found.append(check("cap", STOP if stop else WATCH, sentence(
            "A dry film of {} is more than many makers of " + family.name + " allow, which is {} to {} for "
            "all coats: it can crack.", amount("film", film), amount("film", family.film_cap[0]),
            amount("film", family.film_cap[1]))))
    if film > LIMB_FILM.high * (1 + ROUNDING):
        thinner = "" if wet_most is None else " Lay each coat at most {} wet there, or fewer coats."
        found.append(check("limb-film", WATCH, sentence(
            "A dry film of {} is more than the {} to {} that is usual on limbs: finish bends badly, and its "
            "mass slows the limb." + thinner, amount("film", film), amount("film", LIMB_FILM.low),
            amount("film", LIMB_FILM.high), *([] if wet_most is None else [amount("film", wet_most)]))))
    else:
        found.append(check("limb-film", OK, sentence(
            "A dry film of {} is no more than is usual on limbs, {} to {}.", amount("film", film),
            amount("film", LIMB_FILM.low), amount("film", LIMB_FILM.high))))
    return tuple(found)


def _oil_checks(seal: FinishFamily) -> tuple[Check, ...]:
    found = [check("oil", WATCH, "Hand-rubbed oil is for bare wood. On glass it does not hold: only the "
                   "riser is reckoned here, and the limbs need another finish. It leaves hardly a film, so "
                   "none is counted.")]
    if seal.makes_film:
        found.append(check("oil-seal", WATCH, "A seal coat of " + seal.name + " keeps the oil out of the "
                           "wood: leave it off, or choose a finish that lies on top."))
    return tuple(found)


def _other_checks(planned: list[Planned], gloss: float, sheen: float | None) -> tuple[Check, ...]:
    found = [_window_check(planned)]
    if sheen is None and sheen_decides(gloss):
        found.append(check("gloss", WATCH, sentence(
            "A gloss of {} at 60 degrees can be either of two levels; the sheen, read at 85 degrees, "
            "decides.", amount("gloss", gloss))))
    return tuple(found)


def _window_check(planned: list[Planned]) -> Check:
    late = [each.step.name for each in planned if each.late]
    if late:
        return check("window", WATCH, "The recoat window closes before the next coat can go on. Dull the "
                     "film before: " + ", ".join([name[0].lower() + name[1:] for name in late]) + ".")
    return check("window", OK, "Every coat falls within its recoat window and within working hours.")


def _coat_table(coats: list[Coat], left_over: float) -> Table:
    lines = []
    built = 0.0
    for index, each in enumerate(coats):
        if each.product is None:
            continue
        built += each.dry
        dry, so_far = (each.dry, built) if each.product.family.makes_film else (None, None)
        lines.append((_step_name(coats, index), each.product.family.name, each.wet, dry, so_far,
                      each.volume + left_over))
    return Table("coats", "Coat by coat", (
        Column("coat", "Coat", TEXT), Column("product", "Product", TEXT), Column("wet", "Wet film", "film"),
        Column("dry", "Dry film", "film"), Column("built", "Dry film so far", "film"),
        Column("volume", "To mix", "volume"),
    ), tuple(lines))


def _schedule_table(planned: list[Planned], coats: list[Coat], string_from: int) -> Table:
    lines = []
    for index, each in enumerate(planned):
        over_letters = index and coats[index - 1].product is None
        note = "sand dull first" if not over_letters else "dull the film round the letters first"
        lines.append((each.step.name, show_moment(each.start), note if each.late else ""))
    lines.append(("String and first draw", show_day(_whole_day(string_from)), "from a distance"))
    return Table("schedule", "Schedule", (
        Column("step", "Step", TEXT), Column("start", "Start", TEXT), Column("note", "Note", TEXT),
    ), tuple(lines))


def _figures_table(main: Product, seal: Product, efficiency: float) -> Table:
    lines = []
    for each in (main,) if seal is main else (main, seal):
        closes = Amount(TEXT, "no end", None) if each.recoat_to is None else amount("hours", each.recoat_to)
        lines.append((each.family.name, each.solids if each.family.makes_film else None, each.recoat_from,
                      closes, each.cure, efficiency))
    return Table("figures", "Figures used, at the shop's temperature", (
        Column("product", "Product", TEXT), Column("solids", "Solids by volume", "ratio"),
        Column("from", "Recoat from", "hours"), Column("to", "Recoat until", "hours"),
        Column("cure", "Cure before stringing", "days"), Column("transfer", "Lands on the bow", "ratio"),
    ), tuple(lines))


def _chart(coats: list[Coat], planned: list[Planned], string_from: int) -> Chart:
    first = planned[0].start
    times, films = [0.0], [0.0]
    for each, coat in zip(planned, coats):
        times += [float(each.start - first), float(each.end - first)]
        films += [films[-1], films[-1] + coat.dry]
    times.append(float(string_from - first))
    films.append(films[-1])
    return Chart("build", "Dry film from the first coat to the string", Axis("Since the first coat", "days"),
                 Axis("Dry film", "film"), (Line("film", "line", times, films),))


BowName = namedtuple("BowName", "tag name file")
"""What tells one bow from another in a calendar: a word for ids, a name to read, the end of a file's name."""


def _bow(number: int, measures: tuple[float, ...]) -> BowName:
    """Return the bow by its number in the reader's own book, or by its measures where it has none."""
    if number:
        return BowName("bow-" + str(number), "Bow " + str(number), "-bow-" + str(number))
    tenths = [str(int(each * 10_000 + 0.5)) for each in measures]
    return BowName("bow-by-measure-" + "-".join(tenths), show(measures[0], "length") + " bow", "")


def _calendar(
    planned: list[Planned], coats: list[Coat], string_from: int, family: FinishFamily, bow: BowName,
    plan_number: int,
) -> File:
    """Return the schedule as a file whose events keep their ids from plan to plan, each bow its own."""
    stamp = planned[0].start // DAY * DAY
    counts: dict[str, int] = {}
    events = []

    def add(step: str, name: str, words: str, start: int, end: int) -> None:
        events.append(Event("finish-" + bow.tag + "-" + step + "@rebrace.invalid",
                            bow.name + ": " + name[0].lower() + name[1:], words, start, end,
                            plan_number - 1))

    for each, coat in zip(planned, coats):
        counts[coat.role] = counts.get(coat.role, 0) + 1
        add(coat.role + "-" + str(counts[coat.role]), each.step.name,
            family.name + ("; sand the film dull first" if each.late else "") + ". The maker's sheet comes "
                                                                                "first.",
            each.start, each.end)
    ready = _whole_day(string_from) * DAY
    add("string", "String and first draw",
        "Inspect first; first full draw from a distance, with eye protection.",
        ready + 9 * HOUR, ready + 10 * HOUR)
    return File("finish-schedule" + bow.file + ".ics", "Schedule as a calendar file", CALENDAR,
                calendar_text("-//Rebrace//Finish schedule//EN", stamp, events))


def _assumptions(
    factor: float, family: FinishFamily, method: Method | None, bow_number: int
) -> tuple[Sentence | str, ...]:
    surface = ("The bow is two limbs that taper evenly and a riser of one girth; tips, shelf and window are "
               "not drawn out. Limbs and riser get the same film.")
    if not family.makes_film:
        surface = ("The riser is of one girth; shelf and window are not drawn out. The wet film is what the "
                   "rag lays on; most of it comes off again.")
    return (
        "Solids, windows, cure and transfer are typical of the family where you gave none: assumptions to "
        "edit. The maker's sheet comes first, always.",
        sentence("Times are stated for 25 °C (77 °F) and last {} times as long in this shop, by the rule "
                 "that they double for each step colder. It is a rule of thumb and stops holding in the "
                 "cold.",
                 amount("number", factor)),
        surface,
        "The cup, the gun and the filter keep the same rest at every coat.",
        "Volumes are taken to add up when parts are mixed; solids are those of base and hardener together.",
        "The calendar's hours are those of the place where it is opened. " + (
            "Its events are known by the bow's number: keep the number, and a later plan moves them."
            if bow_number else "Its events are known by the bow's measures: two bows of the same measures "
            "need a number each."),
    ) + _transfer_sentence(method)


def _transfer_sentence(method: Method | None) -> tuple[Sentence, ...]:
    if method is None or method.id != "hvlp":
        return ()
    return (sentence(
        "Of what a low-pressure gun sprays {} is taken to land on the bow, the middle of the 50 to 60 % that "
        "trade sources give. Its rating of {} is for flat panels.",
        amount("ratio", method.transfer_efficiency, 0), amount("ratio", RATED_TRANSFER, 0)),)


CAUTIONS: tuple[Sentence | str, ...] = (
    "Fresh air, no spark or flame, and the respirator that the safety data sheet names. Two-part urethane "
    "and its overspray: supplied air and training, never a filter mask at a guess.",
    "Read section 3 of the safety data sheet before the tin is open. Isocyanate can stand there for a "
    "one-part product, too. Formaldehyde comes off acid-catalysed lacquer, and above its limit NIOSH lists "
    "nothing with cartridges: breathing apparatus, or supplied air with a bottle to get out on.",
    "Rags with oil or varnish can catch fire by themselves: into water, or a closed metal can.",
    "Do not string a bow whose finish is soft: the string presses into it, and heat to hurry a cure softens "
    "glue lines. Keep it below 50 °C (120 °F).",
    "Inspect the bow again before stringing; first full draw from a distance on a tiller stand, with eye "
    "protection.",
)

CALCULATOR = Calculator(
    id="finish",
    title="Finish",
    purpose="Gives the film, what to mix for each coat and a dated schedule, from the bow's surface and the "
            "product.",
    groups=(
        group(
            "Product",
            family_choice(),
            choice("seal_with", "Seal coat", (("same", "The same product"), ("shellac", "Shellac"))),
            choice("method", "Laid on with", tuple([(each.id, each.name[0].upper() + each.name[1:])
                                                    for each in METHODS]), role=SHOP),
        ),
        group(
            "Bow",
            quantity("bow_length", "Bow length along the back", "length", default="64 in", low="20 in",
                     high="90 in", usual=("44 in", "74 in"), help="From nock to nock."),
            quantity("riser_length", "Riser length", "length", default="19 in", low="0 in", high="40 in",
                     usual=("10 in", "26 in"), help="Between the fadeouts."),
            quantity("riser_girth", "Girth of the riser", "length", default="6 in", low="1 in", high="16 in",
                     usual=("4 in", "9 in"), help="Mean distance round it.",
                     measure="A strip of paper round three places."),
            quantity("width_fadeout", "Limb width at the fadeout", "length", default="1 5/8 in", low="1/2 in",
                     high="4 in", usual=("1 in", "2 1/4 in")),
            quantity("width_tip", "Limb width at the tip", "length", default="1/2 in", low="1/8 in",
                     high="3 in", usual=("1/4 in", "1 in")),
            quantity("limb_thickness", "Limb thickness, mean", "thickness", default="0.270 in",
                     low="0.060 in", high="1.2 in", usual=("0.150 in", "0.700 in")),
        ),
        group(
            "Coats",
            count("seal_coats", "Seal coats", default=1, low=0, high=6, role=TRIAL),
            count("build_coats", "Build coats under the lettering", default=2, low=0, high=20, role=TRIAL),
            switch("lettering", "Lettering between the coats", default=True,
                   help="Waits for the coat below, then dries."),
            count("over_coats", "Build coats over the lettering", default=2, low=0, high=20, role=TRIAL),
            count("sheen_coats", "Last coats, for the gloss wanted", default=1, low=0, high=6, role=TRIAL),
            quantity("wet_film", "Wet film of one coat", "film", default="1.5 mil", low="0.1 mil",
                     high="20 mil", usual=("0.5 mil", "6 mil"), help="As laid down.",
                     measure="A comb gauge pressed into wet film on a test piece.", role=RULE),
            quantity("gloss", "Gloss wanted, at 60 degrees", "gloss", default="30 GU", low="0 GU",
                     high="100 GU", usual=("2 GU", "95 GU")),
            quantity("sheen", "Sheen, at 85 degrees", "gloss", default="", low="0 GU", high="120 GU",
                     usual=("0 GU", "100 GU"),
                     help="Decides up to 5 and from 20 to 25 GU of gloss, where two levels overlap; may stay "
                          "empty.", optional=True),
        ),
        group(
            "From the maker's sheet",
            quantity("solids", "Solids by volume", "ratio", default="", low="3 %", high="100 %",
                     usual=("8 %", "75 %"),
                     help="Of a two-part product once it is mixed. Empty: typical of the family.",
                     optional=True),
            quantity("reducer", "Reducer, of the product's volume", "ratio", default="10 %", low="0 %",
                     high="200 %", usual=("0 %", "50 %"),
                     help="Thinner, of A and B together where there are two. Only what the sheet allows."),
            quantity("recoat_from", "Recoat from", "hours", default="", low="0.1 h", high="720 h",
                     usual=("0.25 h", "72 h"), help="At 25 °C (77 °F). Empty: typical of the family.",
                     optional=True),
            quantity("recoat_to", "Recoat until", "hours", default="", low="0.1 h", high="2000 h",
                     usual=("1 h", "400 h"),
                     help="After it only on a sanded film. Empty: typical of the family.", optional=True),
            quantity("lettering_dry", "Lettering dries", "hours", default="12 h", low="0 h", high="200 h",
                     usual=("1 h", "72 h"), help="At 25 °C (77 °F), before a coat goes over it.", role=RULE),
            quantity("cure", "Cure before stringing", "days", default="", low="0.1 d", high="120 d",
                     usual=("1 d", "60 d"), help="At 25 °C (77 °F). Empty: typical of the family.",
                     optional=True),
            quantity("transfer", "Share that lands on the bow",
                                 "ratio", default="", low="5 %", high="100 %", usual=("20 %", "100 %"),
                     help="Empty: typical of the way it is laid on.", optional=True, role=SHOP),
            quantity("left_over", "Left in cup and gun, each coat", "volume", default="0.5 fl oz",
                     low="0 fl oz", high="32 fl oz", usual=("0 fl oz", "4 fl oz"), role=SHOP),
            least_temperature_input(),
            note="Typical figures stand in for what you leave empty. They are assumptions; the sheet of your "
                 "very product comes first.",
        ),
        mixing_group(),
        group(
            "Time",
            date("start", "First coat not before", default="2026-05-04", low="1990-01-01", high="2199-12-31",
                 help="Year, month and day.", role=TRIAL),
            count("start_hour", "First coat not before the hour", default=9, low=0, high=23, help="0 to 23.",
                  role=TRIAL),
            count("opens", "Work begins at the hour", default=9, low=0, high=23, role=SHOP),
            count("closes", "Work ends at the hour", default=18, low=1, high=24, role=SHOP),
            choice("days", "Days worked", tuple([(id, label) for id, label, _ in WORKING_DAYS]), role=SHOP),
            quantity("coat_time", "One coat takes", "hours", default="1 h", low="0.1 h", high="12 h",
                     usual=("0.25 h", "3 h"), help="Sanding, dusting, mixing and cleaning up included.",
                     role=SHOP),
            quantity("temperature", "Shop temperature", "temperature", default="70 °F", low="32 °F",
                     high="110 °F", usual=("60 °F", "90 °F"), help="Day and night."),
            quantity("doubling", "Times double for each", "temperature_difference", default="18 °F",
                     low="5 °F", high="50 °F", usual=("12 °F", "25 °F"),
                     help="Degrees colder. The rule of thumb: 18 °F (10 °C); some say 8 °C.", role=RULE),
        ),
        group(
            "Calendar file",
            count("bow_number", "Number of the bow", default=0, low=0, high=99999,
                  help="In your own book; 0: none. It names the events, and a later plan of the same number "
                       "moves them.", role=TRIAL),
            count("plan_number", "Which plan of this bow", default=1, low=1, high=999,
                  help="Count up when you plan anew and save the file again.", role=TRIAL),
        ),
    ),
    results=(
        result("wet_film", "Wet film, one coat", "film", "What the comb should read."),
        result("wet_most", "Wet film of a coat, at most, on limbs", "film",
               "All coats together then leave no more dry than is usual there."),
        result("dry_film", "Dry film, one coat", "film"),
        result("dry_build", "Dry film, all coats", "film"),
        result("covers", "The product covers, without loss", "coverage",
               "One coat, before reducer: to compare with the maker's sheet."),
        result("surface", "Surface that is coated", "area", "The riser alone for hand-rubbed oil."),
        result("volume", "To mix in all", "volume", "Product and reducer, losses included."),
        result("reducer_volume", "of it reducer", "volume"),
    ) + MIXING_RESULTS + (
        result("time_factor", "Times last longer by", "number", "Against 25 °C (77 °F)."),
        result("last_coat", "Last coat", TEXT),
        result("string_from", "String it no sooner than", TEXT),
        result("gloss_level", "Gloss level", TEXT),
    ),
    cautions=CAUTIONS,
    sources=("bench-practice", "cure-doubling", "drying-reference", "finish-practice", "geometry",
             "gloss-geometry", "gloss-levels", "niosh-formaldehyde", "one-part-isocyanate",
             "pot-life-halving", "rfc-5545", "transfer-rating", "volume-solids"),
    example="The invented 64 in recurve in one-part urethane, started on Monday 4 May 2026 at 70 °F.",
    compute=compute,
)
