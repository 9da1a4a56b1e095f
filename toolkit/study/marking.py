"""Questions that mark themselves: read as a rule is read, and knowing the usual slips."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

from toolkit import measures
from toolkit.measures import MM_PER_INCH, Direction, Fineness, MeasureError, Rule
from toolkit.results import above, below, capital

Kind = Literal["length", "count", "deg", "%"]
Verdict = Literal["right", "slip", "near", "far", "unreadable"]

# What can be told apart where no rule says it: half a degree on a bevel gauge, half a percent on
# a moisture meter (common practice, no source). A count is right or wrong.
_MARKS: dict[Kind, float] = {"count": 0.0, "deg": 0.5, "%": 0.5}
# A miss by no more than this many marks is a slip of the sum, and its size is told.
_NEAR_MARKS = 4

_COUNT = re.compile(r"(?P<figures>[0-9]{1,9})(?: ?[^\W\d_][^0-9]*)?")
# The cut list tells its rounding behind a size; who copies it has copied a right answer.
_BRACKET = re.compile(r" ?\([^()]*\)$")
# What an answer has been multiplied by where its number is right and its unit is not.
_OTHER_UNITS = (
    (MM_PER_INCH, "That number is right in millimetres, not in inches."),
    (1 / MM_PER_INCH, "That number is right in inches, not in millimetres."),
    (10.0, "Ten times too much: centimetres for millimetres, or a point in the wrong place?"),
    (0.1, "Ten times too little: millimetres for centimetres, or a point in the wrong place?"),
)


@dataclass(frozen=True, slots=True)
class Slip:
    """A wrong answer that somebody gives every time, and what to say to it. [as the answer]"""

    value: float
    hint: str


@dataclass(frozen=True, slots=True)
class Question:
    """A question about one box with its answer, its usual slips and its working.

    ``answer`` is in mm, degrees, percent or a count, as ``kind`` says; ``direction`` the way in
    which the cut list rounds this size, what it prints being right too; ``senses`` the words for an
    answer over and under; ``nudge`` is said to one that is far off, ``how`` is how to type one.
    """

    id: str
    asks: str
    answer: float
    working: str
    rule: Rule
    slips: tuple[Slip, ...] = ()
    kind: Kind = "length"
    fineness: Fineness = "sizes"
    direction: Direction = "nearest"
    senses: tuple[str, str] = ("too long", "too short")
    nudge: str = ""
    how: str = ""

    @property
    def prompt(self) -> str:
        """What is asked, and how to type the answer."""
        return f"{self.asks} {self.how}".rstrip()

    @property
    def mark(self) -> float:
        """The distance between two marks of the scale that the answer is read on. [as kind]"""
        return self.rule.mark(self.fineness) if self.kind == "length" else _MARKS[self.kind]

    def is_right(self, value: float) -> bool:
        """Whether an answer is within half a mark, or what the cut list prints. [as kind]"""
        if self.kind == "count":
            return value == self.answer
        if self.alike(value, self.answer):
            return True
        if self.kind != "length" or self.direction == "nearest":
            return False
        shown = self.rule.round(self.answer, fineness=self.fineness, direction=self.direction)
        return not below(value, shown) and not above(value, shown)

    def slip(self, value: float) -> Slip | None:
        """The slip whose value is nearest to an answer, if one is within half a mark. [as kind]"""
        near = [slip for slip in self.slips if self.alike(value, slip.value)]
        return min(near, key=lambda slip: abs(slip.value - value), default=None)

    def alike(self, value: float, other: float) -> bool:
        """Whether two answers are within half a mark of each other. [as kind]"""
        if self.kind == "count":
            return value == other
        # Measured from the number itself, a tolerance would grow with it.
        return not above(abs(value - other), self.mark / 2)

    def written(self, value: float) -> str:
        """An answer as it is typed: a length on the student's rule, a count bare. [as kind]"""
        if self.kind == "length":
            return self.rule.exact(value)
        return f"{value:g}" if self.kind == "count" else f"{value:.1f} {self.kind}"


@dataclass(frozen=True, slots=True)
class Marked:
    """What came of an answer: ``text`` as it was typed, ``hint`` what to say to it."""

    verdict: Verdict
    text: str
    hint: str

    @property
    def right(self) -> bool:
        """Whether the answer is right."""
        return self.verdict == "right"

    @property
    def sentence(self) -> str:
        """The verdict as one line to read or to hear."""
        words = {"right": "Right.", "unreadable": "That can't be read yet."}
        return f"{words.get(self.verdict, 'Not yet.')} {self.hint}"


def mark(question: Question, text: str) -> Marked:
    """Mark an answer as a teacher walking past the bench would.

    Parameters
    ----------
    question : Question
        What was asked.
    text : str
        The answer as typed: ``"168 mm"``, ``'6 5/8"'``, ``"16"`` for a count.

    Returns
    -------
    Marked
        Right to half a mark of the student's rule either way; else the hint that belongs to a
        known slip, which way and how far a near miss is out, or what to type instead.
    """
    text = " ".join(text.split())
    try:
        value = _READERS[question.kind](_BRACKET.sub("", text))
    except MeasureError as error:
        return Marked("unreadable", text, _what(text, error, question))
    if question.is_right(value):
        return Marked("right", text, question.working)
    slip = question.slip(value)
    if slip is not None:
        return Marked("slip", text, slip.hint)
    if question.kind == "length":
        for times, hint in _OTHER_UNITS:
            if question.is_right(value / times):
                return Marked("slip", text, hint)
    return _missed(question, text, value)


def _missed(question: Question, text: str, value: float) -> Marked:
    off = value - question.answer
    sense = question.senses[0 if off > 0 else 1]
    step = question.mark or 1.0
    if not above(abs(off), _NEAR_MARKS * step):
        return Marked("near", text, f"{question.written(abs(off))} {sense}: go over the sum again.")
    hint = f"{capital(sense)} by more than {question.written(_NEAR_MARKS * step)}."
    return Marked("far", text, f"{hint} {question.nudge}".strip())


def _what(text: str, error: MeasureError, question: Question) -> str:
    """What the door says; to a bare number, the same number with the student's own unit."""
    if error.problem != "has no unit":
        return str(error)
    own = [offer for offer in error.offers if offer.endswith(f" {question.rule.units}")]
    return f'{text} what? Type "{(own or error.offers)[0]}".'


def read_count(text: str, *, what: str) -> int:
    """A count as people type it: figures, with or without what is counted."""
    match = _COUNT.fullmatch(" ".join(text.split()))
    if match is None:
        raise MeasureError(
            what, read=text, problem="is not a count", hint='type a whole number such as "16"'
        )
    return int(match["figures"])


_MINE = "your answer"
_READERS: dict[Kind, Callable[[str], float]] = {
    "length": lambda text: measures.length(text, what=_MINE, allow="zero"),
    "count": lambda text: float(read_count(text, what=_MINE)),
    "deg": lambda text: measures.angle(text, what=_MINE),
    "%": lambda text: measures.percent(text, what=_MINE),
}
