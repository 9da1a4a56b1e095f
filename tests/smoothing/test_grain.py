"""From which end to plane."""

import pytest

from toolkit.smoothing import where_to_start


@pytest.mark.parametrize("side", ["face", "edge", "rim"])
def test_plane_the_way_the_lines_climb(side):
    assert where_to_start(side, rise=1, run=40).start == "left end"
    assert where_to_start(side, rise=-1, run=40).start == "right end"
    assert where_to_start(side, rise=0).start == "either end"
    assert "1 in 40" in where_to_start(side, rise=1, run=40).sentence()


def test_end_grain_and_rims_have_their_own_care():
    end = where_to_start("end grain")
    assert end.start == "both edges" and "breakout" in end.sentence()
    assert "corner" in where_to_start("rim", rise=1).care


@pytest.mark.parametrize(
    ("make", "words"),
    [
        (lambda: where_to_start("top"), "face, edge, rim, end grain"),
        (lambda: where_to_start("face", run=0), "run was given as 0"),
    ],
)
def test_refusals_say_what_would_do(make, words):
    with pytest.raises(ValueError, match="give") as caught:
        make()
    assert words in str(caught.value)
