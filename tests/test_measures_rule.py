"""A rule writes a length as its owner reads it, and what it writes can be read back."""

import copy
import math
import pickle
import re
from dataclasses import FrozenInstanceError, replace
from fractions import Fraction

import pytest
from hypothesis import given, strategies as st

from toolkit.measures import MM_PER_INCH, MeasureError, Rule, length

MM = Rule.millimetres()
IN = Rule.inches()
ODD_MM = Rule("mm", joints=0.25, sizes=0.2, rough=2.5)
ODD_IN = Rule("in", joints=MM_PER_INCH / 128, sizes=MM_PER_INCH / 16, rough=MM_PER_INCH)
RULES = (MM, IN, ODD_MM, ODD_IN)
FINENESSES = ("joints", "sizes", "rough")

rules = st.sampled_from(RULES)
finenesses = st.sampled_from(FINENESSES)
directions = st.sampled_from(("nearest", "up", "down"))
lengths = st.floats(-3000, 3000)


@pytest.mark.parametrize(
    ("rule", "fineness", "mm", "text"),
    [
        (MM, "joints", 92.9, "92.9 mm"),
        (MM, "joints", 92.94, "92.9 mm"),
        (MM, "joints", 64.0, "64 mm"),
        (MM, "joints", 0.0, "0 mm"),
        (MM, "joints", 0.04, "0 mm"),
        (MM, "joints", -0.04, "0 mm"),
        (MM, "joints", -3.7, "\N{MINUS SIGN}3.7 mm"),
        (MM, "joints", 1234.5, "1234.5 mm"),
        (MM, "sizes", 92.9, "93 mm"),
        (MM, "sizes", 11.4, "11.5 mm"),
        (MM, "rough", 186, "185 mm"),
        (MM, "rough", 187.6, "190 mm"),
        (MM, "rough", 190, "190 mm"),
        (ODD_MM, "joints", 3.2, "3.25 mm"),
        (ODD_MM, "rough", 7.4, "7.5 mm"),
        (IN, "sizes", 92.9, "3 21/32 in"),
        (IN, "joints", 4.0, "5/32 in"),
        (IN, "joints", 25.4, "1 in"),
        (IN, "joints", 0.0, "0 in"),
        (IN, "joints", 0.1, "0 in"),
        (IN, "joints", 38.1, "1 1/2 in"),
        (IN, "joints", -38.1, "\N{MINUS SIGN}1 1/2 in"),
        (IN, "joints", 381.0, "15 in"),
        (IN, "joints", 12.7 + 0.35, "33/64 in"),
        (IN, "rough", 92.5, "3 5/8 in"),
        (IN, "rough", 92.9, "3 5/8 in"),
        (IN, "rough", 91.0, "3 5/8 in"),
        (ODD_IN, "joints", 25.4 / 128, "1/128 in"),
        (ODD_IN, "rough", 90.0, "4 in"),
    ],
)
def test_show(rule: Rule, fineness, mm: float, text: str) -> None:
    assert rule.show(mm, fineness=fineness) == text


@pytest.mark.parametrize(
    ("rule", "mm", "direction", "text"),
    [
        # 4.0 / 0.1 and 3.0 / 0.2 are not whole numbers of binary fractions.
        (MM, 4.0, "up", "4 mm"),
        (MM, 4.3, "down", "4.3 mm"),
        (MM, 4.01, "up", "4.1 mm"),
        (MM, 4.09, "down", "4 mm"),
        (MM, 1e-12, "up", "0 mm"),
        (MM, -4.01, "up", "\N{MINUS SIGN}4 mm"),
        (MM, -4.01, "down", "\N{MINUS SIGN}4.1 mm"),
        (IN, 4.0, "up", "11/64 in"),
        (IN, 4.0, "down", "5/32 in"),
    ],
)
def test_show_rounds_the_way_it_is_told(rule: Rule, mm: float, direction, text: str) -> None:
    assert rule.show(mm, direction=direction) == text


def test_half_way_goes_away_from_nothing_on_both_sides() -> None:
    # Worked out in binary fractions 0.15 / 0.1 and 0.35 / 0.1 fall just short of half-way.
    for mm, text in ((0.05, "0.1"), (0.15, "0.2"), (0.25, "0.3"), (0.35, "0.4"), (2.45, "2.5")):
        assert MM.show(mm, unit=False) == text
        assert MM.show(-mm, unit=False) == f"\N{MINUS SIGN}{text}"


def test_without_its_unit_the_number_suits_a_sum() -> None:
    assert IN.show(92.9, fineness="sizes", unit=False) == "3 21/32"
    assert IN.show(92.5, fineness="rough", unit=False) == "3 5/8"
    assert MM.show(186, fineness="rough", unit=False) == "185"
    assert MM.exact(3.707, unit=False) == "3.71"
    assert IN.exact(3.5, unit=False) == "0.138"


@given(rule=rules, fineness=finenesses, count=st.integers(-200_000, 200_000))
def test_every_mark_is_read_back_as_itself(rule: Rule, fineness, count: int) -> None:
    mark = count * rule.mark(fineness)
    text = rule.show(mark, fineness=fineness)
    assert length(text, allow="any") == pytest.approx(mark, abs=1e-9)
    assert length(text, allow="any") == rule.round(mark, fineness=fineness)


@given(rule=rules, fineness=finenesses, direction=directions, mm=lengths)
def test_what_is_shown_is_the_mark_and_nothing_of_the_rounding(
    rule: Rule, fineness, direction, mm: float
) -> None:
    how = {"fineness": fineness, "direction": direction}
    text = rule.show(mm, **how)
    shown = length(text, allow="any")
    assert shown == rule.round(mm, **how)
    assert rule.error(mm, **how) == shown - mm
    assert text == f"{rule.show(mm, **how, unit=False)} {rule.units}"


@given(rule=rules, mm=lengths, axis=st.sampled_from(["length", "width", "thickness"]))
def test_what_to_saw_lies_on_the_next_rough_mark(rule: Rule, mm: float, axis: str) -> None:
    mark = rule.rough if axis != "thickness" else (1.0 if rule.units == "mm" else MM_PER_INCH / 16)
    sawn = rule.sawn(mm, axis=axis)
    assert -1e-5 * mark < sawn - mm < mark
    assert sawn == rule.sawn(sawn, axis=axis) == pytest.approx(round(sawn / mark) * mark)


@given(rule=rules, fineness=finenesses, mm=lengths)
def test_up_is_never_below_and_down_never_above(rule: Rule, fineness, mm: float) -> None:
    mark = rule.mark(fineness)
    up = rule.round(mm, fineness=fineness, direction="up")
    down = rule.round(mm, fineness=fineness, direction="down")
    nearest = rule.round(mm, fineness=fineness)
    slack = 1.01e-6 * mark
    assert mm - slack <= up < mm + mark
    assert mm - mark < down <= mm + slack
    assert nearest in (up, down)
    assert abs(nearest - mm) <= mark / 2 + slack


@given(rule=rules, fineness=finenesses, direction=directions, mm=lengths)
def test_rounding_twice_changes_nothing(rule: Rule, fineness, direction, mm: float) -> None:
    once = rule.round(mm, fineness=fineness, direction=direction)
    for again in ("nearest", "up", "down"):
        assert rule.round(once, fineness=fineness, direction=again) == once


@given(mm=st.floats(0, 3000), fineness=finenesses)
def test_inch_fractions_are_reduced_and_feet_never_written(mm: float, fineness) -> None:
    number = IN.show(mm, fineness=fineness, unit=False)
    fraction = re.fullmatch(r"(?:[1-9][0-9]* )?([0-9]+)/([0-9]+)", number)
    if fraction is None:
        assert number.isdigit()
        return
    top, bottom = int(fraction[1]), int(fraction[2])
    assert 0 < top < bottom
    assert Fraction(top, bottom).denominator == bottom


@pytest.mark.parametrize(
    ("rule", "mm", "text"),
    [
        (MM, 3.714, "3.71 mm"),
        (MM, 3.7, "3.7 mm"),
        (MM, 64.0, "64 mm"),
        (MM, 0.001, "0 mm"),
        (MM, -0.001, "0 mm"),
        (MM, -3.5, "\N{MINUS SIGN}3.5 mm"),
        (MM, 1200.05, "1200.05 mm"),
        (IN, 25.4 * 5 / 32, "5/32 in"),
        (IN, 25.4 * 45 / 64, "45/64 in"),
        (IN, 25.4 * 45 / 64 + 0.0049, "45/64 in"),
        (IN, 25.4 * 45 / 64 + 0.0060, "0.703 in"),
        (IN, 3.5, "0.138 in"),
        (IN, -3.5, "\N{MINUS SIGN}0.138 in"),
        (IN, 3.86, "0.152 in"),
        (IN, 25.4 * 1.1, "1.1 in"),
        (IN, 25.4 + 0.008, "1 in"),
        (IN, 0.0, "0 in"),
    ],
)
def test_exact(rule: Rule, mm: float, text: str) -> None:
    assert rule.exact(mm) == text


@given(mm=lengths)
def test_exact_is_close(mm: float) -> None:
    assert length(MM.exact(mm), allow="any") == pytest.approx(mm, abs=0.005001)
    assert length(IN.exact(mm), allow="any") == pytest.approx(mm, abs=0.0128)


def test_the_rules_of_the_class() -> None:
    assert (MM.units, MM.joints, MM.sizes, MM.rough) == ("mm", 0.1, 0.5, 5)
    assert IN.units == "in"
    assert [IN.mark(fineness) * 64 / 25.4 for fineness in FINENESSES] == [1, 2, 8]
    assert Rule.inches() == Rule("in", 25.4 / 64, 25.4 / 32, 25.4 / 8)
    assert hash(Rule.inches()) == hash(Rule("in", 25.4 / 64, 25.4 / 32, 25.4 / 8))
    assert Rule.inches() != Rule.millimetres()


def test_a_rule_can_be_changed_only_into_another() -> None:
    with pytest.raises(FrozenInstanceError):
        MM.joints = 0.2  # type: ignore[misc]
    coarser = replace(MM, joints=length("0.5 mm"))
    assert coarser.show(92.7) == "92.5 mm"
    assert MM.show(92.7) == "92.7 mm"
    for same in (pickle.loads(pickle.dumps(coarser)), copy.deepcopy(coarser)):
        assert same == coarser
        assert same.show(92.7) == "92.5 mm"


def test_a_fineness_is_laid_on_the_mark_that_it_names() -> None:
    rule = Rule("in", joints=0.396_875_1, sizes=length("1/16 in"), rough=length("1/4 in"))
    assert rule.joints == 25.4 / 64
    assert Rule("mm", 0.1 + 1e-9, 0.3 + 0.2, 5).joints == 0.1


@pytest.mark.parametrize(
    ("rule", "marks"),
    [
        (MM, "0.01 0.02 0.05 0.1 0.2 0.25 0.5 1 2 2.5 5 10 20 25 50 100"),
        (IN, "1/128 1/64 1/32 1/16 1/8 1/4 1/2 1"),
    ],
)
def test_the_marks_that_rules_have(rule: Rule, marks: str) -> None:
    for mark in marks.split():
        mm = length(f"{mark} {rule.units}")
        made = replace(rule, sizes=mm)
        assert made.sizes == mm
        assert made.show(mm, fineness="sizes", unit=False) == mark
        assert made.show(3 * mm + mm / 8, fineness="sizes", direction="down") == made.show(
            3 * mm, fineness="sizes"
        )


@pytest.mark.parametrize(
    ("rule", "name", "mm", "read", "nearest"),
    [
        (MM, "joints", 0.3, "0.3 mm", ["0.25 mm", "0.5 mm"]),
        (MM, "rough", 1000.0, "1000 mm", ["100 mm"]),
        (IN, "sizes", 25.4 / 3, "0.333333 in", ["1/4 in", "1/2 in"]),
        (IN, "joints", 0.1, "0.003937 in", ["1/128 in"]),
        (IN, "joints", 0.0, "0 in", ["1/128 in"]),
        (MM, "joints", math.nan, "nan", ["2 mm"]),
    ],
)
def test_no_such_rule(rule: Rule, name: str, mm: float, read: str, nearest: list[str]) -> None:
    with pytest.raises(MeasureError, match=f'^{name}: "{read}" is not a distance') as caught:
        replace(rule, **{name: mm})
    assert re.findall('"([^"]*)"', caught.value.hint) == nearest
    for text in nearest:
        assert getattr(replace(rule, **{name: length(text)}), name) == length(text)
    with pytest.raises(MeasureError, match='type "mm" or "in"'):
        replace(rule, units="cm")


@pytest.mark.parametrize(
    ("options", "message"),
    [
        ({"fineness": "fine"}, 'fineness: "fine" is not one of the three: type "joints", "si'),
        ({"fineness": ["joints"]}, "fineness: ['joints'] is not one of the three: type"),
        ({"direction": "inwards"}, 'direction: "inwards" is not a way to round: type "nearest"'),
    ],
)
def test_no_such_way_to_write(options, message: str) -> None:
    for write in (MM.show, IN.round, IN.error):
        with pytest.raises(MeasureError, match="^" + re.escape(message)):
            write(12.0, **options)


@pytest.mark.parametrize("value", ["12 mm", None, math.nan, math.inf, -math.inf])
@pytest.mark.parametrize("rule", [MM, IN])
def test_only_numbers_are_written(rule: Rule, value) -> None:
    for write in (rule.show, rule.round, rule.exact, rule.error):
        with pytest.raises(MeasureError, match="is not a finite number of millimetres"):
            write(value)
