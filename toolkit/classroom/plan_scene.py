"""The teacher's own sliders: how the weekend goes for a class, and how much wood it needs."""

from __future__ import annotations

from functools import lru_cache

from toolkit.box import Choices
from toolkit.classroom.scheduling import Timetable, shared_tools, span, timetable
from toolkit.classroom.steps import PACES, SITS_WITH, Hours, Pace, helped
from toolkit.classroom.timetable_shown import borrowed, bought_back, drawn
from toolkit.classroom.wood import practice_stick
from toolkit.classroom.wood_tables import amounts
from toolkit.lesson import NumberControl, Scene, Tried, View, possible
from toolkit.measures import Rule
from toolkit.pictures import Stack, stack_picture
from toolkit.results import Table
from toolkit.stock import Blank, blanks_of, board_feet_by_volume, cubic_metres

YARD = (2200.0, 225.0)  # a board as yards have them: custom, no source [mm]

MOST = 12  # students of a class that one teacher can see: common practice, no source
# What the sliders begin with: students, slow among them, helpers, hours at the bench a day.
USUAL = (8, 3, 1, 6.0)
_STUDENTS = NumberControl(("try.students",), "students", 4, MOST, 1, start=USUAL[0])
TIME_CONTROLS = (
    _STUDENTS,
    NumberControl(("try.slow",), "slow among them", 0, 8, 1, start=USUAL[1]),
    NumberControl(("try.helpers",), "helpers", 0, 4, 1, start=USUAL[2]),
    NumberControl(("try.hours",), "bench hours a day", 4, 8, 0.5, "h", start=USUAL[3]),
)
WOOD_CONTROLS = (
    _STUDENTS,
    NumberControl(("try.spares",), "spare sets", 0, 8, 1, start=2),
    NumberControl(("try.stick",), "practice blank each", 0, 600, 50, "mm", start=300),
    NumberControl(("try.waste",), "waste", 0, 60, 5, "%", start=30),
)


def paces_of(students: int, *, slow: int) -> tuple[Pace, ...]:
    """A class by its paces: one in four practised, so many slow, the others novices."""
    late = min(slow, students)
    fast = min(students // 4, students - late)
    rest = students - fast - late
    many: dict[Pace, int] = {"practised": fast, "novice": rest, "slow": late}
    return tuple(pace for pace, count in many.items() for _ in range(count))


@lru_cache(maxsize=64)
def _classed(students: int, slow: int, helpers: int, hours: float) -> Timetable:
    minutes = 60.0 * hours
    day = Hours(minutes=minutes, lunch_at=minutes / 2)
    return timetable(helped(paces_of(students, slow=slow), helpers=helpers), hours=day)


def usual_class() -> Timetable:
    """The class that the sliders begin with."""
    return _classed(*USUAL)


@lru_cache(maxsize=64)
def _offers(
    students: int, slow: int, helpers: int, hours: float
) -> tuple[tuple[str, str, str], ...]:
    """What a borrowed tool and each saving buy, as rows of the numbers."""
    plan = _classed(students, slow, helpers, hours)
    more = borrowed(plan)
    rows = [(more.words, "+ 1", more.sentence)] if more else []
    for one in bought_back(plan):
        late = f"the slowest then over by {span(one.after.worst)}"
        said = late if one.after.late else "all in time then"
        rows.append((one.words, f"{one.in_time} more in time", said))
    return tuple(rows)


def _time(_: Choices, tried: Tried) -> View:
    students = int(tried["try.students"])
    helpers = int(tried["try.helpers"])
    asked = students, int(tried["try.slow"]), helpers, float(tried["try.hours"])
    plan = _classed(*asked)
    paces = paces_of(students, slow=asked[1])
    words = ["helped" if was != now else was for was, now in zip(paces, plan.paces, strict=True)]
    tools = shared_tools(plan.steps, students=students)
    many = ", ".join(f"{paces.count(pace)} {pace}" for pace in PACES)
    in_time = f"{students - len(plan.late)} of {students}"
    sits = f"each sits with {SITS_WITH} slow students, who then keep a novice's pace: custom"
    rows = [
        ("paces", f"{students} students", f"{many}; one in four practised: custom"),
        ("done in time", in_time, "by the end of the last day"),
        ("the slowest over by", span(plan.worst), "simulated, step by step"),
        ("helpers", str(helpers), sits),
    ]
    rows += [
        (f"shared: {name}", str(count), f"{plan.queued.get(name, 0.0):.0f} min waited for in all")
        for name, count in tools.items()
    ]
    rows += _offers(*asked)
    table = Table(
        "The weekend, and what each saving buys back",
        ("what", "how much", "where it comes from"),
        tuple(rows),
        note="Minutes of every step: common practice, no source. Time your own class.",
        numeric=(1,),
    )
    return View(drawn(plan, paces=words, room=MOST), table)


TIME = Scene("weekend", TIME_CONTROLS, _time, height=650)


@lru_cache(maxsize=16)
def _one_box(choices: Choices, stick: float) -> tuple[tuple[Blank, ...], tuple[Blank, ...]]:
    plan = possible(choices)
    return blanks_of(plan.parts), practice_stick(plan, length=stick)


def _wood(choices: Choices, tried: Tried) -> View:
    rule = choices.rule
    students, spares = int(tried["try.students"]), int(tried["try.spares"])
    share = 1 - float(tried["try.waste"]) / 100
    box, sticks = _one_box(choices, float(tried["try.stick"]))
    parts = [*box * (students + spares), *sticks * students]
    rows, stacks, whole = [], [], 0.0
    for thickness in sorted({one.thickness for one in parts}, reverse=True):
        net, yard = amounts(one for one in parts if one.thickness == thickness)
        bought = net / share
        whole += bought
        boards = bought / cubic_metres(YARD[0], width=YARD[1], thickness=thickness)
        thick = _size(rule, thickness)
        stacks.append(Stack(f"{boards:.1f} boards, {thick} thick", boards))
        words = (
            f"{board_feet_by_volume(bought):.1f} board feet, {yard / share:.1f} as a yard counts"
        )
        rows.append((f"{thick} thick", f"{bought:.4f} m³", words))
    spare = amounts(box)[0] * (spares / share)
    rows.append(("of it for spares", f"{spare:.4f} m³", f"{spares} sets of parts"))
    long, wide = (_size(rule, size) for size in YARD)
    sentence = (
        f"{students} boxes and {spares} spare sets take {whole:.4f} m³ "
        f"({board_feet_by_volume(whole):.1f} board feet), {tried['try.waste']:g} % waste in it. "
        f"Boards of {long} × {wide}; hatched is what the last one has left."
    )
    table = Table(
        "Wood for the class",
        ("what", "how much", "in board feet"),
        tuple(rows),
        note="Rough sizes of the box as kept. A hardwood yard counts wood under an inch as an inch "
        "thick (NHLA rules). Waste: custom, no source.",
        numeric=(1,),
    )
    return View(stack_picture(stacks, board=YARD, sentence=sentence), table)


def _size(rule: Rule, value: float) -> str:
    return rule.exact(rule.round(value, fineness="sizes", direction="up"))


WOOD = Scene("boards", WOOD_CONTROLS, _wood, height=460)
SCENES: tuple[Scene, ...] = (TIME, WOOD)
