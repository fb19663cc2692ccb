"""The worked example's marks are the invented bow's, and what is read from them is that bow."""

import math

import pytest

from calc import catalog
from calc.answer import work_out
from calc.declaring import inputs_of
from calc.quantities import INCH, parse
from tests.pictures.example import OFF_THE_MIDDLE, ShapeOf, computed, marks
from tests.pictures.photographs import LIMB, THROAT

CALCULATOR = catalog.find("photograph")


def outcome(**typed):
    job = work_out(CALCULATOR, list(typed.items()))
    assert not job.problems
    return job.outcome


@pytest.fixture(scope="module")
def invented():
    return computed()


def test_its_marks_are_those_of_the_invented_bow():
    declared = {each.id: each.default for each in inputs_of(CALCULATOR)}
    for field, text in marks().items():
        assert declared[field] == text, field


def test_its_shape_is_that_of_the_invented_bow(invented):
    bow, _ = invented
    true = ShapeOf(bow.bow().upper.shape(0.0, 0.0, (1.0, 0.0)))
    for along, mean, error, *_ in outcome().tables[0].rows:
        place = along / INCH
        assert mean / INCH == pytest.approx(true.offset_at(place), abs=1.3 * error / INCH)


@pytest.mark.parametrize("target", ["sheets", "rules"])
def test_its_lengths_are_those_of_the_invented_bow(target):
    found = dict(outcome(target=target).values)
    for name, figure in (("riser_length", 19.0), ("upper_length", LIMB), ("lower_length", LIMB),
                         ("bow_length", 64.0), ("throat", THROAT)):
        assert found[name] == pytest.approx(figure * INCH, abs=1.3 * found[name + "_error"]), name


def test_its_tiller_and_brace_height_are_those_of_the_computed_bow(invented):
    tiller = invented[1].state.braced.tiller_at_fadeouts()
    found = dict(outcome(what="braced").values)
    for name, figure in (("tiller", tiller.difference), ("upper", tiller.upper), ("lower", tiller.lower),
                         ("brace_height", 8.25 * INCH)):
        assert found[name] == pytest.approx(figure, abs=1.3 * found[name + "_error"]), name


def test_its_string_lies_where_tracking_has_it():
    found = outcome(what="belly")
    asked = {each.id: each.default for each in inputs_of(catalog.find("tracking"))}
    for place, figure in OFF_THE_MIDDLE.items():
        name = place.replace("_", "_offset_")
        assert parse(asked[name], "length") == pytest.approx(figure * INCH)
        values = dict(found.values)
        assert values[name] == pytest.approx(figure * INCH, abs=1.3 * values[name + "_error"]), name


def test_its_drawn_limbs_bend_as_computed():
    found = outcome(what="drawn")
    assert not [each.id for each in found.checks if each.id.startswith("bend-")]
    for _, _, bent, error, should, more in found.tables[0].rows:
        assert more == pytest.approx(bent - should)
        assert abs(more) <= 1.4 * error


def test_a_draw_short_of_the_pictures_bends_less_than_the_picture_does():
    """Each stretch then bends more than computed, and is said to bend too much."""
    found = outcome(what="drawn", picture_draw="24 in")
    beyond = [each for each in found.checks if each.id.startswith("bend-")]
    assert len(beyond) == 6
    assert all("too much" in each.text.template for each in beyond)
    whole = dict(found.values)
    assert whole["upper_bend"] - whole["upper_bend_computed"] > math.radians(1)


def test_a_shape_goes_on_to_the_bow_model_and_is_its_own_there():
    text = dict(outcome().values)["profile"]
    job = work_out(catalog.find("bow-model"), [("profile", text)])
    assert not job.problems
    rows = [row.split(":") for row in text.split(";")]
    assert len(rows) == 7
    for (along, offset), (place, mean, *_) in zip(rows, outcome().tables[0].rows, strict=True):
        assert float(along.removesuffix("in")) == pytest.approx(place / INCH, abs=0.0051)
        assert float(offset.removesuffix("in")) == pytest.approx(mean / INCH, abs=0.00051)
