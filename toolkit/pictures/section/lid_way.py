"""The lid on its way: home, half in, out; the box cut along at mid-width."""

from __future__ import annotations

from toolkit.box import Panel, droop, held
from toolkit.pictures.kit import PartView, Picture, Sheet, Slot, still_scale
from toolkit.pictures.kit.dimensions import Dimension, level, upright
from toolkit.pictures.kit.notes import figures, not_right, nothing, title, unit_words
from toolkit.pictures.section.along import far_side
from toolkit.pictures.section.cut import along_faults, drawable, front_faults, lay, lay_ghost
from toolkit.plan import Plan
from toolkit.results import below
from toolkit.shape import CutPart, cut_along

HEIGHT = 262.0
BOTTOM = 96.0
LEFT = 62.0
# Room for the box with its lid wholly out, and for its height. [pt]
ROOMS = (420.0, 118.0)


def _cuts(plan: Plan, out: float) -> list[CutPart]:
    return [
        CutPart(cut.name, tuple((x + out, z) for x, z in cut.points), cut.end_grain)
        if cut.name == "lid"
        else cut
        for cut in cut_along(plan.design)
    ]


def lid_picture(
    plan: Plan,
    *,
    out: float,
    ghost: Plan | None = None,
    ghost_out: float = 0.0,
) -> Picture:
    """Draw the box cut along at mid-width with its lid some way out, its back to the left.

    Scale and place are those of a lid wholly out, so that nothing but the lid moves with it.

    Parameters
    ----------
    plan : Plan
        A box with a sliding lid. [mm]
    out : float
        How far the lid is drawn out, from 0 for home. [mm]
    ghost : Plan, optional
        An earlier state, drawn thinly behind. [mm]
    ghost_out : float
        How far the lid of the ghost is out. [mm]

    Returns
    -------
    Picture
        Walls, bottom and lid in true proportion.

    Raises
    ------
    ValueError
        The lid does not slide, or is said to be out by less than nothing or more than it is long.

    Source
    ------
    The plan. Lines and dimensions after ISO 128 and ISO 129-1.
    """
    d = plan.design
    f, lid = d.frame, d.sliding_lid
    if lid is None or f.lid_floor is None:
        says = d.choices.lid.closure.says
        raise ValueError(f"{says}: give a box whose lid slides")
    if not 0 <= out <= lid.length.value * (1 + 1e-6):
        raise ValueError(
            f"the lid was said to be {out:g} mm out: give from 0 for home to "
            f"{lid.length.value:g}, its length"
        )
    words = _sentence(plan, out)
    if not drawable(plan):
        return nothing(words, height=HEIGHT)
    scale = _scale(plan)
    sheet = Sheet(scale=scale, height=HEIGHT)
    view = PartView(sheet, LEFT, BOTTOM, scale)
    if ghost is not None and ghost.design.sliding_lid is not None:
        lay_ghost(view, _cuts(ghost, ghost_out))
    far_side(view, plan)
    lay(view, _cuts(plan, out), heart={"back end": 172.0, "front end": 8.0})
    _dimensions(view, plan, lid, out=out, floor=f.lid_floor.value)
    if out > 0:
        front_faults(view, plan)
    else:
        along_faults(view, plan)
    title(sheet, "section along, back to the left", x=LEFT + ROOMS[0] / 2, y=BOTTOM - 74.0)
    unit_words(sheet, rule=plan.choices.rule, ghost=ghost is not None)
    return sheet.picture(words)


def _scale(plan: Plan) -> float:
    f, lid = plan.design.frame, plan.design.lid
    long = f.outside_length.value + lid.length.value
    return still_scale((long, ROOMS[0]), (max(f.wall_height.value, 1.0) + 4.0, ROOMS[1]))


def _dimensions(view: PartView, plan: Plan, lid: Panel, *, out: float, floor: float) -> None:
    show, f, sheet = figures(plan), plan.design.frame, view.sheet
    long, high = f.outside_length.value, f.wall_height.value
    stops, steps = [long - lid.length.value, long], [Dimension(f"lid {show(lid.length.value)}", 1)]
    if out > 0:
        still = held(plan.design, out=out)
        stops, steps = [long - still, long], [Dimension(f"held {show(still)}", 1)]
        if still <= 0:
            stops, steps = [long], []
        stops.append(long + out)
        steps.append(Dimension(f"out {show(out)}", 1))
    level(view, stops, *steps, start=view.up(max(high, lid.high)), off=16.0)
    upright(view, (0.0, high), Dimension(show(high), 1), start=view.across(0.0), off=-14.0, side=-1)
    level(view, (0.0, long), Dimension(show(long), 2), start=view.up(0.0), off=-18.0, side=-1)
    front = view.across(long)
    high = f.front_height.value
    sheet.write(
        f"front {show(high)} high,\nfloor of the lid groove {show(floor)}",
        [Slot(front + 10.0, view.up(high * share)) for share in (0.55, 0.4, 0.25)],
        rank=1,
        at=(front - 3.0, view.up(high * 0.4)),
        kind="size",
    )
    x, top = view.across(f.outside_length.value / 2), view.up(plan.design.bottom.high)
    sheet.write("bottom", [Slot(x, top + 8.0, "center")], rank=3, at=(x, top - 3.0))


def _sentence(plan: Plan, out: float) -> str:
    show, lid, f = plan.choices.rule.show, plan.design.lid, plan.design.frame
    inside, hang = held(plan.design, out=out), droop(plan.design, out=out)
    if out <= 0:
        where = "The lid is home, its front end flush with the front of the box."
    elif inside <= 0 or hang is None:
        where = "The lid is out of its grooves."
    else:
        where = (
            f"The lid is {show(out)} out and {show(inside)} of it is still in its grooves; by its "
            f"play its front end hangs {plan.choices.rule.exact(round(hang, 2))}."
        )
    gap = (f.lid_floor.value if f.lid_floor else 0.0) - f.front_height.value
    if below(gap, 0.0):
        goes = f"The front stands {show(-gap)} over the floor of the lid groove."
    else:
        goes = f"It goes over the front with {show(max(gap, 0.0))} to spare."
    text = f"{where} The lid is {show(lid.length.value)} long. {goes}"
    return text + not_right(plan.wrong("front edge", "lid end", "lid top", "underside"))
