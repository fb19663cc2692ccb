"""A braced bow on its side, with the two tiller distances marked. Not to scale."""

from calc.outcome import (
    Amount,
    Drawing,
    Sentence,
    sentence,
)

WIDTH = 420
HEIGHT = 210
BELLY = 60
STRING = 150


def tiller_drawing(upper: Amount, lower: Amount, stiff: str) -> Drawing:
    """Return the drawing of a braced bow, its upper limb to the right."""
    shapes: list[object] = [
        ["path", {"class": "rb-limb", "d": _limb(1)}],
        ["path", {"class": "rb-limb", "d": _limb(-1)}],
        ["path", {"class": "rb-ink", "d": "M 158 60 L 262 60"}],
        ["path", {"class": "rb-string", "d": "M 14 150 L 406 150"}],
    ]
    shapes += _distance(276, sentence("upper {}", upper), stiff == "upper")
    shapes += _distance(144, sentence("lower {}", lower), stiff == "lower")
    return Drawing(
        "braced", "Where the two distances are taken (not to scale)",
        sentence("A braced bow on its side: the string runs straight between the nocks, the upper "
                 "limb is on the right. Upper distance {}, lower distance {}.", upper, lower),
        WIDTH, HEIGHT, shapes,
    )


def _limb(side: int) -> str:
    points = [(52, BELLY), (124, 62), (170, 110), (196, STRING)]
    (a, b), (c, d), (e, f), (g, h) = [(210 + side * x, y) for x, y in points]
    return f"M {a} {b} C {c} {d} {e} {f} {g} {h}"


def _distance(x: int, text: Sentence, stiff: bool) -> list[object]:
    mark = "rb-mark" if stiff else "rb-quiet"
    return [
        ["path", {"class": mark, "d": f"M {x} {BELLY + 3} L {x} {STRING}"}],
        ["path", {"class": mark, "d": f"M {x - 6} {STRING - 8} L {x} {STRING} L {x + 6} {STRING - 8}"}],
        ["text", {"class": "rb-label", "x": str(x), "y": str(STRING + 26), "text-anchor": "middle"}, text],
    ]
