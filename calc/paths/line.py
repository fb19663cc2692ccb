"""A line in a limb: finish, wood, edge or the end of the bow (common practice)."""

from calc.paths.declare import Path, answer, end, question

_FORM = ("What you found", "inspect/decide/#what-you-found")
_LINES = ("Tell crazing from cracks", "inspect/#2-tell-crazing-from-cracks")
_LIFTED = ("What may be glued and what may not", "repair/lifted-edges/#what-may-be-glued-and-what-may-not")
_SPLINTER = ("An edge splinter", "repair/lifted-edges/#an-edge-splinter")
_RETIRE = ("Retire a bow", "repair/retire/")
_PATCH = ("Fine paper on a small block, only until the glass shows. The dust is glass: wet it, and read the "
          "caution on this page.")

PATH = Path(
    "line",
    "What is this line?",
    "Tells a line in the finish from a line that ends a bow.",
    (
        question(
            "way", "Which way does the line run?",
            answer("Across the limb, or slantwise over part of its width", "across"),
            answer("Along the limb", "along"),
            answer("In every direction, like dry mud", "net"),
            help="Clean the place. Hold a strong light low, first from the tip, then from the side.",
        ),
        question(
            "across", "Does a fingernail catch in it, or does it show at the edge of the limb?",
            answer("Yes, one of the two", "crack"),
            answer("Neither, as far as I can tell", "finish-off"),
            help="Draw the nail across it both ways. Follow it to the edge with a lens.",
        ),
        question(
            "finish-off", "Take the finish off a patch the size of a fingernail. Is the line still there?",
            answer("Yes, in the glass", "glass-line"),
            answer("No, it went with the finish", "scratch"),
            answer("I cannot tell", "unsure-across"),
            help=_PATCH,
        ),
        question(
            "along", "Where does it lie?",
            answer("At the edge, between two layers", "edge"),
            answer("On a face, under the glass, following the wood", "grain"),
            answer("On a face, in the glass itself", "along-glass"),
        ),
        question(
            "edge", "Slide a slip of thin paper along it. Does the paper go in?",
            answer("No, nowhere", "glue-line"),
            answer("A little, and it stops at once", "edge-open"),
            answer("Yes, and I cannot find the end", "parted"),
        ),
        question(
            "along-glass", "Draw cotton along it. Does it catch?",
            answer("Yes", "splinter"),
            answer("No", "fibre"),
        ),
        question(
            "net", "Take the finish off a patch the size of a fingernail. Do the lines go with it?",
            answer("Yes, the glass beneath is clear", "crazing"),
            answer("No, some of them stay", "crazed-glass"),
            help=_PATCH,
        ),
    ),
    (
        end("crack", "A crack: wall only",
            "It goes through the finish into what carries the load. The bow is never strung again.",
            *_RETIRE),
        end("glass-line", "A crack in the glass: wall only",
            "The fibres run along the limb, so a line across them means that fibres are broken.", *_RETIRE),
        end("scratch", "A scratch in the finish: write it down",
            "The glass beneath is whole.", *_FORM),
        end("unsure-across", "Treat it as a crack",
            "A bow is not strung on a guess. Let somebody experienced look before you do anything else.",
            *_FORM),
        end("glue-line", "A glue line: write it down",
            "A closed line between two layers is how the bow was made.", *_FORM),
        end("edge-open", "Glass just lifted: repair first",
            "Thin glue can reach the end of it while the bow is unstrung.",
            *_LIFTED),
        end("parted", "Parted layers: wall only",
            "If the paper finds no end, neither will the glue.", *_RETIRE),
        end("grain", "Figure of the wood: write it down",
            "Clear glass shows the grain of the wood beneath. It ends where a layer ends, and the nail "
            "feels nothing.", *_FORM),
        end("splinter", "A splinter: repair first",
            "Fibres have come loose. They run on along the limb when it bends.",
            *_SPLINTER),
        end("fibre", "A strand of the glass: write it down",
            "Single strands show as fine lines along the limb. Look at the place again after the first "
            "draw.", *_FORM),
        end("crazing", "Crazing: write it down",
            "It is in the finish only, and goes when the finish goes.", *_LINES),
        end("crazed-glass", "Lines in the glass: wall only, unless somebody experienced says otherwise",
            "A net of lines in the glass means that its resin has cracked. How much it still holds cannot "
            "be seen.", *_FORM),
    ),
)
