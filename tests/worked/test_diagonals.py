"""Two diagonals against the corner that they betray, by the corners of a leaning box."""

from math import cos, hypot, radians, sin

import pytest
from hypothesis import given, strategies as st

from toolkit.plan.diagonals import diagonal_difference, skew_angle


def by_corners(length: float, width: float, angle: float) -> tuple[float, float]:
    """Both diagonals of a parallelogram from the places of its four corners."""
    lean = radians(angle)
    near, far = (length, 0.0), (width * sin(lean), width * cos(lean))
    opposite = (near[0] + far[0], near[1] + far[1])
    return hypot(*opposite), hypot(near[0] - far[0], near[1] - far[1])


@given(
    st.floats(20, 600),
    st.floats(20, 600),
    st.floats(0, 20, exclude_min=True, allow_subnormal=False),
)
def test_diagonals_of_a_leaning_box(length: float, width: float, angle: float) -> None:
    longer, shorter = by_corners(length, width, angle)
    difference = diagonal_difference(angle, length=length, width=width)
    # Both are sums of a few doubles of some hundred mm.
    assert difference == pytest.approx(longer - shorter, abs=1e-9)
    mean = (longer + shorter) / 2
    assert difference == pytest.approx(2 * length * width * sin(radians(angle)) / mean, abs=1e-9)
    if difference > 1e-3:
        assert skew_angle(difference, length=length, width=width) == pytest.approx(angle, rel=1e-6)


@pytest.mark.parametrize(("difference", "angle"), [(0.5, 0.13), (1.0, 0.27), (2.0, 0.54)])
def test_the_postcard_box(difference: float, angle: float) -> None:
    """Common practice, no source; angles to half of their last printed digit."""
    assert skew_angle(difference, length=176, width=134) == pytest.approx(angle, abs=0.005)
    assert hypot(176, 134) == pytest.approx(221.2, abs=0.05)


def test_what_no_box_can_have_is_refused() -> None:
    with pytest.raises(ValueError, match="measure them again"):
        skew_angle(300, length=176, width=134)
    with pytest.raises(ValueError, match="above 0 mm"):
        skew_angle(1, length=0, width=134)
    with pytest.raises(ValueError, match="under 90"):
        diagonal_difference(90, length=176, width=134)
