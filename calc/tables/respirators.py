"""Respirator families and the protection factors that OSHA assigns to them.

A factor holds for a fitted, tested respirator in a programme as the rule asks, with the right filter. It is
information for reading a safety data sheet, not a choice made for anybody.
"""

from collections import namedtuple

Respirator = namedtuple("Respirator", "id name assigned_factor source status")

_OSHA = "osha-respirators"

RESPIRATORS = (
    Respirator("half", "half mask with filters or cartridges, fit-tested", 10, _OSHA, "read"),
    Respirator("full", "full facepiece with filters or cartridges, fit-tested", 50, _OSHA, "read"),
    Respirator("powered-loose", "powered air, loose-fitting", 25, _OSHA, "read"),
    Respirator("powered-half", "powered air, half mask", 50, _OSHA, "read"),
    Respirator("powered-full", "powered air, full facepiece", 1000, _OSHA, "read"),
    Respirator("supplied-loose", "supplied air, continuous flow, loose-fitting", 25, _OSHA, "from memory"),
    Respirator("supplied-full", "supplied air, continuous flow, full facepiece", 1000, _OSHA, "from memory"),
)

Need = namedtuple("Need", "agent name families text")
"""What practice and data sheets ask for in front of an agent; families: ids of respirators to read about."""

NEEDS = (
    Need("solvent", "Solvent vapour", ("half", "full", "powered-full", "supplied-full"),
         "Solvent vapour asks for organic-vapour cartridges, with a particle prefilter while "
         "spraying, changed by a schedule and not by smell. A filter for dust alone does nothing. "
         "These cartridges are in general not made for formaldehyde (acid-catalysed lacquer) and never "
         "for isocyanate."),
    Need("isocyanate", "Isocyanate (two-part urethane, some one-part)", ("supplied-loose", "supplied-full"),
         "Isocyanate cannot be smelt at the limit and can sensitise for life: NIOSH lists supplied "
         "air, with skin and eyes covered. Without that equipment and training, have it sprayed by "
         "somebody who has both, or choose another finish. Some one-part urethanes hold it, too: "
         "section 3 of the data sheet says so."),
    Need("formaldehyde", "Formaldehyde (acid-catalysed lacquer)", ("supplied-full",),
         "Formaldehyde irritates eyes and airways, and NIOSH treats it as a cause of cancer: above its "
         "limit NIOSH lists supplied air and breathing apparatus only. Organic-vapour cartridges are in "
         "general not made for it: follow the data sheet of the lacquer."),
    Need("cyanoacrylate", "Cyanoacrylate glue", ("full", "supplied-full"),
         "Cyanoacrylate vapour irritates eyes and airways: draw it off at the joint, use little, and "
         "keep the room at ordinary humidity. Its safety data sheet names the equipment."),
    Need("wood-dust", "Wood dust", ("half", "full", "powered-loose", "powered-full"),
         "Wood dust asks for extraction at the tool first, then a fitted particle-filter respirator."),
    Need("glass-dust", "Glass and epoxy dust", ("half", "full", "powered-loose", "powered-full"),
         "Glass and epoxy dust asks for wet sanding or extraction first, then a fitted particle-filter "
         "respirator, gloves and long sleeves."),
)


def find(id: str) -> Respirator:
    """Return the respirator family with this id.

    Raises:
        ValueError: no family has this id.
    """
    for respirator in RESPIRATORS:
        if respirator.id == id:
            return respirator
    raise ValueError("no respirator is called " + id)


def need_for(agent: str) -> Need:
    """Return what an agent asks for.

    Raises:
        ValueError: nothing is known about the agent.
    """
    for need in NEEDS:
        if need.agent == agent:
            return need
    raise ValueError("no respirator is known for " + agent)
