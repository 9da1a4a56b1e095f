"""The order at the bench, as lessons and handout tell it of one box."""

from tests.boxes import ears, lift_off, postcard
from toolkit.lesson import lesson
from toolkit.plan import around, bench_steps_of, plan
from toolkit.results import read_table

THROUGH = {"corner.joint": "through", "corner.lap": None}
BOXES = {
    "half-blind sliding": postcard(),
    "through sliding": postcard().having(THROUGH),
    "half-blind ear": ears(),
    "half-blind lift-off": lift_off(),
    "through none": postcard().having({"lid.kind": "none", **THROUGH}),
}
ORDER = (
    "plough the grooves", "smooth the insides", "gauge the joints", "cut the tails", "cut the pins",
    "fit the panels", "fit dry", "coat the bottom", "glue up", "flush the outside", "finish",
)  # fmt: skip


def test_the_steps_come_in_the_order_of_the_craft_and_fit_the_box() -> None:
    for name, box in BOXES.items():
        made = plan(box)
        stages = [row["stage"] for row in bench_steps_of(made)]
        assert [stages.index(stage) for stage in ORDER] == sorted(map(stages.index, ORDER)), name
        assert ("rip the front" in stages) == (made.design.sliding_lid is not None), name
        assert ("fit the lid" in stages) == bool(made.design.lids), name
        if "rip the front" in stages:
            at = stages.index("rip the front")
            assert stages.index("plough the grooves") < at < stages.index("cut the tails")
        rows = [row for row in bench_steps_of(made) if row["stage"] == "cut the pins"]
        pins = " ".join(row["step"] for row in rows)
        through = box.corner.joint == "through"
        assert ("half way from each face" in pins) == through, name
        assert ("inside face only" in pins) != through, name


def test_every_lesson_says_what_is_before_it_and_after_it() -> None:
    for box in BOXES.values():
        made = plan(box)
        stages = dict.fromkeys(row["stage"] for row in bench_steps_of(made))
        for number in range(1, 6):
            said = lesson(number).blocks["bench"](made)
            assert all(stage in repr(said) for stage in stages), number
    before, now, after = around(plan(postcard()), 3)
    assert before.endswith("plough the grooves, rip the front, smooth the insides")
    assert now.startswith("gauge the joints, cut the tails, cut the pins, (lesson 4: fit the")
    assert after == "flush the outside, fit the lid, finish"


def test_no_row_asks_for_a_kind_of_box_that_there_is_not() -> None:
    known = {"half-blind", "through", "sliding", "lift-off", "none", "lid", "no-lid", "ear"}
    for place in ("plan/bench", *(f"handout/{name}" for name in ("mishaps", "glossary"))):
        asked = {word for row in read_table(f"{place}.csv") for word in row["for"].split()}
        assert asked <= known, place
