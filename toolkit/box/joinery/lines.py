"""Which line goes on which face of which wall, gauged from which side, at which setting."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from toolkit.box.design import Design
from toolkit.box.joinery.gauges import GaugeSettings, gauge_settings
from toolkit.results import Working, above

Face = Literal["inside face", "outside face", "bottom edge", "top edge", "end grain"]
Tool = Literal["marking gauge", "bevel gauge", "square", "knife"]
FACES: tuple[Face, ...] = ("inside face", "outside face")


@dataclass(frozen=True, slots=True)
class Line:
    """One line on one face of a wall.

    ``part`` is side, back or front; ``end`` the end of it that carries the line, as the box
    stands (``back end``, ``front end``) or ``each end``, or ``along`` for a line that runs the
    whole length. ``name`` tells settings apart: lines of one name are made at one setting.
    ``gauged_from`` is where the tool's fence runs. ``setting`` is None for a line that is not
    gauged. The line runs from ``low`` to ``high`` above the bottom edge; on an edge, and along a
    board, the two are equal. [mm]
    """

    part: str
    end: str
    face: Face
    tool: Tool
    name: str
    gauged_from: str
    setting: Working | None
    low: float
    high: float
    purpose: str


@dataclass(frozen=True, slots=True)
class _End:
    """One end of a wall, up to the height where its joint ends."""

    part: str
    end: str
    top: float
    edges: tuple[Face, ...] = ("bottom edge", "top edge")

    def gauged(
        self, faces: tuple[Face, ...], name: str, start: str, setting: Working, purpose: str
    ) -> Iterator[Line]:
        """One gauge line on each of some faces."""
        for face in faces:
            low, high = {
                "bottom edge": (0.0, 0.0),
                "top edge": (self.top, self.top),
            }.get(face, (0.0, self.top))
            yield Line(
                self.part, self.end, face, "marking gauge", name, start, setting, low, high, purpose
            )

    def by_hand(self, face: Face, tool: Tool, start: str, purpose: str) -> Line:
        """One line that no gauge makes."""
        return Line(self.part, self.end, face, tool, tool, start, None, 0.0, self.top, purpose)


def _tail_marks(end: _End) -> Iterator[Line]:
    yield end.by_hand(
        "outside face", "bevel gauge", "the dividers' marks on the baseline", "flanks of the tails"
    )
    yield end.by_hand(
        "end grain", "square", "the flanks on the outside face", "tails, squared across the end"
    )


def _tail_end(end: _End, name: str, setting: Working) -> Iterator[Line]:
    purpose = "baseline of the tails, where their shoulders stand"
    yield from end.gauged((*FACES, *end.edges), name, "the end", setting, purpose)
    yield from _tail_marks(end)


def _ear_end(
    d: Design, end: _End, s: GaugeSettings, ear: tuple[Working, Working]
) -> Iterator[Line]:
    """The front end of a side whose tails stand under an ear."""
    tip, base = ear
    faces = (*FACES, *end.edges)
    if above(tip.value, 0.0):
        purpose = "tip line: the tails end here, under the ear"
        yield from end.gauged(faces, "ear gauge, tip", "the end", tip, purpose)
    flush = not above(abs(tip.value), 0.0)
    name = s.names["tail_front"] if flush else "ear gauge, baseline"
    purpose = "baseline of the tails, under the ear only"
    yield from end.gauged(faces, name, "the end", base, purpose)
    height = Working("underside of the ear", d.frame.front_height.terms)
    purpose = "underside of the ear: saw along it from the end to the baseline"
    for face in (*FACES, "end grain"):
        yield Line(
            end.part,
            end.end,
            face,
            "marking gauge",
            "front height",
            "the bottom edge",
            height,
            end.top,
            end.top,
            purpose,
        )
    yield from _tail_marks(end)


def _pin_end(d: Design, end: _End, s: GaugeSettings, corner: str) -> Iterator[Line]:
    tail, board = getattr(s, f"tail_{corner}"), getattr(s, f"board_{corner}")
    blind = d.choices.corner.joint == "half-blind"
    if blind:
        past = d.choices.rule.exact(d.choices.customs.socket_over)
        purpose = f"tip line of the tails; the sockets go {past} past it, never short of it"
        yield from end.gauged(
            ("end grain",), s.names[f"tail_{corner}"], "the inside face", tail, purpose
        )
    faces = FACES[:1] if blind else FACES
    purpose = "baseline of the pins" + ("; never outside, where it would show" if blind else "")
    yield from end.gauged(faces, s.names[f"board_{corner}"], "the end", board, purpose)
    yield end.by_hand("end grain", "knife", "the finished tails", "pins, copied from the tails")
    for face in faces:
        yield end.by_hand(face, "square", "the knife lines on the end", "pins, down to the line")


def _rip_line(d: Design) -> Iterator[Line]:
    if d.frame.lid_floor is None:
        return
    height = d.frame.front_height
    for face in FACES:
        yield Line(
            "front",
            "along",
            face,
            "marking gauge",
            "front height",
            "the bottom edge",
            height,
            height.value,
            height.value,
            "rip the front here, after ploughing",
        )


def setting_out_lines(d: Design, *, proud: float | None = None) -> tuple[Line, ...]:
    """Every line of the joints of one box, gauged, squared or knifed: side, back, front.

    Tail length goes on the pin board's end from its inside face, tail-board thickness on its inside
    face from its end, outside too only in a through joint: common practice, no source. ``proud`` as
    for `gauge_settings`. [mm]
    """
    s, f = gauge_settings(d, proud=proud), d.frame
    full, low = f.wall_height.value, f.front_height.value
    side_back, side_front = _End("side", "back end", full), _End("side", "front end", low)
    back, front = _End("back", "each end", full), _End("front", "each end", low)
    rows: list[Line] = []
    if d.choices.corner.tails_on == "ends":
        rows += _pin_end(d, side_back, s, "back")
        rows += _pin_end(d, side_front, s, "front")
        rows += _tail_end(back, s.names["tail_back"], s.tail_back)
        rows += _rip_line(d)
        rows += _tail_end(front, s.names["tail_front"], s.tail_front)
    else:
        rows += _tail_end(side_back, s.names["tail_back"], s.tail_back)
        if s.ear is not None:
            under = _End("side", "front end", low, edges=("bottom edge",))
            rows += _ear_end(d, under, s, s.ear)
        else:
            rows += _tail_end(side_front, s.names["tail_front"], s.tail_front)
        rows += _pin_end(d, back, s, "back")
        rows += _rip_line(d)
        rows += _pin_end(d, front, s, "front")
    return tuple(rows)
