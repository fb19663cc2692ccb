"""The record on the command line: one file a bow, replaced whole, the one before kept."""

import csv
import io

import icalendar
import pytest

from calc.command import record
from calc.command.record import BAD_INPUT, DONE, main
from calc.record import file, photos
from calc.record.entries import entries_json
from calc.record.fold import State


@pytest.fixture
def path(tmp_path):
    path = tmp_path / "31.html"
    words = ["--tag", "31", "--title", "64 in recurve", "--at", "2026-05-05T09:00"]
    assert main(["new", str(path), *words]) == DONE
    return path


def entries(path):
    return file.record_in(path.read_text("utf-8")).entries


def add(path, *words):
    return main(["add", str(path), *words])


def test_a_reading_is_added_as_typed(path, capsys):
    assert add(path, "reading", "--weight", "53 lb", "--at-draw", "28", "--upper", "7-5/8",
               "--at", "2026-05-05T10:00+02:00") == DONE
    id = capsys.readouterr().out.strip()
    found = next(each for each in entries(path) if each.id == id)
    assert found.facts == (("at_draw", "28 in"), ("upper", "7-5/8 in"), ("weight", "53 lb"))
    assert found.at == "2026-05-05T10:00+02:00"


def test_a_bare_number_gets_the_unit_it_was_typed_in(path):
    assert add(path, "reading", "--upper", "193.7", "--units", "metric") == DONE
    assert State(entries(path)).latest("reading.upper").text == "193.7 mm"


@pytest.mark.parametrize(("words", "said"), [
    (["--weight", "heavy"], "Draw weight: “heavy” is not a weight or force"),
    (["--upper", "7 ft"], "Upper tiller distance must be from 2 in to 16 in"),
    ([], "without any fact says nothing"),
    (["--weight", "53 lb", "--at", "yesterday"], "--at: “yesterday” is not a moment"),
])
def test_bad_input_is_refused_and_nothing_changes(path, capsys, words, said):
    before = path.read_bytes()
    assert add(path, "reading", *words) == BAD_INPUT
    assert said in capsys.readouterr().err
    assert path.read_bytes() == before


def test_the_file_before_is_kept(path):
    before = path.read_bytes()
    add(path, "reading", "--brace", "8 1/4 in")
    assert path.with_name("31.html~").read_bytes() == before
    assert not path.with_name("31.html.new").exists()


def test_an_existing_file_is_not_begun_anew(path, capsys):
    assert main(["new", str(path), "--tag", "32"]) == BAD_INPUT
    assert "already" in capsys.readouterr().err


def test_striking_out_and_striking_that(path, capsys):
    add(path, "reading", "--brace", "7 in")
    first = capsys.readouterr().out.strip()
    assert main(["strike", str(path), first, "--why", "read the wrong mark"]) == DONE
    assert State(entries(path)).latest("reading.brace") is None
    strike = next(each for each in entries(path) if each.replaces == first)
    assert strike.why == "read the wrong mark"
    assert main(["strike", str(path), strike.id]) == DONE
    assert State(entries(path)).latest("reading.brace").text == "7 in"


@pytest.mark.parametrize("id", ["01", "00000000000000", "../../etc"])
def test_an_unknown_entry_cannot_be_struck(path, capsys, id):
    assert main(["strike", str(path), id]) == BAD_INPUT
    assert "has the id" in capsys.readouterr().err


def test_show_says_how_it_stands_and_what_was_struck(path, capsys):
    add(path, "reading", "--weight", "53 lb", "--at-draw", "28 in")
    id = capsys.readouterr().out.strip()
    main(["strike", str(path), id])
    main(["show", str(path)])
    out = capsys.readouterr().out
    assert out.startswith("31 64 in recurve\nIts weight has not been read.\nNext: Inspect it unstrung")
    assert "Stop: No inspection is written down" in out
    assert "A reading (struck out)" in out


def test_show_gives_notes_and_what_was_since_changed_below_an_entry(path, capsys):
    add(path, "reading", "--upper", "7 5/8 in", "--lower", "7 5/16 in", "--measured", "fadeout",
        "--note", "by lamplight", "--at", "2026-05-05T10:00")
    capsys.readouterr()
    assert main(["show", str(path)]) == DONE
    assert "  by lamplight\n" in capsys.readouterr().out


def test_next_names_each_bow(path, tmp_path, capsys):
    other = tmp_path / "32.html"
    main(["new", str(other), "--tag", "32", "--title", "66 in longbow"])
    assert main(["next", str(path), str(other)]) == DONE
    assert [line[:2] for line in capsys.readouterr().out.splitlines()] == ["31", "32"]


def test_merging_two_copies_keeps_what_both_have(path, tmp_path):
    copy = tmp_path / "copy.html"
    copy.write_bytes(path.read_bytes())
    add(path, "reading", "--brace", "8 in", "--at", "2026-05-05T10:00")
    add(copy, "reading", "--brace", "8 1/4 in", "--at", "2026-05-05T11:00")
    for _ in range(2):  # a second time changes nothing
        assert main(["merge", str(path), str(copy)]) == DONE
        assert len(entries(path)) == 3
    assert State(entries(path)).latest("reading.brace").text == "8 1/4 in"


def test_csv_goes_to_the_output(path, capsys):
    add(path, "reading", "--weight", "53 lb", "--at-draw", "28 in")
    capsys.readouterr()
    assert main(["csv", str(path)]) == DONE
    rows = list(csv.DictReader(io.StringIO(capsys.readouterr().out)))
    assert rows[0]["weight_lb"] == "53"


@pytest.mark.parametrize(("hour", "said"), [("17:30", ["In order", "Watch"]), ("09:00", ["Watch", "Watch"])])
def test_several_bows_are_held_against_each_other_and_given_to_a_calendar(
        hour, said, path, tmp_path, capsys, monkeypatch):
    monkeypatch.setattr(record, "now", lambda: f"2026-05-05T{hour}+00:00")
    other = tmp_path / "32.html"
    main(["new", str(other), "--tag", "32", "--title", "66 in longbow"])
    assert main(["calendar", str(path), str(other)]) == BAD_INPUT
    assert capsys.readouterr().err == (
        "There is nothing to put into a calendar: no coat is laid or planned, and no bow has a day for its "
        "next look.\n")
    for each in (path, other):
        add(each, "product", "--family", "one-part-urethane")
        add(each, "coats", "--build-coats", "1")
    capsys.readouterr()
    assert main(["across", str(path), str(other)]) == DONE
    lines = capsys.readouterr().out.splitlines()
    assert [line.partition(": Build coat from")[0] for line in lines] == [
        said[0] + ": 31 64 in recurve", said[1] + ": 32 66 in longbow"]
    assert main(["calendar", str(path), str(other)]) == DONE
    events = icalendar.Calendar.from_ical(capsys.readouterr().out).walk("VEVENT")
    assert sorted(str(each["SUMMARY"]) for each in events) == [
        "31: build coat", "31: string and first draw", "32: build coat", "32: string and first draw"]


def test_a_damaged_file_gives_what_it_has_and_says_so(path, capsys):
    add(path, "reading", "--brace", "8 in", "--at", "2026-05-05T10:00")
    text = path.read_text("utf-8")
    path.write_text(text[: text.index(file.CLOSING) - 30], "utf-8")
    assert main(["check", str(path)]) == DONE
    assert "is damaged" in capsys.readouterr().err


@pytest.mark.parametrize("content", [b"", b"%PDF", b"\xff\xfe\x00"])
def test_what_is_no_bows_file_is_refused(tmp_path, capsys, content):
    path = tmp_path / "x.html"
    path.write_bytes(content)
    assert main(["show", str(path)]) == BAD_INPUT
    assert "x.html" in capsys.readouterr().err


def test_a_file_that_is_not_there_is_named(tmp_path, capsys):
    assert main(["show", str(tmp_path / "none.html")]) == BAD_INPUT
    assert "cannot be read" in capsys.readouterr().err


def test_a_file_of_a_later_release_is_read_and_never_written_into(path, capsys):
    later = path.read_text("utf-8").replace(file.FORM_MARK + "1", file.FORM_MARK + "2")
    path.write_text(later, "utf-8")
    capsys.readouterr()
    assert main(["show", str(path)]) == DONE
    told = capsys.readouterr()
    assert "31 64 in recurve" in told.out
    assert "was written by a later release; it is read as far as this one understands it." in told.err
    assert add(path, "reading", "--brace", "8 in") == BAD_INPUT
    assert "so nothing is written into it. Nothing was changed." in capsys.readouterr().err
    assert path.read_text("utf-8") == later


def test_two_bows_are_not_merged_unless_they_are_said_to_be_one(path, tmp_path, capsys):
    other = tmp_path / "32.html"
    main(["new", str(other), "--tag", "32", "--title", "66 in longbow"])
    before = path.read_bytes()
    assert main(["merge", str(path), str(other)]) == BAD_INPUT
    assert "share no entry, so they are records of two bows" in capsys.readouterr().err
    assert path.read_bytes() == before
    assert main(["merge", str(path), str(other), "--same"]) == DONE
    assert len(entries(path)) == 2


def halfway(text):
    return text[: text.index(file.CLOSING) - 30]


def without_the_last_entry(text):
    kept, _, rest = text.partition(file.CLOSING)
    return kept.rstrip().rpartition("\n")[0] + "\n" + file.CLOSING + rest


def as_a_list_with_one_that_cannot_be_read(text):
    return entries_json(file.record_in(text).entries[:1]).rstrip("]\n") + ", {}]"


@pytest.mark.parametrize("damage", [
    halfway, without_the_last_entry, as_a_list_with_one_that_cannot_be_read])
def test_nothing_is_written_over_a_damaged_file_until_a_copy_makes_it_whole(path, tmp_path, capsys, damage):
    add(path, "reading", "--brace", "8 in", "--at", "2026-05-05T10:00")
    copy = tmp_path / "copy.html"
    copy.write_bytes(path.read_bytes())
    path.write_text(damage(path.read_text("utf-8")), "utf-8")
    assert len(entries(path)) == 1
    damaged = path.read_bytes()
    capsys.readouterr()
    # the new entry makes up the number that the file tells of; the lost one would be gone all the same
    assert add(path, "reading", "--brace", "8 1/4 in") == BAD_INPUT
    assert "is damaged" in capsys.readouterr().err
    assert path.read_bytes() == damaged
    assert main(["merge", str(path), str(copy)]) == DONE
    assert len(entries(path)) == 2
    assert add(path, "reading", "--brace", "8 1/4 in") == DONE


def test_a_file_of_all_bows_is_split_into_one_each_as_often_as_one_likes(path, tmp_path, capsys):
    other = tmp_path / "32.html"
    main(["new", str(other), "--tag", "31", "--title", "64 in recurve"])  # another bow of the same tag
    both = tmp_path / "all.html"
    both.write_text(file.page_of_all([entries(path), entries(other)], "imperial"), "utf-8")
    assert main(["show", str(both)]) == BAD_INPUT
    assert "holds 2 bows. `record split` writes each into a file of its own." in capsys.readouterr().err
    folder = tmp_path / "bows"
    folder.mkdir()
    for _ in range(2):
        assert main(["split", str(both), str(folder)]) == DONE
        found = sorted(each for each in folder.iterdir() if each.suffix == ".html")
        assert [each.name for each in found] == ["bow-31-64-in-recurve-2.html", "bow-31-64-in-recurve.html"]
        assert sorted(len(entries(each)) for each in found) == [1, 1]
    assert len(capsys.readouterr().out.splitlines()) == 4


def test_show_tells_what_was_foretold_and_what_a_kept_answer_had_otherwise(path, capsys):
    for number in range(4):
        at = f"2026-05-0{6 + number}T1"
        add(path, "reading", "--weight", f"{53 - number} lb", "--at-draw", "28 in", "--upper", "7 5/8 in",
            "--lower", "7 5/16 in", "--at", at + "0:00")
        add(path, "strokes", "--lower-belly", "20", "--paper", "P120", "--at", at + "1:00")
        if number == 1:
            add(path, "answer", "--calculator", "tiller", "--pairs", "upper=7+1%2F2+in", "--at", at + "2:00")
    capsys.readouterr()
    assert main(["show", str(path)]) == DONE
    shown = capsys.readouterr().out
    assert "Foretold by the log: 48." in shown
    assert "  Since then: upper 7 5/8 in, not 7 1/2 in" in shown


def test_a_fact_may_be_called_like_what_every_action_takes(path):
    assert add(path, "handover", "--sheet", "45 lb at 28 in") == DONE
    assert add(path, "photo", "--what", "the grip") == DONE
    assert State(entries(path)).text("handover.sheet") == "45 lb at 28 in"
    assert State(entries(path)).text("photo.what") == "the grip"


# Pictures ------------------------------------------------------------------------

PICTURE = photos.JPEG + "/9j/2Q=="


def pictures(path):
    return photos.pictures_in(path.read_text("utf-8"))


def with_picture(path, name):
    """Put a picture into a file, as a page of bows does."""
    assert add(path, "photo", "--what", "the grip", "--file", name) == DONE
    path.write_text(file.page(entries(path), "imperial", pictures={name: PICTURE}), "utf-8")


def test_the_pictures_of_a_file_stay_in_it_until_they_are_removed(path):
    with_picture(path, "01k2f7m3q9xw4t")
    assert add(path, "reading", "--brace", "8 in") == DONE
    assert pictures(path) == {"01k2f7m3q9xw4t": PICTURE}
    [photo] = State(entries(path)).of("photo")
    assert main(["strike", str(path), photo.id, "--why", photos.REMOVED]) == DONE
    assert pictures(path) == {}


def test_pictures_of_copies_come_together_and_go_apart_with_their_bows(path, tmp_path):
    copy = tmp_path / "copy.html"
    copy.write_bytes(path.read_bytes())
    with_picture(path, "01k2f7m3q9xw4t")
    with_picture(copy, "01k2f7m3q9xw4v")
    assert main(["merge", str(path), str(copy)]) == DONE
    assert set(pictures(path)) == {"01k2f7m3q9xw4t", "01k2f7m3q9xw4v"}
    assert main(["split", str(path), str(tmp_path)]) == DONE
    assert set(pictures(tmp_path / "bow-31-64-in-recurve.html")) == {"01k2f7m3q9xw4t", "01k2f7m3q9xw4v"}
