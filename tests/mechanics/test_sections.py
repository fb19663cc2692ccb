import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import integrate

from calc.mechanics import sections
from tests.sentences import whole

sizes = st.floats(0.001, 0.1)


@given(sizes)
def test_round_section_agrees_with_integration(diameter):
    radius = diameter / 2
    # With y = radius sin t.
    quarter = math.pi / 2
    area, _ = integrate.quad(lambda t: 2 * math.cos(t) ** 2, -quarter, quarter)
    moment, _ = integrate.quad(lambda t: 2 * (math.sin(t) * math.cos(t)) ** 2, -quarter, quarter)
    assert sections.round_area(diameter) == pytest.approx(area * radius**2, rel=1e-9)
    assert sections.round_second_moment_of_area(diameter) == pytest.approx(moment * radius**4, rel=1e-9)


@given(sizes, st.floats(0.01, 0.49))
def test_a_tube_is_a_rod_less_its_bore(diameter, part):
    wall = part * diameter
    bore = sections.bore_of_tube(diameter, wall)
    assert sections.tube_area(diameter, wall) == pytest.approx(
        sections.round_area(diameter) - sections.round_area(bore), rel=1e-9
    )
    assert sections.tube_second_moment_of_area(diameter, wall) == pytest.approx(
        sections.round_second_moment_of_area(diameter) - sections.round_second_moment_of_area(bore), rel=1e-9
    )


@given(sizes, sizes)
def test_rectangle_against_its_formula(width, thickness):
    assert sections.rectangle_second_moment_of_area(width, thickness) == pytest.approx(
        width * thickness**3 / 12
    )


def test_a_strip_may_leave_a_twentieth_and_no_less():
    section = sections.Section(1.0, 1 / 12, 0.5)
    assert sections.without_strip(section, 0.949, 1.0, 0.0).area == pytest.approx(0.051)
    with pytest.raises(ValueError, match=whole(
            "the strip must leave some of the section, got 0.951 m^2 of 1.0 m^2")):
        sections.without_strip(section, 0.951, 1.0, 0.0)


def test_a_strip_may_reach_the_face_and_no_farther():
    section = sections.Section(1.0, 1 / 12, 0.5)
    assert sections.without_strip(section, 0.5, 0.2, 0.4).area == pytest.approx(0.9)
    assert sections.without_strip(section, 0.5, 0.2, -0.4).area == pytest.approx(0.9)
    with pytest.raises(ValueError, match=whole(
            "the strip must lie inside the section, got an offset of 0.401 m and a depth of 0.2 m")):
        sections.without_strip(section, 0.5, 0.2, 0.401)


@pytest.mark.parametrize(
    ("attempt", "sentence"),
    [
        (lambda: sections.rectangle_area(0, 1), "width must be positive, got 0 m"),
        (lambda: sections.rectangle_second_moment_of_area(1, -1), "thickness must be positive, got -1 m"),
        (lambda: sections.round_area(float("nan")), "diameter must be a finite number, got nan m"),
        (lambda: sections.round_second_moment_of_area(float("inf")),
         "diameter must be a finite number, got inf m"),
        (lambda: sections.tube_area(0.01, 0.005),
         "wall must be less than half the diameter of 0.01 m, got 0.005 m"),
        (lambda: sections.tube_second_moment_of_area(0.01, 0), "wall must be positive, got 0 m"),
        (lambda: sections.section_modulus(1, 0), "distance_to_face must be positive, got 0 m"),
        (lambda: sections.ellipse_area(0, 1), "width must be positive, got 0 m"),
        (lambda: sections.ellipse_girth(0, 1), "width must be positive, got 0 m"),
        (lambda: sections.ellipse_girth(1, 0), "depth must be positive, got 0 m"),
        (lambda: sections.ellipse_second_moment_of_area(1, -1), "thickness must be positive, got -1 m"),
        (lambda: sections.without_strip(sections.Section(1, 1, 0.5), -0.1, 0.1, 0),
         "strip_width must not be negative, got -0.1 m"),
        (lambda: sections.without_strip(sections.Section(1, 1, 0.5), 0.5, 0.6, 0.4),
         "the strip must lie inside the section, got an offset of 0.4 m and a depth of 0.6 m"),
        (lambda: sections.without_strip(sections.Section(1, 1 / 12, 0.5), 1, 0.97, 0),
         "the strip must leave some of the section, got 0.97 m^2 of 1 m^2"),
    ],
)
def test_impossible_sections_are_refused(attempt, sentence):
    with pytest.raises(ValueError, match=whole(sentence)):
        attempt()
