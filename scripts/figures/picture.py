"""A picture as SVG, in the book's own classes so that it follows light and dark."""

from collections.abc import Iterable
from html import escape

Point = tuple[float, float]


class Picture:
    """Shapes and words on a sheet, with the words that stand for the whole."""

    def __init__(self, name: str, title: str, description: str, width: int, height: int) -> None:
        self.name, self.title, self.description = name, title, description
        self.width, self.height = width, height
        self.shapes: list[str] = []

    def path(self, points: Iterable[Point], kind: str) -> None:
        """Add a line through places of the sheet."""
        self.shapes.append(f'<path class="{kind}" d="{path_through(points)}"/>')

    def circle(self, at: Point, radius: float, kind: str) -> None:
        """Add a circle."""
        self.shapes.append(f'<circle class="{kind}" cx="{at[0]:.1f}" cy="{at[1]:.1f}" r="{radius:g}"/>')

    def text(self, at: Point, text: str, anchor: str = "start") -> None:
        """Add a text at a place of the sheet."""
        self.shapes.append(f'<text class="rb-label" x="{at[0]:.1f}" y="{at[1]:.1f}" '
                           f'text-anchor="{anchor}">{escape(text)}</text>')

    def svg(self) -> str:
        """Return the picture."""
        head = (
            f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {self.width} {self.height}" role="img" '
            f'aria-labelledby="{self.name}-title {self.name}-text" fill="none" stroke="currentColor" '
            'stroke-width="1.5" stroke-linecap="round" stroke-linejoin="round">\n'
            f'<title id="{self.name}-title">{escape(self.title)}</title>\n'
            f'<desc id="{self.name}-text">{escape(self.description)}</desc>\n'
        )
        return head + "\n".join(self.shapes) + "\n</svg>\n"


def path_through(points: Iterable[Point]) -> str:
    """Return the data of a line through places of the sheet."""
    return "M" + "L".join(f"{x:.1f} {y:.1f}" for x, y in points)
