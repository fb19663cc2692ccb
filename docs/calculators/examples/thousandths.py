"""What each thousandth of an inch off both limbs costs in draw weight, on an invented recurve."""

from calc.mechanics.bow.bow import Bow
from calc.mechanics.bow.limb import Sanding, laminated_limb
from calc.mechanics.bow.thinning import Build, Station
from calc.mechanics.bow.unstrung import unstrung_profile
from calc.quantities import parse, show


def inches(text):
    return parse(text + " in", "length")


LENGTH = inches("24 1/2")
BASE = (inches("-1/2"), inches("8 1/2"))
SHAPE = unstrung_profile(((inches("8"), inches("-0.1")), (inches("16"), inches("-1.3")),
                          (inches("22"), inches("-4.6"))), LENGTH)
SECTIONS = (Station(inches("2"), inches("1.6"), inches("0.300")),
            Station(inches("10"), inches("1.45"), inches("0.280")),
            Station(inches("20"), inches("0.75"), inches("0.255")))
BUILD = Build(inches("0.050"), inches("0.050"), parse("6 Mpsi", "modulus"), parse("1.6 Mpsi", "modulus"))
STRETCH = Sanding(inches("1"), inches("16"), inches("2"), belly_share=0.6)


def draw_weight(removal):
    """Return the weight at 28 in with this much off each limb."""
    limb = laminated_limb(SHAPE, BASE, SECTIONS, BUILD, STRETCH, removal)
    bow = Bow(limb, limb)
    bow.brace(inches("8"))
    return bow.draw(inches("28") - inches("1 3/4")).force


start = draw_weight(0.0)
print("off each limb    weight      lost  of the weight")
print(f"{'nothing':>13} {show(start, 'force'):>9}")
for thousandths in range(1, 9):
    removal = thousandths * inches("0.001")
    weight = draw_weight(removal)
    lost, share = show(start - weight, "force", decimals=2), show(1 - weight / start, "ratio")
    print(f"{show(removal, 'thickness'):>13} {show(weight, 'force'):>9} {lost:>9} {share:>14}")
