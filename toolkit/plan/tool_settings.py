"""Gauges, dividers, bevel and plough: what to set, which line it makes, and what to leave set."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from toolkit.box import Corner, Design, gauge_settings, has_ear
from toolkit.results import SizedText, TaggedSize, below


@dataclass(frozen=True, slots=True)
class Setting:
    """One tool set once: its size, and where and from which side it is used."""

    tool: str
    value: str
    use: str

    @classmethod
    def of(cls, tool: str, size: float, use: str, *, show: Callable[[float], str]) -> Setting:
        """A tool set to one size, which is tagged with the tool's name. [mm]"""
        return cls(tool, TaggedSize(show(size), tool, "setting", size), use)


def _tail_gauge_use(d: Design, corner: str, *, alone: bool) -> str:
    """Where a tail's length is gauged. ``alone``: back and front have a setting each."""
    ends = d.choices.corner.tails_on == "ends"
    tail_board, pin_board = ("ends", "sides") if ends else ("sides", "ends")
    through, ear = d.choices.corner.joint == "through", has_ear(d)
    uses = [f"{tail_board}: both faces and both edges, from the end"]
    if ear and through and corner != "back":
        uses[0] += ", at the front end only up to the height of the front"
    elif ear and not through:
        uses = [] if alone and corner == "front" else [f"{uses[0]}, at the back end only"]
    if not through:
        uses.append(f"{pin_board}: the end grain, from the inside face")
    return "; ".join(uses)


def _from_the_wood(d: Design, board: str) -> str:
    """What a gauge is set from, and why it is set over or under it."""
    proud = d.choices.corner.proud
    if not proud:
        return f"Set from the {board} board itself."
    by, way = d.choices.rule.show(abs(proud)), "proud" if proud > 0 else "shy"
    why = ", which flushing planes off" if proud > 0 else ""
    return f"Set from the {board} board itself, {by} {way}{why}."


def _gauges(d: Design) -> list[Setting]:
    show, c = d.choices.rule.show, d.choices
    through = c.corner.joint == "through"
    ends = c.corner.tails_on == "ends"
    pin_board = "sides" if ends else "ends"
    s = gauge_settings(d)
    tails = (s.tail_back.value, s.tail_front.value)
    boards = (s.board_back.value, s.board_front.value)
    same = tails[0] == tails[1] and boards[0] == boards[1]
    rows = []
    for corner, length, board in zip(("back", "front"), tails, boards, strict=True):
        if corner == "front" and same:
            break
        where = "" if same else f", {corner}"
        use = _tail_gauge_use(d, "both" if same else corner, alone=not same)
        first = f" {_from_the_wood(d, 'pin')}" if through else ""
        rows.append(
            Setting.of(
                f"gauge 1, tail length{where}", length, f"{use}.{first} Leave set.", show=show
            )
        )
        faces = "both faces" if through else "the inside face only"
        rows.append(
            Setting.of(
                f"gauge 2, tail-board thickness{where}",
                board,
                f"{pin_board}: {faces}, from the end. {_from_the_wood(d, 'tail')} Leave set.",
                show=show,
            )
        )
    if s.ear is not None and not through:
        tip, base = (line.value for line in s.ear)
        rows.append(
            Setting(
                "gauge for the ear",
                f"{show(tip)} and {show(base)}",
                "sides, front end only: tips and baseline from the front end, up to the "
                "height of the front; the ear above keeps its full length.",
            )
        )
    return rows


def _dividers(d: Design, corner: Corner) -> Setting | None:
    show, c = d.choices.rule.show, d.choices
    if corner.step is None or not corner.tails:
        return None
    half, pin = c.corner.half_pin, c.corner.pin
    tail_of = "" if corner.name == "back" else f" (over the front's {show(corner.height)})"
    off = ""
    if below(half, pin):
        off = f"; that mark lies {show(pin - half)} off the edge, on a scrap cramped flush"
    return Setting.of(
        f"dividers, {corner.name} corners",
        corner.step,
        f"{len(corner.tails)} steps from the mark at {show(half)}{tail_of}; the last falls "
        f"{show(pin)} past the far half-pin mark{off}. Then walk back from the other side.",
        show=show,
    )


def _bevel(d: Design) -> Setting:
    return Setting(
        "bevel gauge",
        f"{d.back.angle:.1f}°",
        f"{d.back.slope:g} along, 1 across; tails only, the pins are copied from them.",
    )


def _plough(d: Design) -> list[Setting]:
    c, show = d.choices, d.choices.rule.show
    g = c.groove
    walls = "sides, back and front"
    rows = [
        Setting(
            "plough",
            SizedText.of(
                "iron ",
                TaggedSize(show(g.width), "plough, iron", "setting", g.width),
                ", depth ",
                TaggedSize(show(g.depth), "plough, depth", "setting", g.depth),
            ),
            "every groove; depth stop left set.",
        ),
        Setting.of(
            "plough fence, bottom grooves",
            g.bottom_edge,
            f"inside face of {walls}, from the bottom edge.",
            show=show,
        ),
    ]
    if d.frame.lid_groove is not None:
        one = abs(g.bottom_edge - g.top_edge) < 1e-6
        text = "inside face of sides and back, from the top edge"
        text += (
            ": the same fence does all seven grooves, if the walls are planed to one width."
            if one
            else f"; or {show(d.frame.lid_groove.low)} from the bottom edge."
        )
        rows.append(Setting.of("plough fence, lid grooves", g.top_edge, text, show=show))
    return rows


def _edges(d: Design) -> list[Setting]:
    show, rows = d.choices.rule.show, []
    where = {"bottom": "underneath, four edges", "lid": "on top, three edges, not the front"}
    for panel in d.grooved:
        if panel.rebate_depth > 0 and panel.profile == "rebated":
            rows.append(
                Setting(
                    f"rebate, {panel.name}",
                    f"{show(panel.rebate_depth)} deep, {show(panel.rebate_width)} wide",
                    f"{where[panel.name]}; leaves a tongue of {show(panel.tongue)}. "
                    "Across the grain first; the others clean its breakout away.",
                )
            )
    return rows


def settings(d: Design) -> tuple[Setting, ...]:
    """Every setting of one box, in the order in which they are used."""
    rows = [*_plough(d)]
    floor = d.frame.lid_floor
    if floor is not None:
        rows.append(
            Setting.of(
                "front end, rip line",
                d.frame.front_height.value,
                f"from the bottom edge, after ploughing; the lid groove's floor is at "
                f"{d.choices.rule.show(floor.value)}. Plane that edge square before the front's "
                "joints are set out.",
                show=d.choices.rule.show,
            )
        )
    rows += [*_gauges(d), _bevel(d)]
    rows += [row for row in (_dividers(d, d.back), _dividers(d, d.front)) if row is not None]
    return (*rows, *_edges(d))
