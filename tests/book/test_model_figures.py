"""The figures on the page about the model are those of runs, and its claims those of the tests."""

import re

import pytest

from calc import catalog
from calc.answer import work_out
from calc.bows.measured import family_limb
from calc.mechanics.bow.bow import Bow
from calc.quantities import INCH, POUND_FORCE
from tests.book.pages import DOCS
from tests.mechanics.bow import measured_recurves as shapes
from tests.mechanics.bow import test_bow as steps
from tests.mechanics.bow import test_measured_shape as offsets
from tests.references import test_arrow_energy as recurves
from tests.references import test_bow as published
from tests.references import test_independent_bow as solver

PAGE = (DOCS / "calculators/how-the-model-works.md").read_text("utf-8")


def said(pattern):
    """Return the figures of the one place on the page that reads so."""
    (found,) = re.finditer(pattern, PAGE)
    return found.groups()


def test_the_published_bow_comes_to_the_figures_shown():
    bow = published.TestBenchmarkLongbow().bow()
    bow.brace(0.214)
    drawn = bow.draw(1.0)
    shown = said(r"energy coefficient 0\.407 \| ([0-9.]+) and ([0-9.]+) \|")
    assert shown == (f"{drawn.force:.4f}", f"{drawn.stored_energy / drawn.force:.4f}")


@pytest.mark.parametrize("glass", [0, 1])
def test_a_thousandth_on_the_example_costs_what_the_page_says(glass):
    shown = said(r"set to 50 lb, gives ([0-9.]+) in with glass of ([0-9.]+) in and ([0-9.]+) in with glass "
                 r"of ([0-9.]+) in")
    taken, layer = shown[2 * glass : 2 * glass + 2]
    job = work_out(catalog.find("weight-reduction"), [
        ("weight_now", "50 lb"), ("weight_wanted", "49 lb"), ("glass_back", layer + " in"),
        ("glass_belly", layer + " in")])
    (feel,) = (table for table in job.outcome.tables if table.id == "feel")
    both = feel.rows[2][2].value  # of a thousandth of an inch off both limbs
    assert taken == f"{-0.001 * POUND_FORCE / both:.4f}"


def test_the_familys_recurves_are_as_full_and_their_strings_as_short_as_the_page_says():
    bows = [(*bow, riser, brace) for bow in recurves.MEASURED_RECURVES for riser in (22, 24)
            for brace in (0.214, 0.220)]
    least, most = said(r"a recurve of 66 to 70 in stores ([0-9.]+) to ([0-9.]+) of weight times stroke")
    found = [recurves.fullness(*bow) for bow in bows]
    assert (f"{min(found):.2f}", f"{max(found):.2f}") == (least, most)
    shorter = []
    for length, _, riser, brace in bows:
        limb = family_limb("recurve", length * INCH, riser * INCH)
        shorter.append(length - Bow(limb, limb).brace(brace).string_length / INCH)
    least, most = said(r"its string, braced, is (\d) to (\d) in shorter than the bow")
    assert (f"{min(shorter):.0f}", f"{max(shorter):.0f}") == (least, most)


def test_what_is_claimed_is_what_the_tests_allow():
    assert [f"{100 * solver.FORCE_AGREES:g}"] == list(said(r"\| ([0-9.]+) % in force \|"))
    usual, fine = said(r"\| (\d) parts in a million; (\d) in a hundred million with finer steps \|")
    assert {None: float(usual + "e-6"), 192: float(fine + "e-8")} == steps.ENERGY_AGREES
    relative, tiller = said(r"draw force and stored energy by less than (\d) part in a hundred thousand, and "
                            r"tiller by less than (\d) thousandths of a millimetre")
    assert (float(relative + "e-5"), float(tiller + "e-6")) == (steps.FINER_STEPS, steps.FINER_TILLER)


def test_what_is_claimed_of_offsets_is_what_the_tests_allow():
    five, *places, eight, even, tip_five, tip_eight, tip_even = said(
        r"within ([0-9.]+) % with five \(at ([0-9.]+), ([0-9.]+), ([0-9.]+) and ([0-9.]+) of the limb and at "
        r"the nock\), and within ([0-9.]+) % with eight crowded toward the tip\. With five spread evenly "
        r"it is up to ([0-9.]+) % out\. The tip's angle is then met to (\d+), (\d+) and (\d+) degrees")
    assert (*map(float, places), 1.0) == shapes.FIVE
    claimed = {shapes.FIVE: (five, tip_five), shapes.EIGHT: (eight, tip_eight), shapes.EVEN: (even, tip_even)}
    allowed = {at: (f"{100 * share:g}", f"{tip:g}") for at, (share, tip) in offsets.ALLOWED.items()}
    assert claimed == allowed
