"""A lid that binds or rattles."""

from __future__ import annotations

from toolkit.plan.rescue.option import Case, Costs


def lid_tight(case: Case) -> None:
    """The lid binds."""
    lid = case.plan.part("lid")
    words = (
        "Slide it in as far as it goes and look for the shiny places: plane those, a shaving at a "
        f"time, but its width not under {case.show(lid.width.value)}."
    )
    case.offer("shiny", words, Costs(minutes=10))
    words = "Candle wax in the grooves, last of all: on a lid that still binds it hides the place."
    case.offer("wax", words, Costs(minutes=12))
    words = (
        "Push a thin straight strip along the lid grooves: glue that was squeezed out is pared "
        "away with a chisel."
    )
    case.offer("glue", words, Costs(minutes=5))


def lid_play(case: Case) -> None:
    """The lid's side play is another than meant."""
    if case.off < 0:
        lid_tight(case)
        return
    if case.as_meant():
        return
    width = case.plan.part("lid").width.value - case.off
    words = "Leave it: the lid slides more loosely. See what is said of the dry season."
    case.offer("leave", words, Costs(), {"made.lid_width": width})
    words = "Glue a strip of the same wood, grain alike, to an edge that the groove hides."
    case.offer("strip", words, Costs(minutes=20, looks=1, wait=60))
    case.new_part("lid", 60)


def lid_rattle(case: Case) -> None:
    """The lid's tongue is thinner, or the groove wider, than meant."""
    if case.off < 0:
        lid_tight(case)
        return
    if case.as_meant():
        return
    words = "Leave it: it rattles, and holds."
    case.offer("leave", words, Costs(looks=1), {"panels.lid_tongue": case.mishap.measured})
    words = f"Glue a shim of veneer, {case.show(case.off)} thick, into the roof of the lid grooves."
    case.offer("shim", words, Costs(minutes=20, looks=1, wait=60))
    case.new_part("lid", 60)
