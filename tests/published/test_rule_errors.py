"""The errors that a measuring rule may have, from the directive that classes them."""

import pytest

from toolkit.truing.worth import rule_error


# Directive 2014/32/EU, Annex X (MI-008), chapter I: a + b·L, L rounded up to whole metres; class
# II a 0.3, b 0.2; I 0.1, 0.1; III 0.6, 0.4; c 0.1, 0.2, 0.3 more from an end. Exact.
@pytest.mark.parametrize(
    ("accuracy_class", "length", "error"),
    [
        ("II", 300, 0.5),
        ("II", 1000, 0.5),
        ("II", 1001, 0.7),
        ("II", 1200, 0.7),
        ("II", 2000, 0.7),
        ("I", 300, 0.2),
        ("III", 300, 1.0),
    ],
)
def test_errors_that_a_rule_may_have(accuracy_class, length, error):
    assert rule_error(length, accuracy_class=accuracy_class) == pytest.approx(error, abs=1e-9)


@pytest.mark.parametrize(("accuracy_class", "more"), [("I", 0.1), ("II", 0.2), ("III", 0.3)])
def test_more_error_from_the_end_of_a_rule(accuracy_class, more):
    marks = rule_error(300, accuracy_class=accuracy_class)
    end = rule_error(300, accuracy_class=accuracy_class, from_end=True)
    assert end - marks == pytest.approx(more, abs=1e-9)
