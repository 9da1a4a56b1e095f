"""Words on a board: names of parts, of defects and of the sapwood, and how far up a rip lies."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from math import hypot, pi

from toolkit.measures import Rule
from toolkit.pictures.board.rows import Box, Stretch, box_of, overlap, piece_box
from toolkit.pictures.board.sawing import Disc
from toolkit.pictures.kit import Point, Slot, extent
from toolkit.pictures.kit.strokes import ARROW, HALF_ARROW, arrow_head
from toolkit.stock import Board, Laid, LaidPart, SawCut

_SPARE = 2.2  # round words that stand in hatched wood [pt]
_AWAY = (3.5, 8.0, 14.0)  # from a defect to its name [pt]
_FAR = 90.0  # that a leader may reach [pt]
_ARROW = 34.0  # length of an arrow along the grain [pt]
_LOW = 40.0  # parts lower than this have name and arrow side by side [pt]


class BoardWords:
    """Finds room for words on a board, and remembers what they take: ``rooms``. [mm]"""

    def __init__(
        self,
        rows: Sequence[Stretch],
        board: Board,
        *,
        lines: Iterable[Box],
        numbers: Sequence[Box],
        parts: Sequence[Box],
    ) -> None:
        self.rows, self.board, self.sheet = rows, board, rows[0].view.sheet
        self.scale = rows[0].view.scale
        self._taken = [*lines, *numbers, *(box_of(defect) for defect in board.defects)]
        self._parts, self._numbers = parts, numbers
        self.rooms: list[Box] = []

    def parts(self, laid: Laid) -> None:
        """A part's name in the middle of what shows of it, with an arrow along its grain."""
        for piece in laid.pieces:
            left, right, low, high = piece_box(piece)
            row = max(self.rows, key=lambda row: min(row.end, right) - max(row.start, left))
            self._part(row, piece, (max(left, row.start), min(right, row.end), low, high))

    def _part(self, row: Stretch, piece: LaidPart, box: Box) -> None:
        sheet = self.sheet
        wide, under, over = extent(piece.part, size=sheet.text)
        free = self._free(box)
        has_room = (free[1] - free[0]) * self.scale > wide + 4.0
        box = free if has_room else box
        (x0, y0), (x1, y1) = row.view.at(box[0], box[2]), row.view.at(box[1], box[3])
        x, y = (x0 + x1) / 2, (y0 + y1) / 2
        if y1 - y0 >= _LOW:
            long = min(_ARROW, x1 - x0 - 8.0)
            base, at, level = y + 2.0 - under, x, y - 6.0
        else:
            long = min(0.7 * _ARROW, x1 - x0 - wide - 14.0)
            # A little high: the size of a rip stands on the lower edge.
            base, level = y - (over + under) / 2 + 1.2, y + 1.2
            shift = (long + 6.0) / 2 if long > 2 * ARROW else 0.0
            x, at = x - shift, x + wide / 2 + 3.0
        if wide > x1 - x0 - 4.0 or over - under > y1 - y0 - 4.0:
            sheet.write(piece.part, [], rank=0, at=(x, y))
            return
        sheet.write(piece.part, [Slot(x, base, "center")], rank=0)
        word = (x - wide / 2, x + wide / 2, base + under, base + over)
        self._taken.append(row.on_board(word))
        if has_room and long > 2 * ARROW:
            self._arrow(at, level, long / 2)
            along = (at - long / 2, at + long / 2, level - 2.0, level + 2.0)
            self._taken.append(row.on_board(along))

    def _free(self, box: Box) -> Box:
        """What the numbers of cuts leave of a part's length at half its width. [mm]"""
        left, right, low, high = box
        level, half = (low + high) / 2, 0.45 * self.sheet.text / self.scale
        band = (left, right, level - half, level + half)
        for number in self._numbers:
            if overlap(number, band):
                if number[0] + number[1] < left + right:
                    left = max(left, number[1])
                else:
                    right = min(right, number[0])
        return left, right, low, high

    def _arrow(self, x: float, y: float, half: float) -> None:
        self.sheet.line("chalk", [(x - half, y), (x + half, y)])
        for tip, turn in ((x - half, pi), (x + half, 0.0)):
            head, one, other = arrow_head((tip, y), turn=turn, half=2 * HALF_ARROW)
            self.sheet.line("chalk", [one, head, other])

    def rips(self, discs: Sequence[Disc], *, rule: Rule) -> None:
        """How far from the lower edge each rip lies, beside its number."""
        for disc in discs:
            cut = disc.cut
            if cut.kind == "rip":
                text = rule.show(cut.at, fineness="sizes", unit=False)
                self._write(disc.row, text, self._along(disc, cut, text), rank=2)

    def _along(self, disc: Disc, cut: SawCut, text: str) -> Iterator[Point]:
        """Lower left corners over a rip and under it, from its number to its end."""
        wide, high = self._size(text)
        start = (disc.at[0] + disc.radius + 3.0 - disc.row.view.x) / self.scale
        for i in range(12):
            left = start + 6.0 * i / self.scale
            if left + wide > cut.end[0]:
                return
            for gap in (2.6, 3.6, 4.6):
                yield left, cut.start[1] + gap / self.scale
                yield left, cut.start[1] - gap / self.scale - high

    def flaws(self) -> None:
        """Name every defect where there is room beside it; of a kind at least the first."""
        self._taken += self._parts
        seen: set[str] = set()
        for defect in self.board.defects:
            box = box_of(defect)
            middle = (box[0] + box[1]) / 2
            row = next(row for row in self.rows if middle <= row.end)
            corners = _beside(box, self._size(defect.kind), self.scale)
            if not self._write(row, defect.kind, corners) and defect.kind not in seen:
                self._led(row, defect.kind, (middle, (box[2] + box[3]) / 2))
            seen.add(defect.kind)

    def sapwood(self, *, used: float) -> None:
        """Name the sapwood on wood that stays whole, in it or on a leader to it. [mm]"""
        wide, high = self._size("sapwood")
        for row in self.rows:
            start = max(row.start, used)
            corners = []
            for i in range(1, 12):
                x = start + (row.end - start) * i / 12
                heart = max(self.board.heart_at(at) or 0.0 for at in (x, x + wide))
                corners.append((x, (heart + self.board.width - high) / 2))
            if row.end > start and self._write(row, "sapwood", corners, rank=4):
                return
        row = max(self.rows, key=lambda row: row.end - max(row.start, used))
        x = 0.7 * max(row.start, used) + 0.3 * row.end
        heart = self.board.heart_at(x) or 0.0
        if row.end > used and 0.0 < heart < self.board.width:
            self._led(row, "sapwood", (x, (heart + self.board.width) / 2))

    def _size(self, text: str) -> Point:
        """Width and height of a word on the board. [mm]"""
        wide, under, over = extent(text, size=self.sheet.text)
        return wide / self.scale, (over - under) / self.scale

    def _write(
        self,
        row: Stretch,
        text: str,
        corners: Iterable[Point],
        *,
        rank: int = 3,
        at: Point | None = None,
    ) -> bool:
        """Write a word at the first lower left corner where it has room, led from ``at``. [mm]"""
        spare, (wide, high) = _SPARE / self.scale, self._size(text)
        for left, low in corners:
            room = (left - spare, left + wide + spare, low - spare, low + high + spare)
            if not self._is_free(row, room, (low, low + high)):
                continue
            leader: tuple[Point, ...] = ()
            if at is not None:
                if overlap(room, (at[0], at[0], at[1], at[1])):
                    continue
                end = (min(max(at[0], room[0]), room[1]), low + high / 2)
                if room[0] < at[0] < room[1]:
                    end = (at[0], room[3] if at[1] > end[1] else room[2])
                leader = (row.view.at(*at), row.view.at(*end))
            x, y = row.view.at(left, low)
            under = extent(text, size=self.sheet.text)[1]
            self.sheet.write(text, [Slot(x, y - under, "left", leader)], rank=rank)
            self.rooms.append(room)
            return True
        return False

    def _is_free(self, row: Stretch, room: Box, word: Point) -> bool:
        """Whether a place lies on the board, off the heart line and off what is there. [mm]"""
        edge = 0.5 * _SPARE / self.scale
        if room[0] < row.start + edge or room[1] > row.end - edge:
            return False
        if room[2] < edge or room[3] > row.width - edge:
            return False
        hearts = (self.board.heart_at(x) for x in (room[0], (room[0] + room[1]) / 2, room[1]))
        if any(heart is not None and word[0] < heart < word[1] for heart in hearts):
            return False
        return not any(overlap(room, other) for other in (*self._taken, *self.rooms))

    def _led(self, row: Stretch, text: str, at: Point) -> None:
        """Write a word in the free wood nearest to what it names, or over the board, led to it."""
        step, (wide, high) = 4.0 / self.scale, self._size(text)

        def far(corner: Point) -> float:
            return hypot(corner[0] + wide / 2 - at[0], 2 * (corner[1] + high / 2 - at[1]))

        across = [k * step for k in range(int(row.width / step))]
        along = [row.start + i * step for i in range(int((row.end - row.start) / step))]
        corners = [(x, y) for x in along for y in across if far((x, y)) < _FAR / self.scale]
        if self._write(row, text, sorted(corners, key=far), at=at):
            return
        (x, y), over = row.view.at(*at), row.view.up(row.width)
        spots = [
            Slot(x + shift, over + up, "left", ((x, y), (x + shift + 6.0, over + up - 2.5)))
            for up in (6.0, 24.0, 38.0)
            for shift in (-12.0, -20.0, 6.0, -40.0, 20.0, 40.0)
        ]
        self.sheet.write(text, spots, rank=4)


def _beside(box: Box, size: Point, scale: float) -> Iterator[Point]:
    """Lower left corners for words beside, over and under a box, the nearest first. [mm]"""
    wide, high = size
    x, y = (box[0] + box[1]) / 2, (box[2] + box[3]) / 2
    for away in _AWAY:
        gap = away / scale
        for up in (0.0, high, -high):
            yield box[1] + gap, y - high / 2 + up
            yield box[0] - gap - wide, y - high / 2 + up
        for low in (box[3] + gap, box[2] - gap - high):
            for left in (x - wide / 2, box[0], box[1] - wide):
                yield left, low
