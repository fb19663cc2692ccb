"""Finish: film and mixes from the bow's surface, and a dated schedule from the first coat to the string."""


from calc.dates import DAY, HOUR, show_day, show_moment
from calc.declaring import (
    RULE,
    SHOP,
    TRIAL,
    Calculator,
    choice,
    count,
    date,
    group,
    names_of,
    quantity,
    result,
    rows,
    switch,
)
from calc.finishes.coat_checks import film_checks, gloss_text, other_checks
from calc.finishes.coat_tables import (
    bow_name,
    calendar_of,
    coat_chart,
    coat_table,
    figures_table,
    schedule_table,
)
from calc.finishes.coats import (
    COAT_TIME,
    DOUBLING,
    LETTERING_DRY,
    REFERENCE,
    WET_FILM,
    WORKING_DAYS,
    Done,
    Product,
    after_done,
    coats_of,
    hours_of,
    last_coat,
    product_of,
    riser_surface,
    schedule_of,
    speeds_of,
    wet_most_of,
    whole_day,
)
from calc.finishes.landing import SPRAYED, faces_of, fan_input, landing, landing_table
from calc.finishes.mixing import (
    MIXED,
    MIXING_RESULTS,
    VOLUME,
    Can,
    Laid,
    Mix,
    cup_table,
    measured,
    mix_values,
    mixes_of,
    mixing_checks,
    mixing_group,
    mixing_table,
    parts_of,
    pot_life_here,
    room_check,
)
from calc.finishes.product import (
    cold_checks,
    family_choice,
    hazard_checks,
    least_temperature_input,
)
from calc.finishes.product import least_temperature as least_of
from calc.finishes.thinness import (
    THINNESS_RESULTS,
    thinness_checks,
    thinness_group,
    thinness_of,
    thinness_table,
)
from calc.outcome import (
    STOP,
    TEXT,
    Check,
    Outcome,
    Refused,
    Sentence,
    Table,
    amount,
    sentence,
)
from calc.shop.curing import moment_after
from calc.shop.film import (
    bow_surface,
    coverage,
    dry_film_thickness,
    solvent_in,
    time_factor_doubling,
)
from calc.shop.schedule import Planned
from calc.tables.finish_families import (
    METHODS,
    RATED_TRANSFER,
    FinishFamily,
    Method,
    find,
    find_method,
)


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
    fan: float | None,
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
    cup: str,
    cup_seconds: float | None,
    temperature: float,
    doubling: float,
    start: int,
    start_hour: int,
    opens: int,
    closes: int,
    days: str,
    closed: tuple[tuple[int, int, int], ...],
    coat_time: float,
    laid: "tuple[tuple[str, int, float, float | None, float | None], ...]",
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
    for index, (_, first, last) in enumerate(closed):
        if first > last:
            raise Refused("closed", "Work ends before it begins in row " + str(index + 1) + " of the days "
                          "with other hours. Swap the two hours.", index, "closes")
    if seal_coats + build_coats + over_coats + sheen_coats == 0:
        raise Refused("build_coats", "There is not one coat. Give at least one.")
    factor = time_factor_doubling(temperature, REFERENCE, doubling)
    can = Can(parts_by or VOLUME, (part_a, part_b), (density_a, density_b, density_thinner), pot_life,
              pot_life_at)
    main = product_of(find(family), solids, reducer, recoat_from, recoat_to, cure, factor,
                      parts_of(family, can), pot_life_here(family, can, temperature, doubling))
    seal = main if seal_with == "same" else product_of(
        find(seal_with), None, 0.0, None, None, None, factor, (1.0, 0.0), None)
    if main.family.makes_film:
        surface = bow_surface(bow_length, riser_length, riser_girth, width_fadeout, width_tip, limb_thickness)
    else:
        surface = riser_surface(riser_length, riser_girth)
    faces = faces_of(surface, riser_length * riser_girth, riser_girth, width_fadeout, width_tip)
    sprayed = method in SPRAYED and main.family.makes_film and transfer is None
    panel = find_method(method).transfer_efficiency
    efficiency = landing(faces, panel, fan if sprayed else None) if transfer is None else transfer
    counts = (seal_coats, build_coats, over_coats, sheen_coats)
    done = [Done(role, int(day * DAY + hour), int(day * DAY + hour + coat_time), wet, warmth)
            for role, day, hour, warmth, wet in laid]
    coats = after_done(coats_of(counts, lettering, seal, main, wet_film, surface, efficiency), done, seal,
                       main, wet_film)
    not_before = start * DAY + start_hour * HOUR
    speeds = speeds_of(done, temperature, doubling, not_before)
    planned = schedule_of(coats, coat_time, (lettering_dry or 0.0) * factor, not_before,
                          hours_of(opens, closes, days, closed), speeds)
    final = last_coat(planned, coats)
    string_from = moment_after(speeds, final.end, main.cure) or final.end
    layers = [each for each in coats if each.product]
    to_come = [each for each in planned if each.step.done is None]
    mixes = mixes_of([Laid(step.step.name, coat.product, coat.volume, step.start, step.end)
                      for coat, step in zip(coats, planned) if coat.product and not coat.done], left_over)
    volume = sum([each.volume for each in mixes])
    own = [each for each in mixes if each.product is main]
    one_coat = own[-1] if own else None
    film = sum([each.dry for each in layers])
    thin = thinness_of(cup, cup_seconds)
    wet_most = wet_most_of(layers, main)
    checks = (hazard_checks(family) + film_checks(main.family, seal.family, film, wet_most)
              + cold_checks(temperature, least_of(family, least_temperature), main.family.name)
              + mixing_checks(own, coat_time) + room_check(one_coat)
              + thinness_checks(cup, cup_seconds)
              + other_checks(planned, gloss, sheen))
    return Outcome(
        headline=_headline(checks, main, (one_coat, volume), len(mixes), wet_film, to_come, string_from),
        values=(
            ("wet_film", wet_film),
        ) + _film_values(main, wet_film, film, wet_most) + (
            ("surface", surface),
            ("volume", volume),
            ("reducer_volume", sum([measured(each)[2] or 0.0 for each in mixes])),
        ) + mix_values(one_coat, can.densities, main.pot_life) + (
            ("solvent_coat", None if one_coat is None
             else solvent_in(one_coat.volume, main.solids, main.reducer)),
            ("viscosity", thin),
            ("time_factor", factor),
            ("last_coat", show_moment(final.start)),
            ("string_from", show_day(whole_day(string_from))),
            ("gloss_level", gloss_text(gloss, sheen)),
        ),
        checks=checks,
        tables=_cup_tables(one_coat, can) + (coat_table(coats, left_over),)
               + ((mixing_table(mixes),) if mixes else ()) + (
                schedule_table(planned, coats, string_from), figures_table(main, seal, efficiency))
               + ((landing_table(faces, panel, wet_film, left_over),) if sprayed else ())
               + (() if thin is None else (thinness_table(thin),)),
        charts=(coat_chart(coats, planned, string_from),) if film > 0 else (),
        assumptions=_assumptions(factor, main.family, find_method(method) if transfer is None else None,
                                 bow_number, sprayed and fan is None),
        files=(calendar_of(planned, coats, string_from, main.family, bow_name(bow_number, (
            bow_length, riser_length, riser_girth, width_fadeout, width_tip, limb_thickness)), plan_number),),
    )


# Products, coats, schedule ---------------------------------------------------------


def _cup_tables(mix: Mix | None, can: Can) -> tuple[Table, ...]:
    found = None if mix is None else cup_table(mix, can.densities)
    return () if found is None else (found,)


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


# What is said --------------------------------------------------------------------


def _headline(
    checks: tuple[Check, ...], main: Product, amounts: tuple[Mix | None, float], coats: int, wet: float,
    to_come: list[Planned], string_from: int,
) -> Sentence:
    family = main.family
    stops = [each.id for each in checks if each.level == STOP]
    if stops:
        reasons = {"cold": "it is too cold here for " + family.name + ", and no date below holds",
                   "cap": "the film comes to more than " + family.name + " bears and can crack"}
        return sentence("Do not start like this: " + "; ".join([reasons[id] for id in stops]) + ".")
    if not coats:
        return sentence("All coats are laid. String the bow no sooner than {}.",
                        show_day(whole_day(string_from)))
    dates = (show_moment(to_come[0].start), show_day(whole_day(string_from)))
    one, total = amounts
    each = total / coats if one is None else one.volume
    many = str(coats) + (" coats" if coats > 1 else " coat")
    if not family.makes_film:
        return sentence(
            "Have about {} of oil for each coat, {} for " + many + " on the riser, each wiped off again. "
            "Start {}; string the bow no sooner than {}.", amount("volume", each), amount("volume", total),
            *dates)
    parts = _parts_told(one)
    return sentence(
        "Mix about {} for each coat" + (", never for all at once" if family.id in MIXED else "")
        + parts.template + "; {} in "
        "all for " + many + ", each {} wet. Start {}; string the bow no sooner than {}.",
        amount("volume", each), *parts.amounts, amount("volume", total), amount("film", wet), *dates)


def _parts_told(mix: Mix | None) -> Sentence:
    """Return what one coat is mixed of, where its ratio is known and there is more than one part."""
    parts = (None, None, None) if mix is None else measured(mix)
    named = [(each, name) for each, name in zip(parts, ("of A", "of B", "of thinner")) if each]
    if parts[0] is None or len(named) < 2:
        return sentence("")
    if not parts[1]:
        named[0] = (parts[0], "of product")
    return sentence(" (" + ", ".join(["{} " + name for _, name in named]) + ")",
                    *[amount("mix_volume", each) for each, _ in named])


def _assumptions(
    factor: float, family: FinishFamily, method: Method | None, bow_number: int, as_panel: bool
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
        "A coat that is laid counts from its own hour, and dries by the warmth read there until the next "
        "coat, the last one until the day and hour from which you plan.",
        "Volumes are taken to add up when parts are mixed; solids are those of base and hardener together.",
        "The calendar's hours are those of the place where it is opened. " + (
            "Its events are known by the bow's number: keep the number, and a later plan moves them."
            if bow_number else "Its events are known by the bow's measures: two bows of the same measures "
            "need a number each."),
    ) + _transfer_sentence(method) + (AS_PANEL if as_panel else ())


AS_PANEL = ("The spray is taken to land as on work as wide as the fan. A limb is narrower, and the rest "
            "flies past: give the fan's width, or take the amount from the table of fans.",)


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
            choice("method", "Laid on with", names_of(METHODS), role=SHOP),
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
            count("seal_coats", "Seal coats", default=1, low=0, high=6),
            count("build_coats", "Build coats under the lettering", default=2, low=0, high=20),
            switch("lettering", "Lettering between the coats", default=True,
                   help="Waits for the coat below, then dries."),
            count("over_coats", "Build coats over the lettering", default=2, low=0, high=20),
            count("sheen_coats", "Last coats, for the gloss wanted", default=1, low=0, high=6),
            quantity("wet_film", "Wet film of one coat", "film", default=WET_FILM, low="0.1 mil",
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
            quantity("lettering_dry", "Lettering dries", "hours", default=LETTERING_DRY, low="0 h",
                     high="200 h", usual=("1 h", "72 h"),
                     help="At 25 °C (77 °F), before a coat goes over it.",
                     role=RULE),
            quantity("cure", "Cure before stringing", "days", default="", low="0.1 d", high="120 d",
                     usual=("1 d", "60 d"), help="At 25 °C (77 °F). Empty: typical of the family.",
                     optional=True),
            quantity("transfer", "Share that lands on the bow",
                     "ratio", default="", low="5 %", high="100 %", usual=("20 %", "100 %"),
                     help="Empty: typical of the way it is laid on.", optional=True, role=SHOP),
            fan_input(),
            quantity("left_over", "Left in cup and gun, each coat", "volume", default="0.5 fl oz",
                     low="0 fl oz", high="32 fl oz", usual=("0 fl oz", "4 fl oz"), role=SHOP),
            least_temperature_input(),
            note="Typical figures stand in for what you leave empty. They are assumptions; the sheet of your "
                 "very product comes first.",
        ),
        mixing_group(),
        thinness_group(),
        group(
            "Time",
            date("start", "Next coat not before", default="2026-05-04", low="1990-01-01",
                 high="2199-12-31",
                 help="Year, month and day."),
            count("start_hour", "Next coat not before the hour", default=9, low=0, high=23, help="0 to 23.",
                  role=TRIAL),
            count("opens", "Work begins at the hour", default=9, low=0, high=23, role=SHOP),
            count("closes", "Work ends at the hour", default=18, low=1, high=24, role=SHOP),
            choice("days", "Days worked", tuple([(id, label) for id, label, _ in WORKING_DAYS]), role=SHOP),
            rows("closed", "Days with other hours", (
                date("day", "Day", default="2026-05-14", low="1990-01-01", high="2199-12-31"),
                count("opens", "From the hour", default=0, low=0, high=24),
                count("closes", "To the hour", default=0, low=0, high=24),
            ), default="", fewest=0, most=60, help="0 and 0: closed all day.", role=SHOP),
            quantity("coat_time", "One coat takes", "hours", default=COAT_TIME, low="0.1 h", high="12 h",
                     usual=("0.25 h", "3 h"), help="Sanding, dusting, mixing and cleaning up included.",
                     role=SHOP),
            quantity("temperature", "Shop temperature", "temperature", default="70 °F", low="32 °F",
                     high="110 °F", usual=("60 °F", "90 °F"), help="Day and night."),
            quantity("doubling", "Times double for each", "temperature_difference", default=DOUBLING,
                     low="5 °F", high="50 °F", usual=("12 °F", "25 °F"),
                     help="Degrees colder. The rule of thumb: 18 °F (10 °C); some say 14 °F (8 °C).",
                     role=RULE),
        ),
        group(
            "Laid already",
            rows("laid", "Coats laid", (
                choice("role", "Coat", (("seal", "Seal"), ("build", "Build"), ("lettering", "Lettering"),
                                        ("sheen", "Last"))),
                date("day", "Day", default="2026-05-04", low="1990-01-01", high="2199-12-31"),
                quantity("hour", "Begun, after midnight", "hours", default="9 h", low="0 h", high="24 h"),
                quantity("temperature", "Temperature", "temperature", default="70 °F", low="32 °F",
                         high="110 °F", optional=True),
                quantity("wet", "Wet film", "film", default="1.5 mil", low="0.1 mil", high="20 mil",
                         optional=True),
            ), default="", fewest=0, most=40,
                 help="The plan begins behind them and moves only what is to come. Half past nine is 9.5 h. "
                      "No temperature, no film: as the shop, as planned."),
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
        result("solvent_coat", "of one coat evaporates", "mix_volume",
               "Solvent, spray that missed with it: Clear air asks for it."),
    ) + THINNESS_RESULTS + (
        result("time_factor", "Times last longer by", "number", "Against 25 °C (77 °F)."),
        result("last_coat", "Last coat", TEXT),
        result("string_from", "String it no sooner than", TEXT),
        result("gloss_level", "Gloss level", TEXT),
    ),
    acted_on=("wet_film", "volume", "last_coat", "string_from"),
    cautions=CAUTIONS,
    sources=("bench-practice", "cure-doubling", "drying-reference", "finish-practice", "geometry",
             "gloss-geometry", "gloss-levels", "niosh-formaldehyde", "one-part-isocyanate",
             "pot-life-halving", "rfc-5545", "transfer-rating",
             "viscosity-cups", "volume-solids"),
    example="The invented 64 in recurve in one-part urethane, started on Monday 4 May 2026 at 70 °F.",
    first=("family", "build_coats", "over_coats", "start"),
    compute=compute,
)
