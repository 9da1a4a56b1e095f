"""The wood of a whole class: the students' parts on the boards on hand, spares on what is left."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from toolkit.plan import Plan
from toolkit.results import Part
from toolkit.stock import GAP, Blank, Board, ClassLaid, Defect, Laid, blanks_of, lay_out_class

SHORTEST_REST = 100.0  # custom, no source: a shorter end of a board is an offcut [mm]
TIME_LIMIT = 4.0  # for a proof; the first layout is there at once [s]


@dataclass(frozen=True, slots=True)
class ClassWood:
    """Where the parts of a class come from.

    ``laid`` has the students' parts on the boards on hand, ``extra`` the spare sets and practice
    sticks on what those boards have left; each is None where there was no board or no part.
    ``needed`` are all parts, ``missing`` those to be bought. [mm]
    """

    laid: ClassLaid | None
    extra: ClassLaid | None
    needed: tuple[Blank, ...]
    missing: tuple[Blank, ...]

    @property
    def boards(self) -> tuple[Laid, ...]:
        """Every board, or rest of a board, with parts on it."""
        both = [one for one in (self.laid, self.extra) if one is not None]
        return tuple(laid for one in both for laid in one.boards if laid.sections)

    @property
    def places(self) -> dict[str, str]:
        """The name of the board that gives each part."""
        return {piece.part: laid.board.name for laid in self.boards for piece in laid.pieces}


def parts_of(plan: Plan, *, whose: str) -> tuple[Blank, ...]:
    """A box's rough parts with the name of whose they are: ``student 3: side 1``. [mm]"""
    return tuple(replace(b, name=f"{whose}: {b.name}") for b in blanks_of(plan.parts))


def practice_stick(plan: Plan, *, whose: str, length: float) -> tuple[Blank, ...]:
    """A stick like a side's to practise the joint on. [mm]"""
    side: Part = plan.part("side")
    width, thickness = side.rough_width.value, side.rough_thickness.value
    if not length:
        return ()
    return (Blank(f"{whose}: practice stick", length, width, thickness, side.wood, thickness),)


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
    own = [b for n, plan in plans.items() for b in parts_of(plan, whose=f"student {n}")]
    more = [b for n in range(1, sets + 1) for b in parts_of(spare, whose=f"spare {n}")]
    for number, plan in plans.items():
        more += practice_stick(plan, whose=f"student {number}", length=practice)
    laid = _laid(own, boards, seconds)
    rests = list(_rests(laid.boards)) if laid else list(boards)
    extra = _laid(more, rests, seconds)
    missing = (*(laid.missing if laid else own), *(extra.missing if extra else more))
    return ClassWood(laid, extra, (*own, *more), missing)


def _laid(blanks: Sequence[Blank], boards: Sequence[Board], seconds: float) -> ClassLaid | None:
    """The last of the layouts that are found in time."""
    if not blanks or not boards:
        return None
    return list(lay_out_class(blanks, boards, time_limit=seconds))[-1]


def _rests(laid: Sequence[Laid]) -> Iterator[Board]:
    """What boards have left whole at their right ends, measured from where it begins."""
    for one in laid:
        start = one.used + (GAP if one.used else 0.0)
        board = one.board
        if not start:
            yield board
        elif board.length - start >= SHORTEST_REST:
            yield Board(
                name=f"rest of {board.name}",
                species=board.species,
                length=board.length - start,
                width=board.width,
                thickness=board.thickness,
                defects=tuple(
                    Defect(
                        row.kind,
                        max(row.from_along - start, 0.0),
                        row.from_across,
                        row.to_along - start,
                        row.to_across,
                    )
                    for row in board.defects
                    if row.to_along > start
                ),
            )
