"""Which fact of a record each input of a calculator asks for: by what it means, never by its id.

Inputs with the role of a rule or of a trial come from no record. Kept apart from the calculators, so that a
page that only answers a link fetches none of it.
"""

from calc.tables.findings import FINDINGS, LOOKS

_LENGTHS = (
    ("brace_height", "reading.brace"),
    ("bow_length", "bow.length"),
    ("riser_length", "bow.riser_length"),
)
_FAMILY = (("family", "bow.family"),)
_READ_AT = (("measured", "reading.measured"), ("from_string_end", "reading.from_string_end"))
_LIMBS = (
    ("upper_stations", "reading.stations_upper"),
    ("lower_stations", "reading.stations_lower"),
    ("glass_back", "reading.glass_back"),
    ("glass_belly", "reading.glass_belly"),
    ("core", "derived.core"),
    ("core_modulus", "bow.core_modulus"),
    ("profile", "bow.profile"),
    ("throat", "bow.throat"),
)
_GLASS_CAME = (
    ("glass_new", "derived.glass_new"),
    ("came_back", "derived.glass_back_came"),
    ("came_belly", "derived.glass_belly_came"),
    ("strokes_since", "derived.strokes_since_read"),
)
_HOW_WELL_READ = (
    ("weight_error", "shop.weight_error"),
    ("tiller_error", "shop.tiller_error"),
    ("thickness_error", "shop.thickness_error"),
    ("glass_error", "shop.glass_error"),
)


def _line(limb: str) -> tuple[tuple[str, str], ...]:
    alike = ("_offset_tip", "_height_tip", "_offset_riser", "_groove_outer", "_groove_inner", "_unstrung",
             "_sticks")
    return (tuple([(limb + each, "reading." + limb + each) for each in alike])
            + ((limb + "_height_riser", "derived." + limb + "_height_riser"),))


def _same(sheet: str, *names: str) -> tuple[tuple[str, str], ...]:
    return tuple([(each, sheet + "." + each) for each in names])


BOUND = {
    "inspection": tuple([(each.id, "derived.look") for each in LOOKS]
                        + [(each.id, "derived.finding") for each in FINDINGS]),
    "tiller": (
        ("upper", "reading.upper"),
        ("lower", "reading.lower"),
        ("hold", "archer.hold"),
        ("draw_weight", "derived.weight_now"),
        ("weight_error", "shop.weight_error"),
        ("tiller_error", "shop.tiller_error"),
    ) + _READ_AT + _LENGTHS + _FAMILY,
    "weight-reduction": (
        ("weight_now", "derived.weight_now"),
        ("weight_came", "derived.weight_as_it_came"),
        ("weight_wanted", "derived.weight_wanted"),
        ("draw_length", "derived.draw_now"),
        ("tiller_now", "derived.tiller"),
        ("tiller_wanted", "agreed.tiller"),
        ("weight_read", "derived.weight_when_read"),
        ("edge_now", "derived.edge_now"),
        ("edge_width", "agreed.edge_width"),
        ("last_paper", "derived.last_paper"),
        ("finish_paper", "shop.finish_paper"),
    ) + _HOW_WELL_READ + _READ_AT + _GLASS_CAME + _LIMBS + _LENGTHS + _FAMILY,
    "arrow-match": (
        ("old_weight", "derived.weight_came_at_28"),
        ("new_weight", "derived.weight_now_at_28"),
        ("draw_length", "archer.draw"),
        ("readings", "derived.curve_now"),
        ("old_readings", "derived.curve_came"),
        ("reading_error", "shop.curve_error"),
        ("deflection", "derived.bend"),
        ("string_material", "string.material"),
        ("window", "bow.window"),
        ("test_mass", "derived.shot_mass"),
        ("test_speed", "derived.shot_speed"),
        ("weight_error", "shop.weight_error"),
        ("upper_stations", "reading.stations_upper"),
        ("lower_stations", "reading.stations_lower"),
        ("limb_bow_length", "bow.length"),
        ("limb_riser_length", "bow.riser_length"),
    ) + _LENGTHS + _FAMILY + _same(
        "arrow", "spine", "species", "wood_modulus", "wood_density", "diameter", "tube_wall", "tube_modulus",
        "tube_density", "shaft_mass", "length", "point_mass", "insert_mass", "nock_mass", "feather_mass",
        "feather_start", "feather_length"),
    "draw-curve": (
        ("readings", "reading.curve"),
        ("measured_from", "derived.curve_basis"),
        ("brace_height", "reading.brace"),
        ("reading_error", "shop.curve_error"),
    ),
    "strokes": (
        ("log", "derived.stroke_log"),
        ("offsets", "derived.stroke_offsets"),
        ("weight_wanted", "derived.weight_wanted"),
        ("tiller_wanted", "agreed.tiller"),
        ("weight_error", "shop.weight_error"),
        ("tiller_error", "shop.tiller_error"),
        ("upper_lost", "derived.upper_lost"),
        ("lower_lost", "derived.lower_lost"),
        ("thickness_error", "shop.thickness_error"),
    ),
    "edges": (
        ("weight_now", "derived.weight_now"),
        ("weight_wanted", "derived.weight_wanted"),
        ("draw_length", "derived.draw_now"),
        ("tiller_now", "derived.tiller"),
        ("edge_now", "derived.edge_now"),
        ("edge_width", "agreed.edge_width"),
        ("last_paper", "derived.last_paper"),
        ("finish_paper", "shop.finish_paper"),
    ) + _READ_AT + _LIMBS + _LENGTHS + _FAMILY,
    "next-batch": (
        ("log", "derived.stroke_log"),
        ("upper_lost", "derived.upper_lost_in_log"),
        ("lower_lost", "derived.lower_lost_in_log"),
        ("glass_now_back", "derived.glass_back_in_log"),
        ("glass_now_belly", "derived.glass_belly_in_log"),
        ("weight_wanted", "derived.weight_wanted"),
        ("tiller_wanted", "agreed.tiller"),
        ("draw_length", "derived.draw_now"),
        ("edge_now", "derived.edge_now"),
        ("edge_width", "agreed.edge_width"),
        ("last_paper", "derived.last_paper"),
        ("finish_paper", "shop.finish_paper"),
        ("glass_new", "derived.glass_new"),
        ("came_back", "derived.glass_back_came"),
        ("came_belly", "derived.glass_belly_came"),
        ("upper_stations", "derived.stations_upper_at_log"),
        ("lower_stations", "derived.stations_lower_at_log"),
        ("glass_back", "derived.glass_back_at_log"),
        ("glass_belly", "derived.glass_belly_at_log"),
        ("core", "derived.core"),
        ("core_modulus", "bow.core_modulus"),
        ("profile", "bow.profile"),
        ("throat", "bow.throat"),
    ) + _HOW_WELL_READ + _READ_AT + _LENGTHS + _FAMILY,
    "bow-model": (
        ("weight", "derived.weight_now"),
        ("draw_length", "derived.draw_now"),
        ("reading_error", "shop.curve_error"),
        ("tiller", "derived.tiller"),
        ("readings", "reading.curve"),
    ) + _HOW_WELL_READ + _READ_AT + _GLASS_CAME + _LIMBS + _LENGTHS + _FAMILY,
    "photograph": (
        ("weight", "derived.weight_now"),
        ("draw_length", "derived.draw_now"),
        ("tiller", "derived.tiller"),
    ) + _LIMBS + _LENGTHS + _FAMILY,
    "insert": (("error", "shop.drill_error"), ("drill_set", "shop.drill_set"),
               ("wood", "derived.riser_wood")) + _same(
        "hole", "insert_length", "bit_diameter", "point", "spur", "own_angle", "thickness", "edge", "fit",
        "insert_diameter", "outer_thread", "screw", "screw_length", "held", "outside", "inside",
        "spacing_wanted"),
    "grip": (
        ("wood", "derived.riser_wood"),
        ("own_strength", "bow.riser_strength"),
        ("draw_weight", "derived.weight_at_archers_draw"),
        ("lived_weight", "derived.lived_weight"),
        ("draw_length", "archer.draw"),
        ("between", "reading.string_angle"),
    ) + _LENGTHS + _same("section", "shape", "before", "after", "hole", "hole_diameter", "hole_height",
                         "hole_from_back"),
    "epoxy": (("temperature", "air.temperature"),),
    "wood-movement": (("moisture_now", "air.wood_moisture"), ("humidity_from", "air.humidity"),
                      ("temperature", "air.temperature")),
    "tracking": _line("upper") + _line("lower") + (
        ("groove_length", "bow.groove_length"),
        ("weight", "derived.weight_now"),
        ("draw_length", "derived.draw_now"),
    ) + _GLASS_CAME + _LIMBS + _LENGTHS + _FAMILY,
    "string": (
        ("bow_length", "bow.marked_length"),
        ("draw_weight", "derived.weight_at_archers_draw"),
        ("tips", "bow.tips"),
        ("old", "bow.old"),
        ("material", "string.material"),
    ),
    "quote": (
        ("weight_now", "derived.weight_now"),
        ("weight_wanted", "derived.weight_wanted"),
        ("draw_length", "derived.draw_now"),
        ("tiller_now", "derived.tiller"),
        ("tiller_wanted", "agreed.tiller"),
        ("ready_by", "agreed.ready_by"),
    ) + _same("shop", "rate", "markup", "tax") + _same("quote", "tasks", "materials", "holds_until"),
    "grit": (
        ("scale", "shop.grit_scale"),
        ("shelf", "shop.grit_shelf"),
        ("start_p", "sanding.first_p"),
        ("finish_p", "sanding.last_p"),
        ("start_cami", "sanding.first_cami"),
        ("finish_cami", "sanding.last_cami"),
    ) + _same("sanding", "material", "wet"),
    "finish": (
        ("bow_length", "bow.length_back"),
        ("width_fadeout", "derived.width_fadeout"),
        ("width_tip", "reading.width_tip"),
        ("limb_thickness", "derived.limb_thickness"),
        ("lettering", "derived.lettered"),
        ("temperature", "air.temperature"),
        ("laid", "derived.laid"),
    ) + _same("coats", "seal_coats", "build_coats", "over_coats", "sheen_coats", "start")
    + _same("bow", "riser_length", "riser_girth") + _same("agreed", "gloss", "sheen") + _same(
        "product", "family", "seal_with", "solids", "reducer", "recoat_from", "recoat_to", "cure",
        "least_temperature", "parts_by", "part_a", "part_b", "pot_life", "density_a", "density_b",
        "density_thinner",
    ) + _same("shop", "method", "transfer", "left_over", "opens", "closes", "days", "closed", "coat_time"),
    "spray-air": (("air_temperature", "air.temperature"),) + _same(
        "air", "humidity", "surface_temperature", "rising", "wood_moisture",
    ) + _same("product", "family", "least_temperature"),
    "clear-air": (
        ("length", "shop.room_length"),
        ("width", "shop.room_width"),
        ("height", "shop.room_height"),
        ("density", "product.solvent_density"),
        ("coat_solids", "product.solids"),
        ("coat_reducer", "product.reducer"),
        ("room_temperature", "air.temperature"),
    ) + _same("shop", "flow", "changes", "booth", "booth_width", "booth_height", "draught") + _same(
        "product", "solvent", "molar_mass", "lower_limit", "breathing_limit",
    ) + _same("air", "agent", "liquid", "minutes"),
}
"""(input, fact) by calculator. `derived` facts are worked out by `fill`."""

MAPPED = (
    ("arrow-match", "string_material", (("polyester", "polyester"), ("aramid", "low_stretch"),
                                        ("polyethylene", "low_stretch"))),
)
"""(calculator, input, (word of the record, word of the calculator) pairs), where the words differ."""

READ_OFF = {
    "photograph": (
        ("upper", "reading.upper"),
        ("lower", "reading.lower"),
        ("brace_height", "reading.brace"),
        ("profile", "bow.profile"),
        ("upper_profile", "bow.profile_upper"),
        ("lower_profile", "bow.profile_lower"),
        ("throat", "bow.throat"),
        ("riser_length", "bow.riser_length"),
        ("bow_length", "bow.length"),
    ),
}
"""(result, fact) by calculator: what an answer reads off a bow, so that a record may take it as a reading. A
result has half of its 95 % range under its own id with `_error` behind it."""

ERROR_OF = (("profile", "shape_error"), ("upper_profile", "limb_shape_error"),
            ("lower_profile", "limb_shape_error"))
"""(result, the one that holds its error), where that has another name."""

GOES_WITH = (("reading.upper", "reading.measured", "fadeout"),)
"""(fact, other fact, its text): what is so wherever the first was read off."""

_OF_ONE_PICTURE = (
    "what", "picture_width", "picture_height", "marking_error", "found_error", "target", "sheets", "dots",
    "rule_marks", "board_error", "straight", "distance", "standoff", "standoff_tip", "standoff_string",
    "belly_faces", "upper_limb", "lower_limb", "drawn_upper", "drawn_lower", "fadeouts_again",
    "throat_marks", "string_marks", "string_line", "height_riser", "height_tip", "picture_draw",
)

NOT_FROM_A_RECORD = tuple([
    ("photograph", each, "of one picture, which no record holds as figures") for each in _OF_ONE_PICTURE]) + (
    ("grip", "hand_length", "no sheet of the archer asks for the hand"),
    ("insert", "centre_point", "measured at the bit in hand"),
    ("clear-air", "mixture", "the parts of a thinner stand in its data sheet; a record keeps the nearest"),
    ("strokes", "model_weight", "what Weight reduction foretells for a removal: no reading"),
    ("strokes", "model_tiller", "what Weight reduction foretells for a removal: no reading"),
)
"""(calculator, input, why): facts that no record can know."""

NARROWER = (
    ("derived.weight_now_at_28", "arrow-match", "an arrow is matched to no bow of less than 10 lb; a reading "
     "at a short draw may be less"),
    ("derived.weight_came_at_28", "arrow-match", "as above"),
)
"""(fact, calculator, why): where a record takes what a calculator that asks for the fact refuses."""
