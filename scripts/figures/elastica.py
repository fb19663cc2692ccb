"""A cantilever under a load across its tip: computed against the published table."""

from calc.mechanics.bow.elastica import Limb
from scripts.figures.plot import Plot

TABLE = (
    # load P L^2 / E I, deflection w / L, shortening u / L
    (0.2, 0.06636, 0.00265), (0.5, 0.16214, 0.01592), (1, 0.30172, 0.05643), (2, 0.49346, 0.16064),
    (3, 0.60325, 0.25442), (5, 0.71379, 0.38763),
)


QUARTER_TURN = 1.5707963267948966


def tip(load: float) -> tuple[float, float]:
    """Return deflection and shortening of a unit cantilever under a load across its tip.

    The load is a string that pulls along x; its line is found by halving, until it passes the tip.
    """
    limb = Limb(1.0, (0.0, 0.0), (0.0, 0.0), (1.0, 1.0), 48)
    low, high = 0.05, 1.0
    for _ in range(50):
        height = (low + high) / 2
        if limb.pull(load, QUARTER_TURN, (5.0, height)).gap < 0:
            low = height
        else:
            high = height
    shape = limb.shape(load, QUARTER_TURN, (5.0, high))
    return shape.x[-1], 1 - shape.y[-1]


def elastica() -> str:
    """Return the plot of tip deflection and shortening against load."""
    loads = [5 * i / 40 for i in range(1, 41)]
    tips = [tip(load) for load in loads]
    plot = Plot("model-elastica", "A cantilever that bends far",
                "Deflection across and along a cantilever against load. The computed lines run through all "
                "dots of the elliptic-integral solution, loads up to 5.", 5.3, 0.85)
    plot.axes("load, times length squared, over EI", "movement of the tip / length",
              (0, 1, 2, 3, 4, 5), (0, 0.25, 0.5, 0.75))
    plot.line([(0, 0), *((load, each[0]) for load, each in zip(loads, tips, strict=True))])
    plot.line([(0, 0), *((load, each[1]) for load, each in zip(loads, tips, strict=True))], "rb-quiet")
    plot.dots([(load, across) for load, across, _ in TABLE])
    plot.dots([(load, along) for load, _, along in TABLE])
    plot.label((3.1, 0.66), "across", "end")
    plot.label((4.2, 0.27), "along")
    return plot.svg()
