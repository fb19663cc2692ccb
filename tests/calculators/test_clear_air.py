"""Clear air: clearing, booths, vapour, and what must never be said."""

import math
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.answer import work_out
from calc.calculators.clear_air import CALCULATOR
from calc.declaring import inputs_of
from calc.lookups.respirators import LOOKUP
from calc.outcome import say
from calc.tables.respirators import NEEDS
from calc.tables.solvents import SOLVENTS, find
from tests.outcomes import table

MINUTE = 60.0
AGENTS = [each.agent for each in NEEDS]


def results(**typed):
    job = work_out(CALCULATOR, list(typed.items()), standing={})
    assert not job.problems, job.problems
    return dict(job.outcome.values), job.outcome


def checks(outcome):
    return {each.id: each for each in outcome.checks}


def all_words(outcome):
    words = [say(outcome.headline, "metric")]
    words += [say(each.text, "metric") for each in outcome.checks]
    words += [say(each, "metric") for each in (*outcome.assumptions, *CALCULATOR.cautions)]
    words += [str(cell) for table in outcome.tables for row in table.rows for cell in row]
    return " ".join(words)


def test_the_shop_of_the_example():
    # 600 cfm in 18 x 14 x 9 ft: 36000 / 2268 changes an hour, t = ln(100) K / N with a mixing factor of 3.
    values, _ = results()
    assert values["air_changes"] * 3600 == pytest.approx(36_000 / 2268)
    assert values["minutes_99"] / MINUTE == pytest.approx(60 * math.log(100) * 3 * 2268 / 36_000)


def test_another_shop():
    # 500 cfm in 12 x 20 x 8 ft: 15.625 changes an hour, 53.05 min with a mixing factor of 3: calculated
    # separately.
    values, _ = results(length="20 ft", width="12 ft", height="8 ft", flow="500 cfm")
    assert values["air_changes"] * 3600 == pytest.approx(15.625)
    assert values["minutes_99"] / MINUTE == pytest.approx(53.05, abs=0.005)


@pytest.mark.parametrize(
    ("changes", "minutes_99", "minutes_999"),
    [("2 per hour", 138, 207), ("6", 46, 69), ("12 /h", 23, 35), ("20 ach", 14, 21)],
)
def test_the_published_table(changes, minutes_99, minutes_999):
    # CDC 2003, table B.1: read in a copy.
    values, _ = results(known="changes", changes=changes, mixing_factor="1")
    assert values["minutes_99"] / MINUTE == pytest.approx(minutes_99, abs=0.5)
    assert values["minutes_999"] / MINUTE == pytest.approx(minutes_999, abs=0.5)


def test_a_booth_needs_its_face_speed():
    # 4 x 4 ft, small booth, little draught: 150 ft/min (WAC 296-62-11019, read in a copy): 2400 cfm.
    values, outcome = results(booth="small")
    assert values["booth_flow"] / (0.3048**3 / 60) == pytest.approx(2400)
    assert checks(outcome)["booth"].level == "watch"
    assert results()[0]["booth_flow"] is None
    assert "booth" not in checks(results(booth="small", flow="2400 cfm")[1])


def test_vapour_against_its_limit():
    # n-butyl acetate, 3 fl oz, all in 2268 ft3 of still air: 882 kg/m3, 116.16 g/mol, ideal gas: by hand.
    values, outcome = results()
    vapour = 3 * 29.5735e-6 * 882 / 0.11616 * 8.314463 * (70 - 32 + 491.67) / 1.8 / 101325
    assert values["vapour_still"] == pytest.approx(vapour / (2268 * 0.3048**3), rel=1e-4)
    assert values["vapour_end"] < values["vapour_still"]
    assert values["share_of_limit"] == pytest.approx(values["vapour_end"] / 0.012)
    assert checks(outcome)["fire"].level == "watch"


@pytest.mark.parametrize(
    ("typed", "level", "words"),
    [
        ({"liquid": "64 fl oz"}, "stop", "Do not do it this way"),
        ({"liquid": "2 gal", "flow": "5 cfm"}, "stop", "the whole room can explode"),
        ({"liquid": "2 gal", "flow": "50000 cfm"}, "stop", "should it stop"),
        ({"liquid": "20 fl oz", "flow": "5000 cfm"}, "watch", "Only the fan"),
        ({"liquid": "1 fl oz"}, "watch", "Near gun"),
    ],
)
def test_fire_by_amount(typed, level, words):
    found = checks(results(**typed)[1])["fire"]
    assert found.level == level
    assert words in say(found.text, "metric")


def test_above_the_limit_the_room_can_explode_and_nothing_says_otherwise():
    # n-butyl acetate burns from 1.2 %: IEC 60079-20-1, read second-hand. 2 gal in 2268 ft3: by hand.
    values, outcome = results(liquid="2 gal", flow="5 cfm")
    assert values["vapour_end"] > 0.012
    text = say(outcome.headline, "imperial")
    assert text.startswith("Do not do this: the air of the whole room can explode")
    assert "burns from 12000 ppm" in text
    assert "far from burning" not in all_words(outcome)


@pytest.mark.parametrize("mixing", ["1", "3"])
def test_the_chart_runs_from_all_to_a_hundredth(mixing):
    """Left after n changes of air is exp(-n), with poor mixing exp(-n / k): a hundredth after 4.605 k."""
    values, outcome = results(mixing_factor=mixing)
    (chart,) = outcome.charts
    line = chart.lines[0]
    assert (line.xs[0], line.ys[0]) == (0.0, 1.0)
    assert line.ys[-1] == pytest.approx(0.01)
    assert line.xs[-1] == pytest.approx(values["minutes_99"])
    assert [each.label for each in chart.lines[1:]] == ["air mixed at once"] * (mixing == "3")
    for each, factor in zip(chart.lines, (float(mixing), 1.0), strict=False):
        changes = [time * math.log(100) * float(mixing) / line.xs[-1] for time in each.xs]
        assert list(each.ys) == pytest.approx([math.exp(-count / factor) for count in changes])


@given(st.floats(0.01, 600), st.floats(5, 50_000))
def test_a_stop_is_in_the_headline(ounces, cfm):
    job = work_out(CALCULATOR, [("liquid", f"{ounces:.4f} fl oz"), ("flow", f"{cfm:.4f} cfm")])
    if job.outcome is None:
        return
    stopped = "stop" in [each.level for each in job.outcome.checks]
    assert say(job.outcome.headline, "metric").startswith("Do not ") == stopped


def test_no_minutes_are_given_for_isocyanate():
    # The book's own rule: clearing times are never to be used for isocyanate.
    values, outcome = results(agent="isocyanate")
    assert [values[id] for id in ("minutes_90", "minutes_99", "minutes_999")] == [None] * 3
    assert checks(outcome)["isocyanate"].level == "stop"
    assert say(outcome.headline, "metric").startswith("No clearing time holds for isocyanate")
    assert outcome.charts == ()
    assert "clearing" not in [each.id for each in outcome.tables]
    assert " min" not in say(outcome.headline, "metric")


def test_formaldehyde_gets_only_the_highest_factor_and_its_limits():
    # NIOSH Pocket Guide, formalin: above its recommended limit a factor of 10,000 only; read in a copy.
    _, outcome = results(agent="formaldehyde")
    [table] = [each for each in outcome.tables if each.id == "respirators"]
    assert [row[1] for row in table.rows] == ["10000", "10000"]
    [limits] = [each for each in outcome.tables if each.id == "limits"]
    assert [row[1] for row in limits.rows] == [
        "0.016 ppm", "ceiling 0.1 ppm in 15 min", "0.75 ppm", "2 ppm in 15 min"]
    assert checks(outcome)["still-given-off"].level == "watch"


def test_no_lower_family_is_named_for_formaldehyde_in_the_look_up_table():
    # The same page: read in a copy.
    rows = [row.cells for row in LOOKUP.rows if "formaldehyde" in (row.cells[2] or "")]
    assert [cells[1] for cells in rows] == ["10000", "10000"]
    assert "disposable" in LOOKUP.rows[0].cells[0].lower()
    assert all(row.cells[2] is None for row in LOOKUP.rows if "disposable" in row.cells[0].lower())


def test_the_example_says_that_its_peak_is_above_limits():
    # Vapour against 150 ppm (OSHA, NIOSH: read) and 50 ppm (ACGIH: from memory).
    values, outcome = results()
    found = checks(outcome)["breathing"]
    assert found.level == "watch"
    assert "50 ppm (ACGIH TLV)" in say(found.text, "metric")
    assert values["vapour_end"] > values["breathing_lowest"] == pytest.approx(50e-6)
    assert "above the lowest limit shown for breathing" in say(outcome.headline, "metric")


@pytest.mark.parametrize("solvent", [each.id for each in SOLVENTS])
@pytest.mark.parametrize("liquid", ["0.05 fl oz", "4 fl oz", "40 fl oz"])
def test_the_peak_is_compared_with_every_limit_shown(solvent, liquid):
    # C(t) = C exp(-N t / K): the time until a limit, worked out by hand.
    values, outcome = results(solvent=solvent, liquid=liquid)
    [table] = [each for each in outcome.tables if each.id == "limits"]
    assert table.rows
    for body, text, below, _ in table.rows:
        figure = re.search(r"([\d.]+) (ppm|mg/m3)", str(text))
        if figure is None:
            assert below is None
            continue
        molar_mass = find(solvent).molar_mass
        share = float(figure[1]) * 1e-6
        if figure[2] == "mg/m3":
            share *= 8.314463 * 298.15 / 101325 / molar_mass
        if values["vapour_end"] > share:
            by_hand = math.log(values["vapour_end"] / share) * 3 / values["air_changes"]
            assert below.value == pytest.approx(by_hand, rel=1e-5), body
        else:
            assert below.value == "not above", body


def test_what_is_dangerous_at_once_is_a_stop():
    # 800 ppm of turpentine: NIOSH, IDLH: read. 10 % of its flammable limit is 800 ppm, too; 25 % is 2000.
    typed = {"solvent": "turpentine", "liquid": "40 fl oz", "limit_share": "25 %"}
    values, outcome = results(**typed)
    assert 800e-6 < values["vapour_end"] < 2000e-6
    assert checks(outcome)["breathing"].level == "stop"
    assert say(outcome.headline, "metric").startswith("Do not do it this way")


def test_minutes_until_below_the_lowest_limit():
    values, _ = results()
    left = math.exp(-values["air_changes"] * values["minutes_breathing"] / 3)
    assert values["vapour_end"] * left == pytest.approx(50e-6)
    assert results(liquid="0.01 fl oz", minutes="1440 min")[0]["minutes_breathing"] == 0


@pytest.mark.parametrize(
    ("typed", "level"),
    [({"changes": "6 per hour"}, None), ({"changes": "2 per hour"}, "watch"),
     ({"changes": "0.2 per hour"}, "stop"),
     ({"length": "200 ft", "width": "200 ft", "height": "60 ft", "known": "flow", "flow": "5 cfm",
       "mixing_factor": "10"}, "stop")],
)
def test_a_fan_that_is_too_small_is_said(typed, level):
    # 99 % after ln(100) K / N: 2.3 h at 6 an hour and K = 3, 6.9 h at 2, 69 h at 0.2. More than four hours is
    # slow, more than a day hopeless: common practice.
    _, outcome = results(**{"agent": "wood-dust", "known": "changes", **typed})
    found = checks(outcome).get("fan")
    assert (found and found.level) == level
    if level == "stop":
        assert say(outcome.headline, "imperial").startswith("Do not count on this fan")
        assert not re.search(r"\d{4,} min", say(outcome.headline, "imperial"))


def test_the_fan_named_does_it_in_an_hour():
    _, outcome = results(agent="wood-dust", known="changes", changes="0.2 per hour")
    named = say(outcome.headline, "imperial").split(": ")[1].split("go. ")[1].split(" would")[0]
    values, _ = results(agent="wood-dust", flow=named)
    assert values["minutes_99"] == pytest.approx(3600, rel=0.01)


def test_a_limit_of_ones_own_data_sheet_is_compared():
    own = {"solvent": "own", "density": "882 kg/m3", "molar_mass": "116.16 g/mol", "lower_limit": "1.2 %"}
    assert "safety data sheet says it" in say(checks(results(**own)[1])["breathing"].text, "metric")
    assert "limits" not in [each.id for each in results(**own)[1].tables]
    values, outcome = results(**own, breathing_limit="50 ppm")
    assert values["minutes_breathing"] == pytest.approx(results()[0]["minutes_breathing"])
    assert "50 ppm" in say(outcome.headline, "metric")


def test_a_low_reading_of_the_monomer_clears_nothing():
    # 562 samples in Oregon, 1980 to 1990: 6 % and 42 %; the abstract: read second-hand.
    _, outcome = results(agent="isocyanate")
    text = say(checks(outcome)["monomer"].text, "metric")
    assert "6 %" in text
    assert "42 %" in text
    [limits] = [each for each in outcome.tables if each.id == "limits"]
    named = " ".join(row[0] for row in limits.rows)
    assert all(word in named for word in ("monomer", "polyisocyanate", "MDI", "TDI"))


def test_cartridges_for_solvent_are_not_said_to_hold_the_worse_ones():
    text = say(checks(results()[1])["respirator"].text, "metric")
    assert "not made for formaldehyde" in text
    assert "never for isocyanate" in text


@pytest.mark.parametrize("agent", AGENTS)
@pytest.mark.parametrize("solvent", [each.id for each in SOLVENTS])
def test_no_answer_is_a_verdict(agent, solvent):
    _, outcome = results(agent=agent, solvent=solvent)
    assert {each.level for each in outcome.checks} <= {"watch", "stop"}
    words = all_words(outcome).lower()
    assert not re.search(r"\b(is|are) safe\b|safe to breathe|in order\b", words)
    assert "not a verdict" in words


def test_isocyanate_is_never_answered_with_a_filter():
    _, outcome = results(agent="isocyanate")
    text = say(checks(outcome)["respirator"].text, "metric")
    assert "supplied air" in text
    assert not re.search(r"mask|filter|cartridge", text)
    [table] = [each for each in outcome.tables if each.id == "respirators"]
    assert all(row[0].startswith("supplied air") for row in table.rows)


@pytest.mark.parametrize("agent", AGENTS)
def test_a_dust_mask_is_suggested_for_nothing(agent):
    _, outcome = results(agent=agent)
    for each in outcome.checks:
        assert "dust mask" not in say(each.text, "metric")


def test_the_flammable_limit_is_not_presented_as_a_health_limit():
    _, outcome = results()
    assert "fire alone" in say(checks(outcome)["breathing"].text, "metric")
    [declared] = [each for each in CALCULATOR.results if each.id == "lower_limit"]
    assert "no health limit" in declared.help


def test_a_quarter_of_the_limit_is_the_most_that_can_be_set():
    # 29 CFR 1910.107(a)(2), in an OSHA interpretation: read in a copy.
    [asked] = [each for each in inputs_of(CALCULATOR) if each.id == "limit_share"]
    assert asked.high == 0.25


def test_published_limits_are_shown_with_their_date():
    _, outcome = results(solvent="acetone")
    [table] = [each for each in outcome.tables if each.id == "limits"]
    assert all(re.match(r"\d{4}", row[-1]) for row in table.rows)


def test_a_solvent_of_ones_own_gives_what_the_listed_one_gives():
    listed, _ = results(solvent="acetone")
    own, _ = results(solvent="own", density="790 kg/m3", molar_mass="58.08 g/mol", lower_limit="2.5 %")
    assert own["vapour_end"] == pytest.approx(listed["vapour_end"])
    assert own["share_of_limit"] == pytest.approx(listed["share_of_limit"])


def test_more_vapour_than_room_is_refused():
    closet = [("length", "4 ft"), ("width", "4 ft"), ("height", "7 ft")]
    job = work_out(CALCULATOR, [("liquid", "5 gal"), *closet])
    assert [each.field for each in job.problems] == ["liquid"]


ROOM = {"length": "18 ft", "width": "14 ft", "height": "9 ft", "flow": "600 cfm", "mixing_factor": "3"}


def test_a_coat_gives_off_all_that_is_no_solids():
    # 110 mL of 45 % with 10 % of reducer hold 45 mL of solids, by hand; 20 mL of wash go with it
    values, _ = results(**ROOM, liquid_from="coat", coat_volume="110 mL", coat_solids="45 %",
                        coat_reducer="10 %", wash="20 mL")
    assert values["liquid"] * 1e6 == pytest.approx(85)
    typed, _ = results(**ROOM, liquid="85 mL")
    assert values["vapour_end"] == pytest.approx(typed["vapour_end"])
    assert typed["liquid"] * 1e6 == pytest.approx(85)


def test_a_mixture_of_one_is_that_solvent():
    one, _ = results(**ROOM, solvent="toluene", liquid="100 mL")
    mixed, _ = results(**ROOM, solvent="mixture", mixture="toluene:40%", liquid="100 mL")
    for id in ("vapour_end", "vapour_mass", "lower_limit", "breathing_lowest", "minutes_breathing"):
        assert mixed[id] == pytest.approx(one[id]), id


def test_a_mixture_by_le_chatelier_and_by_the_sum_of_shares():
    values, outcome = results(**ROOM, solvent="mixture", mixture="butyl-acetate:50%;xylene:50%",
                              liquid="200 mL")
    rows = table(outcome, "mixture")
    shares = [each["vapour"] for each in rows]
    # moles of each: density over molar mass (handbook figures from memory)
    moles = [882 / 116.16, 864 / 106.17]
    assert shares == pytest.approx([each / sum(moles) for each in moles])
    assert values["lower_limit"] == pytest.approx(1 / (shares[0] / 0.012 + shares[1] / 0.009))
    # ACGIH: 50 ppm of butyl acetate and 20 ppm of xylene are full by 1 together
    [tlv] = [each for each in table(outcome, "limits") if each["body"] == "ACGIH TLV"]
    assert tlv["value"].value * 1e6 == pytest.approx(1 / (shares[0] / 50 + shares[1] / 20))
    assert values["breathing_lowest"] == pytest.approx(tlv["value"].value)
    # what is dangerous at once is not added: 1700 and 900 ppm, whichever comes first
    [danger] = [each for each in table(outcome, "limits") if each["body"] == "IDLH"]
    assert danger["value"].value * 1e6 == pytest.approx(min(1700 / shares[0], 900 / shares[1]))


def test_a_mixture_says_of_what_nothing_is_known():
    _, outcome = results(**ROOM, solvent="mixture", mixture="xylene:50%;mek:50%")
    [tlv] = [each for each in table(outcome, "limits") if each["body"] == "ACGIH TLV"]
    assert tlv["status"] == "of the mixture, nothing known of methyl ethyl ketone"


def test_a_layer_of_dust_stops_by_depth_by_area_and_by_volume():
    # 252 ft2 of floor: 12.6 ft2 are 5 %. OSHA memorandum of 2015, NFPA 654: 1/32 in, 5 % or 1000 ft2.
    def layer(**typed):
        _, outcome = results(**ROOM, agent="wood-dust", **typed)
        found = checks(outcome).get("layer")
        return None if found is None else (found.level, say(outcome.headline, "metric"))

    stop = "Stop and clean first: the dust that lies in this room counts as a danger of explosion."
    assert layer() is None
    assert layer(dust_depth="0.04 in", dust_share="6 %") == ("stop", stop)
    assert layer(dust_depth="0.04 in", dust_share="3 %")[0] == "watch"
    assert layer(dust_depth="0.02 in", dust_share="3 %")[0] == "ok"
    assert layer(dust_depth="0.02 in", dust_share="50 %") == ("stop", stop)
    assert layer(dust_depth="0.1 in", dust_share="4.9 %", bulk_density="20 lb/ft3")[0] == "ok"
    values, _ = results(**ROOM, agent="wood-dust", bulk_density="20 lb/ft3")
    assert values["layer_depth"] / 0.0254 == pytest.approx(0.1171875)
    assert "layer_depth" in values
