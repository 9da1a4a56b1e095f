"""A figure with a slider that works with no Python and no network: frames prepared beforehand.

The first frame stands in the page as a still, for paper and for readers without a script; of the
others only what differs from it is kept.
"""

from __future__ import annotations

import json
import re
from collections.abc import Sequence
from dataclasses import dataclass
from html import escape

from toolkit.box import Panel
from toolkit.box.seasons import year_between
from toolkit.handout.words import Words, spelled
from toolkit.pictures import Picture, Year, year_picture
from toolkit.plan import Plan

STEP = 15  # between two ring angles [deg]
_PIECES = re.compile(r"<[^>]+>[^<]*")
_JUNE = 5


@dataclass(frozen=True, slots=True)
class Frame:
    """One place of the slider: what it is called, and its picture."""

    label: str
    picture: Picture


def rings_frames(plan: Plan) -> tuple[Frame, ...]:
    """The lid's year with its rings from flat to upright, the student's own angle first.

    Parameters
    ----------
    plan : Plan
        The box. [mm]

    Source
    ------
    As for the season findings; the year is an even swing between the box's two rooms.
    """
    lid, choices = plan.design.lid, plan.design.choices
    if not isinstance(lid, Panel):
        return ()
    angles = sorted({*range(0, 91, STEP), round(choices.wood.rings)})
    frames = []
    for angle in angles:
        year = Year.of_panel(
            lid,
            place=year_between(choices.rooms),
            species=choices.wood.lid,
            rings=float(angle),
            made_in=_JUNE,
            moisture_from=lid.season.make,
        )
        words = {0: "flat-sawn", 90: "quarter-sawn"}.get(angle, "to the width")
        own = ", your own box" if angle == round(choices.wood.rings) else ""
        picture = year_picture(year, rule=plan.choices.rule)
        frames.append(Frame(f"{angle}°, {words}{own}", picture))
    return tuple(frames)


def what_if(frames: Sequence[Frame], *, name: str, label: str, words: Words, first: int = 0) -> str:
    """A figure whose slider shows one frame after another.

    Parameters
    ----------
    frames : sequence of Frame
        In the slider's order.
    name : str
        Its id on the page.
    label : str
        What the slider moves.
    words : str
        ``"us"`` or ``"british"``: the page's own filter passes a script by.
    first : int
        Which frame stands there at first, and is printed.

    Source
    ------
    W3C HTML, input type range; WAI-ARIA 1.2, aria-valuetext and aria-live.
    """
    pages = [spelled(frame.picture.svg, words=words) for frame in frames]
    said = [spelled(frame.picture.sentence, words=words) for frame in frames]
    base = _pieces(pages[first])
    kept = [
        {"says": frame.label, "sentence": sentence, "parts": _differences(base, _pieces(page))}
        for frame, page, sentence in zip(frames, pages, said, strict=True)
    ]
    data = json.dumps({"base": base, "frames": kept}, ensure_ascii=False, separators=(",", ":"))
    # Nothing in it can end the script that it stands in.
    data = data.replace("<", "\\u003c")
    start = escape(frames[first].label)
    return (
        f'<figure class="what-if" id="{name}">'
        f'<p class="slider"><label for="{name}-slider">{escape(label)}</label> '
        f'<input type="range" id="{name}-slider" min="0" max="{len(frames) - 1}" step="1" '
        f'value="{first}" aria-valuetext="{start}"> <output for="{name}-slider">{start}</output>'
        f'</p><div class="frame">{pages[first]}</div>'
        f'<figcaption aria-live="polite">{escape(said[first])}</figcaption>'
        f'<script type="application/json">{data}</script></figure>'
    )


def _pieces(svg: str) -> list[str]:
    """A picture as its tags, each with the text behind it."""
    return _PIECES.findall(svg)


def _differences(base: Sequence[str], other: Sequence[str]) -> list[list[object]]:
    """What to put in the place of some pieces of the first: from, to, instead."""
    from difflib import SequenceMatcher

    matcher = SequenceMatcher(a=base, b=other, autojunk=False)
    return [
        [low, high, "".join(other[start:end])]
        for tag, low, high, start, end in matcher.get_opcodes()
        if tag != "equal"
    ]


SCRIPT = r"""
document.querySelectorAll('figure.what-if').forEach(figure => {
  const {base, frames} = JSON.parse(figure.querySelector('script').textContent);
  const slider = figure.querySelector('input');
  slider.addEventListener('input', () => {
    const frame = frames[slider.value], pieces = base.slice();
    frame.parts.slice().reverse().forEach(([low, high, text]) =>
      pieces.splice(low, high - low, text));
    figure.querySelector('.frame').innerHTML = pieces.join('');
    slider.setAttribute('aria-valuetext', frame.says);
    figure.querySelector('output').textContent = frame.says;
    figure.querySelector('figcaption').textContent = frame.sentence;
  });
});
"""
