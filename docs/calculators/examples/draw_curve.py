"""The draw curve of a bow that is nothing but numbers: an invented recurve of 64 in that pulls 53 lb."""

from calc.mechanics.bow.bow import Bow, Limb
from calc.quantities import INCH, POUND_FORCE, parse, show, show_number

# From fadeout to nock, at equal distances: angle unstrung in radians, stiffness in N m2.
ANGLES = (0.05, 0.04, 0.01, -0.03, -0.08, -0.19, -0.42, -0.74, -1.02)
STIFFNESS = (38.5, 35.5, 31.5, 27.5, 23.0, 19.5, 16.0, 12.5, 10.0)

limb = Limb(parse("22 1/2 in", "length"), (parse("-3/8 in", "length"), parse("9 1/2 in", "length")),
            ANGLES, STIFFNESS)
bow = Bow(limb, limb)
brace_height = parse("8 1/4 in", "length")
braced = bow.brace(brace_height)
print("String", show(braced.string_length, "length"), "long, tension", show(braced.tension, "force"))
print()

# A draw of 28 in ends 1 3/4 in beyond the pivot point of the grip.
last = None
print("  draw    weight  a mark for every 2 lb")
for inches in range(10, 29, 2):
    drawn = bow.draw(inches * INCH - parse("1 3/4 in", "length"), last)
    pounds = drawn.force / POUND_FORCE
    print(f"{show(inches * INCH, 'length'):>6} {show(drawn.force, 'force'):>9}  {'-' * int(pounds / 2)}")
    last = drawn

energy = drawn.stored_energy
print()
print("Stored:", show(energy, "energy") + ",", show_number(energy / drawn.force / INCH, 1), "in lb a pound")
