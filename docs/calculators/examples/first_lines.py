"""First lines: read a quantity as it is typed, show it in the other system's unit."""

from calc.quantities import parse, show, show_number

for text, kind in (("7 5/8", "length"), ("45#", "force"), ("0.006 in", "thickness"), ("520 gr", "mass")):
    value = parse(text, kind)  # inside calc everything is in SI units
    print(f"{text:>8} is {show_number(value, 6)} in SI, shown as {show(value, kind, 'metric')}")
