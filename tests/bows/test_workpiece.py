"""What the limbs of a bow have room for."""

from types import SimpleNamespace

import pytest

from calc.bows.workpiece import cube_rule, most_reach

MM = 0.001


def bow(*sections):
    """Return a bow whose limbs have sections of these widths and thicknesses, one limb each."""
    return SimpleNamespace(stations=[[SimpleNamespace(width=width * MM, thickness=thickness * MM)]
                                     for width, thickness in sections])


@pytest.mark.parametrize(("sections", "width", "faces", "removal", "reach"), [
    # half of what stays of the thinnest limb, or of the narrowest where that is less: two edges meet there
    (((30, 10), (20, 12)), 2, 0.5, 1, 4.0),
    (((30, 10), (8, 12)), 2, 0.5, 1, 3.0),
    (((30, 10), (20, 6)), 2, 0.5, 0, 2.5),
])
def test_two_edges_meet_in_the_middle_of_what_stays(sections, width, faces, removal, reach):
    finishing = SimpleNamespace(width=width * MM, faces=faces * MM)
    assert most_reach(bow(*sections), finishing, removal * MM) == pytest.approx(reach * MM)


def test_the_cube_rule_takes_a_share_of_the_mean_thickness():
    """Weight goes with thickness cubed (rule of thumb, common practice): 0.9 cubed is 0.729."""
    piece = SimpleNamespace(bow=bow((30, 10), (30, 14)))
    assert cube_rule(piece, 0.729) == pytest.approx(1.2 * MM)
