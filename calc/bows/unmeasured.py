"""What stands in for readings of a bow that nobody took, and how far such a bow may be from that."""

from calc.bows.line import Variant
from calc.bows.measured import TYPICAL_LIMB, family_throat, limb_length
from calc.outcome import WATCH, Check, Sentence, amount, check, sentence
from calc.quantities import INCH, POUND_FORCE

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine cannot subscript a type
    Rows = tuple[tuple[float, ...], ...]

TYPICAL_ROOT = 0.290 * INCH
"""Thickness of a limb at its root, 1 1/2 in of width with it (assumption to edit: read the limb)."""

TYPICAL_GLASS = 0.040 * INCH
MOST_GLASS = 0.2
"""Of the thinnest section: glass that was not read is taken no thicker, so that there is a core."""

TYPICAL_CORE = "sugar-maple"
TYPICAL_FAMILY = "recurve"
TYPICAL_WEIGHT = 45 * POUND_FORCE
TYPICAL_DRAW = 28 * INCH

FEWEST_SECTIONS = 3
"""Of a limb: fewer scale the typical taper."""

WIDTH_KNOWN = 0.15
THICKNESS_KNOWN = 0.15
GLASS_KNOWN = 0.25
CORE_KNOWN = 0.25
"""Of each: how far limbs of a family may be from what stands in for them (assumptions to edit)."""

LEAST_CORE = 1.5
"""A section that was not read is taken at least so many times as thick as its two layers of glass."""


class Stood:
    """A bow's readings with what stands in for those that were not taken, which of them, and the bows as they
    may be instead, pair by pair.
    """

    def __init__(
        self, stations: "tuple[Rows, Rows]", glass: tuple[float, float], core: str, family: str,
        weight: float, draw_length: float, brace_height: float, missing: list[Sentence],
        variants: list[tuple[Variant, Variant]], glass_read: bool
    ) -> None:
        self.stations = stations
        self.glass = glass
        self.core = core
        self.family = family
        self.weight = weight
        self.draw_length = draw_length
        self.brace_height = brace_height
        self.missing = missing
        self.variants = variants
        self.glass_read = glass_read


def stood_in(
    lengths: tuple[float, float], stations: "tuple[Rows, Rows]", glass: tuple[float | None, float | None],
    core: str, family: str, weight: float | None, draw_length: float | None, brace_height: float | None,
    heights: tuple[float, float], throat: float | None
) -> Stood:
    """Return a bow's readings, each that is empty or None stood in for.

    lengths [m]: of bow and riser. heights [m]: of the string above both fadeouts, which tell the brace height
    where it was not read.
    """
    length = limb_length(lengths[0], lengths[1])
    missing: list[Sentence] = []
    variants = []
    if not family:
        family = TYPICAL_FAMILY
        missing.append(sentence("its family (a recurve)"))
    sections = _sections(stations, length, glass, missing)
    if sections != stations:
        variants += [(Variant(width=1.0 + WIDTH_KNOWN), Variant(width=1.0 - WIDTH_KNOWN)),
                     (Variant(thickness=1.0 + THICKNESS_KNOWN), Variant(thickness=1.0 - THICKNESS_KNOWN))]
    back, belly = _glass(glass, sections, missing)
    glass_read = glass[0] is not None and glass[1] is not None
    if not glass_read:
        variants.append((Variant(glass=1.0 + GLASS_KNOWN), Variant(glass=1.0 - GLASS_KNOWN)))
    if not core:
        core = TYPICAL_CORE
        missing.append(sentence("the core (hard maple)"))
        variants.append((Variant(core=1.0 + CORE_KNOWN), Variant(core=1.0 - CORE_KNOWN)))
    if weight is None:
        weight = TYPICAL_WEIGHT
        missing.append(sentence("draw weight ({})", amount("force", weight)))
    if draw_length is None:
        draw_length = TYPICAL_DRAW
        missing.append(sentence("the draw it is read at ({})", amount("length", draw_length)))
    if brace_height is None:
        behind = family_throat(family, length) if throat is None else throat
        brace_height = 0.5 * (heights[0] + heights[1]) + behind
        missing.append(sentence("brace height ({} by the string above the fadeouts)",
                                amount("length", brace_height)))
    return Stood(sections, (back, belly), core, family, weight, draw_length, brace_height, missing, variants,
                 glass_read)


def _sections(
    read: "tuple[Rows, Rows]", length: float, glass: tuple[float | None, float | None],
    missing: list[Sentence]
) -> "tuple[Rows, Rows]":
    """Return both limbs' sections: for those of a limb with too few, the other's or the typical taper."""
    full = [each for each in read if len(each) >= FEWEST_SECTIONS]
    if len(full) == 2:
        return read
    missing.append(sentence(
        "sections of both limbs (a typical taper)" if not full else
        "sections of the " + ("upper" if full[0] == read[1] else "lower") + " limb (as the other's)"))
    if full:
        return full[0], full[0]
    layers = (glass[0] or TYPICAL_GLASS) + (glass[1] or TYPICAL_GLASS)
    return _tapered(read[0] or read[1], length, layers), _tapered(read[1] or read[0], length, layers)


def _tapered(read: "Rows", length: float, layers: float) -> "Rows":
    """Return the typical taper, through the first section that was read; layers [m]: both of glass."""
    wide, thick = 10.0 * TYPICAL_ROOT, TYPICAL_ROOT
    if read:
        place, width, thickness = read[0]
        near = min(TYPICAL_LIMB, key=lambda each: abs(each[0] * length - place))
        wide, thick = width / near[1], thickness / near[2]
    thick = max(thick, LEAST_CORE * layers / TYPICAL_LIMB[-1][2])
    return tuple([(at * length, wide * width, thick * share) for at, width, share in TYPICAL_LIMB])


def _glass(
    read: tuple[float | None, float | None], sections: "tuple[Rows, Rows]", missing: list[Sentence]
) -> tuple[float, float]:
    """Return the glass on back and belly [m], that of a face that was not read as the other's or typical."""
    back, belly = read
    thinnest = min([row[2] for rows in sections for row in rows])
    typical = min(TYPICAL_GLASS, MOST_GLASS * thinnest)
    if back is None or belly is None:
        taken = back if back is not None else belly if belly is not None else typical
        missing.append(sentence(
            "glass on " + ("the back" if belly is not None else "the belly" if back is not None
                           else "both faces") + " ({})", amount("thickness", taken)))
        back, belly = taken if back is None else back, taken if belly is None else belly
    return back, belly


def lacking_checks(asked: bool, stood: Stood | None) -> tuple[Check, ...]:
    """Return what was not read and what that does; asked: whether remedies are to be worked out."""
    if not asked:
        return ()
    if stood is None:
        return (check("lacking", WATCH, "Remedies are not worked out: they need the bow's length and its "
                      "riser's. Twist and side stand as they were read."),)
    if not stood.missing:
        return ()
    words = "; ".join([each.template for each in stood.missing])
    return (check("lacking", WATCH, sentence(
        "Not read, so that something typical stands in: " + words + ". Ranges are wider for it. Read them "
        "before anything comes off the limbs.",
        *[given for each in stood.missing for given in each.amounts])),)
