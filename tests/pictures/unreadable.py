"""Pictures that cannot be read: what differs from the example, the field to mend, its row, the sentence."""

from calc import catalog
from calc.declaring import inputs_of

TILTED = (
    "1:a:348:1971;1:b:805:1991;1:c:813:2295;1:d:361:2274;2:a:3125:2095;2:b:3647:2120;2:c:3631:2444;"
    "2:d:3115:2416;3:a:262:479;3:b:745:483;3:c:758:818;3:d:285:815;4:a:3186:508;4:b:3736:515;"
    "4:c:3714:871;4:d:3169:864"
)
"""Dots of a picture that was taken 15 degrees off the square."""

TWICE = "upper_tip:left:3001:1400"
DEFAULTS = {each.id: each.default for each in inputs_of(catalog.find("photograph"))}


def rows(field):
    return [row.split(":") for row in DEFAULTS[field].split(";")]


def text(found):
    return ";".join(":".join(row) for row in found)


def changed(field, change):
    found = rows(field)
    change(found)
    return {field: text(found)}


def exchange(first, second):
    def change(found):
        found[first][2:], found[second][2:] = found[second][2:], found[first][2:]
    return change


def mirror(found):
    for row in found:
        row[-2] = str(4000 - int(row[-2]))


def out_of_plane(found):
    for row in found[:4]:
        row[-1] = str(int(row[-1]) + 40)
        row[-2] = str(int(row[-2]) + (40 if row[1] in "ad" else 0))


def crowd(found):
    found[1:-1] = [[str(2471 + 3 * index), "1506"] for index in range(1, 17)]


def on_a_line(found):
    del found[8:]
    for row in found:
        row[1] = "m"
    found[:] = [[str(index + 1), "m", row[2], row[3]] for index, row in enumerate(found[:4])]


CASES = [
    (changed("dots", mirror), "dots", None,
     "The picture is mirrored, or up is down in it: going around these points the one way on the board goes "
     "around them the other way in the picture. Take the picture as the lens saw it, or mend letters and "
     "places."),
    (changed("dots", exchange(0, 2)), "dots", 2,
     "No lens shows these points so: two of them are exchanged, or one is marked wrong, most likely this "
     "one. Check its mark, its letter or number, and its place."),
    ({"sheets": "0in:0in;20in:0in;40in:0in;60in:0in", **changed("dots", on_a_line)}, "dots", None,
     "These points lie on one line, or nearly so: they say nothing of how the board stands across it. Mark "
     "points above the bow and below it."),
    (changed("dots", lambda found: found[0].__setitem__(0, "7")), "dots", 0,
     "This dot is on sheet 7, and the places of 4 sheets are given. Give its place, or mend the number."),
    (changed("dots", lambda found: found[1].__setitem__(1, "a")), "dots", 1,
     "This dot is marked in an earlier row. Take one out, or mend its letter."),
    ({"picture_width": "3000 px"}, "dots", 4,
     "This mark lies beyond the picture's right edge. Check it, and the picture's width."),
    ({"picture_height": "1600 px"}, "dots", 0,
     "This mark lies below the picture's lower edge. Check it, and the picture's height."),
    ({"target": "rules", **changed("rule_marks", lambda found: found.__setitem__(1, list(found[0])))},
     "rule_marks", 1, "This place is marked in an earlier row. Take one out, or mend it."),
    ({"straight": "1:100:100;1:2000:120"}, "straight", None,
     "Line 1 has fewer than three points: two lie straight whatever the lens does. Mark more of it, or take "
     "it out."),
    ({"belly_faces": "left"}, "belly_faces", None,
     "The belly cannot face that way: it lies along the bow. Choose the side of the picture that the string "
     "is on when the bow is braced."),
    (changed("upper_limb", lambda found: found.reverse()), "upper_limb", None,
     "This limb runs toward the other one. Begin at the fadeout and end at the nock, and check which limb is "
     "the upper."),
    (changed("lower_limb", lambda found: found.insert(9, found.pop(3))), "lower_limb", 9,
     "This mark lies nearer to the fadeout than the one before it, along the line to the nock. Put the marks "
     "in order."),
    (changed("lower_limb", lambda found: found.__delitem__(slice(7, None))), "lower_limb", None,
     "A limb's shape needs 8 marks or more, from the fadeout to the nock; you gave 7. Mark more of it."),
    ({"what": "belly", "string_line": "upper_tip:left:3000:1400;upper_tip:right:3000:1460;" + TWICE},
     "string_line", None,
     "Upper limb, near the tip lacks a mark: string. Mark it, or take the place out."),
    ({"what": "belly", "string_line": "upper_tip:right:3000:1401;upper_tip:string:3000:1400;" + TWICE},
     "string_line", None,
     "Upper limb, near the tip has both its edges in one place. Mark the left edge and the right one, as you "
     "see them with the upper limb up."),
    ({"straight": "1:100:100;1:2000:600;1:3900:100"}, "dots", None,
     "No board fits these points: the lens would bend the picture over itself. Check each mark, and its "
     "place on the board."),
    (changed("upper_limb", crowd), "upper_limb", None,
     "These marks lie too unevenly for a limb's shape. Spread them from the fadeout to the nock."),
    ({"lower_limb": DEFAULTS["upper_limb"].split(";")[0], "what": "braced"}, "lower_limb", 0,
     "Both limbs begin at one place. Begin each at its own fadeout."),
]

OUT_OF_PLANE = changed("dots", out_of_plane)

EVERY = [(field, typed) for typed, field, _, _ in CASES] + [
    ("dots", OUT_OF_PLANE), ("distance", {"distance": "60 ft", "dots": TILTED})]
