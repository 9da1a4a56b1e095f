"""Puts a plan, its pictures, the lessons and the cautions on one page that needs nothing else.

A lesson's cells are run in this process, bound to the plan: what a teacher wrote is on paper too.
"""

from __future__ import annotations

import ast
from collections.abc import Callable, Sequence
from datetime import date
from hashlib import sha256
from pathlib import Path
from typing import Any

import nbformat

from toolkit.document import (
    LANGUAGE,
    PAPERS,
    Block,
    OtherHtml,
    Plot,
    Prose,
    Section,
    Sentence,
    Words,
    file_of,
    page,
    shown_once,
    spelling,
)
from toolkit.handout.sections import LOCAL_RULES, cautions, in_order_of_use
from toolkit.handout.what_if import SCRIPT
from toolkit.measures import whole
from toolkit.pictures import for_paper, with_faces, worded
from toolkit.plan import Plan
from toolkit.results import capital
from toolkit.stock import Board
from toolkit.study import LessonError, OwnBoards, bound_to, lessons_by_number

SCREEN = "screen-only"
OURS = "ours"


def rack_of(plan: Plan) -> tuple[Board, ...]:
    """The boards that the lessons on paper speak of. [mm]"""
    with bound_to(plan.choices):
        return OwnBoards().load().boards


def on_paper(
    plan: Plan, *, numbers: Sequence[int] | None, told: Callable[[str], object]
) -> tuple[list[Section], list[str]]:
    """The lessons with the numbers of a box, and the titles that a teacher wrote."""
    books = lessons_by_number(numbers)
    sections, typed = [], []
    with bound_to(plan.choices):
        for number, book in books.items():
            told(f"lesson {number}")
            section, theirs = _lesson(number, book)
            sections.append(section)
            typed += theirs
    return sections, typed


def prose_mark(source: str) -> str:
    """What a notebook's metadata hold of each cell's prose as we wrote it."""
    return sha256(source.encode("utf-8", "replace")).hexdigest()[:8]


def _lesson(number: int, path: Path) -> tuple[Section, list[str]]:
    """One lesson, and its title where a teacher wrote that."""
    book = nbformat.read(path, as_version=4)
    ours = book.metadata.get(OURS, "").split()
    names: dict[str, Any] = {}
    title, typed = "", []
    blocks: list[Block] = []
    for place, cell in enumerate(book.cells, start=1):
        if SCREEN in cell.metadata.get("tags", []):
            continue
        if cell.cell_type == "markdown":
            source = cell.source
            theirs = prose_mark(source) not in ours
            if not title:
                first, _, source = source.partition("\n")
                title = first.lstrip("# ").strip()
                typed = [title] if theirs else []
            if source.strip():
                blocks.append(Prose(source, typed=theirs))
            continue
        try:
            value = _value(cell.source, names)
        except Exception as error:
            cause = f"lesson {number}, cell {place} ({cell.source.strip()}): {error}"
            raise LessonError(cause) from error
        if value is not None:
            blocks.append(_block(value))
    short = f"Lesson {number}: {path.stem.partition('_')[2].replace('_', ' ')}"
    heading = f"Lesson {number}. {title}"
    return Section(f"lesson-{number}", heading, "", tuple(blocks), short), typed


def _value(source: str, names: dict[str, Any]) -> Any:
    """Run a cell and give the value of its last line, as a notebook does."""
    tree = ast.parse(source)
    last = tree.body[-1] if tree.body else None
    if not isinstance(last, ast.Expr):
        exec(compile(tree, "<lesson>", "exec"), names)
        return None
    exec(compile(ast.Module(tree.body[:-1], []), "<lesson>", "exec"), names)
    return eval(compile(ast.Expression(last.value), "<lesson>", "eval"), names)


def _block(value: Any) -> Block:
    """A cell's value: a block as it is, anything else as a notebook shows it."""
    if isinstance(value, Block):
        return value
    # A cell may end with a figure, its axes, or what was drawn on them.
    drawn = value[0] if isinstance(value, list) and value else value
    figure: Any = drawn if hasattr(drawn, "savefig") else getattr(drawn, "figure", None)
    if hasattr(figure, "savefig"):
        return Plot(figure)
    html = getattr(value, "_repr_html_", lambda: None)()
    return OtherHtml(html) if html else Sentence(str(value))


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
    words: Words | None = None,
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
    words : str, optional
        ``"us"`` or ``"british"``: one English through the whole page; that of the box's units if
        left out.
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
    words = words or plan.choices.rule.words
    issue = f"issue {plan.fingerprint} of {day or date.today():%Y-%m-%d}"
    hand = " Left-handed: boards and corners are drawn as they lie before you."
    hand = hand if plan.left_handed else ""
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
            byline=f"Outside {plan.outside}. {capital(issue)}.{hand}",
            foot=" · ".join(filter(None, (name, title, issue))),
            cautions=cautions(),
            local_rules=LOCAL_RULES,
            script=SCRIPT,
        )
