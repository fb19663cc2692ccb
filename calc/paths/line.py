"""A line in a limb: finish, wood, edge or the end of the bow (common practice)."""

from calc.paths.declare import Path, answer, found, question

_PATCH = ("Fine wet paper on a small block, only until the glass shows. The dust is glass, and an old finish "
          "may hold lead: keep it wet, and read the caution on this page.")
_ACROSS = ("At one end of the line, away from lettering; if the line reaches the edge, there, round the "
           "corner too. A nail that catches in lacquer has felt lacquer only. ")

PATH = Path(
    "line",
    "What is this line?",
    "Tells a line in the finish from a line that ends a bow.",
    (
        question(
            "way", "Which way does the line run?",
            answer("Across the limb, or slantwise over part of its width", "finish-off"),
            answer("Along the limb", "along"),
            answer("In every direction, like dry mud", "net"),
            help="Clean the place. Hold a strong light low, first from the tip, then from the side.",
        ),
        question(
            "finish-off", "Take the finish off a patch the size of a fingernail. Is the line still there?",
            answer("Yes, in the glass", "across"),
            answer("No, it went with the finish", "scratch"),
            answer("I cannot tell", "unsure-across"),
            help=_ACROSS + _PATCH,
        ),
        question(
            "across", "In the bare glass: does a fingernail catch in it, or does it show at the edge?",
            answer("Yes, one of the two", "crack"),
            answer("Neither, as far as I can tell", "in-glass"),
            help="Wipe the patch. Draw the nail across it both ways. Follow it to the edge with a lens.",
        ),
        question(
            "in-glass", "Is the line white, with a smooth surface over it?",
            answer("Yes, thin white lines, and no fibre ends at them under the lens", "white-lines"),
            answer("It is a wrinkle or a white band across the belly", "crushed"),
            answer("No, or I cannot tell", "glass-line"),
            help="Draw the nail over the patch once more, and look along it with the lens.",
        ),
        question(
            "along", "Where does it lie?",
            answer("At the edge, between two layers", "edge"),
            answer("At the edge, in the wood between two glue lines", "core"),
            answer("On a face, under the glass, following the wood", "grain"),
            answer("On a face or a corner, in the glass itself", "along-glass"),
        ),
        question(
            "edge", "Slide a slip of thin paper along it. Does the paper go in?",
            answer("No, nowhere", "glue-line"),
            answer("Yes, and I found where it ends", "edge-open"),
            answer("Yes, and I cannot find the end", "parted"),
        ),
        question(
            "edge-open", "Where is it open, and how deep?",
            answer("On the stiff ramp beside the riser, nowhere deeper than 1/16 in (1.6 mm)", "ramp-lift"),
            answer("On that ramp but deeper, or at a fadeout", "fadeout-lift"),
            answer("Where the limb bends, however little", "limb-lift"),
            answer("Between layers of wood, or a coin sounds dull beside it", "core-parted"),
            help="On the ramp riser wood lies beneath, and nothing bends. Pencil the ends, and tap the "
                 "place. If two answers fit, take the one further down.",
        ),
        question(
            "along-glass", "Draw cotton along it. Does it catch?",
            answer("Yes", "splinter"),
            answer("No", "fibre"),
        ),
        question(
            "splinter", "How far does it go?",
            answer("Along the edge, no longer than 2 in, no farther in than 1/16 in", "short-splinter"),
            answer("Longer, farther in, away from the edge, or more than two on the limb", "long-splinter"),
            answer("It runs out across the limb", "across-splinter"),
            help="Lens and needle: find both ends and the depth, and do not lift it.",
        ),
        question(
            "net", "Take the finish off a patch the size of a fingernail. Do the lines go with it?",
            answer("Yes, the glass beneath is clear", "crazing"),
            answer("No, some of them stay", "crazed-glass"),
            help=_PATCH,
        ),
    ),
    (
        found("crack", "A crack", "crack_across",
              "It is in what carries the load, and not in the finish alone. The bow is never strung again."),
        found("white-lines", "White lines in the glass", "white_lines"),
        found("crushed", "Crushed glass", "crushed_belly"),
        found("glass-line", "A crack in the glass", "crack_across",
              "The fibres run along the limb, so a line across them means that fibres are broken."),
        found("scratch", "A scratch in the finish", "worn_finish", "The glass beneath is whole, whatever the "
            "nail felt."),
        found("unsure-across", "A line you cannot name", "line_unsure",
              "A bow is not strung on a guess. Treat it as a crack until the finish is off or somebody "
              "experienced has looked."),
        found("core", "A crack in the core", "core_crack"),
        found("glue-line", "A glue line", "line_along",
              "A closed line between two layers is how the bow was made."),
        found("ramp-lift", "Glass just lifted on the ramp", "edge_lifted_ramp",
              "Thin glue can reach the end of it while the bow is unstrung."),
        found("fadeout-lift", "Glass lifted at a fadeout, or deep on the ramp", "lifted_fadeout"),
        found("limb-lift", "Glass lifted where the limb bends", "edge_lifted"),
        found("core-parted", "Parted layers", "parted_layers"),
        found("parted", "Glass lifted without an end", "lifted_glass",
              "If the paper finds no end, neither will the glue."),
        found("grain", "Figure of the wood", "line_along",
              "Clear glass shows the grain of the wood beneath. It ends where a layer ends, and the nail "
              "feels nothing."),
        found("short-splinter", "A short splinter", "edge_splinter",
              "Fibres have come loose. They run on along the limb when it bends."),
        found("long-splinter", "A long or deep splinter", "splinter_far"),
        found("across-splinter", "A splinter that has become a crack", "crack_across",
              "It cuts across the fibres, as a crack does."),
        found("fibre", "A strand of the glass", "line_along",
              "Single strands show as fine lines along the limb. Look at the place again after the first "
              "draw."),
        found("crazing", "Crazing", "crazing", "It is in the finish only, and goes when the finish goes."),
        found("crazed-glass", "A net of lines in the glass", "crazed_glass"),
    ),
)
