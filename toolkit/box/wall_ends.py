"""How thick the walls are, how tail and lap share that, and what is left standing at their ends.

What has been made is a fact here: it replaces the choice.
"""

from __future__ import annotations

from toolkit.box.choices import Choices
from toolkit.results import Term, Working


def minus(terms: tuple[Term, ...]) -> tuple[Term, ...]:
    """The same terms, taken off."""
    return tuple(Term(term.label, -term.each, term.times) for term in terms)


def as_made(name: str, *, value: float | None) -> Working | None:
    """A measured fact as a working, or None where nothing has been made yet. [mm]"""
    return None if value is None else Working.of(name, ("as made", value))


def _thickness(name: str, made: float | None, chosen: float) -> Working:
    return as_made(name, value=made) or Working.of(name, ("as chosen", chosen))


def _proud(each: float, times: int = 1) -> tuple[Term, ...]:
    """What is left standing at some ends, to be planed off; less than nothing is shy."""
    return (Term("proud" if each > 0 else "shy", each, times),) if each else ()


def _tail_and_lap(
    c: Choices, lap: float | None, board: str, pin_board: Working, proud: float
) -> tuple[Working, Working]:
    """Tail length and lap against one pin board: of the two, one is fixed, the other is left."""
    thickness = (f"{board} thickness", pin_board.value)
    gauged, chosen = c.made.tail_length, c.corner.tail_length
    if c.corner.joint == "through" and gauged is None:
        return Working.of("tail length", thickness), Working.of("lap", ("through joint", 0.0))
    if gauged is None and lap is not None:
        return (
            Working.of("tail length", thickness, ("lap", -lap)),
            Working.of("lap", ("as chosen", lap)),
        )
    fixed = gauged if gauged is not None else chosen
    if fixed is None:
        raise ValueError("lap or tail length must be settled before the frame is reckoned")
    word = "as gauged" if gauged is not None else "as chosen"
    standing = _proud(proud) if c.corner.joint == "through" else ()
    tail = Working("tail length", (Term(word, fixed), *minus(standing)))
    return tail, Working.of("lap", thickness, ("tail length", -tail.value))


def thicknesses(c: Choices) -> tuple[Working, Working, Working]:
    """Thickness of a side, the back and the front. [mm]"""
    made = c.made
    return (
        _thickness("side thickness", made.side_thickness, c.thickness.side),
        _thickness("back thickness", made.back_thickness, c.thickness.end),
        _thickness("front thickness", made.front_thickness, c.thickness.end),
    )


def tails_and_laps(
    c: Choices, *, lap: float | None, proud: float
) -> tuple[tuple[Working, Working], tuple[Working, Working]]:
    """Tail length and lap at the back and at the front; without a lap something else decides."""
    side, back, front = thicknesses(c)
    if c.corner.tails_on == "ends":
        alike = _tail_and_lap(c, lap, "side", side, proud)
        return alike, alike
    return (
        _tail_and_lap(c, lap, "back", back, proud),
        _tail_and_lap(c, lap, "front", front, proud),
    )


def left_standing(c: Choices, proud: float) -> tuple[tuple[Term, ...], tuple[Term, ...]]:
    """What the two ends of a side, and of back or front, are cut over the box that is made. [mm]

    The pin boards' end grain comes to the outside; a through joint brings out the tails' too.
    """
    both, on_ends = _proud(proud, 2), c.corner.tails_on == "ends"
    through = c.corner.joint == "through"
    return both if on_ends or through else (), both if not on_ends or through else ()
