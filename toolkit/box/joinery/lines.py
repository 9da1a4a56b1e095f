"""Which line goes on which face of which wall, gauged from which side, at which setting."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Literal

from toolkit.box.designing import Design
from toolkit.box.joinery.dividers import GaugeSettings, between_baselines, gauge_settings, set_to
from toolkit.measures import Rule
from toolkit.results import Table, Working, above, below

Face = Literal["inside face", "outside face", "bottom edge", "top edge", "end grain"]
Tool = Literal["marking gauge", "bevel gauge", "square", "knife"]
FACES: tuple[Face, ...] = ("inside face", "outside face")


@dataclass(frozen=True, slots=True)
class Line:
    """One line on one face of a wall.

    It is on ``part`` at its ``end``, ``each end`` or ``along`` it. Lines of one ``name`` are made
    at one ``setting``, None for a line that is not gauged; ``gauged_from`` is where the tool's
    fence runs. It runs from ``low`` to ``high`` above the bottom edge, which are equal on an edge
    and along a board. [mm]
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
        "outside face", "bevel gauge", "the dividers' marks on the baseline", "cheeks of the tails"
    )
    yield end.by_hand(
        "end grain", "square", "the cheeks on the outside face", "tails, squared across the end"
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
        purpose = "tips: the tails end here, under the ear"
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
        purpose = f"depth of the sockets; they go {past} past it, never short of it"
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
            "rip the front here after ploughing, then plane this edge square",
        )


def setting_out_lines(d: Design) -> tuple[Line, ...]:
    """Every line of the joints of one box, gauged, squared or knifed: side, back, front.

    Tail length goes on the pin board's end from its inside face, tail-board thickness on its inside
    face from its end, outside too only in a through joint: common practice, no source. [mm]
    """
    s, f = gauge_settings(d), d.frame
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


PAIRS = (
    ("inside face", "outside face", "both faces"),
    ("bottom edge", "top edge", "both edges"),
)
PROUD_MOST, SHY_MOST = 0.5, 0.2


def _faces(rows: list[Line], rule: Rule, full: float) -> str:
    words = [row.face for row in rows]
    said: list[str] = list(words)
    for one, other, both in PAIRS:
        if one in words and other in words:
            said[said.index(one)] = both
            said.remove(other)
    text = " and ".join(filter(None, [", ".join(said[:-1]), said[-1]]))
    top = max(row.high for row in rows)
    along = all(row.low == row.high for row in rows)
    return text if along or not below(top, full) else f"{text}, up to {rule.show(top)}"


def _grouped(lines: Iterable[Line]) -> Iterable[list[Line]]:
    groups: dict[tuple[object, ...], list[Line]] = {}
    for row in lines:
        key = (row.part, row.end, row.tool, row.name, row.gauged_from, row.setting, row.purpose)
        groups.setdefault(key, []).append(row)
    return groups.values()


def proud_sentence(d: Design) -> str:
    """What setting the gauges proud or shy does to this box. [mm]

    0.2 shy to 0.5 proud: common practice, no source.
    """
    show, f, proud = d.choices.rule.exact, d.frame, d.choices.corner.proud
    through, by = d.choices.corner.joint == "through", abs(proud)
    gauge = "Each gauge" if through else "The second gauge"
    grain = "the end grain of pins and tails" if through else "the pins' end grain"
    if proud == 0:
        return f"{gauge} is set to the other board's own thickness: {grain} ends flush."
    left = between_baselines(d)
    board, one = ("side", "a side") if d.choices.corner.tails_on == "ends" else ("end", "an end")
    cut = (f.side_cut if board == "side" else f.back_cut).value
    boards = "All four boards are" if through else f"The {board}s are"
    if proud > 0:
        how = "proud of the other board, set from the wood itself"
        does, way, most = "stands out by that and is planed flush", "longer", PROUD_MOST
    else:
        how = "shy of the other board"
        does = "ends that far below the face beside it, which is planed down to it"
        way, most = "shorter", SHY_MOST
    words = f"{gauge} is {show(by)} {how}: {grain} {does}. {boards} cut {show(2 * by)} {way} for it"
    words += f", {one} {show(cut)}: its baselines lie {show(left.value)} apart all the same."
    if above(by, most):
        words += f" Over {show(most)} is more than is planed off with pleasure."
    if through:
        return words
    return f"{words} Never set the first gauge so: a lapped tail would meet its lap too soon."


def line_table(d: Design) -> Table:
    """Which line goes on which face, gauged from where. [mm]"""
    rule, full = d.choices.rule, d.frame.wall_height.value
    rows = []
    for group in _grouped(setting_out_lines(d)):
        first = group[0]
        tool = first.name if first.tool == "marking gauge" else first.tool
        setting = "" if first.setting is None else set_to(first.name, first.setting.value, rule)
        if first.tool == "bevel gauge":
            setting = f"1 in {d.back.slope:g}, {d.back.angle:.1f}°"
        end = "its whole length" if first.end == "along" else first.end
        faces = _faces(group, rule, full if first.part != "front" else first.high)
        rows.append((first.part, end, faces, tool, first.gauged_from, setting, first.purpose))
    return Table(
        "Which line on which face",
        ("part", "end", "on", "with", "from", "set to", "for"),
        tuple(rows),
        note="Leave each gauge set until the last board is marked. " + proud_sentence(d),
        numeric=(5,),
    )
