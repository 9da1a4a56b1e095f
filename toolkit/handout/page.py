"""Puts a plan, its pictures, the lessons and the cautions on one page that needs nothing else."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import date

from toolkit.document import (
    LANGUAGE,
    PAPERS,
    Section,
    Words,
    file_of,
    page,
    shown_once,
    spelling,
)
from toolkit.handout.lessons import on_paper, rack_of
from toolkit.handout.sections import LOCAL_RULES, cautions, in_order_of_use
from toolkit.handout.what_if import SCRIPT
from toolkit.measures import whole
from toolkit.pictures import for_paper, with_faces, worded
from toolkit.plan import Plan
from toolkit.stock import Board


def printed(
    sections: Sequence[Section],
    *,
    title: str,
    of: str,
    spell: Callable[[str], str],
    words: Words,
    paper: str,
    css: str = "",
    turned: str = "portrait",
    **more: object,
) -> str:
    """Sections as one self-contained HTML page in the look of the handout."""
    # What only some pages have.
    values = {"name": "", "cautions": None, "script": ""} | more
    made = page(
        file_of("handout", "page.html.j2"),
        spell=spell,
        title=title,
        of=of,
        sections=sections,
        language=LANGUAGE[words],
        css=file_of("handout", "page.css") + css,
        paper=PAPERS[paper],
        turned=turned,
        **values,
    )
    return with_faces(made)


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
    name, title = whole(name), plan.choices.title
    on = f"{day or date.today():%Y-%m-%d}"
    racks = (*boards, *(rack_of(plan) if lessons != () else ()))
    typed = [title, name, *(board.name for board in racks)]
    with for_paper(), worded(spelling(words, typed=typed)):
        taught, titles = on_paper(plan, numbers=lessons, told=told)
        told("pictures and tables")
        found = in_order_of_use(plan, words=words, lessons=taught, boards=boards, paper=paper)
        return printed(
            shown_once(tuple(found)),
            title=title,
            of="handout",
            spell=spelling(words, typed=[*typed, *titles]),
            words=words,
            paper=paper,
            name=name,
            byline=f"Outside {plan.outside}. {on}. Fingerprint {plan.fingerprint}.",
            foot=" · ".join(filter(None, (name, title, on, plan.fingerprint))),
            cautions=cautions(),
            local_rules=LOCAL_RULES,
            script=SCRIPT,
        )
