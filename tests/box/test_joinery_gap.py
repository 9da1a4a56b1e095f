"""The sums under a gap, against another way of adding them up; feeler gauges; a hand's errors."""

from itertools import pairwise
from math import atan, cos, hypot, radians, sin, tan
from statistics import NormalDist

import numpy as np
import pytest
from hypothesis import given, strategies as st

from tests.box.trials import _plane, try_joints
from tests.boxes import postcard
from toolkit.box import Hand, SawnJoint, Spread, compare_readings, design, gaps
from toolkit.box.joinery.hand import both_below, no_wood_over
from toolkit.measures import Rule

MM = Rule.millimetres()
JOINT = SawnJoint(8.0, 12.0, 7.0, 3)
SIZES = st.floats(0.02, 0.6)


@pytest.fixture(scope="module")
def bivariate():
    from scipy.stats import multivariate_normal  # slow to load, and needed here alone

    return multivariate_normal


@given(offset=SIZES, lead=SIZES, slope=SIZES, gap=st.floats(-0.5, 1.5))
def test_two_ends_of_a_cheek_by_the_bivariate_normal(
    bivariate, offset: float, lead: float, slope: float, gap: float
) -> None:
    s = Spread(offset, lead, slope)
    joint = bivariate(cov=[[s.tip**2, s.tip**2], [s.tip**2, s.baseline**2]])
    # The library's own sum is good to 1e-5 or so.
    assert both_below(gap, s=s) == pytest.approx(joint.cdf([gap, gap]), abs=3e-5)


@pytest.mark.parametrize(
    ("s", "expected"),
    [
        (Spread(0.1, 0, 0), NormalDist(0, 0.1).cdf(0.07)),
        (Spread(0, 0.1, 0), NormalDist(0, 0.1).cdf(0.07)),
        (Spread(0, 0, 0.1), NormalDist(0, 0.1).cdf(0.07)),
        (Spread(0, 0, 0), 1.0),
    ],
)
def test_hands_with_one_error_or_none(s: Spread, expected: float) -> None:
    assert both_below(0.07, s=s) == pytest.approx(expected, abs=1e-6)


def test_very_unlike_errors_still_add_up() -> None:
    for tiny in (1e-6, 1e-3):
        whole = both_below(0.05, s=Spread(0.1, 0.0, tiny))
        assert whole == pytest.approx(NormalDist(0, 0.1).cdf(0.05), abs=tiny * 5 + 1e-6)
        turned = both_below(0.05, s=Spread(tiny, 0.0, 0.1))
        assert turned == pytest.approx(NormalDist(0, 0.1).cdf(0.05), abs=tiny * 5 + 1e-6)


@pytest.mark.parametrize(
    "s",
    [
        Spread(0.14, 0.15, 0.1),
        Spread(0.05, 0.3, 0.3),
        Spread(0.3, 0.05, 0.1),
        Spread(0.1, 0.1, 0.3),
    ],
    ids=str,
)
def test_an_unpared_cheek_in_closed_form_and_strip_by_strip(s: Spread) -> None:
    """Strips of a twelfth of a standard deviation: good to about 1e-5 where the offset is least."""
    closed = no_wood_over(s, crossed=False)
    strips = no_wood_over(s, crossed=False, left_on=1e-12)
    assert closed == pytest.approx(strips, abs=2e-5)


@pytest.mark.parametrize("crossed", [False, True])
@pytest.mark.parametrize("left_on", [0.0, 0.1])
def test_an_unpared_cheek_by_drawing_lots(crossed: bool, left_on: float) -> None:
    rng, n = np.random.default_rng(3), 400_000
    s = Spread(0.12, 0.1, 0.08)
    o, d, b, t = (rng.normal(0, sd, n) for sd in (s.offset, s.lead, s.slope, s.lead))
    near = o - left_on - (t if crossed else 0.0)
    far = o - left_on + d
    clear = (np.minimum(near, far) + np.minimum(b, 0) >= 0).mean()
    # Four standard errors of a share of 400,000.
    assert no_wood_over(s, crossed=crossed, left_on=left_on) == pytest.approx(clear, abs=0.0032)


def test_shares_grow_with_the_gap_and_quantiles_undo_them() -> None:
    told = gaps(JOINT, hand=Hand())
    values = [told.at_most(i / 50) for i in range(60)]
    assert all(a <= b for a, b in pairwise(values))
    assert told.at_most(-0.01) == 0
    for share in (0.1, 0.5, 0.95):
        assert told.at_most(told.quantile(share)) == pytest.approx(share, abs=1e-5)
    curve = told.curve(points=11)
    assert curve[0] == (0.0, told.at_most(0.0))
    assert curve[-1][1] == pytest.approx(0.999, abs=1e-3)


def test_a_perfect_hand_leaves_nothing() -> None:
    told = gaps(JOINT, hand=Hand(0, 0, 0))
    assert (told.median, told.late, told.at_most(0.0), told.unpared) == (0, 0, 1, 1)
    assert told.which_matters() == "A hand without errors leaves no gap."
    off = gaps(JOINT, hand=Hand(0, 0, 0), keep_off=0.1)
    assert (off.median, off.unpared) == (0, 0)
    tried = try_joints(JOINT, hand=Hand(0, 0, 0), trials=10)
    assert tried.far.max() == pytest.approx(0, abs=1e-12)


def test_a_sawn_plane_is_exact() -> None:
    """Large errors, so that what small ones hide shows: the lean is measured on the board's end,
    which meets the cheek at the tail's angle, so that slope and lead also work on each other."""
    joint, offset, slope, lead = SawnJoint(9.0, 14.0, 3.0, 1), 0.3, radians(9), radians(12)
    told = _plane(joint, *(np.array([x]) for x in (offset, slope, lead)))[0]
    a = atan(1 / 3)
    across = tan(lead) * (cos(a) - sin(a) * tan(slope))
    spots = [(0, 0), (joint.cheek_length, 0), (0, 14), (joint.cheek_length, 14)]
    for seen, (along, deep) in zip(told, spots, strict=True):
        assert seen == pytest.approx(offset + along * tan(slope) + deep * across)


def test_copied_pins_leave_wood_on_by_the_pins_cuts_alone() -> None:
    """Off the line by k, copied pins are tight by k and not by 2 k."""
    hand = Hand(0, 0, 0)
    apart = try_joints(JOINT, hand=hand, keep_off=0.1, trials=5)
    copied = try_joints(JOINT, hand=hand, keep_off=0.1, copied=True, trials=5)
    assert apart.left_over.max() == pytest.approx(0.2)
    assert copied.left_over.max() == pytest.approx(0.1)
    assert gaps(JOINT, hand=hand, keep_off=0.1).left_on == pytest.approx(0.2)
    assert gaps(JOINT, hand=hand, keep_off=0.1, copied=True).left_on == pytest.approx(0.1)


def test_a_lean_is_seen_at_the_far_face_only_unless_it_is_copied() -> None:
    leaning = Hand(1.0, 0.0, 0.0)
    assert gaps(JOINT, hand=leaning, face="knifed").late == 0
    assert gaps(JOINT, hand=leaning, face="far").late > 0.2
    assert gaps(JOINT, hand=leaning, face="knifed", copied=True).late > 0.2
    assert gaps(JOINT, hand=leaning, face="knifed", copied=True, squared=True).late == 0


def test_a_hand_comes_from_the_boxs_customs_and_says_so() -> None:
    box = postcard().having({"customs.saw_lead": 1.0, "customs.saw_offset": 0.05})
    hand = Hand.of(box.customs)
    assert (hand.lead, hand.slope, hand.offset) == (1.0, 0.5, 0.05)
    assert "custom" in hand.source
    assert "customs.saw_lead" in gaps(JOINT, hand=hand).sentence(MM)
    assert "custom" in gaps(JOINT, hand=Hand()).sentence(MM)
    assert Hand() == Hand.of(postcard().customs).__class__(0.5, 0.5, 0.1)


def test_a_joint_from_a_corner_that_is_set_out() -> None:
    d = design(postcard())
    joint = SawnJoint.of(d.back, tail_board_thickness=d.tail_board_thickness[0])
    assert joint == JOINT
    assert joint.cheek_length == pytest.approx(hypot(8, 8 / 7))
    assert "of 100 such corners, 50 have no gap wider than 0.3 mm" in gaps(
        joint, hand=Hand()
    ).sentence(MM)


@pytest.mark.parametrize("times", [0.4, 1.0, 2.5])
@pytest.mark.parametrize("way", [{}, {"copied": True}, {"keep_off": 0.05}], ids=str)
def test_readings_find_the_hand_that_made_them(times: float, way: dict[str, float]) -> None:
    """Corners sawn by a hand so many times as rough, read with a gauge: it is found again."""
    made = try_joints(JOINT, hand=Hand().times(times), trials=4001, **way)  # type: ignore[arg-type]
    readings = tuple(float(gap) for gap in made.far)
    told = compare_readings(gaps(JOINT, hand=Hand(), **way), readings=readings)  # type: ignore[arg-type]
    assert told.times == pytest.approx(times, rel=0.04)


def test_few_readings_prove_little_and_say_so() -> None:
    told = compare_readings(gaps(JOINT, hand=Hand()), readings=(0.1, 0.15, 0.2, 0.3))
    assert told.sure == pytest.approx(0.875)
    assert told.low < told.times < told.high
    assert told.high == pytest.approx(1.0, abs=0.01)
    assert told.places[-1] == pytest.approx(0.497, abs=0.001)
    assert "0.6 times" in told.sentence(MM)
    one = compare_readings(gaps(JOINT, hand=Hand()), readings=(0.3,))
    assert "proves little" in one.sentence(MM)
    with pytest.raises(ValueError, match="at least one corner"):
        compare_readings(gaps(JOINT, hand=Hand()), readings=())


def test_slips_are_refused_in_words() -> None:
    with pytest.raises(ValueError, match="lead -1°"):
        Hand(lead=-1)
    with pytest.raises(ValueError, match="at least one tail"):
        SawnJoint(8, 12, 7, 0)
    with pytest.raises(ValueError, match="wrong side"):
        gaps(JOINT, hand=Hand(), keep_off=-0.1)
    with pytest.raises(ValueError, match=r"give 0\.5 or 0\.95"):
        gaps(JOINT, hand=Hand()).quantile(1.0)
