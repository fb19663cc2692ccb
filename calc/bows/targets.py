"""What a bow shall come to, asked alike wherever it is asked."""

from calc.declaring import (
    RULE,
    SHOP,
    Input,
    choice,
    quantity,
)
from calc.outcome import Refused
from calc.quantities import show
from calc.shop.abrasives import ladder, removed_by
from calc.tables import practice
from calc.tables.grits import LIMB_PAPERS, P_GRITS
from calc.tables.grits import find as find_grit

SCRATCH = practice.find("scratch-depth")
STEP_LIMIT = 1.65
"""Largest step from one paper to the next (common practice)."""

_PAPERS = tuple([(id, id.upper()) for id in LIMB_PAPERS])


def target_weight(reserve: str, help: str) -> tuple[Input, Input]:
    """Return the inputs for the weight wanted and what of it the edges will take.

    reserve: the example's; empty where it is worked out.
    """
    return (
        quantity("weight_wanted", "Draw weight wanted", "force", default="45 lb", low="5 lb", high="150 lb",
                 usual=("20 lb", "70 lb"), help="The finished bow, at the same draw."),
        quantity("reserve", "Weight kept for the edges", "force", default=reserve, low="0 lb", high="5 lb",
                 usual=("1/2 lb", "2 lb"), help=help, optional=reserve == "", role=RULE),
    )


def edge_inputs() -> tuple[Input, ...]:
    """Return the inputs for what edges and finish sanding will take."""
    return (
        quantity("edge_radius", "Edges rounded to a radius of", "length", default="1/32 in", low="0 in",
                 high="1/4 in", usual=("1/64 in", "3/32 in"),
                 help="All four edges of a limb, along its whole length.", role=RULE),
    ) + sides_and_papers()


def sides_and_papers() -> tuple[Input, ...]:
    """Return the inputs for the edges as they are, for width that comes off and for the finish sanding."""
    return (
        quantity("edge_now", "Their radius now", "length", default="0 in", low="0 in", high="1/4 in",
                 usual=("0 in", "1/16 in"),
                 help="0 while they are sharp. Edges that are round already cost less."),
        quantity("edge_width", "Width that comes off", "length", default="0 in", low="0 in", high="1/2 in",
                 usual=("0 in", "1/8 in"),
                 help="Off both sides of a limb together, where they are sanded too."),
        choice("last_paper", "Paper of the last strokes", _PAPERS,
               help="On the faces, before finish sanding.", default="p220", role=SHOP),
        choice("finish_paper", "Finest paper on the faces", _PAPERS, default="p320", role=SHOP),
        quantity("scratch", "Scratch depth, of the grain size", "ratio",
                 default=show(SCRATCH.low, "ratio", decimals=0), low="0 %", high="100 %",
                 usual=("2 %", "30 %"), help="An " + SCRATCH.status + ": no published figure was found.",
                 role=RULE),
    )


def finish_sanding(last_paper: str, finish_paper: str, scratch: float) -> float:
    """Return what finish sanding takes off each face [m].

    Raises:
        Refused: the finest paper is coarser than that of the last strokes.
    """
    start, finish = find_grit(last_paper), find_grit(finish_paper)
    if finish.size > start.size:
        raise Refused("finish_paper", "The finest paper is coarser than that of the last strokes: choose a "
                      "finer one, or swap the two.")
    papers = tuple([each for each in P_GRITS if each.id in LIMB_PAPERS])
    return removed_by(ladder(papers, start, finish, STEP_LIMIT), scratch)


def target_tiller() -> Input:
    """Return the input for the tiller wanted."""
    return quantity("tiller_wanted", "Tiller wanted", "length", default="1/16 in", low="-1 in", high="1 in",
                    usual=("-1/8 in", "3/8 in"),
                    help="Upper minus lower: split finger 1/8 to 1/4 in (3 to 6 mm), three fingers under "
                         "0 to 1/8 in (0 to 3 mm).")
