"""Numbers that were worked out, as texts that a form reads back as the same number."""

from calc.quantities import INCH, parse, show_fraction, show_number

DECIMALS = 4
MOST_DECIMALS = 12
SIXTY_FOURTHS = 64
WHOLE = 1e-9


def exact_text(value: float, kind: str, unit: str, size: float) -> str:
    """Return a number that was worked out as text that a form reads back as the same number.

    Args:
        value [SI]: any.
        kind: of the quantity.
        unit: in which it is written.
        size [SI]: of that unit.

    Returns:
        a fraction where it is one of 64ths, else as many decimals as it takes, at least four.
    """
    number = value / size
    parts = number * SIXTY_FOURTHS
    whole = int(parts + 0.5 if parts >= 0 else parts - 0.5)
    if size == INCH and abs(parts - whole) < WHOLE:
        return show_fraction(number, SIXTY_FOURTHS) + " " + unit
    text = ""
    for decimals in range(DECIMALS, MOST_DECIMALS + 1):
        text = show_number(number, decimals) + " " + unit
        if abs(parse(text, kind) - value) <= 1e-12 * abs(value):
            return text
    return text
