"""Spray air: dew point, how far the work is above it, what the wood settles at; go or wait."""

from calc.declaring import (
    RULE,
    Calculator,
    group,
    quantity,
    result,
    switch,
)
from calc.finishes.product import (
    OWN,
    cold_checks,
    family_choice,
    hazard_checks,
    least_temperature_input,
)
from calc.finishes.product import least_temperature as least_of
from calc.outcome import (
    OK,
    STOP,
    WATCH,
    Axis,
    Chart,
    Check,
    Column,
    Line,
    Outcome,
    Sentence,
    Table,
    amount,
    check,
    sentence,
)
from calc.quantities import ROUNDING
from calc.shop.air import (
    IMPERIAL_MARGIN,
    METRIC_MARGIN,
    dew_point,
    dew_point_error,
    relative_humidity_from_dew_point,
)
from calc.shop.moisture import AT_REST_WITHIN, equilibrium_moisture_content
from calc.tables import practice
from calc.tables.finish_families import find

HYGROMETER_ERRORS = (0.03, 0.05)
"""How far a household hygrometer is out: from the one to the other (common practice)."""

AT_IT = 0.05  # K, shown as 0.0
MOST_HEAT = practice.find("bow-heat").high

LOWEST_ON_CHART = 20
HUMIDITIES = tuple([percent / 100 for percent in range(LOWEST_ON_CHART, 101, 5)])


def compute(
    air_temperature: float,
    humidity: float,
    surface_temperature: float | None,
    rising: bool,
    wood_moisture: float | None,
    humidity_limit: float,
    family: str,
    least_temperature: float | None,
) -> Outcome:
    """Return dew point, margin and wood moisture, and whether to go or to wait."""
    surface = air_temperature if surface_temperature is None else surface_temperature
    dew = dew_point(air_temperature, humidity)
    margin = surface - dew
    moisture = equilibrium_moisture_content(air_temperature, humidity)
    highest = _highest_humidity(air_temperature, surface)
    errors = _dew_point_errors(air_temperature, humidity)
    product = "this product" if family == OWN else find(family).name
    checks = (
        _margin_checks(margin, rising)
        + _hygrometer_checks(air_temperature, humidity, surface)
        + _condition_checks(air_temperature, surface, humidity, humidity_limit)
        + cold_checks(min(air_temperature, surface), least_of(family, least_temperature), product)
        + _unknown_checks(family, least_temperature)
        + hazard_checks(family)
        + _moisture_checks(wood_moisture, moisture)
    )
    return Outcome(
        headline=_headline(checks, margin, dew),
        values=(
            ("dew_point", dew),
            ("margin", margin),
            ("moisture_content", moisture),
            ("highest_humidity", highest),
            ("over_metric", margin - METRIC_MARGIN),
            ("over_imperial", margin - IMPERIAL_MARGIN),
            ("dew_point_error", errors[1]),
            ("least_temperature_used", least_of(family, least_temperature)),
        ),
        checks=checks,
        tables=(_humidity_table(air_temperature, surface),),
        charts=(_margin_chart(air_temperature, surface, humidity, margin), _moisture_chart(air_temperature)),
        assumptions=_assumptions(surface_temperature, errors),
    )


def _dew_point_errors(air: float, humidity: float) -> tuple[float | None, float | None]:
    """Return how far the dew point is out by each error of the hygrometer, None where nothing can be said."""
    small, large = [dew_point_error(air, humidity, each) if humidity > each else None
                    for each in HYGROMETER_ERRORS]
    return small, large


def _highest_humidity(air: float, surface: float) -> float:
    """Return the humidity at which this surface is just the larger of both margins above the dew point."""
    return relative_humidity_from_dew_point(air, min(air, surface - METRIC_MARGIN))


# What is said --------------------------------------------------------------------


def _headline(checks: tuple[Check, ...], margin: float, dew: float) -> Sentence:
    stops = [each for each in checks if each.level == STOP]
    kind = "temperature_difference"
    others = [each for each in stops if each.id != "margin"]
    why = " " + _because(others) + "." if others else ""
    if abs(margin) < AT_IT:
        return sentence("Wait: the surface is at the dew point, {}, and water condenses on it." + why,
                        amount("temperature", dew, 1))
    if margin <= 0:
        return sentence("Wait: the dew point is {} and the surface {} below it, so water condenses on it."
                        + why, amount("temperature", dew, 1), amount(kind, -margin))
    if stops:
        return sentence("Wait: dew point {}, surface {} above it. " + _because(stops) + ".",
                        amount("temperature", dew, 1), amount(kind, margin))
    if margin < METRIC_MARGIN - ROUNDING:
        return sentence("Wait, or warm the work: dew point {}, and the surface is {} above it, less than "
                        "the 3 °C (5.4 °F) that it should be.",
                        amount("temperature", dew, 1), amount(kind, margin))
    return sentence("Go, as far as the air goes: dew point {}, and the surface is {} above it.",
                    amount("temperature", dew, 1), amount(kind, margin))


def _because(stops: list[Check]) -> str:
    reasons = {"margin": "The surface is too near the dew point", "humidity": "The air is too damp",
               "cold": "It is too cold", "hot": "It is too hot for a bow's glue lines"}
    words = [reasons[each.id] for each in stops]
    return "; ".join([words[0]] + [word[0].lower() + word[1:] for word in words[1:]])


def _margin_checks(margin: float, rising: bool) -> tuple[Check, ...]:
    shown = amount("temperature_difference", margin)
    if margin >= METRIC_MARGIN - ROUNDING:
        found = [check("margin", OK, sentence(
            "The surface is {} above the dew point: both published rules are met, 3 °C and 5 °F (2.8 °C).",
            shown))]
    elif margin >= IMPERIAL_MARGIN - ROUNDING:
        found = [check("margin", WATCH, sentence(
            "The surface is {} above the dew point: that meets the rule of 5 °F (2.8 °C) and fails the one "
            "of 3 °C. Warm the work a little, or wait.", shown))]
    elif abs(margin) < AT_IT:
        found = [check("margin", STOP, "The surface is at the dew point: water condenses on it. Warm the "
                       "work, dry the air, or wait.")]
    elif margin < 0:
        found = [check("margin", STOP, sentence(
            "The surface is {} below the dew point: water condenses on it. Warm the work, dry the air, or "
            "wait.", amount("temperature_difference", -margin)))]
    else:
        found = [check("margin", STOP, sentence(
            "The surface is {} above the dew point; published rules ask for 3 °C or 5 °F (2.8 °C). Moisture "
            "can blush or lift the film. Warm the work, dry the air, or wait.", shown))]
    if not rising:
        found.append(check("falling", WATCH,
                           "The rule of 5 °F says “and rising”: in the evening, or after the heating goes "
                           "off, the work cools toward the dew point while the film is still open."))
    return tuple(found)


def _hygrometer_checks(air: float, humidity: float, surface: float) -> tuple[Check, ...]:
    """Return a caution where the reading meets the margin, and a hygrometer that reads too low would not."""
    margin = surface - dew_point(air, humidity)
    wetter = surface - dew_point(air, min(1.0, humidity + HYGROMETER_ERRORS[1]))
    if margin < METRIC_MARGIN - ROUNDING or wetter >= METRIC_MARGIN:
        return ()
    return (check("hygrometer", WATCH, sentence(
        "If the hygrometer reads {} of humidity too low, the surface is only {} above the dew point, less "
        "than 3 °C (5.4 °F). Check it before you trust a margin this small.",
        amount("ratio", HYGROMETER_ERRORS[1], 0), amount("temperature_difference", wetter))),)


def _unknown_checks(family: str, given: float | None) -> tuple[Check, ...]:
    if family != OWN or given is not None:
        return ()
    return (check("least", WATCH, "No least temperature was given: read it on the product's sheet and type "
                  "it in. Below it a finish may never cure."),)


def _condition_checks(air: float, surface: float, humidity: float, limit: float) -> tuple[Check, ...]:
    found = []
    if humidity > limit + ROUNDING:
        found.append(check("humidity", STOP, sentence(
            "Relative humidity of {} is above the limit of {}: wait, or dry the air.",
            amount("ratio", humidity, 0), amount("ratio", limit, 0))))
    else:
        found.append(check("humidity", OK, sentence(
            "Relative humidity of {} is within the limit of {}. That limit alone is the looser rule where "
            "work "
            "and air are equally warm.", amount("ratio", humidity, 0), amount("ratio", limit, 0))))
    if max(air, surface) > MOST_HEAT + ROUNDING:
        found.append(check("hot", STOP, sentence(
            "Air or work is at {}, above the {} that an old bow is kept below: glue lines soften.",
            amount("temperature", max(air, surface)), amount("temperature", MOST_HEAT))))
    return tuple(found)


def _moisture_checks(measured: float | None, settled: float) -> tuple[Check, ...]:
    if measured is None:
        return ()
    gap = measured - settled
    if abs(gap) > AT_REST_WITHIN + ROUNDING:
        way = "drying and shrinking" if gap > 0 else "taking up water and swelling"
        return (check("moisture", WATCH, sentence(
            "The wood reads {} and settles at {} in this air: it is " + way + ". Let it come to rest before "
            "it is sealed in.", amount("ratio", measured), amount("ratio", settled))),)
    return (check("moisture", OK, sentence(
        "The wood reads {} and settles at {} in this air: near enough.",
        amount("ratio", measured), amount("ratio", settled))),)


def _humidity_table(air: float, surface: float) -> Table:
    lines = []
    for humidity in (0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.85, 0.9):
        dew = dew_point(air, humidity)
        lines.append((humidity, dew, surface - dew, equilibrium_moisture_content(air, humidity)))
    return Table("humidities", "The same room at other humidities", (
        Column("humidity", "Relative humidity", "ratio"), Column("dew_point", "Dew point", "temperature"),
        Column("margin", "Surface above it", "temperature_difference"),
        Column("moisture", "Wood settles at", "ratio"),
    ), tuple(lines))


def _margin_chart(air: float, surface: float, humidity: float, margin: float) -> Chart:
    margins = [surface - dew_point(air, each) for each in HUMIDITIES]
    ends = [HUMIDITIES[0], HUMIDITIES[-1]]
    return Chart("margin", "How far the surface is above the dew point, by humidity",
                 Axis("Relative humidity", "ratio"), Axis("Above the dew point", "temperature_difference"), (
                     Line("margin", "line", list(HUMIDITIES), margins),
                     Line("rule of 3 °C", "line", ends, [METRIC_MARGIN, METRIC_MARGIN]),
                     Line("now", "points", [humidity], [margin]),
                 ))


def _moisture_chart(air: float) -> Chart:
    return Chart("moisture", "What wood settles at, by humidity", Axis("Relative humidity", "ratio"),
                 Axis("Moisture content", "ratio"), (
                     Line("wood", "line", list(HUMIDITIES[:-1]),
                          [equilibrium_moisture_content(air, each) for each in HUMIDITIES[:-1]]),))


def _assumptions(
    surface_temperature: float | None, errors: tuple[float | None, float | None]
) -> tuple[Sentence | str, ...]:
    found: list[Sentence | str] = []
    if surface_temperature is None:
        found.append("The work is as warm as the air. Work that came in from the cold is not: measure it.")
    found += [
        _hygrometer_sentence(errors),
        "Wood moisture is a practical estimate for any wood in steady air; sealed wood takes weeks to "
        "follow. A later report calls the data behind it unreliable for science.",
        "The rules were written for coating steel. For wood and glass they are a sensible habit.",
    ]
    return tuple(found)


def _hygrometer_sentence(errors: tuple[float | None, float | None]) -> Sentence:
    start = ("Dew point by the Magnus form, within 0.35 °C from -40 to 60 °C. A cheap hygrometer is out by "
             "3 to 5 % of humidity: ")
    if errors[0] is None or errors[1] is None:
        return sentence(start + "in air this dry the dew point is then hardly known.")
    return sentence(start + "here that moves the dew point by up to {} to {}, the larger error. It grows as "
                    "the air gets drier.", amount("temperature_difference", errors[0]),
                    amount("temperature_difference", errors[1]))


CAUTIONS: tuple[Sentence | str, ...] = (
    "Go means only that the air will not spoil the film. It says nothing about what you breathe: see clear "
    "air, and the safety data sheet of the product.",
    "Never warm work or room with a flame or a glowing heater while solvent is about. Keep a bow below 50 °C "
    "(120 °F): glue lines soften.",
    "The product's own sheet comes first, also on temperature and humidity.",
)


CALCULATOR = Calculator(
    id="spray-air",
    title="Spray air",
    purpose="Gives the dew point, how far the work is above it and what wood settles at in this air: go, or "
            "wait and why.",
    groups=(
        group(
            "Air and work",
            quantity("air_temperature", "Air temperature", "temperature", default="70 °F", low="30 °F",
                     high="130 °F", usual=("50 °F", "95 °F"), help="At the bench, out of the sun."),
            quantity("humidity", "Relative humidity", "ratio", default="60 %", low="1 %", high="100 %",
                     usual=("20 %", "90 %"), help="At the same place.",
                     measure="Leave the hygrometer lying there for a quarter of an hour."),
            quantity("surface_temperature", "Temperature of the work", "temperature", default="", low="0 °F",
                     high="130 °F", usual=("40 °F", "100 °F"), help="Empty: as warm as the air.",
                     measure="An infrared thermometer reads glossy glass too low; stick a piece of masking "
                             "tape on and read that.", optional=True),
            switch("rising", "Work and air are not getting colder", default=True),
            quantity("wood_moisture", "Moisture reading of the wood", "ratio", default="", low="2 %",
                     high="40 %", usual=("5 %", "15 %"), help="Bare wood only; empty if not measured.",
                     optional=True),
        ),
        group(
            "Limits",
            quantity("humidity_limit", "Highest humidity", "ratio", default="85 %", low="30 %", high="100 %",
                     usual=("50 %", "85 %"), help="The maker's sheet comes first.", role=RULE),
            family_choice(with_own=True),
            least_temperature_input(),
        ),
    ),
    results=(
        result("dew_point", "Dew point", "temperature"),
        result("margin", "Surface above the dew point", "temperature_difference", "Negative: below it."),
        result("moisture_content", "Wood settles at", "ratio", "Mass of water over mass of dry wood."),
        result("highest_humidity", "Humidity that leaves 3 °C", "ratio", "For this air and this surface."),
        result("over_metric", "Margin over the rule of 3 °C", "temperature_difference"),
        result("over_imperial", "Margin over the rule of 5 °F", "temperature_difference"),
        result("dew_point_error", "Dew point out by up to", "temperature_difference",
               "If the hygrometer is out by 5 % of humidity."),
        result("least_temperature_used", "Lowest temperature for the product", "temperature",
               "From its sheet, else typical of its family."),
    ),
    acted_on=("margin", "moisture_content", "highest_humidity"),
    cautions=CAUTIONS,
    sources=("alduchov-eskridge-1996", "coating-dew-point", "finish-practice", "fpl-gtr-229", "mil-hdbk-1110",
             "niosh-formaldehyde", "one-part-isocyanate", "simpson-1998", "wood-handbook-moisture"),
    example="The shop of the invented bow at 70 °F and 60 % relative humidity, the bow as warm as the air, "
            "before a coat of one-part urethane.",
    first=("air_temperature", "humidity", "surface_temperature", "rising"),
    compute=compute,
)
