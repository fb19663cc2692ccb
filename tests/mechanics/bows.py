"""A few invented bows that several tests use."""

from calc.mechanics.bow.bow import Bow, Limb

RECURVE_ANGLES = (0.05, 0.03, 0.0, -0.03, -0.07, -0.16, -0.36, -0.70, -1.15)
RECURVE_STIFFNESS = (26.0, 24.0, 21.5, 19.0, 16.5, 14.0, 11.5, 9.0, 7.0)
LONGBOW_ANGLES = (0.06, 0.06, 0.04, 0.02, 0.0)
LONGBOW_STIFFNESS = (40.0, 33.0, 26.0, 19.0, 12.0)


def recurve(lower_factor=1.0, pivot=(0.0, 0.0), string_stiffness=None, shorter=0.0, steps=None):
    upper = Limb(0.62, (-0.01, 0.24), RECURVE_ANGLES, RECURVE_STIFFNESS, steps)
    stiffness = [lower_factor * each for each in RECURVE_STIFFNESS]
    lower = Limb(0.62 - shorter, (-0.01, 0.24), RECURVE_ANGLES, stiffness, steps)
    return Bow(upper, lower, pivot, string_stiffness)


def longbow(lower_factor=1.0, pivot=(0.0, 0.0), string_stiffness=None, steps=None):
    upper = Limb(0.68, (0.0, 0.17), LONGBOW_ANGLES, LONGBOW_STIFFNESS, steps)
    lower = Limb(0.66, (0.0, 0.17), LONGBOW_ANGLES, [lower_factor * k for k in LONGBOW_STIFFNESS], steps)
    return Bow(upper, lower, pivot, string_stiffness)
