"""Coarse, medium, fine: which plane takes off how much, whether ridges show, shavings and time.

The coarse plane stops while its troughs still lie above the line, one ridge of its own and one of
the next plane's. The next takes that ridge off, and leaves its own for the last.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil
from typing import TYPE_CHECKING

from toolkit.planes import PLANES, Plane
from toolkit.results import above, above_zero, not_negative
from toolkit.truing.strokes import Strokes, least_strokes

if TYPE_CHECKING:
    from toolkit.measures import Rule


@dataclass(frozen=True, slots=True)
class Clearing:
    """One plane's ridges under the passes of the next. [mm]"""

    ridge: float
    after: Plane
    passes: int
    taken: float  # off the ridges by those passes
    needed: int  # passes until no trough of the first plane is left

    @property
    def shows(self) -> bool:
        """Whether something of the first plane's scallops will still show."""
        return above(self.ridge, self.taken)

    def sentence(self, rule: Rule) -> str:
        """Whether the scallops show, in words."""
        of = f"Ridges of {rule.fine(self.ridge)}, and {rule.fine(self.taken)} off with the"
        times = f"{self.passes} {'pass' if self.passes == 1 else 'passes'}"
        if self.shows:
            return (
                f"{of} {self.after.name} in {times}: scallops will show through. It takes "
                f"{self.needed} passes to plane them away."
            )
        return f"{of} {self.after.name} in {times}: no scallop is left."


def clearing(ridge: float, *, after: Plane, width: float, passes: int) -> Clearing:
    """Whether one plane's ridges show after the next plane's passes. [mm]

    Scallops are gone when as much is taken off as the ridges were high.
    """
    not_negative(ridge, name="ridge", example="0.16")
    above_zero(width, name="width", example="64")
    laid = least_strokes(after, width=width, remove=max(ridge, after.shaving))
    needed = ceil(ridge / laid.net_drop * (1 - 1e-9))
    return Clearing(float(ridge), after, passes, laid.net_drop * passes, needed)


@dataclass(frozen=True, slots=True)
class PlaningJob:
    """One face planed down by one plane after another, coarse to fine. [mm]"""

    strokes: tuple[Strokes, ...]
    length: float
    width: float
    remove: float

    @property
    def count(self) -> int:
        """Strokes of all planes together. [1]"""
        return sum(row.strokes for row in self.strokes)

    @property
    def volume(self) -> float:
        """Wood that turns into shavings. [mm³]"""
        return self.length * self.width * self.remove

    def sentence(self, rule: Rule) -> str:
        """The strokes plane by plane, in words."""
        said = ", ".join(
            f"{row.strokes} with the {row.plane.name} for {rule.fine(row.remove)}"
            for row in self.strokes
        )
        return (
            f"{rule.exact(self.remove)} off a face {rule.exact(self.width)} wide: {said}; "
            f"{self.count} full strokes in all."
        )


def planing_job(
    remove: float, *, length: float, width: float, planes: Sequence[Plane] = PLANES
) -> PlaningJob:
    """Share the wood to come off a face among planes, coarse to fine. [mm]

    Each plane takes off the ridge that the one before it left; a plane with nothing to do is left
    out. Which plane for which job: common practice, no source.
    """
    above_zero(remove, name="remove", example="3.5")
    above_zero(length, name="length", example="190")
    above_zero(width, name="width", example="64")
    # From the last plane back: what each leaves for the next is one ridge of its own.
    for first in range(len(planes)):
        shares = _shares(remove, width, planes[first:])
        if shares is not None:
            return PlaningJob(shares, float(length), float(width), float(remove))
    # Less than one ridge of the coarser planes: the finest alone.
    last = least_strokes(planes[-1], width=width, remove=remove)
    return PlaningJob((last,), float(length), float(width), float(remove))


def _shares(remove: float, width: float, planes: Sequence[Plane]) -> tuple[Strokes, ...] | None:
    """Strokes of each plane, or None when too little comes off for the first to begin."""
    coarse = remove
    for _ in range(3):  # the best number of tracks hangs on how much is left for it, hardly
        first = least_strokes(planes[0], width=width, remove=coarse)
        later: list[Strokes] = []
        before = first
        for plane in planes[1:]:
            before = least_strokes(plane, width=width, remove=before.ridge)
            later.append(before)
        coarse = remove - sum(row.remove for row in later)
        if coarse <= 0:
            return None
    first = least_strokes(planes[0], width=width, remove=coarse)
    return (first, *later)
