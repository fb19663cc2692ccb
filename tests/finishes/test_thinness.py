"""How thin a finish is where nothing says it; what cups tell of each other is held beside standards."""

from calc.finishes.thinness import NO_CUP, thinness_of


def test_without_a_cup_or_without_its_seconds_nobody_knows_how_thin_it_is():
    assert thinness_of(NO_CUP, 25.0) is None
    assert thinness_of("zahn-2", None) is None
