from tests.references.printed import printed


def test_half_a_unit_of_the_last_digit_is_let_through_and_no_more():
    assert printed("0.302") == 0.3024
    assert printed("0.302") != 0.3026
    assert printed("12e3") == 12_400
    assert printed("12e3") != 12_600
    assert printed("5.0") != 5.06
