"""What a record may hold of coats and lettering, of hours and shots, and of photographs."""

from calc.declaring import choice, count, date, group, switch
from calc.record.declare import DEED, FACT, MOMENT, Sheet, length, measure, note
from calc.tables.pictures import PICTURES
from calc.tables.work import TASKS

ROLES = (("seal", "A seal coat"), ("build", "A build coat"), ("sheen", "A last coat, for the gloss"))
"""Kinds of coat, as the calculator of the finish calls them."""

LAID = "laid"
OFF = "off"

COATS = Sheet("coats", "The coats to lay", "How many coats the finish is to have, and from when.", FACT, (
    group(
        "The coats to lay",
        count("seal_coats", "Seal coats", default=1, low=0, high=6),
        count("build_coats", "Build coats under the lettering", default=2, low=0, high=20),
        count("over_coats", "Build coats over the lettering", default=2, low=0, high=20),
        count("sheen_coats", "Last coats, for the gloss wanted", default=1, low=0, high=6),
        measure("wet_film", "Wet film of one coat", "film", "1.5 mil", "0.1 mil", "20 mil"),
        date("start", "Next coat not before", default="2026-05-04", low="1990-01-01", high="2199-12-31"),
    ),
), ())

COAT = Sheet("coat", "A coat laid", "A coat as it was laid; the moment is when it was begun.", DEED, (
    group(
        "The coat",
        choice("role", "It is", ROLES),
        choice("standing", "It was", ((LAID, "Laid on"), (OFF, "Taken off again, with all below it"))),
        measure("took", "It took", "hours", "1 h", "0.05 h", "12 h", "With mixing and cleaning up."),
        measure("wet_film", "Wet film", "film", "1.5 mil", "0.1 mil", "20 mil", "As the comb read."),
        switch("scuffed", "The film below was sanded dull first", default=False),
        note("trouble", "What went wrong", "one run near the upper tip"),
    ),
    group(
        "The air at that time",
        measure("temperature", "Temperature", "temperature", "70 °F", "32 °F", "110 °F",
                "At the bench, out of the sun."),
        measure("humidity", "Relative humidity", "ratio", "60 %", "1 %", "100 %"),
        measure("surface_temperature", "Temperature of the work", "temperature", "70 °F", "0 °F", "130 °F"),
    ),
), ())

LETTERING = Sheet("lettering", "The lettering", "What was lettered on the bow, and when.", DEED, (
    group(
        "The lettering",
        note("text", "It reads", "64 in, 45 lb at 28 in"),
        measure("weight", "Weight that it names", "force", "45 lb", "5 lb", "150 lb"),
        length("at_draw", "At a draw of", "28 in", "16 in", "34 in"),
        note("place", "Where", "upper limb, belly, below the fadeout"),
    ),
), ())

SHOTS = Sheet("shots", "Shots", "Shots with the bow, and what was looked at after them.", DEED, (
    group(
        "The shots",
        count("count", "Shots", default=20, low=1, high=2000),
        note("looked_at", "Looked at after them", "glass, tips, the line of the string"),
    ),
), ())

HOURS = Sheet("hours", "Hours", "How long a piece of the work took.", MOMENT, (
    group(
        "The hours",
        choice("task", "Task", TASKS),
        measure("hours", "It took", "hours", "1.5 h", "0.05 h", "24 h"),
    ),
), ("hours",))

ON_SHEET = "record-sheet"

PHOTO = Sheet("photo", "A photograph", "A picture of the bow, with the entry that it belongs to.", MOMENT, (
    group(
        "The photograph",
        choice("shows", "It shows, as the bow came", PICTURES),
        note("what", "In words", "a hair line beside the lettering"),
        note("place", "Where on the bow", "6 in from the fadeout"),
        choice("print", "It is printed", ((ON_SHEET, "On the record sheet, which has room for three"),)),
        note("file", "Its file", "01k2f7m3q9xw4t"),
        note("sum", "SHA-256 of its file", "64 figures and letters from a to f"),
        note("entry", "The entry that it belongs to", "01k2f7m3q9xw4t"),
    ),
), ("shows", "what", "place", "print", "file", "sum", "entry"))
"""All of it is private: nobody can tell beforehand what a picture shows of its owner."""

UNSPOKEN = ("photo.file", "photo.sum", "photo.entry")
"""Facts that tie a picture to its entry and say nothing to people."""
