"""A figure with a slider that works with no Python and no network: frames prepared beforehand."""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from html import escape

from toolkit.box import year_between
from toolkit.document import PAPER, Block, Edition
from toolkit.pictures import Picture, Year, year_picture
from toolkit.plan import Plan

STEP = 15  # between two ring angles [deg]
PARTED = "<"  # of two frames alike, most stretches between such signs are the same


def ring_angles(plan: Plan) -> Iterator[WhatIf]:
    """A slider over the lid's year, its rings from flat to upright, where a panel is the lid."""
    lid, choices = plan.design.sliding_lid, plan.design.choices
    if lid is None:
        return
    own = round(choices.wood.rings)
    angles = sorted({*range(0, 91, STEP), own})
    frames = []
    for angle in angles:
        year = Year.of_panel(
            lid,
            place=year_between(choices.rooms),
            species=choices.wood.lid,
            rings=float(angle),
            moisture_from=lid.season.make,
        )
        words = {0: "flat-sawn", 90: "quarter-sawn"}.get(angle, "to the width")
        whose = ", your own box" if angle == own else ""
        frames.append((f"{angle}°, {words}{whose}", year_picture(year, rule=plan.choices.rule)))
    yield WhatIf(tuple(frames), "rings", "What if the lid's rings stood at", angles.index(own))


@dataclass(frozen=True, slots=True)
class WhatIf(Block):
    """A figure whose slider shows one picture after another, each under its label."""

    frames: tuple[tuple[str, Picture], ...]
    name: str
    label: str
    first: int = 0

    @property
    def shows(self) -> object:
        """The drawing that is printed."""
        return self.frames[self.first][1].svg

    def html(self, edition: Edition = PAPER) -> str:
        """It as a figure."""
        name, first = self.name, self.first
        start, drawing = self.frames[first]
        base = drawing.svg.split(PARTED)
        frames = [
            {
                "says": label,
                "sentence": edition.spell(picture.sentence),
                "parts": _differences(base, picture.svg.split(PARTED)),
            }
            for label, picture in self.frames
        ]
        whole = {"parted": PARTED, "base": base, "frames": frames}
        data = json.dumps(whole, ensure_ascii=False, separators=(",", ":"))
        # Nothing in it can end the script that it stands in.
        data = data.replace("<", "\\u003c")
        return (
            f'<figure class="what-if" id="{name}"><p class="slider">'
            f'<label for="{name}-slider">{escape(edition.spell(self.label))}</label> '
            f'<input type="range" id="{name}-slider" min="0" max="{len(frames) - 1}" step="1" '
            f'value="{first}" aria-valuetext="{escape(start)}"> <output for="{name}-slider">'
            f'{escape(start)}</output></p><div class="frame">{drawing.svg}</div>'
            f'<figcaption aria-live="polite">{escape(edition.spell(drawing.sentence))}</figcaption>'
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
