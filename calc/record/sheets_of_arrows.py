"""What a record may hold of the arrow that goes with the bow."""

from calc.declaring import choice, group
from calc.record.declare import FACT, Sheet, length, measure
from calc.tables import woods

ARROW = Sheet("arrow", "The arrow", "The arrow that goes with the bow.", FACT, (
    group(
        "The arrow",
        length("length", "Length", "28 1/4 in", "18 in", "38 in",
               "From the nock's throat to the front end of the shaft, the point left out."),
        measure("point_mass", "Point", "mass", "125 gr", "10 gr", "600 gr"),
        measure("insert_mass", "Insert", "mass", "0 gr", "0 gr", "300 gr", "0 for a point glued on."),
        measure("nock_mass", "Nock", "mass", "10 gr", "0 gr", "100 gr", "0 for a nock cut into the shaft."),
        measure("feather_mass", "Feathers", "mass", "28 gr", "0 gr", "150 gr", "With glue and thread."),
        length("feather_start", "Feathers begin", "1 in", "0 in", "4 in",
               "From the nock's throat to their rear end."),
        length("feather_length", "Length of the feathers", "4 in", "1/2 in", "10 in", "Along the shaft."),
        measure("mass", "Whole arrow", "mass", "470 gr", "100 gr", "1500 gr", "Ready to shoot."),
    ),
    group(
        "Its shaft, as far as it is known",
        measure("spine", "Spine weight", "force", "50 lb", "10 lb", "200 lb",
                "26 divided by the bend in inches of the 26 in test."),
        measure("deflection_28", "Bend in the 28 in test", "thickness", "0.500 in", "0.1 in", "3 in",
                "Under 1.94 lb (880 g)."),
        measure("deflection_26", "Bend in the 26 in test", "thickness", "0.520 in", "0.1 in", "3 in",
                "Under 2 lb (907 g)."),
        choice("species", "Wood", tuple([(id, woods.find(id).name) for id in woods.SHAFT_WOODS])),
        measure("wood_modulus", "Stiffness of the wood", "modulus", "1.8 Mpsi", "0.3 Mpsi", "4 Mpsi",
                "Along the grain."),
        measure("wood_density", "Density of the wood", "density", "29 lb/ft3", "8 lb/ft3", "80 lb/ft3"),
        measure("diameter", "Diameter", "thickness", "11/32 in", "0.15 in", "0.6 in",
                "Outside, at the middle."),
        measure("tube_wall", "Wall of a tube", "thickness", "0.016 in", "0.004 in", "0.2 in"),
        measure("tube_modulus", "Stiffness of a tube", "modulus", "10.4 Mpsi", "1 Mpsi", "60 Mpsi"),
        measure("tube_density", "Density of a tube", "density", "2.8 g/cm3", "0.5 g/cm3", "9 g/cm3"),
        measure("shaft_mass", "Mass of the bare shaft", "mass", "305 gr", "40 gr", "1500 gr",
                "Cut to length, without nock, feathers, insert and point."),
    ),
), ())
