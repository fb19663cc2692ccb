"""How near the computed bow comes to the machine: its integration steps alone, done by compiled code.

Every pull that a task asks of a limb is noted, and the steps of all of them are done once more by NumPy, many
tasks side by side, so that next to nothing but arithmetic is left. What a task takes beyond that is the
engine's own, and the search's, which asks for one pull after another.
"""

from collections.abc import Callable

import numpy as np
from numpy.typing import NDArray

from calc.mechanics.bow.elastica import Limb

Numbers = NDArray[np.float64]


class Pulls:
    """Pulls side by side: turn [rad] and gap [m] at the fadeout, rest angles [rad] and turns for each metre
    of gap [rad/m] at each half step, the step [m], and the gap at the nock that the limb itself found [m].
    """

    def __init__(self, noted: list[tuple[Limb, float, float, float, float]]) -> None:
        limbs, tensions, turns, gaps, ends = zip(*noted, strict=True)
        self.turns, self.gaps, self.ends = np.array(turns), np.array(gaps), np.array(ends)
        self.rest = np.array([limb._half_angles for limb in limbs]).T
        self.yields = np.array([limb._yields for limb in limbs]).T * np.array(tensions)
        self.step = np.array([limb._step for limb in limbs])

    def marched(self) -> Numbers:
        """Return the gap at the nock of every pull [m], by the steps of `Limb`."""
        turn, gap, step = self.turns.copy(), self.gaps.copy(), self.step
        for start in range(0, len(self.rest) - 2, 2):
            first, middle, last = self.yields[start:start + 3]
            rest, mid_rest, end_rest = self.rest[start:start + 3]
            turn_1, fall_1 = first * gap, step * np.sin(turn + rest)
            turn_2 = middle * (gap - 0.5 * fall_1)
            fall_2 = step * np.sin(turn + 0.5 * turn_1 + mid_rest)
            turn_3 = middle * (gap - 0.5 * fall_2)
            fall_3 = step * np.sin(turn + 0.5 * turn_2 + mid_rest)
            turn_4 = last * (gap - fall_3)
            fall_4 = step * np.sin(turn + turn_3 + end_rest)
            turn += (turn_1 + 2.0 * (turn_2 + turn_3) + turn_4) / 6.0
            gap -= (fall_1 + 2.0 * (fall_2 + fall_3) + fall_4) / 6.0
        return gap


def pulls_of(task: Callable[[], object], times: int = 1) -> Pulls:
    """Return the pulls that a task asks for, done so many times; all its limbs are of as many steps."""
    noted: list[tuple[Limb, float, float, float, float]] = []
    march = Limb._march

    def noting(limb: Limb, tension: float, string_angle: float, gap: float) -> object:
        path = march(limb, tension, string_angle, gap)
        noted.append((limb, tension, string_angle, gap, path.gaps[-1]))
        return path

    Limb._march = noting  # type: ignore[method-assign, assignment]
    try:
        task()
    finally:
        Limb._march = march  # type: ignore[method-assign]
    return Pulls(noted * times)
