"""Published limits for what a person may breathe, as they were read.

They change: each row has the date of its record. They are information, not a verdict on a room: only a
measurement in the breathing zone says what is there.
"""


class Level:
    """One figure of a limit as it is written.

    number: in ppm or mg/m3 as `unit` says, None for words alone. over: what it holds over where that is not
    the limit's own averaging time.
    """

    def __init__(self, text: str, number: float | None, unit: str, over: str) -> None:
        self.text = text
        self.number = number
        self.unit = unit
        self.over = over


class ExposureLimit:
    """A limit.

    agent: id of what it is for; stuff: its name. body: who set it. levels: one or more, the first of which
    holds over `averaging`. recorded: the month in which the row was set down here, or an earlier year from
    which the figure is known.
    """

    def __init__(
        self, agent: str, stuff: str, body: str, levels: tuple[Level, ...], averaging: str, recorded: str,
        source: str, status: str,
    ) -> None:
        self.agent = agent
        self.stuff = stuff
        self.body = body
        self.levels = levels
        self.averaging = averaging
        self.recorded = recorded
        self.source = source
        self.status = status


SHIFT = "8 h"
LONG_SHIFT = "10 h"
AT_ONCE = "at once"
CEILING = "at any time"
QUARTER_HOUR = "15 min"
PPM = "ppm"
MASS = "mg/m3"

DANGER = "IDLH"
"""The body's name of the concentration that is immediately dangerous to life or health."""

_NOW = "2026-11"
_OSHA = "osha-chemical-data"
_IDLH = "niosh-idlh"
_TLV = "acgih-limits"
_READ = "read"
_SECOND = "read second-hand"
_MEMORY = "from memory"


def _ppm(number: str, mass: str = "", note: str = "") -> Level:
    text = number + " ppm" + (" (" + mass + " mg/m3)" if mass else "") + note
    return Level(text, float(number), PPM, "")


def _mass(number: str, note: str = "") -> Level:
    return Level(number + " mg/m3" + note, float(number), MASS, "")


def _short(level: Level) -> Level:
    return Level(level.text + " in 15 min", level.number, level.unit, QUARTER_HOUR)


def _ceiling(level: Level, over: str = CEILING) -> Level:
    text = "ceiling " + level.text + ("" if over == CEILING else " in " + over)
    return Level(text, level.number, level.unit, over)


def _words(text: str) -> Level:
    return Level(text, None, "", "")


_NONE = _words("none set; that is not a permission")


def _limits(
    agent: str, stuff: str, *rows: tuple[str, tuple[Level, ...], str, str, str, str]
) -> tuple[ExposureLimit, ...]:
    return tuple([ExposureLimit(agent, stuff, row[0], row[1], row[2], row[3], row[4], row[5])
                  for row in rows])


def _pel(*levels: Level, source: str = _OSHA, status: str = _READ) -> tuple[
        str, tuple[Level, ...], str, str, str, str]:
    return ("OSHA PEL", levels, "" if levels == (_NONE,) else SHIFT, _NOW, source, status)


def _rel(*levels: Level, source: str = _OSHA, status: str = _READ) -> tuple[
        str, tuple[Level, ...], str, str, str, str]:
    return ("NIOSH REL", levels, LONG_SHIFT, _NOW, source, status)


def _tlv(*levels: Level, source: str = _TLV, status: str = _MEMORY, recorded: str = _NOW) -> tuple[
        str, tuple[Level, ...], str, str, str, str]:
    return ("ACGIH TLV", levels, SHIFT, recorded, source, status)


def _idlh(level: Level, source: str = _IDLH) -> tuple[str, tuple[Level, ...], str, str, str, str]:
    return (DANGER, (level,), AT_ONCE, _NOW, source, _READ)


LIMITS = (
    _limits(
        "wood-dust", "wood dust",
        _pel(_mass("15", " total"), _mass("5", " respirable"), source="osha-wood-dust"),
        _rel(_mass("1", " total"), source="osha-wood-dust"),
        _tlv(_mass("1", " inhalable"), _mass("0.5", " for western red cedar"), source="osha-wood-dust",
             status=_READ),
        ("IARC", (_words("group 1, carcinogenic to humans"),), "", "2012", "iarc-wood-dust", _READ),
    )
    + _limits(
        "glass-dust", "glass fibre dust",
        _rel(_words("3 fibres/cm3 (to 3.5 µm thick, from 10 µm long)"), _mass("5", " total")),
        _tlv(_words("1 fibre/cm3 respirable"), _mass("5", " inhalable, continuous filament")),
        _pel(_mass("15", " total"), _mass("5", " respirable, as any dust"), status=_MEMORY),
        ("IARC", (_words("group 3, continuous filament not classifiable"),), "", "2005", _OSHA, _READ),
    )
    + _limits(
        "acetone", "acetone",
        _pel(_ppm("1000", "2400")),
        _rel(_ppm("250", "590")),
        _tlv(_ppm("250"), _short(_ppm("500")), status=_SECOND),
        _idlh(_ppm("2500"), _OSHA),
    )
    + _limits(
        "toluene", "toluene",
        _pel(_ppm("200"), _ceiling(_ppm("300")), Level("peak 500 ppm for 10 min", 500.0, PPM, "10 min")),
        _rel(_ppm("100", "375"), _short(_ppm("150"))),
        _tlv(_ppm("20"), status=_SECOND),
        _idlh(_ppm("500"), _OSHA),
    )
    + _limits(
        "xylene", "xylenes",
        _pel(_ppm("100", "435")),
        _rel(_ppm("100", "435"), _short(_ppm("150"))),
        _tlv(_ppm("20", note=" since 2021"), recorded="2021"),
        _idlh(_ppm("900"), _OSHA),
    )
    + _limits(
        "mineral-spirits", "mineral spirits (Stoddard solvent)",
        _pel(_ppm("500", "2900")),
        _rel(_mass("350"), _ceiling(_mass("1800"), QUARTER_HOUR)),
        _tlv(_ppm("100", "525"), source=_OSHA, status=_READ),
        _idlh(_mass("20000"), _OSHA),
    )
    + _limits(
        "naphtha", "VM&P naphtha",
        _pel(_NONE),
        _rel(_mass("350"), _ceiling(_mass("1800"), QUARTER_HOUR)),
        _tlv(_ppm("300", "1370"), source=_OSHA, status=_READ, recorded="2006"),
    )
    + _limits(
        "butyl-acetate", "n-butyl acetate",
        _pel(_ppm("150", "710")),
        _rel(_ppm("150", "710"), _short(_ppm("200", "950"))),
        _tlv(_ppm("50"), _short(_ppm("150"))),
        _idlh(_ppm("1700")),
    )
    + _limits(
        "isobutyl-acetate", "isobutyl acetate",
        _pel(_ppm("150", "700"), source=_IDLH),
        _rel(_ppm("150", "700"), source=_IDLH),
        _tlv(_ppm("50"), _short(_ppm("150"))),
        _idlh(_ppm("1300")),
    )
    + _limits(
        "ethyl-acetate", "ethyl acetate",
        _pel(_ppm("400", "1400"), source=_IDLH),
        _rel(_ppm("400", "1400"), source=_IDLH),
        _idlh(_ppm("2000")),
    )
    + _limits(
        "mek", "methyl ethyl ketone",
        _pel(_ppm("200", "590"), source=_IDLH),
        _rel(_ppm("200", "590"), _short(_ppm("300", "885")), source=_IDLH),
        _idlh(_ppm("3000")),
    )
    + _limits(
        "isopropanol", "isopropanol",
        _pel(_ppm("400", "980"), source=_IDLH),
        _rel(_ppm("400", "980"), _short(_ppm("500", "1225")), source=_IDLH),
        _tlv(_ppm("200"), _short(_ppm("400"))),
        _idlh(_ppm("2000")),
    )
    + _limits(
        "ethanol", "ethanol",
        _pel(_ppm("1000", "1900"), source=_IDLH),
        _rel(_ppm("1000", "1900"), source=_IDLH),
        _idlh(_ppm("3300")),
    )
    + _limits(
        "methanol", "methanol",
        _pel(_ppm("200", "260"), source=_IDLH),
        _rel(_ppm("200", "260"), _short(_ppm("250", "325", ", through the skin, too,")), source=_IDLH),
        _idlh(_ppm("6000")),
    )
    + _limits(
        "butanol", "1-butanol",
        _pel(_ppm("100", "300"), source=_IDLH),
        ("NIOSH REL", (_ceiling(_ppm("50", "150", ", through the skin, too")),), CEILING, _NOW, _IDLH, _READ),
        _tlv(_ppm("20"), source="haz-map-butanol", status=_SECOND),
        _idlh(_ppm("1400")),
    )
    + _limits(
        "turpentine", "turpentine",
        _pel(_ppm("100", "560"), source=_IDLH),
        _rel(_ppm("100", "560"), source=_IDLH),
        _idlh(_ppm("800")),
    )
    + _limits(
        "isocyanate", "HDI monomer (two-part urethane hardener)",
        _rel(_ppm("0.005", "0.035"), _ceiling(_ppm("0.020", "0.140"), "10 min"), source="niosh-hdi"),
        _tlv(_ppm("0.005"), source="niosh-hdi", status=_READ),
        _pel(_NONE, source="niosh-hdi", status=_SECOND),
    )
    + _limits(
        "isocyanate", "HDI polyisocyanate (most of a urethane spray)",
        ("Oregon", (_mass("0.5"),), SHIFT, _NOW, "oregon-polyisocyanate", _MEMORY),
        ("Oregon, short term", (_short(_mass("1")),), QUARTER_HOUR, _NOW, "oregon-polyisocyanate", _SECOND),
        _pel(_NONE, source="niosh-hdi", status=_SECOND),
    )
    + _limits(
        "isocyanate", "MDI (methylene bisphenyl isocyanate)",
        ("OSHA PEL", (_ceiling(_ppm("0.02", "0.2")),), CEILING, _NOW, "niosh-mdi", _READ),
        _rel(_ppm("0.005", "0.05"), _ceiling(_ppm("0.020", "0.2"), "10 min"), source="niosh-mdi"),
        _idlh(_mass("75"), "niosh-mdi"),
    )
    + _limits(
        "isocyanate", "TDI (toluene-2,4-diisocyanate)",
        ("OSHA PEL", (_ceiling(_ppm("0.02", "0.14")),), CEILING, _NOW, "niosh-tdi", _READ),
        ("NIOSH REL", (_words("none: a possible cause of cancer, as little as can be"),), "", _NOW,
         "niosh-tdi", _READ),
        _idlh(_ppm("2.5"), "niosh-tdi"),
    )
    + _limits(
        "formaldehyde", "formaldehyde",
        _rel(_ppm("0.016"), _ceiling(_ppm("0.1"), QUARTER_HOUR), source="niosh-formaldehyde"),
        _pel(_ppm("0.75"), _short(_ppm("2")), source="niosh-formaldehyde"),
    )
    + _limits(
        "cyanoacrylate", "ethyl cyanoacrylate (CA glue)",
        _tlv(_ppm("0.2"), _short(_ppm("1"))),
        ("Ontario", (_ppm("0.2"),), SHIFT, _NOW, "ontario-cyanoacrylate", _SECOND),
        _pel(_NONE, source="ontario-cyanoacrylate", status=_SECOND),
    )
)


def limits_of(agent: str) -> list[ExposureLimit]:
    """Return the limits for an agent; none where none were read."""
    return [limit for limit in LIMITS if limit.agent == agent]


def value_of(limit: ExposureLimit) -> str:
    """Return all levels of a limit as one text."""
    return "; ".join([level.text for level in limit.levels])
