"""What a bow shall come to, asked alike wherever it is asked."""

from calc.fields import RULE, Input, quantity


def target_weight() -> tuple[Input, Input]:
    """Return the inputs for the weight wanted and what of it the edges will take."""
    return (
        quantity("weight_wanted", "Draw weight wanted", "force", "48 lb", "5 lb", "150 lb",
                 ("20 lb", "70 lb"), "The finished bow, at the same draw."),
        quantity("reserve", "Weight kept for the edges", "force", "1 lb", "0 lb", "5 lb",
                 ("1/2 lb", "2 lb"), "Left on for edge sanding and finish sanding.", role=RULE),
    )


def target_tiller() -> Input:
    """Return the input for the tiller wanted."""
    return quantity("tiller_wanted", "Tiller wanted", "length", "3/16 in", "-1 in", "1 in",
                    ("-1/8 in", "3/8 in"),
                    "Upper minus lower: split finger 1/8 to 1/4 in (3 to 6 mm), three fingers under "
                    "0 to 1/8 in (0 to 3 mm).")
