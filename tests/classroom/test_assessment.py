"""Marking: bands at their limits, the lid's play by its season, sheets and tables."""

import pytest

from tests.boxes import inch_postcard, lift_off, postcard
from toolkit.box import Choices
from toolkit.classroom.assessment import Assessment, assess
from toolkit.classroom.sheets import class_table, student_sheet
from toolkit.files import Measured
from toolkit.handout.sections import in_order_of_use
from toolkit.measures import length
from toolkit.plan import BANDS, plan, rubric, rubric_table, told

POSTCARD = plan(postcard())


def marked(**measured) -> Assessment:  # type: ignore[no-untyped-def]
    return assess(Measured(**measured), plan=POSTCARD)


def band(key: str, **measured) -> str | None:  # type: ignore[no-untyped-def]
    return next(m.band for m in marked(**measured).marks if m.key == key)


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


def test_diagonals_of_the_postcard_box() -> None:
    for difference, place in ((0, 0), (0.5, 0), (0.6, 1), (1.0, 1), (1.1, 2), (2.0, 2), (2.1, 3)):
        found = band("diagonals", diagonals=(221.0, 221.0 + difference), size=(176, 134))
        assert found == BANDS[place], difference


def test_a_box_twice_as_large_may_differ_twice_as_much() -> None:
    assert band("diagonals", diagonals=(440.0, 442.0), size=(352, 268)) == "Pass"
    assert band("diagonals", diagonals=(442.1, 440.0), size=(352, 268)) != "Pass"


def test_play_is_in_all_and_follows_from_the_boxs_own_season() -> None:
    """By hand, cherry 116 wide in grooves 4 deep: it swells 1.47 and shrinks 0.89; 0.3 of room.

    1.47 and 1.77, up to tenths; 4 − 0.89 less 1, 0.5 and 0, down to tenths.
    """
    (row,) = (row for row in rubric(POSTCARD) if row.key == "lid_play")
    assert row.cells(POSTCARD.choices.rule) == (
        "1.8 to 2.1 mm",
        "1.5 to 2.6 mm",
        "over 2.6, up to 3.1 mm",
        "under 1.5 or over 3.1 mm",
    )
    plays = {1.4: 3, 1.5: 1, 1.7: 1, 1.8: 0, 2.1: 0, 2.2: 1, 2.6: 1, 2.7: 2, 3.1: 2, 3.2: 3, 0.0: 3}
    assert {play: band("lid_play", lid_play=play) for play in plays} == {
        play: BANDS[place] for play, place in plays.items()
    }
    assert band("lid_play", lid_play=1.0, play_is="per side") == "Excellent"
    tight, loose = (
        next(m.remedy for m in marked(lid_play=play).marks if m.key == "lid_play")
        for play in (1.0, 3.0)
    )
    assert "shiny edge" in tight and "strip" in loose
    quartered = plan(postcard().having({"wood.rings": 90.0}))
    (row,) = (row for row in rubric(quartered) if row.key == "lid_play")
    assert row.cells(quartered.choices.rule)[0] == "1.1 to 2.5 mm"


def test_what_is_seen() -> None:
    """Scallops that a nail feels are the lesser fault; torn wood more than 5 mm long is rework."""
    surfaces = ("clean", "small tear-out", "scallops", "tear-out")
    assert tuple(band("surface", surface=seen) for seen in surfaces) == BANDS
    assert band("groove", groove="Plugged") == "Pass"
    with pytest.raises(ValueError, match='type "none" or "plugged" or "open"'):
        band("groove", groove="hole")


def test_no_row_tells_a_finished_box_what_only_a_wet_one_can_do() -> None:
    for mark in marked(gap=9.0, step=9.0, diagonals=(221, 224), size=(176, 134)).marks:
        assert "before the glue" not in mark.remedy.partition("next time")[0]


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
    good, bad, nothing = marked(gap=0.05, surface="clean"), marked(gap=0.6), marked()
    assert (good.worst, bad.worst, nothing.worst) == ("Excellent", "Rework", None)
    assert "7 not measured" in good.sentence
    sheet = student_sheet(bad, student=3)
    assert sheet.rows[0][2] == "Rework" and sheet.rows[0][3]
    table = class_table([(1, good), (2, bad), (3, bad)])
    assert table.rows[0][:2] == ("student 1", "E")
    assert table.rows[-1][:2] == ("to rework", "2")
    # A box without a sliding lid has the same rows, and says why one is empty.
    lifted = assess(Measured(), plan=plan(lift_off()))
    assert [row.key for row in lifted.marks] == [row.key for row in nothing.marks]
    assert "lifts off" in next(row.value for row in lifted.marks if row.key == "lid_play")


@pytest.mark.parametrize("choices", [postcard(), inch_postcard(), lift_off()])
def test_one_rubric_on_every_page_in_the_students_units(choices: Choices) -> None:
    """Handout and rubric sheet print one table; at each limit that it prints the marks agree."""
    made = plan(choices)
    rule, table = made.choices.rule, rubric_table(made)
    good = [
        section
        for section in in_order_of_use(made, words="us", lessons=(), boards=(), paper="a4")
        if section.id == "good"
    ]
    assert [block.table for section in good for block in section.blocks] == [table]  # type: ignore[union-attr]
    other = "mm" if rule.units == "in" else "in"
    cells = " ".join(cell for row in table.rows for cell in row[2:6])
    assert other not in cells.replace(",", " ").split()
    for row, printed in zip(rubric(made), table.rows, strict=True):
        if row.limits is None:
            continue
        for (_, most), place in ((row.limits.excellent, 0), (row.limits.passing, 1)):
            shown = length(f"{told(most, rule)}", what=row.key)
            assert told(most, rule) in printed[2 + place]
            assert row.band(shown) == BANDS[place], (row.key, printed)
