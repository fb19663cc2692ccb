"""One question put to a calculator of this book several times: same names, same answers as on its page."""

from textwrap import fill

from calc import answer, catalog
from calc.outcome import say

print(fill("Calculators: " + ", ".join(catalog.IDS), 72, break_on_hyphens=False))
print()

tiller = catalog.find("tiller")
for lower in ("7 5/16 in", "7 9/16 in", "7 11/16 in", "8 in"):
    job = answer.work_out(tiller, [["upper", "7 5/8 in"], ["lower", lower]])
    print(fill("Lower " + lower + ": " + say(job.outcome.headline, "imperial"), 72))
    print()

# What cannot be meant is refused in words, never guessed.
job = answer.work_out(tiller, [["upper", "7 ft"]])
for problem in job.problems:
    print(fill("Refused: " + problem.message, 72))
