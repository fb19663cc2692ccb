"""Compare with a number as its source printed it."""

import pytest


def printed(text: str):
    """Return what equals any number that would be printed as `text`: within half a unit of its last digit."""
    mantissa, _, exponent = text.lower().partition("e")
    decimals = len(mantissa.partition(".")[2])
    unit = 10.0 ** (int(exponent or 0) - decimals)
    return pytest.approx(float(text), rel=0, abs=unit / 2 * (1 + 1e-9))
