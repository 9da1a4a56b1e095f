"""Puts a plan, its pictures, the lessons and the cautions on one page that needs nothing else."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import date
from pathlib import Path

from toolkit.document import LANGUAGE, Words, shown_once, spelling
from toolkit.document.page import PAPERS, file_of, page
from toolkit.files import FileError, write_file
from toolkit.handout.lessons import on_paper, rack_of
from toolkit.handout.safety import CAUTIONS, LOCAL_RULES
from toolkit.handout.sections import sections
from toolkit.handout.what_if import SCRIPT
from toolkit.measures import whole
from toolkit.pictures import for_paper, with_faces, worded
from toolkit.plan import Plan
from toolkit.stock import Board


def handout(
    plan: Plan,
    *,
    paper: str = "a4",
    day: date | None = None,
    name: str = "",
    words: Words = "british",
    lessons: Sequence[int] | None = (),
    boards: Sequence[Board] = (),
    told: Callable[[str], object] = lambda _: None,
) -> str:
    """A plan as one self-contained HTML page.

    Parameters
    ----------
    plan : Plan
        The box, worked out. [mm]
    paper : str
        ``a4`` or ``letter``.
    day : date, optional
        The date printed on every page; today's if left out.
    name : str
        Whose handout it is.
    words : str
        ``"us"`` or ``"british"``: one English through the whole page.
    lessons : sequence of int or None
        Numbers of the lessons to put in; None for all of them.
    boards : sequence of Board
        The rack that the parts are to come from. [mm]
    told : callable
        Told of each piece of work as it is begun.

    Returns
    -------
    str
        The page: no outside request, and a few lines of script for its one slider.

    Raises
    ------
    ValueError
        No such paper, words or lesson, or a lesson's cell failed.
    """
    if paper not in PAPERS:
        raise ValueError(f'paper {paper!r} is not known; type "a4" or "letter"')
    name = whole(name)
    on = f"{day or date.today():%Y-%m-%d}"
    racks = (*boards, *(rack_of(plan) if lessons != () else ()))
    typed = [plan.choices.title, name, *(board.name for board in racks)]
    spell = spelling(words, typed=typed)
    with for_paper(), worded(spell):
        taught = on_paper(plan, numbers=lessons, told=told) if lessons != () else ()
        told("pictures and tables")
        found = sections(plan, words=words, lessons=taught, boards=boards, paper=paper)
        whose = f"{name} · " if name else ""
        made = page(
            file_of("handout", "page.html.j2"),
            spell=spelling(words, typed=[*typed, *(one.title for one in taught if one.typed)]),
            title=plan.choices.title,
            language=LANGUAGE[words],
            css=file_of("handout", "page.css"),
            script=SCRIPT,
            paper=PAPERS[paper],
            name=name,
            byline=f"Outside {plan.outside}. {on}. Fingerprint {plan.fingerprint}.",
            foot=f"{whose}{plan.choices.title} · {on} · {plan.fingerprint}",
            cautions=CAUTIONS,
            local_rules=LOCAL_RULES,
            sections=shown_once(found),
        )
    return with_faces(made)


def write_handout(
    plan: Plan,
    path: Path,
    *,
    paper: str = "a4",
    name: str = "",
    words: Words = "british",
    lessons: Sequence[int] | None = (),
    boards: Sequence[Board] = (),
    told: Callable[[str], object] = lambda _: None,
) -> None:
    """Write the handout as `handout` makes it; where something fails no half file is left."""
    made = handout(
        plan, paper=paper, name=name, words=words, lessons=lessons, boards=boards, told=told
    )
    write_file(path, made.encode(), error=FileError)
