"""What relations ask of their arguments, said in one sentence when it is not so."""


import math


def require_positive(name: str, value: float, unit: str) -> None:
    """Raise ValueError unless a value is positive and finite."""
    if not 0.0 < value < math.inf:
        raise ValueError((name + " must be positive, got " + str(value) + " " + unit).rstrip())


def require_not_negative(name: str, value: float, unit: str) -> None:
    """Raise ValueError unless a value is zero or positive, and finite."""
    if not 0.0 <= value < math.inf:
        raise ValueError((name + " must not be negative, got " + str(value) + " " + unit).rstrip())


def require_share(name: str, value: float) -> None:
    """Raise ValueError unless a value is more than 0 and at most 1."""
    if not 0.0 < value <= 1.0:
        raise ValueError(name + " must be more than 0 and at most 1, got " + str(value))
