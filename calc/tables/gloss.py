"""Gloss levels G1 to G7. Two of them overlap at 60 degrees and are told apart at 85."""

from collections import namedtuple

GlossLevel = namedtuple("GlossLevel", "id name low high sheen_low sheen_high source status")
"""low, high [GU] at 60 degrees; sheen_low, sheen_high [GU] at 85 degrees, or None where it does not count."""

HIGHEST = 1000.0
_SOURCE = "gloss-levels"

LEVELS = (
    GlossLevel("G1", "flat", 0.0, 5.0, 0.0, 10.0, _SOURCE, "read"),
    GlossLevel("G2", "velvet", 0.0, 10.0, 10.0, 35.0, _SOURCE, "read"),
    GlossLevel("G3", "eggshell", 10.0, 25.0, 10.0, 35.0, _SOURCE, "read"),
    GlossLevel("G4", "satin", 20.0, 35.0, 35.0, HIGHEST, _SOURCE, "read"),
    GlossLevel("G5", "semi-gloss", 35.0, 70.0, None, None, _SOURCE, "read"),
    GlossLevel("G6", "gloss", 70.0, 85.0, None, None, _SOURCE, "read"),
    GlossLevel("G7", "high gloss", 85.0, HIGHEST, None, None, _SOURCE, "read"),
)


def levels_at(gloss: float, sheen: float | None = None) -> list[GlossLevel]:
    """Return the levels that a reading can belong to.

    At 60 degrees alone a reading can belong to two; the reading at 85 degrees decides between them.
    A reading on a border belongs to both sides.
    """
    found = [level for level in LEVELS if level.low <= gloss <= level.high]
    if sheen is None:
        return found
    return [level for level in found
            if level.sheen_low is None or level.sheen_low <= sheen <= level.sheen_high]
