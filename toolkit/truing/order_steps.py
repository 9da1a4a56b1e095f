"""The steps from a rough board to a part ready for its joints, and what each must wait for."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

# What happens when a step comes too early: the work is spoilt, or only more of it is done.
Weight = Literal["must", "wise"]


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
    weight: Weight = "must"


STEPS: tuple[WorkStep, ...] = (
    WorkStep("clean", "clean the board", "Brush off grit and pull out every staple and nail."),
    WorkStep(
        "crosscut", "crosscut it rough", "Saw the board to its rough length before planing it."
    ),
    WorkStep(
        "face",
        "true the face",
        "Plane one face flat and out of winding, coarse, then medium; pencil the face mark on it.",
    ),
    WorkStep(
        "edge",
        "true the edge",
        "Plane one edge straight and square to the face; pencil the edge mark against the face's.",
    ),
    WorkStep(
        "thickness",
        "plane to thickness",
        "Gauge all round from the face and plane the other face to the line.",
    ),
    WorkStep(
        "width", "plane to width", "Gauge both faces from the edge, saw near it, plane to the line."
    ),
    WorkStep(
        "end", "square one end", "Knife it round from face and edge, saw, and plane to the knife."
    ),
    WorkStep(
        "length",
        "cut to length",
        "Measure from the squared end, knife it round, saw, and plane; its pair from this one.",
    ),
    WorkStep(
        "smooth",
        "smooth the inside faces",
        "Take the last fine shavings off every face that will be inside the box.",
    ),
    WorkStep(
        "gauge",
        "gauge the joints",
        "Set both gauges to the boards as they now are, and gauge the lines of the joints.",
    ),
)

NEEDS: tuple[Need, ...] = (
    Need("clean", "crosscut", "grit blunts the saw", "wise"),
    Need("clean", "face", "grit and metal ruin a plane iron", "wise"),
    Need(
        "crosscut",
        "face",
        "a long board holds far more warp than the piece that is wanted, and all of it would be "
        "planed off",
        "wise",
    ),
    Need(
        "face", "edge", "the square is held against the face, and shows nothing from a warped one"
    ),
    Need("face", "thickness", "the gauge runs on the face and copies its warp"),
    Need("edge", "width", "the gauge runs on the edge and copies its bends"),
    Need("edge", "end", "the end is squared from face and edge"),
    Need("end", "length", "the length is measured from the squared end"),
    Need(
        "thickness",
        "smooth",
        "planing to thickness goes on cutting what was smooth",
        "wise",
    ),
    Need(
        "smooth",
        "gauge",
        "smoothing afterwards thins the boards under lines already gauged, and the joint gapes",
    ),
    Need("thickness", "gauge", "both gauges are set by the thickness of the boards"),
    Need("width", "gauge", "tails are set out over the width"),
    Need("length", "gauge", "the joint lines are gauged from the ends"),
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
