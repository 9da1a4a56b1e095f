"""What the drawings are drawn with: a few tints, two line weights, and the order of laying them.

Visible outlines are 1.4 pt and everything else 0.6 pt; hidden edges are short dashes, centre and
gauge lines long dashes with dots, parts that stand next to the one drawn long dashes with two
dots.

Source
------
ISO 128-2:2020, types of line (their names and patterns from memory).
"""

from __future__ import annotations

from dataclasses import dataclass

HEAVY = 1.4  # [pt]
THIN = 0.6  # [pt]

PAPER = "#fcfaf4"
INK = "#2a2420"
FACE = "#efdcb6"
FAR = "#f7eedb"
FLOOR = "#ddc294"
END = "#cba26c"
SAP_END = "#ead3ab"
BARK = "#6e5846"
KNOT = "#b98a58"
FACE_GRAIN = "#d9bf8f"
END_RING = "#a97d47"
GHOST = "#8d8378"
RED = "#a8201a"


@dataclass(frozen=True, slots=True)
class Pen:
    """One way of marking. ``dash`` alternates mark and gap; without a width nothing is lined. [pt]

    ``blocks`` tells whether a label must keep off what is drawn with it.
    """

    colour: str
    width: float = THIN
    dash: tuple[float, ...] = ()
    fill: str | None = None
    blocks: bool = True


def _tint(colour: str) -> Pen:
    return Pen(colour, width=0.0, fill=colour, blocks=False)


# In the order in which they are laid on the paper.
PENS: dict[str, Pen] = {
    "far": _tint(FAR),
    "far grain": Pen("#eadcbd", 0.5, blocks=False),
    "face": _tint(FACE),
    "sap end": _tint(SAP_END),
    "end": _tint(END),
    # What a section cuts lies over what it looks on to.
    "face cut": _tint(FACE),
    "end cut": _tint(END),
    "floor": _tint(FLOOR),
    "face grain": Pen(FACE_GRAIN, 0.5, blocks=False),
    "ring": Pen(END_RING, 0.5, blocks=False),
    # A saw's line, which ends where its gap is drawn.
    "saw": Pen(INK, THIN),
    "bark": _tint(BARK),
    "knot": _tint(KNOT),
    "knot middle": _tint(KNOT),
    "knot line": Pen(BARK, 0.8, blocks=False),
    "void": _tint(PAPER),
    # The light that comes through a joint.
    "gap": _tint(INK),
    "hatch": Pen(INK, 0.5),
    "notch": _tint(FLOOR),
    "ghost": Pen(GHOST, THIN, dash=(1.2, 1.6), blocks=False),
    "waste edge": Pen(INK, THIN, dash=(0.7, 1.7)),
    "hidden": Pen(INK, THIN, dash=(3.2, 1.8)),
    "beside": Pen(INK, THIN, dash=(9.0, 1.6, 0.8, 1.6, 0.8, 1.6)),
    "thin": Pen(INK, THIN),
    "visible": Pen(INK, HEAVY),
    "gauge": Pen(INK, THIN, dash=(9.0, 1.8, 1.0, 1.8)),
    "knife": Pen(INK, 0.9),
    "baseline": Pen(RED, 0.9, dash=(9.0, 1.8, 1.0, 1.8)),
    "dimension": Pen(INK, THIN),
    "arrow": Pen(INK, width=0.0, fill=INK),
    "mark": Pen(INK, 0.9),
    "chalk": Pen(INK, 0.9, blocks=False),
    "part": Pen(INK, 1.0),
    # The number of a saw cut, in a circle on its line.
    "disc": _tint(PAPER),
    "disc edge": Pen(INK, THIN, blocks=False),
    "wrong": Pen(RED, HEAVY),
    "wrong hatch": Pen(RED, THIN, blocks=False),
    "wrong dimension": Pen(RED, THIN),
    "wrong arrow": Pen(RED, width=0.0, fill=RED),
}
