"""What is said of planing the joints flush: of the lap, the rim, the walls, and the lid's play."""

from __future__ import annotations

from collections.abc import Sequence

from toolkit.measures import Rule
from toolkit.results import GEOMETRY, Finding, Working, above, below
from toolkit.smoothing.customs import CUSTOMS, cite


def check_flushing(
    left: Sequence[Working], *, skim: float, rim_planed: float, rule: Rule
) -> list[Finding]:
    """The sizes that are left, each as made less what was planed off, to look at again. [mm]"""
    show, found = rule.exact, []
    usual = f"{show(CUSTOMS.flushing_least)} to {show(CUSTOMS.flushing_most)}"
    for row in left:
        if not above(row.value, 0.0):
            message = f"{show(row.terms[0].value)} less what is planed off leaves nothing."
            remedy = "Flush the joints with less, or make the wall thicker."
            found.append(
                Finding("wont_work", "planed-through", row.name, message, remedy, GEOMETRY)
            )
    if above(rim_planed, CUSTOMS.rim_planing_most):
        message = (
            f"{show(rim_planed)} planed off it in all is over {show(CUSTOMS.rim_planing_most)}: "
            "look again at the strip above the lid groove."
        )
        remedy, source = "Take what is uneven off the high places only.", cite("rim_planing_most")
        found.append(Finding("care", "rim-planed", "rim", message, remedy, source))
    if below(skim, CUSTOMS.flushing_least) or above(skim, CUSTOMS.flushing_most):
        where, remedy, source = "outside faces", f"Leave {usual}.", cite("flushing_most")
        message = (
            f"{show(skim)} off each is outside the usual {usual}: too little leaves joints proud, "
            "more goes off the lap."
        )
        found.append(Finding("care", "flushing-allowance", where, message, remedy, source))
    return found


def check_lid_play(play: float, *, rule: Rule) -> list[Finding]:
    """A lid so thin at its tongue that it rattles, from its play up and down. [mm]"""
    if not above(play, CUSTOMS.lid_play_most):
        return []
    message = (
        f"its tongue is {rule.exact(play)} thinner than the groove, over "
        f"{rule.exact(CUSTOMS.lid_play_most)}: the lid rattles and tips at the front."
    )
    remedy = (
        "Take the last shavings off the top of the lid, not off its tongue; a strip of veneer "
        "glued along the tongue brings it back."
    )
    return [Finding("care", "lid-rattles", "lid", message, remedy, cite("lid_play_most"))]


def well_flushed(left: Sequence[Working], *, skim: float, rule: Rule) -> Finding:
    """The sizes that are left where nothing is wrong with them. [mm]"""
    sizes = ", ".join(f"{row.name} {rule.exact(row.value)}" for row in left)
    message = f"{rule.exact(skim)} off each leaves {sizes}."
    return Finding("good", "good-flushing", "outside faces", message, "", cite("flushing_most"))
