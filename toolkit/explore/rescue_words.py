"""What a rescue's card says: mishaps in the words of a bench, and a way out as a short list."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

from toolkit.measures import Rule
from toolkit.plan.rescue import WITH_LENGTH, WITHOUT, Option, Stage, usual_stage

# What has happened, in the words of somebody at a bench; sizes of parts are told by their names.
_HAPPENED = {
    "bottom_edge": "bottom groove at the wrong height",
    "top_edge": "lid groove at the wrong height",
    "groove_width": "groove too wide or too narrow",
    "groove_depth": "groove too deep or too shallow",
    "baseline_over": "saw ran past the baseline",
    "socket_depth": "socket too deep or too shallow",
    "tail_wrong_side": "tail sawn on the wrong side of its line",
    "lid_play": "lid loose from side to side",
    "lid_rattle": "lid loose up and down",
    "diagonals": "box out of square",
    "lap_through": "lap broken through",
    "lid_tight": "lid binds in its grooves",
}


def label(what: str) -> str:
    """A mishap, told by its name, in the words of somebody at a bench."""
    part, _, axis = what.rpartition("_")
    return _HAPPENED.get(what, f"{part}: wrong {axis}")


def mishaps(stages: Sequence[Stage]) -> tuple[str, ...]:
    """All that can go wrong, by name: first what is mostly found at some stages."""
    known = [*WITHOUT, *WITH_LENGTH]
    joints_first = sorted(known, key=lambda what: what not in _HAPPENED)
    return tuple(sorted(joints_first, key=lambda what: usual_stage(what) not in stages))


def then(option: Option, rule: Rule) -> str:
    """The sizes that follow from a way out."""
    moved = option.moved(rule)
    return f"Then: {moved}." if moved else "The finished sizes stay as they were."


def way_html(option: Option, rule: Rule, number: int) -> str:
    """A way out as a short list: what follows, what is to be said of it, what it costs."""
    lines = [then(option, rule)]
    lines += [f"Won't work: {row.sentence}" for row in option.news("wont_work")]
    lines += [f"Care: {row.sentence}" for row in option.news("care")]
    lines.append(f"Costs {option.costs.sentence}.")
    items = "".join(f"<li>{escape(line)}</li>" for line in lines)
    return (
        f'<div class="bench-view"><p><b>{number}. {escape(option.words)}</b></p>'
        f'<ul>{items}</ul><p class="source">{escape(option.source)}</p></div>'
    )
