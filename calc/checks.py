"""What relations ask of their arguments, said in one sentence when it is not so."""


import math


def require_positive(name: str, value: float, unit: str) -> None:
    """Raise ValueError unless a value is positive and finite; a number by itself has the unit ""."""
    if not 0.0 < value < math.inf:
        raise ValueError(_told(name, "must be positive", value, unit))


def require_not_negative(name: str, value: float, unit: str) -> None:
    """Raise ValueError unless a value is zero or positive, and finite; a number by itself has the unit ""."""
    if not 0.0 <= value < math.inf:
        raise ValueError(_told(name, "must not be negative", value, unit))


def require_share(name: str, value: float) -> None:
    """Raise ValueError unless a value is more than 0 and at most 1."""
    if not 0.0 < value <= 1.0:
        raise ValueError(_told(name, "must be more than 0 and at most 1", value, ""))


def _told(name: str, asked: str, value: float, unit: str) -> str:
    if not -math.inf < value < math.inf:
        asked = "must be a finite number"
    return (name + " " + asked + ", got " + str(value) + " " + unit).rstrip()
