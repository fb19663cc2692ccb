"""Figures that a bench looks up and no calculator reckons with: brace heights, bushings, glues, hands."""

from collections import namedtuple

from calc.quantities import INCH
from calc.tables import woods

COMMON = "common practice"
MEMORY = "from memory"
SECOND = "read second-hand"

Brace = namedtuple("Brace", "family lengths low high source status")
"""Usual brace heights [m] of a family of bows and a span of marked lengths."""


def _brace(family: str, lengths: str, low: float, high: float) -> Brace:
    return Brace(family, lengths, low * INCH, high * INCH, "bench-practice", COMMON)


BRACES = (
    _brace("Recurve", "48 to 52 in", 6.75, 7.5),
    _brace("Recurve", "54 to 56 in", 7.0, 7.75),
    _brace("Recurve", "58 to 60 in", 7.25, 8.0),
    _brace("Recurve", "62 to 64 in", 7.75, 8.5),
    _brace("Recurve", "66 to 68 in", 8.25, 9.0),
    _brace("Recurve", "70 to 72 in", 8.5, 9.5),
    _brace("Reflex-deflex longbow", "58 to 62 in", 6.5, 7.25),
    _brace("Reflex-deflex longbow", "64 to 68 in", 6.75, 7.75),
    _brace("Straight or string-follow longbow", "64 to 66 in", 6.0, 7.0),
    _brace("Straight or string-follow longbow", "68 to 72 in", 6.25, 7.5),
)

Fitting = namedtuple("Fitting", "name thread outside hole note source status")
"""A bushing, insert or plunger: thread inside, outside diameter [m], hole in wood [m]; texts and None."""


def _fitting(name: str, thread: str, outside: float | None, hole: float | None, note: str,
             status: str = MEMORY) -> Fitting:
    return Fitting(name, thread, None if outside is None else outside * INCH,
                   None if hole is None else hole * INCH, note, "accessory-hole-spacing", status)


FITTINGS = (
    _fitting("Accessory insert, pressed", "#10-24", 0.3125, 0.309,
             "Sight, quiver: two of them 1 5/16 in apart."),
    _fitting("Accessory insert, screwed in", "#10-24", 0.375, 0.3264, "Outside 3/8-16, hole letter P to Q by "
             "the wood; the maker's pilot goes first."),
    _fitting("Stabiliser bushing", "5/16-24", 0.5, 0.5, "Outside differs by maker: measure."),
    _fitting("Plunger or rest bushing", "5/16-24", 0.4375, 0.4375, "Goes right through; outside differs by "
             "maker: measure."),
    _fitting("Cushion plunger, barrel", "5/16-24", 0.3125, 0.3125,
             "Clearance through wood: 5/16 in and a few thousandths."),
    _fitting("Limb bolt of a take-down", "5/16-18 or 3/8-16", None, None, "Also M8 and M10: gauge it before "
             "you turn anything."),
    _fitting("Wood screw for a rest or plate", "#6", 0.138, 0.083,
             "Lead hole in hard wood, 1/2 in of thread.", "calculated"),
)

Glue = namedtuple("Glue", "name holds not_for open clamp remove source status")
"""A glue: what it holds and what not, open and clamp time at about 70 °F, what undoes it; all texts."""


def _glue(name: str, holds: str, not_for: str, open: str, clamp: str, remove: str) -> Glue:
    return Glue(name, holds, not_for, open, clamp, remove, "bench-practice", COMMON)


GLUES = (
    _glue("Laminating epoxy, two-part, slow", "Glass to wood, wood to wood, horn, cloth laminate, metal",
          "Oily or glossy faces as they are: degrease and roughen", "20 to 60 min", "12 to 24 h",
          "Heat over 150 °F, and that takes the bow's own glue with it"),
    _glue("Five-minute epoxy", "Small fillings, a loose insert", "Limbs, tips, any joint that bends",
          "3 to 5 min", "1 h", "Heat"),
    _glue("Thin CA (superglue)", "Lifted hairline edges, pinholes, glass splinters",
          "Thick gaps, joints that are knocked, foam", "Seconds", "Seconds to minutes",
          "Acetone, slowly; it harms finish"),
    _glue("Thick CA with filler", "Tip overlays held dry, horn, inlay", "A limb's glue line that has parted",
          "10 to 60 s", "1 to 5 min", "Acetone, slowly"),
    _glue("Resorcinol", "Wood to wood, damp proof; old laminated longbows", "Glass, metal", "10 to 15 min",
          "12 to 24 h at 70 °F and warmer", "Nothing that spares the wood"),
    _glue("Urea formaldehyde (plastic resin)", "Wood to wood with tight joints; many older risers",
          "Glass, gaps", "10 to 20 min", "12 h", "Nothing that spares the wood"),
    _glue("Yellow wood glue (PVA)", "Wood to wood that does not bend: handles, plugs", "Glass, horn, limbs, "
          "damp or hot places: it creeps", "5 to 10 min", "1 h, full in 24 h", "Warm water, steam, vinegar"),
    _glue("Hide glue", "Wood, horn, sinew, leather in old work", "Damp", "1 to 10 min", "12 h",
          "Warm water: it comes apart again"),
    _glue("Contact cement", "Leather to wood, rest plates", "Anything that carries the draw",
          "10 to 20 min dry", "At once, by pressure", "Naphtha, heat"),
    _glue("Water-based leather glue", "Leather grips to a finished riser", "Bare metal", "5 to 10 min", "1 h",
          "Warm water, patience"),
    _glue("Hot-melt shaft glue", "Points and inserts on shafts", "Anything on the bow", "Seconds",
          "Until it is cold", "Gentle heat"),
)

Hand = namedtuple("Hand", "who fifth middle ninety_fifth source status")
"""A hand's breadth across the knuckles [m] at the 5th, 50th and 95th in a hundred."""


def _hand(who: str, fifth: int, middle: int, ninety_fifth: int) -> Hand:
    return Hand(who, fifth / 1000, middle / 1000, ninety_fifth / 1000, "hand-sizes", SECOND)


HANDS = (
    _hand("British men, 19 to 65", 80, 85, 95),
    _hand("British women, 19 to 65", 70, 75, 85),
    _hand("Hong Kong men", 70, 80, 90),
    _hand("Hong Kong women", 60, 70, 80),
)

Timber = namedtuple("Timber", "trade other density modulus strength silica hazard source status")
"""A riser or lamination wood by its trade name. density [kg/m^3], modulus and bending strength [Pa], None
where not known; silica and hazard in words. status: of the row's weakest figure."""


def _known(trade: str, other: str, id: str, silica: str, hazard: str) -> Timber:
    """Return a row with the figures of the table of woods."""
    wood = woods.find(id)
    return Timber(trade, other, wood.density, wood.modulus, wood.bending_strength, silica, hazard,
                  wood.source, MEMORY)


def _told(trade: str, other: str, density: float, gigapascals: float, megapascals: float, silica: str,
          hazard: str) -> Timber:
    return Timber(trade, other, density, gigapascals * 1e9, megapascals * 1e6, silica, hazard,
                  "trade-woods", MEMORY)


TIMBERS = (
    _known("Hard maple", "rock maple, sugar maple", "sugar-maple", "none to speak of",
           "dust irritates; spalted maple is a strong sensitiser"),
    _known("Red maple", "soft maple", "red-maple", "none to speak of", "as hard maple"),
    _known("Yellow birch", "birch, dyed laminated birch", "yellow-birch", "none to speak of",
           "sensitiser, lungs; dyed laminates hold resin: treat as resin dust"),
    _known("Black walnut", "American walnut", "black-walnut", "none to speak of",
           "sensitiser, eyes and skin; common"),
    _known("Black cherry", "American cherry", "black-cherry", "none to speak of",
           "dust irritates; wheezing is told of"),
    _known("White ash", "ash", "white-ash", "none to speak of", "dust irritates lungs"),
    _known("Slippery elm", "red elm", "slippery-elm", "none to speak of", "irritant, eyes and skin"),
    _known("Shagbark hickory", "hickory", "shagbark-hickory", "none to speak of", "dust irritates"),
    _known("Black locust", "false acacia", "black-locust", "none to speak of", "irritant and nausea, strong"),
    _known("Indian rosewood", "East Indian rosewood, sonokeling", "indian-rosewood", "some calcium deposits",
           "irritant and sensitiser, very strong"),
    _known("Brazilian rosewood", "jacaranda, Rio rosewood; trade is restricted", "brazilian-rosewood",
           "some calcium deposits", "irritant and sensitiser, very strong"),
    _known("Bubinga", "kevazingo, African rosewood", "bubinga", "little", "irritant, skin; rarely"),
    _told("African padauk", "vermilion wood, padouk", 745, 11.7, 116, "none to speak of",
          "sensitiser, eyes, skin, lungs"),
    _told("Purpleheart", "amaranth", 905, 20.3, 152, "none to speak of", "nausea, strong; common"),
    _told("Wenge", "panga panga is a near one", 870, 17.6, 152, "none to speak of",
          "sensitiser, eyes, skin, lungs; splinters fester"),
    _told("Zebrawood", "zebrano", 805, 16.4, 123, "none to speak of", "sensitiser, eyes and skin"),
    _told("Teak", "Burma teak", 655, 12.3, 97, "yes, up to 1.4 %: dulls edges fast",
          "sensitiser, eyes, skin, lungs"),
    _told("Mahogany", "Honduras, genuine mahogany", 590, 10.1, 81, "none to speak of",
          "sensitiser; pneumonia is told of"),
    _told("African mahogany", "khaya", 640, 10.6, 91, "little", "irritant and sensitiser"),
    _told("Cocobolo", "granadillo", 1095, 18.7, 158, "none to speak of",
          "irritant and sensitiser, strong; common"),
    _told("Bocote", "cordia", 855, 12.2, 114, "none to speak of", "sensitiser; crosses with other woods"),
    _told("Ebony", "Gaboon, African ebony", 955, 16.9, 158, "none to speak of", "irritant and sensitiser"),
    _told("Osage orange", "bodark, hedge", 855, 11.6, 129, "none to speak of", "sensitiser, skin"),
    _told("Pacific yew", "yew", 705, 9.3, 105, "none to speak of", "irritant; poisonous in every part"),
    _told("Bamboo", "strips for cores", 700, 10.0, 110, "yes, 1 to 5 % in the outer skin",
          "dust and glue dust irritate; splinters"),
    _told("Red oak", "northern red oak", 700, 12.5, 99, "none to speak of",
          "sensitiser; cancer of the nose, most firmly known"),
    _told("White oak", "oak", 755, 12.3, 105, "none to speak of",
          "sensitiser; cancer of the nose, most firmly known"),
)
"""Silica and hazard of all rows are second-hand or from memory, and so is each whole row."""
