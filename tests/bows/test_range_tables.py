"""What is said of ranges, from figures made up for it."""

from types import SimpleNamespace

from calc.bows.range_tables import what_counts
from calc.outcome import amount, say
from calc.quantities import INCH, POUND_FORCE


def test_what_counts_is_said_in_the_digits_that_are_measured():
    """A thousandth of an inch more off a limb is 0.23 lb or 0.25 lb, and 0.005 in or 0.006 in of tiller."""
    sections = SimpleNamespace(error=amount("thickness", 0.002 * INCH, 4), weight=0.07 * POUND_FORCE)
    rates = ((-230 * POUND_FORCE / INCH, -250 * POUND_FORCE / INCH), (6.0, -5.0))
    first, _ = what_counts(SimpleNamespace(taken=rates, causes=[None, sections]))
    assert say(first, "imperial") == (
        "What is really taken off counts most: 0.001 in more off one limb is 0.25 lb of weight and 0.006 in "
        "of tiller. Measure what you take off, to 0.0005 in. A wrong thickness of a section hardly counts, "
        "since the model is set to your weight and tiller: 0.0020 in in each moves the weight by 0.07 lb.")


def test_ranges_that_could_not_be_told_are_said_to_be_so():
    assert what_counts(None) == (
        "How far this may be out could not be worked out: a bow much like it cannot be computed.",)
