"""Dust that has settled: how deep a layer may lie before it counts as a danger of fire and explosion."""

from calc.declaring import RULE, TRIAL, Input, quantity
from calc.outcome import OK, STOP, WATCH, Check, amount, check, sentence
from calc.quantities import ROUNDING
from calc.shop.air import LAYER_AREA, LAYER_SHARE, dust_layer_depth

DUST = ("agent", ("wood-dust",))


def layer_checks(
    agent: str, floor: float, bulk_density: float | None, depth: float | None, share: float | None
) -> tuple[Check, ...]:
    """Return what is said of a layer of dust.

    Args:
        agent: what is in the air.
        floor [m^2]: of the room.
        bulk_density [kg/m^3]: of the dust as it lies.
        depth [m]: of the layer; None where nobody measured.
        share [1]: of the floor's area that is covered, beams and ledges counted with it.
    """
    if agent not in DUST[1] or bulk_density is None or depth is None or share is None:
        return ()
    most = dust_layer_depth(bulk_density)
    area, allowed = share * floor, min(LAYER_SHARE * floor, LAYER_AREA)
    shown = (amount("thickness", depth), amount("area", area), amount("thickness", most),
             amount("ratio", LAYER_SHARE, 0), amount("area", allowed))
    too_deep = depth > most * (1 + ROUNDING)
    if too_deep and area > allowed * (1 + ROUNDING):
        return (check("layer", STOP, sentence(
            "Stop and clean: {} of dust over {} is more than {} deep over more than {} of the floor or {}. A "
            "layer like that counts as a danger of explosion. Vacuum or wipe; no compressed air, no dry "
            "broom.", *shown)),)
    if depth * area > most * allowed * (1 + ROUNDING):
        return (check("layer", STOP, sentence(
            "Stop and clean: {} of dust over {} is as much as {} over {} of the floor, {}, or more. So much "
            "dust counts as a danger of explosion. Vacuum or wipe; no compressed air, no dry broom.",
            *shown)),)
    if too_deep:
        return (check("layer", WATCH, sentence(
            "The layer of {} over {} is deeper than {}. It is no large area yet: clean it today.",
            *shown[:3])),)
    return (check("layer", OK, sentence(
        "The layer of {} over {} is within {}, and there is little of it. Clean all the same.",
        *shown[:3])),)


def layer_inputs() -> tuple[Input, Input, Input]:
    """Return the questions about dust that has settled."""
    return (
        quantity("dust_depth", "Depth of the dust that lies", "thickness", default="", low="0 in",
                 high="6 in", usual=("0 in", "0.5 in"),
                 help="On beams, lamps and ledges as well. Empty: not judged.", optional=True, when=DUST,
                 role=TRIAL),
        quantity("dust_share", "Covered, of the floor's area", "ratio", default="5 %", low="0 %",
                 high="300 %", usual=("0 %", "100 %"), help="Beams, ledges and machines counted with it.",
                 when=DUST, role=TRIAL),
        quantity("bulk_density", "Weight of the dust as it lies", "density", default="75 lb/ft3",
                 low="1 lb/ft3", high="200 lb/ft3", usual=("5 lb/ft3", "75 lb/ft3"),
                 help="Lighter dust is allowed a deeper layer. Weigh a cup of it; 75 lb/ft3 "
                      "(1.2 g/cm3) takes no allowance.", when=DUST, role=RULE),
    )
