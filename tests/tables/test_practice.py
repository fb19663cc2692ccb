"""The table of practice is what the calculators start from."""

import pytest

from calc import bibliography, catalog
from calc.answer import work_out
from calc.calculators.spray_air import METRIC_MARGIN
from calc.declaring import inputs_of
from calc.quantities import parse
from calc.tables import practice
from tests.sentences import whole


@pytest.mark.parametrize(
    ("calculator", "field", "limit", "end"),
    [
        ("insert", "least_wall", "blind-wall", "low"),
        ("insert", "spacing_wanted", "accessory-spacing", "low"),
        ("insert", "spacing_tolerance", "spacing-error", "high"),
        ("tracking", "most_offset", "string-offset", "high"),
        ("tracking", "most_twist", "limb-twist", "high"),
        ("tracking", "most_groove", "groove-angle", "high"),
        ("string", "factor", "string-strength", "low"),
        ("weight-reduction", "least_glass", "glass-left", "low"),
    ],
)
def test_a_default_is_the_limit_of_practice(calculator, field, limit, end):
    (asked,) = [each for each in inputs_of(catalog.find(calculator)) if each.id == field]
    assert parse(asked.default, asked.kind) == pytest.approx(getattr(practice.find(limit), end), rel=1e-12)


@pytest.mark.parametrize(("id", "low", "high"), [
    # NIST Handbook 44, section 5.52, tolerances of metal tapes: read in a copy
    ("tape-short", None, "1/32 in"), ("tape-long", None, "1/16 in"),
    # a trade rule of coatings: read second-hand
    ("dew-point-margin", "3 C", None), ("spray-humidity", None, "85 %"),
    # two holes for a sight or quiver: from memory
    ("accessory-spacing", "1 5/16 in", "1 5/16 in"),
])
def test_what_was_published_or_remembered_stands_as_it_was_read(id, low, high):
    limit = practice.find(id)
    for end, text in ((limit.low, low), (limit.high, high)):
        assert end == (text and pytest.approx(parse(text, limit.kind)))


def test_spray_air_keeps_to_the_margin_of_practice():
    assert practice.find("dew-point-margin").low == METRIC_MARGIN


def test_the_reserve_for_edges_is_within_practice():
    calculator = catalog.find("weight-reduction")
    (asked,) = [each for each in inputs_of(calculator) if each.id == "reserve"]
    limit = practice.find("edge-reserve")
    assert asked.default == ""  # worked out: half a pound to two, for the example's edges and papers
    assert limit.low <= dict(work_out(calculator, []).outcome.values)["reserve"] <= limit.high
    assert (asked.usual_low, asked.usual_high) == pytest.approx((limit.low, limit.high))


@pytest.mark.parametrize("limit", practice.LIMITS, ids=lambda limit: limit.id)
def test_each_limit_has_an_end_and_a_source(limit):
    assert limit.low is not None or limit.high is not None
    assert limit.low is None or limit.high is None or limit.low <= limit.high
    assert bibliography.find(limit.source)


def test_unknown_limits_are_said():
    with pytest.raises(ValueError, match=whole("no limit is called hope")):
        practice.find("hope")
