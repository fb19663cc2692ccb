"""Solvents of the finishing room: what their vapour weighs, and from which share of the air it burns.

A lower flammable limit is about fire. It is hundreds of times what a person may breathe, and never a health
limit.
"""

from collections import namedtuple

Solvent = namedtuple("Solvent", "id name density molar_mass lower_limit flash_point source status note")
"""A solvent.

density [kg/m^3] of the liquid at room temperature and molar_mass [kg/mol]: from memory, chemical handbooks.
lower_limit [1]: the lowest lower flammable limit that was read for it. flash_point [degC]. source and status
are those of lower_limit and flash_point.
"""

_DATA = "solvent-flammability"
_SECOND = "read second-hand"


def _solvent(
    id: str, name: str, density: float, grams_per_mole: float, percent: float, flash_point: float,
    status: str = _SECOND, note: str = "", source: str = _DATA,
) -> Solvent:
    return Solvent(id, name, density, grams_per_mole / 1000, percent / 100, flash_point, source, status, note)


SOLVENTS = (
    _solvent("acetone", "acetone", 790.0, 58.08, 2.5, -20.0),
    _solvent("toluene", "toluene", 867.0, 92.14, 1.0, 4.0, note="1.1 % in another table."),
    _solvent("xylene", "xylene", 864.0, 106.17, 0.9, 25.0, note="m-xylene 1.0 % in another table."),
    _solvent("butyl-acetate", "n-butyl acetate", 882.0, 116.16, 1.2, 22.0, note="1.7 % in another table."),
    _solvent("isobutyl-acetate", "isobutyl acetate", 871.0, 116.16, 1.3, 18.0,
             note="1.3 % by NIOSH, 2.4 % in another table. The lower is used."),
    _solvent("ethyl-acetate", "ethyl acetate", 900.0, 88.11, 2.0, -4.0),
    _solvent("mek", "methyl ethyl ketone", 805.0, 72.11, 1.4, -6.0, note="1.5 % in another table."),
    _solvent("isopropanol", "isopropanol", 785.0, 60.10, 2.0, 12.0),
    _solvent("ethanol", "ethanol", 789.0, 46.07, 3.1, 13.0, note="3.3 % in another table."),
    _solvent("methanol", "methanol", 791.0, 32.04, 6.0, 9.0, note="12 °C in another table. Poisons through "
             "the skin, too."),
    _solvent("butanol", "1-butanol", 810.0, 74.12, 1.4, 36.0),
    _solvent("turpentine", "turpentine", 860.0, 136.2, 0.8, 35.0),
    _solvent("naphtha", "VM&P naphtha", 745.0, 100.0, 1.2, -7.0, "read",
             "A mixture: flash point -7 to 13 °C, molar mass 87 to 114 g/mol. Other naphthas burn from 1.1 % "
             "and flash far below: the sheet of yours gives both.", "niosh-naphtha"),
    _solvent("mineral-spirits", "mineral spirits", 780.0, 144.0, 0.8, 39.0, "from memory",
             "A mixture; its maker's sheet gives the limit of that very product. NIOSH: unknown."),
)


def find(id: str) -> Solvent:
    """Return the solvent with this id.

    Raises:
        ValueError: no solvent has this id.
    """
    for solvent in SOLVENTS:
        if solvent.id == id:
            return solvent
    raise ValueError("no solvent is called " + id)
