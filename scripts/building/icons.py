"""The site's logo as PNG files, which phones ask for on the home screen.

It draws what the logo is made of: strokes with round ends along lines and cubic curves, on a square of one
colour. A library that draws every SVG would be the largest part of the build.
"""

import math
import re
import struct
import zlib
from pathlib import Path
from xml.etree import ElementTree as ET

from scripts.building.errors import BuildError

SVG = "{http://www.w3.org/2000/svg}"
PART = re.compile(r"[A-Za-z]|-?\d+(?:\.\d+)?")
STEPS_A_CURVE = 12
GROUND = "rect"

Point = tuple[float, float]
Colour = tuple[int, int, int]


def png(logo: Path, size: int, scale: float = 1.0) -> bytes:
    """Return a logo as a square PNG whose ground fills it to the corners.

    Args:
        logo: SVG file of one square with a viewBox from 0 0, a filled rectangle and stroked paths.
        size: side in pixels.
        scale: how large the strokes are drawn about the middle, 1 as in the file.

    Raises:
        BuildError: the file holds what this does not draw.
    """
    root = ET.fromstring(logo.read_text(encoding="utf-8"))
    side = float(root.attrib["viewBox"].split()[2])
    pixels: list[list[Colour]] = []
    for element in root:
        if element.tag == SVG + GROUND:
            pixels = [[_colour(element.attrib["fill"])] * size for _ in range(size)]
        elif element.tag == SVG + "path" and pixels:
            lines = [[_placed(point, side, size, scale) for point in line]
                     for line in polylines(element.attrib["d"])]
            width = float(element.attrib["stroke-width"]) * scale * size / side
            _stroke(pixels, lines, width, _colour(element.attrib["stroke"]))
        else:
            raise BuildError(f"{logo.name} may hold one rectangle and then paths; it has {element.tag}")
    return _encoded(pixels)


def _colour(text: str) -> Colour:
    red, green, blue = (int(text[at:at + 2], 16) for at in (1, 3, 5))
    return red, green, blue


def _placed(point: Point, side: float, size: int, scale: float) -> Point:
    x, y = (((each / side - 0.5) * scale + 0.5) * size for each in point)
    return x, y


def polylines(path: str) -> list[list[Point]]:
    """Return the lines of a path of an SVG, its curves as short straight pieces.

    Raises:
        BuildError: the path has other commands than absolute M, V, H and C.
    """
    parts = PART.findall(path)
    lines: list[list[Point]] = []
    command, at = "", 0
    while at < len(parts):
        if parts[at].isalpha():
            command, at = parts[at], at + 1
        wanted = {"M": 2, "V": 1, "H": 1, "C": 6}.get(command)
        if wanted is None:
            raise BuildError(f"a logo's path may have the commands M, V, H and C, and has {command!r}")
        numbers = [float(each) for each in parts[at:at + wanted]]
        at += wanted
        if command == "M":
            lines.append([(numbers[0], numbers[1])])
        elif command == "C":
            lines[-1] += _curve(lines[-1][-1], numbers)
        else:
            x, y = lines[-1][-1]
            lines[-1].append((numbers[0], y) if command == "H" else (x, numbers[0]))
    return lines


def _curve(start: Point, numbers: list[float]) -> list[Point]:
    points = [start, *zip(numbers[::2], numbers[1::2], strict=True)]
    found = []
    for step in range(1, STEPS_A_CURVE + 1):
        t = step / STEPS_A_CURVE
        shares = ((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t ** 2 * (1 - t), t ** 3)
        found.append((sum(share * point[0] for share, point in zip(shares, points, strict=True)),
                      sum(share * point[1] for share, point in zip(shares, points, strict=True))))
    return found


def _stroke(pixels: list[list[Colour]], lines: list[list[Point]], width: float, colour: Colour) -> None:
    """Lay one stroke over the pixels: each takes as much of its colour as lies within half its width."""
    cover: dict[tuple[int, int], float] = {}
    reach = width / 2 + 1
    for line in lines:
        for start, end in zip(line, line[1:], strict=False):
            for row in range(*_within(start[1], end[1], reach, len(pixels))):
                for column in range(*_within(start[0], end[0], reach, len(pixels))):
                    away = _distance((column + 0.5, row + 0.5), start, end)
                    share = min(1.0, max(0.0, width / 2 + 0.5 - away))
                    cover[row, column] = max(share, cover.get((row, column), 0.0))
    for (row, column), share in cover.items():
        red, green, blue = (round(old + (new - old) * share)
                            for old, new in zip(pixels[row][column], colour, strict=True))
        pixels[row][column] = (red, green, blue)


def _within(one: float, other: float, reach: float, size: int) -> tuple[int, int]:
    return max(0, int(min(one, other) - reach)), min(size, int(max(one, other) + reach) + 1)


def _distance(point: Point, start: Point, end: Point) -> float:
    """Return how far a point lies from a straight piece with two ends."""
    along = (end[0] - start[0], end[1] - start[1])
    length = along[0] ** 2 + along[1] ** 2
    share = ((point[0] - start[0]) * along[0] + (point[1] - start[1]) * along[1]) / length if length else 0.0
    share = min(1.0, max(0.0, share))
    return math.hypot(point[0] - start[0] - share * along[0], point[1] - start[1] - share * along[1])


def _encoded(pixels: list[list[Colour]]) -> bytes:
    """Return pixels as a PNG, 8 bits a colour and unfiltered (PNG specification, chapters 5 and 11)."""
    size = len(pixels)
    raw = b"".join(b"\0" + bytes(part for pixel in row for part in pixel) for row in pixels)
    header = struct.pack(">IIBBBBB", size, size, 8, 2, 0, 0, 0)
    return (b"\x89PNG\r\n\x1a\n" + _chunk(b"IHDR", header) + _chunk(b"IDAT", zlib.compress(raw, 9))
            + _chunk(b"IEND", b""))


def _chunk(kind: bytes, data: bytes) -> bytes:
    return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))
