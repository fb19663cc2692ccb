"""The published straight-end bow: computed curve against another program's figures."""

from calc.mechanics.bow.bow import Bow, Limb
from scripts.figures.plot import Plot

CELLS = 120
OTHER_PROGRAM = (
    (0.21400, 0.0), (0.27950, 0.12515), (0.34500, 0.22089), (0.41050, 0.30184), (0.47600, 0.37564),
    (0.54150, 0.44648), (0.60700, 0.51682), (0.67250, 0.58827), (0.73800, 0.66200), (0.80350, 0.73903),
    (0.86900, 0.82031), (0.93450, 0.90685), (1.00000, 0.99974),
)


def benchmark() -> str:
    """Return the plot of the bow that the tests hold the model to."""
    rigidity = [1.409 * max(1 - i / CELLS, 1 / 3) for i in range(CELLS + 1)]
    limb = Limb(1.286 - 0.143, (0.0, 0.143), (0.0, 0.0), rigidity)
    bow = Bow(limb, limb, string_stiffness=131.0)
    bow.brace(0.214)
    draws = [0.214 + 0.786 * i / 40 for i in range(41)]
    plot = Plot("model-benchmark", "Draw curve of a published bow",
                "Draw force against draw. The computed line runs through all thirteen dots of another "
                "program, from nothing at brace height 0.214 to 1 at full draw 1.", 1.05, 1.1)
    plot.axes("draw / full draw", "force / force at full draw", (0, 0.25, 0.5, 0.75, 1), (0, 0.5, 1))
    plot.line([(0.214, 0.0)] + [(each.distance, each.force) for each in bow.curve(draws[1:])])
    plot.dots(OTHER_PROGRAM)
    return plot.svg()
