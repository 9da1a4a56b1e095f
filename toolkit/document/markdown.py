"""Markdown as HTML, for prose that people write in notebooks."""

from __future__ import annotations

from collections.abc import Callable

from nbconvert.filters.markdown_mistune import IPythonRenderer, MarkdownWithMath

_DEEPER = 1  # a lesson's title is a section's heading
_DEEPEST = 6


class _Renderer(IPythonRenderer):  # type: ignore[misc]
    """Notebook markdown, its words respelled, its headings deeper and without links to them."""

    def __init__(self, spell: Callable[[str], str]) -> None:
        super().__init__(escape=False, exclude_anchor_links=True)
        self._spell = spell

    def text(self, text: str) -> str:
        return str(super().text(self._spell(text)))

    def heading(self, text: str, level: int, **attrs: object) -> str:
        # Ids repeat from lesson to lesson, and nothing links to them.
        return str(super().heading(text, min(level + _DEEPER, _DEEPEST)))


def html_of(source: str, *, spell: Callable[[str], str] = str) -> str:
    """Markdown as HTML; code in it keeps its spelling."""
    return str(MarkdownWithMath(renderer=_Renderer(spell)).render(source)).rstrip()
