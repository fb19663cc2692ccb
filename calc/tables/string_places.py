"""The places at which a string is read off the middle of its limb, in the order in which they are told."""

PLACES = (
    ("upper_riser", "upper_offset_riser", "Upper, at the fadeout"),
    ("upper_tip", "upper_offset_tip", "Upper, near the tip"),
    ("lower_riser", "lower_offset_riser", "Lower, at the fadeout"),
    ("lower_tip", "lower_offset_tip", "Lower, near the tip"),
)
"""(column of a log, name in a reading, what people read)."""
