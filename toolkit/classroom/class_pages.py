"""A page for whoever leads the class, in the look of the handout: one HTML file, no network."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING, Literal

from toolkit.document import LANGUAGE, Words, spelling
from toolkit.document.page import PAPERS, file_of, page

if TYPE_CHECKING:
    from toolkit.document import Section


@dataclass(frozen=True, slots=True)
class Look:
    """What all pages of a class share: whose class, on which paper, in which English.

    ``typed`` are the titles and the boards' names, which keep their spelling.
    """

    of: str
    fingerprint: str
    day: date
    words: Words = "british"
    paper: str = "a4"
    typed: tuple[str, ...] = ()

    @property
    def spell(self) -> Callable[[str], str]:
        """What puts our words into its English."""
        return spelling(self.words, typed=(self.of, *self.typed))


def class_page(
    title: str,
    *,
    look: Look,
    sections: Sequence[Section],
    turned: Literal["portrait", "landscape"] = "portrait",
) -> bytes:
    """A page as it is written to its file: one self-contained HTML file in UTF-8."""
    # Imported here: a run that finds nothing to do need not load what draws.
    from toolkit.pictures import with_faces

    on = f"{look.day:%Y-%m-%d}"
    made = page(
        file_of("classroom", "class_page.html.j2"),
        spell=look.spell,
        title=title,
        of=look.of,
        language=LANGUAGE[look.words],
        css=file_of("handout", "page.css"),
        more=file_of("classroom", "class_page.css"),
        paper=PAPERS[look.paper],
        turned=turned,
        byline=f"{look.of}. {on}. Fingerprint {look.fingerprint}.",
        foot=f"{look.of} · {title} · {on} · {look.fingerprint}",
        sections=sections,
    )
    return with_faces(made).encode()
