"""A finish as tables, a chart and a calendar."""

from calc.dates import DAY, HOUR, show_day, show_moment
from calc.finishes.coats import Coat, Product, step_name, whole_day
from calc.outcome import CALENDAR, TEXT, Amount, Axis, Chart, Column, File, Line, Table, amount
from calc.quantities import show
from calc.shop.calendar import Event, calendar_text
from calc.shop.schedule import Planned
from calc.tables.finish_families import FinishFamily


def coat_table(coats: list[Coat], left_over: float) -> Table:
    """Return films and mixes, coat by coat."""
    lines = []
    built = 0.0
    for index, each in enumerate(coats):
        if each.product is None:
            continue
        built += each.dry
        dry, so_far = (each.dry, built) if each.product.family.makes_film else (None, None)
        lines.append((step_name(coats, index), each.product.family.name, each.wet, dry, so_far,
                      None if each.done else each.volume + left_over))
    return Table("coats", "Coat by coat", (
        Column("coat", "Coat", TEXT), Column("product", "Product", TEXT), Column("wet", "Wet film", "film"),
        Column("dry", "Dry film", "film"), Column("built", "Dry film so far", "film"),
        Column("volume", "To mix", "volume"),
    ), tuple(lines))


def schedule_table(planned: list[Planned], coats: list[Coat], string_from: int) -> Table:
    """Return when each step begins."""
    lines = []
    for index, each in enumerate(planned):
        over_letters = index and coats[index - 1].product is None
        note = "sand dull first" if not over_letters else "dull the film round the letters first"
        lines.append((each.step.name, show_moment(each.start),
                      "laid" if each.step.done else note if each.late else ""))
    lines.append(("String and first draw", show_day(whole_day(string_from)), "from a distance"))
    return Table("schedule", "Schedule", (
        Column("step", "Step", TEXT), Column("start", "Start", TEXT), Column("note", "Note", TEXT),
    ), tuple(lines))


def figures_table(main: Product, seal: Product, efficiency: float) -> Table:
    """Return the figures that the product is reckoned with."""
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


def coat_chart(coats: list[Coat], planned: list[Planned], string_from: int) -> Chart:
    """Return the film as it grows."""
    first = planned[0].start
    times, films = [0.0], [0.0]
    for each, coat in zip(planned, coats):
        times += [float(each.start - first), float(each.end - first)]
        films += [films[-1], films[-1] + coat.dry]
    times.append(float(string_from - first))
    films.append(films[-1])
    return Chart("build", "Dry film from the first coat to the string", Axis("Since the first coat", "days"),
                 Axis("Dry film", "film"), (Line("film", "line", times, films),))


class BowName:
    """What tells one bow from another in a calendar: a word for ids, a name to read, a file name's end."""

    def __init__(self, tag: str, name: str, file: str) -> None:
        self.tag = tag
        self.name = name
        self.file = file


def bow_name(number: int, measures: tuple[float, ...]) -> BowName:
    """Return the bow by its number in the reader's own book, or by its measures where it has none."""
    if number:
        return BowName("bow-" + str(number), "Bow " + str(number), "-bow-" + str(number))
    tenths = [str(int(each * 10_000 + 0.5)) for each in measures]
    return BowName("bow-by-measure-" + "-".join(tenths), show(measures[0], "length") + " bow", "")


def calendar_of(
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
            family.name + ("; sand the film dull first" if each.late else "")
            + ". The maker's sheet comes first.",
            each.start, each.end)
    ready = whole_day(string_from) * DAY
    add("string", "String and first draw",
        "Inspect first; first full draw from a distance, with eye protection.",
        ready + 9 * HOUR, ready + 10 * HOUR)
    return File("finish-schedule" + bow.file + ".ics", "Schedule as a calendar file", CALENDAR,
                calendar_text("-//Rebrace//Finish schedule//EN", stamp, events))
