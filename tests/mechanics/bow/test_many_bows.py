"""Random bows: each is solved or refused in a sentence; nothing hangs, nothing is not a number.

A thousand here, and three hundred within usual measures, none of which may be refused once it is braced. Ten
thousand, or any other number of hundreds:
./scripts/test bows
REBRACE_BOWS=2000 ./scripts/test bows
"""

import math
import os

import pytest

from calc.mechanics.bow.bow import Limb
from tests.mechanics.random_bows import random_case, usual_case

BOWS = int(os.environ.get("REBRACE_BOWS", "1000"))
USUAL_BOWS = int(os.environ.get("REBRACE_BOWS", "300"))
BATCH = 100
MOST_PULLS = 2600  # limbs integrated for one bow, braced and drawn; the limit of the search
MOST_LEAN = 0.2  # [rad]; a bow whose braced string leans farther hangs askew and lets go of one tip first
LEAST_SOLVED = 60  # of a batch; three quarters of all
REFUSALS = (
    "no steady balance was found at a brace height of",
    "brace height must lie behind the unstrung",
    "the bow cannot be drawn to",
    "the belly must not be hollow",
)


def solve(seed):
    """Brace and draw a bow and look at what comes out."""
    bow, height, draw = random_case(seed)
    braced = bow.brace(height)
    drawn = bow.draw(draw)
    values = [
        braced.tension, braced.tilt, braced.string_length, braced.strain_energy,
        drawn.force, drawn.angle, drawn.stored_energy, *drawn.upper.x, *drawn.lower.y,
    ]
    assert all(math.isfinite(value) for value in values)
    assert braced.tension > 0
    assert drawn.force >= 0
    assert drawn.stored_energy > 0
    for shape, side, limb in ((braced.upper, 1, bow.upper), (braced.lower, -1, bow.lower)):
        assert 0 < shape.departure <= limb.length
        gaps = [
            (height - x) * math.cos(braced.tilt) - y * math.sin(braced.tilt)
            for x, y, s in zip(shape.x, shape.y, shape.arc_length) if s < shape.departure
        ]
        assert min(gaps) > -1e-4, "the string passes through a limb"
        assert side * shape.y[-1] > 0


@pytest.fixture
def pulls(monkeypatch):
    """Count how often a limb is integrated."""
    count, plain = [0], Limb.pull

    def counted(self, *arguments):
        count[0] += 1
        return plain(self, *arguments)

    monkeypatch.setattr(Limb, "pull", counted)
    return count


@pytest.mark.parametrize("first", range(0, BOWS, BATCH))
def test_every_bow_is_solved_or_refused(first, pulls):
    refused, longest = [], 0
    for seed in range(first, first + BATCH):
        pulls[0] = 0
        try:
            solve(seed)
        except ValueError as refusal:
            refused.append(str(refusal))
        except AssertionError as wrong:
            raise AssertionError(f"seed {seed}") from wrong
        longest = max(longest, pulls[0])
    assert [words for words in refused if not words.startswith(REFUSALS)] == []
    assert BATCH - len(refused) >= LEAST_SOLVED
    assert longest < MOST_PULLS


@pytest.mark.parametrize("first", range(0, USUAL_BOWS, BATCH))
def test_a_usual_bow_that_is_braced_can_be_drawn(first, pulls):
    drawn, longest = 0, 0
    for seed in range(first, first + BATCH):
        bow, height, draw = usual_case(seed)
        pulls[0] = 0
        try:
            braced = bow.brace(height)
        except ValueError:
            continue
        if abs(braced.tilt) < MOST_LEAN:
            assert bow.draw(draw).force > 0, seed
            drawn += 1
        longest = max(longest, pulls[0])
    assert drawn >= LEAST_SOLVED
    assert longest < MOST_PULLS
