"""The path of sanding strokes along a limb: a moving picture."""

from scripts.figures.film import film, shapes_of
from scripts.figures.picture import Picture, Point

WIDTH, HEIGHT = 360, 286
FACE, HALF = 86, 38
SIDE, ABOVE = 206, 26
"""Where on the sheet the middle of the face, and the limb from the side, lie; how far up the block goes."""

STROKES = ((-26, 92, 268), (-9, 72, 296), (9, 100, 280), (26, 80, 306))
"""Off the middle line, start and end of each stroke."""

FORWARD, BACK = 7, 3
BLOCK = 44, 16


def stroke() -> str:
    """Return strokes of a block over the face of a limb, seen from above and from the side."""
    picture = Picture(
        "stroke-path", "The path of a sanding stroke",
        "A limb from its face and, below, from the side, fadeout at the left, tip at the right. A flat block "
        "goes along the limb toward the tip in one long stroke, is lifted, comes back through the air and "
        "begins the next stroke beside it and at another place. No stroke begins over the fadeout or reaches "
        "the tip, and none goes across.", WIDTH, HEIGHT)
    _limb(picture)
    frames = []
    for done, (off, start, end) in enumerate(STROKES):
        frames += [_frame(done, (start, start + (end - start) * step / (FORWARD - 1), off), 0)
                   for step in range(FORWARD)]
        frames += [_frame(done + 1, (end - (end - start) * (step + 1) / (BACK + 1), None, off), ABOVE)
                   for step in range(BACK)]
    last = len(STROKES) - 1
    still = _frame(last, (STROKES[last][1], STROKES[last][2] - 60, STROKES[last][0]), 0)
    picture.shapes += film(frames, still, WIDTH, 10, there_and_back=False)
    return picture.svg()


def _limb(picture: Picture) -> None:
    picture.shapes.append(f'<path class="rb-glass" d="M12 {FACE - HALF}H230Q300 {FACE - HALF} 348 '
                          f'{FACE - 12}V{FACE + 12}Q300 {FACE + HALF} 230 {FACE + HALF}H12Z"/>')
    picture.shapes.append(f'<path class="rb-glass" d="M12 {SIDE}H348V{SIDE + 10}H70Q40 {SIDE + 12} 12 '
                          f'{SIDE + 34}Z"/>')
    for x, words, anchor in ((12, "fadeout", "start"), (180, "toward the tip, lengthwise", "middle"),
                             (352, "tip", "end")):
        picture.text((x, 24), words, anchor)
    picture.text((180, 262), "lift it, come back through the air,", "middle")
    picture.text((180, 279), "begin somewhere else", "middle")


def _frame(done: int, block: tuple[float, float | None, float], lifted: int) -> str:
    """Return the strokes that are done, and the block: from where, to where, and off the middle."""
    sheet = Picture("", "", "", WIDTH, HEIGHT)
    for aside, begun, end in STROKES[:done]:
        _arrow(sheet, (begun, FACE + aside), end)
    start, on, off = block
    at = start if on is None else on
    if on is not None and on > start:
        _arrow(sheet, (start, FACE + off), on)
    width, height = BLOCK
    for y in (FACE + off - height / 2, SIDE - height - lifted):
        sheet.shapes.append(f'<rect class="rb-fill" x="{at - width / 2:.1f}" y="{y:.1f}" width="{width}" '
                            f'height="{height}" rx="2"/>')
    return shapes_of(sheet)


def _arrow(sheet: Picture, start: Point, end: float) -> None:
    sheet.path([start, (end, start[1])], "rb-pale")
    sheet.path([(end - 7, start[1] - 4), (end, start[1]), (end - 7, start[1] + 4)], "rb-pale")
