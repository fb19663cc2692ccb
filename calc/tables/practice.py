"""Tolerances and limits of practice: the figures that calculators take where nobody published one."""

from collections import namedtuple

from calc.quantities import GRAIN, INCH, POUND_FORCE

MIL = INCH / 1000

PracticeLimit = namedtuple("PracticeLimit", "id what kind low high source status")
"""One limit: a quantity kind, its least and most in SI; None where that side is open."""

_BENCH = "bench-practice"
_COMMON = "common practice"
ASSUMED = "assumption to edit"


def _common(id: str, what: str, kind: str, low: float | None, high: float | None) -> PracticeLimit:
    return PracticeLimit(id, what, kind, low, high, _BENCH, _COMMON)


def _assumed(id: str, what: str, kind: str, low: float | None, high: float | None) -> PracticeLimit:
    return PracticeLimit(id, what, kind, low, high, _BENCH, ASSUMED)


LIMITS = (
    _common("tiller-split", "Tiller, split finger: upper minus lower distance", "length", INCH / 8, INCH / 4),
    _common("tiller-under", "Tiller, three fingers under", "length", 0.0, INCH / 8),
    _common("tiller-correctable", "Tiller error put right while weight comes off", "length",
            None, 3 * INCH / 8),
    _common("brace-read", "Brace height read twice, ten minutes apart: change", "length", None, INCH / 32),
    _common("brace-settled", "Brace height over twenty shots: change", "length", None, INCH / 16),
    _common("return-weight", "Weight against the hand-over: a bow is brought back for a change of more",
            "force", None, 2 * POUND_FORCE),
    _common("return-tiller", "Tiller against the hand-over: a bow is brought back for a change of more",
            "length", None, INCH / 8),
    _common("weight-drop", "Weight taken off an old bow, of its draw weight", "ratio", None, 0.20),
    _common("edge-reserve", "Weight kept back for edges and finish sanding", "force",
            0.5 * POUND_FORCE, 2 * POUND_FORCE),
    _assumed("glass-left", "Glass that stays on each face, of the glass when new", "ratio", 0.60, None),
    _assumed("scratch-depth", "Depth of sanding scratches, of the grain size", "ratio", 0.10, 0.10),
    _common("arrow-never", "Arrow mass per draw weight: never less", "mass_per_force",
            5 * GRAIN / POUND_FORCE, None),
    _common("arrow-light", "Arrow mass per draw weight: less is too light for an old bow and for hunting",
            "mass_per_force", 8 * GRAIN / POUND_FORCE, None),
    _common("arrow-usual", "Arrow mass per draw weight: usual", "mass_per_force",
            8 * GRAIN / POUND_FORCE, 10 * GRAIN / POUND_FORCE),
    _common("balance", "Arrow: balance ahead of the middle, of its length", "ratio", 0.07, 0.15),
    _common("string-offset", "String off the middle of the limb, read at the fadeout", "length",
            None, INCH / 8),
    _common("limb-twist", "Limb twist between fadeout and tip", "angle", None, 2.0),
    _common("groove-angle", "String groove out of line with the limb", "angle", None, 1.0),
    PracticeLimit("accessory-spacing", "Accessory holes, centre to centre", "length",
                  1.3125 * INCH, 1.3125 * INCH, "accessory-hole-spacing", "from memory"),
    _common("spacing-error", "Accessory holes: error of their spacing", "length", None, INCH / 64),
    _common("blind-wall", "Wall left behind a blind hole in the worst case", "length", 3 * INCH / 16, None),
    _common("limb-film", "Dry film of finish on a limb, all coats together", "film", 2 * MIL, 4 * MIL),
    PracticeLimit("dew-point-margin", "Bow above the dew point of the air while it is sprayed",
                  "temperature_difference", 3.0, None, "coating-dew-point", "read second-hand"),
    PracticeLimit("spray-humidity", "Humidity of the air while a bow is sprayed", "ratio",
                  None, 0.85, "coating-dew-point", "read second-hand"),
    _common("bow-heat", "Warmth of a bow while it is worked on", "temperature", None, 50.0),
    _common("string-strength", "Strength of a polyester string over draw weight", "number", 12.0, None),
    PracticeLimit("tape-short", "Steel tape up to 6 ft: tolerance", "length",
                  None, INCH / 32, "nist-handbook-44", "read"),
    PracticeLimit("tape-long", "Steel tape 7 to 30 ft: tolerance", "length",
                  None, INCH / 16, "nist-handbook-44", "read"),
)


def find(id: str) -> PracticeLimit:
    """Return the limit with this id.

    Args:
        id: of a row of LIMITS.

    Returns:
        the row.

    Raises:
        ValueError: no limit has this id.

    Source: bench-practice.
    """
    for limit in LIMITS:
        if limit.id == id:
            return limit
    raise ValueError("no limit is called " + id)
