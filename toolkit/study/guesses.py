"""Guess first: what a student guessed before looking, kept, and compared afterwards."""

from __future__ import annotations

from dataclasses import dataclass

from toolkit import measures
from toolkit.measures import whole
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
    """Keep a guess of how many, a whole number.

    Parameters
    ----------
    question_id : str
        Which question.
    text : str
        The guess as typed, with or without what is counted.
    what : str
        Name of the count, for the error.

    Returns
    -------
    Kept
        The guess that counts, which is the first.

    Raises
    ------
    MeasureError
        It is no whole number; nothing is kept.
    FileError
        It could not be written down.
    """
    return _keep(question_id, "count", text, float(read_count(text, what=what)))


def undo_guess(question_id: str) -> Kept:
    """Take the last guess at a question back; it stays in the file, marked so.

    Once the answer has been shown, nothing is taken back any more.

    Parameters
    ----------
    question_id : str
        Which question.

    Returns
    -------
    Kept
        The guess that counts now, or None.

    Raises
    ------
    FileError
        It could not be written down.
    """
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
            sentence = f"That is the guess which is kept already: {first.said}."
        else:
            sentence = f"Kept beside your first guess, {first.said}, which is the one compared."
        return Kept(counts, sentence, book.notice)
