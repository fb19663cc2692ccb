"""A plain line plot as a picture."""

from collections.abc import Iterable, Sequence

from scripts.figures.picture import Picture, Point

WIDTH, HEIGHT = 400, 300
LEFT, RIGHT, TOP, BOTTOM = 46, 14, 14, 44


class Plot(Picture):
    """Axes from 0 to the given ends, with lines, dots and labels on them."""

    def __init__(self, name: str, title: str, description: str, x_end: float, y_end: float) -> None:
        super().__init__(name, title, description, WIDTH, HEIGHT)
        self.x_end, self.y_end = x_end, y_end

    def place(self, point: Point) -> Point:
        """Return where a point lies in the picture."""
        x = LEFT + point[0] / self.x_end * (WIDTH - LEFT - RIGHT)
        y = HEIGHT - BOTTOM - point[1] / self.y_end * (HEIGHT - TOP - BOTTOM)
        return x, y

    def line(self, points: Iterable[Point], kind: str = "rb-ink") -> None:
        """Add a line through points."""
        self.path(map(self.place, points), kind)

    def dots(self, points: Iterable[Point]) -> None:
        """Add a dot at each point."""
        for each in points:
            self.circle(self.place(each), 3, "rb-mark")

    def label(self, point: Point, text: str, anchor: str = "start") -> None:
        """Add a text at a point."""
        self.text(self.place(point), text, anchor)

    def axes(self, x_label: str, y_label: str, x_marks: Sequence[float], y_marks: Sequence[float]) -> None:
        """Add both axes with their marks and labels."""
        self.line([(0, self.y_end), (0, 0), (self.x_end, 0)], "rb-quiet")
        bottom = HEIGHT - BOTTOM
        for mark in x_marks:
            x, _ = self.place((mark, 0))
            self.path([(x, bottom), (x, bottom + 5)], "rb-quiet")
            self.text((x, bottom + 19), f"{mark:g}", "middle")
        for mark in y_marks:
            _, y = self.place((0, mark))
            self.path([(LEFT, y), (LEFT - 5, y)], "rb-quiet")
            self.text((LEFT - 9, y + 5), f"{mark:g}", "end")
        self.text(((LEFT + WIDTH - RIGHT) / 2, HEIGHT - 6), x_label, "middle")
        self.text((LEFT + 8, TOP + 10), y_label, "start")
