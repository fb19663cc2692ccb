"""An arrow to scale along its length: its masses, where it balances, how it swings."""

from calc.drawings.marks import at, label
from calc.outcome import Amount, Drawing, amount, sentence

WIDTH = 440
HEIGHT = 226
LEFT = 16
RIGHT = 404
SHAFT = 58
SWING = 158
AMPLITUDE = 26
BALANCE_HALF = 90
NODE_HALF = 38
"""Half the room that the label of the balance point takes, and that of a node."""


def arrow_drawing(
    length: float,
    rear: Amount,
    front: Amount,
    balance: float,
    swing: list[float],
    nodes: tuple[float, ...],
    frequency: Amount,
) -> Drawing:
    """Return the drawing of an arrow, nock to the left.

    Args:
        length: of the shaft [m].
        rear: mass of nock and feathers.
        front: mass of point and insert.
        balance: distance of the balance point from the nock's throat [m].
        swing: the first bending mode at equal steps from nock to front, in any scale.
        nodes: distances from the nock's throat that stand still in it [m].
        frequency: of that mode.
    """
    at_balance = _along(balance / length)
    shapes: list[object] = _arrow()
    shapes += [
        label(LEFT, 22, "start", sentence("{} of nock and feathers", rear)),
        label(WIDTH - LEFT, 22, "end", sentence("{} at the point", front)),
        ["path", {"class": "rb-quiet", "d": "M " + _joined(_along(0.5), SHAFT - 12) + " V "
                  + str(SHAFT + 12)}],
        ["path", {"class": "rb-mark", "d": "M " + _joined(at_balance, SHAFT + 4) + " l -8 14 h 16 Z"}],
        label(_inside(at_balance, BALANCE_HALF), SHAFT + 38, "middle",
              sentence("balance {}", amount("length", balance))),
        ["path", {"class": "rb-quiet", "d": "M " + _joined(LEFT, SWING) + " H " + str(RIGHT)}],
        ["path", {"class": "rb-mark", "d": _curve(swing)}],
    ]
    for node in nodes:
        at_node = _along(node / length)
        shapes.append(["circle", {"class": "rb-ink", "cx": at(at_node), "cy": str(SWING), "r": "5"}])
        shapes.append(label(_inside(at_node, NODE_HALF), SWING + 30, "middle",
                            sentence("{}", amount("length", node))))
    shapes.append(label(LEFT, SWING + 58, "start", sentence("first swing {}", frequency)))
    return Drawing(
        "arrow", "The arrow to scale along its length, and its first bending swing, much enlarged; rings "
        "stand still. Distances are from the nock's throat.",
        sentence("An arrow with its nock to the left. It balances {} from the nock's throat; a short line "
                 "marks the middle of the shaft. Below it the first bending swing, with a ring and its "
                 "distance from the nock at each place that stands still.", amount("length", balance)),
        WIDTH, HEIGHT, shapes,
    )


def _arrow() -> list[object]:
    top, bottom = str(SHAFT - 2), str(SHAFT + 2)
    feathers = f"M {LEFT + 14} {top} l 10 -12 h 30 l 14 12 Z M {LEFT + 14} {bottom} l 10 12 h 30 l 14 -12 Z"
    return [
        ["path", {"class": "rb-fill", "d": feathers}],
        ["path", {"class": "rb-fill", "d": f"M {LEFT} {top} H {RIGHT} V {bottom} H {LEFT} l 5 -2 Z"}],
        ["path", {"class": "rb-fill", "d": f"M {RIGHT} {SHAFT - 4} L {RIGHT + 22} {SHAFT} "
                  f"L {RIGHT} {SHAFT + 4} Z"}],
    ]


def _along(part: float) -> float:
    return LEFT + (RIGHT - LEFT) * part


def _inside(x: float, half: float) -> float:
    """Return where to centre a label so that it stays inside the drawing."""
    return min(max(x, half), WIDTH - half)


def _curve(swing: list[float]) -> str:
    largest = max([abs(value) for value in swing])
    steps = len(swing) - 1
    points = [_joined(_along(index / steps), SWING - AMPLITUDE * value / largest)
              for index, value in enumerate(swing)]
    return "M " + " L ".join(points)



def _joined(x: float, y: float) -> str:
    return at(x) + " " + at(y)

