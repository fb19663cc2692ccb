"""What every drawing is made with: coordinates as text, and labels."""

from calc.quantities import show_number


def at(number: float) -> str:
    """Return a coordinate or a size as a drawing writes it: to a tenth, the same in every engine."""
    return show_number(number, 1)


def label(x: float, y: float, anchor: str, text: object) -> list[object]:
    """Return a text that stands at a place: anchor is "start", "middle" or "end"."""
    return ["text", {"class": "rb-label", "x": at(x), "y": at(y), "text-anchor": anchor}, text]
