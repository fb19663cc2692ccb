"""What a record may hold of the finish, the air, the price and the shop."""

from calc.declaring import Input, choice, count, date, group, quantity, rows, switch
from calc.record.declare import FACT, MOMENT, Sheet, length, measure, note
from calc.tables.finish_families import FAMILIES, METHODS
from calc.tables.grits import LIMB_PAPERS, SCALE_NAMES
from calc.tables.respirators import NEEDS
from calc.tables.solvents import SOLVENTS
from calc.tables.work import ITEMS, TASKS


def _hours(id: str, label: str, example: str, low: str, high: str, help: str = "") -> Input:
    return measure(id, label, "hours", example, low, high, help)


def _density(id: str, label: str) -> Input:
    return measure(id, label, "liquid_density", "1.0 kg/l", "4 lb/gal", "20 lb/gal")


PRODUCT = Sheet("product", "The finish", "The product that is laid on, by its own sheet.", FACT, (
    group(
        "What it is",
        note("name", "Name on the can", "as it says"),
        choice("family", "Family", tuple([(each.id, each.name) for each in FAMILIES])),
        choice("seal_with", "Seal coat", (("same", "Of the same"), ("shellac", "Of shellac"))),
        measure("solids", "Solids by volume", "ratio", "45 %", "3 %", "100 %"),
        measure("reducer", "Reducer, of the product's volume", "ratio", "10 %", "0 %", "200 %"),
        measure("least_temperature", "Lowest temperature", "temperature", "55 °F", "20 °F", "90 °F"),
        note("batch", "Batch", "as it says on the can"),
    ),
    group(
        "Its times",
        _hours("recoat_from", "Recoat from", "4 h", "0.1 h", "720 h"),
        _hours("recoat_to", "Recoat until", "24 h", "0.1 h", "2000 h"),
        _hours("lettering_dry", "Lettering dries", "12 h", "0 h", "200 h"),
        measure("cure", "Cure before stringing", "days", "14 d", "0.1 d", "120 d"),
        _hours("pot_life", "A mix lasts", "4 h", "0.05 h", "240 h"),
    ),
    group(
        "Its parts",
        choice("parts_by", "Ratio of A to B is by", (("volume", "Volume"), ("weight", "Weight"))),
        measure("part_a", "Parts of A", "number", "2", "0.1", "1000"),
        measure("part_b", "Parts of B", "number", "1", "0.01", "1000"),
        _density("density_a", "Density of the product, or of A"),
        _density("density_b", "Density of B"),
        _density("density_thinner", "Density of the thinner"),
    ),
    group(
        "Its solvent",
        choice("solvent", "Solvent", tuple([(each.id, each.name) for each in SOLVENTS])
               + (("own", "Another, by its data sheet"),)),
        measure("solvent_density", "Density of the liquid", "density", "0.87 g/cm3", "0.5 g/cm3", "2 g/cm3"),
        measure("molar_mass", "Molar mass", "molar_mass", "100 g/mol", "15 g/mol", "500 g/mol"),
        measure("lower_limit", "Lower flammable limit", "concentration", "1 %", "0.1 %", "20 %",
                "In section 9 of the data sheet."),
        measure("breathing_limit", "Limit for breathing", "concentration", "20 ppm", "0.001 ppm", "10000 ppm",
                "The lowest in section 8 of the data sheet."),
    ),
), ("name", "batch"))

AIR = Sheet("air", "The air", "Air and work as they were read at one time.", MOMENT, (
    group(
        "Air and work",
        measure("temperature", "Temperature", "temperature", "70 °F", "32 °F", "110 °F",
                "At the bench, out of the sun."),
        measure("humidity", "Relative humidity", "ratio", "60 %", "1 %", "100 %",
                "After a quarter of an hour at the same place."),
        measure("surface_temperature", "Temperature of the work", "temperature", "70 °F", "0 °F", "130 °F"),
        switch("rising", "Work and air are not getting colder", default=True),
        measure("wood_moisture", "Moisture of the bare wood", "ratio", "8 %", "2 %", "40 %"),
    ),
    group(
        "What gets into it",
        choice("agent", "What is in the air", tuple([(each.agent, each.name) for each in NEEDS])),
        measure("liquid", "Liquid that evaporates", "volume", "3 fl oz", "0.01 fl oz", "5 gal"),
        measure("minutes", "Over how long", "minutes", "15 min", "1 min", "1440 min"),
    ),
), ())

QUOTE = Sheet("quote", "What the work takes", "Hours and material, as they were quoted.", FACT, (
    group(
        "Work and material",
        rows("tasks", "Tasks", (
            choice("task", "Task", TASKS),
            quantity("low", "If all goes well", "hours", default="1 h", low="0 h", high="200 h"),
            quantity("likely", "Most likely", "hours", default="1 h", low="0 h", high="200 h"),
            quantity("high", "If much goes wrong", "hours", default="2 h", low="0 h", high="200 h"),
        ), default="inspect:0.5h:1h:1.5h;tune:2.5h:3.5h:6h", fewest=1, most=14),
        rows("materials", "Materials", (
            choice("item", "Item", ITEMS),
            quantity("cost", "Cost", "money", default="20", low="0", high="10000"),
        ), default="finish:31;string:18", fewest=1, most=8),
        date("holds_until", "The offer holds until", default="2026-05-29", low="2020-01-01",
             high="2099-12-31"),
    ),
), ("tasks", "materials"))

SHOP = Sheet("shop", "The shop", "What holds for every bow on this bench.", FACT, (
    group(
        "What it reads with",
        measure("weight_error", "Error of the scale", "force", "1/4 lb", "0.02 lb", "3 lb"),
        measure("curve_error", "Error of one reading of a draw curve", "force", "1/8 lb", "0 lb", "3 lb"),
        length("tiller_error", "Error of a tiller reading", "1/32 in", "0.005 in", "1/4 in"),
        measure("thickness_error", "Error of a thickness", "thickness", "0.0005 in", "0 in", "0.010 in"),
        measure("glass_error", "Error of a face's glass", "thickness", "0.003 in", "0 in", "0.015 in"),
        length("drill_error", "A drilled depth may be out by", "1/32 in", "0 in", "1/2 in"),
    ),
    group(
        "What is at hand",
        choice("drill_set", "Drills", (("units", "As the units of the page"), ("imperial", "Inch sizes"),
                                       ("metric", "Metric sizes"))),
        choice("grit_scale", "Scale of the papers", SCALE_NAMES),
        choice("grit_shelf", "Grades", (("shop", "The usual ones"), ("all", "All of the scale"))),
        choice("finish_paper", "Finest paper on the faces", tuple([(id, id.upper()) for id in LIMB_PAPERS])),
        choice("method", "Finish is laid on with", tuple([(each.id, each.name) for each in METHODS])),
        measure("transfer", "Share of it that lands on the bow", "ratio", "55 %", "5 %", "100 %"),
        measure("left_over", "Left in cup and gun, each coat", "volume", "0.5 fl oz", "0 fl oz", "32 fl oz"),
    ),
    group(
        "When it works",
        count("opens", "Work begins at the hour", default=9, low=0, high=23),
        count("closes", "Work ends at the hour", default=18, low=1, high=24),
        choice("days", "Days worked", (("six", "Monday to Saturday"), ("five", "Monday to Friday"),
                                       ("all", "All days"), ("weekend", "Saturday and Sunday"))),
        rows("closed", "Days with other hours", (
            date("day", "Day", default="2026-05-14", low="1990-01-01", high="2199-12-31"),
            count("opens", "From the hour", default=0, low=0, high=24),
            count("closes", "To the hour", default=0, low=0, high=24),
        ), default="2026-05-14:0:0", fewest=0, most=60, help="0 and 0: closed all day."),
        _hours("coat_time", "One coat takes", "1 h", "0.1 h", "12 h"),
    ),
    group(
        "What it asks",
        measure("rate", "Price of an hour", "hourly_rate", "40", "0", "1000"),
        measure("markup", "Mark-up on material", "ratio", "10 %", "0 %", "200 %"),
        measure("tax", "Tax", "ratio", "0 %", "0 %", "50 %"),
    ),
    group(
        "The room",
        measure("room_length", "Length of the room", "room_length", "18 ft", "3 ft", "200 ft"),
        measure("room_width", "Width of the room", "room_length", "14 ft", "3 ft", "200 ft"),
        measure("room_height", "Height of the room", "room_length", "9 ft", "4 ft", "60 ft"),
        measure("flow", "Fresh air that the fan brings", "flow", "600 cfm", "5 cfm", "50000 cfm"),
        measure("changes", "Air changes", "air_changes", "6 per hour", "0.1 per hour", "200 per hour"),
        choice("booth", "Booth", (("none", "None"), ("small", "Small, for one bow"),
                                  ("large", "Large, walk-in"))),
        measure("booth_width", "Width of its open face", "room_length", "4 ft", "1 ft", "40 ft"),
        measure("booth_height", "Height of its open face", "room_length", "4 ft", "1 ft", "20 ft"),
        choice("draught", "Draught across its face", (("quiet", "Up to 50 ft/min"),
                                                      ("draughty", "Up to 100 ft/min"))),
    ),
), ("rate", "markup", "tax"))
