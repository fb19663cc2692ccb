"""Which calculator answers what you want to know."""

from calc.paths.declare import End, Path, answer, end, question


def _calculator(id: str, calculator: str, title: str, reason: str) -> End:
    return end(id, title, reason, title, "calculators/" + calculator + "/")


PATH = Path(
    "which-calculator",
    "Which calculator do I need?",
    "Leads from what you want to know to the page that works it out.",
    (
        question(
            "about", "What is it about?",
            answer("Whether this bow may be strung at all", "inspection"),
            answer("The limbs: tiller, weight, string line", "limbs"),
            answer("How the bow draws", "draw"),
            answer("The riser: holes, grip, window", "riser"),
            answer("Sanding and finishing", "finishing"),
            answer("String or arrows", "shooting"),
            answer("The price of the job", "quote"),
        ),
        question(
            "limbs", "Where do you stand?",
            answer("I have two distances and want to know which limb is stiff", "tiller"),
            answer("I want to come down in weight and am about to plan it", "weight-reduction"),
            answer("I am sanding, and want to know how large the next batch may be", "next-batch"),
            answer("I keep a log of strokes, and measured nothing else of the bow", "strokes"),
            answer("The faces are done and the edges shall take the last pound", "edges"),
            answer("The string does not lie on the middle, or a limb is twisted", "tracking"),
            answer("I want the limbs' shape, or tiller, from a picture of the bow", "photograph"),
        ),
        question(
            "draw", "What do you want to know?",
            answer("Its weight at another draw, where it stacks, what it stores", "draw-curve"),
            answer("How to make it lighter to draw", "lighter"),
            answer("How its limbs bend, and what sanding one stretch of them does", "bow-model"),
        ),
        question(
            "riser", "What are you about to do?",
            answer("Drill for an insert, or space two holes", "insert"),
            answer("Slim the grip, or widen the window", "grip"),
            answer("Mix epoxy: how much, and how long it lasts", "epoxy"),
            answer("Glue wood to wood, or trust a press fit through the seasons", "wood-movement"),
        ),
        question(
            "finishing", "What comes next?",
            answer("Sanding: which grits, in which order", "grit"),
            answer("Coats: how many, how thick, when the next", "finish"),
            answer("Spraying: is the air right today", "spray-air"),
            answer("Waiting: when has dust or vapour cleared", "clear-air"),
        ),
        question(
            "shooting", "What do you want to know?",
            answer("Which string the bow takes, and how long", "string"),
            answer("Which shaft suits this bow at my draw", "arrow-match"),
            answer("Whether the old arrows still suit now that the bow is lighter", "arrow-again"),
        ),
    ),
    (
        _calculator("inspection", "inspection", "Inspection",
                    "Tick what you looked at and what you found. The most dangerous finding decides."),
        _calculator("tiller", "tiller", "Tiller",
                    "Two distances and the hold; it names the limb and what putting it right costs."),
        _calculator("weight-reduction", "weight-reduction", "Weight reduction",
                    "It plans both limbs so that weight and tiller arrive together, and says how much "
                    "glass is left."),
        _calculator("strokes", "strokes", "Strokes",
                    "It learns from your own log how many strokes are left on each limb."),
        _calculator("edges", "edges", "Edges",
                    "It says which radius takes what is left, what edges cost, and when the core shows."),
        _calculator("next-batch", "next-batch", "Next batch",
                    "It learns from each reading how your bow answers, and keeps the risk of the next batch "
                    "small."),
        _calculator("photograph", "photograph", "Read a photograph",
                    "From points marked in a picture it reads both limbs' shape, each with its error."),
        _calculator("tracking", "tracking", "Tracking",
                    "From where the string lies it names the strong side, and what practice accepts."),
        _calculator("draw-curve", "draw-curve", "Draw curve",
                    "From readings of weight at draw to energy, stacking and the weight at any draw between "
                    "them."),
        _calculator("bow-model", "bow-model", "Bow model",
                    "From bench measures to the computed bow: draw curve, limb shapes, and the effect of "
                    "sanding any stretch."),
        _calculator("lighter", "weight-reduction", "Weight reduction",
                    "A bow is made lighter to draw by taking stiffness off both limbs."),
        _calculator("insert", "insert", "Insert",
                    "How deep to drill, what is left behind the hole, and whether two holes fit."),
        _calculator("grip", "grip", "Grip",
                    "What is left of a section after slimming it, and with what margin it bears the draw."),
        _calculator("epoxy", "epoxy", "Epoxy",
                    "Resin and hardener for your joint, with pot life, open and clamp time in this shop."),
        _calculator("wood-movement", "wood-movement", "Wood movement",
                    "How much a piece, a joint or a hole changes with the air, and when to wait."),
        _calculator("grit", "grit", "Grit",
                    "A ladder of grits from the first to the last, with the size of each step."),
        _calculator("finish", "finish", "Finish",
                    "Coats, wet and dry film, volume, and a dated schedule with lettering between coats."),
        _calculator("spray-air", "spray-air", "Spray air",
                    "Dew point, how much warmer the bow is, and whether to go or wait."),
        _calculator("clear-air", "clear-air", "Clear air",
                    "Minutes until dust or vapour is gone, and what air a booth needs."),
        _calculator("string", "string", "String",
                    "Length, strands and the material that these tips allow."),
        _calculator("arrow-match", "arrow-match", "Arrow match",
                    "Stiffness, mass and balance for the weight at your own draw."),
        _calculator("arrow-again", "arrow-match", "Arrow match",
                    "Put in the old weight and the new one; it says what changes."),
        _calculator("quote", "quote", "Quote",
                    "Hours by task and materials to a price with an honest range."),
    ),
)
