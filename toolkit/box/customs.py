"""Rules of thumb: each a named default that a teacher may edit under ``[customs]``.

A custom is not a limit of the wood. A box that goes against one can be made; the finding says
whose habit it breaks, and the plan lists every custom that differs from its default.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from toolkit.measures import key, keys_of
from toolkit.results import CUSTOM

Kind = Literal["length", "share", "slope", "number"]

FAIRHAM = "Fairham (ed.), Woodwork Joints"
NOYES = "Noyes, Handwork in Wood, 1910"
LAPS = "custom: The Woodworker, lapped dovetails, mid-20th c. (a quarter to a third)"


def _custom(default: float, kind: Kind, words: str, source: str = CUSTOM) -> float:
    value: float = key(words, default=default, kind=kind, least=0, source=source)
    return value


@dataclass(frozen=True, slots=True)
class Customs:
    """Rules of thumb."""

    lap_least: float = _custom(3.0, "length", "thinnest lap a beginner should leave")
    lap_share_least: float = _custom(
        0.25,
        "share",
        "thinnest lap, as a share of the pin board's thickness",
        LAPS,
    )
    lap_share_most: float = _custom(
        1 / 3,
        "share",
        "thickest lap, as a share of the pin board's thickness",
        LAPS,
    )
    chisel_room: float = _custom(0.5, "length", "room beside the chisel in the narrowest pin")
    half_pin_least: float = _custom(3.0, "length", "thinnest half pin at its narrow face")
    half_pin_share: float = _custom(
        0.25, "share", "thinnest half pin at its narrow face, as a share of its board's thickness"
    )
    half_pin_of_pin: float = _custom(
        1.0, "share", "a half pin's width at the baseline, as a share of a pin's"
    )
    overhang_most: float = _custom(2.0, "length", "longest corner of a tail beyond its baseline")
    slope_least: float = _custom(5.0, "slope", "most flare: 1 across in this many along")
    slope_most: float = _custom(9.0, "slope", "least flare: 1 across in this many along")
    tail_least: float = _custom(12.0, "length", "narrowest tail chosen on a small box")
    tail_most: float = _custom(20.0, "length", "widest tail chosen on a small box")
    tail_widest: float = _custom(
        44.45, "length", "widest tail at its baseline", f"custom: {NOYES} (1 3/4 in)"
    )
    groove_share_wanted: float = _custom(
        1 / 3, "share", "groove depth preferred, as a share of the wall's thickness"
    )
    groove_share_most: float = _custom(
        0.5, "share", "groove depth at most, as a share of the wall's thickness"
    )
    groove_margin_least: float = _custom(
        1.5, "length", "least wood between a groove and the edge of its tail"
    )
    groove_margin_wanted: float = _custom(
        2.0, "length", "wood aimed at between a groove and the edge of its tail"
    )
    rim_least: float = _custom(5.0, "length", "thinnest strip above the lid groove")
    front_gap_most: float = _custom(
        1.0, "length", "widest gap between the low front and the floor of the lid groove"
    )
    bevel_rim_least: float = _custom(2.0, "length", "thinnest rim of a bevelled edge")
    swelling_room: float = _custom(
        0.3, "length", "room still left beside a panel when it is at its widest"
    )
    memory_room: float = _custom(
        0.5, "length", "more room still beside a panel whose wood's movement is from memory"
    )
    grip_least: float = _custom(
        1.0, "length", "least of a panel left in a groove on its worst side when dry"
    )
    lid_reach_share: float = _custom(
        0.6, "share", "least of the back groove's depth that the closed lid must reach"
    )
    saw_marks: float = _custom(0.5, "length", "planed off each sawn face before it is clean")
    tail_per_pin_most: float = _custom(
        4.0, "number", "widest tail for its looks, so many times a pin", f"custom: {NOYES}"
    )
    square_most: float = _custom(
        0.1, "length", "widest gap under a square's blade at an end or an edge"
    )
    socket_over: float = _custom(
        0.1, "length", "chopped deeper into a lapped socket than its tail is long"
    )
    flushing: float = _custom(0.3, "length", "planed off every outside face to flush the joints")
    saw_offset: float = _custom(
        0.1, "length", "how far saw cuts scatter beside their line, standard deviation"
    )
    saw_lead: float = _custom(
        0.5, "number", "how far saw cuts lean across the board, standard deviation in degrees"
    )
    saw_slope: float = _custom(
        0.5, "number", "how far saw cuts stray from the slope, standard deviation in degrees"
    )

    def changed(self) -> Iterator[tuple[str, float, float]]:
        """Customs that differ from the default, as (name, value, default)."""
        for name, custom in keys_of(Customs).items():
            value = getattr(self, name)
            if value != custom.default:
                yield name, value, custom.default


def cite(name: str) -> str:
    """How a finding names a custom: whose habit it is, and the key that edits it."""
    return f"{keys_of(Customs)[name].source}; edit customs.{name}"
