"""The log of strokes as it is asked for."""

from calc.bows.stroke_log import NEW, SAME
from calc.declaring import Input, choice, quantity, rows
from calc.tables.grits import PAPERS


def log_rows(fewest: int) -> Input:
    """Return the input for a log of strokes with the readings after each batch, of so many rows at least."""
    return rows(
        "log",
        "Strokes since the row before, and the readings after them",
        (
            quantity("upper", "Strokes on the upper", "strokes", default="20", low="0", high="5000",
                     usual=("0", "500")),
            quantity("lower", "Strokes on the lower", "strokes", default="20", low="0", high="5000",
                     usual=("0", "500")),
            quantity("weight", "Weight", "force", default="55 lb", low="5 lb", high="150 lb",
                     usual=("20 lb", "80 lb")),
            quantity(
                "tiller", "Tiller", "length", default="0 in", low="-1 1/2 in", high="1 1/2 in",
                usual=("-3/8 in", "1/2 in"),
            ),
            choice("paper", "Paper", (
                (SAME, "same"), (NEW, "new sheet"),
            ) + tuple([(grade, grade.upper()) for grade in PAPERS])),
        ),
        default="0:0:53lb:5/16in:p120;30:45:51.4lb:15/64in:same;30:40:50.2lb:3/16in:same;"
                "30:40:48.7lb:1/8in:same;40:50:48.1lb:3/32in:p180;40:50:47.2lb:1/16in:same",
        fewest=fewest,
        most=40,
        help="The first row is the bow before any stroke.",
        measure="A stroke is one pass of the block along the whole working limb.",
    )
