"""A moving picture: its frames stand side by side, and a style sheet slides them past the sheet.

Where nothing should move, on paper and for readers who asked for less motion, what stands still is shown in
their place: some of the frames over each other.
"""

from scripts.figures.picture import Picture


def film(frames: list[str], still: str, width: int, seconds: float, there_and_back: bool) -> list[str]:
    """Return the shapes of a moving picture.

    Args:
        frames: the shapes of each, drawn for a sheet of its own.
        still: shapes that are shown where nothing moves.
        width: of the sheet.
        seconds: one way through all frames.
        there_and_back: whether it goes back through them, or begins again.
    """
    kind = "rb-film rb-film--back" if there_and_back else "rb-film"
    return [
        f'<g class="rb-film-still">\n{still}\n</g>',
        f'<g class="{kind}" style="--rb-frames:{len(frames)};--rb-way:-{width * (len(frames) - 1)}px;'
        f'--rb-seconds:{seconds:g}s">',
        *(f'<g transform="translate({width * index} 0)">\n{frame}\n</g>'
          for index, frame in enumerate(frames)),
        "</g>",
    ]


def shapes_of(picture: Picture) -> str:
    """Return what has been drawn on a sheet, for a frame."""
    return "\n".join(picture.shapes)
