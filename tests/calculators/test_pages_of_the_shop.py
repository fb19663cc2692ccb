"""What the pages on drilling and finishing state, the calculators and tables hold, too."""

from pathlib import Path

import pytest

from calc.answer import work_out
from calc.calculators import insert
from calc.declaring import inputs_of
from calc.quantities import INCH, show
from calc.shop import drilling, threads
from calc.shop.air import dew_point, dew_point_error
from calc.tables import drills, finish_families, gloss, grits
from calc.tables import threads as thread_table

DOCS = Path(__file__).parents[2] / "docs"


def page(name):
    """Return a page as one line of text."""
    return " ".join((DOCS / name).read_text("utf-8").split())


def defaults(calculator):
    return {each.id: each.default for each in inputs_of(calculator)}


@pytest.mark.parametrize("percent", [60, 50, 40, 30])
def test_what_a_hygrometer_does_to_the_dew_point(percent):
    said = show(dew_point_error(20, percent / 100, 0.05), "temperature_difference", "metric")
    assert f"{said} at {percent} %" in page("calculators/spray-air.md")


def test_85_per_cent_is_the_looser_rule():
    assert "needs less than 82.9 %" in page("calculators/spray-air.md")
    assert 20 - dew_point(20, 0.829) == pytest.approx(3.0, abs=0.01)


def test_what_lands_on_a_bow():
    text = page("calculators/finish.md")
    rated = show(finish_families.RATED_TRANSFER, "ratio", decimals=0)
    assert f"*rated* to put {rated} of it on a flat panel; trade sources give 50 to 60 %" in text
    assert 0.5 < finish_families.find_method("hvlp").transfer_efficiency < 0.6


def test_pot_life_of_the_page_is_that_of_the_table():
    [two_part] = [each for each in finish_families.FAMILIES if each.pot_life is not None]
    assert two_part.id == "two-part-urethane"
    assert f"gives {show(two_part.pot_life, 'hours', decimals=0)[:-2]} hours for a topcoat" in page(
        "calculators/finish.md")
    assert f"21 °C ({finish_families.POT_LIFE_REFERENCE})" in page("calculators/finish.md")


def test_film_on_limbs():
    assert "[[practice limb-film]] dry on limbs" in page("finish/schedule.md")
    assert "the [[practice limb-film]] that are usual on limbs" in page("calculators/finish.md")
    cap = finish_families.find("catalysed-lacquer").film_cap
    ends = [show(each, "film", decimals=0)[:-4] for each in cap]
    assert f"often cap all coats together at {ends[0]} to {ends[1]} mil" in page("finish/schedule.md")


@pytest.mark.parametrize(("id", "words"), [
    ("G6", "a gloss of {low} to {high} is gloss"), ("G5", "{low} to {high} semi-gloss"),
    ("G4", "{low} to {high} satin"), ("G3", "{low} to {high} with a sheen below {sheen} eggshell"),
    ("G1", "{high} or less flat"),
])
def test_gloss_levels_of_the_schedule(id, words):
    [level] = [each for each in gloss.LEVELS if each.id == id]
    told = words.format(low=int(level.low), high=int(level.high), sheen=int(level.sheen_high or 0))
    assert told in page("finish/schedule.md")


def test_where_sheen_decides():
    asked = [each for each in range(101) if gloss.sheen_decides(each)]
    assert asked == [*range(6), *range(20, 26)]
    assert ("G3 and G4 overlap from 20 to 25 gloss units, G1 and G2 up to 5; there, and only there, the "
            "sheen decides") in page("calculators/finish.md")


@pytest.mark.parametrize(("angle", "words"), [(118, "118°: {} D"), (135, "135°: {} D"), (180, "flat: 0")])
def test_the_point_of_a_drill(angle, words):
    told = words.format(f"{drilling.cone_length(1.0, angle):.3f}")
    assert told in page("calculators/insert.md")


def test_the_drawing_of_the_hole_is_the_example():
    typed = defaults(insert.CALCULATOR)
    assert (f"To scale: a {typed['insert_length']} insert, {typed['clearance']} of room, a "
            f"{typed['bit_diameter']} drill with a 118° point, in wood {typed['thickness']} thick."
            ) in page("drill/index.md")
    assert typed["point"] == "twist-118"
    drawn = page("assets/images/drill-cone.svg")
    assert f"a {typed['bit_diameter']} drill" in drawn
    assert f"in wood {typed['thickness']} thick" in drawn
    # 192 units an inch: thickness, shoulder and point as the calculator works them out.
    values = dict(work_out(insert.CALCULATOR, []).outcome.values)
    far, shoulder, tip = (48 + each / INCH * 192
                          for each in (7 / 8 * INCH, values["shoulder_depth"], values["hole_depth"]))
    assert f"M24 48H80V{shoulder:.0f}L110 {tip:.0f}L140 {shoulder:.0f}V48H216V{far:.0f}H24Z" in drawn


def test_the_trap_of_the_nearest_drill():
    assert ("For an insert of 0.313 in the 5/16 drill leaves half a thousandth: take 7.8 mm."
            ) in page("drill/index.md")
    assert 0.313 - drills.find("5/16 in").diameter / INCH == pytest.approx(0.0005)
    typed = {"insert_diameter": "0.313 in", "drill_set": "metric"}
    assert dict(work_out(insert.CALCULATOR, list(typed.items())).outcome.values)["drill"] == "7.8 mm"


def test_threads_of_the_pages():
    quarter, small, bushing = (thread_table.find(each) for each in ("1/4-20", "8-32", "5/16-24"))
    text = page("calculators/insert.md")
    ours = threads.tap_hole(quarter.major, quarter.pitch, 0.75) / INCH
    other = (quarter.major - threads.INTERNAL_THREAD_DEPTH * quarter.pitch * 0.75) / INCH
    assert f"that gives {other:.4f} in instead of {ours:.4f} in for 75 % of 1/4-20" in text
    share = threads.share_of_thread(small.major, small.pitch, drills.find(small.drill).diameter)
    assert f"{small.drill} in 8-32 gives {share:.0%}".replace("%", " %") in text
    assert f"For 5/16-24 charts name the letter drill {bushing.drill}." in page("lookup/threads.md")


def test_grits_of_the_page():
    fine, coarse = (grits.find(each).size * 1e6 for each in ("p220", "p120"))
    assert f"P220 grains measure {fine:.0f} µm and P120 grains {coarse:.0f} µm" in page("finish/grits.md")


@pytest.mark.parametrize("name", ["drill/index.md", "calculators/insert.md", "finish/index.md",
                                  "finish/schedule.md", "finish/spraying.md", "finish/grits.md",
                                  "calculators/finish.md", "calculators/spray-air.md", "calculators/quote.md",
                                  "calculators/grit.md"])
def test_no_page_keeps_another_bow(name):
    text = page(name)
    assert not ("58" in text and "48" in text)
    assert "62 in" not in text
