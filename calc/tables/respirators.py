"""Respirator families and the protection factors that OSHA assigns to them.

A factor holds for a fitted, tested respirator in a programme as the rule asks, with the right filter. It is
information for reading a safety data sheet, not a choice made for anybody.
"""


class Respirator:
    """A family. assigned_factor: how many times less is inside it than outside."""

    def __init__(self, id: str, name: str, assigned_factor: int, source: str, status: str) -> None:
        self.id = id
        self.name = name
        self.assigned_factor = assigned_factor
        self.source = source
        self.status = status


_OSHA = "osha-respirators"
_NIOSH = "niosh-formaldehyde"

RESPIRATORS = (
    Respirator("n95", "disposable particle mask N95, R95 or P95, fit-tested; no vapour", 10, _OSHA,
               "from memory"),
    Respirator("p100", "disposable particle mask N100, R100 or P100, fit-tested; no vapour", 10,
               "niosh-particle-filters", "read"),
    Respirator("ffp2", "disposable particle mask FFP2 (EN 149), fit-tested; no vapour", 10, "ffp-classes",
               "read second-hand"),
    Respirator("ffp3", "disposable particle mask FFP3 (EN 149), fit-tested; no vapour", 20, "ffp-classes",
               "read second-hand"),
    Respirator("half", "half mask with filters or cartridges, fit-tested", 10, _OSHA, "read"),
    Respirator("full", "full facepiece with filters or cartridges, fit-tested", 50, _OSHA, "read"),
    Respirator("powered-loose", "powered air, loose-fitting", 25, _OSHA, "read"),
    Respirator("powered-half", "powered air, half mask", 50, _OSHA, "read"),
    Respirator("powered-full", "powered air, full facepiece", 1000, _OSHA, "read"),
    Respirator("supplied-loose", "supplied air, continuous flow, loose-fitting", 25, _OSHA, "from memory"),
    Respirator("supplied-full", "supplied air, continuous flow, full facepiece", 1000, _OSHA, "from memory"),
    Respirator("supplied-bottle", "supplied air, pressure demand, full facepiece, with a bottle of its own "
               "to get out on", 10000, _NIOSH, "read"),
    Respirator("bottle", "self-contained breathing apparatus, pressure demand, full facepiece", 10000, _NIOSH,
               "read"),
)


class Need:
    """What practice and data sheets ask for in front of an agent; families: ids of respirators to read of."""

    def __init__(self, agent: str, name: str, families: tuple[str, ...], text: str) -> None:
        self.agent = agent
        self.name = name
        self.families = families
        self.text = text


NEEDS = (
    Need("solvent", "Solvent vapour", ("half", "full", "powered-full", "supplied-full"),
         "Solvent vapour asks for organic-vapour cartridges, with a particle prefilter while "
         "spraying, changed by a schedule and not by smell. A filter for dust alone does nothing. "
         "These cartridges are in general not made for formaldehyde (acid-catalysed lacquer) and never "
         "for isocyanate."),
    Need("isocyanate", "Isocyanate (two-part urethane, some one-part)",
         ("supplied-loose", "supplied-full", "supplied-bottle"),
         "Isocyanate cannot be smelt at the limit and can sensitise for life: NIOSH lists supplied "
         "air, with skin and eyes covered, and for TDI a factor of 10,000 only. Without that equipment and "
         "training, have it sprayed by somebody who has both, or choose another finish. Some one-part "
         "urethanes hold it, too: section 3 of the data sheet says so."),
    Need("formaldehyde", "Formaldehyde (acid-catalysed lacquer)", ("supplied-bottle", "bottle"),
         "Formaldehyde irritates eyes and airways, and NIOSH treats it as a cause of cancer. Above its "
         "recommended limit the NIOSH page lists equipment of a factor of 10,000 only: breathing apparatus, "
         "or supplied air with a bottle to get out on, both under pressure. Organic-vapour cartridges are in "
         "general not made for it: without that equipment choose another finish, or a licensed sprayer."),
    Need("cyanoacrylate", "Cyanoacrylate glue", ("full", "supplied-full"),
         "Cyanoacrylate vapour irritates eyes and airways: draw it off at the joint, use little, keep the "
         "face to one side and the room at ordinary humidity. Nobody's measurements at a bench were found. "
         "Its safety data sheet names the equipment."),
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
