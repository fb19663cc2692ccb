"""Links that are out in the world keep their meaning: add to this list, never take from it."""

from urllib.parse import parse_qsl, urlsplit

import pytest

from calc import catalog
from calc.answer import work_out

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
}


@pytest.mark.parametrize(("link", "expected"), LINKS.items(), ids=list(LINKS))
def test_old_links_keep_their_meaning(link, expected):
    parts = urlsplit(link)
    calculator = catalog.find(parts.path.strip("/").removeprefix("calculators/"))
    job = work_out(calculator, parse_qsl(parts.fragment, keep_blank_values=True))
    assert not job.problems
    assert not job.notes
    name, value = expected
    assert dict(job.outcome.values)[name] == pytest.approx(value, rel=1e-4, abs=1e-4)
