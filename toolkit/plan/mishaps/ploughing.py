"""Grooves that came out otherwise than meant."""

from __future__ import annotations

from toolkit.plan.mishaps.mishap import PANELS
from toolkit.plan.mishaps.option import Case
from toolkit.plan.mishaps.parts import NEW_PART


def grooves(case: Case) -> None:
    """Ways out for a groove."""
    if case.as_meant():
        return
    what = case.mishap.what
    if what == "groove_width":
        _wide(case)
    elif what == "groove_depth":
        _deep(case)
    else:
        _wandered(case, what)
    if what != "groove_depth" or case.off > 0:
        case.new_part("side or end", NEW_PART[case.mishap.reached])


def _wandered(case: Case, edge: str) -> None:
    made, grooved = case.mishap.measured, case.mishap.had("grooved")
    if not grooved:
        case.offer("follow, wandered", {f"made.{edge}": made})
    wide = (case.plan.design.choices.groove.width or 0.0) + abs(case.off)
    both = {"made.groove_width": wide, f"made.{edge}": min(made, case.meant or 0.0)}
    case.offer("widen", both, costs={"minutes": 30 if grooved else 20}, wide=wide)
    case.offer("strip, groove")


def _wide(case: Case) -> None:
    fact = {"made.groove_width": case.mishap.measured}
    if case.off < 0:
        case.offer("plough-on, narrow")
        case.offer("leave, narrow", fact)
    else:
        case.offer("thicker-tongue", fact)
        case.offer("shim, groove")


def _deep(case: Case) -> None:
    fact = {"made.groove_depth": case.mishap.measured}
    if case.off < 0:
        case.offer("plough-on")
        case.offer("leave, shallow", fact)
        return
    if not case.mishap.had("fitted"):
        case.offer("follow, deep", fact)
    panels = {
        f"made.{part.name}_{axis}": getattr(part, axis).value
        for part in case.plan.parts
        if part.name in PANELS
        for axis in ("length", "width")
    }
    case.offer("leave, deep", {**fact, **panels})
    case.offer("strip, groove")
