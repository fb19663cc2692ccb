"""What a record says of photographs, and how a file carries their pictures."""

import pytest

from calc.record import file, photos, sheets
from calc.record.entries import Entry, entry_id
from calc.record.fold import State
from calc.tables.pictures import PICTURES
from tests.record.bench import Bench
from tests.sentences import whole

ONE, TWO, THREE = (entry_id(1000 + number, 0) for number in range(3))
JPEG = photos.JPEG + "/9j/2Q=="
SUM = "ab" * 32


@pytest.fixture
def bench():
    return Bench().came_in()


def finding(bench):
    return bench.write("finding", which="crazing", limb="upper", face="belly", place="6 in")


def strike(bench, entry, why=""):
    struck = bench.write("photo", replaces=entry.id)
    struck.why = why
    return struck


def pictures(bench):
    return [(each.file, each.counts) for each in photos.photos(bench.entries)]


def test_a_photograph_says_what_it_shows_where_and_to_what_it_belongs(bench):
    found = finding(bench)
    bench.write("photo", shows="upper-belly", what="a hair line", place="6 in out.", file=ONE, sum=SUM,
                entry=found.id, print="record-sheet")
    [photo] = photos.photos(bench.entries)
    label = {each.id: each.label for each in sheets.input_of("finding.which").choices}["crazing"]
    assert photo.caption == (f"Upper limb, belly. a hair line. 6 in out. A finding: {label}, Upper limb, "
                             "Belly, 6 in. Tue 5 May 2026, 09:07.")
    assert photo.beside == found.id


def test_one_that_belongs_to_nothing_here_says_so_by_silence(bench):
    bench.write("photo", what="the grip", file=ONE, entry=THREE)
    [photo] = photos.photos(bench.entries)
    assert (photo.caption, photo.beside) == ("the grip. Tue 5 May 2026, 09:06.", "")


def test_a_picture_is_named_by_an_id_or_not_at_all(bench):
    bench.write("photo", what="the grip", file='p07"><script>')
    assert photos.photos(bench.entries) == []


def test_a_photograph_that_is_struck_out_stays_to_be_seen(bench):
    taken = bench.write("photo", what="the grip", file=ONE)
    strike(bench, taken)
    assert pictures(bench) == [(ONE, False)]


def test_words_that_were_put_right_stand_in_place_of_the_first(bench):
    first = bench.write("photo", what="the girp", file=ONE)
    bench.write("photo", what="the grip", file=ONE)
    strike(bench, first)
    assert [each.caption[:8] for each in photos.photos(bench.entries)] == ["the grip"]
    strike(bench, bench.entries[-2])
    assert [each.caption[:8] for each in photos.photos(bench.entries)] == ["the grip"]
    assert pictures(bench) == [(ONE, False)]


def test_a_picture_that_was_removed_is_wanted_no_more_until_that_is_undone(bench):
    first = bench.write("photo", what="the girp", file=ONE)
    second = bench.write("photo", what="the grip", file=ONE)
    strike(bench, first)
    bench.write("photo", what="the window", file=TWO)
    removal = strike(bench, second, photos.REMOVED)
    assert pictures(bench) == [(TWO, True)]
    strike(bench, removal)
    assert pictures(bench) == [(ONE, True), (TWO, True)]


def test_one_picture_of_two_findings_stays_for_the_other(bench):
    one = bench.write("photo", what="the crack", file=ONE)
    bench.write("photo", what="the chip", file=ONE)
    strike(bench, one, photos.REMOVED)
    assert [each.caption[:8] for each in photos.photos(bench.entries)] == ["the chip"]


def test_the_pictures_of_the_intake_are_ticked_off_as_they_come(bench):
    assert len(PICTURES) == 12  # intake.md, step 5: at least twelve pictures (common practice)
    assert [each.photo for each in photos.intake(bench.state)] == [""] * 12
    taken = bench.write("photo", shows="grip", file=ONE)
    ticked = {each.id: each.photo for each in photos.intake(bench.state) if each.photo}
    assert ticked == {"grip": taken.id}
    assert [each.id for each in photos.intake(bench.state) if each.is_fine] == ["lettering"]


def test_what_was_worked_on_shows_no_more_how_it_came(bench):
    before = bench.write("photo", shows="grip", file=ONE)
    bench.write("strokes", upper_belly="10")
    bench.write("photo", shows="window", file=TWO)
    bench.write("photo", shows="grip", file=THREE)
    assert {each.id: each.photo for each in photos.intake(bench.state) if each.photo} == {"grip": before.id}


def test_a_picture_of_the_very_moment_of_the_first_work_comes_too_late(bench):
    work = bench.write("strokes", upper_belly="10")
    taken = bench.write("photo", shows="grip", file=ONE)
    taken.at = work.at
    assert not [each for each in photos.intake(bench.state) if each.photo]
    taken.at = "2026-05-05T09:05:00+02:00"  # a minute before
    assert [each.id for each in photos.intake(bench.state) if each.photo] == ["grip"]


def test_of_a_long_record_the_newest_entries_can_be_pictured(bench):
    last = [bench.write("reading", brace="8 in") for _ in range(200)]
    assert [each.id for each in photos.ties(bench.state)] == [each.id for each in reversed(last)]


def test_a_picture_can_belong_to_whatever_was_written_down_but_another(bench):
    bench.write("photo", what="the grip", file=ONE)
    bench.write("answer", headline="Take about 3 %.")
    bench.write("told", text="It pulls 47 lb today.")
    found = finding(bench)
    ids = [each.id for each in photos.ties(bench.state)]
    assert ids[0] == found.id
    assert len(ids) == len(bench.entries) - 3


def test_the_record_sheet_has_room_for_three(bench):
    names = [entry_id(2000 + number, 0) for number in range(5)]
    for number, name in enumerate(names):
        bench.write("photo", file=name, **({} if number == 1 else {"print": "record-sheet"}))
    assert [each.file for each in photos.for_sheet(bench.entries)] == [names[0], names[2], names[3]]
    strike(bench, bench.entries[-5])
    assert [each.file for each in photos.for_sheet(bench.entries)] == names[2:]


def test_what_a_page_is_told(bench):
    found = finding(bench)
    taken = bench.write("photo", shows="lettering", file=ONE, sum=SUM, entry=found.id, print="record-sheet")
    album = photos.album(bench.entries, State(bench.entries))
    [photo] = album["photos"]
    assert (photo["id"], photo["file"], photo["sum"], photo["beside"], photo["counts"]) == (
        taken.id, ONE, SUM, found.id, True)
    assert ["shows", "lettering"] in photo["facts"]
    assert album["ties"][0]["fine"]
    assert not album["ties"][1]["fine"]
    assert album["ties"][0]["words"].endswith("6 in, Tue 5 May 2026, 09:06")
    assert (album["sheet"], album["most"], album["begun"]) == ([taken.id], 60, False)
    bench.write("strokes", upper_belly="10")
    assert photos.album(bench.entries, bench.state)["begun"] is True
    assert [each["photo"] for each in album["intake"] if each["id"] == "lettering"] == [taken.id]


# In a file -----------------------------------------------------------------------


def test_pictures_go_into_a_file_and_come_out_again(bench):
    bench.write("photo", what='"the" <grip>', file=ONE)
    bench.write("photo", what="the window", file=TWO)
    page = file.page(bench.entries, "imperial", pictures={ONE: JPEG, THREE: JPEG})
    assert photos.pictures_in(page) == {ONE: JPEG}  # what no entry names does not go with it
    assert page.count("This picture is not in the file.") == 1
    assert "&quot;the&quot; &lt;grip&gt;" in page
    assert len(file.record_in(page).entries) == len(bench.entries)


def test_one_picture_of_two_findings_is_in_a_file_once(bench):
    bench.write("photo", what="the crack", file=ONE)
    bench.write("photo", what="the chip", file=ONE)
    page = file.page(bench.entries, "imperial", pictures={ONE: JPEG})
    assert page.count(JPEG) == 1
    assert "the crack" in page.partition(JPEG)[2]
    assert "the chip" in page.partition(JPEG)[2]


def test_a_file_that_is_cut_off_loses_pictures_before_entries(bench):
    bench.write("photo", what="the grip", file=ONE)
    page = file.page(bench.entries, "imperial", pictures={ONE: JPEG})
    cut = page[:page.index(JPEG) + 10]
    assert len(file.record_in(cut).entries) == len(bench.entries)
    assert photos.pictures_in(cut) == {}


def test_pictures_of_several_bows_stand_each_with_its_own(bench):
    other = Bench().came_in()
    other.entries = [Entry(entry_id(5000 + place, 0), each.at, each.sheet, each.facts)
                     for place, each in enumerate(other.entries)]
    other.write("photo", file=TWO)
    bench.write("photo", file=ONE)
    page = file.page_of_all([bench.entries, other.entries], "imperial", pictures={ONE: JPEG, TWO: JPEG})
    assert photos.pictures_in(page) == {ONE: JPEG, TWO: JPEG}
    assert [len(each.entries) for each in file.records_in(page)] == [6, 6]
    first, _, second = page.partition("</section>")
    assert ONE in photos.pictures_in(first)
    assert list(photos.pictures_in(second)) == [TWO]


def test_pictures_that_would_make_a_file_too_large_to_be_read_are_refused():
    photos.check_room(45_000_000)
    assert file.LONGEST_FILE > 45_000_000 / 3 * 4
    with pytest.raises(ValueError, match=whole(
            "The photos of all bows are too large for one file. Save each bow to a file of its own; nothing "
            "was changed.")):
        photos.check_room(45_000_001)


@pytest.mark.parametrize("address", [
    "data:image/svg+xml;base64,AAAA", "data:text/html;base64,AAAA", "https://example.org/a.jpg",
    "javascript:1", photos.JPEG + "AA%41", photos.JPEG + "AA AA", "",
])
def test_only_a_jpeg_is_taken_out_of_a_file(address):
    assert photos.pictures_in(f'<img data-photo="{ONE}" src="{address}">') == {}
    assert photos.pictures_in(f'<img data-photo="{ONE}" src="{JPEG}">') == {ONE: JPEG}
    assert photos.pictures_in(f'<img data-photo="x" src="{JPEG}">') == {}


def test_nothing_of_a_picture_goes_into_a_file_without_the_owner(bench):
    bench.write("photo", what="MARKER", file=ONE)
    page = file.page(bench.entries, "imperial", with_private=False, pictures={ONE: JPEG})
    assert [each for each in (ONE, JPEG, "MARKER", "Photographs") if each in page] == []
