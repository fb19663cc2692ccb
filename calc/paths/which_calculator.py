"""Which calculator answers what you want to know."""

from calc.paths.declare import Path, answer, end, question

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
            answer("Arrows", "arrow"),
        ),
        question(
            "limbs", "Where do you stand?",
            answer("I have two distances and want to know which limb is stiff", "tiller"),
            answer("I want to come down in weight and am about to plan it", "weight-reduction"),
            answer("I am sanding and keep a log of strokes", "strokes"),
        ),
        question(
            "draw", "What do you want to know?",
            answer("Its weight at another draw, where it stacks, what it stores", "draw-curve"),
            answer("How to make it lighter to draw", "lighter"),
        ),
        question(
            "arrow", "What do you want to know?",
            answer("Which shaft suits this bow at my draw", "arrow-match"),
            answer("Whether the old arrows still suit now that the bow is lighter", "arrow-again"),
        ),
    ),
    (
        end("inspection", "Inspection",
            "Tick what you looked at and what you found. The most dangerous finding decides.",
            "Inspection", "calculators/inspection/"),
        end("tiller", "Tiller",
            "Two distances and the hold; it names the limb and what putting it right costs.",
            "Tiller", "calculators/tiller/"),
        end("weight-reduction", "Weight reduction",
            "It plans both limbs so that weight and tiller arrive together, and says how much glass is "
            "left.", "Weight reduction", "calculators/weight-reduction/"),
        end("strokes", "Strokes",
            "It learns from your own log how many strokes are left on each limb.",
            "Strokes", "calculators/strokes/"),
        end("draw-curve", "Draw curve",
            "From readings of weight at draw to energy, stacking and the weight at any draw between them.",
            "Draw curve", "calculators/draw-curve/"),
        end("lighter", "Weight reduction",
            "A bow is made lighter to draw by taking stiffness off both limbs.",
            "Weight reduction", "calculators/weight-reduction/"),
        end("arrow-match", "Arrow match",
            "Stiffness, mass and balance for the weight at your own draw.",
            "Arrow match", "calculators/arrow-match/"),
        end("arrow-again", "Arrow match",
            "Put in the old weight and the new one; it says what changes.",
            "Arrow match", "calculators/arrow-match/"),
    ),
)
