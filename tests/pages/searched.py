"""What readers type into the search box, and the pages of which one must be among the first three.

The words are those of hobbyists and of the trade, from memory: what somebody asks who does not know
this book's own words.
"""

WEIGHT = ("tune/weight/", "calculators/weight-reduction/", "tune/")
TILLER = ("tune/tiller/", "calculators/tiller/", "measure/tiller/")
ARROWS = ("calculators/arrow-match/", "arrows/")
LOOKS = ("inspect/", "inspect/line/", "inspect/decide/", "calculators/inspection/")
SAFETY = ("safety/",)
COATS = ("finish/", "finish/schedule/", "finish/spraying/")
ANY = ()
"""No page in particular, but something."""

QUERIES = (
    # Words that hold "in", and that word itself.
    ("in", ANY),
    ("into", ANY),
    ("crack in limb", LOOKS),
    ("chip in the glass", (*LOOKS, "repair/")),
    ("drilling into the riser", ("drill/", "calculators/insert/")),
    ("water in compressed air", ("finish/spraying/", "finish/", "finish/schedule/")),
    # Other words than this book's own.
    ("fiberglass", ("glossary/", *SAFETY)),
    ("fiberglass dust", SAFETY),
    ("superglue", (*SAFETY, "repair/pinholes/", "repair/lifted-edges/", "glossary/")),
    ("ca glue fumes", (*SAFETY, "lookup/exposure-limits/")),
    ("poundage", (*WEIGHT, "glossary/", "measure/")),
    ("fistmele", ("measure/tiller/", "measure/", "glossary/", "arrows/string/", "tune/final/")),
    ("tillering", TILLER),
    ("delaminated", ("glossary/", *LOOKS, "repair/lifted-edges/")),
    ("limb delaminating", (*LOOKS, "repair/lifted-edges/")),
    ("gpi", ARROWS),
    ("gpp", (*ARROWS, "lookup/arrow-mass/", "glossary/")),
    ("fps", (*ARROWS, "calculators/bow-model/")),
    ("dryfired bow", (*LOOKS, *SAFETY, "glossary/", "inspect/intake/")),
    ("bushing", ("calculators/insert/", "drill/", "glossary/")),
    ("2k clear coat", (*COATS, "lookup/finish-families/", *SAFETY)),
    # What somebody wants.
    ("bow too heavy", WEIGHT),
    ("reduce draw weight", WEIGHT),
    ("lower the poundage of a recurve", WEIGHT),
    ("how much to sand off", WEIGHT),
    ("how many strokes", ("tune/strokes/", "calculators/strokes/", "tune/weight/")),
    ("twisted limb", ("tune/tracking/", "calculators/tracking/", "inspect/")),
    ("string not centred", ("tune/tracking/", "calculators/tracking/")),
    ("limb alignment", ("tune/tracking/", "calculators/tracking/")),
    ("upper limb too stiff", TILLER),
    ("is my old bow safe to shoot", ("inspect/", "inspect/decide/", "safety/", "inspect/first-draw/")),
    ("hang on the wall", ("repair/retire/", "inspect/decide/")),
    ("first time stringing", ("inspect/first-draw/",)),
    ("how to use a stringer", ("inspect/first-draw/", "safety/", "glossary/", "measure/")),
    ("lines in the finish", ("inspect/line/", "inspect/")),
    ("stress lines", ("inspect/line/", "inspect/", "inspect/decide/")),
    ("stacking", ("measure/draw-curve/", "calculators/draw-curve/", "glossary/")),
    ("draw length 28 inches", ("measure/", "glossary/", "lookup/check-values/", "measure/draw-curve/")),
    ("bow scale", ("measure/", "measure/draw-curve/", "calculators/draw-curve/")),
    ("brace height", ("measure/tiller/", "measure/", "tune/final/", "glossary/")),
    ("slim the grip", ("shape/grip/", "calculators/grip/")),
    ("hand hurts grip", ("shape/grip/", "calculators/grip/")),
    ("string length", ("arrows/string/", "calculators/string/")),
    ("how many strands", ("arrows/string/", "calculators/string/")),
    ("modern string on old bow", ("arrows/string/", "calculators/string/", "lookup/strings/")),
    ("spine chart", ARROWS),
    ("arrow too stiff", ARROWS),
    ("bare shaft", (*ARROWS, "glossary/", "tune/final/", "handover/")),
    ("nocking point", ("arrows/", "tune/final/", "glossary/", "arrows/string/")),
    ("drill size for 10-24", ("lookup/threads/", "lookup/drills/", "drill/")),
    ("tap drill", ("lookup/threads/",)),
    ("quiver holes", ("drill/", "calculators/insert/")),
    ("threaded insert", ("drill/", "calculators/insert/")),
    ("fill pinholes", ("repair/pinholes/",)),
    ("glass lifting at the edge", ("repair/lifted-edges/", "inspect/")),
    ("splinter", (*LOOKS, "repair/", "safety/")),
    ("epoxy", ("calculators/epoxy/", "repair/lifted-edges/", "safety/", "drill/", "repair/")),
    ("sanding grits", ("finish/grits/", "calculators/grit/", "lookup/grits/")),
    ("how smooth before finish", ("finish/grits/", "calculators/grit/")),
    ("matte finish", ("finish/", "finish/schedule/", "lookup/finish-families/")),
    ("how thick a coat", ("calculators/finish/", "finish/schedule/", "finish/")),
    ("blushing", ("finish/spraying/", "calculators/spray-air/", "finish/")),
    ("humidity for spraying", ("finish/spraying/", "calculators/spray-air/", "lookup/dew-point/")),
    ("fumes in garage", ("finish/clearing/", "calculators/clear-air/", "safety/")),
    ("mask for spraying", ("lookup/respirators/", "safety/", "finish/spraying/")),
    ("N95", ("lookup/respirators/", "safety/")),
    ("pregnant", SAFETY),
    ("lead paint", SAFETY),
    ("fire extinguisher", SAFETY),
    ("flash point", ("lookup/solvents/", "safety/")),
    ("acetone", ("lookup/solvents/", "lookup/exposure-limits/", "safety/")),
    ("MEK", ("lookup/solvents/", "lookup/exposure-limits/", "calculators/clear-air/")),
    ("what to charge", ("calculators/quote/",)),
    ("price for refinishing", ("calculators/quote/",)),
    ("keep old lettering", ("inspect/keep-or-change/", "handover/", "finish/schedule/", "finish/")),
    ("hardwood density", ("lookup/woods/",)),
    ("decimal to fraction", ("lookup/fractions/",)),
    ("where do I start", ("begin/", "begin/which/")),
    ("tiler", TILLER),
    ("cyanoacrilate", (*SAFETY, "repair/pinholes/", "repair/lifted-edges/", "glossary/",
                       "lookup/exposure-limits/")),
)
