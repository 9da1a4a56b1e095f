"""Collects what the rules choose, each value with its reason, for ``defaults`` to tell."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from toolkit.box.change import key_at
from toolkit.measures import Rule
from toolkit.results import Chosen

Direction = Literal["nearest", "up", "down"]


@dataclass(slots=True)
class Chooser:
    """Collects each chosen value with its reason, rounded to a mark of the rule."""

    rule: Rule
    notes: list[Chosen]

    def pick(
        self,
        key: str,
        value: float,
        why: str = "",
        *,
        direction: Direction | None = "down",
        fineness: Literal["joints", "sizes"] = "joints",
    ) -> float:
        if direction is not None:
            value = self.rule.round(value, fineness=fineness, direction=direction)
        self.notes.append(Chosen(key, self.rule.exact(value), why or key_at(key).rule))
        return value
