"""Quantities as people type and read them: `7 3/16 in`, `182.6mm`, `48#`, `68F`.

Inside `calc` every quantity is a plain float in SI. This module is the only
place where text becomes such a number and where a number becomes text again.

Text is written by integer arithmetic of our own, never by a float format, so
that every Python engine shows the same digits.
"""

import math

SYSTEMS = ("imperial", "metric")


class Unit:
    """One unit: its name as shown, its size in SI, the SI value of its zero, other spellings."""

    def __init__(self, name: str, factor: float, offset: float, aliases: tuple[str, ...]) -> None:
        self.name = name
        self.factor = factor
        self.offset = offset
        self.aliases = aliases


class Face:
    """How one unit system shows a kind: a unit name, and decimals (int) or one of the words below."""

    def __init__(self, unit: str, style: int | str) -> None:
        self.unit = unit
        self.style = style


class Kind:
    """One kind of quantity. `noun` completes "is not ...", `words` says the shown units in words."""

    def __init__(
        self, id: str, noun: str, si: str, imperial: Face, metric: Face, units: tuple[Unit, ...],
        example: tuple[str, str], words: tuple[str, str]
    ) -> None:
        self.id = id
        self.noun = noun
        self.si = si
        self.imperial = imperial
        self.metric = metric
        self.units = units
        self.example = example
        self.words = words


FRACTION = "fraction"
FINE_FRACTION = "fine fraction"
THREE_DIGITS = "three digits"
FRACTION_DENOMINATOR = 32
FINE_DENOMINATOR = 64
"""The finest division of a steel rule: a stop is set by it."""

LONGEST_TEXT = 40
MOST_DIGITS = 30
LARGEST_EXPONENT = 30
SIGNIFICANT_DIGITS = 12
MORE_INCHES = ("5", " 5", "0", ".5", "/16", "1/2")
"""What may follow feet: one of each size will do to see whether a text can be mended."""

PLAIN_BELOW = 1e6
NEAR_A_HALF = 1e-4
"""A number below the one and farther than the other from a half: 12 digits move it by 5e-6 at most, so that
ordinary rounding gives what exact rounding would."""

EXACT_BELOW = 9007199254740992
"""2**53: whole numbers up to it are floats, and a quotient of two of them is rounded once in any engine."""

DIGITS = "0123456789"
MARKS_OF_NUMBERS = "+-/.,e "
"""They begin a part of a number that does not follow; no unit is made of them alone."""
VULGAR_FRACTIONS = (
    ("½", "1/2"), ("¼", "1/4"), ("¾", "3/4"), ("⅛", "1/8"), ("⅜", "3/8"),
    ("⅝", "5/8"), ("⅞", "7/8"), ("⅓", "1/3"), ("⅔", "2/3"),
)
SAME_AS = (
    ("\u00a0", " "), ("\u2009", " "), ("\u202f", " "), ("\t", " "),
    ("\u2212", "-"), ("\u2013", "-"), ("\u2044", "/"),
    ("\u2033", '"'), ("\u201d", '"'), ("\u201c", '"'), ("''", '"'),
    ("\u2032", "'"), ("\u2019", "'"),
)

ROUNDING = 1e-9
"""Relative: two numbers nearer than this are one, whatever engine worked them out."""

INCH = 0.0254
FOOT = 12 * INCH
GALLON = 231 * INCH**3
POUND = 0.45359237
STANDARD_GRAVITY = 9.80665
POUND_FORCE = POUND * STANDARD_GRAVITY
GRAIN = POUND / 7000
PSI = POUND_FORCE / INCH**2


def _unit(name: str, factor: float, aliases: str = "", offset: float = 0.0) -> Unit:
    return Unit(name, factor, offset, tuple(aliases.split()))


_LENGTHS = (
    _unit("in", INCH, 'inch inches "'),
    _unit("ft", 12 * INCH, "foot feet '"),
    _unit("mm", 1e-3, "millimetre millimetres millimeter millimeters"),
    _unit("cm", 1e-2, "centimetre centimetres centimeter centimeters"),
    _unit("m", 1.0, "metre metres meter meters"),
    _unit("mil", INCH / 1000, "mils thou"),
    _unit("µm", 1e-6, "um μm micron microns micrometre micrometres"),
)
_FORCES = (
    _unit("lb", POUND_FORCE, "lbs lbf # pound pounds"),
    _unit("N", 1.0, "newton newtons"),
    _unit("kN", 1e3, "kilonewton kilonewtons"),
    _unit("kgf", STANDARD_GRAVITY, "kg kp"),
)
_MASSES = (
    _unit("gr", GRAIN, "grain grains"),
    _unit("g", 1e-3, "gram grams gramme grammes"),
    _unit("oz", POUND / 16, "ounce ounces"),
    _unit("lb", POUND, "lbs pound pounds"),
    _unit("kg", 1.0, "kilogram kilograms"),
)
_STRESSES = (
    _unit("psi", PSI),
    _unit("ksi", PSI * 1e3),
    _unit("Mpsi", PSI * 1e6),
    _unit("Pa", 1.0),
    _unit("kPa", 1e3),
    _unit("MPa", 1e6, "N/mm2 N/mm²"),
    _unit("GPa", 1e9),
)
_VOLUMES = (
    _unit("fl oz", GALLON / 128, "floz"),
    _unit("pt", GALLON / 8, "pint pints"),
    _unit("qt", GALLON / 4, "quart quarts"),
    _unit("gal", GALLON, "gallon gallons"),
    _unit("mL", 1e-6, "ml cm3 cm³"),
    _unit("L", 1e-3, "l litre litres liter liters"),
    _unit("ft3", FOOT**3, "ft³ cuft"),
    _unit("m3", 1.0, "m³"),
)
_TIMES = (
    _unit("s", 1.0, "sec second seconds"),
    _unit("min", 60.0, "minute minutes"),
    _unit("h", 3600.0, "hr hour hours"),
    _unit("d", 86400.0, "day days"),
)

KINDS = (
    Kind("length", "a length", "m", Face("in", FRACTION), Face("mm", 1), _LENGTHS,
         ("7 3/16 in", "182 mm"), ("in inches", "in millimetres")),
    Kind("depth", "a depth", "m", Face("in", FINE_FRACTION), Face("mm", 1), _LENGTHS,
         ("19/32 in", "15.1 mm"), ("in inches", "in millimetres")),
    Kind("thickness", "a thickness", "m", Face("in", 3), Face("mm", 2), _LENGTHS,
         ("0.045 in", "1.15 mm"), ("in inches", "in millimetres")),
    Kind("force", "a weight or force", "N", Face("lb", 1), Face("N", 1), _FORCES,
         ("48 lb", "213 N"), ("in pounds", "in newtons")),
    Kind("mass", "a mass", "kg", Face("gr", 0), Face("g", 1), _MASSES,
         ("520 gr", "33.7 g"), ("in grains", "in grams")),
    Kind("linear_density", "a mass per length", "kg/m", Face("gr/in", 2), Face("g/m", 2),
         (_unit("gr/in", GRAIN / INCH, "gpi"), _unit("g/m", 1e-3), _unit("kg/m", 1.0)),
         ("10.5 gr/in", "26.8 g/m"), ("in grains per inch", "in grams per metre")),
    Kind("force_per_length", "a weight per draw", "N/m", Face("lb/in", 2), Face("N/mm", 3),
         (_unit("lb/in", POUND_FORCE / INCH, "lbs/in #/in lbf/in"), _unit("N/mm", 1e3),
          _unit("N/cm", 1e2), _unit("N/m", 1.0)),
         ("2.2 lb/in", "0.39 N/mm"), ("in pounds per inch", "in newtons per millimetre")),
    Kind("mass_per_force", "an arrow mass per draw weight", "kg/N", Face("gr/lb", 1), Face("g/N", 3),
         (_unit("gr/lb", GRAIN / POUND_FORCE, "gpp"), _unit("g/N", 1e-3), _unit("kg/N", 1.0)),
         ("9 gr/lb", "0.131 g/N"), ("in grains per pound", "in grams per newton")),
    Kind("modulus", "an elastic modulus", "Pa", Face("Mpsi", 2), Face("GPa", 1), _STRESSES,
         ("1.8 Mpsi", "12.4 GPa"), ("in millions of psi", "in gigapascals")),
    Kind("stress", "a stress", "Pa", Face("psi", THREE_DIGITS), Face("MPa", 1), _STRESSES,
         ("15800 psi", "109 MPa"), ("in psi", "in megapascals")),
    Kind("density", "a density", "kg/m3", Face("lb/ft3", 1), Face("kg/m3", 0),
         (_unit("lb/ft3", POUND / (12 * INCH) ** 3, "lb/ft³ pcf"), _unit("kg/m3", 1.0, "kg/m³"),
          _unit("g/cm3", 1e3, "g/cm³")),
         ("29 lb/ft3", "465 kg/m3"), ("in pounds per cubic foot", "in kilograms per cubic metre")),
    Kind("rigidity", "a flexural rigidity", "N m2", Face("lb in2", 0), Face("N m2", 3),
         (_unit("lb in2", POUND_FORCE * INCH**2, "lb·in² lbf·in²"), _unit("N m2", 1.0, "N·m²")),
         ("1774 lb in2", "5.09 N m2"), ("in pound square inches", "in newton square metres")),
    Kind("speed", "a speed", "m/s", Face("ft/s", 0), Face("m/s", 1),
         (_unit("ft/s", 12 * INCH, "fps"), _unit("m/s", 1.0), _unit("km/h", 1 / 3.6)),
         ("165 ft/s", "50.3 m/s"), ("in feet per second", "in metres per second")),
    Kind("energy", "an energy", "J", Face("ft lb", 1), Face("J", 1),
         (_unit("ft lb", POUND_FORCE * 12 * INCH, "ft·lb ftlb ft-lb"), _unit("J", 1.0, "joule joules")),
         ("31 ft lb", "42 J"), ("in foot pounds", "in joules")),
    Kind("momentum", "a momentum", "kg m/s", Face("lb s", 3), Face("kg m/s", 3),
         (_unit("lb s", POUND_FORCE, "lb·s"), _unit("kg m/s", 1.0, "kg·m/s")),
         ("0.38 lb s", "1.7 kg m/s"), ("in pound seconds", "in kilogram metres per second")),
    Kind("frequency", "a frequency", "Hz", Face("Hz", 1), Face("Hz", 1), (_unit("Hz", 1.0),),
         ("70 Hz", "70 Hz"), ("in hertz", "in hertz")),
    Kind("short_time", "a time", "s", Face("ms", 1), Face("ms", 1),
         (_unit("ms", 1e-3), _unit("s", 1.0)),
         ("14 ms", "14 ms"), ("in milliseconds", "in milliseconds")),
    Kind("energy_per_force", "an energy per draw weight", "m", Face("ft lb/lb", 3), Face("J/N", 3),
         (_unit("ft lb/lb", 12 * INCH), _unit("J/N", 1.0)),
         ("0.95 ft lb/lb", "0.29 J/N"), ("in foot pounds per pound", "in joules per newton")),
    Kind("strokes", "a number of strokes", "1", Face("", 0), Face("", 0), (_unit("", 1.0, "strokes"),),
         ("20", "20"), ("", "")),
    Kind("force_per_stroke", "a weight per stroke", "N", Face("lb/stroke", 3), Face("N/stroke", 2),
         (_unit("lb/stroke", POUND_FORCE), _unit("N/stroke", 1.0)),
         ("0.02 lb/stroke", "0.1 N/stroke"), ("in pounds per stroke", "in newtons per stroke")),
    Kind("length_per_stroke", "a tiller per stroke", "m", Face("in/stroke", 4), Face("mm/stroke", 3),
         (_unit("in/stroke", INCH), _unit("mm/stroke", 1e-3), _unit("m/stroke", 1.0)),
         ("0.001 in/stroke", "0.03 mm/stroke"), ("in inches per stroke", "in millimetres per stroke")),
    Kind("angle", "an angle", "deg", Face("°", 1), Face("°", 1),
         (_unit("°", 1.0, "deg degree degrees"),),
         ("3.5°", "3.5°"), ("in degrees", "in degrees")),
    Kind("temperature", "a temperature", "degC", Face("°F", 0), Face("°C", 1),
         (_unit("°F", 5 / 9, "F degF ºF", -160 / 9), _unit("°C", 1.0, "C degC ºC")),
         ("68 °F", "20 °C"), ("in degrees Fahrenheit", "in degrees Celsius")),
    Kind("ratio", "a percentage", "1", Face("%", 1), Face("%", 1),
         (_unit("%", 0.01, "percent pct"), _unit("of one", 1.0)),
         ("60 %", "60 %"), ("in percent", "in percent")),
    Kind("area", "an area", "m2", Face("ft2", 2), Face("m2", 3),
         (_unit("ft2", 144 * INCH**2, "ft² sqft"), _unit("in2", INCH**2, "in²"),
          _unit("m2", 1.0, "m²"), _unit("cm2", 1e-4, "cm²")),
         ("4.5 ft2", "0.42 m2"), ("in square feet", "in square metres")),
    Kind("volume", "a volume", "m3", Face("fl oz", 2), Face("mL", 0), _VOLUMES,
         ("8 fl oz", "240 mL"), ("in US fluid ounces", "in millilitres")),
    Kind("coverage", "a coverage", "1/m", Face("ft2/gal", 0), Face("m2/L", 1),
         (_unit("ft2/gal", FOOT**2 / GALLON, "ft²/gal"), _unit("m2/L", 1e3, "m²/L"),
          _unit("per m", 1.0, "/m")),
         ("700 ft2/gal", "17 m2/L"), ("in square feet per US gallon", "in square metres per litre")),
    Kind("room_length", "a length", "m", Face("ft", 1), Face("m", 2), _LENGTHS,
         ("12 ft", "3.7 m"), ("in feet", "in metres")),
    Kind("room_volume", "a volume", "m3", Face("ft3", 0), Face("m3", 1), _VOLUMES,
         ("1920 ft3", "54 m3"), ("in cubic feet", "in cubic metres")),
    Kind("flow", "an air flow", "m3/s", Face("cfm", 0), Face("m3/h", 0),
         (_unit("cfm", FOOT**3 / 60, "ft3/min ft³/min"), _unit("m3/h", 1 / 3600, "m³/h"),
          _unit("L/s", 1e-3), _unit("m3/s", 1.0, "m³/s")),
         ("500 cfm", "850 m3/h"), ("in cubic feet per minute", "in cubic metres per hour")),
    Kind("air_speed", "an air speed", "m/s", Face("ft/min", 0), Face("m/s", 2),
         (_unit("ft/min", FOOT / 60, "fpm"), _unit("m/s", 1.0)),
         ("100 ft/min", "0.51 m/s"), ("in feet per minute", "in metres per second")),
    Kind("air_changes", "a number of air changes", "1/s", Face("per hour", 1), Face("per hour", 1),
         (_unit("per hour", 1 / 3600, "/h ach"), _unit("per s", 1.0, "/s")),
         ("6 per hour", "6 per hour"),
         ("per hour", "per hour")),
    Kind("concentration", "a share of the air", "1", Face("ppm", 0), Face("ppm", 0),
         (_unit("ppm", 1e-6), _unit("%", 1e-2, "percent pct"), _unit("of one", 1.0)),
         ("2500 ppm", "2500 ppm"),
         ("in parts per million", "in parts per million")),
    Kind("mass_concentration", "a mass in air", "kg/m3", Face("mg/m3", 0), Face("mg/m3", 0),
         (_unit("mg/m3", 1e-6, "mg/m³"), _unit("g/m3", 1e-3, "g/m³"), _unit("kg/m3", 1.0, "kg/m³")),
         ("590 mg/m3", "590 mg/m3"),
         ("in milligrams per cubic metre", "in milligrams per cubic metre")),
    Kind("molar_mass", "a molar mass", "kg/mol", Face("g/mol", 1), Face("g/mol", 1),
         (_unit("g/mol", 1e-3), _unit("kg/mol", 1.0)),
         ("88.1 g/mol", "88.1 g/mol"), ("in grams per mole", "in grams per mole")),
    Kind("minutes", "a time", "s", Face("min", 1), Face("min", 1), _TIMES,
         ("15 min", "15 min"), ("in minutes", "in minutes")),
    Kind("hours", "a time", "s", Face("h", 1), Face("h", 1), _TIMES,
         ("4 h", "4 h"), ("in hours", "in hours")),
    Kind("days", "a time", "s", Face("d", 1), Face("d", 1), _TIMES, ("7 d", "7 d"), ("in days", "in days")),
    Kind("film", "a film thickness", "m", Face("mil", 2), Face("µm", 0), _LENGTHS,
         ("4 mil", "100 µm"), ("in thousandths of an inch", "in micrometres")),
    Kind("particle", "a particle size", "m", Face("µm", 1), Face("µm", 1), _LENGTHS,
         ("125 µm", "125 µm"), ("in micrometres", "in micrometres")),
    Kind("temperature_difference", "a difference in temperature", "K", Face("°F", 1), Face("°C", 1),
         (_unit("°F", 5 / 9, "F degF ºF"), _unit("°C", 1.0, "C degC ºC K")),
         ("5 °F", "3 °C"), ("in degrees Fahrenheit", "in degrees Celsius")),
    Kind("gloss", "a gloss", "GU", Face("GU", 0), Face("GU", 0), (_unit("GU", 1.0),),
         ("25 GU", "25 GU"), ("in gloss units", "in gloss units")),
    Kind("moment", "a bending moment", "N m", Face("in lb", THREE_DIGITS), Face("N m", 1),
         (_unit("in lb", POUND_FORCE * INCH, "in·lb in-lb lb·in"), _unit("N m", 1.0, "N·m Nm")),
         ("900 in lb", "102 N m"), ("in inch pounds", "in newton metres")),
    Kind("money", "an amount of money", "1", Face("", 2), Face("", 2), (_unit("", 1.0, "$ € £"),),
         ("45", "45"), ("in your currency", "in your currency")),
    Kind("hourly_rate", "a price per hour", "1/s", Face("an hour", 2), Face("an hour", 2),
         (_unit("an hour", 1 / 3600, "/h per_hour /hour"), _unit("per s", 1.0, "/s")),
         ("45", "45"), ("per hour, in your currency", "per hour, in your currency")),
    Kind("liquid_density", "a density", "kg/m3", Face("lb/gal", 2), Face("kg/L", 3),
         (_unit("lb/gal", POUND / GALLON, "ppg"), _unit("kg/L", 1e3, "kg/l g/cm3 g/cm³ g/mL g/ml"),
          _unit("kg/m3", 1.0, "kg/m³"), _unit("lb/ft3", POUND / FOOT**3, "lb/ft³")),
         ("8.1 lb/gal", "0.97 kg/L"), ("in pounds per US gallon", "in kilograms per litre")),
    Kind("mix_volume", "a volume", "m3", Face("fl oz", 3), Face("mL", 1), _VOLUMES,
         ("0.75 fl oz", "22 mL"), ("in US fluid ounces", "in millilitres")),
    Kind("mix_mass", "a mass", "kg", Face("g", 1), Face("g", 1), _MASSES,
         ("68 g", "68 g"), ("in grams", "in grams")),
    Kind("pixels", "a count of pixels", "px", Face("px", 1), Face("px", 1),
         (_unit("px", 1.0, "pixel pixels"),),
         ("1204 px", "1204 px"), ("in pixels", "in pixels")),
    Kind("seconds", "a time", "s", Face("s", 1), Face("s", 1), _TIMES, ("25 s", "25 s"),
         ("in seconds", "in seconds")),
    Kind("viscosity", "a viscosity", "m2/s", Face("mm2/s", 1), Face("mm2/s", 1),
         (_unit("mm2/s", 1e-6, "mm²/s cSt"), _unit("m2/s", 1.0)), ("70 mm2/s", "70 mm2/s"),
         ("in square millimetres per second", "in square millimetres per second")),
    Kind("number", "a number", "1", Face("", 2), Face("", 2), (_unit("", 1.0),),
         ("1.5", "1.5"), ("", "")),
)

_KIND_BY_ID = {kind.id: kind for kind in KINDS}


def kind_of(kind_id: str) -> Kind:
    """Return the kind with this id.

    Raises:
        ValueError: no kind has this id.
    """
    if kind_id not in _KIND_BY_ID:
        raise ValueError("no kind of quantity is called " + kind_id)
    return _KIND_BY_ID[kind_id]


def face_of(kind: Kind, system: str) -> Face:
    """Return how a unit system ("imperial" or "metric") shows a kind."""
    if system == "imperial":
        return kind.imperial
    elif system == "metric":
        return kind.metric
    else:
        raise ValueError("the unit system must be imperial or metric, not " + system)


def shown_unit(kind_id: str, system: str) -> Unit:
    """Return the unit in which a system shows a kind; a bare number is read in it."""
    return _shown(kind_id, system)[0]


_SHOWN: dict[tuple[str, str], tuple[Unit, int | str, str]] = {}
"""How a system shows a kind, found once: unit, style, and what is written behind a number."""


def _shown(kind_id: str, system: str) -> tuple[Unit, int | str, str]:
    asked = kind_id, system
    if asked not in _SHOWN:
        kind = kind_of(kind_id)
        face = face_of(kind, system)
        units = [unit for unit in kind.units if unit.name == face.unit]
        if not units:
            raise ValueError(kind_id + " has no unit " + face.unit)
        _SHOWN[asked] = units[0], face.style, face.unit if face.unit in ("", "°") else " " + face.unit
    return _SHOWN[asked]


# Reading ---------------------------------------------------------------------

MOST_READ = 500
"""Texts that are remembered with what they came to: of a form's figures one changes with a keystroke."""

_READ: dict[tuple[str, str, str], float] = {}


def parse(text: str, kind_id: str, system: str = "imperial") -> float:
    """Return the SI value of what somebody typed.

    Reads whole numbers, decimals with a point or a comma, fractions, mixed
    numbers (`7 3/16`, `7-3/16`), feet with inches, and a unit behind them. A
    number without a unit is in the unit that `system` shows.

    Args:
        text: as typed.
        kind_id: id of the kind of quantity expected.
        system: "imperial" or "metric".

    Returns:
        the quantity in the kind's SI unit.

    Raises:
        ValueError: the text cannot be read; the message completes a sentence
            that starts with the text ("... is not a length").
    """
    asked = text, kind_id, system
    if asked not in _READ:
        if len(_READ) >= MOST_READ:
            _READ.clear()
        _READ[asked] = _parsed(text, kind_of(kind_id), system)
    return _READ[asked]


def _parsed(text: str, kind: Kind, system: str) -> float:
    plain = _plain(text)
    if len(plain) > LONGEST_TEXT:
        raise ValueError("is too long to be " + kind.noun)
    number, rest = _read_number(plain, kind)
    unit_text, rest = _read_unit_text(rest)
    unit = _find_unit(unit_text, kind, system)
    value = unit.offset + number * unit.factor
    if rest and not unit_text and unit.name != "ft":
        raise ValueError("has a second number without the line of a fraction")
    if rest:
        value += _inches_behind_feet(rest, unit, number, kind)
    return value


def _plain(text: str) -> str:
    for typed, same in SAME_AS:
        text = text.replace(typed, same)
    for typed, same in VULGAR_FRACTIONS:
        text = text.replace(typed, " " + same)
    return text.strip(" \n\r")


def is_open_number(text: str) -> bool:
    """Return whether a text is a number under way: no unit has begun, and digits or a fraction may follow."""
    for more in ("", "5", "/16", "1/2"):
        try:
            _, _, rest = _read_ratio(_plain(text + more), kind_of("number"))
        except ValueError:
            continue
        if not rest:
            return True
    return False


def ways_to_end(text: str, kind_id: str) -> list[str]:
    """Return what may be typed behind a unit that has begun: its rest, or the inches behind feet.

    Not all of it makes sense: `parse` tells.
    """
    typed = text.lower()
    return [name[length:] for unit in kind_of(kind_id).units for name in (unit.name,) + unit.aliases
            for length in range(1, len(name)) if typed.endswith(name[:length].lower())] + list(MORE_INCHES)


def could_be_a_share(text: str) -> bool:
    """Return whether a text is a number without a unit that may mean a share of one: `1/4` or `0.25`.

    Raises:
        ValueError: the text does not begin with a number.
    """
    plain = _plain(text)
    top, bottom, rest = _read_ratio(plain, kind_of("number"))
    is_fraction = "/" in plain and " " not in plain and "-" not in plain[1:]
    return not rest.strip() and top != 0 and (is_fraction or abs(top) < bottom)


def _read_number(text: str, kind: Kind) -> tuple[float, str]:
    top, bottom, rest = _read_ratio(text, kind)
    size = _quotient(abs(top), bottom)
    return (-size if top < 0 else size), rest


def _read_ratio(text: str, kind: Kind) -> tuple[int, int, str]:
    """Split a number off a text: exactly, as a ratio of whole numbers, and what follows it."""
    sign = 1
    rest = text
    if rest[:1] in ("+", "-"):
        sign = -1 if rest[0] == "-" else 1
        rest = rest[1:].lstrip(" ")
    whole, after = _take_digits(rest)
    if after[:1] in (".", ","):
        top, bottom, rest = _read_decimal(whole, after, kind)
    elif not whole:
        raise ValueError("is not " + kind.noun)
    elif after[:1] == "/" and not after[1:2].isalpha():
        top, bottom, rest = _read_fraction(whole, after[1:])
    else:
        top, bottom, rest = _read_mixed(whole, after)
    if rest[:1] in ("e", "E") and rest[1:2] and rest[1] in DIGITS + "+-":
        top, bottom, rest = _apply_exponent(top, bottom, rest[1:], kind)
    return sign * top, bottom, rest


def _take_digits(text: str) -> tuple[str, str]:
    end = 0
    while end < len(text) and text[end] in DIGITS:
        end += 1
    if end > MOST_DIGITS:
        raise ValueError("has more than " + str(MOST_DIGITS) + " digits")
    return text[:end], text[end:]


def _read_decimal(whole: str, after: str, kind: Kind) -> tuple[int, int, str]:
    mark = after[0]
    decimals, rest = _take_digits(after[1:])
    if not whole and not decimals:
        raise ValueError("is not " + kind.noun)
    if mark == "," and len(decimals) == 3 and whole.lstrip("0"):
        raise ValueError("could mean two numbers (" + whole + "." + decimals + " or "
                         + whole + decimals + "); write it with a point or without the comma")
    if rest[:1] in (".", ","):
        raise ValueError("has more than one decimal mark")
    if len(whole) + len(decimals) > MOST_DIGITS:
        raise ValueError("has more than " + str(MOST_DIGITS) + " digits")
    return int((whole + decimals) or "0"), 10 ** len(decimals), rest


def _read_fraction(top: str, text: str) -> tuple[int, int, str]:
    bottom, rest = _take_digits(text.lstrip(" "))
    if not bottom:
        raise ValueError("has nothing below the line of its fraction")
    if int(bottom) == 0:
        raise ValueError("has a fraction with 0 below the line")
    return int(top), int(bottom), rest


def _read_mixed(whole: str, after: str) -> tuple[int, int, str]:
    behind = after.lstrip(" ")
    if behind[:1] == "-":
        behind = behind[1:].lstrip(" ")
    top, rest = _take_digits(behind)
    if top and rest.lstrip(" ")[:1] == "/":
        part, bottom, rest = _read_fraction(top, rest.lstrip(" ")[1:])
        return int(whole) * bottom + part, bottom, rest
    return int(whole), 1, after


def _apply_exponent(top: int, bottom: int, text: str, kind: Kind) -> tuple[int, int, str]:
    sign = -1 if text[0] == "-" else 1
    digits, rest = _take_digits(text[1:] if text[0] in "+-" else text)
    if not digits:
        raise ValueError("is not " + kind.noun)
    if int(digits) > LARGEST_EXPONENT:
        raise ValueError("is too large or too small a number")
    power = 10 ** int(digits)
    return (top * power, bottom, rest) if sign > 0 else (top, bottom * power, rest)


def _quotient(top: int, bottom: int) -> float:
    """Return top / bottom (top not negative) as the nearest float, the same in every engine."""
    if top <= EXACT_BELOW and bottom <= EXACT_BELOW:
        return top / bottom
    exponent = 0
    while top >= bottom << 53:
        bottom <<= 1
        exponent += 1
    while top < bottom << 52:
        top <<= 1
        exponent -= 1
    return math.ldexp(float(_divide(top, bottom, True)), exponent)


def _read_unit_text(text: str) -> tuple[str, str]:
    """Split what follows a number into a unit and whatever digits follow that."""
    start = text.lstrip(" ")
    end = 0
    while end < len(start) and not (start[end] in DIGITS and (end == 0 or start[end - 1] in " '\"")):
        end += 1
    return start[:end].rstrip(" ."), start[end:]


def _find_unit(text: str, kind: Kind, system: str) -> Unit:
    if not text:
        return shown_unit(kind.id, system)
    if not text.strip(MARKS_OF_NUMBERS):
        raise ValueError("is not " + kind.noun)
    wanted = text.lower()
    for unit in kind.units:
        if wanted == unit.name.lower():
            return unit
        for alias in unit.aliases:
            if wanted == alias.lower():
                return unit
    raise ValueError("has a unit that does not fit " + kind.noun + " (" + _unit_names(kind) + ")")


def _unit_names(kind: Kind) -> str:
    names = [unit.name for unit in kind.units if unit.name]
    return "use " + ", ".join(names) if names else "type the number alone"


def _inches_behind_feet(rest: str, unit: Unit, feet: float, kind: Kind) -> float:
    if unit.name != "ft":
        raise ValueError("has something behind its unit that cannot be read")
    inches, after = _read_number(rest, kind)
    unit_text, after = _read_unit_text(after)
    if after or unit_text not in ("", "in", '"', "inch", "inches"):
        raise ValueError("has something behind its unit that cannot be read")
    return -inches * INCH if feet < 0 else inches * INCH


# Showing ---------------------------------------------------------------------


def show(value: float, kind_id: str, system: str = "imperial", decimals: int | None = None) -> str:
    """Return a quantity as text in the unit system's unit, such as `7 3/16 in`.

    Args:
        value: in the kind's SI unit, finite.
        kind_id: id of the kind of quantity.
        system: "imperial" or "metric".
        decimals: digits behind the point, where the kind's own do not suit.

    Returns:
        number and unit; `parse` reads it back within the digits shown.

    Raises:
        ValueError: the value is not finite.
    """
    unit, style, behind = _shown(kind_id, system)
    number = (value - unit.offset) / unit.factor
    if decimals is not None:
        style = decimals
    if isinstance(style, int):
        return show_number(number, style) + behind
    elif style == FRACTION:
        return show_fraction(number) + behind
    elif style == FINE_FRACTION:
        return show_fraction(number, FINE_DENOMINATOR) + behind
    else:
        return show_three_digits(number) + behind


RAISED = (("m2", "m²"), ("m3", "m³"), ("ft2", "ft²"), ("ft3", "ft³"), ("in2", "in²"))


def raised(text: str) -> str:
    """Return a shown quantity, or a unit's name, with the powers in its unit as a page sets them."""
    for plain, power in RAISED:
        text = text.replace(plain, power)
    return text


def in_both(length: float) -> str:
    """Return a length [m] for a sentence that does not know its reader's units: whole millimetres, inches."""
    if not -math.inf < length < math.inf:
        return str(length) + " m"
    return show_number(1000.0 * length, 0) + " mm (" + show(length, "length") + ")"


def in_shown_unit(value: float, kind_id: str, system: str) -> float:
    """Return an SI value as a number of the units that a system shows."""
    unit = shown_unit(kind_id, system)
    return float((value - unit.offset) / unit.factor)


def show_fraction(number: float, bottom: int = FRACTION_DENOMINATOR) -> str:
    """Return a number to the nearest 1/32, or another power of a half, as a mixed number in lowest terms.

    A number exactly midway goes to the even graduation, the reading rule of
    NIST Handbook 44 (section 10.3).
    """
    parts = _rounded(number, bottom, half_to_even=True)
    sign = "-" if parts < 0 else ""
    whole, top = divmod(abs(parts), bottom)
    if not top:
        return sign + str(whole)
    common = top & -top  # the largest power of two in it
    fraction = str(top // common) + "/" + str(bottom // common)
    return sign + (str(whole) + " " + fraction if whole else fraction)


def show_three_digits(number: float) -> str:
    """Return a whole number of which three digits count: no more of a stress is known at a bench."""
    step = 10 ** max(0, len(str(abs(_rounded(number, 1, half_to_even=False)))) - 3)
    return str(_rounded(number / step, 1, half_to_even=False) * step)


def show_number(number: float, decimals: int) -> str:
    """Return a number with a fixed count of decimals; halves go away from zero.

    The number is first taken to 12 significant digits, so that two engines
    whose mathematics differ in the last bits show the same text.
    """
    scale = 10**decimals
    scaled = _rounded(number, scale, half_to_even=False)
    if decimals == 0:
        return str(scaled)
    whole, part = divmod(abs(scaled), scale)
    return ("-" if scaled < 0 else "") + str(whole) + "." + str(scale + part)[1:]


def _rounded(number: float, scale: int, half_to_even: bool) -> int:
    """Return number times scale as a whole number, by way of 12 significant digits."""
    if number != number or number in (math.inf, -math.inf):
        raise ValueError("a number to show must be finite")
    size = abs(number) * scale
    if size < PLAIN_BELOW and abs(size - int(size) - 0.5) > NEAR_A_HALF:
        nearest = int(size + 0.5)
        return -nearest if number < 0 else nearest
    top, bottom = _as_ratio(abs(number))
    places = SIGNIFICANT_DIGITS - 1 - math.floor(math.log10(abs(number)))
    if places >= 0:
        digits = _divide(top * 10**places, bottom, False)
    else:
        digits = _divide(top, bottom * 10**-places, False)
    if places >= 0:
        result = _divide(digits * scale, 10**places, half_to_even)
    else:
        result = digits * 10**-places * scale
    return -result if number < 0 else result


def _as_ratio(number: float) -> tuple[int, int]:
    """Return a positive float as an exact ratio of whole numbers."""
    mantissa, exponent = math.frexp(number)
    top = int(mantissa * float(EXACT_BELOW))  # every float's mantissa is whole after it
    exponent -= 53
    return (top << exponent, 1) if exponent >= 0 else (top, 1 << -exponent)


def _divide(top: int, bottom: int, half_to_even: bool) -> int:
    """Return top / bottom to the nearest whole number, both positive."""
    whole, rest = divmod(top, bottom)
    if 2 * rest > bottom or (2 * rest == bottom and (not half_to_even or whole % 2 == 1)):
        whole += 1
    return whole
