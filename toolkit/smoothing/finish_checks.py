"""What an experienced maker would say of a finish before the lid of its tin is off.

Local rules and the shop's licensed or insured practice come first.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from toolkit.results import CUSTOM, Finding, one_of
from toolkit.smoothing.finish import spreads

LOCAL = "Local rules and the shop's licensed or insured practice come first."
OILS = ("oil", "thinned oil")
_TURPENTINE = ("thinned oil", "wax")


@dataclass(frozen=True, slots=True)
class FinishPlan:
    """The finishes of a box in the order in which they are laid on; none for bare wood."""

    outside: tuple[str, ...] = ("shellac", "wax")
    inside: tuple[str, ...] = ("shellac",)


def check_finish(plan: FinishPlan) -> tuple[Finding, ...]:
    """Everything there is to say of a finish for a box. Rags: the fire authorities (NFPA)."""
    for name in (*plan.outside, *plan.inside):
        one_of(name, name="finish", allowed=[row.finish for row in spreads()])
    found = [
        *_order("outside", plan.outside),
        *_order("inside", plan.inside),
        *_inside(plan),
    ]
    if not found:
        found.append(
            Finding(
                "good",
                "good-finish",
                "finish",
                f"{_coats(plan.outside)} outside, {_coats(plan.inside)} inside: in an order that "
                "holds, and nothing in the grooves.",
                "",
                CUSTOM,
            )
        )
    return (*found, *_cautions(plan))


def _coats(names: Sequence[str]) -> str:
    return ", then ".join(names) if names else "bare wood"


def _order(where: str, names: Sequence[str]) -> list[Finding]:
    if "wax" not in names:
        return []
    after = names[names.index("wax") + 1 :]
    buried = [name for name in after if name != "wax"]
    if not buried:
        return []
    return [
        Finding(
            "wont_work",
            "finish-over-wax",
            where,
            f"{buried[0]} does not hold on wax: it stays soft or flakes off.",
            "Wax last, once everything under it is hard.",
            CUSTOM,
        )
    ]


def _inside(plan: FinishPlan) -> list[Finding]:
    found = []
    oils = [name for name in plan.inside if name in OILS]
    if oils:
        found.append(
            Finding(
                "care",
                "oil-beside-paper",
                "inside",
                f"{oils[0]} marks paper and smells for months in a shut box.",
                "Use shellac inside, or leave it bare; wax only its edges.",
                CUSTOM,
            )
        )
    if plan.outside and not plan.inside:
        found.append(
            Finding(
                "care",
                "one-side-bare",
                "lid and bottom",
                "finished on one face only, that face takes up damp more slowly than the bare one, "
                "and the panel cups with the weather.",
                "Give both faces of lid and bottom the same coats.",
                CUSTOM,
            )
        )
    return found


def _cautions(plan: FinishPlan) -> list[Finding]:
    names = {*plan.outside, *plan.inside}
    found = []
    if names & set(OILS):
        found.append(
            Finding(
                "care",
                "oily-rags",
                "rags",
                "cloths wet with a drying oil heat up by themselves and can catch fire.",
                "Spread each one flat and alone outdoors to dry, or drown it in water in a lidded "
                f"metal can. {LOCAL}",
                "fire authorities' advice (NFPA), in the workbook's own words",
            )
        )
    if names & set(_TURPENTINE) or "shellac" in names:
        solvents = []
        if "shellac" in names:
            solvents.append("alcohol")
        if names & set(_TURPENTINE):
            solvents.append("turpentine")
        warm = " Never warm wax and turpentine over a flame." if "wax" in names else ""
        found.append(
            Finding(
                "care",
                "solvents",
                "air",
                f"{' and '.join(solvents)} fumes burn and make heads ache.",
                f"Open the windows, keep flames away, wear gloves.{warm} {LOCAL}",
                CUSTOM,
            )
        )
    return found
