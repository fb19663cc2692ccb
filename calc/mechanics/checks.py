"""What the functions of this package ask of their arguments, said in one sentence when it is not so."""

import math


def require_positive(name: str, value: float, unit: str) -> None:
    """Raise ValueError unless value is finite and greater than zero."""
    if not 0.0 < value < math.inf:
        raise ValueError(f"{name} must be positive, got {value} {unit}".rstrip())


def require_not_negative(name: str, value: float, unit: str) -> None:
    """Raise ValueError unless value is finite and zero or more."""
    if not 0.0 <= value < math.inf:
        raise ValueError(f"{name} must not be negative, got {value} {unit}".rstrip())
