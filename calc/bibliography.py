"""Every source the calculators and pages lean on, each under one key.

`status` says how far the source was read: "read" (the figure was read in the
text named), "read second-hand" (in a text that quotes it), "from memory"
(nobody saw the source), "common practice" (a trade rule without a published
source), "calculated" (worked out here from first principles).
"""

from collections import namedtuple

Source = namedtuple("Source", "key text status")

SOURCES = (
    Source("accessory-hole-spacing",
           "Archery manufacturers' convention for sight and quiver mounting holes: two #10-24 holes, 1 "
           "5/16 in from centre to centre.",
           "from memory"),
    Source("acgih-limits",
           "ACGIH threshold limit values (TLV): a proprietary list that was not seen; figures as remembered "
           "or as other pages quote them, to be checked against the current list.",
           "from memory"),
    Source("additive-limits",
           "29 CFR 1910.1000(d)(2): a mixture is over its limit where the concentrations, each over its own "
           "limit, come to more than one; with the example of 500, 45 and 40 ppm under limits of 1000, 200 "
           "and 200. Read in a copy. ACGIH has the same rule for stuffs that act on the same organ (read "
           "second-hand).",
           "read"),
    Source("air-change-table-1996",
           "Public Health Agency of Canada, table of minutes for one to fifty air changes an hour (1996), "
           "adapted from CDC 1994; read in a copy. Its figure for 13 changes and 99.9 % is misprinted.",
           "read"),
    Source("alduchov-eskridge-1996",
           "O. A. Alduchov and R. E. Eskridge, Improved Magnus form approximation of saturation vapor "
           "pressure, Journal of Applied Meteorology 35 (1996): constants 17.625 and 243.04 °C, stated for "
           "-40 to 60 °C within 0.35 °C.",
           "read second-hand"),
    Source("amo-bow-length",
           "AMO Standards (1987 and 2000): marked bow length is the length of the standard string plus "
           "3 in; the standard string is measured under 100 lb over 1/4 in pins, to 1/16 in; read in "
           "copies.",
           "read second-hand"),
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
    Source("bisshopp-drucker-1945",
           "K. E. Bisshopp and D. C. Drucker, Large deflection of cantilever beams, Quarterly of Applied "
           "Mathematics 3 (1945): the elliptic integrals for a load across the tip.",
           "from memory, confirmed by calculation"),
    Source("brown-1971",
           "D. C. Brown, Close-range camera calibration, Photogrammetric Engineering 37 (1971) 855-866: a "
           "lens moves a point along its radius by odd powers of it; the first of them is used here.",
           "from memory, confirmed by calculation"),
    Source("cadmium-pigments",
           "A printmakers' page on pigments: cadmium in strong yellows, oranges and reds, a cause of "
           "cancer by the lists of IARC and others; breathed in when such paint is sanded or heated.",
           "read second-hand"),
    Source("cdc-air-changes",
           "CDC, Guidelines for Environmental Infection Control in Health-Care Facilities (2003), table "
           "B.1: minutes until 99 % and 99.9 % of what is in the air has gone; read in a copy.",
           "read"),
    Source("coating-dew-point",
           "Rules of coating inspection: surface at least 3 °C above the dew point, relative humidity not "
           "over 85 %; read in texts that quote them.",
           "read second-hand"),
    Source("cure-doubling",
           "Coating practice: curing takes half as long for each 10 °C warmer, twice as long for each 10 °C "
           "colder; in two trade texts. A rule of thumb.",
           "read second-hand"),
    Source("cyanoacrylate-burn",
           "Too hot to handle? Full-thickness burn injury in a child caused by cyanoacrylate glue and "
           "cotton, Journal of Burn Care and Research (2020): 3 g on cotton came to 91 °C (196 °F); 16 "
           "such burns found. The abstract was read.",
           "read second-hand"),
    Source("cyanoacrylate-vapour",
           "Airborne concentrations of ethyl and methyl cyanoacrylate in the workplace, American Industrial "
           "Hygiene Association Journal 62 (2001) 70-79: 162 samples in a week at a plant that makes, mixes "
           "and bottles the glue, not at a bench that uses it; the abstract was read.",
           "read second-hand"),
    Source("dowel-edge-distance",
           "National Design Specification for Wood Construction (2005), table 11.5.1A: edge distance of "
           "1.5 diameters for dowel fasteners loaded along the grain.",
           "read second-hand"),
    Source("drill-charts",
           "Decimal sizes of number and letter drills, in two public data files that agree; the "
           "standard they follow, ASME B94.11M, was not seen.",
           "read second-hand"),
    Source("drying-reference",
           "Coating data sheets state drying times at 25 °C (77 °F) and 50 % relative humidity, some at 21 "
           "°C (70 °F).",
           "read second-hand"),
    Source("elastica",
           "Euler's elastica: a slender limb that bends in proportion to the moment and does not stretch; "
           "worked out here from first principles and checked against elliptic integrals and independent "
           "numerical solutions.",
           "calculated"),
    Source("epa-lead",
           "US Environmental Protection Agency, Renovate Lead-Safe, with pamphlets of it and of a state: "
           "paint from before 1978, an N-100 mask, mist, plastic sheet, fine-filter vacuum, no open flame, "
           "others kept out, clothes washed alone; lead harms children before birth, too.",
           "read"),
    Source("epoxy-sensitising",
           "European Agency for Safety and Health at Work, occupational exposure to epoxy resins: a "
           "notorious cause of allergic skin disease, and of allergy of the airways; gloves of thick "
           "nitrile or layered film in the abstract of a handbook's chapter.",
           "read"),
    Source("exponential-decay",
           "One well-mixed room with fresh air: what is in the air falls by the same share in each equal "
           "time. Worked out here; the same form stands in the equation list of an industrial hygiene "
           "board.",
           "calculated"),
    Source("eye-first-aid",
           "First aid for eyes on the pages of a hospital group and of an eye clinic: a cut or stuck "
           "object covered and left, not flushed and not removed; a speck not rubbed; chemicals flushed "
           "for 15 minutes at least.",
           "read"),
    Source("family-shapes",
           "Unstrung shapes of three families of laminated bows, invented to be typical: computed bows of "
           "these shapes come out with the fullness and the string length that real ones are known for.",
           "calculated"),
    Source("ffp-classes",
           "A university's safety page on disposable masks of EN 149: FFP1, FFP2 and FFP3 divide dust by 4, "
           "10 and 20 at best, and are not for gases or vapours.",
           "read second-hand"),
    Source("fine-grits",
           "Sizes of grains finer than P2500 as makers name them, P3000 to P5000: no standard was found, "
           "and makers differ.",
           "from memory"),
    Source("finish-practice",
           "Typical solids, recoat windows and cure of finish families, as the trade reckons with them. An "
           "assumption to edit; the maker's sheet comes first.",
           "common practice"),
    Source("fire-extinguishers",
           "29 CFR 1910.157 and NFPA 10 on portable extinguishers, in pages that quote them: 50 ft at most "
           "to one for liquids that burn, near exits, in sight, handle no higher than 5 ft where it weighs "
           "40 lb or less.",
           "read second-hand"),
    Source("forest-service-techsheet",
           "USDA Forest Products Laboratory, TechSheet on Dalbergia latifolia: bending strength 16,920 "
           "psi, modulus 1.78 million psi.",
           "read"),
    Source("fpl-gtr-229",
           "S. V. Glass, S. L. Zelinka and J. A. Johnson, FPL-GTR-229 (2014): the historic moisture data of "
           "wood are not reliable for scientific use.",
           "read"),
    Source("fritsch-carlson-1980",
           "F. N. Fritsch and R. E. Carlson, Monotone piecewise cubic interpolation, SIAM Journal on "
           "Numerical Analysis 17 (1980) 238-246; checked against a reference library.",
           "from memory, confirmed by calculation"),
    Source("geometry",
           "Plane and solid geometry.",
           "calculated"),
    Source("gloss-geometry",
           "ASTM D523, in a summary: gloss at 20, 60 and 85 degrees; compare at 60, at 20 above 70 GU, at "
           "85 below 10 GU.",
           "read second-hand"),
    Source("gloss-levels",
           "A paint institute's public page of gloss levels G1 to G7, in gloss units at 60 and 85 degrees.",
           "read"),
    Source("grit-sizes",
           "Mean particle sizes of FEPA P (ISO 6344) and CAMI grades, in two trade tables that agree.",
           "read second-hand"),
    Source("hand-sizes",
           "Breadth of the hand at the 5th, 50th and 95th percentile, of British and Hong Kong adults, on "
           "a page of a university's course in anthropometry; read in a copy. It rounds to 5 mm.",
           "read second-hand"),
    Source("handle-over-hand",
           "Y.-K. Kong and B. D. Lowe, Optimal cylindrical handle diameter for grip force tasks, "
           "International Journal of Industrial Ergonomics 35 (2005): the diameter felt best is 19.7 % of "
           "the hand's length. For tools that are gripped hard; a bow is held lightly.",
           "from memory"),
    Source("hartley-zisserman",
           "R. Hartley and A. Zisserman, Multiple View Geometry in Computer Vision, 2nd edition (2004), on "
           "the projection of a plane (chapter 4) and cameras; checked against a camera of our own in the "
           "tests.",
           "from memory, confirmed by calculation"),
    Source("haz-map-butanol",
           "An occupational health database, n-butyl alcohol: TLV 20 ppm, OSHA 100 ppm, IDLH 1400 ppm.",
           "read second-hand"),
    Source("iarc-wood-dust",
           "IARC Monographs volume 62, reaffirmed in volume 100C: wood dust is carcinogenic to humans "
           "(group 1); read in a copy.",
           "read"),
    Source("ideal-gas",
           "The ideal gas law, as in any text; a mole fills 24.45 L at 25 °C and 760 torr (OSHA table Z-1, "
           "footnote).",
           "read"),
    Source("international-inch",
           "The international inch, exactly 25.4 mm; checked against the constants of a numerical "
           "library.",
           "read second-hand"),
    Source("interpolation",
           "Cubic Hermite interpolation with difference formulas for the slopes, as in any text on numerical "
           "analysis.",
           "calculated"),
    Source("isotonic-regression",
           "Pooling of adjacent violators, least squares under a monotone order, as in texts on "
           "statistics; checked against a reference library.",
           "from memory, confirmed by calculation"),
    Source("kooi-1991",
           "B. W. Kooi, On the mechanics of the modern working-recurve bow, Computational Mechanics 8 "
           "(1991): measures and coefficients of a straight-end bow, coefficients of four others.",
           "from memory, confirmed by calculation"),
    Source("le-chatelier",
           "Le Chatelier's rule for the lower flammable limit of a mixture: one over the sum of each "
           "vapour's share over its limit; read on a page of chemistry and in a library of chemical "
           "engineering.",
           "read second-hand"),
    Source("least-squares",
           "A straight line by weighted least squares with its covariance, as in texts on statistics; "
           "checked against a reference library.",
           "from memory, confirmed by calculation"),
    Source("lever-estimate", "First-order estimate from two rigid limbs on elastic hinges, worked out in "
           "the method section of the page that uses it.", "calculated"),
    Source("mattiasson-1981",
           "K. Mattiasson, Numerical results from large deflection beam and frame problems analysed by "
           "means of elliptic integrals, International Journal for Numerical Methods in Engineering 17 "
           "(1981): tables.",
           "from memory, confirmed by calculation"),
    Source("methanol-summary",
           "National Research Council, laboratory chemical safety summary of methanol: taken up through the "
           "skin in toxic amounts, and a cause of blindness.",
           "read"),
    Source("metric-drill-sizes",
           "An encyclopedic article on drill sizes: BS 328 goes by tenths of a millimetre from 3.0 to 13.9 "
           "mm and finer below; sets by 0.5 mm are in any hardware shop, by 0.1 mm with engineers. The "
           "standards themselves (BS 328, ISO 235) were not seen.",
           "read second-hand"),
    Source("metric-threads",
           "ISO metric coarse threads (ISO 261) with the tap drills that shop charts give: M3 2.5, M4 3.3, "
           "M5 4.2, M6 5.0, M8 6.8, M10 8.5 mm. Nobody looked at the standards.",
           "from memory"),
    Source("mil-hdbk-1110",
           "US MIL-HDBK-1110, section 9.6.6: surface 5 °F above the dew point and rising; read in a copy.",
           "read"),
    Source("newtonian-mechanics",
           "Newton's laws for point masses, as in any text; worked out here from first principles.",
           "calculated"),
    Source("niosh-formaldehyde",
           "NIOSH Pocket Guide, formalin (as formaldehyde): its own limits, OSHA's (29 CFR 1910.1048), and "
           "above the recommended one nothing below an assigned protection factor of 10,000; read in a copy.",
           "read"),
    Source("niosh-hdi",
           "NIOSH Pocket Guide to Chemical Hazards, hexamethylene diisocyanate: 0.005 ppm, ceiling 0.020 "
           "ppm in 10 minutes; read in a copy.",
           "read"),
    Source("niosh-idlh",
           "NIOSH, Documentation for Immediately Dangerous to Life or Health Concentrations (1994), which "
           "gives the limits of OSHA and NIOSH, too: n-butyl, isobutyl and ethyl acetate, 2-butanone, "
           "isopropyl, ethyl, methyl and n-butyl alcohol, turpentine.",
           "read"),
    Source("niosh-mdi",
           "NIOSH, IDLH documentation of methylene bisphenyl isocyanate (MDI): OSHA ceiling 0.02 ppm, NIOSH "
           "0.005 ppm, ceiling 0.020 ppm in 10 minutes.",
           "read"),
    Source("niosh-naphtha",
           "NIOSH Pocket Guide, VM&P naphtha and petroleum distillates (naphtha), in copies: flash points, "
           "lower flammable limits 1.2 and 1.1 %, density and molar mass.",
           "read"),
    Source("niosh-particle-filters",
           "NIOSH Pocket Guide, respirators for a dust with a limit of 0.05 mg/m3: a factor of 10 for masks "
           "with N100, R100 or P100 filters, disposable ones of these classes among them; read in a copy.",
           "read"),
    Source("niosh-tdi",
           "NIOSH, IDLH documentation of toluene-2,4-diisocyanate (TDI): OSHA ceiling 0.02 ppm, no NIOSH "
           "limit since it may cause cancer; a page that quotes the Pocket Guide lists a factor of 10,000 at "
           "any concentration.",
           "read"),
    Source("nist-handbook-44",
           "NIST Handbook 44, section 5.52, linear measures: tolerances of tapes, and the rule that a "
           "reading midway goes to the even graduation; read in a copy.",
           "read"),
    Source("one-part-isocyanate",
           "Safety data sheet of a single-pack, moisture-curing clear polyurethane for floors (2004), "
           "reprinted on a page: it holds free organic isocyanate.",
           "read second-hand"),
    Source("ontario-cyanoacrylate",
           "Ontario exposure limits, as a public data set: ethyl cyanoacrylate 0.2 ppm.",
           "read second-hand"),
    Source("oregon-isocyanate-samples",
           "Occupational exposure to HDI-based polyisocyanates in the state of Oregon, 1980-1990: 562 "
           "samples from 60 workplaces, mostly spray painting; 6 % above 0.02 ppm of HDI monomer, 42 % above "
           "1 mg/m3 of HDI polyisocyanates. The abstract was read.",
           "read second-hand"),
    Source("oregon-polyisocyanate",
           "Oregon OSHA limits for HDI polyisocyanates: 1 mg/m3 over 15 minutes, in the abstract of a study "
           "of painters (Reeb-Whitaker and others, 2012); 0.5 mg/m3 over a shift from memory.",
           "read second-hand"),
    Source("osha-chemical-data",
           "OSHA chemical data pages, with the NIOSH recommendations they list: acetone, n-butyl acetate, "
           "toluene, xylenes, Stoddard solvent, VM&P naphtha, fibrous glass.",
           "read"),
    Source("osha-chromium",
           "OSHA final rule on hexavalent chromium, 28 February 2006: 0.005 mg/m3 over 8 hours, since it "
           "causes cancer of the lung; chromate paints among its uses.",
           "read"),
    Source("osha-combustible-dust",
           "OSHA memorandum on combustible dust, 21 April 2015, with NFPA 654 (2013): a layer of 1/32 in at "
           "75 lb/ft3 over more than 5 % of the floor or 1000 ft2, deeper for lighter dust, and the same as "
           "volumes. The equation itself did not come through in the copy that was read.",
           "read"),
    Source("osha-eye-chart",
           "Eye and face protection selection chart of 29 CFR 1910, subpart I, appendix B, in copies of "
           "universities: impact, dust and splash, and face shields only over glasses or goggles.",
           "read second-hand"),
    Source("osha-respirators",
           "29 CFR 1910.134, table 1, assigned protection factors; read in a copy.",
           "read"),
    Source("osha-spray-filters",
           "OSHA on 29 CFR 1910.107(b)(5)(ii), 11 February 2008: used filters go at once to a safe place "
           "well away, or into a metal can of water.",
           "read"),
    Source("osha-spraying-area",
           "OSHA on 29 CFR 1910.107: vapour above 25 % of the lower flammable limit makes a spraying area; "
           "read in a copy.",
           "read"),
    Source("osha-wood-dust",
           "OSHA page on wood dust: limits of OSHA, NIOSH and ACGIH.",
           "read"),
    Source("overspray-fires",
           "Department of Fire and Emergency Services, Western Australia, spray booth fires: overspray "
           "dust that builds up lights by itself, less so with lacquers without nitrocellulose.",
           "read"),
    Source("particle-marks",
           "A university hospital's page on the marks of NIOSH: N95, P100 and the classes between, by "
           "share of particles stopped and by oil; not for gases or vapours in an encyclopedic article.",
           "read second-hand"),
    Source("percent-of-thread",
           "Per cent of thread from the drilled hole, the 1.299 convention of shop charts: hole = D - "
           "1.299 x pitch x share; two pages that state it, and charts that follow it.",
           "read second-hand"),
    Source("phenolic-laminate",
           "Two safety data sheets of high-pressure laminate (paper with phenol-formaldehyde resin): no "
           "hazard while whole, dust classed as hazardous, irritates eyes, nose and throat.",
           "read second-hand"),
    Source("pilot-lights",
           "A burn survivors' society on flammable vapour and water heaters: heavier than air, it moves 10 "
           "to 30 ft and more along the floor, lights at a pilot and flashes back; a news report gives the "
           "share of each appliance.",
           "read"),
    Source("pot-life-halving",
           "A US guide specification for polyurethane coatings (UFGS-09971, 3.7.1.3): pot life is stated at "
           "21 °C (70 °F), halves for each 10 °C warmer, doubles for each 10 °C colder, and is about 2 h "
           "for a polyurethane topcoat; read in a copy.",
           "read"),
    Source("prandtl-michell-1899",
           "L. Prandtl, Kipp-Erscheinungen, and A. G. M. Michell, Elastic stability of long beams under "
           "transverse forces, both 1899: a thin strip with a load across its end buckles sideways at "
           "P L^2 = 4.013 sqrt(EI GJ).",
           "from memory, confirmed by calculation"),
    Source("recurve-measurement",
           "A measurement report of one 66 in recurve, 35 lb: stored energy from 12 and from 48 readings "
           "(42.94 and 43.00 J), virtual mass 5.7697 g + 0.0583 of the arrow's mass.",
           "read"),
    Source("reinsch-1967",
           "C. H. Reinsch, Smoothing by spline functions, Numerische Mathematik 10 (1967) 177-183; "
           "checked against a reference library.",
           "from memory, confirmed by calculation"),
    Source("rfc-5545",
           "RFC 5545, Internet Calendaring and Scheduling Core Object Specification (iCalendar).",
           "from memory, confirmed by calculation"),
    Source("rheingans-1947",
           "Rheingans, Spine and arrow design, and Debunking spine, in Hickman, Nagler and Klopsteg, "
           "Archery: The Technical Side (1947): span of 26 in, load of 2 lb; density and modulus of "
           "shaft woods, table 2.",
           "read"),
    Source("saint-venant-torsion",
           "A. J. C. B. de Saint-Venant's torsion of prisms, as in any text on elasticity: the series for a "
           "rectangle, and a thin strip of layers worked out here; checked against a printed table.",
           "from memory"),
    Source("scratch-and-grain",
           "L. Gurau, M. Irle and J. Buchner, BioResources 14 (2019): roughness of sanded beech grows "
           "linearly with the mean grain size, P60 to P150. The abstract was read; it gives no slope.",
           "read second-hand"),
    Source("shaft-stock-survey",
           "Diameters and spine weights in which a dealer offers Port Orford cedar shafts.",
           "read"),
    Source("si-units",
           "The pound is 0.45359237 kg and standard gravity 9.80665 m/s2, both by definition.",
           "from memory, confirmed by calculation"),
    Source("simpson-1998",
           "W. T. Simpson, Equilibrium moisture content of wood in outdoor locations, FPL-RN-0268 (1998): "
           "coefficients in °C of the Hailwood-Horrobin equation; read in a program that cites it.",
           "read second-hand"),
    Source("ski-factory-1996",
           "Occupational dermatoses from exposure to epoxy resin compounds in a ski factory, Contact "
           "Dermatitis 34 (1996) 390-396: of 22 workers 8 had an allergic rash, 6 of them from parts of "
           "the epoxy; 4 were irritated by resin, lacquer, sanding dust or glass dust. The abstract was "
           "read.",
           "read second-hand"),
    Source("solvent-flammability",
           "Flash points and lower flammable limits of NFPA 497 (2008) and IEC 60079-20-1 (2010), as a "
           "public data set.",
           "read second-hand"),
    Source("spine-weight-rule",
           "Spine weight in pounds is 26 divided by the deflection in inches in the 26 in, 2 lb test; a "
           "letter quoted on a page was read.",
           "read second-hand"),
    Source("spray-booth-velocities",
           "Washington State, WAC 296-62-11019, a copy of the OSHA table for spray finishing: face "
           "velocities of booths with manual air guns.",
           "read"),
    Source("spray-residues",
           "Washington State, WAC 296-24-37013, spray finishing: residues cleaned daily if need be and "
           "removed, scrapers that do not spark, no change between materials that can light one another "
           "before all deposits are out.",
           "read"),
    Source("steady-dilution",
           "Steady dilution of an evaporating solvent, Q = 403e6 x SG x ER x K / (MW x C) in US units, in a "
           "university's lecture notes.",
           "read second-hand"),
    Source("string-materials-article",
           "An encyclopedic article on bowstrings: breaking force and stretch of a strand of polyester "
           "(22.5 kg, 2.6 %), aramid or liquid-crystal polymer (31.8 kg, 0.8 %) and high-modulus "
           "polyethylene (45.5 kg, 1.0 %); the load of the stretch is not stated.",
           "read"),
    Source("string-shorter-than-marked",
           "Pages that find recurve strings 3 to 4 in shorter than the marked length of the bow.",
           "read"),
    Source("tapley-virtual-mass",
           "J. Tapley, notes on bow efficiency: the energy is shared between the arrow and a virtual "
           "mass that is constant over a sensible range of arrow mass.",
           "read second-hand"),
    Source("thread-charts",
           "Unified threads, UNC and UNF: diameters and threads per inch in a public data file, chart "
           "drills on five shop charts, of which one prints 17/64 in for 5/16-24 and one #8 for 1/4-20.",
           "read second-hand"),
    Source("three-point-estimate",
           "The three-point estimate of project planning: mean (low + 4 likely + high) / 6, standard "
           "deviation (high - low) / 6.",
           "from memory"),
    Source("timoshenko-gere",
           "S. Timoshenko and J. Gere, Theory of Elastic Stability, 2nd edition: the buckled column as an "
           "elastica.",
           "from memory, confirmed by calculation"),
    Source("torsion-of-rectangles",
           "Torsion constants of rectangles, 1 to 10 times as wide as thick, as a structural analysis "
           "manual prints them.",
           "read second-hand"),
    Source("trade-woods",
           "Density, modulus and bending strength of tropical and other woods as lists of woods give them, "
           "from memory. What their dust does: a chart of woods that make ill, in a woodturners' magazine "
           "of 1990, read in copies on pages of woodworkers.",
           "from memory"),
    Source("transfer-rating",
           "Trade magazines on spray finishing: guns for low pressure are rated to put 65 % of what they "
           "spray on a flat panel and should give 50 to 60 % in the shop, cup guns for high pressure 30 %; "
           "less on small and irregular work.",
           "read"),
    Source("tuijn-kooi-1992",
           "C. Tuijn and B. W. Kooi, The measurement of arrow velocities in the students' laboratory, "
           "European Journal of Physics 13 (1992): draw, weight and stored energy of four recurves.",
           "read"),
    Source("unified-thread-form",
           "ASME B1.1, unified screw threads: height of the basic internal thread 5/8 of the sharp V.",
           "from memory"),
    Source("viscosity-cups",
           "Equations of Ford cups (ASTM D1200) and Zahn cups (ASTM D4212) with the times and viscosities "
           "they are for, as a laboratory for viscosity standards and a page on testing print them. An "
           "excerpt of D1200-94 (2005) was read for the times of cups 1 to 5 and for 25 °C; D4212 itself was "
           "not seen.",
           "read second-hand"),
    Source("volume-solids",
           "Coating arithmetic: 1604 ft2 mil to a US gallon at 100 % solids; dry film is wet film times "
           "volume solids; in three trade texts.",
           "read second-hand"),
    Source("wood-handbook",
           "USDA Forest Products Laboratory, Wood Handbook: Wood as an Engineering Material, FPL-GTR-190 "
           "(2010), strength tables for clear wood at 12 % moisture; read in tables derived from it.",
           "read second-hand"),
    Source("wood-handbook-fasteners",
           "USDA Forest Products Laboratory, Wood Handbook, FPL-GTR-190 (2010), chapter 8: pull of wood "
           "screws out of side grain, 15,700 G^2 D L in pounds and inches, read on two pages that quote "
           "it; root of about 2/3 of the shank, read in a copy; the equation for lag screws and the lead "
           "holes are from memory.",
           "read second-hand"),
    Source("wood-handbook-moisture",
           "USDA Forest Products Laboratory, Wood Handbook, FPL-GTR-190 (2010), equation 4-5 and table 4-2: "
           "equilibrium moisture content of wood; read in a copy.",
           "read"),
    Source("wood-handbook-movement",
           "USDA Forest Products Laboratory, Wood Handbook, FPL-GTR-190 (2010), chapter 13, table 13-5: "
           "coefficients of change across the grain within 6 to 14 % moisture; read in a copy. How they are "
           "used was read on a university's page that quotes the chapter.",
           "read"),
    Source("wood-handbook-shrinkage",
           "USDA Forest Products Laboratory, Wood Handbook, FPL-GTR-190 (2010), tables 4-3 and 4-4: "
           "shrinkage from green to oven dry, in per cent of the green size.",
           "from memory"),
    Source("wood-movement-pages",
           "Lists of the flooring trade that rank woods by their change along the rings and name the Wood "
           "Handbook (1987) for it: tangential figures only. Radial ones of the same woods are from memory.",
           "read second-hand"),
    Source("wood-property-page",
           "A page of wood properties: Port Orford cedar 465 kg/m3, modulus 11.35 GPa, bending strength "
           "84.8 MPa.",
           "read second-hand"),
    Source("wood-strength-pages",
           "Pages that reprint strengths of riser woods: black cherry, black walnut, yellow birch, "
           "bubinga, Brazilian rosewood. Published samples of the tropical woods differ by several per "
           "cent.",
           "read second-hand"),
    Source("work-and-pregnancy",
           "B. Grajewski and others, Will my work affect my pregnancy?, American Journal of Obstetrics and "
           "Gynecology 214 (2016): limits and equipment were developed for healthy adult workers, not for "
           "a child unborn.",
           "read"),
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
