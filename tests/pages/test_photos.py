"""Photographs of a bow in a real browser: what is kept of them, where they go, what happens without room."""

import base64
import hashlib
import io
import re
from pathlib import Path

import pytest
from PIL import Image
from playwright.sync_api import expect

from calc.record import file, photos
from tests.pages.printed import FORMATS, printed
from tests.pages.test_axe import faults
from tests.pages.test_bows import add_bow, open_bows, open_form, saved_file, take_in, timeline
from tests.pages.test_bows_storage import BOW, COUNT, store_address

LYING = (3000, 2000)
TURNED = (1600, 2400)  # stood up as the camera says, and drawn anew
MAKE = "MARKERMAKE"
EXIF, ORIENTATION, MAKER, GPS = b"Exif\0\0", 0x0112, 0x010F, 0x8825
"""Tags of the exchangeable image file format (CIPA DC-008): from memory; Pillow writes and reads them."""

APP1, APP13, COMMENT, SCAN = 0xE1, 0xED, 0xFE, 0xDA
"""Markers of ITU-T T.81, table B.1: from memory. Whatever cameras add stands in one of the first three."""

KEPT = """([store, id]) => import(store).then(async ({ openStore }) => {
  const photo = await (await openStore()).photo(id);
  if (!photo) return null;
  const bytes = new Uint8Array(await photo.blob.arrayBuffer());
  return { ...photo, blob: btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join("")) };
})"""
DAMAGE = """([store, id]) => import(store).then(async ({ openStore }) => {
  const kept = await openStore();
  const photo = await kept.photo(id);
  const bytes = new Uint8Array(await photo.blob.arrayBuffer());
  bytes[bytes.length >> 1] ^= 1;
  await kept.putPhoto({ ...photo, blob: new Blob([bytes], { type: photo.type }) });
})"""
FULL = """() => {
  const { put } = IDBObjectStore.prototype;
  IDBObjectStore.prototype.put = function (row, ...more) {
    if (this.name === "photos") throw new DOMException("no room", "QuotaExceededError");
    return put.call(this, row, ...more);
  };
  window.makeRoom = () => { IDBObjectStore.prototype.put = put; };
}"""
MANY = """([store, bow]) => import(store).then(async ({ openStore }) => {
  const kept = await openStore();
  const [blob, type] = [new Blob(["x"]), "image/jpeg"];
  for (let each = 0; each < 60; each += 1) {
    await kept.putPhoto({ id: `many${each}`, bow, blob, thumb: null, type, size: 1, sum: "" });
  }
})"""
END_THE_MONTH = """(bow) => new Promise((resolve, reject) => {
  const asked = indexedDB.open("rebrace");
  asked.onerror = reject;
  asked.onsuccess = () => {
    const bin = asked.result.transaction("bin", "readwrite").objectStore("bin");
    bin.get(bow).onsuccess = ({ target }) => {
      bin.put({ ...target.result, until: 1 }).onsuccess = () => resolve(asked.result.close());
    };
  };
})"""
FIRST_LAYOUT = """([bow, entry]) => new Promise((resolve, reject) => {
  const asked = indexedDB.open("rebrace", 1);
  asked.onupgradeneeded = () => {
    for (const name of ["bows", "entries", "drafts", "bin"]) {
      asked.result.createObjectStore(name, { keyPath: "id" });
    }
    asked.result.createObjectStore("meta", { keyPath: "name" });
    const { transaction } = asked;
    transaction.objectStore("entries").createIndex("bow", ["bow", "id"]);
    transaction.objectStore("entries").add(entry);
    transaction.objectStore("bows").add({ id: bow, title: "kept before", entries: 1 });
  };
  asked.onsuccess = () => resolve(asked.result.close());
  asked.onerror = reject;
})"""


def photograph():
    """Return the file of a camera held on its side: left half red, right half blue, with the place in it."""
    image = Image.new("RGB", LYING, (0, 0, 200))
    image.paste((200, 0, 0), (0, 0, LYING[0] // 2, LYING[1]))
    exif = Image.Exif()
    exif[ORIENTATION] = 6  # to be turned by a quarter clockwise: the left half comes to the top
    exif[MAKER] = MAKE
    exif.get_ifd(GPS).update({1: "N", 2: (52.0, 31.0, 12.0), 3: "E", 4: (13.0, 24.0, 36.0)})
    written = io.BytesIO()
    image.save(written, "JPEG", exif=exif, comment=b"MARKERCOMMENT")
    return written.getvalue()


def markers(jpeg):
    """Return the markers of a JPEG's segments, in order, up to its scan."""
    found, place = [], 2
    while found[-1:] != [SCAN]:
        assert jpeg[place] == 0xFF
        found.append(jpeg[place + 1])
        place += 2 + int.from_bytes(jpeg[place + 2:place + 4], "big")
    return found


def pick(page, name, data, kind="image/jpeg"):
    """Choose a file in the form of a photograph; the camera's button and the other do the same."""
    inputs = page.locator("dialog.rb-photo[open] input[type=file]")
    expect(inputs).to_have_count(2)
    inputs.last.set_input_files({"name": name, "mimeType": kind, "buffer": data})


def take(page, button="Save", **facts):
    pick(page, "photo.jpg", photograph())
    dialog = page.locator("dialog.rb-photo[open]")
    expect(dialog.locator(".rb-photo-picked img")).to_be_visible()
    for name, text in facts.items():
        dialog.locator(f"[name={name}]").fill(text)
    dialog.get_by_role("button", name=button).first.click()


def find_crazing(page):
    dialog = open_form(page, "finding")
    dialog.locator("[name=which]").select_option("crazing")
    dialog.locator("[name=limb]").select_option("upper")
    dialog.get_by_role("button", name="Save").click()
    expect(timeline(page)).to_have_count(2)


def kept(visitor, id):
    return visitor.page.evaluate(KEPT, [store_address(visitor), id])


def bytes_of(photo):
    return base64.b64decode(photo["blob"])


def in_file(text):
    """Return the only photograph of a bow's file, and the bytes of its picture."""
    [told] = photos.photos(file.record_in(text).entries)
    [(name, address)] = photos.pictures_in(text).items()
    assert name == told.file
    return told, base64.b64decode(address.removeprefix(photos.JPEG))


@pytest.fixture
def bows(visitor):
    page = open_bows(visitor)
    add_bow(page)
    return page


def test_a_photo_stays_with_its_finding_and_goes_to_another_device_whole_and_without_its_place(
    bows, visitor, new_visitor
):
    taken = photograph()
    assert EXIF in taken
    assert Image.open(io.BytesIO(taken)).getexif().get_ifd(GPS)
    find_crazing(bows)
    timeline(bows).first.get_by_role("button", name="Photo of it").click()
    assert faults(bows) == []
    expect(bows.locator("dialog[open] [name=fine]")).to_be_checked()
    take(bows, what="a net of hair lines")
    expect(bows.locator(".rb-photo-count")).to_contain_text("1 photo, ")
    expect(timeline(bows).filter(has_text="A finding").locator(".rb-photo-thumb img")).to_be_visible()
    bows.reload()
    thumb = bows.locator(".rb-photo-row .rb-photo-thumb")
    expect(thumb).to_have_attribute("aria-label", photo_of("a net of hair lines"))
    thumb.click()
    large = bows.locator("dialog[open]")
    expect(large.locator("figcaption")).to_contain_text("a net of hair lines. A finding: ")
    assert large.locator("img").evaluate("image => image.decode().then(() => [image.naturalWidth, "
                                         "image.naturalHeight])") == list(TURNED)
    assert faults(bows) == []
    large.get_by_role("button", name="Close").click()

    text, _ = saved_file(bows)
    told, carried = in_file(text)
    photo = kept(visitor, told.file)
    assert bytes_of(photo) == carried
    assert hashlib.sha256(carried).hexdigest() == photo["sum"] == told.entry.fact("sum")
    assert photo["size"] == len(carried)
    assert not {APP1, APP13, COMMENT} & set(markers(carried))
    assert not [mark for mark in (EXIF, b"MARKER") if mark in carried]
    upright = Image.open(io.BytesIO(carried))
    assert (upright.size, dict(upright.getexif())) == (TURNED, {})
    assert upright.getpixel((800, 100))[0] > 150  # red came to the top
    shared, _ = saved_file(bows, name="Save without the owner")
    assert photos.pictures_in(shared) == {}

    bow = bows.url.partition("#")[2]
    bows.get_by_role("button", name="Remove this bow").click()
    expect(bows.locator(".rb-bows-none")).to_be_visible()
    assert bytes_of(kept(visitor, told.file)) == carried  # it can be brought back for a month
    bows.evaluate(END_THE_MONTH, bow)
    bows.reload()
    bows.locator(".rb-bows[data-ready]").wait_for()
    assert kept(visitor, told.file) is None
    elsewhere = new_visitor()
    other = open_bows(elsewhere)
    take_in(other, text)
    expect(other.locator(".rb-bows-notice")).to_contain_text("1 photo came with it.")
    expect(timeline(other).filter(has_text="A finding").locator(".rb-photo-thumb img")).to_be_visible()
    assert bytes_of(kept(elsewhere, told.file)) == carried
    again, _ = saved_file(other)
    assert in_file(again)[1] == carried

    other.evaluate(DAMAGE, [store_address(elsewhere), told.file])
    other.reload()
    expect(other.locator(".rb-photo-row .rb-photo-thumb")).to_have_text("Damaged")
    other.locator(".rb-photo-row .rb-photo-thumb").click()
    expect(other.locator("dialog[open]")).to_contain_text("This picture is damaged")
    other.locator("dialog[open]").get_by_role("button", name="Close").click()
    take_in(other, text)
    expect(other.locator(".rb-photo-row .rb-photo-thumb img")).to_be_visible()
    assert bytes_of(kept(elsewhere, told.file)) == carried


def photo_of(words):
    """Return what a photograph's thumb is called, as far as its words."""
    return re.compile("Photo: " + re.escape(words))


def test_photos_of_the_intake_are_ticked_off_put_right_struck_out_and_removed(bows, visitor):
    bows.locator(".rb-photo-intake summary").click()
    bows.get_by_role("button", name="Take: Lower tip and its nock").click()
    bows.locator("dialog[open] [name=print]").select_option("record-sheet")
    take(bows, button="Save, then: Grip")
    expect(bows.locator(".rb-photo-intake summary")).to_have_text("Photos of the bow as it came: 1 of 12")
    expect(bows.locator("dialog[open] [name=shows]")).to_have_value("grip")
    take(bows, place="the thorat")
    expect(bows.locator(".rb-photo-intake summary")).to_have_text("Photos of the bow as it came: 2 of 12")
    expect(bows.locator(".rb-photo-count")).to_contain_text("2 photos, ")

    bows.get_by_role("button", name="Photo: Grip. the thorat").first.click()
    bows.locator("dialog[open]").get_by_role("button", name="Put its words right").click()
    bows.locator("dialog[open] [name=place]").fill("the throat")
    bows.locator("dialog[open]").get_by_role("button", name="Save", exact=True).click()
    right = bows.locator(".rb-photo-row").get_by_role("button", name="Photo: Grip. the throat")
    expect(right).to_be_visible()
    expect(bows.locator(".rb-photo-row .rb-photo-thumb")).to_have_count(2)

    right.click()
    bows.locator("dialog[open]").get_by_role("button", name="Strike out").click()
    expect(bows.locator(".rb-photo-row .rb-photo-thumb")).to_have_count(1)
    expect(bows.locator(".rb-struck .rb-photo-thumb img")).to_be_visible()

    [tip] = bows.locator(".rb-photo-row .rb-photo-thumb").all()
    name = tip.get_attribute("data-file")
    tip.click()
    bows.locator("dialog[open]").get_by_role("button", name="Remove the picture").click()
    expect(bows.locator(".rb-photo-count")).to_contain_text("1 photo, ")
    assert kept(visitor, name) is None
    bows.locator(".rb-toast").get_by_role("button", name="Undo").click()
    expect(bows.locator(".rb-photo-count")).to_contain_text("2 photos, ")
    expect(bows.locator(".rb-photo-row .rb-photo-thumb img")).to_have_count(1)
    assert kept(visitor, name) is not None

    bows.get_by_role("button", name="Record sheet for print").click()
    expect(bows.locator(".rb-paper .rb-paper-photo img")).to_have_count(1)
    expect(bows.locator(".rb-paper-photo figcaption")).to_contain_text("Lower tip and its nock.")
    bows.locator(".rb-paper-photo img").evaluate("image => image.decode()")
    for form in FORMATS:
        [sheet] = printed(bows, form)
        assert sheet.is_whole()
        assert "Lower tip and its nock." in sheet.words
    bows.locator(".rb-paper [data-do=back]").click()

    bows.get_by_role("link", name="All bows").click()
    bows.get_by_role("button", name="Remove all my bows").click()
    bows.get_by_role("button", name="Remove without a file").click()
    expect(bows.locator(".rb-bows-none")).to_be_visible()
    assert kept(visitor, name) is None


def test_without_room_the_entry_is_kept_and_its_picture_handed_over(bows, visitor, new_visitor):
    bows.get_by_role("button", name="Photo", exact=True).click()
    dialog = bows.locator("dialog[open]")
    dialog.locator("[name=what]").fill("the window")
    pick(bows, "photo.heic", b"\0\0\0\x18ftypheic" + bytes(100), "image/heic")
    expect(dialog.locator(".rb-problems")).to_contain_text("This browser cannot read that picture.")
    expect(dialog.locator("[name=what]")).to_have_value("the window")
    expect(timeline(bows)).to_have_count(1)

    bows.evaluate(FULL)
    take(bows)
    notice = bows.locator(".rb-bows-notice")
    expect(notice).to_contain_text("had no room for its picture")
    with bows.expect_download() as waiting:
        notice.get_by_role("button", name="Save the picture").click()
    saved = Path(waiting.value.path()).read_bytes()
    assert Image.open(io.BytesIO(saved)).size == (1067, 1600)
    expect(timeline(bows)).to_have_count(2)
    thumb = bows.locator(".rb-photo-row .rb-photo-thumb")
    expect(thumb).to_have_text("Not here")

    bows.evaluate("makeRoom()")
    thumb.click()
    expect(dialog).to_contain_text("This picture is not on this device.")
    putting_in = dialog.locator("input[type=file]")
    putting_in.set_input_files({"name": "other.jpg", "mimeType": "image/jpeg", "buffer": photograph()})
    expect(dialog).to_contain_text("That is another picture.")
    putting_in.set_input_files({"name": "photo.jpg", "mimeType": "image/jpeg", "buffer": saved})
    expect(dialog.locator("figure img")).to_be_visible()
    expect(bows.locator(".rb-photo-count")).to_contain_text("1 photo, ")
    dialog.get_by_role("button", name="Close").click()

    text, _ = saved_file(bows)
    bow = bows.url.partition("#")[2]
    elsewhere = new_visitor()
    other = open_bows(elsewhere)
    other.evaluate(MANY, [store_address(elsewhere), bow])
    take_in(other, text)
    expect(other.locator(".rb-bows-notice")).to_contain_text("1 photo found no room here")
    bows.evaluate(MANY, [store_address(visitor), bow])
    expect(bows.locator(".rb-photo-count")).to_contain_text("61 photos, ")
    bows.get_by_role("button", name="Photo", exact=True).click()
    take(bows)
    expect(dialog.locator(".rb-problems")).to_contain_text("a bow's file has room for 60 photos and 45 MB")
    expect(timeline(bows)).to_have_count(2)


def test_a_store_from_before_there_were_photos_keeps_what_it_holds(visitor):
    page = visitor.open("glossary/")
    entry = {"id": "01k2f7m3q9xw76", "bow": BOW, "text": '{"id":"01k2f7m3q9xw76"}'}
    page.evaluate(FIRST_LAYOUT, [BOW, entry])
    page = open_bows(visitor)
    assert page.evaluate(COUNT, [store_address(visitor), BOW]) == 1
    expect(page.locator(".rb-bows-list")).to_contain_text("kept before")
    add_bow(page)
    page.get_by_role("button", name="Photo", exact=True).click()
    take(page)
    expect(page.locator(".rb-photo-count")).to_contain_text("1 photo, ")
