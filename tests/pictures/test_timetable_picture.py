"""The timetable drawn: bars where the minutes are, waits hatched, what runs over told."""

import pytest

from toolkit.classroom.scheduling import timetable
from toolkit.classroom.steps import Hours
from toolkit.classroom.timetable_shown import drawn
from toolkit.pictures import Picture, Stack, for_paper, stack_picture
from toolkit.pictures.timetable import Bit, Row, Weekend

DAYS = Weekend(2, 100.0, 50.0, 20.0, ((0.0, "9:00"), (60.0, "10:00")))


def made(*rows: Row) -> Picture:
    from toolkit.pictures import timetable_picture

    return timetable_picture(rows, weekend=DAYS, sentence="said")


def bars(picture: Picture, pen: str) -> list[tuple[float, float]]:
    """From where to where each area of a tint goes. [px]"""
    found = []
    for name, points in picture.drawn.strokes:
        if name == pen and max(y for _, y in points) > 40:
            xs = [x for x, _ in points]
            found.append((min(xs), max(xs)))
    return found


def words(picture: Picture) -> list[str]:
    return [label.text for label in picture.drawn.labels]


def test_bars_are_as_long_as_their_minutes() -> None:
    row = Row("1 novice", (Bit(1, 0, 20), Bit(2, 20, 60)))
    (_, end), (start, last) = bars(made(row), "face")
    assert end == pytest.approx(start)
    assert (last - start) == pytest.approx(2 * (end - bars(made(row), "face")[0][0]))


def test_a_step_over_night_stands_on_both_days_and_a_queue_before_its_bar() -> None:
    row = Row("1 novice", (Bit(1, 0, 70, 0, "bench"), Bit(2, 90, 120, 15, "chopping")))
    picture = made(row)
    assert len(bars(picture, "end")) == 2
    assert any(name == "hatch" for name, _ in picture.drawn.strokes)
    still = made(Row("1 novice", (Bit(1, 0, 70), Bit(2, 90, 120, 0, "chopping"))))
    hatched = [sum(name == "hatch" for name, _ in one.drawn.strokes) for one in (picture, still)]
    assert hatched[0] > hatched[1] > 0  # the key hatches too


def test_who_runs_over_is_said_behind_the_row_and_long_rows_are_cut() -> None:
    late = made(Row("1 slow", (Bit(1, 0, 900),), "+ 11 h 40"))
    assert "+ 11 h 40" in words(late)
    assert max(end for _, end in bars(late, "face")) < late.drawn.width


@pytest.mark.parametrize("students", [4, 12, 16])
def test_no_name_and_no_number_of_a_long_step_is_lost(students: int) -> None:
    paces = (["practised", "novice", "novice", "slow"] * 4)[:students]
    plan = timetable(paces)  # type: ignore[arg-type]
    for picture in (drawn(plan), _on_paper(plan)):
        said = words(picture)
        for student in plan.students:
            assert said.count(f"{student} {plan.paces[student - 1]}") == 2
        assert said.count("11") >= students
        assert {"no chopping", "glue", "waiting for a tool"} <= set(said)
        assert said.count("lunch") == 2
        assert [said.count(f"{hour} h") for hour in range(7)] == [2] * 7
        for label in picture.drawn.labels:
            assert label.x0 >= 0 and label.x1 <= picture.drawn.width
    assert drawn(plan).sentence == plan.sentence


def _on_paper(plan) -> Picture:  # type: ignore[no-untyped-def]
    with for_paper():
        return drawn(plan)


def test_the_hour_without_chopping_is_marked_by_more_than_its_tint() -> None:
    picture = made(Row("1 novice", (Bit(1, 0, 100), Bit(2, 100, 200))))
    drawn_ = picture.drawn.strokes
    (start, end) = bars(picture, "far")[0]
    full = bars(picture, "face")[0]
    assert end == pytest.approx(full[1])
    assert end - start == pytest.approx((full[1] - full[0]) * DAYS.quiet / DAYS.minutes)
    heavy = [{x for x, _ in points} for pen, points in drawn_ if pen == "visible"]
    assert {start, end} in heavy
    # The last day has none.
    assert len(bars(picture, "far")) == 1


def test_three_days_have_three_strips_and_clock_words() -> None:
    plan = timetable(["practised"] * 4, hours=Hours(days=3))
    picture = drawn(plan, clock=lambda minute: f"{9 + int(minute) // 60}:00")
    said = words(picture)
    assert [f"day {n}" in said for n in (1, 2, 3)] == [True] * 3
    assert said.count("9:00") == 3


def test_boards_to_buy_are_whole_but_the_last() -> None:
    picture = stack_picture(
        [Stack("2.5 boards", 2.5), Stack("1.0 boards", 1.0)], board=(2000.0, 200.0), sentence="x"
    )
    whole = [points for name, points in picture.drawn.strokes if name == "visible"]
    assert len(whole) == 4
    assert {"2.5 boards", "1.0 boards"} <= set(words(picture))
    wide = {round(max(x for x, _ in p) - min(x for x, _ in p), 3) for p in whole}
    used = sorted(
        max(x for x, _ in p) - min(x for x, _ in p)
        for name, p in picture.drawn.strokes
        if name == "face"
    )
    assert used[0] == pytest.approx(0.5 * wide.pop())
