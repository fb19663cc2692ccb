"""A bow unstrung, braced and drawn, lying on its side: to true scale."""

from calc.drawings.marks import at
from calc.outcome import Amount, Drawing, sentence

WIDTH = 640
MARGIN = 14


def bow_drawing(
    unstrung: list[tuple[float, float]],
    braced: list[tuple[float, float]],
    drawn: list[tuple[float, float]],
    brace_string: list[tuple[float, float]],
    drawn_string: list[tuple[float, float]],
    draw: Amount,
) -> Drawing:
    """Return the three shapes over each other, upper limb to the right, the archer below.

    Every outline is a list of (x toward the archer, y toward the upper nock) [m].
    """
    everything = unstrung + braced + drawn + drawn_string
    across = [y for _, y in everything]
    down = [x for x, _ in everything]
    scale = (WIDTH - 2 * MARGIN) / (max(across) - min(across))
    height = int((max(down) - min(down)) * scale + 2 * MARGIN + 1)

    def path(points: list[tuple[float, float]]) -> str:
        words = []
        for x, y in points:
            words.append(at(MARGIN + (y - min(across)) * scale))
            words.append(at(MARGIN + (x - min(down)) * scale))
        return "M " + " L ".join([words[i] + " " + words[i + 1] for i in range(0, len(words), 2)])

    return Drawing(
        "limbs", "Unstrung (thin), braced and drawn, to scale",
        sentence("The bow on its side, upper limb to the right: unstrung, braced, and drawn to {}.", draw),
        WIDTH, height,
        [
            ["path", {"class": "rb-quiet", "d": path(unstrung)}],
            ["path", {"class": "rb-string rb-faint", "d": path(brace_string)}],
            ["path", {"class": "rb-limb rb-faint", "d": path(braced)}],
            ["path", {"class": "rb-string", "d": path(drawn_string)}],
            ["path", {"class": "rb-limb", "d": path(drawn)}],
        ],
    )

