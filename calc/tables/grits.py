"""Mean grain size of abrasive grades, by scale, and which grades go where on a bow.

Up to 220 the two scales run close together; beyond it the same number is finer in CAMI. P grades to 220
are sieved, from 240 on they are sorted by how fast they settle.
"""

from collections import namedtuple


class Grit:
    """A grade. scale: P or CAMI. number: as printed on the sheet. size [m]: mean diameter of the grains."""

    def __init__(self, id: str, scale: str, number: int, size: float, source: str, status: str) -> None:
        self.id = id
        self.scale = scale
        self.number = number
        self.size = size
        self.source = source
        self.status = status


Use = namedtuple("Use", "id work grades way until source status")
"""Grades for one kind of work, P scale. way, until: wet or dry, and how far; empty where it is not between
coats."""

P = "p"
CAMI = "cami"
SCALE_NAMES = ((P, "P (FEPA, ISO 6344)"), (CAMI, "CAMI (ANSI)"))

MICROMETRE = 1e-6
_SOURCE = "grit-sizes"
_STATUS = "read second-hand"


def _scale(scale: str, sizes: tuple[tuple[int, float], ...]) -> tuple[Grit, ...]:
    prefix = "p" if scale == P else "c"
    return tuple([Grit(prefix + str(number), scale, number, micrometres * MICROMETRE, _SOURCE, _STATUS)
                  for number, micrometres in sizes])


P_GRITS = _scale(P, (
    (12, 1815.0), (16, 1324.0), (20, 1000.0), (24, 764.0), (30, 642.0), (36, 538.0), (40, 425.0),
    (50, 336.0), (60, 269.0), (80, 201.0), (100, 162.0), (120, 125.0), (150, 100.0), (180, 82.0),
    (220, 68.0), (240, 58.5), (280, 52.2), (320, 46.2), (360, 40.5), (400, 35.0), (500, 30.2),
    (600, 25.8), (800, 21.8), (1000, 18.3), (1200, 15.3), (1500, 12.6), (2000, 10.3), (2500, 8.4),
))
CAMI_GRITS = _scale(CAMI, (
    (24, 708.0), (30, 632.0), (36, 530.0), (40, 425.0), (50, 348.0), (60, 265.0), (80, 190.0),
    (100, 140.0), (120, 115.0), (150, 92.0), (180, 82.0), (220, 68.0), (240, 53.0), (320, 36.0),
    (360, 28.0), (400, 23.0), (500, 20.0), (600, 16.0), (800, 12.6), (1000, 10.3),
))
GRITS = P_GRITS + CAMI_GRITS
FINER = tuple([Grit("p" + str(number), P, number, micrometres * MICROMETRE, "fine-grits", "from memory")
               for number, micrometres in ((3000, 6.5), (4000, 5.0), (5000, 4.0))])
"""Beyond the P scale, as makers name them: to look up, never to reckon with."""

PAPERS = ("p60", "p80", "p100", "p120", "p150", "p180", "p220", "p240", "p320", "p400", "p600")
"""Ids of the papers that a bow is sanded with."""

LIMB_PAPERS = PAPERS[1:]
"""Those for the faces of limbs."""


def _use(id: str, work: str, grades: str, way: str = "", until: str = "") -> Use:
    return Use(id, work, grades, way, until, "bench-practice", "common practice")


USES = (
    _use("riser-rasp", "Riser after rasp and file", "P80, P120, P180, P220"),
    _use("riser-scraper", "Riser after a scraper", "P120 or P150, P180, P220"),
    _use("old-finish", "Old finish off glass, by hand", "P180, P220; P120 takes glass faster than you think"),
    _use("edges", "Limb edges", "P180, P220, P320"),
    _use("raised-grain", "Raised grain, after wiping with a damp cloth", "P220 once more, lightly"),
    _use("sealer", "Before the sealer, film finish", "P220", "dry", "along the grain, dust wiped off"),
    _use("oil", "Before hand-rubbed oil", "P320 to P400", "dry", "along the grain"),
    _use("sealed", "After the seal coat", "P320", "dry", "only the raised fibres"),
    _use("build", "Between build coats", "P320 to P400", "wet or dry",
         "flat, until the gloss is evenly gone"),
    _use("lettering", "Under and over lettering", "P400 to P600", "by hand, light", "a scuff; never through"),
    _use("last", "Before the last coat", "P400 to P600, or what its data sheet says", "wet",
         "no shiny spot left"),
    _use("rubbing-out", "Rubbing out a last coat of gloss", "P1000 to P2000", "wet", "after full cure only"),
)


def between_coats() -> list[Use]:
    """Return the uses that belong to a finish, from bare wood to the last coat."""
    return [use for use in USES if use.way]


def name_of(grit: Grit) -> str:
    """Return a grade as it is written on the sheet: `P120`, or `120` on the CAMI scale."""
    return ("P" if grit.scale == P else "") + str(grit.number)


def find(id: str) -> Grit:
    """Return the grade with this id: `p120`, or `c120` on the CAMI scale.

    Raises:
        ValueError: no grade has this id.
    """
    for grit in GRITS:
        if grit.id == id:
            return grit
    raise ValueError("no grade is called " + id)
