"""The grooves of a box as a table for the bench."""

from __future__ import annotations

from collections.abc import Mapping

from toolkit.box.design import Design
from toolkit.box.ploughing import SHAVING, Fence, Hand, fence, grooves_to_plough
from toolkit.measures import Rule
from toolkit.results import Table


def plough_table(
    design: Design, *, hand: Hand = "right", rises: Mapping[str, str] | None = None
) -> Table:
    """Every groove as a row for the bench; ``rises`` as for ``grooves_to_plough``."""
    rule, set_to = design.choices.rule, fence(design)
    rows, grooves = [], grooves_to_plough(design, hand=hand, rises=rises)
    words = {None: "not known: look at the edge", False: "with the grain", True: "against it"}
    for row in grooves:
        stops = ", ".join(f"{rule.show(left)} from the {end} end" for end, left in row.stops)
        rows.append(
            (
                f"{row.groove}, {row.wall}",
                f"{rule.show(row.fence)} from the {row.edge}",
                f"towards the {row.towards}",
                words[row.against],
                stops or "runs through",
            )
        )
    return Table(
        f"Ploughing, {hand}-handed plough",
        ("groove", "fence", "cut, inside face up", "run-out", "ends"),
        tuple(rows),
        note=_note(set_to, grooves[0].passes, rule, shown=design),
    )


def _note(set_to: Fence, passes: int, rule: Rule, *, shown: Design) -> str:
    depth = shown.choices.groove.depth or 0.0
    own = set_to.fenced_from == "each its own edge"
    start = f"Fence {'each groove from its own edge' if own else 'from the bottom edge'}"
    end = (
        f"{rule.show(depth)} deep is {passes} passes of {SHAVING:g} mm. Knife both walls of a "
        "groove that goes against the grain, start at the far end and work back."
    )
    if own:
        end = f"A wall's two grooves run opposite ways: one meets any run-out the wrong way. {end}"
    return f"{start}: {set_to.why} {end}"
