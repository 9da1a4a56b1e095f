"""Puts a plan, its pictures, the lessons and the cautions on one page that needs nothing else."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import date
from importlib.resources import files as package_files
from pathlib import Path

import jinja2
from markupsafe import Markup

from toolkit.files import FileError
from toolkit.files.writing import write_file
from toolkit.handout.lessons import on_paper
from toolkit.handout.once import said_once
from toolkit.handout.safety import CAUTIONS, LOCAL_RULES
from toolkit.handout.sections import sections
from toolkit.handout.what_if import SCRIPT
from toolkit.handout.words import Words, spelled
from toolkit.measures import as_typed, marking_typed, whole
from toolkit.pictures import for_paper, with_faces
from toolkit.plan import Plan
from toolkit.stock import Board, named_as_typed

PAPERS = {"a4": "A4", "letter": "letter"}
LANGUAGE = {"us": "en-US", "british": "en-GB"}


def _css_text(text: str) -> str:
    """Text as a CSS string: a title may hold quotes, and nothing may end the style sheet."""
    safe = "".join(
        char if char.isalnum() or char in " .,:·-" else f"\\{ord(char):x} " for char in text
    )
    return f'"{safe}"'


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

    Source
    ------
    The cautions are common practice; each finding names its own source.
    """
    if paper not in PAPERS:
        raise ValueError(f'paper {paper!r} is not known; type "a4" or "letter"')
    name = whole(name)
    here = package_files("toolkit.handout")
    environment = jinja2.Environment(autoescape=True, undefined=jinja2.StrictUndefined)
    environment.filters["css_text"] = lambda text: Markup(_css_text(text))
    template = environment.from_string(here.joinpath("page.html.j2").read_text(encoding="utf-8"))
    on = f"{day or date.today():%Y-%m-%d}"
    with for_paper(), marking_typed():
        taught = on_paper(plan, numbers=lessons, told=told) if lessons != () else ()
        told("pictures and tables")
        rack = named_as_typed(boards)
        found = sections(plan, words=words, lessons=taught, boards=rack, paper=paper)
        title, owner = as_typed(plan.choices.title), as_typed(name)
    whose = f"{name} · " if name else ""
    page = template.render(
        title=title,
        language=LANGUAGE.get(words, ""),
        css=Markup(here.joinpath("page.css").read_text(encoding="utf-8")),
        script=Markup(SCRIPT),
        paper=PAPERS[paper],
        name=owner,
        byline=f"Outside {plan.outside}. {on}. Fingerprint {plan.fingerprint}.",
        foot=f"{whose}{plan.choices.title} · {on} · {plan.fingerprint}",
        cautions=CAUTIONS,
        local_rules=LOCAL_RULES,
        sections=said_once(found),
    )
    return with_faces(spelled(page, words=words))


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
    """Write the handout; where something fails no half file is left.

    Parameters
    ----------
    plan : Plan
        The box, worked out. [mm]
    path : Path
        The HTML file.
    paper : str
        ``a4`` or ``letter``.
    name : str
        Whose handout it is.
    words : str
        ``"us"`` or ``"british"``.
    lessons : sequence of int or None
        Numbers of the lessons to put in; None for all of them.
    boards : sequence of Board
        The rack that the parts are to come from. [mm]
    told : callable
        Told of each piece of work as it is begun.

    Raises
    ------
    ValueError
        As for `handout`.
    OSError
        The file can't be written.
    """
    page = handout(
        plan, paper=paper, name=name, words=words, lessons=lessons, boards=boards, told=told
    )
    write_file(path, page.encode(), error=FileError)
