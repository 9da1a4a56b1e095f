"""Choices whose gaps the rules have filled: what they chose is always there."""

from __future__ import annotations

from dataclasses import dataclass, fields
from typing import Any

from toolkit.box.choices import (
    Choices,
    CornerChoice,
    GrooveChoice,
    GrooveEnds,
    Panels,
    Thickness,
    Tools,
    Wood,
)
from toolkit.box.closures import LidChoice


def values_of(section: Any) -> dict[str, Any]:
    """A section's values by the name of their key, to make another section of. [mm]"""
    return {key.name: getattr(section, key.name) for key in fields(section)}


@dataclass(frozen=True, slots=True, kw_only=True)
class SettledThickness(Thickness):
    """Every thickness as planned; of a lid that is not there 0. [mm]"""

    lid: float


@dataclass(frozen=True, slots=True, kw_only=True)
class SettledCorner(CornerChoice):
    """The dovetails with slope, pins and what stands proud settled. [mm]"""

    slope: float
    half_pin: float
    pin: float
    proud: float


@dataclass(frozen=True, slots=True, kw_only=True)
class SettledGroove(GrooveChoice):
    """The plough setting with nothing left out. [mm]"""

    width: float
    depth: float
    bottom_edge: float
    top_edge: float
    ends: GrooveEnds


@dataclass(frozen=True, slots=True, kw_only=True)
class SettledPanels(Panels):
    """Clearances with nothing left out; 0 for a lid that runs in no groove. [mm]"""

    bottom_across: float
    lid_across: float
    under_lid: float


@dataclass(frozen=True, slots=True, kw_only=True)
class SettledLid(LidChoice):
    """How the box is closed, with the overhang of a lid that lifts off. [mm]"""

    overhang: float


@dataclass(frozen=True, slots=True, kw_only=True)
class SettledWood(Wood):
    """Woods, and the ring angle that lid and bottom shall have. [degrees]"""

    rings: float


@dataclass(frozen=True, slots=True, kw_only=True)
class SettledTools(Tools):
    """Chisel and plough irons as they are reckoned with. [mm]"""

    chisel: float
    plough_irons: tuple[float, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Settled(Choices):
    """Choices whose gaps the rules of ``defaults`` have filled; every design is made of them."""

    thickness: SettledThickness
    corner: SettledCorner
    groove: SettledGroove
    panels: SettledPanels
    tools: SettledTools
    lid: SettledLid
    wood: SettledWood
