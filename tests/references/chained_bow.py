"""A bow held at a draw as a chain of stiff links with springs between: its energy, and where that is least.

Nothing is shared with the package: no elastica is integrated, no contact condition is set. Each half of the
string is the shortest way from nocking point to nock around the belly, as long as its pull makes it. What
the package calls a balance must be a place where this energy does not change (its gradient is nothing) and
grows in every direction (no eigenvalue of its second derivatives is negative).
"""

import numpy as np

LINKS = 40
MIDDLES = (np.arange(LINKS) + 0.5) / LINKS


class ChainedLimb:
    """One limb: links of equal length, springs at the fadeout and between links, a string that stretches."""

    def __init__(self, length, base, rest_angle, stiffness, string_rate, string_length):
        self.link = length / LINKS
        self.base = np.array(base)
        self.rest = np.array([rest_angle(0.0), *[rest_angle(middle) for middle in length * MIDDLES]])
        places = np.linspace(0, 1, len(stiffness))
        self.springs = np.exp(np.interp(np.arange(LINKS) / LINKS, places, np.log(stiffness))) / self.link
        self.springs[0] *= 2  # half a link from the fadeout to the first link's middle
        self.string_rate = string_rate
        self.string_length = string_length

    def nodes(self, angles):
        steps = self.link * np.stack([np.sin(angles), np.cos(angles)], axis=1)
        return self.base + np.concatenate([[[0.0, 0.0]], np.cumsum(steps, axis=0)])

    def energy(self, angles, nock):
        """Return the energy, its gradient by the links' angles and by the nocking point."""
        turns = np.diff(np.concatenate([self.rest[:1], angles])) - np.diff(self.rest)
        moments = self.springs * turns
        slope = moments - np.append(moments[1:], 0.0)
        nodes = self.nodes(angles)
        way = around(nock, nodes)
        points = np.concatenate([[nock], nodes])[way]
        pieces = np.diff(points, axis=0)
        lengths = np.hypot(*pieces.T)
        stretch = max(0.0, lengths.sum() - self.string_length)
        tension = self.string_rate * stretch
        units = pieces / lengths[:, None]
        by_point = np.zeros((len(nodes) + 1, 2))
        by_point[way[1:]] += tension * units
        by_point[way[:-1]] -= tension * units
        below = np.cumsum(by_point[:0:-1], axis=0)[::-1][1:]  # on all nodes past each link
        slope = slope + self.link * (below[:, 0] * np.cos(angles) - below[:, 1] * np.sin(angles))
        return 0.5 * (moments @ turns + tension * stretch), slope, by_point[0]


def around(nock, nodes):
    """Return the points that the tightened string touches, from the nocking point to the last node."""
    points = np.concatenate([[nock], nodes])
    way = [0]
    for i in range(2, len(points)):
        while len(way) > 1:
            a, b = points[way[-1]] - points[way[-2]], points[i] - points[way[-1]]
            if a[0] * b[1] - a[1] * b[0] > 0:  # the string bends round a node toward the riser
                break
            way.pop()
        way.append(i)
    return np.array(way)


class ChainedBow:
    """Both limbs held at a distance from the origin: unknown are all links and the direction."""

    def __init__(self, upper, lower, distance):
        self.upper = upper
        self.lower = lower
        self.distance = distance

    def energy(self, unknowns):
        """Return the energy and its gradient."""
        upper, lower, direction = unknowns[:LINKS], unknowns[LINKS:-1], unknowns[-1]
        x, y = self.distance * np.cos(direction), self.distance * np.sin(direction)
        one, by_upper, at_upper = self.upper.energy(upper, np.array([x, y]))
        other, by_lower, at_lower = self.lower.energy(lower, np.array([x, -y]))
        by_direction = -y * (at_upper[0] + at_lower[0]) + x * (at_upper[1] - at_lower[1])
        return one + other, np.concatenate([by_upper, by_lower, [by_direction]])

    def second(self, unknowns, step=1e-6):
        """Return the second derivatives, from differences of the gradient."""
        here = self.energy(unknowns)[1]
        matrix = np.array([
            (self.energy(unknowns + moved)[1] - here) / step for moved in step * np.eye(len(unknowns))
        ])
        return (matrix + matrix.T) / 2

    def least(self, unknowns, most=60):
        """Go from unknowns to where the gradient is nothing, by Newton's method held back; return it."""
        for _ in range(most):
            value, slope = self.energy(unknowns)
            if np.abs(slope).max() < 1e-8:
                break
            values, vectors = np.linalg.eigh(self.second(unknowns))
            step = -vectors @ ((vectors.T @ slope) / np.maximum(np.abs(values), 1e-3))
            step *= min(1.0, 0.05 / np.abs(step).max())
            while self.energy(unknowns + step)[0] > value and np.abs(step).max() > 1e-12:
                step = step / 2
            unknowns = unknowns + step
        return unknowns

    def force(self, unknowns):
        """Return the force along the draw: how the energy grows with the distance."""
        upper, lower, direction = unknowns[:LINKS], unknowns[LINKS:-1], unknowns[-1]
        x, y = self.distance * np.cos(direction), self.distance * np.sin(direction)
        at_upper = self.upper.energy(upper, np.array([x, y]))[2]
        at_lower = self.lower.energy(lower, np.array([x, -y]))[2]
        forward, sideways = at_upper[0] + at_lower[0], at_upper[1] - at_lower[1]
        return np.cos(direction) * forward + np.sin(direction) * sideways
