"""Grit: the ladder of grades from start to finish, and what each step has to remove."""

from calc.declaring import (
    RULE,
    SHOP,
    Calculator,
    choice,
    group,
    quantity,
    result,
    switch,
)
from calc.outcome import (
    OK,
    TEXT,
    WATCH,
    Axis,
    Chart,
    Check,
    Column,
    Line,
    Outcome,
    Refused,
    Sentence,
    Table,
    amount,
    check,
    sentence,
)
from calc.quantities import ROUNDING
from calc.shop.abrasives import ladder, nearest, removed_by, scratch_depth, step_ratio
from calc.tables.grits import (
    CAMI,
    CAMI_GRITS,
    P_GRITS,
    SCALE_NAMES,
    Grit,
    P,
    between_coats,
    find,
    name_of,
)

USUAL_LIMIT = "1.65"
"""House rule: passes one grade skipped, refuses two. No standard gives a limit."""

SHELF_P = (40, 60, 80, 100, 120, 150, 180, 220, 240, 320, 400, 600, 800, 1000, 1200, 1500, 2000)
SHELF_CAMI = (40, 60, 80, 100, 120, 150, 180, 220, 240, 320, 400, 600, 800, 1000)
"""Grades that an ordinary shop has in the drawer (common practice)."""

FINEST_UNDER_FILM = 68e-6
"""Grain size of 220: finer bare wood gives many film finishes less to hold on to (an advice, no limit)."""



def compute(
    scale: str,
    start_p: str | None,
    finish_p: str | None,
    start_cami: str | None,
    finish_cami: str | None,
    shelf: str,
    material: str,
    wet: bool,
    step_limit: float,
    slope: float,
) -> Outcome:
    """Return the ladder from the start grade to the finish grade."""
    start, finish = _ends(scale, start_p, finish_p, start_cami, finish_cami)
    if finish.size > start.size:
        raise Refused("finish_" + scale, "The finish grade is coarser than the start grade: "
                      "choose a finer one, or swap the two.")
    steps = ladder(_grades(scale, shelf), start, finish, step_limit)
    ratios = [step_ratio(before.size, after.size) for before, after in zip(steps, steps[1:])]
    largest = max(ratios) if ratios else 1.0
    removed = removed_by(steps, slope)
    return Outcome(
        headline=_headline(steps, largest),
        values=(
            ("steps", len(steps)),
            ("largest_ratio", largest),
            ("final_scratch", scratch_depth(finish.size, slope)),
            ("removed", removed),
            ("other_scale", _on_the_other_scale(finish)),
        ),
        checks=_checks(steps, largest, step_limit, material, wet, removed),
        tables=(_ladder_table(steps, slope), _between_table()),
        charts=(_chart(steps),),
        assumptions=_assumptions(slope, step_limit),
    )


def _ends(
    scale: str, start_p: str | None, finish_p: str | None, start_cami: str | None, finish_cami: str | None
) -> tuple[Grit, Grit]:
    if scale == P:
        return find(start_p or ""), find(finish_p or "")
    elif scale == CAMI:
        return find(start_cami or ""), find(finish_cami or "")
    else:
        raise ValueError("no scale is called " + scale)


def _grades(scale: str, shelf: str) -> tuple[Grit, ...]:
    grades = P_GRITS if scale == P else CAMI_GRITS
    if shelf == "all":
        return grades
    kept = SHELF_P if scale == P else SHELF_CAMI
    return tuple([grit for grit in grades if grit.number in kept])


def _on_the_other_scale(grit: Grit) -> str:
    other = nearest(grit.size, CAMI_GRITS if grit.scale == P else P_GRITS)
    return ("CAMI " if other.scale == CAMI else "") + name_of(other)


# What is said --------------------------------------------------------------------


def _headline(steps: list[Grit], largest: float) -> Sentence | str:
    names = [name_of(each) for each in steps]
    if len(steps) == 1:
        return "Start and finish are one grade: sand with " + names[0] + " and be done."
    return sentence("Sand with " + ", ".join(names[:-1]) + " and then " + names[-1]
                    + ": the largest step goes to grains {} times finer.", amount("number", largest))


def _checks(
    steps: list[Grit], largest: float, limit: float, material: str, wet: bool, removed: float
) -> tuple[Check, ...]:
    found = []
    if largest > limit * (1 + ROUNDING):
        found.append(check("ratio", WATCH, sentence(
            "One step goes to grains {} times finer, more than the limit of {}: no grade at hand lies between"
            "{}. Give that step more time, and look for old scratches in a low light before going on.",
            amount("number", largest), amount("number", limit), _left_in_the_shop(steps, largest))))
    else:
        found.append(check("ratio", OK, sentence(
            "No step goes to grains more than {} times finer; the limit is {}.",
            amount("number", largest), amount("number", limit))))
    if material == "wood" and steps[-1].size < FINEST_UNDER_FILM * (1 - ROUNDING):
        found.append(check("too-fine", WATCH,
                           "Bare wood finer than 220 gives a film finish less to hold on to: ask the maker's "
                           "sheet where to stop. Under a rubbed oil finer is usual."))
    if material == "wood" and wet:
        found.append(check("wet-wood", WATCH,
                           "Water raises the fibres of bare wood: sand it dry, or wet it once, let it dry, "
                           "and take the raised fibres off with the last grade."))
    if material == "glass" and not wet:
        found.append(check("dry-glass", WATCH,
                           "Dry sanding of glass fills the room with dust that harms lungs and skin: sand "
                           "wet where you can; otherwise extraction, a fitted respirator, gloves and long "
                           "sleeves."))
    if material == "glass":
        found.append(check("glass-counts", WATCH, sentence(
            "Removing the scratches of all grades takes about {} of glass on each face that is sanded. It "
            "counts against the glass that must stay, and takes draw weight.",
            amount("thickness", removed, 4))))
    return tuple(found)


def _left_in_the_shop(steps: list[Grit], largest: float) -> str:
    """Return which grades of the whole scale lie within the largest step, as the end of a sentence."""
    for before, after in zip(steps, steps[1:]):
        if step_ratio(before.size, after.size) == largest:
            names = [name_of(each) for each in (P_GRITS if before.scale == P else CAMI_GRITS)
                     if after.size < each.size < before.size]
            return " (the scale has " + ", ".join(names) + ")" if names else ""
    return ""


def _ladder_table(steps: list[Grit], slope: float) -> Table:
    lines: list[tuple[object, ...]] = []
    for index, each in enumerate(steps):
        before = steps[index - 1] if index else None
        lines.append((
            name_of(each), each.size, None if before is None else step_ratio(before.size, each.size),
            scratch_depth(each.size, slope), None if before is None else scratch_depth(before.size, slope),
        ))
    return Table("ladder", "The ladder: each grade sands until the scratches of the one before are gone", (
        Column("grade", "Grade", TEXT), Column("size", "Mean grain size", "particle"),
        Column("ratio", "Finer by", "number"), Column("scratch", "Leaves scratches of about", "particle"),
        Column("remove", "Must remove about", "particle"),
    ), tuple(lines))


def _between_table() -> Table:
    return Table("between", "Grades between coats (common practice, P scale)", (
        Column("place", "Where", TEXT), Column("grade", "Grade", TEXT), Column("way", "Wet or dry", TEXT),
        Column("until", "How far", TEXT),
    ), tuple([(each.work, each.grades, each.way, each.until) for each in between_coats()]))


def _chart(steps: list[Grit]) -> Chart:
    places = [float(index + 1) for index in range(len(steps))]
    sizes = [each.size for each in steps]
    return Chart("sizes", "Grain size from step to step", Axis("Step", "strokes"),
                 Axis("Mean grain size", "particle"), (
                     Line("grade", "line", places, sizes), Line("step", "points", places, sizes)))


def _assumptions(slope: float, limit: float) -> tuple[Sentence | str, ...]:
    return (
        "Grain sizes are means of a grade. A worn sheet cuts finer than its number, a cheap one holds stray "
        "coarse grains.",
        sentence("The step limit of {} is a house rule to edit; no standard gives one.",
                 amount("number", limit)),
        sentence("Scratches are taken as {} of the grain size deep: an assumption to edit. That depth grows "
                 "in "
                 "proportion to the grain was published; how steeply was not.", amount("ratio", slope)),
    )


CAUTIONS: tuple[Sentence | str, ...] = (
    "Never sand through the glass of a limb, and count what finish sanding takes off it: some tenths of a "
    "pound of draw weight, which belong to the reserve.",
    "Dust of glass, epoxy and wood harms lungs and skin; wood dust is carcinogenic. Extraction or wet "
    "sanding, and a fitted respirator for that dust.",
    "Unstring the bow. Keep water out of cracks, lifted glass and unsealed wood.",
)


def _grade_choices(grits: tuple[Grit, ...]) -> tuple[tuple[str, str], ...]:
    return tuple([(grit.id, name_of(grit)) for grit in grits])


CALCULATOR = Calculator(
    id="grit",
    title="Grit",
    purpose="Gives the ladder of abrasive grades from start to finish with no step too large, and what each "
            "step must remove.",
    groups=(
        group(
            "Grades",
            choice("scale", "Scale", SCALE_NAMES, help="A P in front of the number means the P scale.",
                   role=SHOP),
            choice("start_p", "First grade", _grade_choices(P_GRITS),
                   help="As coarse as the marks need, no coarser.",
                   when=("scale", (P,)), default="p120"),
            choice("finish_p", "Last grade", _grade_choices(P_GRITS), when=("scale", (P,)), default="p400"),
            choice("start_cami", "First grade", _grade_choices(CAMI_GRITS),
                   help="As coarse as the marks need, no coarser.", when=("scale", (CAMI,)), default="c120"),
            choice("finish_cami", "Last grade", _grade_choices(CAMI_GRITS), when=("scale", (CAMI,)),
                   default="c320"),
            choice("shelf", "Grades at hand", (("shop", "The usual ones"), ("all", "All of the scale")),
                   role=SHOP),
        ),
        group(
            "Work",
            choice("material", "What is sanded", (("glass", "Limb glass"), ("wood", "Bare wood"),
                                                  ("finish", "A cured finish"))),
            switch("wet", "Sanded wet", default=True, help="Waterproof sheets, water with a drop of soap."),
        ),
        group(
            "House rules",
            quantity("step_limit", "Largest step", "number", default=USUAL_LIMIT, low="1.05", high="5",
                     usual=("1.2", "2"),
                     help="Grain size of one grade over that of the next. An assumption to edit.", role=RULE),
            quantity("slope", "Scratch depth, of the grain size", "ratio", default="10 %", low="0 %",
                     high="100 %", usual=("2 %", "30 %"),
                     help="An assumption to edit: no published figure was found.", role=RULE),
        ),
    ),
    results=(
        result("steps", "Grades used", "strokes"),
        result("largest_ratio", "Largest step", "number", "Grain size over the next grade's."),
        result("final_scratch", "Scratches left by the last grade, about", "particle"),
        result("removed", "Removed by all steps together, about", "particle"),
        result("other_scale", "Last grade on the other scale, nearest", TEXT),
    ),
    acted_on=("steps", "final_scratch"),
    cautions=CAUTIONS,
    sources=("bench-practice", "grit-sizes", "scratch-and-grain"),
    example="The limbs of the invented 64 in recurve: their glass was sanded for weight with P120 and is to "
            "be ready for finish at P400.",
    first=("scale", "start_p", "finish_p", "start_cami", "finish_cami", "material"),
    compute=compute,
    takes_off=True,
)
