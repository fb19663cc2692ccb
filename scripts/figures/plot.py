"""A plain line plot as SVG, in the book's own classes so that it follows light and dark."""

from collections.abc import Iterable, Sequence
from html import escape

Point = tuple[float, float]

WIDTH, HEIGHT = 400, 300
LEFT, RIGHT, TOP, BOTTOM = 46, 14, 14, 44


class Plot:
    """Axes from 0 to the given ends, with lines, dots and labels on them."""

    def __init__(self, name: str, title: str, description: str, x_end: float, y_end: float) -> None:
        self.name, self.title, self.description = name, title, description
        self.x_end, self.y_end = x_end, y_end
        self.shapes: list[str] = []

    def place(self, point: Point) -> Point:
        """Return where a point lies in the picture."""
        x = LEFT + point[0] / self.x_end * (WIDTH - LEFT - RIGHT)
        y = HEIGHT - BOTTOM - point[1] / self.y_end * (HEIGHT - TOP - BOTTOM)
        return round(x, 1), round(y, 1)

    def line(self, points: Iterable[Point], kind: str = "rb-ink") -> None:
        """Add a line through points."""
        path = " L ".join(f"{x} {y}" for x, y in map(self.place, points))
        self.shapes.append(f'<path class="{kind}" d="M {path}"/>')

    def dots(self, points: Iterable[Point]) -> None:
        """Add a dot at each point."""
        for x, y in map(self.place, points):
            self.shapes.append(f'<circle class="rb-mark" cx="{x}" cy="{y}" r="3"/>')

    def label(self, point: Point, text: str, anchor: str = "start") -> None:
        """Add a text at a point."""
        self._text(self.place(point), text, anchor)

    def _text(self, at: Point, text: str, anchor: str) -> None:
        self.shapes.append(
            f'<text class="rb-label" x="{at[0]}" y="{at[1]}" text-anchor="{anchor}">{escape(text)}</text>'
        )

    def axes(self, x_label: str, y_label: str, x_marks: Sequence[float], y_marks: Sequence[float]) -> None:
        """Add both axes with their marks and labels."""
        self.line([(0, self.y_end), (0, 0), (self.x_end, 0)], "rb-quiet")
        bottom = HEIGHT - BOTTOM
        for mark in x_marks:
            x, _ = self.place((mark, 0))
            self.shapes.append(f'<path class="rb-quiet" d="M {x} {bottom} v 5"/>')
            self._text((x, bottom + 19), f"{mark:g}", "middle")
        for mark in y_marks:
            _, y = self.place((0, mark))
            self.shapes.append(f'<path class="rb-quiet" d="M {LEFT} {y} h -5"/>')
            self._text((LEFT - 9, y + 5), f"{mark:g}", "end")
        self._text(((LEFT + WIDTH - RIGHT) / 2, HEIGHT - 6), x_label, "middle")
        self._text((LEFT + 8, TOP + 10), y_label, "start")

    def svg(self) -> str:
        """Return the picture."""
        head = (
            f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDTH} {HEIGHT}" role="img" '
            f'aria-labelledby="{self.name}-title {self.name}-text" fill="none" stroke="currentColor" '
            'stroke-width="1.5" stroke-linecap="round" stroke-linejoin="round">\n'
            f'<title id="{self.name}-title">{escape(self.title)}</title>\n'
            f'<desc id="{self.name}-text">{escape(self.description)}</desc>\n'
        )
        return head + "\n".join(self.shapes) + "\n</svg>\n"
