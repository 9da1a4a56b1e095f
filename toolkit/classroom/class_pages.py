"""A page for whoever leads the class, in the look of the handout: one HTML file, no network."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from importlib.resources import files as package_files
from typing import TYPE_CHECKING, Literal

from toolkit.measures import as_typed, marking_typed

if TYPE_CHECKING:
    from toolkit.handout.sections import Section
    from toolkit.handout.words import Words


@dataclass(frozen=True, slots=True)
class Look:
    """What all pages of a class share: whose class, on which paper, in which English."""

    of: str
    fingerprint: str
    day: date
    words: Words = "british"
    paper: str = "a4"


def class_page(
    title: str,
    *,
    look: Look,
    sections: Sequence[Section],
    turned: Literal["portrait", "landscape"] = "portrait",
) -> bytes:
    """A page as it is written to its file.

    Parameters
    ----------
    title : str
        Its heading.
    look : Look
        What it shares with the others.
    sections : sequence of Section
        What is on it.
    turned : str
        Which way the paper lies.

    Returns
    -------
    bytes
        One self-contained HTML file in UTF-8.

    Source
    ------
    The workbook's own.
    """
    # Imported here: a run that finds nothing to do need not load it.
    import jinja2
    from markupsafe import Markup

    from toolkit.handout.page import LANGUAGE, PAPERS, _css_text
    from toolkit.handout.words import spelled
    from toolkit.pictures import with_faces

    environment = jinja2.Environment(autoescape=True, undefined=jinja2.StrictUndefined)
    environment.filters["css_text"] = lambda text: Markup(_css_text(text))
    here, handout = package_files("toolkit.classroom"), package_files("toolkit.handout")
    template = environment.from_string(
        here.joinpath("class_page.html.j2").read_text(encoding="utf-8")
    )
    on = f"{look.day:%Y-%m-%d}"
    with marking_typed():
        of = as_typed(look.of)
    page = template.render(
        title=title,
        of=of,
        language=LANGUAGE.get(look.words, ""),
        css=Markup(handout.joinpath("page.css").read_text(encoding="utf-8")),
        more=Markup(here.joinpath("class_page.css").read_text(encoding="utf-8")),
        paper=PAPERS[look.paper],
        turned=turned,
        byline=f"{of}. {on}. Fingerprint {look.fingerprint}.",
        foot=f"{look.of} · {title} · {on} · {look.fingerprint}",
        sections=sections,
    )
    return with_faces(spelled(page, words=look.words)).encode()
