"""What an experienced maker would say of a finish and of joints planed flush."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from toolkit.measures import Rule
from toolkit.results import Finding, Findings, Working, above, below, one_of
from toolkit.smoothing.customs import CUSTOMS, cite
from toolkit.smoothing.finish import spreads

OILS = ("oil", "thinned oil")
SOLVENTS = {"alcohol": ("shellac",), "turpentine": ("thinned oil", "wax")}


@dataclass(frozen=True, slots=True)
class FinishPlan:
    """The finishes of a box in the order in which they are laid on; none for bare wood."""

    outside: tuple[str, ...] = ("shellac", "wax")
    inside: tuple[str, ...] = ("shellac",)


def check_finish(plan: FinishPlan) -> tuple[Finding, ...]:
    """Everything there is to say of a finish for a box. Rags: the fire authorities (NFPA)."""
    names = (*plan.outside, *plan.inside)
    for name in names:
        one_of(name, name="finish", allowed=[row.finish for row in spreads()])
    found, sides = (
        Findings("smoothing/findings.csv"),
        {"outside": plan.outside, "inside": plan.inside},
    )
    for side, coats in sides.items():
        after = coats[coats.index("wax") :] if "wax" in coats else ()
        if buried := [name for name in after if name != "wax"]:
            found.say("finish-over-wax", where=side, buried=buried[0])
    if oils := [name for name in plan.inside if name in OILS]:
        found.say("oil-beside-paper", oil=oils[0])
    if plan.outside and not plan.inside:
        found.say("one-side-bare")
    if not found:
        words: dict[str, Any] = {
            side: ", then ".join(coats) or "bare wood" for side, coats in sides.items()
        }
        found.say("good-finish", **words)
    if set(names) & set(OILS):
        found.say("oily-rags")
    if solvents := [name for name, used in SOLVENTS.items() if set(used) & set(names)]:
        warm = " Never warm wax and turpentine over a flame." if "wax" in names else ""
        found.say("solvents", solvents=" and ".join(solvents), warm=warm)
    return tuple(found)


def _said(rule: Rule) -> Findings:
    return Findings("smoothing/findings.csv", write=rule.exact, cite=cite, customs=CUSTOMS)


def check_flushing(
    left: Sequence[Working], *, skim: float, rim_planed: float, rule: Rule, shy: float = 0.0
) -> list[Finding]:
    """The sizes that are left, each as made less what was planed off, to look at again. [mm]

    ``shy`` is how far end grain ends below the faces that are planed down to it.
    """
    found = _said(rule)
    for row in left:
        if not above(row.value, 0.0):
            found.say("planed-through", where=row.name, all=row.terms[0].value)
    if below(skim, shy):
        found.say("end-grain-shy", shy=shy, left=shy - skim)
    if above(rim_planed, CUSTOMS.rim_planing_most):
        found.say("rim-planed", rim_planed=rim_planed)
    if below(skim, CUSTOMS.flushing_least) or above(skim, CUSTOMS.flushing_most):
        found.say("flushing-allowance", skim=skim)
    return found


def check_lid_play(play: float, *, rule: Rule) -> list[Finding]:
    """A lid so thin at its tongue that it rattles, from its play up and down. [mm]"""
    found = _said(rule)
    return found.say("lid-rattles", play=play) if above(play, CUSTOMS.lid_play_most) else found


def well_flushed(left: Sequence[Working], *, skim: float, rule: Rule) -> Finding:
    """The sizes that are left where nothing is wrong with them. [mm]"""
    sizes = ", ".join(f"{row.name} {rule.exact(row.value)}" for row in left)
    return _said(rule).say("good-flushing", skim=skim, sizes=sizes)[0]
