"""The timetable: chains against networkx, queues and waits by hand, what savings give back."""

from collections import defaultdict
from collections.abc import Sequence
from itertools import pairwise

import networkx
import pytest
from hypothesis import given, settings, strategies as st

from toolkit.classroom.scheduling import shared_tools, timetable
from toolkit.classroom.steps import (
    PACES,
    Hours,
    Pace,
    Step,
    critical_path,
    savings,
    spared,
    weekend,
)
from toolkit.classroom.timetable_shown import bought_back, offers

MIXED: tuple[Pace, ...] = (*("practised",) * 2, *("novice",) * 5, "slow")


def step(number: int, minutes: float, needs: Sequence[int] = (), **more) -> Step:  # type: ignore[no-untyped-def]
    plain = {"day": 1, "tool": "", "share": 0, "chops": False, "wait": 0.0}
    return Step(
        number=number,
        name=f"step {number}",
        minutes=dict.fromkeys(PACES, minutes),
        needs=tuple(needs),
        if_late="",
        source="",
        **{**plain, **more},
    )


def longest_by_networkx(steps: Sequence[Step], pace: Pace) -> float:
    """Each step an edge from its begin to its end, each need an edge as long as the wait."""
    graph = networkx.DiGraph()
    for one in steps:
        graph.add_edge((one.number, "begin"), (one.number, "end"), weight=one.minutes[pace])
        for need in one.needs:
            wait = next(row.wait for row in steps if row.number == need)
            graph.add_edge((need, "end"), (one.number, "begin"), weight=wait)
    return float(networkx.dag_longest_path_length(graph, weight="weight"))


@pytest.mark.parametrize("pace", PACES)
def test_the_longest_chain_of_the_weekend(pace: Pace) -> None:
    length, chain = critical_path(weekend(), pace=pace)
    assert length == pytest.approx(longest_by_networkx(weekend(), pace))
    named = {row.number: row for row in weekend()}
    assert all(one in named[two].needs for one, two in pairwise(chain))


@given(
    st.lists(
        st.tuples(st.integers(0, 60), st.integers(0, 30), st.lists(st.integers(0, 50), max_size=3)),
        min_size=1,
        max_size=12,
    )
)
def test_the_longest_chain_of_any_steps(rows: list[tuple[int, int, list[int]]]) -> None:
    steps = [
        step(
            n,
            float(length),
            sorted({need % n for need in needs} - {0}) if n else [],
            wait=float(wait),
        )
        for n, (length, wait, needs) in enumerate(rows, 1)
    ]
    assert critical_path(steps, pace="slow")[0] == pytest.approx(longest_by_networkx(steps, "slow"))


def test_a_ring_of_steps_is_refused() -> None:
    with pytest.raises(ValueError, match="need one another"):
        critical_path([step(1, 5, [2]), step(2, 5, [1])], pace="slow")
    with pytest.raises(ValueError, match="need one another"):
        timetable(["slow"], steps=[step(1, 5, [9])])


def test_totals_of_the_table() -> None:
    """Common practice, no source: 705, 805 and 1205 min of work."""
    totals = {pace: sum(row.minutes[pace] for row in weekend()) for pace in PACES}
    assert totals == {"practised": 705, "novice": 805, "slow": 1205}


@pytest.mark.parametrize("pace", PACES)
def test_one_alone_waits_for_no_tool_and_works_the_whole(pace: Pace) -> None:
    alone = timetable([pace])
    assert all(bar.queued == 0 for bar in alone.bars)
    assert sum(bar.end - bar.start for bar in alone.bars) == sum(
        row.minutes[pace] for row in weekend()
    )
    assert alone.finish(1) >= critical_path(weekend(), pace=pace)[0]


def test_one_alone_by_hand() -> None:
    """Day 1 ends at 335 and 25 min idle; day 2: 280 to the glue, 60 in cramps, 90 after."""
    alone = timetable(["practised"])
    assert alone.finish(1) == 360 + 280 + 60 + 90
    assert alone.over(1) == 70
    assert "1 h 10" in alone.sentence


def test_a_queue_by_hand() -> None:
    """Three students and one plane for 10 min each: 0, 10 and 20 min of waiting."""
    plane = [step(1, 10, tool="plane", share=3)]
    held = timetable(["slow"] * 3, steps=plane)
    assert [bar.queued for bar in held.bars] == [0, 10, 20]
    assert held.queued == {"plane": 30}
    # Another step that may be done meanwhile is done meanwhile.
    busy = timetable(["slow"] * 2, steps=[*plane, step(2, 10)], tools={"plane": 1})
    assert sum(bar.queued for bar in busy.bars) == 0
    assert busy.finish(1) == busy.finish(2) == 20
    with pytest.raises(ValueError, match="1 or more"):
        timetable(["slow"], steps=plane, tools={"plane": 0})
    with pytest.raises(ValueError, match="at least one student"):
        timetable([])


@settings(max_examples=25, deadline=None)
@given(st.lists(st.sampled_from(PACES), min_size=1, max_size=14))
def test_what_holds_for_every_class(paces: list[Pace]) -> None:
    found = timetable(paces)
    named = {row.number: row for row in weekend()}
    held = defaultdict(list)
    for student in found.students:
        mine = {bar.step: bar for bar in found.bars if bar.student == student}
        assert set(mine) == set(named)
        inorder = sorted(mine.values(), key=lambda bar: bar.start)
        assert all(a.end <= b.start + 1e-9 for a, b in pairwise(inorder))
        for number, bar in mine.items():
            row = named[number]
            assert bar.start >= found.hours.begins(row.day)
            assert all(mine[need].end <= bar.start + 1e-9 for need in row.needs)
            if row.chops:
                assert bar.end <= 300 + 1e-9 or bar.start >= 360
            if row.tool:
                held[row.tool].append(bar)
    for tool, bars in held.items():
        for bar in bars:
            at_once = sum(other.start <= bar.start < other.end for other in bars)
            assert at_once <= found.tools[tool]


def test_no_chopping_in_the_last_hour_of_day_one() -> None:
    chop = [step(1, 280), step(2, 30, [1], chops=True), step(3, 20, [1])]
    bars = {bar.step: bar for bar in timetable(["slow"], steps=chop).bars}
    assert bars[3].start == 280
    assert bars[2].start == 360
    plain = [step(1, 280), step(2, 30, [1]), step(3, 20, [1])]
    assert {bar.step: bar.start for bar in timetable(["slow"], steps=plain).bars}[2] == 280
    # Queueing for a chisel into that hour puts the chopping off, too.
    queue = [step(2, 40, chops=True, tool="chisel", share=9)]
    two = timetable(["slow"] * 8, steps=queue)
    assert all(bar.end <= 300 or bar.start >= 360 for bar in two.bars)
    assert any(bar.start >= 360 for bar in two.bars)


def test_lunch_and_night_shorten_the_wait_for_glue() -> None:
    hours = Hours()
    assert hours.after_wait(100, 60) == 160
    assert hours.after_wait(170, 60) == 185, "10 min, 45 of lunch, 5 more"
    assert hours.after_wait(170, 30) == 180, "over before lunch is"
    assert hours.after_wait(350, 60) == 360, "the night does the rest"
    assert hours.after_wait(700, 60) == 760, "after the last day there is none"
    with pytest.raises(ValueError, match="at least one day"):
        Hours(days=0)


def test_three_planes_for_eight() -> None:
    tools = shared_tools(weekend(), students=8)
    assert tools["plough plane"] == 3 and tools["try plane"] == 4
    few = timetable(MIXED, tools={**tools, "plough plane": 1})
    assert few.queued["plough plane"] > timetable(MIXED).queued["plough plane"]


def test_savings_give_back_what_they_spare() -> None:
    alone = {row.key: row.back(1) for row in bought_back(timetable(["practised"]))}
    assert alone["panels"] == 80
    assert alone["through front"] == 40
    # Glued up at 160 min of day 2, so that lunch at 180 takes 40 min off the wait as well.
    assert alone["rebated"] == 120 + 40
    # Day 1 has room already: a flat wall saves nothing at the end unless day 2's work moves.
    assert alone["flat walls"] == 0
    # What day 1 has left, from 335 to 360, is all that planing early can win.
    assert alone["early panels"] == 25
    slow = {row.key: row.back(1) for row in bought_back(timetable(["slow"]))}
    assert slow["panels"] == 135
    assert slow["through front"] == 70
    table = offers(bought_back(timetable(MIXED)))
    assert len(table.rows) == len(savings())
    none = spared(weekend(), by=[*savings(), *savings(), *savings()])
    assert all(min(row.minutes.values()) >= 0 for row in none)
