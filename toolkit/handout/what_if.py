"""A figure with a slider that works with no Python and no network: frames prepared beforehand.

The first frame stands in the page as a still, for paper and for readers without a script; of the
others only what differs from it is kept.
"""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import dataclass
from html import escape

from toolkit.box import Panel
from toolkit.box.seasons import year_between
from toolkit.document import PAPER, Block, Edition
from toolkit.pictures import Picture, Year, year_picture
from toolkit.plan import Plan

STEP = 15  # between two ring angles [deg]
PARTED = "<"  # of two frames alike, most stretches between such signs are the same
_JUNE = 5


@dataclass(frozen=True, slots=True)
class Frame:
    """One place of the slider: what it is called, its picture, whether the box has it so."""

    label: str
    picture: Picture
    own: bool


def rings_frames(plan: Plan) -> tuple[Frame, ...]:
    """The lid's year with its rings from flat to upright.

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
        own = angle == round(choices.wood.rings)
        picture = year_picture(year, rule=plan.choices.rule)
        whose = ", your own box" if own else ""
        frames.append(Frame(f"{angle}°, {words}{whose}", picture, own))
    return tuple(frames)


@dataclass(frozen=True, slots=True)
class WhatIf(Block):
    """A figure whose slider shows one frame after another.

    ``name`` is its id on the page, ``label`` what the slider moves, ``first`` the frame that
    stands there at first and is printed.
    """

    frames: tuple[Frame, ...]
    name: str
    label: str
    first: int = 0

    @property
    def shows(self) -> object:
        """The drawing that is printed."""
        return self.frames[self.first].picture.svg

    def html(self, edition: Edition = PAPER) -> str:
        """It as a figure.

        Source
        ------
        W3C HTML, input type range; WAI-ARIA 1.2, aria-valuetext and aria-live.
        """
        frames, name, first = self.frames, self.name, self.first
        said = [edition.spell(frame.picture.sentence) for frame in frames]
        pieces = [frame.picture.svg.split(PARTED) for frame in frames]
        kept = [
            {"says": frame.label, "sentence": sentence, "parts": _differences(pieces[first], page)}
            for frame, page, sentence in zip(frames, pieces, said, strict=True)
        ]
        whole = {"parted": PARTED, "base": pieces[first], "frames": kept}
        data = json.dumps(whole, ensure_ascii=False, separators=(",", ":"))
        # Nothing in it can end the script that it stands in.
        data = data.replace("<", "\\u003c")
        start = escape(frames[first].label)
        return (
            f'<figure class="what-if" id="{name}"><p class="slider">'
            f'<label for="{name}-slider">{escape(edition.spell(self.label))}</label> '
            f'<input type="range" id="{name}-slider" min="0" max="{len(frames) - 1}" step="1" '
            f'value="{first}" aria-valuetext="{start}"> <output for="{name}-slider">{start}'
            f'</output></p><div class="frame">{frames[first].picture.svg}</div>'
            f'<figcaption aria-live="polite">{escape(said[first])}</figcaption>'
            f'<script type="application/json">{data}</script></figure>'
        )


def _differences(base: Sequence[str], other: Sequence[str]) -> list[list[int | str]]:
    """What to put in the place of some pieces of the first: from, to, instead."""
    from difflib import SequenceMatcher

    matcher = SequenceMatcher(a=base, b=other, autojunk=False)
    return [
        [low, high, *other[start:end]]
        for tag, low, high, start, end in matcher.get_opcodes()
        if tag != "equal"
    ]


SCRIPT = r"""
document.querySelectorAll('figure.what-if').forEach(figure => {
  const {parted, base, frames} = JSON.parse(figure.querySelector('script').textContent);
  const slider = figure.querySelector('input');
  slider.addEventListener('input', () => {
    const frame = frames[slider.value], pieces = base.slice();
    frame.parts.slice().reverse().forEach(([low, high, ...other]) =>
      pieces.splice(low, high - low, ...other));
    figure.querySelector('.frame').innerHTML = pieces.join(parted);
    slider.setAttribute('aria-valuetext', frame.says);
    figure.querySelector('output').textContent = frame.says;
    figure.querySelector('figcaption').textContent = frame.sentence;
  });
});
"""
