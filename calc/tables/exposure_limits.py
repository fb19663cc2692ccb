"""Published limits for what a person may breathe, as they were read.

They change: each row has the date of its record. They are information, not a verdict on a room: only a
measurement in the breathing zone says what is there.
"""

from collections import namedtuple

Limit = namedtuple("Limit", "agent stuff body value averaging recorded source status")
"""A limit.

agent: id of what it is for; stuff: its name. body: who set it. averaging: over what time. recorded: the month
in which the row was set down here, or an earlier year from which the figure is known.
"""

SHIFT = "8 h"
_NOW = "2026-11"


def _limits(agent: str, stuff: str, *rows: tuple[str, str, str, str, str, str]) -> tuple[Limit, ...]:
    return tuple([Limit(agent, stuff, row[0], row[1], row[2], row[3], row[4], row[5]) for row in rows])


_OSHA = "osha-chemical-data"
_MEMORY = "from memory"

LIMITS = (
    _limits(
        "wood-dust", "wood dust",
        ("OSHA PEL", "15 mg/m3 total, 5 mg/m3 respirable", SHIFT, _NOW, "osha-wood-dust", "read"),
        ("NIOSH REL", "1 mg/m3 total", "10 h", _NOW, "osha-wood-dust", "read"),
        ("ACGIH TLV", "1 mg/m3 inhalable; western red cedar 0.5", SHIFT, _NOW, "osha-wood-dust", "read"),
        ("IARC", "group 1, carcinogenic to humans", "", "2012", "iarc-wood-dust", "read"),
    )
    + _limits(
        "glass-dust", "glass fibre dust",
        ("NIOSH REL", "3 fibres/cm3 (to 3.5 µm thick, from 10 µm long) and 5 mg/m3 total", "10 h", _NOW,
         _OSHA, "read"),
        ("ACGIH TLV", "1 fibre/cm3 respirable; 5 mg/m3 inhalable, continuous filament", SHIFT, _NOW,
         "acgih-limits", _MEMORY),
        ("OSHA PEL", "15 mg/m3 total, 5 mg/m3 respirable, as any dust", SHIFT, _NOW, _OSHA, _MEMORY),
        ("IARC", "group 3, continuous filament not classifiable", "", "2005", _OSHA, "read"),
    )
    + _limits(
        "acetone", "acetone",
        ("OSHA PEL", "1000 ppm (2400 mg/m3)", SHIFT, _NOW, _OSHA, "read"),
        ("NIOSH REL", "250 ppm (590 mg/m3)", "10 h", _NOW, _OSHA, "read"),
        ("ACGIH TLV", "250 ppm; 500 ppm in 15 min", SHIFT, _NOW, "acgih-limits", "read second-hand"),
        ("IDLH", "2500 ppm", "at once", _NOW, _OSHA, "read"),
    )
    + _limits(
        "toluene", "toluene",
        ("OSHA PEL", "200 ppm; ceiling 300, peak 500 for 10 min", SHIFT, _NOW, _OSHA, "read"),
        ("NIOSH REL", "100 ppm (375 mg/m3); 150 ppm in 15 min", "10 h", _NOW, _OSHA, "read"),
        ("ACGIH TLV", "20 ppm", SHIFT, _NOW, "acgih-limits", "read second-hand"),
        ("IDLH", "500 ppm", "at once", _NOW, _OSHA, "read"),
    )
    + _limits(
        "xylene", "xylenes",
        ("OSHA PEL", "100 ppm (435 mg/m3)", SHIFT, _NOW, _OSHA, "read"),
        ("NIOSH REL", "100 ppm (435 mg/m3); 150 ppm in 15 min", "10 h", _NOW, _OSHA, "read"),
        ("ACGIH TLV", "20 ppm since 2021", SHIFT, "2021", "acgih-limits", _MEMORY),
        ("IDLH", "900 ppm", "at once", _NOW, _OSHA, "read"),
    )
    + _limits(
        "mineral-spirits", "mineral spirits (Stoddard solvent)",
        ("OSHA PEL", "500 ppm (2900 mg/m3)", SHIFT, _NOW, _OSHA, "read"),
        ("NIOSH REL", "350 mg/m3; 1800 mg/m3 in 15 min", "10 h", _NOW, _OSHA, "read"),
        ("ACGIH TLV", "100 ppm (525 mg/m3)", SHIFT, _NOW, _OSHA, "read"),
        ("IDLH", "20 000 mg/m3", "at once", _NOW, _OSHA, "read"),
    )
    + _limits(
        "butyl-acetate", "n-butyl acetate",
        ("OSHA PEL", "150 ppm (710 mg/m3)", SHIFT, _NOW, _OSHA, _MEMORY),
        ("NIOSH REL", "150 ppm; 200 ppm in 15 min", "10 h", _NOW, _OSHA, _MEMORY),
        ("ACGIH TLV", "50 ppm; 150 ppm in 15 min", SHIFT, _NOW, "acgih-limits", _MEMORY),
    )
    + _limits(
        "isocyanate", "hexamethylene diisocyanate (two-part urethane hardener)",
        ("NIOSH REL", "0.005 ppm (0.035 mg/m3); ceiling 0.020 ppm (0.140 mg/m3) in 10 min", "10 h", _NOW,
         "niosh-hdi", "read"),
        ("ACGIH TLV", "0.005 ppm", SHIFT, _NOW, "niosh-hdi", "read"),
        ("OSHA PEL", "none set; that is not a permission", "", _NOW, "niosh-hdi", "read second-hand"),
    )
    + _limits(
        "formaldehyde", "formaldehyde",
        ("NIOSH REL", "0.016 ppm; ceiling 0.1 ppm in 15 min", "10 h", _NOW, "niosh-formaldehyde", "read"),
        ("OSHA PEL", "0.75 ppm; 2 ppm in 15 min", SHIFT, _NOW, "niosh-formaldehyde", "read"),
    )
    + _limits(
        "cyanoacrylate", "ethyl cyanoacrylate (CA glue)",
        ("ACGIH TLV", "0.2 ppm; 1 ppm in 15 min", SHIFT, _NOW, "acgih-limits", _MEMORY),
        ("Ontario", "0.2 ppm", SHIFT, _NOW, "ontario-cyanoacrylate", "read second-hand"),
        ("OSHA PEL", "none set; that is not a permission", "", _NOW, "ontario-cyanoacrylate",
         "read second-hand"),
    )
)


def limits_of(agent: str) -> list[Limit]:
    """Return the limits for an agent; none where none were read."""
    return [limit for limit in LIMITS if limit.agent == agent]
