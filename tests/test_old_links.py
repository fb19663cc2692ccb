"""Links that are out in the world keep their meaning: add to this list, never take from it."""

from urllib.parse import urlsplit

import pytest

from calc import catalog
from calc.answer import work_out
from calc.declaring import ROWS, inputs_of
from calc.former import FORMER
from calc.links import complete, pairs_of, with_units
from calc.reading import matters
from tests.sentences import whole

LINKS = {
    "calculators/tiller/#upper=7+3/16+in&lower=7+9/16+in": ("difference", -0.009525),
    "calculators/tiller/#upper=182.6&lower=190&units=metric": ("difference", -0.0074),
    "calculators/tiller/#upper=7+1/2&lower=7+1/4&hold=under": ("target_high", 0.003175),
    "calculators/tiller/#hold=own&own_low=-1/8+in&own_high=1/8+in": ("target_low", -0.003175),
    "calculators/weight-reduction/#weight_now=60+lb&weight_wanted=60+lb&tiller_now=1/8&tiller_wanted=1/8":
        ("weight_change", 0.0),
    "calculators/weight-reduction/#upper_stations=2in:1.6in:0.3in;8in:1.5in:.285in;20in:.7in:.25in":
        ("predicted_tiller", 0.0047625),
    "calculators/draw-curve/#readings=12in:9.5lb;20in:30lb;28in:48lb&reading_error=0":
        ("peak_weight", 213.5146),
    "calculators/strokes/#weight_wanted=48%23&tiller_wanted=3/16": ("lower_batch", 21.0),
    "calculators/inspection/#seen_faces=yes&seen_edges=yes&seen_tapped=yes&seen_tips=yes&seen_riser=yes"
    "&seen_line=yes&asked_past=yes&crack_across=yes": ("verdict", "wall"),
    "calculators/inspection/#crazing=yes": ("unseen", 7),
    "calculators/tiller/#upper=7+1/4+in": ("difference", -0.0047625),
    "calculators/tiller/#measured=string_end": ("take_from", "upper"),
    "calculators/weight-reduction/#weight_now=55+lb&weight_wanted=50+lb": ("weight_after_edges", 222.4111),
    "calculators/weight-reduction/#weight_now=250&weight_wanted=220&tiller_now=0&core=own&units=metric":
        ("weight_after_edges", 220.0),
    "calculators/arrow-match/#spine=55+lb&length=28+1/2+in": ("arrow_mass", 0.03188106),
    "calculators/arrow-match/#curve=computed&shaft_known=species": ("spine_pounds", 178.1839),
    "calculators/arrow-match/#shaft_known=tube&diameter=0.295&losses=chronograph":
        ("balance_forward", 0.1035293),
    "calculators/arrow-match/#curve=read&new_weight=48&draw_length=28": ("mass_per_weight", 0.0001496325),
    "calculators/draw-curve/#draw_asked=26+in": ("weight_at", 189.7832),
    "calculators/strokes/#log=0:0:58lb:-1/8in;40:20:56.4lb:-1/16in;40:20:54.9lb:0in": ("upper_left", 143.871),
    "calculators/strokes/#model=compare&upper_lost=0.008+in": ("thickness_per_hundred", 0.0001871579),
    "calculators/bow-model/#weight=55+lb": ("weight", 244.6522),
    "calculators/bow-model/#sanded_limb=none": ("string_length", 1.463822),
    "calculators/insert/#thickness=1+in&insert_length=5/8+in": ("hole_depth", 0.0203241),
    "calculators/insert/#point=brad&fit=threaded&screw=10-24": ("point_length", 0.00238125),
    "calculators/grip/#hole=side&draw_weight=50+lb": ("stress_after", 22520180.0),
    "calculators/grip/#hand_length=190+mm": ("girth_hand", 0.1175899),
    "calculators/grip/#wood=own": ("strength", 103421400.0),
    "calculators/next-batch/#log=0:0:53lb:5/16in:p120&hundred=0.006+in": ("lower_batch", 38.0),
    "calculators/next-batch/#weight_wanted=46+lb&risk=1+%25": ("weight_now", 209.7957),
    "calculators/wood-movement/#job=piece&size=45+mm&humidity_from=30+%25&humidity_to=65+%25":
        ("tangential", 0.0009195),
    "calculators/photograph/#marking_error=2+px": ("tilt", 4.968457),
    "calculators/epoxy/#length=100+mm&width=50+mm&film=200+um&waste=50+%25": ("mix", 2e-6),
    "calculators/edges/#weight_wanted=45.2+lb&edge_radius=1/64+in": ("tried_weight", 201.1845),
    "calculators/edges/#shape=flat&faces=belly&limbs=lower&core=own": ("tried_takes", 0.912363),
    "calculators/tracking/#lower_offset_tip=1/8+in": ("lower_twist", 3.576334),
    "calculators/string/#bow_length=64+in": ("length", 1.5494),
    "calculators/string/#loops=three&draw_weight=55+lb": ("strands_bundle", 5),
    "calculators/insert/#point=spade&wood=own&fit=threaded": ("pull_out", 4013.071),
    "calculators/string/#pattern=own&draw_weight=200&units=metric": ("length", 1.4351),
    "calculators/quote/#rate=50&markup=15": ("price", 677.5333),
    "calculators/quote/#tax=7.5&materials=": ("price", 590.9812),
    "calculators/grit/#scale=cami&finish_cami=c400": ("largest_ratio", 1.565217),
    "calculators/grit/#slope=5&start_p=p80": ("removed", 2.5635e-05),
    "calculators/finish/#build_coats=3&reducer=0.5&start=2026-06-01": ("dry_film", 1.70597e-05),
    "calculators/finish/#bow_length=1625&method=brush&units=metric": ("surface", 0.151693),
    "calculators/finish/#fan=4+in&method=hvlp": ("mix_coat", 4.536542e-05),
    "calculators/spray-air/#air_temperature=72&humidity=55": ("dew_point", 12.75246),
    "calculators/spray-air/#humidity=80&air_temperature=20&units=metric": ("margin", 3.555581),
    "calculators/clear-air/#solvent=butyl-acetate": ("vapour_end", 0.0001892873),
    "calculators/clear-air/#solvent=own&density=882+kg/m3&molar_mass=116.16+g/mol&lower_limit=1.2+%25":
        ("share_of_limit", 0.01577394),
    "calculators/clear-air/#solvent=mixture&mixture=xylene:100%25": ("lower_limit", 0.009),
    "calculators/clear-air/#flow=800+cfm&liquid=2+fl+oz": ("air_changes", 0.006944444),
    "calculators/clear-air/#known=changes&solvent=acetone&booth=large": ("air_flow", 0.09061391),
}


def of_link(link):
    """Return the calculator and the pairs of a link."""
    calculator = catalog.find(urlsplit(link).path.strip("/").split("/")[-1])
    return calculator, pairs_of(calculator, link)


@pytest.mark.parametrize(("link", "expected"), LINKS.items(), ids=list(LINKS))
def test_old_links_keep_their_meaning(link, expected):
    calculator, pairs = of_link(link)
    job = work_out(calculator, complete(calculator, pairs))
    assert not job.problems
    assert not job.notes
    name, value = expected
    if not isinstance(value, str):
        value = pytest.approx(value, rel=1e-4, abs=0 if value else 1e-4)
    assert dict(job.outcome.values)[name] == value


def test_every_calculator_has_old_links():
    assert {of_link(link)[0].id for link in LINKS} == set(catalog.IDS)


@pytest.mark.parametrize("id", catalog.IDS)
def test_every_input_has_a_meaning_where_a_link_leaves_it_out(id):
    calculator = catalog.find(id)
    for each in inputs_of(calculator):
        assert each.id in FORMER.get(id, {}), (
            f"{each.id} of {id} is new: add it to FORMER in calc/former.py with the text that leaves the "
            "answer to an older link as it was (empty, or the choice or number that does nothing). "
            "Change no text that stands there.")
    job = work_out(calculator, complete(calculator, []))
    assert not job.problems
    assert not job.notes


def test_what_a_link_leaves_out_is_not_the_examples_of_today():
    for id in catalog.IDS:
        calculator = catalog.find(id)
        former = {each.id: FORMER[id][each.id] for each in inputs_of(calculator)}
        assert dict(complete(calculator, [])) == {
            each.id: former[each.id] for each in inputs_of(calculator) if matters(each, former)}


def test_a_links_figure_goes_before_what_it_leaves_out():
    tiller = catalog.find("tiller")
    pairs = [("upper", "8 in"), ("upper", "9 in"), ("hold", "own"), ("own_low", "0 in")]
    full = complete(tiller, pairs)
    assert full[:4] == pairs
    assert ("own_high", "1/4 in") in full
    assert [name for name, _ in full].count("own_low") == 1
    assert "from_string_end" not in dict(full)


@pytest.mark.parametrize("link", [link for link in LINKS if "units=metric" in link])
def test_a_metric_link_means_the_same_once_its_units_are_named(link):
    calculator, pairs = of_link(link)
    named = [pair for pair in with_units(calculator, pairs, "metric") if pair[0] != "units"]
    as_sent = work_out(calculator, complete(calculator, pairs)).values
    as_named = work_out(calculator, complete(calculator, named)).values
    for name, value in as_sent.items():
        assert as_named[name] == (pytest.approx(value, rel=1e-12) if isinstance(value, float) else value)


def test_units_are_named_in_each_cell_of_a_table():
    bow_model = catalog.find("bow-model")
    [readings] = [each for each in inputs_of(bow_model) if each.id == "readings"]
    assert readings.kind == ROWS
    pairs = [("readings", "300:60 N;400:½;:"), ("family", "recurve"), ("nothing", "1")]
    assert with_units(bow_model, pairs, "metric") == [
        ("readings", "300 mm:60 N;400 mm:½ N;:"), ("family", "recurve"), ("nothing", "1")]


ELSEWHERE = "is a link to another page than calculators/tiller/"
NO_FIGURES = "carries no figures behind a #"


@pytest.mark.parametrize(("address", "sentence"), [
    ("https://somewhere.example/calculators/grip/#upper=7+in", ELSEWHERE), ("upper=7", ELSEWHERE),
    ("#", NO_FIGURES),
    ("calculators/tiller/", NO_FIGURES), ("calculators/tiller/#stored-energy", NO_FIGURES),
])
def test_what_is_no_link_to_a_calculator_is_refused(address, sentence):
    with pytest.raises(ValueError, match=whole(sentence)):
        pairs_of(catalog.find("tiller"), address)
