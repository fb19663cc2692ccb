"""A chain of links let go, against a published bow and what energy and momentum ask."""

import math

import pytest

from calc.mechanics.bow.bow import Bow
from calc.mechanics.bow.elastica import Limb
from calc.mechanics.bow.moving import Chain, Strung, chain_of, let_go
from tests.sentences import whole

LENGTH, GRIP, HALF_ARROW, HALF_STRING = 1.143, 0.143, 0.0769, 0.0209


def ran(steps):
    """Return what a run returns, and how far it said that it was."""
    told = []
    while True:
        try:
            told.append(next(steps))
        except StopIteration as end:
            return end.value, told


def falling(part):
    return max(1 - part, 1 / 3)


class Benchmark:
    """The straight-end bow KL of B. W. Kooi, Comput. Mech. 8 (1991) 291, as in tests/references/test_bow.py:
    from memory, confirmed by calculation.
    """

    def __init__(self):
        limb = Limb(LENGTH, (0.0, GRIP), (0.0, 0.0), [1.409 * falling(i / 60) for i in range(61)])
        bow = Bow(limb, limb, string_stiffness=131.0)
        self.string = bow.brace(0.214).upper_length
        self.drawn = bow.draw(1.0)

    def speed(self, links, half_arrow=HALF_ARROW, half_string=HALF_STRING, tip=0.0):
        parts = [(k + 0.5) / links for k in range(links)]
        chain = chain_of((0.0, GRIP), LENGTH, 0.0, [0.0] * links,
                         [1.409 * falling(k / links) for k in range(links)],
                         [1.575 * falling(part) for part in parts], 2 / 3 * half_string + tip)
        shape = self.drawn.upper
        angles = [at(shape.arc_length, shape.angle, part * LENGTH) for part in parts]
        return ran(let_go(chain, Strung(self.string, 131.0, half_string), angles, 1.0, half_arrow))[0]

    def efficiency(self, links, **changed):
        carried = changed.get("half_arrow", HALF_ARROW)
        return carried * self.speed(links, **changed) ** 2 / self.drawn.stored_energy


def at(xs, ys, x):
    i = max(k for k in range(len(xs) - 1) if xs[k] <= x)
    return ys[i] + (ys[i + 1] - ys[i]) * (x - xs[i]) / (xs[i + 1] - xs[i])


@pytest.fixture(scope="module")
def benchmark():
    return Benchmark()


def test_the_published_bows_efficiency(benchmark):
    # 0.765: from memory, confirmed by calculation. A chain of 12 links, lumped elsewhere, gave 0.756, one of
    # 15 0.7583: calculated separately.
    assert benchmark.efficiency(12) == pytest.approx(0.756, abs=1e-3)
    assert benchmark.efficiency(15) == pytest.approx(0.7583, abs=1e-3)
    assert benchmark.efficiency(15) == pytest.approx(0.765, rel=0.01)


def test_more_links_come_nearer_to_it(benchmark):
    found = [benchmark.efficiency(links) for links in (6, 8, 12, 15)]
    assert found == sorted(found)
    assert found[-1] < 0.765


def test_a_heavier_arrow_takes_more_of_the_energy(benchmark):
    # 0.554, 0.761, 0.874, 0.924 at half arrows of 0.04, 0.0769, 0.12, 0.2: calculated separately.
    found = [benchmark.efficiency(12, half_arrow=mass) for mass in (0.04, 0.0769, 0.12, 0.2)]
    assert found == pytest.approx([0.554, 0.761, 0.874, 0.924], rel=0.02)


def test_a_string_without_mass_would_give_more(benchmark):
    # 0.817 instead of 0.762: calculated separately, with 45 links.
    gained = benchmark.efficiency(12, half_string=1e-9) - benchmark.efficiency(12)
    assert gained == pytest.approx(0.817 - 0.762, abs=0.01)


def test_mass_at_the_tip_slows_the_arrow(benchmark):
    speeds = [benchmark.speed(8, tip=tip) for tip in (0.0, 0.01, 0.02)]
    assert speeds == sorted(speeds, reverse=True)


def test_one_link_is_a_lever():
    """Hickman's lever: all that the spring gives up goes with the arrow as the string straightens."""
    chain = Chain((0.0, 0.0), 1.0, [0.0, 0.0], [1.0], [0.02])
    braced, angle = 0.3, 0.8
    length = math.cos(braced)
    nock = math.sin(angle) + math.sqrt(length**2 - math.cos(angle) ** 2)
    speed, told = ran(let_go(chain, Strung(length, 1e4, 0.0), [angle], nock, 1.0))
    assert speed == pytest.approx(math.sqrt(angle**2 - braced**2), rel=0.02)
    assert told == sorted(told)


@pytest.mark.parametrize("mass", [0.0, -1.0])
def test_an_arrow_has_a_mass(mass):
    chain = Chain((0.0, 0.0), 1.0, [0.0, 0.0], [1.0], [1.0])
    with pytest.raises(ValueError, match=whole(f"half_arrow must be positive, got {mass} kg")):
        next(let_go(chain, Strung(1.0, 1.0, 0.0), [0.5], 1.0, mass))


def test_a_limb_has_a_length():
    with pytest.raises(ValueError, match=whole("length must be positive, got 0.0 m")):
        chain_of((0.0, 0.0), 0.0, 0.0, [0.0], [1.0], [1.0], 0.0)


def test_an_arrow_that_a_slack_string_holds_never_leaves():
    chain = Chain((0.0, 0.0), 1.0, [0.0, 0.0], [1.0], [1.0])
    with pytest.raises(ValueError, match=whole("the arrow must leave the string; it does not")):
        ran(let_go(chain, Strung(9.0, 1.0, 0.0), [0.0], 1.0, 1.0))
