"""A whole page: a template filled with sections, in one English."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from importlib.resources import files as package_files
from typing import Any

from toolkit.document.blocks import Block
from toolkit.document.edition import Edition

PAPERS = {"a4": "A4", "letter": "letter"}


@cache
def file_of(room: str, name: str) -> str:
    """A template or a style sheet that lies in a room."""
    return package_files(f"toolkit.{room}").joinpath(name).read_text(encoding="utf-8")


def css_text(text: str) -> str:
    """Text as a CSS string: a title may hold quotes, and nothing may end the style sheet."""
    safe = "".join(
        char if char.isalnum() or char in " .,:·-" else f"\\{ord(char):x} " for char in text
    )
    return f'"{safe}"'


def page(template: str, *, spell: Callable[[str], str], **values: Any) -> str:
    """A template filled; what is put into it is escaped.

    Its filters: ``spelled`` for our own words, ``shown`` for blocks, ``markup`` for HTML.
    """
    # Imported here: a class's run that finds nothing to do need not load it.
    import jinja2
    from markupsafe import Markup

    def shown(block: Block) -> Markup:
        return Markup(block.html(Edition(spell)))

    environment = jinja2.Environment(autoescape=True, undefined=jinja2.StrictUndefined)
    environment.filters |= {
        "css_text": lambda text: Markup(css_text(text)),
        "spelled": spell,
        "shown": shown,
        "markup": Markup,
    }
    return environment.from_string(template).render(**values)
