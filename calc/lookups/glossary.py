"""The words of bow work, as this book uses them: definitions, and where a page marks them."""

from collections import namedtuple

Part = namedtuple("Part", "id terms")
Term = namedtuple("Term", "id name text seen_as")
"""A word. id: its anchor on the glossary page; seen_as: the forms that a page marks where one of
them first occurs; none for words too common to mark."""

PARTS = (
    Part("bow", (
        Term("amo-length", "AMO length",
             "The marked length of a bow in the trade standard: the length of its standard string plus 3 in.",
             ("AMO length",)),
        Term("back", "Back",
             "The face toward the target. It is stretched when the bow is drawn.",
             ("back glass", "back of the limb")),
        Term("belly", "Belly",
             "The face toward the archer. It is pressed together when the bow is drawn.",
             ("belly",)),
        Term("bow-length", "Bow length",
             "From nock to nock along the unstrung bow, measured on the belly.",
             ("bow length",)),
        Term("core", "Core",
             "The wood between back glass and belly glass. It keeps the two apart and carries little of the "
             "bending itself.",
             ("core",)),
        Term("deflex", "Deflex",
             "Limbs or riser set toward the archer. It makes a bow milder and takes load off the limbs.",
             ("deflex",)),
        Term("fadeout", "Fadeout",
             "Where the riser runs out to nothing and the limb begins to bend.",
             ("fadeout", "fadeouts")),
        Term("glass", "Glass",
             "A strip of glass fibres, nearly all lengthwise, in resin. It gives the limb most of its "
             "stiffness. Sanding it takes stiffness fast.",
             ()),
        Term("grip", "Grip",
             "The part the hand holds. Its deepest point is the throat.",
             ()),
        Term("heel", "Heel",
             "Of a grip: the lower end of its swell, where the heel of the palm rests.",
             ()),
        Term("high-point", "High point",
             "Of a grip: the crest of its swell, below the throat, that the ball of the thumb meets. "
             "Moved back means away from the throat, toward the heel.",
             ("high point",)),
        Term("insert", "Insert",
             "A threaded brass sleeve pressed into the riser to take a sight, a quiver or a plunger.",
             ("insert", "inserts")),
        Term("knurl", "Knurl",
             "The raised pattern on the outside of an insert, by which glue or wood holds it.",
             ("knurl", "knurls")),
        Term("lamination", "Lamination",
             "One layer of the limb.",
             ("lamination", "laminations")),
        Term("limb", "Limb",
             "The bending part, from fadeout to tip. Upper and lower are named as the bow is held.",
             ()),
        Term("longbow", "Longbow",
             "Here: a bow whose string touches the limbs at the nocks only, when strung. With reflex and "
             "deflex its profile is gently curved.",
             ("longbow", "longbows")),
        Term("nock", "Nock",
             "Where the string is held: at a limb's tip, or at the end of an arrow.",
             ()),
        Term("pivot-point", "Pivot point",
             "The deepest point of the throat of the grip. Draw length and brace height start here.",
             ("pivot point",)),
        Term("ramp", "Ramp",
             "The stretch beside the riser where riser wood lies beneath the glass and nothing bends. Its "
             "thin end is the fadeout.",
             ("ramp", "ramps")),
        Term("recurve", "Recurve",
             "A bow whose limb ends curve to the back, so that the strung string lies against them for some "
             "way. As the bow is drawn the string lifts off and the limb grows longer.",
             ("recurve", "recurves")),
        Term("reflex", "Reflex",
             "Limbs or tips set toward the target. It stores more energy and asks more of the glue.",
             ("reflex",)),
        Term("riser", "Riser",
             "The stiff middle, with grip, window and shelf.",
             ("riser",)),
        Term("shelf", "Shelf",
             "Where the arrow lies, at the foot of the window. A bow is cut to centre when the window "
             "reaches the string's plane, past centre when it goes beyond.",
             ("shelf",)),
        Term("string-groove", "String groove",
             "The channel down the belly of a recurve's tip, or the notch at a longbow's, that the string "
             "lies in.",
             ("string groove", "string grooves")),
        Term("taper", "Taper",
             "How thickness or width grows less along the limb.",
             ("taper",)),
        Term("throat", "Throat",
             "The deepest point of the grip, where the web of the hand presses.",
             ("throat",)),
        Term("tip-overlay", "Tip overlay",
             "The layers glued on the back of the tip to take the string's loop. The two overlays seldom "
             "match in length, so never measure tiller from them.",
             ("tip overlay", "tip overlays", "overlay", "overlays")),
        Term("web-of-the-hand", "Web of the hand",
             "The skin between thumb and forefinger, which the throat of the grip presses against.",
             ("web of the hand",)),
        Term("window", "Window",
             "The cut beside the arrow through which the archer looks. The weakest section of most risers.",
             ("sight window", "sight windows")),
        Term("wrist", "Wrist, low to high",
             "How the heel of the hand meets the grip: low lays the palm on it, high lets the throat take "
             "the load alone.",
             ("low wrist", "medium wrist", "high wrist", "high-wrist", "low-wrist")),
    )),
    Part("drawn", (
        Term("amo-draw-length", "AMO draw length",
             "From the nocking point to the pivot point, plus 1 3/4 in. A draw of 28 in is 26 1/4 in to the "
             "pivot point.",
             ("AMO draw length",)),
        Term("brace-height", "Brace height",
             "From the throat of the grip to the braced string, square to the string.",
             ("brace height",)),
        Term("cleat", "Cleat",
             "A fitting with two horns on the stand, round which a rope is wound so that it holds by itself.",
             ("cleat", "cleats")),
        Term("draw-length", "Draw length",
             "How far the string is drawn. See AMO draw length.",
             ("draw length",)),
        Term("draw-weight", "Draw weight",
             "The force that holds the string at a stated draw. Marked at 28 in.",
             ("draw weight",)),
        Term("draw-force-curve", "Draw-force curve",
             "Weight plotted against draw, from brace to full draw. The area under it is the energy stored.",
             ("draw-force curve",)),
        Term("dry-fire", "Dry fire",
             "Letting the drawn string go without an arrow. It breaks bows.",
             ("dry fire", "dry-fire", "dry-fired")),
        Term("hinge", "Hinge",
             "A place where a limb bends more sharply than on either side of it, most often a thin one. "
             "Strain gathers there, and there it breaks.",
             ("hinge", "hinges")),
        Term("hysteresis", "Hysteresis",
             "What is lost between drawing and letting down. The limb warms a little.",
             ("hysteresis",)),
        Term("let-down", "Let down",
             "To bring a drawn string back slowly to brace, without letting it go.",
             ("let down", "let-down")),
        Term("nocking-point", "Nocking point",
             "The place on the string where the arrow's nock sits.",
             ("nocking point",)),
        Term("power-stroke", "Power stroke",
             "The way the string pushes the arrow: from full draw to brace.",
             ("power stroke",)),
        Term("serving", "Serving",
             "Thread wound round the string where fingers, nock and tips wear it.",
             ("serving",)),
        Term("split-finger", "Split finger",
             "One finger above the arrow, two below. The target for tiller is upper larger by 1/8 to 1/4 in "
             "(common practice).",
             ("split finger", "split-finger")),
        Term("stacking", "Stacking",
             "Weight climbing faster and faster near the end of the draw.",
             ("stacking",)),
        Term("stringer", "Stringer",
             "A cord with a cup or saddle for each tip that bends the bow while the string is put on.",
             ("stringer",)),
        Term("strong-side", "Strong side",
             "The edge of a twisted limb that bends less. The string lies away from it, and material comes "
             "off it.",
             ("strong side",)),
        Term("three-under", "Three under",
             "Three fingers below the arrow. The target for tiller is upper larger by 0 to 1/8 in (common "
             "practice).",
             ("three under", "three fingers under")),
        Term("tiller", "Tiller",
             "Upper distance minus lower distance, each from the belly to the string, square to the string, "
             "at the same place on its limb. The limb with the smaller distance is the stiffer.",
             ("tiller",)),
        Term("tiller-stand", "Tiller stand",
             "A post that holds the grip while the bow is drawn with a rope from a distance.",
             ("tiller stand",)),
        Term("tracking", "Tracking",
             "Whether the string lies on the middle of each limb. It moves toward the side that material is "
             "taken from.",
             ("tracking", "string line")),
        Term("twist", "Twist",
             "A limb turned about its own length, so that its tip does not lie flat across the bow.",
             ()),
    )),
    Part("stiffness", (
        Term("curvature", "Curvature",
             "How sharply a limb bends: one over the radius of the bend.",
             ("curvature",)),
        Term("elastic-modulus", "Elastic modulus",
             "E, how hard a material is to stretch: stress divided by strain. Glass laminate has about three "
             "times that of maple.",
             ("elastic modulus",)),
        Term("flexural-rigidity", "Flexural rigidity",
             "E I, how hard a section is to bend: bending moment divided by curvature. What this book calls "
             "the stiffness of a limb at one place.",
             ("flexural rigidity",)),
        Term("neutral-axis", "Neutral axis",
             "The line through a section that is neither stretched nor pressed when it bends. Taking glass "
             "from the belly moves it toward the back.",
             ("neutral axis",)),
        Term("second-moment-of-area", "Second moment of area",
             "I, how a section's shape resists bending. For a rectangle, width times thickness cubed, "
             "divided by twelve.",
             ("second moment of area",)),
        Term("station", "Station",
             "A place along the limb where width and thickness are measured.",
             ("station", "stations")),
        Term("strain", "Strain",
             "Change of length divided by length.",
             ("strain",)),
        Term("transformed-section", "Transformed section",
             "A section of several materials, worked out as if it were of one, each layer's width scaled by "
             "its modulus.",
             ("transformed section",)),
    )),
    Part("arrows", (
        Term("balance-point", "Balance point",
             "How far the arrow's balance lies before the middle of the shaft, as a share of the shaft's "
             "length. Length runs from the nock's throat to the end of the shaft, without the point.",
             ("balance point",)),
        Term("bare-shaft", "Bare shaft",
             "An arrow without feathers. Where it lands beside feathered ones shows whether the spine fits.",
             ("bare shaft", "bare shafts")),
        Term("dynamic-spine", "Dynamic spine",
             "How the arrow bends when it is shot. It depends on bow, point, length and release. No single "
             "number holds it.",
             ("dynamic spine",)),
        Term("first-flexural-frequency", "First flexural frequency",
             "How often a second the free arrow swings in its simplest bend.",
             ("first flexural frequency",)),
        Term("grains-per-inch", "Grains per inch",
             "Mass of a shaft for each inch of its length, without nock, insert, feathers and point.",
             ("grains per inch", "grains for each inch")),
        Term("grains-per-pound", "Grains per pound",
             "Arrow mass divided by draw weight. 8 to 10 is usual for an old bow; under 5 is never right "
             "(common practice).",
             ("grains per pound", "gr per lb", "grains for each pound")),
        Term("static-spine", "Static spine",
             "How far a shaft sags under a weight hung from its middle. There are two conventions: 26 in "
             "between supports with 2 lb, read in pounds as 26 divided by the sag in inches; and 28 in with "
             "1.94 lb (880 g), read as the sag itself.",
             ("static spine",)),
        Term("virtual-mass", "Virtual mass",
             "The mass that limbs and string act as if they added to the arrow.",
             ("virtual mass",)),
    )),
    Part("shop", (
        Term("batch", "Batch",
             "Strokes between two readings of weight and tiller, all with one paper.",
             ("next batch", "largest batch")),
        Term("blind-hole", "Blind hole",
             "A hole that ends inside the wood. What is left between its bottom and the far face is the "
             "wall.",
             ("blind hole", "blind holes")),
        Term("crazing", "Crazing",
             "Fine cracks in a finish. They end where the finish ends; cracks in glass do not.",
             ("crazing",)),
        Term("cyanoacrylate", "Cyanoacrylate",
             "CA: a thin glue that sets in seconds with a trace of moisture.",
             ("cyanoacrylate", "CA")),
        Term("delamination", "Delamination",
             "Layers parted at a glue line.",
             ("delamination", "parted layers", "layers parted")),
        Term("dew-point", "Dew point",
             "The temperature at which the air's water would settle on a surface. Keep the bow at least 3 °C "
             "(5.4 °F) above it when you spray.",
             ("dew point",)),
        Term("diffuse-porous", "Diffuse-porous",
             "Wood with small pores spread evenly, such as maple. Its figure is easily taken for scratches.",
             ("diffuse-porous",)),
        Term("dry-film-thickness", "Dry film thickness",
             "Thickness of a coat once the solvent has gone: wet film thickness times volume solids. 4.0 mil "
             "wet at 30 % leaves 1.2 mil.",
             ("dry film thickness",)),
        Term("equilibrium-moisture-content", "Equilibrium moisture content",
             "The water that wood settles at in air of a given temperature and humidity, as a share of its "
             "dry mass.",
             ("equilibrium moisture content",)),
        Term("feather", "Feather",
             "The stretch in which sanding fades out: strokes begin and end at different places, so that no "
             "step is left.",
             ("feathered", "between the feathers", "from feather to feather")),
        Term("flatting", "Flatting powder",
             "What makes a finish dull. It scatters light, so one layer looks dull and several look like "
             "fog.",
             ("flatting powder",)),
        Term("gloss-unit", "Gloss unit",
             "GU: how much light a surface throws back like a mirror, read at a stated angle, 60° unless "
             "said otherwise.",
             ("gloss units", "GU")),
        Term("grit", "Grit",
             "Size of abrasive grain. P grades and the older American grades agree roughly up to 220 and "
             "then part company.",
             ("grit", "grits")),
        Term("isocyanate", "Isocyanate",
             "What hardens a two-part urethane. Breathed in, it can bring on asthma for life.",
             ("isocyanate", "isocyanates")),
        Term("lower-explosive-limit", "Lower explosive limit",
             "The least share of a vapour in air that burns. Far below it the air can still make you ill.",
             ("lower explosive limit",)),
        Term("pinhole", "Pinhole",
             "A pore or bubble that shows as a dot through the finish.",
             ("pinhole", "pinholes")),
        Term("raking-light", "Raking light",
             "Light held low along a surface, so that every hollow and scratch throws a shadow.",
             ("raking light", "low light")),
        Term("range", "Range",
             "The two ends between which a figure lies in 95 of 100 such cases, if the errors are as stated. "
             "Either way that is 1.96 standard errors.",
             ("95 % range", "range of 95 %")),
        Term("recoat-window", "Recoat window",
             "The time after a coat in which the next one bonds without scuffing. It stands on the data "
             "sheet.",
             ("recoat window", "recoat windows")),
        Term("reserve", "Reserve",
             "Draw weight left on for rounding the edges and for finish sanding.",
             ("reserve",)),
        Term("scuffing", "Scuffing",
             "Dulling a cured coat with fine abrasive so that the next one has something to hold.",
             ("scuffing", "scuff")),
        Term("sealer", "Sealer",
             "The first coat, which closes the pores.",
             ("sealer",)),
        Term("somebody-experienced", "Somebody experienced",
             "A person who has built or mended glass-laminated bows for years and has seen some of them "
             "fail. Ask bowyers who laminate their limbs, and clubs that shoot traditional bows. Until you "
             "find one the bow waits unstrung.",
             ("somebody experienced", "someone experienced", "experienced bowyer", "experienced hands")),
        Term("standard-error", "Standard error",
             "How far a reading is likely to be out. Two readings in three lie within one of it, 95 in 100 "
             "within two.",
             ("standard error", "standard errors")),
        Term("topcoat", "Topcoat",
             "The last coats, which take the wear.",
             ("topcoat", "topcoats")),
        Term("volume-solids", "Volume solids",
             "The share of a finish that stays on the bow when it has dried.",
             ("volume solids",)),
        Term("wet-film-thickness", "Wet film thickness",
             "Thickness of a coat as it is laid, measured with a comb gauge.",
             ("wet film thickness",)),
        Term("wicking", "Wicking",
             "Letting thin glue run into a gap by itself, from a strip of paper or the tip of a needle.",
             ("wicking", "wicked", "wick")),
    )),
)

OTHER_WORDS = (
    ("Brace height", ("fistmele", "string height", "bracing height")),
    ("Cyanoacrylate", ("superglue", "super glue", "ca glue", "ca", "instant glue")),
    ("Delamination", ("delam",)),
    ("Draw weight", ("poundage", "pull weight", "pounds of pull")),
    ("Draw-force curve", ("force draw curve",)),
    ("Dry fire", ("dryfire", "dryfired", "dry firing", "dry loose")),
    ("Equilibrium moisture content", ("emc",)),
    ("Fadeout", ("fade out", "fade outs", "fades")),
    ("Flatting powder", ("matting agent", "flattening agent")),
    ("Glass", ("fiberglass", "fibreglass", "fiber glass", "fibre glass")),
    ("Grains per inch", ("gpi",)),
    ("Grains per pound", ("gpp",)),
    ("Insert", ("bushing", "bushings")),
    ("Isocyanate", ("iso", "2k", "two pack")),
    ("Lower explosive limit", ("lel",)),
    ("Riser", ("handle section",)),
    ("Scuffing", ("keying", "scuff sanding")),
    ("String groove", ("nock groove", "nock grooves", "string nock", "string nocks")),
    ("Stringer", ("bow stringer",)),
    ("Three under", ("3 under",)),
    ("Tip overlay", ("tip wedge", "tip wedges")),
)
"""What others call some of the words, by which a reader finds them all the same. In small letters, without
signs between them."""

EXPLAINED = (
    ("somebody-experienced", "begin/#somebody-experienced", "Where to look, what to bring and what to ask"),
)
"""Words that a page says more of: id of the word, address of the place from the root, what stands there."""


def find_part(id: str) -> Part:
    """Return one part of the glossary.

    Raises:
        ValueError: no part has this id.
    """
    for part in PARTS:
        if part.id == id:
            return part
    raise ValueError("no part of the glossary is called " + id)


def terms() -> list[Term]:
    """Return every word of every part."""
    return [each for part in PARTS for each in part.terms]


def others_of(text: str) -> list[str]:
    """Return what others call the words of the glossary that a text names."""
    named = text.lower()
    return [other for name, others in OTHER_WORDS if name.lower() in named for other in others]
