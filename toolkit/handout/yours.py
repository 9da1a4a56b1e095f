"""If yours measures otherwise: what each tenth of a millimetre changes, worked out anew."""

from __future__ import annotations

from toolkit.box import Choices
from toolkit.measures import MM_PER_INCH
from toolkit.plan import Plan, compare, plan
from toolkit.results import Table

# What is measured at the bench, and the choice that stands for it.
_MEASURED = {
    "sides thicker": "thickness.side",
    "ends thicker": "thickness.end",
    "groove deeper": "groove.depth",
    "groove farther from the bottom edge": "groove.bottom_edge",
    "lap thicker": "corner.lap",
}


def _more(choices: Choices, key: str, step: float) -> Choices | None:
    value = choices.value(key)
    if not value:
        return None
    follows = {"corner.tail_length": None} if key == "corner.lap" else {}
    return choices.having({key: value + step, **follows})


def if_yours_measures(made: Plan) -> Table:
    """What a tenth of a millimetre, or 1/128 in, more in one place changes elsewhere."""
    rule = made.choices.rule
    step = 0.1 if rule.units == "mm" else MM_PER_INCH / 128
    settled = made.design.choices
    rows = []
    for words, key in _MEASURED.items():
        changed = _more(settled, key, step)
        if changed is None:
            continue
        differs = compare(made, plan(changed)).changes
        moves = [
            f"{row.where} {'+' if row.amount > 0 else '−'} {rule.exact(abs(row.amount))}"
            for row in differs
            if row.amount
        ]
        rows.append((words, "; ".join(moves) or "nothing else"))
    return Table(
        f"For each {rule.exact(step)} more",
        ("if yours has", "these change"),
        tuple(rows),
        note="Twice as much changes twice as much. What exists already stays: measure it, write "
        "it into your box file under [made], and work the rest out again.",
    )
