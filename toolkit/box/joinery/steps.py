"""A step at the bench: what to do, and the test to pass before going on."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from toolkit.results import Table


@dataclass(frozen=True, slots=True)
class BenchStep:
    """One step in its order, with the test that tells whether to go on."""

    title: str
    do: str
    test: str

    @property
    def sentence(self) -> str:
        """The step as prose, its test last."""
        return f"{self.title}: {self.do} Test: {self.test}"


def step_table(steps: Iterable[BenchStep], *, title: str) -> Table:
    """Steps as a numbered table: what to do, and the test before going on."""
    rows = tuple(
        (str(number), step.title, step.do, step.test) for number, step in enumerate(steps, start=1)
    )
    return Table(title, ("no.", "step", "do", "test before you go on"), rows, numeric=(0,))
