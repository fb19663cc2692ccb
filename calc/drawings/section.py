"""A laminated section as layers, with what comes off each face. Depth to scale, width not."""

from calc.drawings.marks import at, label
from calc.mechanics.bow.thinning import Build
from calc.outcome import (
    Drawing,
    Sentence,
    amount,
    sentence,
)

WIDTH = 380
HEIGHT = 300
LEFT = 10
RIGHT = 160
TOP = 40
DEPTH = 220
LABEL_STEP = 22.0


def section_drawing(title: str, thickness: float, build: Build, off_back: float, off_belly: float) -> Drawing:
    """Return the drawing of one section: back glass on top, belly glass below."""
    scale = DEPTH / thickness
    core = thickness - build.back - build.belly
    layers = (
        ("rb-mark", off_back, sentence("off the back {}", amount("thickness", off_back))),
        ("rb-glass", build.back - off_back,
         sentence("back glass left {}", amount("thickness", build.back - off_back))),
        ("rb-core", core, sentence("core {}", amount("thickness", core))),
        ("rb-glass", build.belly - off_belly,
         sentence("belly glass left {}", amount("thickness", build.belly - off_belly))),
        ("rb-mark", off_belly, sentence("off the belly {}", amount("thickness", off_belly))),
    )
    bands: list[object] = []
    texts = []
    middles = []
    top = float(TOP)
    for name, depth, text in layers:
        height = depth * scale
        if height > 0:
            bands.append(_band(name, top, height))
            texts.append(text)
            middles.append(top + height / 2)
        top += height
    labels = []
    for text, middle, place in zip(texts, middles, _spread(middles, LABEL_STEP, HEIGHT - LABEL_STEP / 2)):
        labels += _pointed_out(text, middle, place)
    return Drawing(
        "section", title,
        sentence(title + ": {} thick; {} come off the back and {} off the belly.",
                 amount("thickness", thickness), amount("thickness", off_back),
                 amount("thickness", off_belly)),
        WIDTH, HEIGHT, bands + labels,
    )


def _band(name: str, top: float, height: float) -> list[object]:
    return ["rect", {"class": name, "x": str(LEFT), "y": at(top), "width": str(RIGHT - LEFT),
                     "height": at(height)}]


def _pointed_out(text: Sentence, middle: float, place: float) -> list[object]:
    """Return a text at one height with a line from the middle of its layer."""
    return [
        ["path", {"class": "rb-quiet",
                  "d": f"M {RIGHT} {at(middle)} L {RIGHT + 18} {at(place)}"}],
        label(RIGHT + 24, place + 5, "start", text),
    ]


def _spread(heights: list[float], apart: float, lowest: float) -> list[float]:
    """Return heights moved down, then up, until they are this far apart and above the lowest."""
    spread: list[float] = []
    for height in heights:
        spread.append(height if not spread else max(height, spread[-1] + apart))
    floor = lowest
    for index in range(len(spread) - 1, -1, -1):
        spread[index] = min(spread[index], floor)
        floor = spread[index] - apart
    return spread

