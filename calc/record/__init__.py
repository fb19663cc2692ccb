"""One record a bow: what was read, done and agreed, as entries that are only ever added to."""

from calc.record.opened import open_bow

__all__ = ["open_bow"]
