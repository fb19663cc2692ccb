"""Gloss levels G1 to G7. Two pairs overlap in gloss, at 60 degrees, and are told apart by sheen, at 85."""

from collections import namedtuple

GlossLevel = namedtuple("GlossLevel", "id name low high sheen_low sheen_high source status")
"""low, high [GU]: gloss, at 60 degrees; sheen_low, sheen_high [GU]: sheen, at 85 degrees, or None where it
does not count."""

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

    The highest begins above its border; of the others a reading on a border belongs to both sides.

    Args:
        gloss [GU]: at 60 degrees, >= 0.
        sheen [GU]: at 85 degrees, or None where it was not read.

    Returns:
        one level, two where they overlap or meet, none where the two readings do not go together.

    Source: gloss-levels.
    """
    found = [level for level in LEVELS if level.low <= gloss <= level.high]
    if found[-1].id == "G7" and gloss == found[-1].low:
        found = found[:-1]
    if sheen is None:
        return found
    return [level for level in found
            if level.sheen_low is None or level.sheen_low <= sheen <= level.sheen_high]


def sheen_decides(gloss: float) -> bool:
    """Return whether two levels share more than a border at this gloss, so that sheen tells them apart.

    Args:
        gloss [GU]: at 60 degrees, >= 0.

    Returns:
        true up to 5 GU (G1 and G2) and from 20 to 25 GU (G3 and G4).

    Source: gloss-levels.
    """
    found = levels_at(gloss)
    return len(found) == 2 and found[0].high > found[1].low and found[1].sheen_low is not None
