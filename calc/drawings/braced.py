"""A braced bow on its side, with the two tiller distances marked. Not to scale."""

from calc.fields import Amount, Drawing, Sentence, sentence

WIDTH = 640
HEIGHT = 210
BELLY = 60
STRING = 150


def tiller_drawing(upper: Amount, lower: Amount, stiff: str) -> Drawing:
    """Return the drawing of a braced bow, its upper limb to the right."""
    shapes: list[object] = [
        ["path", {"class": "rb-limb", "d": _limb(1)}],
        ["path", {"class": "rb-limb", "d": _limb(-1)}],
        ["path", {"class": "rb-ink", "d": "M 240 60 L 400 60"}],
        ["path", {"class": "rb-string", "d": "M 20 150 L 620 150"}],
    ]
    shapes += _distance(420, sentence("upper {}", upper), stiff == "upper")
    shapes += _distance(220, sentence("lower {}", lower), stiff == "lower")
    return Drawing(
        "braced", "Where the two distances are taken (not to scale)",
        sentence("A braced bow on its side: the string runs straight between the nocks, the upper "
                 "limb is on the right. Upper distance {}, lower distance {}.", upper, lower),
        WIDTH, HEIGHT, shapes,
    )


def _limb(side: int) -> str:
    points = [(80, BELLY), (190, 62), (260, 110), (300, STRING)]
    (a, b), (c, d), (e, f), (g, h) = [(320 + side * x, y) for x, y in points]
    return f"M {a} {b} C {c} {d} {e} {f} {g} {h}"


def _distance(x: int, text: Sentence, stiff: bool) -> list[object]:
    mark = "rb-mark" if stiff else "rb-quiet"
    return [
        ["path", {"class": mark, "d": f"M {x} {BELLY + 3} L {x} {STRING}"}],
        ["path", {"class": mark, "d": f"M {x - 6} {STRING - 8} L {x} {STRING} L {x + 6} {STRING - 8}"}],
        ["text", {"class": "rb-label", "x": str(x), "y": str(STRING + 26), "text-anchor": "middle"}, text],
    ]
