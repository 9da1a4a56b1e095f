"""Every way out for a panel that swells tight or drops out, before it is proved."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Literal

from toolkit.box.choices import Change, Choices
from toolkit.box.design import Design, design
from toolkit.box.seasons import readings_between
from toolkit.box.window import Window, panel_of, widest_span, window
from toolkit.results import below
from toolkit.wood import MONTHS, species

Kind = Literal["clearance", "deeper groove", "narrower box", "rings", "species", "month"]
_RINGS = ((45.0, "rift-sawn"), (90.0, "quarter-sawn"))
_SPECIES_OFFERED = 2


def right(at: Window) -> bool:
    """Whether a panel suits both the damp and the dry as it is."""
    return not (at.tight or at.loose)


def _refitted(d: Design, name: str) -> Change | None:
    """The clearance, on a mark of the rule, that suits damp and dry; None where there is none."""
    at, made = window(d, panel=name), getattr(d.choices.made, f"{name}_width")
    wanted = d.choices.rule.round(at.least, fineness="joints", direction="up")
    if below(at.most, wanted):
        return None
    if made is None:
        return {f"panels.{name}_across": wanted}
    width = at.span - wanted
    # What is made can be planed narrower, and no wider.
    return {f"made.{name}_width": width} if below(width, made) else None


def _settled(choices: Choices, change: Change) -> Change | None:
    """The changes with clearances put right where they leave one wrong; None if that can't be."""
    changes, d = dict(change), design(choices.having(change))
    for name in (panel.name for panel in reversed(d.grooved)):
        at = window(d, panel=name)
        if not right(at):
            more = _refitted(d, name)
            if more is None:
                return None
            changes |= more
    return changes


def _deeper(choices: Choices, d: Design, name: str) -> Change | None:
    """The shallowest groove, on a mark of the rule, in which some clearance does for both."""
    rule, depth, at = choices.rule, d.choices.groove.depth, window(d, panel=name)
    if at.open and at.tight and getattr(choices.made, f"{name}_width") is None:
        return None  # a panel still to be made would be wider by both grooves, and as tight
    key = "made.groove_depth" if choices.made.groove_depth is not None else "groove.depth"
    step, walls = rule.mark("joints"), min(d.pin_board_thickness)
    tried = rule.round(depth, fineness="joints", direction="down")
    while below(tried + step, walls):
        tried = round(tried + step, 9)
        span = panel_of(d, name).widest + 2 * (tried - depth)
        if not below(depth, tried) or below(widest_span(d, panel=name, reach=tried), span):
            continue
        # Where its clearance is to blame, a groove that asks for another one too is no way out.
        changes: Change | None = {key: tried}
        if not at.open:
            changes = _settled(choices, {key: tried})
        elif not right(window(design(choices.having({key: tried})), panel=name)):
            changes = None
        if changes is not None:
            return changes
    return None


def _narrower(choices: Choices, d: Design, name: str) -> Change | None:
    """A box so narrow that the groove it has is deep enough."""
    rule, depth = choices.rule, d.choices.groove.depth
    place = "outside" if choices.size.outside_width is not None else "inside"
    walls = d.frame.outside_width.value - d.frame.inside_width.value if place == "outside" else 0
    # Clearances lie on marks of the rule: where the limits meet between two, a mark more does.
    for spare in (0.0, rule.mark("joints")):
        span = widest_span(d, panel=name, reach=depth, spare=spare)
        size = rule.round(span - 2 * depth + walls, fineness="sizes", direction="down")
        if not below(walls, size) or not below(size, getattr(d.frame, f"{place}_width").value):
            return None
        changes = _settled(choices, {f"size.{place}_width": size})
        if changes is not None:
            return changes
    return None


def ways_out(
    choices: Choices, d: Design, name: str, woods: Sequence[str]
) -> Iterator[tuple[Kind, str, Change | None]]:
    """Every way out with its words and changes, the least trouble first, before it is proved."""
    rule, at = choices.rule, window(d, panel=name)
    yield "clearance", "", _refitted(d, name) if at.open else None
    deeper = _deeper(choices, d, name)
    if deeper is not None:
        cut = rule.exact(next(value for key, value in deeper.items() if "depth" in key))
        was = rule.exact(d.choices.groove.depth or 0.0)
        yield "deeper groove", f"Plough every groove {cut} deep instead of {was}", deeper
    narrower = _narrower(choices, d, name)
    if narrower is not None:
        size, wide = next((k, v) for k, v in narrower.items() if k.startswith("size."))
        place = size.removeprefix("size.").partition("_")[0]
        yield "narrower box", f"Make the box {rule.exact(wide)} wide {place}", narrower
    for turn, words in _RINGS:
        if turn > choices.wood.rings:
            yield "rings", f"Use {words} wood", _settled(choices, {"wood.rings": turn})
    names = [panel.name for panel in reversed(d.grooved)]
    ill = [one for one in names if one == name or not right(window(d, panel=one))]
    offered = 0
    for wood in woods:
        if offered == _SPECIES_OFFERED or wood == species(getattr(choices.wood, name)).name:
            continue
        changes = _settled(choices, {f"wood.{one}": wood for one in ill})
        if changes is not None:
            offered += 1
            yield "species", f"Make the {' and the '.join(ill)} of {wood}", changes
    for month in _months(choices, d, name):
        room = readings_between(choices.rooms)[month]
        words = f"Fit it in {MONTHS[month]}, its wood settled to {room.humidity:.0f} % humidity"
        yield "month", words, {"rooms.make": room}


def _months(choices: Choices, d: Design, name: str) -> tuple[int, ...]:
    """The month nearest in moisture to the bench in which the panel as it is would do."""
    good = []
    for month, room in enumerate(readings_between(choices.rooms)):
        there = design(d.choices.having({"rooms.make": room}))
        at = window(there, panel=name)
        if right(at):
            make = panel_of(there, name).season.make
            good.append((abs(make - panel_of(d, name).season.make), month))
    return (min(good)[1],) if good else ()
