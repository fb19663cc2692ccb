"""Screws in wood: laws of proportion, and what is refused."""

import pytest

from calc.shop import fasteners
from tests.sentences import whole


def test_pull_grows_with_wood_thread_and_length():
    pull = fasteners.screw_withdrawal(0.5, 0.005, 0.02)
    assert fasteners.screw_withdrawal(1.0, 0.005, 0.02) == pytest.approx(4 * pull)
    assert fasteners.screw_withdrawal(0.5, 0.010, 0.02) == pytest.approx(2 * pull)
    assert fasteners.screw_withdrawal(0.5, 0.005, 0.04) == pytest.approx(2 * pull)
    lag = fasteners.lag_screw_withdrawal(0.5, 0.005, 0.02)
    assert fasteners.lag_screw_withdrawal(0.5, 0.080, 0.02) == pytest.approx(8 * lag)
    assert fasteners.lag_screw_withdrawal(2.0, 0.005, 0.02) == pytest.approx(8 * lag)


@pytest.mark.parametrize(
    ("ask", "sentence"),
    [
        (lambda: fasteners.screw_withdrawal(0.0, 1.0, 1.0), "specific gravity must be positive, got 0.0"),
        (lambda: fasteners.screw_withdrawal(1.0, 0.0, 1.0), "diameter must be positive, got 0.0 m"),
        (lambda: fasteners.lag_screw_withdrawal(1.0, 1.0, 0.0), "length must be positive, got 0.0 m"),
        (lambda: fasteners.lead_hole(0.0, 0.9), "diameter must be positive, got 0.0 m"),
        (lambda: fasteners.lead_hole(1.0, 0.0), "share must be positive, got 0.0"),
    ],
)
def test_what_is_no_screw_is_refused(ask, sentence):
    with pytest.raises(ValueError, match=whole(sentence)):
        ask()
