"""What a page asks of its picture: where the edge, the corner or the dot is that a mark was meant for."""

from calc.pictures.sought import CORNER, EDGE, MIDDLE, Found, Patch, corner_near, edge_near, middle_near
from calc.quantities import show_number

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Mapping

ON_DOTS = ("dots",)
ON_EDGES = ("upper_limb", "lower_limb", "drawn_upper", "drawn_lower")
"""The fields whose marks can be drawn to what the picture shows."""

DRAWN_TO = {EDGE: "Drawn to the edge", CORNER: "Drawn to the corner where tape or limb begins",
            MIDDLE: "Drawn to the middle of the dot"}

DECIMALS = 1
"""Of a pixel, of a mark that was drawn."""


def find(asked: "Mapping[str, object]") -> dict[str, object]:
    """Return where a mark is drawn to by what the picture shows around it.

    Args:
        asked: "set", the field, and "row", the mark's place in it from 0; "mark", "before" and "after": its
            place and those of its neighbours in pixels, null where there is none; "rises", as the answer for
            another mark of the field had it, 0 where none did; "left", "top", "step", "wide", "gray": the
            patch of the picture around it.

    Returns:
        "x", "y", "how" and "rises" of what was found, if anything was, and "said": a sentence; empty where
        nothing was looked for.

    Raises:
        ValueError: the patch is not as wide as it says.
    """
    mark = _place(asked["mark"])
    if mark is None:
        raise ValueError("a mark needs a place")
    patch = _patch(asked)
    if asked["set"] in ON_DOTS:
        found, sought = middle_near(patch, mark), "dot"
    elif asked["set"] in ON_EDGES:
        before, after = _place(asked["before"]), _place(asked["after"])
        along = _way(before or mark, after or mark)
        if along is None:
            return {"said": ""}  # the first mark of a limb waits for the second, to know where the limb goes
        sought = "edge"
        if asked["row"] == 0:
            found = corner_near(patch, mark, along)
        else:
            found = edge_near(patch, mark, along, _number(asked["rises"]))
    else:
        return {"said": ""}
    if found is None:
        return {"said": "No clear " + sought + " lies near enough: the mark stays where you set it."}
    return _told(found, mark)


def _told(found: Found, mark: tuple[float, float]) -> dict[str, object]:
    x, y = (float(show_number(each, DECIMALS)) for each in found.place)
    moved = ((x - mark[0]) ** 2 + (y - mark[1]) ** 2) ** 0.5
    return {"x": x, "y": y, "how": found.how, "rises": found.rises if found.how == EDGE else 0.0,
            "said": DRAWN_TO[found.how] + ", by " + show_number(moved, DECIMALS)
            + " pixels. Undo puts it back."}


def _way(start: tuple[float, float], end: tuple[float, float]) -> tuple[float, float] | None:
    """Return the direction from one place to another; None where they are one."""
    across, down = end[0] - start[0], end[1] - start[1]
    size = (across * across + down * down) ** 0.5
    return (across / size, down / size) if size > 0 else None


def _place(given: object) -> tuple[float, float] | None:
    if not isinstance(given, list):
        return None
    return _number(given[0]), _number(given[1])


def _patch(asked: "Mapping[str, object]") -> Patch:
    gray = asked["gray"]
    wide = int(_number(asked["wide"]))
    if not isinstance(gray, list) or wide < 1 or len(gray) < wide or len(gray) % wide:
        raise ValueError("a patch of a picture must have full rows")
    return Patch(_number(asked["left"]), _number(asked["top"]), _number(asked["step"]), wide, gray)


def _number(given: object) -> float:
    if not isinstance(given, (int, float)):
        raise ValueError("a place in a picture must be a number")
    return float(given)
