"""Points marked on a photograph: by finger, by keys, as numbers, and what stands on the picture then."""

import io
import subprocess
import sys
from pathlib import Path

import pytest
from PIL import Image, ImageDraw
from playwright.sync_api import expect

from calc import catalog
from calc.declaring import inputs_of
from calc.pictures.target import DOTS
from tests.pages.reading import headline, wait_for_link, wait_for_state, wait_until
from tests.pages.test_axe import RULES_OF_COLOUR, faults
from tests.pages.test_bow_bar import open_bar, put, record
from tests.pictures.camera import HEIGHT, INCH, WIDTH, Camera

TOP = Path(__file__).parents[2]
CAMERA = Camera(aim=(30 * INCH, 15 * INCH))
MIDDLES = [(0, 0), (60, 0), (0, 30), (60, 30)]
DOTS_SEEN = [CAMERA.sees(along * INCH + x, up * INCH + y) for along, up in MIDDLES for _, _, (x, y) in DOTS]
STAND = 1.75 * INCH
LIMBS = {side: [CAMERA.sees((30 + sign * (9.5 + 3.4 * i)) * INCH, (14 - 0.8 * i + 0.16 * i * i) * INCH, STAND)
                for i in range(8)]
         for side, sign in (("upper", 1), ("lower", -1))}
"""An invented bow's edge of the belly, belly down, marked at eight places a limb."""

FINGER = 13
"""Pixels of the picture to a pixel of a phone's screen that shows all of it: a touch is out by no more."""

BORDER = 1
LARGE = 44
"""CSS pixels: what a finger reaches with a glove on (common practice)."""

SIZES = """controls => controls.map(each => {
  const { width, height } = each.getBoundingClientRect();
  return [each.name || each.textContent, Math.min(width, height)];
})"""
CURVE = (110, 231, 255)


@pytest.fixture(scope="module")
def photograph(tmp_path_factory) -> Path:
    """A picture of the invented bow before its board, as the camera saw it."""
    picture = Image.new("RGB", (WIDTH, HEIGHT), "#cdbf9f")
    pen = ImageDraw.Draw(picture)
    for x, y in DOTS_SEEN:
        pen.ellipse((x - 17, y - 17, x + 17, y + 17), fill="black")
    for limb in LIMBS.values():
        pen.line([(x, y - 9) for x, y in limb], fill="#5a3a1c", width=18)
    path = tmp_path_factory.mktemp("picture") / "bow.jpg"
    picture.save(path, quality=80)
    return path


def opened(visitor, photograph, fragment=""):
    page = visitor.open_calculator(fragment, "photograph")
    page.locator(".rb-marking[data-live]").wait_for()
    page.get_by_label("Choose a picture").set_input_files(photograph)
    expect(said(page)).to_contain_text(f"The picture is open: {WIDTH} by {HEIGHT} pixels.")
    return page


def by_hand_alone(page):
    """Leave each mark where it is set."""
    page.get_by_label("Draw each mark").uncheck()


def said(page):
    return page.locator(".rb-marking-said")


def choose(page, title):
    page.locator(".rb-marking-sets label").filter(has_text=title).click()
    expect(page.locator(".rb-marking-sets input:checked + span")).to_contain_text(title)


def expect_count(page, title, count):
    label = page.locator(".rb-marking-sets label").filter(has_text=title)
    expect(label.locator(".rb-marking-count")).to_have_text(str(count))


def touch(page, x, y):
    """Touch the picture, all of which is in sight, where one of its pixels lies."""
    canvas = page.locator(".rb-marking canvas")
    canvas.scroll_into_view_if_needed()
    shown = canvas.bounding_box()
    scale = min((shown["width"] - 2 * BORDER) / WIDTH, (shown["height"] - 2 * BORDER) / HEIGHT)
    page.touchscreen.tap(shown["x"] + shown["width"] / 2 + (x - WIDTH / 2) * scale,
                         shown["y"] + shown["height"] / 2 + (y - HEIGHT / 2) * scale)


def place_of_picture(page):
    """Return how far the picture stands below what it is chosen with, and how high it is."""
    part, canvas = (page.locator(each).bounding_box() for each in (".rb-marking", ".rb-marking canvas"))
    return canvas["y"] - part["y"], canvas["height"]


def curve_drawn(page):
    """Return whether the picture shows the colour of a curve as Python understands the marks."""
    shown = Image.open(io.BytesIO(page.locator(".rb-marking canvas").screenshot())).convert("RGB")
    return sum(count for count, colour in shown.getcolors(shown.width * shown.height) if colour == CURVE) > 50


def rows(page, field):
    return [[cell.input_value() for cell in line.locator("input, select").all()]
            for line in page.locator(f'[data-field="{field}"] tbody tr').all()]


def places(page, field):
    """Return where marks stand: their rows end with the place and with how it was set."""
    return [tuple(float(text) for text in row[-3:-1]) for row in rows(page, field)]


def how_set(page, field):
    return [row[-1] for row in rows(page, field)]


def unfold(page, field):
    """Open the list of a field, if nothing wrong in it has."""
    page.locator(f'.rb-field[data-field="{field}"] .rb-list').evaluate("list => list.open = true")


def do(page, name):
    page.locator(".rb-marking").get_by_role("button", name=name, exact=True).click()


def answer_on_the_command_line(address):
    command = [sys.executable, "-m", "calc", "photograph", "--link", address]
    return subprocess.run(command, cwd=TOP, capture_output=True, text=True, check=True).stdout


def test_a_phone_marks_a_picture_and_its_link_holds_the_numbers(new_visitor, photograph):
    phone = new_visitor(has_touch=True, viewport={"width": 480, "height": 1000})
    page = opened(phone, photograph)
    expect(said(page)).to_contain_text("Next: sheet 1, dot A, upper left.")
    by_hand_alone(page)
    stood = place_of_picture(page)
    for count, dot in enumerate(DOTS_SEEN, 1):
        touch(page, *dot)
        expect_count(page, "Dots marked", count)
    assert place_of_picture(page) == stood  # nothing moved under the finger
    assert [row[:2] for row in rows(page, "dots")] == [[str(sheet), id] for sheet in (1, 2, 3, 4)
                                                      for id, _, _ in DOTS]
    for title, side in (("Upper limb", "upper"), ("Lower limb", "lower")):
        choose(page, title)
        for count, mark in enumerate(LIMBS[side], 1):
            touch(page, *mark)
            expect_count(page, title, count)
        for place, mark in zip(places(page, f"{side}_limb"), LIMBS[side], strict=True):
            assert place == pytest.approx(tuple(mark), abs=FINGER)

    last = places(page, "lower_limb")[-1]
    for _ in range(3):
        do(page, "One pixel to the right")
    do(page, "One pixel up")
    assert places(page, "lower_limb")[-1] == (last[0] + 3, last[1] - 1)
    do(page, "Undo")
    do(page, "Undo")
    assert places(page, "lower_limb")[-1] == (last[0] + 2, last[1])
    do(page, "Redo")
    assert places(page, "lower_limb")[-1] == (last[0] + 3, last[1])

    for field, marks in (("dots", DOTS_SEEN), ("lower_limb", LIMBS["lower"])):
        unfold(page, field)
        cell = page.locator(f'[data-field="{field}"] tbody tr').first.locator('[data-column="x"]')
        cell.fill(f"{marks[0][0]:.1f}")
        cell.blur()
    for _ in LIMBS["lower"][1:]:
        do(page, "Mark before")
    expect(said(page)).to_contain_text(f"Lower limb, 1: {LIMBS['lower'][0][0]:.1f} across")
    page.locator('[data-field="marking_error"] input').fill(f"{FINGER} px")
    page.locator('[data-field="marking_error"] input').blur()
    wait_for_state(page, "current")
    wait_for_link(page, f"marking_error={FINGER}+px")
    wait_until(page, lambda: curve_drawn(page))
    shown = headline(page).inner_text()
    assert answer_on_the_command_line(page.url).splitlines()[0] == shown

    other = new_visitor().open(page.url.removeprefix(phone.site_url))
    wait_for_state(other, "current")
    assert rows(other, "dots") == rows(page, "dots")
    assert rows(other, "lower_limb") == rows(page, "lower_limb")
    assert headline(other).inner_text() == shown
    assert other.locator(".rb-marking").get_attribute("data-state") == "none"


def test_keys_alone_mark_a_picture(visitor, photograph):
    page = opened(visitor, photograph)
    by_hand_alone(page)
    canvas = page.locator(".rb-marking canvas")
    canvas.focus()
    page.keyboard.press("Enter")
    expect(said(page)).to_contain_text(f"Dots marked, 1a: {WIDTH // 2} across, {HEIGHT // 2} down.")
    for key in ("ArrowRight", "Shift+ArrowUp", "Enter", "Shift+ArrowDown"):
        page.keyboard.press(key)
    middle = WIDTH // 2, HEIGHT // 2
    assert places(page, "dots") == [(middle[0] + 1, middle[1] - 10), (middle[0], middle[1] + 10)]
    page.keyboard.press("PageUp")
    expect(said(page)).to_contain_text("Dots marked, 1a")
    page.keyboard.press("Delete")
    assert [row[:2] for row in rows(page, "dots")] == [["1", "b"]]
    page.keyboard.press("Control+z")
    assert [row[:2] for row in rows(page, "dots")] == [["1", "a"], ["1", "b"]]
    page.keyboard.press("Control+Shift+z")
    assert [row[:2] for row in rows(page, "dots")] == [["1", "b"]]
    for key in ("Escape", "ArrowRight", "+", "+", "Enter"):  # with none chosen, the picture moves
        page.keyboard.press(key)
    assert places(page, "dots")[-1][0] > middle[0]
    page.keyboard.press("Tab")
    expect(canvas).not_to_be_focused()
    assert faults(page, ".rb-marking") == []
    page.emulate_media(color_scheme="dark")
    assert faults(page, ".rb-marking", RULES_OF_COLOUR) == []
    sizes = page.locator(".rb-marking :is(button, select, label)").locator("visible=true").evaluate_all(SIZES)
    assert [name for name, size in sizes if size < LARGE] == []


def test_a_mark_that_is_dragged_moves_finely(new_visitor, photograph):
    page = opened(new_visitor(), photograph)
    by_hand_alone(page)
    page.get_by_label("Choose a picture").set_input_files(
        {"name": "bow.jpg", "mimeType": "image/jpeg", "buffer": b"no picture"})
    expect(said(page)).to_contain_text("This browser cannot open that file: it is no picture, too large, or")
    page.locator(".rb-marking canvas").scroll_into_view_if_needed()
    shown = page.locator(".rb-marking canvas").bounding_box()
    middle = shown["x"] + shown["width"] / 2, shown["y"] + shown["height"] / 2
    page.mouse.click(*middle)
    expect_count(page, "Dots marked", 1)
    [(x, y)] = places(page, "dots")
    page.mouse.down()
    page.mouse.move(middle[0] + 30, middle[1] - 60, steps=5)
    page.mouse.up()
    assert places(page, "dots") == [(x + 10, y - 20)]
    expect_count(page, "Dots marked", 1)



def test_marks_are_drawn_to_what_the_picture_shows_and_taken_back(new_visitor, photograph):
    """The picture was drawn by PIL: where its dots and edges lie is known."""
    page = opened(new_visitor(has_touch=True, viewport={"width": 480, "height": 1000}), photograph)
    x, y = DOTS_SEEN[0]
    touch(page, x + 8, y - 6)
    expect(said(page)).to_contain_text("Drawn to the middle of the dot, by ")
    assert places(page, "dots")[0] == pytest.approx((x, y), abs=1)
    assert how_set(page, "dots") == ["middle"]
    do(page, "Undo")
    assert how_set(page, "dots") == ["hand"]
    set_by_hand = places(page, "dots")[0]
    assert set_by_hand != pytest.approx((x, y), abs=1)
    do(page, "Next mark")
    do(page, "Draw this mark")
    expect(said(page)).to_contain_text("Drawn to the middle of the dot")
    assert how_set(page, "dots") == ["middle"]
    do(page, "One pixel up")
    assert how_set(page, "dots") == ["hand"]  # a hand's again

    choose(page, "Upper limb")
    (first, second, third), title = LIMBS["upper"][:3], "Upper limb"
    for count, mark in enumerate((first, second, third), 1):
        touch(page, mark[0], mark[1] + 4)
        expect_count(page, title, count)
        expect(said(page)).to_contain_text(f"{title}, {count}: ")
    wait_until(page, lambda: how_set(page, "upper_limb")[1:] == ["edge", "edge"])
    for place, mark in list(zip(places(page, "upper_limb"), (first, second, third), strict=True))[1:]:
        assert place[1] == pytest.approx(mark[1], abs=2)  # the line that PIL drew ends on whole pixels
    page.locator(".rb-marking canvas").scroll_into_view_if_needed()
    touch(page, WIDTH * 0.5, HEIGHT * 0.9)
    expect(said(page)).to_contain_text("No clear edge lies near enough: the mark stays where you set it.")


def test_two_fingers_enlarge_the_picture(new_visitor, photograph):
    """Fingers that go three times as far apart show the picture three times as large, about their middle."""
    page = opened(new_visitor(has_touch=True, viewport={"width": 480, "height": 1000}), photograph)
    by_hand_alone(page)
    canvas = page.locator(".rb-marking canvas")
    canvas.scroll_into_view_if_needed()
    shown = canvas.bounding_box()
    x, y = shown["x"] + shown["width"] / 2, shown["y"] + shown["height"] / 2

    def taps():
        for across in (-60, 60):
            page.touchscreen.tap(x + across, y)
        first, second = places(page, "dots")[-2:]
        return second[0] - first[0], (first[0] + second[0]) / 2

    apart, middle = taps()
    fingers = page.context.new_cdp_session(page)

    def touches(kind, reach=None):
        at = [] if reach is None else [{"x": x + side * reach, "y": y + 40, "id": number}
                                       for number, side in enumerate((-1, 1))]
        fingers.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": at})

    touches("touchStart", 30)
    for reach in (45, 60, 75, 90):
        touches("touchMove", reach)
    touches("touchEnd")
    expect_count(page, "Dots marked", 2)  # fingers that move the picture mark nothing
    closer, still = taps()
    assert apart / closer == pytest.approx(3, rel=0.1)
    assert still == pytest.approx(middle, abs=FINGER)


def test_marking_goes_on_without_network(visitor, photograph):
    page = visitor.open("calculators/photograph/?offline=1")
    page.evaluate("async () => { await navigator.serviceWorker.ready; }")
    visitor.context.set_offline(True)
    try:
        page = visitor.open("calculators/photograph/")
        page.locator(".rb-marking[data-live]").wait_for()
        page.get_by_label("Choose a picture").set_input_files(photograph)
        expect(said(page)).to_contain_text(f"The picture is open: {WIDTH} by {HEIGHT} pixels.")
        page.locator(".rb-marking canvas").focus()
        page.keyboard.press("Enter")
        expect(said(page)).to_contain_text("No clear dot lies near enough")  # said by Python
        assert places(page, "dots") == [(WIDTH // 2, HEIGHT // 2)]
    finally:
        visitor.complaints.clear()  # the browser reports each request that the network refused


def test_marks_stand_out_in_the_systems_own_colours(visitor, photograph):
    visitor.page.emulate_media(forced_colors="active", color_scheme="dark")
    page = opened(visitor, photograph)
    page.locator(".rb-marking canvas").focus()
    page.keyboard.press("Enter")
    expect_count(page, "Dots marked", 1)
    named = {name: page.evaluate(
        """name => {
          const probe = document.querySelector('.rb-marking').appendChild(document.createElement('i'));
          probe.style.color = `var(--rb-marking-${name})`;
          const found = getComputedStyle(probe).color;
          probe.remove();
          return found;
        }""", name) for name in ("now", "halo", "curve")}
    assert len(set(named.values())) == 3
    shown = Image.open(io.BytesIO(page.locator(".rb-marking canvas").screenshot())).convert("RGB")
    colours = {colour: count for count, colour in shown.getcolors(shown.width * shown.height)}
    mark = tuple(int(each) for each in named["now"].removeprefix("rgb(").removesuffix(")").split(","))
    assert colours.get(mark, 0) > 20  # the cross
    outline = page.locator(".rb-marking-sets label:has(:checked)").evaluate(
        "label => getComputedStyle(label).outlineStyle")
    assert outline == "solid"


def test_the_list_of_marks_is_read_out_and_changed_by_numbers(visitor, photograph):
    page = opened(visitor, photograph)
    field = page.locator('.rb-field[data-field="upper_limb"]')
    fold = field.locator("summary")
    fold.click()
    expect(field.locator("table")).to_be_hidden()
    choose(page, "Upper limb")
    by_hand_alone(page)
    canvas = page.locator(".rb-marking canvas")
    canvas.focus()
    for key in ("Enter", "ArrowRight", "Enter"):
        page.keyboard.press(key)
    expect(fold).to_have_text("Upper limb, along the edge of its belly: 2 in the list")
    assert not field.locator("table").is_visible()
    fold.focus()
    page.keyboard.press("Enter")
    cell = field.get_by_role("textbox", name="Row 2, From the left edge in pixels")
    assert cell.input_value() == str(WIDTH // 2)
    cell.fill("1234.5")
    cell.blur()
    canvas.focus()
    page.keyboard.press("PageUp")
    page.keyboard.press("PageDown")
    expect(said(page)).to_contain_text("Upper limb, 2: 1234.5 across")
    field.get_by_role("button", name="Remove row 1", exact=True).click()
    expect(fold).to_have_text("Upper limb, along the edge of its belly: 1 in the list")


def test_what_a_picture_shows_becomes_a_reading_of_the_bow(visitor):
    put(visitor)
    example = {each.id: each.default for each in inputs_of(catalog.find("photograph"))}
    marks = "&".join(f"{name}={example[name]}" for name in ("dots", "upper_limb", "lower_limb"))
    page = open_bar(visitor, "#" + marks, "photograph")
    dialog = page.locator("dialog[open]")
    page.get_by_role("button", name="Keep in a bow").click()
    expect(dialog).to_contain_text("Unstrung shape: 4.27in:0.398in;")
    dialog.get_by_label("Also write down").check()
    dialog.get_by_role("button", name="Keep", exact=True).click()
    expect(page.locator(".rb-kept-told")).to_contain_text("Kept.")
    kept = [each for each in record(visitor) if each["sheet"] == "bow" and each.get("source")]
    assert kept[0]["source"].startswith("photograph ")
    assert kept[0]["facts"]["profile"].startswith("4.27in:0.398in;")
    assert "Unstrung shape ± " in kept[0]["note"]


def test_an_answer_is_kept_with_its_picture_if_the_reader_wants(visitor, photograph):
    put(visitor)
    example = {each.id: each.default for each in inputs_of(catalog.find("photograph"))}
    marks = "&".join(f"{name}={example[name]}" for name in ("dots", "upper_limb", "lower_limb"))
    page = open_bar(visitor, "#" + marks, "photograph")
    page.locator(".rb-marking[data-live]").wait_for()
    dialog = page.locator("dialog[open]")
    page.get_by_role("button", name="Keep in a bow").click()
    expect(dialog.get_by_label("Also keep the picture")).to_be_hidden()  # none is open
    dialog.get_by_role("button", name="Cancel").click()
    page.get_by_label("Choose a picture").set_input_files(photograph)
    expect(said(page)).to_contain_text("The marks of the tables stand on it.")
    stand = ";".join(":".join(row[:-1]) for row in rows(page, "dots"))
    assert stand.replace(" px", "") == example["dots"]
    page.get_by_role("button", name="Keep in a bow").click()
    dialog.get_by_label("Also keep the picture").check()
    dialog.get_by_role("button", name="Keep", exact=True).click()
    expect(page.locator(".rb-kept-told")).to_contain_text("Kept.")
    entries = {each["sheet"]: each for each in record(visitor)}
    assert entries["answer"]["source"].startswith("photograph ")
    assert entries["photo"]["facts"]["entry"] == entries["answer"]["id"]
    page.locator(".rb-kept-told button").click()
    expect(page.locator(".rb-kept-told")).to_contain_text("Taken back.")
    struck = {each["replaces"] for each in record(visitor) if "replaces" in each}
    assert struck == {entries["answer"]["id"], entries["photo"]["id"]}
