"""Families of finish with typical figures, for planning until the maker's sheet is at hand.

Every figure is an assumption to edit: products of one family differ by more than families do.
"""


class FinishFamily:
    """A family.

    volume_solids [1] as it comes. recoat_from [s]: next coat not before; recoat_to [s]: after it only on a
    sanded film, None where that is always so or never matters. cure [s]: until the bow may be strung and
    handled hard. least_temperature [degC]: below it curing slows out of all rule or stops. makes_film:
    whether it builds a film at all. film_cap [m]: the whole dry film at which makers begin to cap it, and the
    most that any allow; None where none is usual. pot_life [s] of what is mixed, at POT_LIFE_REFERENCE; None
    where nothing is mixed, or only the can can tell.
    """

    def __init__(
        self, id: str, name: str, volume_solids: float, recoat_from: float, recoat_to: float | None,
        cure: float, least_temperature: float, makes_film: bool, film_cap: tuple[float, float] | None,
        pot_life: float | None, note: str, source: str, status: str,
    ) -> None:
        self.id = id
        self.name = name
        self.volume_solids = volume_solids
        self.recoat_from = recoat_from
        self.recoat_to = recoat_to
        self.cure = cure
        self.least_temperature = least_temperature
        self.makes_film = makes_film
        self.film_cap = film_cap
        self.pot_life = pot_life
        self.note = note
        self.source = source
        self.status = status


class Method:
    """A way to lay a finish on. transfer_efficiency [1]: what of it stays on the work."""

    def __init__(self, id: str, name: str, transfer_efficiency: float, source: str, status: str) -> None:
        self.id = id
        self.name = name
        self.transfer_efficiency = transfer_efficiency
        self.source = source
        self.status = status


POT_LIFE_REFERENCE = "70 °F"
"""Warmth for which pot lives are stated (source: pot-life-halving)."""

MIL = 25.4e-6
HOUR = 3600.0
DAY = 24 * HOUR
_TYPICAL = "finish-practice"
_STATUS = "common practice"


def _family(
    id: str, name: str, solids: float, recoat_from: float, recoat_to: float | None, cure_days: float,
    least: float, note: str, makes_film: bool = True, film_cap: tuple[float, float] | None = None,
    pot_life: float | None = None,
) -> FinishFamily:
    return FinishFamily(id, name, solids, recoat_from * HOUR, None if recoat_to is None else recoat_to * HOUR,
                  cure_days * DAY, least, makes_film, film_cap, None if pot_life is None else pot_life * HOUR,
                        note, _TYPICAL, _STATUS)


FAMILIES = (
    _family("two-part-urethane", "two-part urethane", 0.45, 4.0, 24.0, 7.0, 15.0,
            "Holds isocyanate while wet and as spray. Mixed, it lasts about 2 hours in the pot: mix for one "
            "coat at a time.", pot_life=2.0),
    _family("one-part-urethane", "one-part urethane", 0.45, 6.0, 24.0, 10.0, 13.0,
            "Later coats hold only on a sanded film. Some cure by moisture and hold isocyanate: read section "
            "3 of the data sheet for it, whatever the tin is called."),
    _family("oil-varnish", "oil varnish", 0.45, 24.0, 72.0, 14.0, 13.0,
            "Slow; soft for weeks in a thick film. Rags can catch fire by themselves."),
    _family("catalysed-lacquer", "catalysed lacquer", 0.30, 1.0, 24.0, 3.0, 18.0,
            "Most makers cap the whole dry film, often at 4 to 5 mil: thicker cracks. Acid-catalysed ones "
            "give off formaldehyde, wet and for days after.", film_cap=(4 * MIL, 5 * MIL)),
    _family("shellac", "shellac", 0.15, 2.0, None, 3.0, 13.0,
            "Each coat melts into the last. Water and alcohol mark it; often only the sealer."),
    _family("rubbed-oil", "hand-rubbed oil", 0.70, 24.0, None, 14.0, 13.0,
            "Hardly a film: wipe off what the wood does not take. On bare wood only, not on glass. Rags can "
            "catch fire by themselves.", makes_film=False),
)

RATED_TRANSFER = 0.65
"""What a low-pressure gun is rated for, on a flat panel (source: transfer-rating). A bow is none: the method
below stands in the middle of the 50 to 60 per cent that trade sources give for work in the shop."""

METHODS = (
    Method("hvlp", "spray gun, low pressure", 0.55, "transfer-rating", "read"),
    Method("conventional", "spray gun, high pressure", 0.30, "transfer-rating", "read"),
    Method("brush", "brush", 0.95, _TYPICAL, _STATUS),
    Method("wipe", "rag", 0.80, _TYPICAL, _STATUS),
)


def find(id: str) -> FinishFamily:
    """Return the family with this id.

    Raises:
        ValueError: no family has this id.
    """
    for family in FAMILIES:
        if family.id == id:
            return family
    raise ValueError("no family of finish is called " + id)


def find_method(id: str) -> Method:
    """Return the way of laying it on with this id.

    Raises:
        ValueError: no way has this id.
    """
    for method in METHODS:
        if method.id == id:
            return method
    raise ValueError("no way of laying finish on is called " + id)
