"""Sheets that a class fills in: a show of hands, rubrics and marks."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from toolkit.classroom.assessment import Assessment
from toolkit.plan import BANDS, NOTE, Band, Plan
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
        Call(letter, value, said, value == question.answer, hint)
        for letter, (value, said, hint) in zip(LETTERS, rows, strict=False)
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
        return self.hands[self._answer]

    @property
    def _answer(self) -> int:
        return [call.right for call in self.calls].index(True)

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
        said = f"{self.right} of {self.all} right ({self.calls[self._answer].said})."
        if not self.holds:
            return said
        each = self.hands[self.calls.index(self.holds[0])]
        held = " ".join(f"{call.said}: {call.stands_for}" for call in self.holds)
        # The most hands are not always most of the hands.
        most = 2 * each > self.all - self.right
        start = "Most of the others" if most else "The largest part of the others"
        return f"{said} {start if len(self.holds) == 1 else 'As many each'}, {each}, said {held}"

    def table(self, *, title: str) -> Table:
        """The calls with their hands, and what each stands for."""
        shares = [f"{hands / self.all:.0%}" if self.all else "" for hands in self.hands]
        rows = tuple(
            (call.letter, call.said, str(hands), share, call.meaning)
            for call, hands, share in zip(self.calls, self.hands, shares, strict=True)
        )
        return Table(
            title,
            ("call", "answer", "hands", "of all", "what it stands for"),
            rows,
            note=self.sentence,
            numeric=(1, 2, 3),
        )


def tally(question: Question, *, counts: Sequence[int]) -> Tally:
    """Which misconception a room holds, by the hands for each call."""
    called = calls(question)
    letters = [call.letter for call in called]
    if len(counts) != len(called):
        raise ValueError(
            f"read {len(counts)} counts; there are {len(called)} calls, {', '.join(letters)}"
        )
    for letter, many in zip(letters, counts, strict=True):
        if not isinstance(many, int) or isinstance(many, bool) or many < 0:
            raise ValueError(f"read {many!r} hands for {letter}; type a whole number, 0 or more")
    return Tally(question, called, tuple(counts))


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


def student_sheet(marked: Assessment, *, student: int, title: str = "Postcard box") -> Table:
    """One student's marks."""
    rows = tuple((mark.what, mark.value, mark.band or "", mark.remedy) for mark in marked.marks)
    return Table(
        f"{title}, student {student}",
        ("what", "measured", "band", "what would mend it"),
        rows,
        note=f"{marked.sentence} {NOTE}",
    )


def class_table(marked: Sequence[tuple[int, Assessment]]) -> Table:
    """The whole class, a row for each student."""
    marks = marked[0][1].marks if marked else ()
    heads = [mark.key.replace("_", " ") for mark in marks]
    letter: dict[Band | None, str] = {None: "", **dict(zip(BANDS, "EPNR", strict=True))}
    rows = [
        (f"student {number}", *(letter[mark.band] for mark in box.marks)) for number, box in marked
    ]
    # A sheet to be filled by hand has no noughts in it.
    measured = any(box.worst is not None for _, box in marked)
    columns = zip(*(box.marks for _, box in marked), strict=True)
    again = [sum(mark.band == "Rework" for mark in column) for column in columns]
    rows.append(("to rework", *(str(count) if measured else "" for count in again)))
    words = "E excellent, P pass, N acceptable after a note, R rework, empty not measured."
    return Table("The class", ("student", *heads), tuple(rows), note=f"{words} {NOTE}")
