"""Compare with your guess: the answer beside it, and how much the miss is on the bench."""

from __future__ import annotations

from dataclasses import dataclass

from toolkit.measures import Rule
from toolkit.results import above
from toolkit.study.at_hand import about
from toolkit.study.guess_book import Guess, Kind, open_book

_NOTHING = "Guess first: nothing is kept for this question yet. Then look at it again."


@dataclass(frozen=True, slots=True)
class Reveal:
    """A guess beside the answer: ``off`` is guess less answer, None for words or no guess.

    Lengths in mm.
    """

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
        return Reveal(kept, True, off, f"{said}: right, as near as your rule can be read.", notice)
    side = "too much" if off > 0 else "too little"
    thing = about(off, units=rule.units)
    return Reveal(kept, False, off, f"{said}: {rule.exact(abs(off))} {side}, {thing}.", notice)


def reveal_count(question_id: str, *, answer: int, noun: str) -> Reveal:
    """Show a count beside the guess; as for a length.

    Parameters
    ----------
    question_id : str
        Which question.
    answer : int
        How many there really are. [count]
    noun : str
        What is counted, in the plural: ``passes``.

    Raises
    ------
    FileError
        That the answer has been shown could not be written down.
    """
    kept, notice = _shown(question_id, "count")
    if kept is None:
        return Reveal(None, False, None, _NOTHING, notice)
    off = int(kept.value) - answer
    said = f"You guessed {int(kept.value)} and it is {answer} {noun}"
    end = "right" if off == 0 else f"{abs(off)} too {'many' if off > 0 else 'few'}"
    return Reveal(kept, off == 0, float(off), f"{said}: {end}.", notice)


def _shown(question_id: str, kind: Kind) -> tuple[Guess | None, str]:
    """The guess that counts, with a note in the book that its answer has now been shown."""
    with open_book() as book:
        page = book.page(question_id)
        first = page.first(kind)
        if first is not None and not page.revealed:
            book.put(question_id, page.now_revealed())
        return first, book.notice
