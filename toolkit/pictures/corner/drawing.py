"""A corner set out: the tail board's inside face beside the pin board's end grain."""

from __future__ import annotations

from toolkit.pictures.corner.boards import BODY, Joint, draw_pin_board, draw_tail_board
from toolkit.pictures.corner.faults import draw_faults
from toolkit.pictures.corner.sizes import (
    groove_row,
    groove_words,
    line_words,
    pin_rows,
    tail_rows,
    titles,
)
from toolkit.pictures.kit import PartView, Picture, Sheet, Slot, still_scale
from toolkit.pictures.kit.notes import not_right, nothing, unit_words
from toolkit.plan import Plan
from toolkit.results import Spot
from toolkit.shape import Which

# What is said of a corner, in this order.
_SPOTS: tuple[Spot, ...] = (
    "lap", "socket", "pin", "half pin", "tail tip", "groove at lap", "groove side",
    "tail corners", "tail", "rim",
)  # fmt: skip


def sentence(plan: Plan, j: Joint) -> str:
    """What the picture of one corner shows, in the student's own units."""
    show, corner = plan.choices.rule.show, j.corner
    where = f"{j.which.capitalize()} corners"
    if not corner.tails:
        return (
            f"{where}: {corner.asked} tails find no room in "
            f"{show(max(j.tail_board.height, 0.0))} of height."
        )
    narrow, wide = (show(pick(tail.width for tail in corner.tails)) for pick in (min, max))
    tails = narrow if narrow == wide else f"{narrow} to {wide}"
    count = len(corner.tails)
    kind = "through joint" if j.through else f"lap {show(j.lap)}"
    words = [
        f"{where}: {count} tail{'s' if count > 1 else ''} of {tails} at the baseline and "
        f"{show(j.tail_length)} long, {kind}"
    ]
    if corner.whole_pins:
        words.append(f"pins {show(max(corner.narrowest_pin, 0.0))} at their narrow face")
    text = ", ".join(words) + "."
    wrong = not_right(plan.wrong(*_SPOTS, corner=j.which))
    return " ".join([text, *_grooves(plan, j)]) + wrong


def _grooves(plan: Plan, j: Joint) -> list[str]:
    show, rows = plan.choices.rule.show, []
    inside = []
    for fit in plan.design.fits:
        if fit.corner == j.which and fit.margins is not None:
            inside.append(f"the {fit.groove} groove {show(min(fit.margins))}")
    if inside:
        rows.append(f"Inside its tail: {' and '.join(inside)}.")
    for hole in j.holes:
        rows.append(
            f"The {hole.groove} groove leaves a hole of {show(hole.height, unit=False)} × "
            f"{show(hole.depth)} in the {hole.face}."
        )
    if not j.holes:
        rows.append("No groove shows outside.")
    return rows


HEIGHT = 356.0
BOTTOM = 86.0
# Where baseline and inside face lie on the sheet, with the tails to the left and to the right. [pt]
BASELINE = {1: 112.0, -1: 196.0}
INSIDE = {1: 378.0, -1: 348.0}
# Room for the boards' height, the pin board's thickness and the tails. [pt]
ROOMS = (235.0, 72.0, 58.0)


def _scale(j: Joint, kept: float | None = None) -> float:
    sizes = (j.wall_height, j.pin_board.thickness, j.reach)
    return still_scale(*zip(sizes, ROOMS, strict=True), kept=kept)


def corner_picture(
    plan: Plan,
    *,
    which: Which = "back",
    ghost: Plan | None = None,
    left_handed: bool | None = None,
) -> Picture:
    """Draw one corner as it is set out.

    The scale is a step of a coarse ladder, and baseline, inside face and bottom edge have fixed
    places, so that a slider moves one thing at a time. With a ghost the ghost's scale is kept
    for as long as the drawing fits.

    Parameters
    ----------
    plan : Plan
        The box. [mm]
    which : str
        ``"back"`` or ``"front"``.
    ghost : Plan, optional
        An earlier state, drawn thinly behind. [mm]
    left_handed : bool or None
        Whether left and right are changed about, as the boards lie before a left-handed maker;
        None for the box's own maker.

    Returns
    -------
    Picture
        Both boards in true proportion, with the sentence that says what they show.

    Raises
    ------
    ValueError
        There is no such corner.

    Source
    ------
    The plan. Lines and dimensions after ISO 128 and ISO 129-1.
    """
    j = Joint.of(plan, which, left_handed=left_handed)
    before = Joint.of(ghost, which, left_handed=left_handed) if ghost is not None else None
    if before is not None and before.on_ends != j.on_ends:
        before = None
    if min(j.wall_height, j.tail_board.height, j.pin_board.height, j.pin_board.thickness) <= 0:
        return nothing(sentence(plan, j), height=HEIGHT)
    scale = _scale(j, _scale(before) if before is not None else None)
    sheet = Sheet(scale=scale, height=HEIGHT)
    tail_view = PartView(sheet, BASELINE[j.turn], BOTTOM, scale, j.turn)
    pin_view = PartView(sheet, INSIDE[j.turn], BOTTOM, scale, -j.turn)
    if before is not None:
        draw_tail_board(tail_view, before, ghost=True)
        draw_pin_board(pin_view, before, ghost=True)
    draw_tail_board(tail_view, j)
    draw_pin_board(pin_view, j)
    _neighbours(tail_view, pin_view, plan, j)
    titles(tail_view, pin_view, j)
    unit_words(sheet, rule=plan.choices.rule, ghost=before is not None)
    if j.corner.tails:
        tail_rows(tail_view, plan, j)
        groove_words(pin_view, plan, j)
    groove_row(tail_view, plan, j)
    pin_rows(pin_view, plan, j)
    line_words(tail_view, j)
    draw_faults(tail_view, pin_view, plan, j)
    return sheet.picture(sentence(plan, j))


def _neighbours(tail_view: PartView, pin_view: PartView, plan: Plan, j: Joint) -> None:
    """What stands above the low front: the lid over its tail board, the ear over its pin board."""
    d = plan.design
    lid = d.sliding_lid
    if j.which == "back" or lid is None:
        return
    if j.front_lap is not None:
        view, low, high = pin_view, j.pin_board.height, j.wall_height
        view.line(
            "beside",
            (0.0, low),
            (0.0, high),
            (j.pin_board.thickness, high),
            (j.pin_board.thickness, low),
        )
        middle = view.at(j.pin_board.thickness / 2, (low + high) / 2)
        words = "ear of the side"
        away = Slot(view.across(j.pin_board.thickness) + 6.0, middle[1] - 3.4)
        view.sheet.write(words, [away], rank=3)
        return
    view, far = tail_view, BODY / tail_view.scale
    edge = -(lid.width.value - d.frame.inside_width.value) / 2
    low, high = lid.low, lid.high
    view.line("beside", (far, low), (edge, low), (edge, high), (far, high))
    middle = view.at(far / 2, (low + high) / 2)
    view.sheet.write("lid", [Slot(middle[0], middle[1] - 3.4, "center")], rank=3, at=middle)
