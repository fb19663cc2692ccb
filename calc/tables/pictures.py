"""The pictures that show how a bow came in, in the order in which they are taken (common practice)."""

PICTURES = (
    ("upper-belly", "Upper limb, belly"),
    ("upper-back", "Upper limb, back"),
    ("lower-belly", "Lower limb, belly"),
    ("lower-back", "Lower limb, back"),
    ("left-edge", "Left edge, whole length"),
    ("right-edge", "Right edge, whole length"),
    ("upper-tip", "Upper tip and its nock"),
    ("lower-tip", "Lower tip and its nock"),
    ("grip", "Grip"),
    ("window", "Window and arrow shelf"),
    ("lettering", "Lettering and every other mark"),
    ("holes", "Holes, inserts and fills"),
)
"""(id, what it shows)."""

FINE = ("lettering",)
"""Those of which more is kept, since what they show is small."""
