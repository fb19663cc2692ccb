"""The same bow worked out another way, to compare: other unknowns, other integrator, other root finder.

Each limb is integrated in x, y and tangent angle under the moment of the string about each point, with
the place where the string leaves the limb as unknown; SciPy integrates (DOP853) and finds the root (hybrid
Powell). Rest angles and stiffness are the functions themselves, not stations.
"""

import math
from collections import namedtuple

import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import root

Form = namedtuple("Form", "length base angle bend stiffness")  # functions of s from 0 to 1 along the limb
Side = namedtuple("Side", "tension x y leave")


def _end(form, side, point):
    """Return x, y, angle and strain energy where the string leaves the limb."""
    reach = math.dist(point, (side.x, side.y))
    toward = ((point[0] - side.x) / reach, (point[1] - side.y) / reach)

    def slope(s, state):
        x, y, angle, _ = state
        moment = side.tension * ((side.y - y) * toward[0] - (side.x - x) * toward[1])
        rigidity = form.stiffness(s / form.length)
        return [
            math.sin(angle), math.cos(angle),
            form.bend(s / form.length) / form.length + moment / rigidity,
            0.5 * moment**2 / rigidity,
        ]

    start = [form.base[0], form.base[1], form.angle(0.0), 0.0]
    found = solve_ivp(slope, (0.0, side.leave), start, method="DOP853", rtol=1e-10, atol=1e-12)
    return found.y[:, -1]


def _amiss(form, side, point):
    """Return what is amiss with a side's unknowns, and its string length."""
    x, y, angle, _ = _end(form, side, point)
    reach = math.dist(point, (side.x, side.y))
    # along the string away from the archer, against the limb's direction: zero where they touch along
    grazing = math.sin(angle + math.atan2(point[0] - side.x, side.y - point[1]))
    return [x - side.x, y - side.y], grazing, reach + form.length - side.leave


class IndependentBow:
    """Two forms, a pivot and a string; `contact` says for each limb whether the string lies on its tip."""

    def __init__(self, upper, lower, pivot=(0.0, 0.0), string_stiffness=math.inf):
        self.forms = (upper, lower)
        self.pivot = pivot
        self.string_stiffness = string_stiffness

    def _sides(self, unknowns, contact):
        values, sides = list(unknowns), []
        for form, touching in zip(self.forms, contact):
            tension, x, y = 100.0 * values.pop(0), values.pop(0), values.pop(0)
            sides.append(Side(tension, x, y, values.pop(0) if touching else form.length))
        return sides, values

    def brace(self, height, guess, contact):
        """Return both sides and both unstretched string lengths, with the string through (height, 0)."""

        def amiss(unknowns):
            sides, _ = self._sides(unknowns, contact)
            errors, angles = [], []
            for form, side, touching in zip(self.forms, sides, contact):
                ends, grazing, _ = _amiss(form, side, (height, 0.0))
                errors += ends + ([grazing] if touching else [])
                angles.append(math.atan2(height - side.x, side.y))
            return [*errors, (sides[0].tension - sides[1].tension) / 100.0, angles[0] + angles[1]]

        found = root(amiss, guess, tol=1e-11)
        assert np.abs(found.fun).max() < 1e-8, found.message
        sides, _ = self._sides(found.x, contact)
        lengths = [
            _amiss(form, side, (height, 0.0))[2] / (1 + side.tension / self.string_stiffness)
            for form, side in zip(self.forms, sides)
        ]
        return sides, lengths

    def draw(self, distance, lengths, guess, contact):
        """Return the draw force and the sides, with the string parts as long as given."""

        def nock(direction):
            return (
                self.pivot[0] + distance * math.cos(direction),
                self.pivot[1] + distance * math.sin(direction),
            )

        def pulls(sides, point):
            force = np.zeros(2)
            for side, sign in zip(sides, (1.0, -1.0)):
                toward = np.array([point[0] - side.x, sign * (sign * point[1] - side.y)])
                force += side.tension * toward / np.linalg.norm(toward)
            return force

        def amiss(unknowns):
            sides, rest = self._sides(unknowns, contact)
            point = nock(rest[0])
            errors = []
            for form, side, length, touching, sign in zip(self.forms, sides, lengths, contact, (1.0, -1.0)):
                ends, grazing, string = _amiss(form, side, (point[0], sign * point[1]))
                stretched = length * (1 + side.tension / self.string_stiffness)
                errors += [*ends, string - stretched, *([grazing] if touching else [])]
            force = pulls(sides, point)
            across = force[0] * math.sin(rest[0]) - force[1] * math.cos(rest[0])
            return [*errors, across / 100.0]

        found = root(amiss, guess, tol=1e-11)
        assert np.abs(found.fun).max() < 1e-8, found.message
        sides, rest = self._sides(found.x, contact)
        force = pulls(sides, nock(rest[0]))
        return float(np.linalg.norm(force)), sides, rest[0]
