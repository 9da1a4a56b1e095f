"""A show of hands: what to call out, and which misconception the room holds."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from toolkit.plan import Plan
from toolkit.results import Table
from toolkit.study import Question, draw, first_guess

# Nobody remembers more than so many numbers that are called out one after another: custom.
MOST_CALLS = 5
LETTERS = "ABCDEFGH"
_COLUMNS = ("call", "answer", "hands", "what it stands for")


@dataclass(frozen=True, slots=True)
class Call:
    """One answer that is called out, and what it stands for."""

    letter: str
    value: float
    said: str
    right: bool
    stands_for: str

    @property
    def meaning(self) -> str:
        """What it stands for, and that it is right where it is."""
        return f"Right: {self.stands_for}" if self.right else self.stands_for


def calls(question: Question) -> tuple[Call, ...]:
    """What to call out for a question, the smallest first."""
    answers = {_said(question, question.answer): (question.answer, question.working)}
    for slip in question.slips:
        if len(answers) < MOST_CALLS:
            answers.setdefault(_said(question, slip.value), (slip.value, slip.hint))
    rows = sorted((value, said, hint) for said, (value, hint) in answers.items())
    return tuple(
        Call(
            letter=LETTERS[place],
            value=value,
            said=said,
            right=value == question.answer,
            stands_for=hint,
        )
        for place, (value, said, hint) in enumerate(rows)
    )


def _said(question: Question, value: float) -> str:
    """An answer as it is called out: on a mark of the rule, or a whole number."""
    if question.kind == "length":
        return question.rule.exact(question.rule.round(value, fineness=question.fineness))
    words = f"{value:.0f}" if question.kind == "count" else question.written(value)
    return words.replace(" deg", "°")


@dataclass(frozen=True, slots=True)
class Tally:
    """A question with the hands that went up for each call."""

    question: Question
    calls: tuple[Call, ...]
    hands: tuple[int, ...]

    @property
    def all(self) -> int:
        """How many hands went up."""
        return sum(self.hands)

    @property
    def right(self) -> int:
        """How many were right."""
        return next(hands for call, hands in zip(self.calls, self.hands, strict=True) if call.right)

    @property
    def holds(self) -> tuple[Call, ...]:
        """The wrong answers with most hands: more than one where they are even, or none."""
        wrong = [row for row in zip(self.calls, self.hands, strict=True) if not row[0].right]
        most = max((hands for _, hands in wrong), default=0)
        return tuple(call for call, hands in wrong if hands == most and most)

    @property
    def sentence(self) -> str:
        """How many were right, and what the largest part of the others believes."""
        if not self.all:
            return "No hands were counted."
        answer = next(call for call in self.calls if call.right)
        said = f"{self.right} of {self.all} right ({answer.said})."
        if not self.holds:
            return said
        each = self.hands[self.calls.index(self.holds[0])]
        held = " ".join(f"{call.said}: {call.stands_for}" for call in self.holds)
        # The most hands are not always most of the hands.
        if len(self.holds) > 1:
            start = "As many each"
        elif 2 * each > self.all - self.right:
            start = "Most of the others"
        else:
            start = "The largest part of the others"
        return f"{said} {start}, {each}, said {held}"

    def table(self) -> Table:
        """The calls with their hands, and what each stands for."""
        rows = tuple(
            (
                call.letter,
                call.said,
                str(hands),
                f"{hands / self.all:.0%}" if self.all else "",
                call.meaning,
            )
            for call, hands in zip(self.calls, self.hands, strict=True)
        )
        return Table(
            self.question.asks,
            ("call", "answer", "hands", "of all", "what it stands for"),
            rows,
            note=self.sentence,
            numeric=(1, 2, 3),
        )


def tally(question: Question, *, counts: Sequence[int] | Mapping[str, int]) -> Tally:
    """Which misconception a room holds."""
    called = calls(question)
    letters = [call.letter for call in called]
    if isinstance(counts, Mapping):
        unknown = [letter for letter in counts if letter.upper() not in letters]
        if unknown:
            raise ValueError(f"read {unknown[0]!r}: no such call; type {', '.join(letters)}")
        by_letter = {letter.upper(): hands for letter, hands in counts.items()}
        hands = [by_letter.get(letter, 0) for letter in letters]
    else:
        hands = list(counts)
        if len(hands) != len(called):
            raise ValueError(
                f"read {len(hands)} counts; there are {len(called)} calls, {', '.join(letters)}"
            )
    for letter, many in zip(letters, hands, strict=True):
        if not isinstance(many, int) or isinstance(many, bool) or many < 0:
            raise ValueError(f"read {many!r} hands for {letter}; type a whole number, 0 or more")
    return Tally(question, called, tuple(hands))


def asked(plan: Plan, *, lesson: int) -> tuple[Question, ...]:
    """What a lesson asks of a box: the guess that opens it, then its questions."""
    guessed = first_guess(plan, lesson=lesson)
    return (*((guessed,) if guessed else ()), *draw(plan, lesson=lesson))


def hands_sheet(plan: Plan, *, lesson: int) -> tuple[Table, ...]:
    """A sheet to count hands on, for one lesson."""
    sheets = []
    for number, question in enumerate(asked(plan, lesson=lesson), 1):
        rows = tuple((call.letter, call.said, "", call.meaning) for call in calls(question))
        sheets.append(Table(f"{number}. {question.asks}", _COLUMNS, rows, numeric=(1,)))
    return tuple(sheets)
