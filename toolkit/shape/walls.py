"""The four walls as solids, each made as at the bench: ploughed, and the waste of its ends out.

A wall has axes of its own: u along it from its first end, d from its inside face towards its
outside, z up from its bottom edge. At either end u runs from that end. Tails leave what the
corner's list of pins has between them, sockets are those of its list of tails: neither board is
cut with the other, so that a fault in either list shows as an overlap or as a gap.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Literal

import numpy as np
from manifold3d import CrossSection, Manifold, OpType

from toolkit.box import Corner, Design, Piece, Span
from toolkit.shape.slices import NEAR, Range, block, face, moved

Which = Literal["back", "front"]
PAST = 1.0  # how far a plough runs on beyond the wood [mm]


def _tooth(piece: Piece, *, tip: float, deep: float, run: Range) -> Manifold:
    """A tail or pin, wide at d = 0, down to a depth, along a stretch of u. [mm]"""
    low, high = piece.tip_low, piece.tip_high
    if high < low:
        # Its cheeks meet before the tips: it ends there.
        share = piece.width / (piece.width - piece.tip_width)
        tip *= share
        low = high = piece.low + (piece.tip_low - piece.low) * share
    share = min(deep / tip, 1.0)
    end = [a + share * (b - a) for a, b in ((piece.low, low), (piece.high, high))]
    rows = [(0.0, piece.low), (0.0, piece.high), (tip * share, end[0]), (tip * share, end[1])]
    points = [(u, d, z) for u in run for d, z in rows]
    return Manifold.hull_points(np.array(points, dtype=np.float64))


@dataclass(frozen=True, slots=True)
class JointedEnd:
    """One end of a wall: its baseline, how far tails or sockets go, and its corner. [mm]

    Under an ear the tips lie before the end. ``stopped`` names the grooves that end before it.
    """

    corner: Corner
    tails: bool
    thickness: float
    base: float
    tip: float
    stopped: frozenset[str]

    def standing_proud(self, far: float) -> JointedEnd:
        """This end as it is sawn, so far beyond the box; tails grow wider on their slope. [mm]"""
        if not self.tails:
            return replace(self, base=self.base + far)
        corner, grown = self.corner, (self.tip + far) / self.tip

        def longer(pieces: tuple[Piece, ...]) -> tuple[Piece, ...]:
            return tuple(
                replace(
                    piece,
                    tip_low=piece.low + (piece.tip_low - piece.low) * grown,
                    tip_high=piece.high + (piece.tip_high - piece.high) * grown,
                )
                for piece in pieces
            )

        sawn = replace(corner, tails=longer(corner.tails), pins=longer(corner.pins))
        return replace(self, corner=sawn, base=self.base + far, tip=self.tip + far)

    @lru_cache(maxsize=64)  # noqa: B019 - an end is only a few numbers
    def waste(self) -> tuple[Manifold, ...]:
        """What goes between tails or in sockets, upwards; then what goes before an eared tip."""
        base, thick, corner = self.base, self.thickness, self.corner
        if not self.tails:
            deep, run = min(self.tip, thick), (0.0, base)
            return tuple(_tooth(tail, tip=self.tip, deep=deep, run=run) for tail in corner.tails)
        rows, top, run = [], corner.height, (0.0, thick)
        for pin in corner.pins:
            # A pin board may be higher than its tail board, and its uppermost pin with it.
            own = Piece(pin.low, top, pin.tip_low, top) if pin.high > top else pin
            cut = _tooth(own, tip=self.tip, deep=self.tip, run=run)
            rows.append(moved(cut, (0, -1, 0, base), (1, 0, 0, 0), (0, 0, 1, 0)))
        if corner.tails and base > self.tip + NEAR:
            rows.append(block((0.0, base - self.tip), run, (0.0, top)))
        return tuple(rows)


@dataclass(frozen=True, slots=True)
class JointedWall:
    """A wall in its own axes: its size, its grooves, its two ends. [mm]"""

    length: float
    thickness: float
    height: float
    depth: float
    grooves: tuple[tuple[str, Span], ...]
    ends: tuple[JointedEnd, JointedEnd]

    def board(self, run: Range) -> Manifold:
        """A stretch of it as it is before it is worked. [mm]"""
        return block(run, (0.0, self.thickness), (0.0, self.height))

    def tracks(self, run: Range) -> Iterator[Manifold]:
        """What a plough takes out of a stretch. [mm]"""
        for name, span in self.grooves:
            start, stop = run[0] - PAST, run[1] + PAST
            if name in self.ends[0].stopped:
                start = self.ends[0].base - self.depth
            if name in self.ends[1].stopped:
                stop = self.length - self.ends[1].base + self.depth
            yield block((start, stop), (-PAST, self.depth), (span.low, span.high))

    def section(self, at: float) -> CrossSection:
        """Cut across before its ends are worked: pieces cut, which is quicker than joined."""
        run = (at - PAST, at + PAST)
        left = face(self.board(run), 0, at=at)
        for track in self.tracks(run):
            left -= face(track, 0, at=at)
        return left

    def piece(self, number: int, run: float) -> Manifold:
        """So much of it from its first or second end, with its grooves and that end's joint. [mm]

        u runs from that end.
        """
        start = self.length - run if number else 0.0
        along = (start, start + run)
        rows = [self.board(along), *self.tracks(along)]
        if number:
            rows = [self._turned(row) for row in rows]
        return Manifold.batch_boolean([*rows, *self.ends[number].waste()], OpType.Subtract)

    def whole(self) -> Manifold:
        """All of it. [mm]"""
        along = (0.0, self.length)
        wastes = [*self.ends[0].waste(), *map(self._turned, self.ends[1].waste())]
        rows = [self.board(along), *self.tracks(along), *wastes]
        return Manifold.batch_boolean(rows, OpType.Subtract)

    def _turned(self, shape: Manifold) -> Manifold:
        """From one end to the other. [mm]"""
        return moved(shape, (-1, 0, 0, self.length), (0, 1, 0, 0), (0, 0, 1, 0))


def end_of(d: Design, *, part: str, which: Which) -> JointedEnd:
    """One end of a wall: where its joint begins, and how far it goes.

    Parameters
    ----------
    d : Design
        The box. [mm]
    part : str
        ``"side"``, ``"back"`` or ``"front"``.
    which : str
        The corner: ``"back"`` or ``"front"``.
    """
    f, on_ends, back = d.frame, d.choices.corner.tails_on == "ends", which == "back"
    tails, tip = on_ends != (part == "side"), (f.tail_back if back else f.tail_front).value
    end = (f.back_thickness if back else f.front_thickness).value
    thick, other = (
        (f.side_thickness.value, end) if part == "side" else (end, f.side_thickness.value)
    )
    low = tails and part == "side" and not back and f.lid_groove is not None
    ear = max(end - tip, 0.0) if low else 0.0
    cause = "tip" if tails else "pin"
    stopped = {
        hole.groove
        for hole in d.holes
        if d.choices.groove.ends != "through" and (hole.corner, hole.cause) == (which, cause)
    }
    return JointedEnd(
        corner=d.back if back else d.front,
        tails=tails,
        thickness=thick,
        base=tip + ear if tails else other,
        tip=tip,
        stopped=frozenset(stopped),
    )


@lru_cache(maxsize=64)
def wall(d: Design, part: str) -> JointedWall:
    """A wall in its own axes, and its two ends.

    Parameters
    ----------
    d : Design
        The box. [mm]
    part : str
        ``"side"``, ``"back"`` or ``"front"``.
    """
    f = d.frame
    both = (("bottom", f.bottom_groove), *((("lid", f.lid_groove),) if f.lid_groove else ()))
    places: tuple[Which, Which] = ("back", "front")
    if part == "side":
        thick, high, inside = f.side_thickness, f.wall_height, f.inside_length.value
    else:
        is_back = part == "back"
        thick = f.back_thickness if is_back else f.front_thickness
        high, inside = f.wall_height if is_back else f.front_height, f.inside_width.value
        both = both if is_back else both[:1]
        places = ("back", "back") if is_back else ("front", "front")
    ends = tuple(end_of(d, part=part, which=which) for which in places)
    return JointedWall(
        length=ends[0].base + inside + ends[1].base,
        thickness=thick.value,
        height=high.value,
        depth=d.choices.groove.depth,
        grooves=both,
        ends=(ends[0], ends[1]),
    )


@lru_cache(maxsize=64)
def wall_as_cut(d: Design, part: str) -> JointedWall:
    """A wall as it is sawn, before its end grain is planed flush with the box. [mm]"""
    own, f = wall(d, part), d.frame
    length, cut = {
        "side": (f.side_length, f.side_cut),
        "back": (f.back_length, f.back_cut),
        "front": (f.front_length, f.front_cut),
    }[part]
    if cut.value == length.value:
        return own
    first, second = (end.standing_proud(d.choices.corner.proud) for end in own.ends)
    long = own.length + first.base - own.ends[0].base + second.base - own.ends[1].base
    return replace(own, length=long, ends=(first, second))


@lru_cache(maxsize=64)
def standing(d: Design, part: str, *, far: bool) -> Manifold:
    """A wall where it stands in the box; the far one of two sides, or the front. [mm]"""
    f, own = d.frame, wall(d, part)
    long, wide, thick = f.outside_length.value, f.outside_width.value, own.thickness
    across = (0, 1 if far else -1, 0, (long if part != "side" else wide) - thick if far else thick)
    if part == "side":
        start = f.back_thickness.value - own.ends[0].base
        return moved(own.whole(), (1, 0, 0, start), across, (0, 0, 1, 0))
    start = f.side_thickness.value - own.ends[0].base
    return moved(own.whole(), across, (1, 0, 0, start), (0, 0, 1, 0))
