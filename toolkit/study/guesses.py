"""Guess first: what a student guessed before looking, kept, and compared afterwards."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from toolkit import measures
from toolkit.measures import Rule, Units, whole
from toolkit.results import Source, above, read_table
from toolkit.study.guess_book import Guess, Kind, open_book
from toolkit.study.marking import read_count


@dataclass(frozen=True, slots=True)
class Kept:
    """What became of a guess: ``guess`` is the one that counts, or None when all are taken back."""

    guess: Guess | None
    sentence: str
    notice: str = ""


def guess(question_id: str, text: str, *, what: str) -> Kept:
    """Keep a guess of a length.

    Parameters
    ----------
    question_id : str
        Which question, such as ``lesson4.lid-length``.
    text : str
        The guess as typed, with its unit.
    what : str
        Name of the length, for the error.

    Returns
    -------
    Kept
        The guess that counts, which is the first.

    Raises
    ------
    MeasureError
        It is no length; nothing is kept.
    FileError
        It could not be written down.
    """
    return _keep(question_id, "length", text, measures.length(text, what=what, allow="zero"))


def guess_count(question_id: str, text: str, *, what: str) -> Kept:
    """Keep a guess of how many, a whole number with or without what is counted; as for a length."""
    return _keep(question_id, "count", text, float(read_count(text, what=what)))


def undo_guess(question_id: str) -> Kept:
    """Take the last guess back until the answer has been shown; it stays in the file, marked so."""
    with open_book() as book:
        page = book.page(question_id)
        standing = page.standing
        if page.revealed:
            said = "The answer has been shown; the guess stays as it was."
        elif not standing:
            said = "There is no guess to take back."
        else:
            said = f"Taken back: {standing[-1].said}."
            book.put(question_id, page.without_last())
        left = book.page(question_id).standing
        return Kept(left[0] if left else None, said, book.notice)


def _keep(question_id: str, kind: Kind, said: str, value: float | str) -> Kept:
    said = " ".join(whole(said).split())
    with open_book() as book:
        page = book.page(question_id)
        first = page.first(kind)
        last = page.standing[-1] if page.standing else None
        # Running a lesson's cell again is no second guess.
        if last is None or (last.kind, last.value) != (kind, value):
            book.put(question_id, page.with_guess(kind, said, value))
        counts = book.page(question_id).first(kind)
        if first is None:
            sentence = f"Kept: {said}. Now look."
        elif first.value == value:
            sentence = f"That is the guess which is kept already: {first.said}.{first.remark}"
        else:
            sentence = f"Kept beside your first guess, {first.said}, which is the one compared."
            sentence += first.remark
        return Kept(counts, sentence, book.notice)


# A thing counts as "about" a length when it is this near to it, as a share of the length.
_NEAR = 0.15
# Of the thinnest thing, half of one can still be felt; less is said to be less.
_LEAST_SHARE = 0.5


@dataclass(frozen=True, slots=True)
class BenchThing:
    """A thing at hand with a size that everybody knows by touch. [mm]"""

    name: str
    plural: str
    thickness: float
    most: int
    read_in: str
    source: Source


@cache
def bench_things() -> tuple[BenchThing, ...]:
    """Every thing of the table, thinnest first."""
    things = [
        BenchThing(
            name=row["name"],
            plural=row["plural"],
            thickness=float(row["thickness_mm"]),
            most=int(row["most"]),
            read_in=row["read_in"],
            source=Source.of(row),
        )
        for row in read_table("study/bench_things.csv")
    ]
    return tuple(sorted(things, key=lambda thing: thing.thickness))


def about(amount: float, *, units: Units = "mm") -> str:
    """A length in things on the bench, to stand behind the number."""
    size = abs(amount)
    things = [thing for thing in bench_things() if thing.read_in in ("both", units)]
    thinnest, largest = things[0], things[-1]
    if size < _LEAST_SHARE * thinnest.thickness:
        return f"less than {thinnest.name}"
    if size > (1 + _NEAR) * largest.most * largest.thickness:
        return f"more than {largest.most} {largest.plural}"

    def badness(row: tuple[int, BenchThing]) -> tuple[int, float]:
        count, thing = row
        miss = abs(count * thing.thickness - size) / size
        # Few things are easier to picture than many, so that any that is near enough will do.
        return (count, miss) if miss <= _NEAR else (1000, miss)

    rows = [(count, thing) for thing in things for count in range(1, thing.most + 1)]
    count, thing = min(rows, key=badness)
    return f"about {thing.name}" if count == 1 else f"about {count} {thing.plural}"


_NOTHING = "Guess first: nothing is kept for this question yet. Then look at it again."


@dataclass(frozen=True, slots=True)
class Reveal:
    """A guess beside the answer: ``off`` is guess less answer, None for words or no guess."""

    guess: Guess | None
    right: bool
    off: float | None
    sentence: str
    notice: str = ""


def reveal(question_id: str, *, answer: float, rule: Rule) -> Reveal:
    """Show the answer beside the guess: how far off, and how much that is on the bench.

    Parameters
    ----------
    question_id : str
        Which question.
    answer : float
        What it really is. [mm]
    rule : Rule
        The rule that the student reads.

    Returns
    -------
    Reveal
        Without a guess the answer is kept back.

    Raises
    ------
    FileError
        That the answer has been shown could not be written down.
    """
    kept, notice = _shown(question_id, "length")
    if kept is None:
        return Reveal(None, False, None, _NOTHING, notice)
    off = float(kept.value) - answer
    said = f"You guessed {rule.exact(float(kept.value))} and it is {rule.exact(answer)}"
    if not above(abs(off), rule.mark("joints") / 2):
        said += ": right, as near as your rule can be read."
        return Reveal(kept, True, off, said + kept.remark, notice)
    side = "too much" if off > 0 else "too little"
    thing = about(off, units=rule.units)
    said += f": {rule.exact(abs(off))} {side}, {thing}."
    return Reveal(kept, False, off, said + kept.remark, notice)


def reveal_count(question_id: str, *, answer: int, noun: str) -> Reveal:
    """Show a count of such things, in the plural, beside the guess; as for a length."""
    kept, notice = _shown(question_id, "count")
    if kept is None:
        return Reveal(None, False, None, _NOTHING, notice)
    off = int(kept.value) - answer
    said = f"You guessed {int(kept.value)} and it is {answer} {noun}"
    end = "right" if off == 0 else f"{abs(off)} too {'many' if off > 0 else 'few'}"
    return Reveal(kept, off == 0, float(off), f"{said}: {end}.{kept.remark}", notice)


def _shown(question_id: str, kind: Kind) -> tuple[Guess | None, str]:
    """The guess that counts, with a note in the book that its answer has now been shown."""
    with open_book() as book:
        page = book.page(question_id)
        first = page.first(kind)
        if first is not None and not page.revealed:
            book.put(question_id, page.now_revealed())
        return first, book.notice
