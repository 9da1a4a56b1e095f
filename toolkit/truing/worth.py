"""The readings worth taking now: few, those that change most, and the tool that tells each."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from toolkit.results import SQUARE, WALLS, Part, above
from toolkit.truing._words import spoken
from toolkit.truing.accuracy import RuleClass, rule_error
from toolkit.truing.tolerances import Tolerances

if TYPE_CHECKING:
    from toolkit.measures import Rule

Axis = Literal["thickness", "width", "length", "end_out", "end_lean", "edge_out"]

_BY_SQUARE = "hold a square to it against the light, and slip feelers under its blade"

# For walls and for panels, in the order in which they are worth reading: the axis, readings for
# each part, where, what the reading changes, and what reads it better than a rule does.
_WALLS: tuple[tuple[Axis, int, str, tuple[str, ...], str], ...] = (
    (
        "thickness",
        2,
        "at both joint ends",
        ("both joint gauges", "the lap or the tail length", "the box's outside"),
        "set the gauge to the board itself, or read it with callipers",
    ),
    (
        "width",
        1,
        "at the middle, once both ends feel alike",
        ("the divider step", "every tail and pin", "the height of the walls"),
        "hold the walls together on a flat bench: a fingertip feels the step",
    ),
    (
        "length",
        1,
        "along the bottom edge",
        ("the inside of the box", "lid and bottom"),
        "stand the pair on end side by side: they must be alike before they are right",
    ),
    (
        "end_out",
        2,
        "at both ends, over the width",
        ("the gap at the shoulders", "the room of lid and bottom"),
        _BY_SQUARE,
    ),
    (
        "end_lean",
        2,
        "at both ends, over the thickness",
        ("the gap at the shoulders", "the diagonals"),
        _BY_SQUARE,
    ),
    (
        "edge_out",
        1,
        "at the middle of the edge that the fence runs on, over the thickness",
        ("the lean of its grooves", "the step at the rim"),
        _BY_SQUARE,
    ),
)
_PANELS: tuple[tuple[Axis, int, str, tuple[str, ...], str], ...] = (
    (
        "thickness",
        2,
        "at the two long edges",
        ("the rebate that leaves the tongue",),
        "try the edge in its groove",
    ),
    (
        "width",
        1,
        "across the middle",
        ("the room it has to swell",),
        "try it between the grooves",
    ),
    ("length", 1, "along the middle", ("the fit at its ends",), "try it between the grooves"),
    ("end_out", 2, "at both ends, over the width", ("the hold of its corners",), _BY_SQUARE),
)


@dataclass(frozen=True, slots=True)
class Worth:
    """One reading worth taking, and what tells it better than a rule. [mm]"""

    part: str
    axis: Axis
    readings: int  # all pieces of that part together
    where: str
    expected: float  # by the plan; 0 for a gap under a square
    needed: float  # how exactly it must be known
    rule_error: float  # for a gap under a square, over the size that it is read over
    changes: tuple[str, ...]
    better: str

    @property
    def key(self) -> str:
        """The name under which it is written down once read, such as ``side_thickness``."""
        return f"{self.part}_{self.axis}"

    @property
    def by_square(self) -> bool:
        """Whether it is a gap under the blade of a square, which no rule has."""
        return self.axis in SQUARE

    @property
    def rule_tells(self) -> bool:
        """Whether the rule can tell it as exactly as it is needed."""
        return not self.by_square and not above(self.rule_error, self.needed)

    def sentence(self, rule: Rule) -> str:
        """The reading, its reason and its tool in words."""
        times = f"{self.readings} {'reading' if self.readings == 1 else 'readings'}"
        size = "" if self.by_square else f" (planned {rule.exact(self.expected)})"
        head = f"{self.part}, {SQUARE.get(self.axis, self.axis)}{size}: {times} {self.where}"
        changes = f"changes {spoken(self.changes)}"
        if self.by_square:
            return (
                f"{head}; {changes}. A gap of {self.needed:g} mm matters, and a rule, "
                f"{self.rule_error:g} mm off at worst, cannot tell it: {self.better}."
            )
        need = f"It is wanted to {self.needed:g} mm"
        if self.rule_tells:
            return f"{head}; {changes}. {need}, and the rule tells it to {self.rule_error:g} mm."
        return (
            f"{head}; {changes}. {need}, but the rule may be {self.rule_error:g} mm off: "
            f"{self.better}."
        )


def worth_measuring(
    parts: Iterable[Part],
    *,
    made: Collection[str] = (),
    limits: Tolerances | None = None,
    accuracy_class: RuleClass = "II",
) -> tuple[Worth, ...]:
    """The readings of a box worth taking now, those that change most first.

    Parameters
    ----------
    parts : iterable of Part
        The cut list. [mm]
    made : collection of str
        Readings taken already, such as ``"side_thickness"``; left out of the list.
    limits : Tolerances or None
        How exactly sizes are wanted. [mm]
    accuracy_class : str
        Of the rule: ``"I"``, ``"II"`` or ``"III"``.

    Returns
    -------
    tuple of Worth
        Walls before panels; thickness, width, length, then whether it is square. [mm]

    Raises
    ------
    ValueError
        There is no such class of rule.

    Source
    ------
    What is wanted how exactly: customs, common practice, no source. Errors of the rule: directive
    2014/32/EU, MI-008.
    """
    customs = limits or Tolerances()
    # Both gauges are set by a thickness, so it is wanted as exactly as a gauge can be set: two
    # boards, each off by this, differ by no more than the spread allowed.
    needed = {
        "thickness": customs.spread / 2,
        "width": customs.size,
        "length": customs.size,
        **dict.fromkeys(SQUARE, customs.square),
    }
    listed = tuple(parts)
    rows: list[Worth] = []
    for group, is_wall in ((_WALLS, True), (_PANELS, False)):
        members = [part for part in listed if (part.name in WALLS) is is_wall]
        for axis, readings, where, changes, better in group:
            for part in members:
                over = {"end_out": "width"}.get(axis, "thickness") if axis in SQUARE else axis
                size = getattr(part, over).value
                row = Worth(
                    part=part.name,
                    axis=axis,
                    readings=readings * part.count,
                    where=where,
                    expected=0.0 if axis in SQUARE else size,
                    needed=needed[axis],
                    rule_error=rule_error(size, accuracy_class=accuracy_class),
                    changes=changes,
                    better=better,
                )
                if row.key not in made:
                    rows.append(row)
    return tuple(rows)
