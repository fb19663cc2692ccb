"""A pinhole camera of its own, to take pictures of invented bows: rotation, projection and one radial term.

Nothing of it comes from `calc`: the projection is x = K [R | t] X and the lens's r (1 + k r^2), as in any
text on cameras (from memory), written with NumPy.
"""

import math

import numpy as np

INCH = 0.0254
WIDTH, HEIGHT = 4000, 3000
HALF_DIAGONAL = math.hypot(WIDTH, HEIGHT) / 2
ACROSS = 72 * INCH
"""What the picture shows of the board from side to side."""


class Camera:
    """A camera before a board: along to the right [m], up, and out of the board toward the camera.

    distance [m]: from the board, along its axis. aim [m]: the board's place in the middle of the picture.
    tilts [deg]: of the axis up or down, to the left or right, and of the picture about the axis. bend: the
    radial term of the lens, r counted in half diagonals.
    """

    def __init__(self, distance=120 * INCH, aim=(27.2 * INCH, 13.2 * INCH), tilts=(4.0, -3.0, 1.0),
                 bend=0.01):
        up, side, about = np.radians(tilts)
        nod = np.array([[1, 0, 0], [0, math.cos(up), -math.sin(up)], [0, math.sin(up), math.cos(up)]])
        turn = np.array([[math.cos(side), 0, math.sin(side)], [0, 1, 0],
                         [-math.sin(side), 0, math.cos(side)]])
        roll = np.array([[math.cos(about), -math.sin(about), 0], [math.sin(about), math.cos(about), 0],
                         [0, 0, 1]])
        self.rotation = roll @ nod @ turn @ np.diag([1.0, -1.0, -1.0])
        self.place = np.array([*aim, 0.0]) - self.rotation.T @ np.array([0, 0, distance])
        self.focus = WIDTH * distance / ACROSS
        self.bend = bend

    def sees(self, along, up, out=0.0):
        """Return the pixels (from the left, from the top) of a place [m]."""
        u, v, depth = self.rotation @ (np.array([along, up, out]) - self.place)
        u, v = self.focus * u / depth, self.focus * v / depth
        bent = 1 + self.bend * (u * u + v * v) / HALF_DIAGONAL**2
        return u * bent + WIDTH / 2, v * bent + HEIGHT / 2
