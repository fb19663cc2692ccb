"""Check values in one place: question, value, how far to trust it, and the page that explains it."""

from collections import namedtuple

from calc.lookups.declare import PAGE, column, lookup, row
from calc.quantities import show
from calc.tables.practice import find

CheckValue = namedtuple("CheckValue", "question value page address source status")
"""One value. page, address: where the book explains it; the address counts from the root of the site."""

COMMON = "common practice"


def _range(limit: str) -> str:
    """Return a limit of practice in both unit systems."""
    found = find(limit)
    imperial, metric = [_span(found.kind, found.low, found.high, system) for system in ("imperial", "metric")]
    return imperial if imperial == metric else imperial + " (" + metric + ")"


def _span(kind: str, low: float | None, high: float | None, system: str) -> str:
    open_side = "at most " if low is None else "at least " if high is None else ""
    return open_side + figure(kind, low, high, system)


def figure(kind: str, low: float | None, high: float | None, system: str) -> str:
    """Return the figure of a limit: "1/8 to 1/4 in", or the one end that it has."""
    shown = [_plain(show(each, kind, system)) for each in (low, high) if each is not None]
    first, last = shown[0], shown[-1]
    if first == last:
        return first
    unit = " " + last.rpartition(" ")[2]
    return (first[: -len(unit)] if first.endswith(unit) else first) + " to " + last


def _plain(text: str) -> str:
    """Return a shown quantity without zeros behind the point that say nothing."""
    end = 0
    while end < len(text) and text[end] in "-0123456789./":
        end += 1
    number = text[:end]
    return (number.rstrip("0").rstrip(".") if "." in number else number) + text[end:]


def _of_practice(question: str, limit: str, page: str, address: str, more: str = "{}") -> CheckValue:
    found = find(limit)
    value = more.replace("{}", _range(limit))
    for end, bound in (("low", found.low), ("high", found.high)):
        for mark, system in (("{" + end + "}", "imperial"), ("{" + end + " metric}", "metric")):
            if mark in more:
                value = value.replace(mark, figure(found.kind, bound, bound, system))
    return CheckValue(question, value, page, address, found.source, found.status)


def _common(question: str, value: str, page: str, address: str) -> CheckValue:
    return CheckValue(question, value, page, address, "bench-practice", COMMON)


_DRILL = "Drill"
_LOOK = "Shoot, mend or hang up"
_MEASURE = "Measure what you have"
_SPRAY = "Spraying"
_TRACKING = "String tracking and limb twist"

CHECK_VALUES = (
    _common("A crack across a limb", "never strung again; on the wall", _LOOK, "inspect/decide/"),
    _of_practice("Tiller, split finger", "tiller-split", "Tiller", "calculators/tiller/",
                 "upper larger by {}"),
    _of_practice("Tiller, three fingers under", "tiller-under", "Tiller", "calculators/tiller/",
                 "upper larger by {}"),
    _of_practice("Most tiller that weight work can put right", "tiller-correctable", "Tiller",
                 "calculators/tiller/"),
    _common("Material comes off", "the limb with the smaller distance", "Tiller", "calculators/tiller/"),
    _common("The string moves", "toward the side that material is taken from", _TRACKING, "tune/tracking/"),
    CheckValue("Draw weight is stated at", "28 in: 26 1/4 in from the nocking point to the pivot point, plus "
               "1 3/4 in", _MEASURE, "measure/#5-draw-weight-at-28-in", "amo-draw-length",
               "read second-hand"),
    _common("Flexing before each reading", "20 to 30 short draws", _MEASURE, "measure/#3-settle-the-bow"),
    _of_practice("Two readings of brace height, ten minutes apart", "brace-read", "Brace and tiller",
                 "measure/tiller/", "within {high} ({high metric})"),
    _of_practice("Brace height over twenty shots", "brace-settled", "String", "arrows/string/",
                 "steady within {high} ({high metric})"),
    _of_practice("Weight reduction that calls for a second thought", "weight-drop", "Weight reduction",
                 "calculators/weight-reduction/", "more than {high}"),
    _of_practice("Left for edge and finish sanding", "edge-reserve", "Weight reduction",
                 "calculators/weight-reduction/", "about 1 lb: {}"),
    _of_practice("Glass left on each face", "glass-left", "Weight reduction",
                 "calculators/weight-reduction/", "{} of what was there when new"),
    _of_practice("Spacing of accessory holes, centre to centre", "accessory-spacing", _DRILL,
                 "drill/#hole-spacing"),
    _of_practice("Wall left behind a blind hole", "blind-wall", "Insert", "calculators/insert/"),
    CheckValue("Point of a common 118° drill", "0.30 times its diameter, ahead of the full hole", _DRILL,
               "drill/", "geometry", "calculated"),
    _common("Grit before the sealer, film finish", "P220", "Grits and hand sanding", "finish/grits/"),
    _of_practice("Bow against dew point when spraying", "dew-point-margin", _SPRAY, "finish/spraying/",
                 "at least {low metric} ({low}) warmer"),
    _of_practice("Humidity when spraying", "spray-humidity", _SPRAY, "finish/spraying/", "not over {high}"),
    _of_practice("Arrow mass for each pound of draw weight", "arrow-usual", "Arrow match",
                 "calculators/arrow-match/"),
    _of_practice("Arrow too light for an old bow and for hunting", "arrow-light", "Arrow match",
                 "calculators/arrow-match/", "under {low}"),
    _of_practice("Arrow too light for any bow", "arrow-never", "Arrow match", "calculators/arrow-match/",
                 "under {low}: never"),
    _of_practice("String off the middle of a limb, at the fadeout", "string-offset", _TRACKING,
                 "tune/tracking/"),
    _common("String for an old bow or bare tips", "polyester only", "String", "arrows/string/"),
    _common("First full draw after any work", "from a distance, on a tiller stand",
            "First stringing and first draw", "inspect/first-draw/"),
)

LOOKUP = lookup(
    "check-values",
    "Check values",
    "Common practice is what careful benches do. It is not a standard, and nobody has tested it on your bow.",
    (column("Question"), column("Value"), column("Where it is explained", PAGE)),
    tuple([row((each.question, each.value, (each.page, each.address)), each.source, each.status)
           for each in CHECK_VALUES]),
)
