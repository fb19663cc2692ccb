"""What a bow has lost since it was measured: the weight as it came, and the thickness that sanding took."""

from calc.bows.measured import MeasuredBow, calibrated, in_both
from calc.mechanics.bow.limb import Sanding, sanded_share
from calc.mechanics.bow.thinning import Station, most_removal, thinned
from calc.mechanics.bow.tuning import Setup, read
from calc.outcome import Refused
from calc.quantities import ROUNDING

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Callable

MOST_STEPS = 40

GONE_MET = 1e-4
"""Of the weight, in finding what has gone since the glass was read."""


class Past:
    """What a bow has been through.

    came: its weight then [N]. told: whether somebody said so. strokes: since glass and sections were read.
    gone: the thickness [m] that they took off each limb by the weight lost, None where that is not known.
    floor_known: whether the glass that must stay is reckoned from that of the untouched bow.
    """

    def __init__(self, came: float, told: bool, strokes: int, gone: float | None, floor_known: bool) -> None:
        self.came = came
        self.told = told
        self.strokes = strokes
        self.gone = gone
        self.floor_known = floor_known


def weight_as_it_came(now: float, came: float | None, read: float | None) -> float:
    """Return the weight as the bow came [N]: now, where nothing else is known.

    Raises:
        Refused: a weight of before is less than the weight now, or that of the reading more than the first.
    """
    for field, words, weight in (("weight_came", "as the bow came", came),
                                 ("weight_read", "when the glass was read", read)):
        if weight is not None and weight < now * (1 - ROUNDING):
            raise Refused(field, "The weight " + words + ", " + in_both("force", weight)
                          + ", is less than the weight now, " + in_both("force", now)
                          + ": sanding only takes. Mend one, or leave it empty.")
    if came is not None and read is not None and read > came * (1 + ROUNDING):
        raise Refused("weight_read", "The weight when the glass was read is more than the bow had as it "
                      "came: mend one of them.")
    return came or read or now


def gone_since(
    bow: MeasuredBow, setup: Setup, sanding: Sanding, before: float, now: float, tiller: float
) -> float:
    """Return what came off both limbs' thickness, alike, by the weight lost since they were measured [m].

    Raises:
        Refused: all the glass there was would not explain it.
    """
    calibration = calibrated(bow.bow(), setup, before, "tiller_now", tiller)
    factors = (calibration.upper_factor, calibration.lower_factor)
    through = most_removal(bow.build, sanding.belly_share, 0.0, 0.0) * (1 - 1e-6)

    def weight_with(gone: float) -> float:
        return read(bow.bow(factors, sanding, (gone, gone)), setup, calibration.state).weight

    low, high = (0.0, before), (through, _weight_or_none(weight_with, through))
    if high[1] > now:
        raise Refused("weight_read", "More weight has gone since the glass was read than all of it would "
                      "give: check both weights, and measure the glass.")
    for _ in range(MOST_STEPS):
        part = (low[1] - now) / (low[1] - high[1])
        gone = low[0] + min(0.9, max(0.1, part)) * (high[0] - low[0])
        weight = _weight_or_none(weight_with, gone)
        if abs(weight - now) <= GONE_MET * now:
            return gone
        low, high = ((gone, weight), high) if weight > now else (low, (gone, weight))
    return high[0]


def _weight_or_none(weight_with: "Callable[[float], float]", gone: float) -> float:
    """Return a weight, none where the bow can no longer be computed."""
    try:
        return weight_with(gone)
    except ValueError:
        return 0.0


def thinner(bow: MeasuredBow, sanding: Sanding, gone: float) -> MeasuredBow:
    """Return the measured bow with what has gone since taken off its sections and its glass."""
    stations = []
    for limb in bow.stations:
        stations.append(tuple([
            Station(each.position, each.width, each.thickness - gone * sanded_share(sanding, each.position))
            for each in limb]))
    _, build = thinned(bow.stations[0][0], bow.build, gone, sanding.belly_share)
    return MeasuredBow(bow.profile, bow.base, (stations[0], stations[1]), build, bow.string_stiffness)
