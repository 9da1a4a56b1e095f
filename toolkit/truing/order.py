"""An order of work that a teacher may rearrange, with the test after each step and its number."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from toolkit.results import CUSTOM, WALLS, Finding, Part, read_table, sorted_findings
from toolkit.truing.tolerances import Tolerances

if TYPE_CHECKING:
    from toolkit.measures import Rule


@dataclass(frozen=True, slots=True)
class WorkStep:
    """One step: what it is called, and what to do."""

    name: str
    title: str
    do: str


@dataclass(frozen=True, slots=True)
class Need:
    """A step that has to come before another, and why."""

    first: str
    then: str
    why: str
    must: bool  # whether the work is spoilt otherwise, and not only more of it done


STEPS = tuple(
    WorkStep(row["name"], row["title"], row["do"]) for row in read_table("truing/steps.csv")
)
NEEDS = tuple(
    Need(row["first"], row["then"], row["why"], row["weight"] == "must")
    for row in read_table("truing/needs.csv")
)
NAMES = tuple(step.name for step in STEPS)

# Two orders in use. The first: Noyes, Handwork in Wood, 1910 (face, edge, end, length, width,
# thickness). The second: many shops, common practice, no source.
ENDS_FIRST: tuple[str, ...] = (
    "clean", "crosscut", "face", "edge", "end", "length", "width", "thickness", "plough",
    "smooth", "gauge",
)  # fmt: skip
THICKNESS_FIRST: tuple[str, ...] = (
    "clean", "crosscut", "face", "edge", "thickness", "width", "end", "length", "plough",
    "smooth", "gauge",
)  # fmt: skip
ORDERS = {"ends first": ENDS_FIRST, "thickness first": THICKNESS_FIRST}


@dataclass(frozen=True, slots=True)
class BenchTest:
    """One test at the bench with a tool, and the number to test against. [mm]"""

    tool: str
    what: str
    limit: float  # the most that may be found wrong; for a size, the size itself
    kind: Literal["most", "least", "size"] = "most"
    over: float = 0.0  # the length that a twist or a gap is meant over, where it matters
    off: float = 0.0  # how far a size may be off

    def sentence(self, rule: Rule) -> str:
        """The test in words, such as ``twist ≤ 0.3 mm over 176 mm (winding sticks)``."""
        if self.kind == "least":
            least = rule.show(self.limit, fineness="sizes", direction="up")
            return f"{self.what} ≥ {least} ({self.tool})"
        if self.kind == "size":
            return f"{self.what} {rule.exact(self.limit)} ± {rule.exact(self.off)} ({self.tool})"
        over = f" over {rule.exact(self.over)}" if self.over else ""
        return f"{self.what} ≤ {rule.fine(self.limit)}{over} ({self.tool})"


@dataclass(frozen=True, slots=True)
class Task:
    """A step for one part, with its tests."""

    step: WorkStep
    tests: tuple[BenchTest, ...]

    def sentence(self, rule: Rule) -> str:
        """The step and its tests in words."""
        if not self.tests:
            return self.step.do
        return f"{self.step.do} Test: {'; '.join(test.sentence(rule) for test in self.tests)}."


@dataclass(frozen=True, slots=True)
class OrderOfWork:
    """The steps for one part in somebody's order, and what that order breaks."""

    tasks: tuple[Task, ...]
    findings: tuple[Finding, ...]


def order_of_work(
    part: Part,
    *,
    order: Sequence[str] = THICKNESS_FIRST,
    limits: Tolerances | None = None,
) -> OrderOfWork:
    """The steps from rough board to a part ready for its joints, each with its test. [mm]

    With a finding for each thing that the order breaks. A panel is neither ploughed nor gauged for
    joints, so it has no such steps. Noyes, Handwork in Wood, 1910, and common practice, no source;
    numbers are customs.
    """
    for at, name in enumerate(order):
        if name not in NAMES:
            raise ValueError(f"there is no step {name!r}; name some of {', '.join(NAMES)}")
        if name in order[:at]:
            raise ValueError(f"the step {name!r} is named twice; name it once")
    wall = part.name in WALLS
    tests = _tests(part, limits or Tolerances())
    steps = {step.name: step for step in STEPS}
    return OrderOfWork(
        tasks=tuple(
            Task(steps[name], tests.get(name, ()))
            for name in order
            if wall or name not in ("plough", "gauge")
        ),
        findings=check_order(order),
    )


def check_order(order: Sequence[str]) -> tuple[Finding, ...]:
    """Everything that an order of work breaks, worst first: ``step-too-early``, ``step-left-out``.

    >>> check_order(["edge", "face"])[0].code
    'step-too-early'
    """
    titles = {step.name: step.title for step in STEPS}
    found: list[Finding] = []
    for need in NEEDS:
        if need.then not in order:
            continue
        late = need.first in order and order.index(need.first) > order.index(need.then)
        if not late and need.first in order:
            continue
        instead = "comes after it" if late else "is left out"
        found.append(
            Finding(
                "wont_work" if need.must else "care",
                "step-too-early" if late else "step-left-out",
                titles[need.then],
                f"“{titles[need.first]}” {instead}, but {need.why}.",
                f"Put “{titles[need.first]}” first.",
                CUSTOM,
            )
        )
    if not found:
        message = "each step finds ready what it needs."
        found.append(Finding("good", "good-order", "order of work", message, "", CUSTOM))
    # A step in the wrong place is a slip; one left out may be meant. The slip is told first.
    return sorted_findings(sorted(found, key=lambda row: row.code != "step-too-early"))


def _tests(part: Part, limits: Tolerances) -> dict[str, tuple[BenchTest, ...]]:
    long, wide, thick = (size.value for size in part.finished)
    twist = BenchTest("winding sticks", "twist", limits.twist_over(long, width=wide), over=long)
    flat = BenchTest(
        "straightedge along, across and corner to corner", "gap", limits.straight, over=long
    )
    square = BenchTest("square against the light", "gap", limits.square, over=thick)
    end = BenchTest("square from face and from edge", "gap", limits.square, over=wide)
    step = BenchTest("the four walls held together", "difference of the walls", limits.spread)
    thickness, width_test, length = (
        BenchTest(tool, axis, size, "size", off=off)
        for tool, axis, size, off in (
            ("callipers at both ends", "thickness", thick, limits.spread / 2),
            ("rule, and walls side by side", "width", wide, limits.size),
            ("rule, and its pair side by side", "length", part.cut_length.value, limits.size),
        )
    )
    rough = BenchTest("rule", "rough length", part.rough_length.value, "least")
    return {
        "crosscut": (rough,),
        "face": (twist, flat),
        "edge": (square, BenchTest("straightedge", "gap", limits.straight, over=long)),
        "thickness": (thickness, step) if part.name in WALLS else (thickness,),
        "width": (width_test,),
        "end": (end,),
        "length": (length, end),
        "smooth": (
            BenchTest("light from the side", "ridges", limits.ridge),
            thickness,
        ),
        "gauge": (twist,),
    }
