"""The kit of each student: the rough parts to pack, on the student's own rule."""

from __future__ import annotations

from collections.abc import Mapping

from toolkit.classroom.shopping import rough_size
from toolkit.classroom.wood import parts_of, practice_stick
from toolkit.plan import Plan
from toolkit.results import Table, capital

TO_BUY = "to buy"


def kit(
    plan: Plan, *, whose: str, places: Mapping[str, str], practice: float = 0.0, remark: str = ""
) -> Table:
    """What is packed for one student."""
    rule = plan.choices.rule

    blanks = (*parts_of(plan, whose=whose), *practice_stick(plan, whose=whose, length=practice))
    rows = tuple(
        (
            blank.name.removeprefix(f"{whose}: "),
            rough_size(rule, length=blank.length, width=blank.width, thickness=blank.thickness),
            blank.wood,
            places.get(blank.name, TO_BUY),
            "",
        )
        for blank in blanks
    )
    return Table(
        capital(whose),
        ("part", "rough length × width × thickness", "wood", "from", "packed"),
        rows,
        note=f"Fingerprint {plan.fingerprint}. {remark}".strip(),
    )
