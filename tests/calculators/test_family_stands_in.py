"""What a plan is worth while a family's unstrung shape stands in for one that was not measured."""

import pytest

from calc import catalog
from calc.answer import work_out
from calc.bows.measured import MeasuredBow, family_profile, family_throat
from calc.calculators.weight_reduction import SPLIT_SHIFTS
from calc.mechanics.bow.limb import Sanding
from calc.mechanics.bow.reduction import reduction_steps
from calc.mechanics.bow.thinning import Build, Station
from calc.mechanics.bow.tuning import Setup, calibrate, read
from calc.quantities import INCH, POUND_FORCE
from tests.mechanics.bow.measured_recurves import MUCH_REFLEX, RECURVES, known_shape

LENGTH = 22.5 * INCH
ROWS = ((2.0, 1.6250, 0.291), (7.0, 1.5625, 0.279), (13.0, 1.3750, 0.263), (19.0, 0.8125, 0.247))
STATIONS = tuple([Station(at * INCH, width * INCH, thickness * INCH) for at, width, thickness in ROWS])
BUILD = Build(0.043 * INCH, 0.043 * INCH, 39e9, 12e9)
SANDING = Sanding(1.0 * INCH, 18.5 * INCH, 2.0 * INCH, 0.5)
BENCH = Setup(8.25 * INCH, 26.25 * INCH, None)
NOW, WANTED = (53.0 * POUND_FORCE, 5 / 16 * INCH), (45.0 * POUND_FORCE, INCH / 16)


def planned(profile):
    """Return what makes bows with limbs thinned from one as read, and the plan that brings it to its aims."""
    base = (family_throat("recurve", LENGTH), 9.5 * INCH)
    bow = MeasuredBow(profile, base, (STATIONS, STATIONS), BUILD, 25e3)
    found = calibrate(bow.bow(), BENCH, *NOW)
    factors = found.upper_factor, found.lower_factor

    def sanded(upper, lower):
        return bow.bow(factors, SANDING, (upper, lower))

    search = reduction_steps(sanded, BENCH, *WANTED, 0.03 * INCH)
    while True:
        try:
            next(search)
        except StopIteration as end:
            return sanded, end.value


@pytest.fixture(scope="module")
def by_family():
    return planned(family_profile("recurve", LENGTH))[1]


@pytest.mark.parametrize("name", RECURVES)
def test_the_total_stays_and_split_and_tiller_shift_no_more_than_is_said(name, by_family):
    """Invented shapes, each with the weight and tiller read on it, planned with the family's and its own."""
    sanded, own = planned(known_shape(name, LENGTH)[0])
    assert by_family.upper + by_family.lower == pytest.approx(own.upper + own.lower, rel=0.01)
    assert abs((own.lower - own.upper) - (by_family.lower - by_family.upper)) / 2 < SPLIT_SHIFTS
    arrived = read(sanded(by_family.upper, by_family.lower), BENCH)
    assert arrived.weight == pytest.approx(WANTED[0], rel=0.005)
    amiss = abs(arrived.tiller - WANTED[1]) / abs(NOW[1] - WANTED[1])
    assert (amiss > 0.5) == (name == MUCH_REFLEX)


@pytest.mark.parametrize(("profile", "starts"), [
    ("", "The unstrung shape is not measured"),
    ("9in:0.5in;14.5in:0.55in;17.75in:0.2in;19.75in:-0.5in;21.25in:-1.6in",
     "The unstrung shape runs smoothly")])
def test_it_is_said_where_the_family_stands_in_and_only_there(profile, starts):
    job = work_out(catalog.find("weight-reduction"), [("profile", profile)] if profile else [])
    said = [getattr(each, "template", each) for each in job.outcome.assumptions]
    (found,) = [each for each in said if each.startswith("The unstrung shape")]
    assert found.startswith(starts)
    assert ("half of the change asked" in found) == (not profile)
