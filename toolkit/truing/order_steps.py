"""The steps from a rough board to a part ready for its joints, and what each must wait for."""

from __future__ import annotations

from dataclasses import dataclass

from toolkit.results import read_table


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
    "clean", "crosscut", "face", "edge", "end", "length", "width", "thickness", "smooth", "gauge",
)  # fmt: skip
THICKNESS_FIRST: tuple[str, ...] = (
    "clean", "crosscut", "face", "edge", "thickness", "width", "end", "length", "smooth", "gauge",
)  # fmt: skip
ORDERS = {"ends first": ENDS_FIRST, "thickness first": THICKNESS_FIRST}
