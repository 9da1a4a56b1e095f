"""What is left proud is one number everywhere: cut list, gauges, sheets, rough wood, flushing."""

from collections.abc import Iterator

import pytest

from tests.boxes import INCH, ears, inch_postcard, lift_off, postcard
from toolkit.box import Choices, gauge_settings, glue_up_steps, setting_out_lines
from toolkit.lesson import lesson3
from toolkit.pictures.sheets.walls import walls_of
from toolkit.plan import Plan, as_data, flushed, plan, tables
from toolkit.results import TaggedSize
from toolkit.truing import order_of_work

THROUGH = {"corner.joint": "through", "corner.lap": None}
BOXES = {
    "mm": postcard(),
    "in": inch_postcard(),
    "ears": ears(),
    "through": postcard().having(THROUGH),
    "through ears in inches": inch_postcard().having({**THROUGH, "corner.tails_on": "sides"}),
    "lift-off, tails on the sides": lift_off().having({"corner.tails_on": "sides"}),
    "shy": postcard().having({"corner.proud": -0.2}),
    "flush": postcard().having({"corner.proud": 0.0}),
    "measured": postcard().having({"made.side_length": 175.9, "made.front_length": 125.6}),
    "unlike ends": ears().having({"made.front_thickness": 11.0}),
}


def test_the_example_by_hand() -> None:
    """Sides 2 × 0.2 longer than the box, 152 between the baselines, ends as they were."""
    made = plan(postcard())
    assert [part.cut_length.value for part in made.parts[:3]] == pytest.approx([176.4, 126, 126])
    assert [part.length.value for part in made.parts[:3]] == pytest.approx([176, 126, 126])
    inches = plan(inch_postcard())
    assert inches.part("side").cut_length.value == pytest.approx((7 + 1 / 32) * INCH)
    assert gauge_settings(inches.design).board_back.value == pytest.approx(33 / 64 * INCH)
    for box, wall, cut in (("ears", "back", 134.4), ("through", "back", 134.4)):
        assert plan(BOXES[box]).part(wall).cut_length.value == pytest.approx(cut)
    assert plan(BOXES["through"]).part("side").cut_length.value == pytest.approx(176.4)
    assert plan(BOXES["ears"]).part("side").cut_length.value == pytest.approx(172)


def _lengths(made: Plan, part: str) -> Iterator[tuple[str, float]]:
    """A wall's length as cut, by where it stands. [mm]"""
    own = made.part(part)
    yield "plan", own.cut_length.value
    yield "data", next(r["cut"]["length"] for r in as_data(made)["parts"] if r["name"] == part)
    for row in tables.cut_list(made).rows:
        for cell in row:
            longer = own.cut_length.value != own.length.value
            tag = f"{part}, {'cut' if longer else 'finished'} length"
            if isinstance(cell, TaggedSize) and cell.tag == tag:
                yield "cut list", cell.value
    for opened in walls_of(made):
        if part in opened.name:
            yield "sheet", opened.wall.length
    task = next(task for task in order_of_work(own).tasks if task.step.name == "length")
    yield "test at the bench", next(t.limit for t in task.tests if t.what == "length")
    yield "rough", own.rough_length.terms[0].value


def _second_gauges(made: Plan) -> Iterator[tuple[str, float]]:
    """The pins' gauge at the back corners, by where it stands. [mm]"""
    yield "gauge", gauge_settings(made.design).board_back.value
    for setting in made.settings:
        if setting.tool.startswith("gauge 2") and "front" not in setting.tool:
            assert isinstance(setting.value, TaggedSize)
            yield "settings", setting.value.value
    for row in setting_out_lines(made.design):
        if row.name.startswith("gauge 2") and "front" not in row.name and row.setting:
            yield "lines", row.setting.value
    for size in lesson3.carry(made).sizes:
        if size.part.startswith("gauge 2") and "front" not in size.part:
            yield "carried to the bench", size.value
    part = "side" if made.choices.corner.tails_on == "ends" else "back"
    yield "sheet", next(w for w in walls_of(made) if part in w.name).wall.ends[0].base


@pytest.mark.parametrize("name", BOXES)
def test_one_value_wherever_it_stands(name: str) -> None:
    made = plan(BOXES[name])
    for part in ("side", "back", "front"):
        found = list(_lengths(made, part))
        assert len({where for where, _ in found}) == 6
        assert all(size == pytest.approx(found[0][1]) for _, size in found), (part, found)
    gauges = list(_second_gauges(made))
    assert len({where for where, _ in gauges}) == 5
    assert all(size == pytest.approx(gauges[0][1]) for _, size in gauges), gauges


@pytest.mark.parametrize("name", BOXES)
def test_flushing_takes_it_off(name: str) -> None:
    """The inside stays, whatever was made already; each wall that comes out loses two skims."""
    box = flushed(plan(BOXES[name]), skim=0.3)
    before, after = box.before.design.frame, box.after.design.frame
    for axis in ("length", "width"):
        inside, outside = f"inside_{axis}", f"outside_{axis}"
        assert getattr(after, inside).value == pytest.approx(getattr(before, inside).value)
        assert getattr(after, outside).value == pytest.approx(getattr(before, outside).value - 0.6)
    told = {row.name: row for row in box.workings}
    for wall, words in (("side", "side length"), ("back", "end length")):
        cut, left = getattr(before, f"{wall}_cut").value, getattr(before, f"{wall}_length").value
        assert (words in told) == (cut != left)
        if words in told:
            assert told[words].terms[0].value == cut
            assert told[words].value == pytest.approx(left - 0.6)


def _blocks(choices: Choices) -> str:
    return " ".join(
        step.do for step in glue_up_steps(plan(choices).design) if "ramps" in step.title
    )


def test_blocks_clear_what_stands_proud() -> None:
    assert "notched over the tails" in _blocks(postcard()) and "0.2 mm proud" in _blocks(postcard())
    assert "1/64 in proud" in _blocks(inch_postcard())
    assert "notched" not in _blocks(BOXES["shy"])


@pytest.mark.parametrize("name", BOXES)
def test_the_cut_list_says_which_walls_are_cut_otherwise(name: str) -> None:
    note = tables.cut_list(plan(BOXES[name])).note
    told = {"flush": [], "shy": ["shorter"]}.get(name, ["longer"])
    assert [way for way in ("longer", "shorter") if f"{way} than in the finished" in note] == told
