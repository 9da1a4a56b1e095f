"""Puts a plan, its pictures and the cautions on one page that needs nothing else."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from html import escape
from importlib.resources import files as package_files
from pathlib import Path

import jinja2
from markupsafe import Markup

from toolkit.files import FileError
from toolkit.files.writing import write_file
from toolkit.handout.safety import CAUTIONS, LOCAL_RULES
from toolkit.pages import as_html, findings_html
from toolkit.pictures import Picture, box_apart, corner_picture, section_across, section_along
from toolkit.plan import Plan, tables
from toolkit.results import Finding, Table

PAPERS = {"a4": "A4", "letter": "letter"}


@dataclass(frozen=True, slots=True)
class Section:
    """A section of the handout: its heading, a line of prose, blocks of finished HTML."""

    id: str
    heading: str
    words: str
    blocks: tuple[str, ...]


def _figure(picture: Picture) -> str:
    return f"<figure>{picture.svg}<figcaption>{escape(picture.sentence)}</figcaption></figure>"


def _tables(*rows: Table) -> tuple[str, ...]:
    return tuple(as_html(table) for table in rows if table.rows)


def _sources(findings: Iterable[Finding]) -> str:
    named = sorted({part for row in findings for part in row.source.split("; ") if part})
    items = "".join(f"<li>{escape(text)}</li>" for text in named if not text.startswith("edit "))
    return f"<ul>{items}</ul>"


def _sections(plan: Plan) -> list[Section]:
    exists = plan.design.exists
    bad = any(row.level == "wont_work" for row in plan.findings)
    said = "Look at these before anyone saws." if bad else "Nothing here stops the box."
    sections = [
        Section("findings", "What a maker would say", said, (findings_html(plan.findings),)),
        Section(
            "lists",
            "Cut list and rough list",
            "",
            _tables(tables.cut_list(plan), tables.rough_list(plan)),
        ),
    ]
    if exists:
        sections += [
            Section(
                "box",
                "The box",
                "Every part has its face mark, its edge mark and its number.",
                (_figure(box_apart(plan)),),
            ),
            Section(
                "corners",
                "The corners",
                "Copy the pins from your own tails, never from here.",
                (
                    _figure(corner_picture(plan, which="back", paper=True)),
                    _figure(corner_picture(plan, which="front", paper=True)),
                    *_tables(tables.tails(plan)),
                ),
            ),
            Section(
                "grooves",
                "Grooves and panels",
                "",
                (
                    _figure(section_across(plan, paper=True)),
                    _figure(section_along(plan, paper=True)),
                ),
            ),
            Section(
                "settings",
                "Gauge and plough settings",
                "Set each one once, try it on waste, and leave it set until the box is done.",
                _tables(tables.tool_settings(plan)),
            ),
        ]
    return [
        *sections,
        Section("workings", "Where the numbers come from", "", _tables(tables.workings(plan))),
        Section(
            "chosen",
            "Chosen and changed",
            "What the box file left to a rule, and which rules of thumb it changes.",
            _tables(tables.chosen(plan), tables.changed_customs(plan))
            or ("<p>Nothing: every number is your own, and every custom is at its default.</p>",),
        ),
        Section("sources", "Sources", "", (_sources(plan.findings),)),
    ]


def _css_text(text: str) -> str:
    """Text as a CSS string: a title may hold quotes, and nothing may end the style sheet."""
    safe = "".join(
        char if char.isalnum() or char in " .,:·-" else f"\\{ord(char):x} " for char in text
    )
    return f'"{safe}"'


def handout(plan: Plan, *, paper: str = "a4", day: date | None = None) -> str:
    """A plan as one self-contained HTML page.

    Parameters
    ----------
    plan : Plan
        The box, worked out. [mm]
    paper : str
        ``a4`` or ``letter``.
    day : date, optional
        The date printed on every page; today's if left out.

    Returns
    -------
    str
        The page: no outside request, no script.

    Raises
    ------
    ValueError
        No such paper.

    Source
    ------
    The cautions are common practice; each finding names its own source.
    """
    if paper not in PAPERS:
        raise ValueError(f'paper {paper!r} is not known; type "a4" or "letter"')
    here = package_files("toolkit.handout")
    environment = jinja2.Environment(autoescape=True, undefined=jinja2.StrictUndefined)
    environment.filters["css_text"] = lambda text: Markup(_css_text(text))
    page = environment.from_string(here.joinpath("page.html.j2").read_text(encoding="utf-8"))
    on = f"{day or date.today():%Y-%m-%d}"
    return page.render(
        title=plan.choices.title,
        css=here.joinpath("page.css").read_text(encoding="utf-8"),
        paper=PAPERS[paper],
        byline=f"Outside {plan.outside}. {on}. Fingerprint {plan.fingerprint}.",
        foot=f"{plan.choices.title} · {on} · {plan.fingerprint}",
        cautions=CAUTIONS,
        local_rules=LOCAL_RULES,
        sections=_sections(plan),
    )


def write_handout(plan: Plan, path: Path, *, paper: str = "a4") -> None:
    """Write the handout; where something fails no half file is left.

    Parameters
    ----------
    plan : Plan
        The box, worked out. [mm]
    path : Path
        The HTML file.
    paper : str
        ``a4`` or ``letter``.

    Raises
    ------
    ValueError
        No such paper.
    OSError
        The file can't be written.
    """
    write_file(path, handout(plan, paper=paper).encode(), error=FileError)
