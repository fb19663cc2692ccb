"""The marks of the worked example: the invented bow as calc's model has it, before a camera of the tests'."""

from random import Random

import numpy as np
from scipy.interpolate import CubicSpline

from calc import catalog
from calc.bows.measured import calibrated, measured_bow, setup_of
from calc.reading import read
from calc.tables.bow_families import find
from tests.pictures.camera import INCH, Camera
from tests.pictures.photographs import LIMB, RISER, THROAT, Photograph, in_whole_pixels

SEED = 16
OF_A_BOW = ("bow_length", "riser_length", "brace_height", "throat", "family", "glass_back", "glass_belly",
            "glass_modulus", "core", "core_modulus", "upper_stations", "lower_stations", "string_stiffness")
PROFILE = ";".join(f"{along * LIMB:.3f}in:{offset * LIMB:.3f}in" for along, offset in find("recurve").profile)
"""The family's offsets as rows: through them a bow's shape is smooth."""


OFF_THE_MIDDLE = {"upper_tip": 1 / 64, "upper_riser": 0.0, "lower_tip": -3 / 32, "lower_riser": -1 / 32}
"""Where the string of the invented bow lies, in inches."""


class ShapeOf:
    """A limb as calc has it, at parts of its length, in inches from its own fadeout."""

    def __init__(self, limb):
        parts = np.array(limb.arc_length) / limb.arc_length[-1]
        self._along = CubicSpline(parts, np.abs(limb.y) / INCH - RISER / 2)
        self._offset = CubicSpline(parts, np.array(limb.x) / INCH - THROAT)

    def at(self, part):
        return float(self._along(part)), float(self._offset(part))

    def offset_at(self, along):
        parts = np.linspace(0.0, 1.02, 2000)
        return float(np.interp(along, self._along(parts), self._offset(parts)))


def computed():
    """Return the invented bow, its setup and its calibration."""
    values, problems, _ = read(catalog.find("bow-model"), [("profile", PROFILE)], "imperial")
    assert not problems
    bow = measured_bow(profile=values["profile"], **{name: values[name] for name in OF_A_BOW})
    setup = setup_of(values["draw_length"], values["brace_height"], values["measured"], None)
    return bow, calibrated(bow.bow(), setup, values["weight"], "tiller", values["tiller"])


def marks():
    """Return the example's texts by input."""
    bow, calibration = computed()
    state, dice = calibration.state, Random(SEED)
    camera = Camera()
    unstrung = tuple(ShapeOf(limb.shape(0.0, 0.0, (1.0, 0.0))) for limb in (bow.bow().upper, bow.bow().lower))
    shown = Photograph(dice, camera=camera, shapes=unstrung, board_error=1 / 48, turn=0.0, standoff_error=0.0)
    tiller = state.braced.tiller_at_fadeouts()
    shown.brace(tiller.upper / INCH, tiller.lower / INCH)
    shown.from_the_belly(OFF_THE_MIDDLE)
    drawn = Photograph(dice, camera=camera, shapes=tuple(ShapeOf(limb) for limb in (
        state.drawn.upper, state.drawn.lower)), turn=0.0, standoff_error=0.0)
    return {
        "dots": ";".join(f"{sheet}:{dot}:{round(x)}:{round(y)}" for sheet, dot, x, y in shown.dots),
        "rule_marks": ";".join(f"{rule}:{along}in:{up}in:{in_whole_pixels([shown.mark(along, up)])}"
                               for rule, up in ((1, 0), (2, 28)) for along in range(-2, 55, 14)),
        "upper_limb": in_whole_pixels(shown.limbs[0]),
        "lower_limb": in_whole_pixels(shown.limbs[1]),
        "throat_marks": in_whole_pixels([shown.throat]),
        "string_marks": in_whole_pixels(shown.string),
        "string_line": ";".join(f"{place}:{part}:{round(x)}:{round(y)}" for place, part, x, y in shown.line),
        "drawn_upper": in_whole_pixels(drawn.limbs[0]),
        "drawn_lower": in_whole_pixels(drawn.limbs[1]),
    }
