"""What a lesson shows for one state of its sliders, and how it is put on the page."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from html import escape

from toolkit.document import SCREEN, Edition, Figure, FindingsBlock, as_html
from toolkit.measures import Rule
from toolkit.pictures import Picture
from toolkit.results import Finding, Table, Working


def spoken(text: str, look: str = "bench-say") -> str:
    """A sentence of a card, read out when it changes: to say, ``bench-right``, ``bench-hint``."""
    return f'<div class="bench-view"><p class="{look}" role="status">{escape(text)}</p></div>'


@dataclass(frozen=True, slots=True)
class View:
    """A picture with its sentence, numbers with their workings, and findings.

    ``beside`` are pictures of the same state that belong under it.
    """

    picture: Picture
    numbers: Table
    findings: tuple[Finding, ...] = ()
    beside: tuple[Picture, ...] = ()

    def figure(self, scene: str) -> str:
        """The picture and its sentence as one figure of HTML, for a scene of that name."""
        return Figure(self.picture).html(Edition(screen=True, place=scene))

    def words(self, scene: str) -> str:
        """What is under it, the numbers and the findings, as HTML."""
        beside = Edition(screen=True, place=f"{scene}-beside")
        parts = [*(Figure(picture).html(beside) for picture in self.beside), as_html(self.numbers)]
        if self.findings:
            parts.append(FindingsBlock(self.findings).html(SCREEN))
        return f'<div class="bench-view">{"".join(parts)}</div>'


MUCH = ("what", "how much", "where it comes from")


def numbers(
    rows: Iterable[tuple[str, ...]],
    *,
    title: str = "Numbers",
    columns: tuple[str, ...] = ("what", "value", "where it comes from"),
    numeric: tuple[int, ...] = (1,),
) -> Table:
    """The numbers of a scene, each with its working."""
    return Table(title, columns, tuple(rows), numeric=numeric)


def size_row(size: Working, rule: Rule) -> tuple[str, str, str]:
    """A size as a row of the numbers."""
    return size.name, rule.show(size.value), size.reckoned(rule)


class ImpossibleError(ValueError):
    """A combination of sliders that can't be; its text is the sentence shown."""

    def __init__(self, sentence: str, *, there_is: str = "No such box.") -> None:
        super().__init__(sentence)
        self.there_is = there_is
