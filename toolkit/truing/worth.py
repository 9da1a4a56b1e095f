"""The readings worth taking now: few, those that change most, and the tool that tells each."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from math import ceil
from typing import TYPE_CHECKING, Literal

from toolkit.results import SQUARE, WALLS, Part, above, above_zero, listed, one_of, read_table
from toolkit.truing.tolerances import Tolerances

if TYPE_CHECKING:
    from toolkit.measures import Rule


@dataclass(frozen=True, slots=True)
class Worth:
    """One reading worth taking, and what tells it better than a rule. [mm]"""

    part: str
    axis: str  # such as thickness, or a gap under a square: end_out, end_lean, edge_out
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
        changes = f"changes {listed(self.changes)}"
        if self.by_square:
            return (
                f"{head}; {changes}. A gap of {rule.fine(self.needed)} matters, and a rule, "
                f"{rule.fine(self.rule_error)} off at worst, cannot tell it: {self.better}."
            )
        wrong = rule.fine(self.rule_error)
        need = f"It is wanted to {rule.fine(self.needed)}"
        if self.rule_tells:
            return f"{head}; {changes}. {need}, and the rule tells it to {wrong}."
        return f"{head}; {changes}. {need}, but the rule may be {wrong} off: {self.better}."


def worth_measuring(
    parts: Sequence[Part],
    *,
    made: Collection[str] = (),
    limits: Tolerances | None = None,
    accuracy_class: RuleClass = "II",
) -> tuple[Worth, ...]:
    """The readings of a box worth taking now, those that change most first. [mm]

    Walls before panels; thickness, width, length, then whether it is square. ``made`` names the
    readings taken already, such as ``side_thickness``. How exactly: customs, common practice, no
    source. Errors of the rule: directive 2014/32/EU, MI-008.
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
    # For walls and for panels, in the order in which they are worth reading.
    return tuple(
        _worth(part, row, needed[row["axis"]], accuracy_class)
        for row in read_table("truing/worth.csv")
        for part in parts
        if (part.name in WALLS) is (row["of"] == "wall")
        and f"{part.name}_{row['axis']}" not in made
    )


def _worth(part: Part, row: Mapping[str, str], needed: float, accuracy_class: RuleClass) -> Worth:
    axis = row["axis"]
    over = {"end_out": "width"}.get(axis, "thickness") if axis in SQUARE else axis
    size = getattr(part, over).value
    return Worth(
        part=part.name,
        axis=axis,
        readings=int(row["readings"]) * part.count,
        where=row["where"],
        expected=0.0 if axis in SQUARE else size,
        needed=needed,
        rule_error=rule_error(size, accuracy_class=accuracy_class),
        changes=tuple(row["changes"].split("; ")),
        better=row["better"],
    )


RuleClass = Literal["I", "II", "III"]

# a in mm, b in mm a metre, c in mm.
_ERRORS: dict[RuleClass, tuple[float, float, float]] = {
    "I": (0.1, 0.1, 0.1),
    "II": (0.3, 0.2, 0.2),
    "III": (0.6, 0.4, 0.3),
}


def rule_error(length: float, *, accuracy_class: RuleClass = "II", from_end: bool = False) -> float:
    """The error that a rule or tape may have between two marks a length apart.

    Parameters
    ----------
    length : float
        Between the marks. [mm]
    accuracy_class : str
        ``"I"``, ``"II"`` or ``"III"``, as printed on the rule in an oval.
    from_end : bool
        Whether one of the marks is the end of the rule itself, as with a hooked tape.

    Returns
    -------
    float
        Over or under by so much at most. [mm]

    Raises
    ------
    ValueError
        The length is not above 0, or there is no such class.

    Source
    ------
    Directive 2014/32/EU, Annex X (MI-008), chapter I: a + b × L, with L rounded up to the next
    whole metre, and c more from an end; read. The oval: from memory.

    >>> rule_error(300), rule_error(1200)
    (0.5, 0.7)
    """
    above_zero(length, name="length", example="300")
    one_of(accuracy_class, name="accuracy_class", allowed=tuple(_ERRORS))
    a, b, c = _ERRORS[accuracy_class]
    metres = ceil(length / 1000 * (1 - 1e-9))
    return round(a + b * metres + (c if from_end else 0.0), 6)
