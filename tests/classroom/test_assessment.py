"""Marking: bands at their limits, play per side or in all, sheets and tables."""

import pytest

from toolkit.classroom.assessment import BANDS, assess, limits, play_band
from toolkit.classroom.sheets import blank_rubric, class_table, student_sheet
from toolkit.files import Measured
from toolkit.measures import Rule

MM = Rule.millimetres()


def band(key: str, **measured) -> str | None:  # type: ignore[no-untyped-def]
    return next(m.band for m in assess(Measured(**measured), rule=MM).marks if m.key == key)


# Custom bands: common practice, no source.
@pytest.mark.parametrize(
    ("key", "excellent", "passing", "rework"),
    [
        ("gap", 0.10, 0.30, 0.50),
        ("step", 0.10, 0.25, 0.40),
        ("rock", 0.15, 0.40, 0.80),
        ("spread", 0.15, 0.30, 0.50),
    ],
)
def test_bands_at_their_limits(key: str, excellent: float, passing: float, rework: float) -> None:
    values = [0.0, excellent, excellent + 0.01, passing, passing + 0.01, rework, rework + 0.01]
    expected = [0, 0, 1, 1, 2, 2, 3]
    assert [band(key, **{key: value}) for value in values] == [BANDS[n] for n in expected]


@pytest.mark.parametrize(
    ("difference", "place"), [(0, 0), (0.5, 0), (0.6, 1), (1.0, 1), (1.1, 2), (2.0, 2), (2.1, 3)]
)
def test_diagonals_of_the_postcard_box(difference: float, place: int) -> None:
    found = band("diagonals", diagonals=(221.0, 221.0 + difference), size=(176, 134))
    assert found == BANDS[place]


def test_a_box_twice_as_large_may_differ_twice_as_much() -> None:
    assert band("diagonals", diagonals=(440.0, 442.0), size=(352, 268)) == "Pass"
    assert band("diagonals", diagonals=(442.0, 440.0), size=(352, 268)) == "Pass"


def test_play_is_per_side_or_in_all_and_says_which() -> None:
    assert band("lid_play", lid_play=2.89) == "Excellent"
    assert band("lid_play", lid_play=2.89, play_is="per side") == "acceptable after a note"
    text = next(m for m in assess(Measured(lid_play=2.89), rule=MM).marks if m.key == "lid_play")
    assert "per side" in text.what and "halved" in text.value
    assert [play_band(p) for p in (0, 0.4, 0.5, 1.5, 1.6, 2.2, 2.3)] == [
        BANDS[n] for n in (3, 2, 0, 0, 1, 1, 2)
    ]
    assert band("lid_play", lid_play=4.0, groove_depth=4.0) == "Rework"
    assert play_band(1.9, drops_out_at=2.0) == "Pass"


def test_what_is_seen() -> None:
    assert band("surface", surface="tear-out") == "acceptable after a note"
    assert band("groove", groove="Plugged") == "Pass"
    with pytest.raises(ValueError, match='type "none" or "plugged" or "open"'):
        band("groove", groove="hole")


@pytest.mark.parametrize(
    ("measured", "words"),
    [
        ({"gap": -0.1}, "gap"),
        ({"diagonals": (1.0, 2.0)}, "size of the box"),
        ({"lid_play": 1.0, "play_is": "both"}, "per side"),
    ],
)
def test_refusals(measured: dict, words: str) -> None:  # type: ignore[type-arg]
    with pytest.raises(ValueError, match=words):
        Measured(**measured)


def test_sheet_and_class() -> None:
    good = assess(Measured(gap=0.05, surface="clean"), rule=MM)
    bad = assess(Measured(gap=0.6), rule=MM)
    nothing = assess(Measured(), rule=MM)
    assert (good.worst, bad.worst, nothing.worst) == ("Excellent", "Rework", None)
    assert "7 not measured" in good.sentence
    sheet = student_sheet(bad, student=3)
    assert sheet.rows[0][2] == "Rework" and sheet.rows[0][3]
    table = class_table([(1, good), (2, bad), (3, bad)])
    assert table.rows[0][:2] == ("student 1", "E")
    assert table.rows[-1][:2] == ("to rework", "2")


def test_the_blank_rubric_says_the_limits_on_the_students_rule() -> None:
    rows = {row[0]: row for row in blank_rubric(MM, size=(176, 134)).rows}
    assert rows["corners out of square"][2:4] == (
        "≤ 0.5 mm between the diagonals",
        "≤ 1 mm between the diagonals",
    )
    assert all(row[-1] == "" for row in rows.values())
    assert "0.13°" in next(r for r in blank_rubric(MM).rows if "square" in r[0])[2]
    assert " in" in blank_rubric(Rule.inches()).rows[0][2]
    assert all("no source" in row.source for row in limits())
