"""The wood of a whole class: the students' parts on the boards on hand, spares on what is left."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from toolkit.plan import Plan
from toolkit.results import Part
from toolkit.stock import (
    Blank,
    Board,
    ClassLaid,
    Laid,
    Sawing,
    blanks_of,
    lay_out_class,
    sawing,
)

SHORTEST_REST = 100.0  # custom, no source: a shorter end of a board is an offcut [mm]
TIME_LIMIT = 4.0  # for a proof; the first layout is there at once [s]


# Names of parts on a drawing that is full of them.
BRIEF = {"side": "s", "back": "bk", "front": "fr", "bottom": "bt", "batten": "bn", "practice": "ps"}


@dataclass(frozen=True, slots=True, order=True)
class Owned:
    """A part and whose it is: of a student or of a spare set (``kind``), by number."""

    kind: str
    number: int
    part: str

    @property
    def called(self) -> str:
        """Whose it is, in words."""
        return f"{self.kind} {self.number}"

    @property
    def name(self) -> str:
        """It in words: ``student 3: side 1``."""
        return f"{self.called}: {self.part}"

    @property
    def brief(self) -> str:
        """A name so short that it has room beside the numbers of the cuts."""
        word, _, which = self.part.partition(" ")
        code = BRIEF.get(word, word) + (which if which.isdigit() else "")
        return f"{'S' if self.kind == 'spare' else ''}{self.number} {code}"


@dataclass(frozen=True, slots=True)
class ClassWood:
    """Where the parts of a class come from."""

    laid: ClassLaid | None
    extra: ClassLaid | None
    needed: tuple[Blank, ...]
    missing: tuple[Blank, ...]
    owners: Mapping[str, Owned]

    @property
    def boards(self) -> tuple[Laid, ...]:
        """Every board, or rest of a board, with parts on it."""
        both = [one for one in (self.laid, self.extra) if one is not None]
        return tuple(laid for one in both for laid in one.boards if laid.sections)

    @property
    def places(self) -> dict[str, str]:
        """The name of the board that gives each part."""
        return {piece.part: laid.board.name for laid in self.boards for piece in laid.pieces}


def owned(blanks: Iterable[Blank], *, kind: str, number: int) -> list[tuple[Owned, Blank]]:
    """Rough parts under names that say whose they are, each with its owner. [mm]"""
    named = [(Owned(kind, number, blank.name), blank) for blank in blanks]
    return [(owner, replace(blank, name=owner.name)) for owner, blank in named]


def practice_stick(plan: Plan, *, length: float) -> tuple[Blank, ...]:
    """A blank like a side's to practise the joint on, where it has a length. [mm]"""
    side: Part = plan.part("side")
    width, thickness = side.rough_width.value, side.rough_thickness.value
    if not length:
        return ()
    long = plan.choices.rule.sawn(length)
    return (Blank("practice blank", long, width, thickness, side.wood, thickness),)


def class_wood(
    plans: Mapping[int, Plan],
    *,
    boards: Sequence[Board],
    spare: Plan,
    sets: int,
    practice: float,
    seconds: float = TIME_LIMIT,
) -> ClassWood:
    """Lay out a class, its students first."""
    own, more = [], []
    for number, plan in plans.items():
        own += owned(blanks_of(plan.parts), kind="student", number=number)
    for number in range(1, sets + 1):
        more += owned(blanks_of(spare.parts), kind="spare", number=number)
    for number, plan in plans.items():
        more += owned(practice_stick(plan, length=practice), kind="student", number=number)
    owners = {blank.name: owner for owner, blank in (*own, *more)}
    parts, extras = ([blank for _, blank in some] for some in (own, more))
    how = sawing(spare.choices.rule)
    laid = _laid(parts, boards, seconds, how)
    rests = list(_rests(laid.boards)) if laid else list(boards)
    extra = _laid(extras, rests, seconds, how)
    missing = (*(laid.missing if laid else parts), *(extra.missing if extra else extras))
    return ClassWood(laid, extra, (*parts, *extras), missing, owners)


def _laid(
    blanks: Sequence[Blank], boards: Sequence[Board], seconds: float, how: Sawing
) -> ClassLaid | None:
    """The last of the layouts that are found in time."""
    if not blanks or not boards:
        return None
    return list(lay_out_class(blanks, boards, time_limit=seconds, **how))[-1]


def _rests(laid: Sequence[Laid]) -> Iterator[Board]:
    """What boards have left whole at their right ends, measured from where it begins."""
    for one in laid:
        start = one.used + (one.gap if one.used else 0.0)
        board = one.board
        if not start:
            yield board
        elif board.length - start >= SHORTEST_REST:
            defects = tuple(
                replace(
                    row, from_along=max(row.from_along - start, 0.0), to_along=row.to_along - start
                )
                for row in board.defects
                if row.to_along > start
            )
            length = board.length - start
            yield replace(board, name=f"rest of {board.name}", length=length, defects=defects)
