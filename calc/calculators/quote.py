"""Quote: hours by task and materials to a price with a range, and an offer that the owner can read."""

from calc.declaring import (
    BY_UNITS,
    SHOP,
    TRIAL,
    Calculator,
    Input,
    choice,
    date,
    group,
    quantity,
    result,
    rows,
)
from calc.drawings.estimate import estimate_drawing
from calc.offers.offer import Offer, lines
from calc.outcome import (
    OK,
    PLAIN_TEXT,
    TEXT,
    WATCH,
    Check,
    Column,
    File,
    Outcome,
    Refused,
    Sentence,
    Table,
    amount,
    check,
    sentence,
)
from calc.shop import estimate
from calc.tables.work import ITEMS, TASKS

SPREADS = 2.0
"""The range reaches this many standard deviations to each side: about 19 times in 20."""

WIDE = 0.25
"""A range of more than this share to each side is worth saying (common practice)."""


class EstimatedTask:
    """A task with its three estimates, their mean and their standard deviation [h]."""

    def __init__(
        self, name: str, low: float, likely: float, high: float, expected: float, spread: float,
    ) -> None:
        self.name = name
        self.low = low
        self.likely = likely
        self.high = high
        self.expected = expected
        self.spread = spread


def compute(
    rate: float,
    tasks: tuple[tuple[str, float, float, float], ...],
    materials: tuple[tuple[str, float], ...],
    markup: float,
    tax: float,
    weight_now: float | None,
    weight_wanted: float | None,
    draw_length: float | None,
    tiller_now: float | None,
    tiller_wanted: float | None,
    ready_by: int | None,
    holds_until: int | None,
    text_units: str,
) -> Outcome:
    """Return hours and price with their range."""
    work = _tasks(tasks)
    hours = sum([each.expected for each in work])
    spread = estimate.spread_of_sum([each.spread for each in work])
    least, most = sum([each.low for each in work]), sum([each.high for each in work])
    low, high = max(least, hours - SPREADS * spread), min(most, hours + SPREADS * spread)
    goods = sum([cost for _, cost in materials]) * (1 + markup)

    def price(time: float) -> float:
        return (time * rate + goods) * (1 + tax)

    prices = (price(low), price(hours), price(high))
    text = lines(Offer(
        weights=(weight_now, weight_wanted), draw=draw_length, tillers=(tiller_now, tiller_wanted),
        tasks=_once([each.name for each in work]), items=_once([dict(ITEMS)[item] for item, _ in materials]),
        prices=(prices[1], prices[0], prices[2]), holds_until=holds_until, ready_by=ready_by), text_units)
    return Outcome(
        headline=sentence("Quote {}, and say that it may come to anything from {} to {}: {} of work, {} of "
                          "material.",
                          amount("money", price(hours)), amount("money", price(low)),
                          amount("money", price(high)), amount("hours", hours), amount("money", goods)),
        values=(
            ("price", price(hours)),
            ("price_low", price(low)),
            ("price_high", price(high)),
            ("hours", hours),
            ("hours_low", low),
            ("hours_high", high),
            ("hours_spread", spread),
            ("materials_price", goods),
            ("tax_price", price(hours) / (1 + tax) * tax),
            ("price_best", price(least)),
            ("price_worst", price(most)),
        ),
        checks=_checks(work, price(hours), price(high)),
        tables=(_task_table(work, rate, materials, markup), _text_table(text)),
        drawings=(estimate_drawing([(each.name, each.low, each.likely, each.high) for each in work]),),
        assumptions=ASSUMPTIONS,
        files=(File("quote.txt", "The quote as a text", PLAIN_TEXT, "\n".join(text) + "\n"),),
    )


def _tasks(tasks: tuple[tuple[str, float, float, float], ...]) -> list[EstimatedTask]:
    found = []
    for index, (id, low, likely, high) in enumerate(tasks):
        if likely < low:
            raise Refused("tasks", "In row " + str(index + 1) + " the likely hours are fewer than the low "
                          "ones: put low, likely and high in order.", index, "likely")
        if high < likely:
            raise Refused("tasks", "In row " + str(index + 1) + " the high hours are fewer than the likely "
                          "ones: put low, likely and high in order.", index, "high")
        found.append(EstimatedTask(dict(TASKS)[id], low, likely, high, estimate.expected(low, likely, high),
                                   estimate.spread(low, likely, high)))
    return found


# What is said ----------------------------------------------------------------


def _checks(work: list[EstimatedTask], price: float, high: float) -> tuple[Check, ...]:
    found = []
    if price > 0 and high / price - 1 > WIDE:
        found.append(check("range", WATCH, sentence(
            "It may come to {} more than the quote. Inspect first, for a fixed small price, and quote the "
            "rest after it.", amount("ratio", high / price - 1, 0))))
    else:
        found.append(check("range", OK, "The range is narrow, as estimates go. It is still a range and no "
                           "promise: say both ends."))
    if not any(each.name == TASKS[0][1] for each in work):
        found.append(check("inspection", WATCH, "There is no inspection in the list. An old bow is inspected "
                           "before anything is promised for it."))
    return tuple(found)


def _task_table(
    work: list[EstimatedTask], rate: float, materials: tuple[tuple[str, float], ...], markup: float
) -> Table:
    lines: list[tuple[object, ...]] = []
    for each in work:
        lines.append((each.name, each.low, each.expected, each.high, each.expected * rate))
    for item, cost in materials:
        lines.append((dict(ITEMS)[item], None, None, None, cost * (1 + markup)))
    return Table("tasks", "Work and material, before tax", (
        Column("what", "Work or material", TEXT), Column("low", "At best", "hours"),
        Column("expected", "Expected", "hours"), Column("high", "At worst", "hours"),
        Column("price", "Price", "money"),
    ), tuple(lines))


def _once(names: list[str]) -> tuple[str, ...]:
    return tuple([name for index, name in enumerate(names) if name not in names[:index]])


def _text_table(text: list[str]) -> Table:
    return Table("text", "For the owner to read", (Column("line", "Text", TEXT),),
                 tuple([(line,) for line in text if line]))


ASSUMPTIONS: tuple[Sentence | str, ...] = (
    "Expected hours of a task are (low + 4 likely + high) / 6, their standard deviation (high - low) / 6.",
    "The range reaches two standard deviations of the sum to each side, about 19 times in 20, where tasks go "
    "wrong one by one. On an old bow troubles come together: the worst of all tasks is shown too.",
    "Low is hours you would hardly ever beat, high hours you would hardly ever overrun.",
    "Rates, materials, mark-up and tax are yours; sums are in your currency.",
)

CAUTIONS: tuple[Sentence | str, ...] = (
    "Agree the target in writing first: weight at a stated draw, tiller, finish, and what happens if the bow "
    "does not pass the inspection or breaks.",
    "Never save the hours of inspection, of clearing air, or of a finish's cure before the bow is strung.",
    "Tax, warranty and liability follow the law where you work.",
)


def _target(id: str, label: str, kind: str, default: str, low: str, high: str) -> Input:
    return quantity(id, label, kind, default=default, low=low, high=high, optional=True)


def _day(id: str, label: str, default: str, help: str) -> Input:
    return date(id, label, default=default, low="2020-01-01", high="2099-12-31", help=help, optional=True)


def _task_columns() -> tuple[Input, ...]:
    def time(id: str, label: str) -> Input:
        return quantity(id, label, "hours", default="2 h", low="0 h", high="200 h", usual=("0.1 h", "20 h"))

    return (choice("task", "Task", TASKS), time("low", "Low"), time("likely", "Likely"),
            time("high", "High"))


CALCULATOR = Calculator(
    id="quote",
    title="Quote",
    purpose="Turns hours by task and materials into a price with a range, and an offer for the owner.",
    groups=(
        group(
            "Work",
            quantity("rate", "Price of an hour", "hourly_rate", default="45", low="0", high="1000",
                     usual=("10", "200"), help="In your currency.", role=SHOP),
            rows("tasks", "Tasks", _task_columns(),
                 default="inspect:0.5h:1h:1.5h;tune:2.5h:3.5h:6h;inserts:0.5h:1h:2h;sand:2h:3h:5h;"
                         "spray:3.5h:4.5h:6h;record:0.3h:0.5h:1h", fewest=1, most=14,
                 help="Hours of your own time: if all goes well, most likely, if much goes wrong."),
        ),
        group(
            "Material",
            rows("materials", "Materials", (
                choice("item", "Item", ITEMS),
                quantity("cost", "Cost", "money", default="20", low="0", high="10000", usual=("0.5", "500")),
            ), default="finish:31;abrasives:14;inserts:9;string:18", fewest=0, most=8,
                 help="What they cost you for this bow."),
            quantity("markup", "Mark-up on material", "ratio", default="10 %", low="0 %", high="200 %",
                     usual=("0 %", "50 %"), role=SHOP),
            quantity("tax", "Tax", "ratio", default="0 %", low="0 %", high="50 %", usual=("0 %", "30 %"),
                     help="On the whole price.", role=SHOP),
        ),
        group(
            "For the owner",
            _target("weight_now", "Draw weight now", "force", "53 lb", "5 lb", "150 lb"),
            _target("weight_wanted", "Draw weight wanted", "force", "45 lb", "5 lb", "150 lb"),
            _target("draw_length", "Draw at which both are stated", "length", "28 in", "16 in", "34 in"),
            _target("tiller_now", "Tiller now", "length", "5/16 in", "-3 in", "3 in"),
            _target("tiller_wanted", "Tiller wanted", "length", "1/16 in", "-1 in", "1 in"),
            _day("ready_by", "Ready by", "2026-06-13", "As agreed, or as you hope."),
            _day("holds_until", "The offer holds until", "2026-05-29", "After it you may quote anew."),
            choice("text_units", "Units of the text", ((BY_UNITS, "Those of the page"),
                                                       ("imperial", "Inches and pounds"),
                                                       ("metric", "Metric")), role=TRIAL),
            note="For the text alone: they change no price.",
        ),
    ),
    results=(
        result("price", "Price to quote", "money", "Of the expected hours."),
        result("price_low", "From", "money", "Two standard deviations less."),
        result("price_high", "To", "money", "Two standard deviations more."),
        result("hours", "Hours expected", "hours"),
        result("hours_low", "Hours from", "hours"),
        result("hours_high", "Hours to", "hours"),
        result("hours_spread", "Standard deviation of the hours", "hours"),
        result("materials_price", "Material with mark-up", "money"),
        result("tax_price", "Tax in the price", "money"),
        result("price_best", "If every task goes well", "money"),
        result("price_worst", "If every task goes wrong", "money"),
    ),
    acted_on=("price", "price_low", "price_high", "hours"),
    cautions=CAUTIONS,
    sources=("bench-practice", "three-point-estimate"),
    example="The invented 64 in recurve, which comes down from 53 to 45 lb and gets two inserts and a new "
            "finish, at invented prices.",
    first=("rate", "tasks"),
    compute=compute,
)
