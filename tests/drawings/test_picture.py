"""The drawing of a photograph's marks: lines in the picture's pixels, drawn to its frame."""

from calc.drawings.picture import picture_drawing


def test_lines_are_drawn_to_the_frame_and_told_apart():
    board, bow = [(0.0, 0.0), (4000.0, 3000.0)], [(1000.0, 500.0), (1003.0, 501.0)]
    drawing = picture_drawing(4000.0, 3000.0, [board], [bow, []])
    assert (drawing.width, drawing.height) == (640, 480)
    assert drawing.shapes == [
        ["polyline", {"class": "rb-quiet", "points": "0.00,0.00 640.00,480.00"}],
        ["polyline", {"class": "rb-mark", "points": "160.00,80.00 160.48,80.16"}],
    ]
