"""Findings as text for a terminal and as HTML: the level in words and a shape, never in colour."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from html import escape

from toolkit.document.tables import width_or_usual, wrapped
from toolkit.results import LEVELS, Finding, Level, gathered, sorted_findings

SHAPES: dict[Level, str] = {"wont_work": "✗", "care": "!", "good": "✓"}
WORDS: dict[Level, str] = {"wont_work": "won't work", "care": "take care", "good": "good"}
_BEFORE_THE_FOLD = 4  # so many lines are read; what else there is waits for whoever asks
_NOTHING = "There is nothing to say of it."


def findings_text(findings: Iterable[Finding], *, width: int | None = None) -> str:
    """Findings in the order a maker needs them, each with what to do and where it comes from.

    Parameters
    ----------
    findings : iterable of Finding
        The findings, in any order.
    width : int, optional
        Longest line, that of the terminal if left out. [characters]

    Returns
    -------
    str
        Lines without spaces at their ends; the first counts the findings.

    >>> print(findings_text([Finding("good", "lap", "corner", "the lap is 4 mm.")], width=60))
    1 good
    ✓ good: corner: the lap is 4 mm. [lap]
    """
    found = gathered(sorted_findings(findings))
    width = width_or_usual(width)
    paragraphs = [(summary(found), "")]
    for finding in found:
        paragraphs.append((_headline(finding), "  "))
        if finding.remedy:
            paragraphs.append((f"  What to do: {finding.remedy}", "    "))
        if finding.source:
            paragraphs.append((f"  Source: {finding.source}", "    "))
    lines: list[str] = []
    for text, hanging in paragraphs:
        lines += wrapped(text, width=width, hanging=hanging)
    return "\n".join(lines)


def findings_html(
    findings: Iterable[Finding], *, fold: bool = False, spell: Callable[[str], str] = str
) -> str:
    """Findings as an HTML list in the order a maker needs them, the gravest four before a fold.

    Every text in it is escaped.

    Parameters
    ----------
    findings : iterable of Finding
        The findings, in any order.
    fold : bool
        Whether all that is good is folded away, however few lines there are.
    spell : callable
        Puts the workbook's words into the page's English.

    Returns
    -------
    str
        A ``section`` element without styles of its own: the count, the list, and the rest folded.
    """
    found = gathered(sorted_findings(findings))
    lines = ['<section class="findings">', f"<p>{escape(spell(summary(found)))}</p>"]
    open_to_see = [row for row in found if not (fold and row.level == "good")][:_BEFORE_THE_FOLD]
    rest = found[len(open_to_see) :]
    if open_to_see:
        lines += ["<ul>", *(_item(row, spell) for row in open_to_see), "</ul>"]
    if rest:
        good = all(row.level == "good" for row in rest)
        words = f"{len(rest)} checked and good" if good else f"Then {summary(rest)}"
        lines += [f"<details><summary>{escape(spell(words))}</summary>"]
        lines += ["<ul>", *(_item(row, spell) for row in rest), "</ul>", "</details>"]
    return "\n".join([*lines, "</section>"])


def summary(findings: Iterable[Finding]) -> str:
    """How many findings there are of each level: ``1 won't work, 2 take care, 5 good``."""
    levels = [finding.level for finding in findings]
    counts = [f"{levels.count(level)} {WORDS[level]}" for level in LEVELS if level in levels]
    return ", ".join(counts) or _NOTHING


def _headline(finding: Finding) -> str:
    shape, words = SHAPES[finding.level], WORDS[finding.level]
    return f"{shape} {words}: {finding.where}: {finding.message} [{finding.code}]"


def _item(finding: Finding, spell: Callable[[str], str]) -> str:
    def said(text: str) -> str:
        return escape(spell(text))

    css = finding.level.replace("_", "-")
    lines = [
        f'<li class="finding {css}" data-code="{escape(finding.code, quote=True)}">',
        f'<p><span class="shape" aria-hidden="true">{SHAPES[finding.level]}</span> '
        f"<strong>{WORDS[finding.level]}</strong>: "
        f'<span class="where">{said(finding.where)}</span>: {said(finding.message)}</p>',
    ]
    if finding.remedy:
        lines.append(f'<p class="remedy">What to do: {said(finding.remedy)}</p>')
    if finding.source:
        lines.append(f'<p class="source">Source: {said(finding.source)}</p>')
    return "\n".join([*lines, "</li>"])
