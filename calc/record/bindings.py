"""Which fact of a record each input of a calculator asks for: by what it means, never by its id.

Inputs with the role of a rule or of a trial come from no record. Kept apart from the calculators, so that a
page that only answers a link fetches none of it.
"""

BOUND = {
    "tiller": (
        ("upper", "reading.upper"),
        ("lower", "reading.lower"),
        ("measured", "reading.measured"),
        ("from_string_end", "reading.from_string_end"),
        ("hold", "archer.hold"),
        ("draw_weight", "reading.weight"),
        ("brace_height", "reading.brace"),
        ("bow_length", "bow.length"),
        ("riser_length", "bow.riser_length"),
        ("family", "bow.family"),
    ),
    "weight-reduction": (
        ("weight_now", "reading.weight"),
        ("weight_wanted", "agreed.weight"),
        ("draw_length", "reading.at_draw"),
        ("tiller_now", "derived.tiller"),
        ("tiller_wanted", "agreed.tiller"),
        ("measured", "reading.measured"),
        ("from_string_end", "reading.from_string_end"),
        ("upper_stations", "reading.stations_upper"),
        ("lower_stations", "reading.stations_lower"),
        ("glass_back", "reading.glass_back"),
        ("glass_belly", "reading.glass_belly"),
        ("brace_height", "reading.brace"),
        ("bow_length", "bow.length"),
        ("riser_length", "bow.riser_length"),
        ("family", "bow.family"),
        ("profile", "bow.profile"),
        ("throat", "bow.throat"),
    ),
    "strokes": (
        ("log", "derived.stroke_log"),
        ("weight_wanted", "agreed.weight"),
        ("tiller_wanted", "agreed.tiller"),
        ("weight_error", "shop.weight_error"),
        ("tiller_error", "shop.tiller_error"),
    ),
    "draw-curve": (
        ("readings", "reading.curve"),
        ("brace_height", "reading.brace"),
        ("reading_error", "shop.weight_error"),
    ),
    "string": (
        ("bow_length", "bow.marked_length"),
        ("draw_weight", "derived.weight_at_archers_draw"),
        ("tips", "bow.tips"),
        ("old", "bow.old"),
        ("material", "string.material"),
    ),
}
"""(input, fact) by calculator. `derived` facts are worked out by `fill`."""
