"""Sections of the grip as a sheet to print at one to one, cut out and hold against the wood."""

from calc.quantities import INCH, show, show_number

PAGE_WIDTH, MARGIN = 210.0, 15.0
"""Of an A4 sheet, and white all round; a sheet of letter paper is wider and as good [mm]."""

GAP = 14.0
BAR = 50.0
TOP = 40.0
SMALL, LARGE = 3.2, 4.2
DECIMALS = 2


def template_svg(rounded: bool, sections: "list[tuple[str, float, float, float, float]]") -> str:
    """Return an SVG whose lengths are millimetres on paper.

    Args:
        rounded: ovals, else rectangles.
        sections: of each its name, width and depth before, width and depth to leave [m].
    """
    across, top, row = MARGIN, TOP, 0.0
    found = []
    for name, old_width, old_depth, width, depth in sections:
        box, tall = 1000.0 * old_width, 1000.0 * old_depth
        if across + box > PAGE_WIDTH - MARGIN:
            across, top, row = MARGIN, top + row + 3 * GAP, 0.0
        middle, centre = across + box / 2, top + GAP + tall / 2
        found += _section(rounded, name, (middle, centre), (box, tall), (width, depth))
        across, row = across + box + GAP, max(row, tall + GAP)
    height = top + row + 3 * GAP
    return "\n".join([
        '<svg xmlns="http://www.w3.org/2000/svg" width="' + _mm(PAGE_WIDTH) + 'mm" height="' + _mm(height)
        + 'mm" viewBox="0 0 ' + _mm(PAGE_WIDTH) + " " + _mm(height) + '" font-family="sans-serif">',
        "<title>Sections of the grip, to print at one to one</title>",
        _text(MARGIN, 10.0, LARGE, "Grip sections, one to one. Print at 100 %, never fitted to the page."),
        _text(MARGIN, 16.0, SMALL, "Measure both bars with a rule. If one is off, throw the sheet away."),
    ] + _bar(MARGIN, 24.0, BAR, "50 mm") + _bar(MARGIN + BAR + GAP, 24.0, 2000.0 * INCH, "2 in") + found
        + ["</svg>", ""])


def _section(
    rounded: bool, name: str, at: tuple[float, float], old: tuple[float, float], left: tuple[float, float]
) -> list[str]:
    """Return the outline before [mm], thin and broken, and what to leave [m], thick, with the back up."""
    below = at[1] + old[1] / 2 + 5.0
    return [
        _outline(rounded, at, old, 'stroke-width="0.2" stroke-dasharray="2 1.5"'),
        _outline(rounded, at, (1000.0 * left[0], 1000.0 * left[1]), 'stroke-width="0.5"'),
        _line(at[0], at[1] - old[1] / 2 - 3, at[0], at[1] + old[1] / 2 + 1),
        _text(at[0] - 4.0, at[1] - old[1] / 2 - 4, SMALL, "back"),
        _text(at[0] - old[0] / 2, below + 1.0, SMALL, name),
        _text(at[0] - old[0] / 2, below + 5.0, SMALL, "leave " + show(left[0], "length") + " x "
              + show(left[1], "length")),
        _text(at[0] - old[0] / 2, below + 9.0, SMALL, show(left[0], "length", "metric") + " x "
              + show(left[1], "length", "metric")),
    ]


def _outline(rounded: bool, at: tuple[float, float], size: tuple[float, float], stroke: str) -> str:
    style = '" fill="none" stroke="black" ' + stroke + "/>"
    if rounded:
        return ('<ellipse cx="' + _mm(at[0]) + '" cy="' + _mm(at[1]) + '" rx="' + _mm(size[0] / 2) + '" ry="'
                + _mm(size[1] / 2) + style)
    return ('<rect x="' + _mm(at[0] - size[0] / 2) + '" y="' + _mm(at[1] - size[1] / 2) + '" width="'
            + _mm(size[0]) + '" height="' + _mm(size[1]) + style)


def _bar(x: float, y: float, length: float, name: str) -> list[str]:
    end = x + length
    return [_line(x, y, end, y), _line(x, y - 2, x, y + 2), _line(end, y - 2, end, y + 2),
            _text(x + 1, y + 5, SMALL, name)]


def _line(x: float, y: float, right: float, bottom: float) -> str:
    return ('<path d="M ' + _mm(x) + " " + _mm(y) + " L " + _mm(right) + " " + _mm(bottom)
            + '" stroke="black" stroke-width="0.2"/>')


def _text(x: float, y: float, size: float, words: str) -> str:
    return '<text x="' + _mm(x) + '" y="' + _mm(y) + '" font-size="' + _mm(size) + '">' + words + "</text>"


def _mm(number: float) -> str:
    return show_number(number, DECIMALS)
