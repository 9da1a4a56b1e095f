"""A lap that the chisel came through: mended, planed away, or made anew."""

from __future__ import annotations

from typing import Any

from toolkit.plan.mishaps.option import Case
from toolkit.results import WALLS


def half_blind(case: Case) -> None:
    if case.plan.design.choices.corner.joint != "half-blind":
        what = case.mishap.what
        raise ValueError(f"{what} belongs to a lapped joint, and this box has none")


def lap_through(case: Case) -> None:
    """The chisel came out through the lap."""
    half_blind(case)
    d, one = case.plan.design, case.mishap.part
    f, on_ends = d.frame, d.choices.corner.tails_on == "ends"
    pin_boards = ("left side", "right side") if on_ends else ("back end", "front end")
    if one and one not in pin_boards:
        raise ValueError(
            f"this box has no laps there: read {one!r}; type {' or '.join(pin_boards)}"
        )
    case.offer("chip")
    case.offer("patch")
    _laps_off(case)
    if on_ends:
        through = {"corner.joint": "through", "corner.lap": None, "corner.tail_length": None}
        through["groove.ends"] = "stopped"
        new = ("back_length", "front_length", "tail_length")
        inside = {"size.inside_width": f.inside_width.value, "size.outside_width": None}
        keys = [f"made.{key}" for key in new]
        # With no end made, nothing but the space inside tells how long the new ends are.
        made = any(getattr(case.plan.choices.made, key) is not None for key in new)
        without = tuple(key for key in case.facts if key in keys)
        anew: dict[str, Any] = dict.fromkeys(keys) if made else {}
        case.offer("through", {**through, **inside, **anew}, without=without, tail_boards="ends")
    case.new_part(one or ("side" if on_ends else "front"), 90)


def _laps_off(case: Case) -> None:
    """Plane the outside down to the tails' tips: of both pin boards, or of the one told."""
    d, one = case.plan.design, case.mishap.part
    f, on_ends = d.frame, d.choices.corner.tails_on == "ends"
    tail, pins = f.tail_back.value, ("side",) if on_ends else ("back", "front")
    changes: dict[str, Any] = {"corner.joint": "through", "corner.lap": None}
    changes |= {"corner.tail_length": None, "groove.ends": d.choices.groove.ends}
    changes |= {f"made.{name}_thickness": tail for name in pins}
    # The plane goes on to the tails' tips, so that no end grain stands proud any more.
    changes |= {f"made.{wall}_length": getattr(f, f"{wall}_length").value for wall in WALLS}
    changes["corner.proud"] = 0.0
    if not on_ends:
        # The plane takes the outside faces off, so that the box grows smaller by the laps.
        changes |= {"made.side_length": None, "size.inside_length": f.inside_length.value}
        changes["size.outside_length"] = None
    # What was ploughed right through a tail comes out of its tip, with no lap before it.
    after = case.after(changes).design
    tips = [hole for hole in after.holes if hole.cause == "tip"]
    boards = ("ends", "sides") if on_ends else ("sides", "ends")
    plugs = ""
    if tips and d.choices.groove.ends != "stopped":
        changes["groove.ends"] = "plugged"
        sizes = f"{case.show(tips[0].height)} × {case.show(tips[0].depth)}"
        plugs = (
            f" The grooves of the {boards[0]} then show as {sizes} holes, {len(tips)} to be "
            f"plugged in each that is planed; its own stay hidden."
        )
    minutes = 5 * len(tips) if plugs else 0
    if one:
        case.offer(
            "laps-off, one",
            tried=changes,
            costs={"minutes": 30 + minutes},
            part=one,
            tail=tail,
            lap=f.lap_back.value,
            smaller="narrower" if on_ends else "shorter",
            plugs=plugs,
        )
    costs = {"minutes": 60 + 2 * minutes, "looks": 2 if plugs else 1}
    pair = "the sides" if on_ends else "back and front"
    case.offer("laps-off", changes, costs=costs, pin_boards=pair, tail=tail, plugs=plugs)
