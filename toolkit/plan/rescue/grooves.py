"""Grooves that wandered, or came out too wide, too narrow, too deep or too shallow."""

from __future__ import annotations

from typing import Any

from toolkit.plan.rescue.mishap import PANELS
from toolkit.plan.rescue.option import Case, Costs
from toolkit.plan.rescue.walls import NEW_PART


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
    if case.mishap.what != "groove_depth" or case.off > 0:
        case.new_part("wall", NEW_PART[case.mishap.reached])


def _strip(case: Case) -> None:
    words = "Glue a long-grain strip into the groove, plane it flush and plough again."
    case.offer("strip", words, Costs(minutes=25, looks=1, wait=60))


def _wandered(case: Case, edge: str) -> None:
    made, meant = case.mishap.measured, case.meant or 0.0
    grooved = case.mishap.had("grooved")
    if not grooved:
        words = (
            f"Set the fence to {case.show(made)} for the other walls too: the grooves meet, and "
            "the panel sits where they are."
        )
        case.offer("follow", words, Costs(minutes=3), {f"made.{edge}": made})
    old = case.plan.design.choices.groove.width or 0.0
    wide = old + abs(case.off)
    both: dict[str, Any] = {"made.groove_width": wide, f"made.{edge}": min(made, meant)}
    words = (
        f"Widen the grooves to {case.show(wide)}, to take in both where it is and where it was "
        "meant, and fit thicker tongues. The plan has one width for lid and bottom; widen only "
        "the grooves of this panel if you can keep the two apart."
    )
    case.offer("widen", words, Costs(minutes=30 if grooved else 20), both)
    _strip(case)


def _wide(case: Case) -> None:
    made = case.mishap.measured
    if case.off < 0:
        words = f"Plough or pare on to {case.show(case.meant or 0.0)}."
        case.offer("plough-on", words, Costs(minutes=10))
        words = "Leave it, and fit thinner tongues to it."
        case.offer("leave", words, Costs(minutes=5), {"made.groove_width": made})
        return
    words = "Fit thicker tongues to it; the plan has one width for all grooves."
    case.offer("thicker-tongue", words, Costs(minutes=10), {"made.groove_width": made})
    words = f"Glue a shim of {case.show(case.off)} of the same wood into the groove's roof."
    case.offer("shim", words, Costs(minutes=20, looks=1, wait=60))


def _deep(case: Case) -> None:
    made, meant = case.mishap.measured, case.show(case.meant or 0.0)
    if case.off < 0:
        case.offer("plough-on", f"Plough on to {meant}.", Costs(minutes=8))
        words = "Leave it, plough the others to it, and cut the panels narrower."
        case.offer("leave", words, Costs(minutes=3), {"made.groove_depth": made})
        return
    fact = {"made.groove_depth": made}
    if not case.mishap.had("fitted"):
        words = "Plough all grooves to it, and cut the panels wider."
        case.offer("follow", words, Costs(minutes=10), fact)
    panels = {
        f"made.{name}_{axis}": getattr(case.plan.part(name), axis).value
        for name in PANELS
        for axis in ("length", "width")
        if any(part.name == name for part in case.plan.parts)
    }
    words = "Leave the one that is too deep, and keep the panels as meant: they need no floor."
    case.offer("leave", words, Costs(), {**fact, **panels})
    _strip(case)
