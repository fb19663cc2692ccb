"""Every source the calculators and pages lean on, each under one key.

`status` says how far the source was read: "read" (the figure was read in the
text named), "read second-hand" (in a text that quotes it), "from memory"
(nobody saw the source), "common practice" (a trade rule without a published
source), "calculated" (worked out here from first principles).
"""

from collections import namedtuple

Source = namedtuple("Source", "key text status")

SOURCES = (
    Source("amo-draw-length",
           "AMO Standards Committee, Field Publication FP-3 (2000), draw length and draw weight: draw is "
           "the distance from nocking point to pivot point plus 1 3/4 in, and the marked weight is that "
           "at 28 in.",
           "read second-hand"),
    Source("amo-forward-of-centre",
           "AMO definition of the balance point: 100 (A - L/2) / L, A from nock throat to balance point, "
           "L from nock throat to the end of the shaft without its point.",
           "read second-hand"),
    Source("astm-d2555",
           "ASTM D2555, clear wood strength values: Port Orford cedar, green, modulus 1297 thousand psi "
           "with a standard deviation of 247, specific gravity 0.39 with 0.034.",
           "read second-hand"),
    Source("astm-f1544",
           "ASTM F1544-11, rating velocity of a bow: tested with an arrow of 5 grains for each pound of "
           "peak draw force; readings an inch or less apart. An excerpt was read.",
           "read"),
    Source("astm-f1832",
           "ASTM F1832-07, static hysteresis of a bow: stored energy is the area under the draw-force "
           "curve from brace to full draw. The scope was read.",
           "read"),
    Source("astm-f2031",
           "ASTM F2031-05 (2014), measurement of arrow shaft static spine: a three-point test; the span "
           "of 28 in and the load of 1.94 lb (880 g) were read second-hand.",
           "read second-hand"),
    Source("beam-theory",
           "The theory of slender elastic beams, as in any text on mechanics of materials; worked out "
           "here from first principles and checked against independent numerical solutions.",
           "calculated"),
    Source("bench-practice",
           "Rules handed down at the bench, without a published source.",
           "common practice"),
    Source("geometry",
           "Plane and solid geometry.",
           "calculated"),
    Source("hickman-1937",
           "C. N. Hickman, The dynamics of a bow and arrow, part 2, in Hickman, Nagler and Klopsteg, "
           "Archery: The Technical Side (1947): a third of the string's mass moves as if it were on the "
           "arrow.",
           "read"),
    Source("lever-estimate", "First-order estimate from two rigid limbs on elastic hinges, worked out in "
           "the method section of the page that uses it.", "calculated"),
    Source("newtonian-mechanics",
           "Newton's laws for point masses, as in any text; worked out here from first principles.",
           "calculated"),
    Source("rheingans-1947",
           "Rheingans, Spine and arrow design, and Debunking spine, in Hickman, Nagler and Klopsteg, "
           "Archery: The Technical Side (1947): span of 26 in, load of 2 lb; density and modulus of "
           "shaft woods, table 2.",
           "read"),
    Source("shaft-stock-survey",
           "Diameters and spine weights in which a dealer offers Port Orford cedar shafts.",
           "read"),
    Source("spine-weight-rule",
           "Spine weight in pounds is 26 divided by the deflection in inches in the 26 in, 2 lb test; a "
           "letter quoted on a page was read.",
           "read second-hand"),
    Source("tapley-virtual-mass",
           "J. Tapley, notes on bow efficiency: the energy is shared between the arrow and a virtual "
           "mass that is constant over a sensible range of arrow mass; with a measurement of one 66 in "
           "recurve.",
           "read second-hand"),
    Source("tuijn-kooi-1992",
           "C. Tuijn and B. W. Kooi, The measurement of arrow velocities in the students' laboratory, "
           "European Journal of Physics 13 (1992): draw, weight and stored energy of four recurves.",
           "read"),
    Source("wood-handbook",
           "USDA Forest Products Laboratory, Wood Handbook: Wood as an Engineering Material, FPL-GTR-190 "
           "(2010), strength tables for clear wood at 12 % moisture; read in tables derived from it.",
           "read second-hand"),
    Source("wood-property-page",
           "A page of wood properties: Port Orford cedar 465 kg/m3, modulus 11.35 GPa, bending strength "
           "84.8 MPa.",
           "read second-hand"),
)


def find(key: str) -> Source:
    """Return the source with this key.

    Raises:
        ValueError: no source has this key.
    """
    for source in SOURCES:
        if source.key == key:
            return source
    raise ValueError("no source is called " + key)
