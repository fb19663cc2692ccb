"""What the sheets of a record have ticked before anybody has written in them."""

from calc.declaring import SWITCH
from calc.record import sheets


def test_a_sheet_claims_no_care_that_nobody_took():
    """Ticked are what is usual, what errs to the careful side, and how a first draw is to be made."""
    ticked = {f"{sheet.id}.{each.id}" for sheet in sheets.SHEETS for each in sheets.inputs_of(sheet)
              if each.kind == SWITCH and each.default not in (False, "", "no")}
    assert ticked == {"agreed.lettered", "air.rising", "bow.old", "first_draw.from_distance",
                      "first_draw.full", "sanding.wet"}
