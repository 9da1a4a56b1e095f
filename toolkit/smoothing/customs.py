"""Rules of thumb of smoothing, each named where a finding uses it."""

from __future__ import annotations

from dataclasses import dataclass

from toolkit.planes import RIDGE_MOST
from toolkit.results import CUSTOM


@dataclass(frozen=True, slots=True)
class SurfaceCustoms:
    """Every rule of thumb that the findings use. Lengths in mm, angles in degrees.

    A custom is no limit of the wood: a finding that leans on one says so. Common practice, no
    source, where no other is named.
    """

    clearance_least: float = 7.0  # behind the edge
    awkward_angle_least: float = 43.0  # of the cut, on interlocked or curly wood
    cutting_angle_most: float = 65.0  # above it a plane scrapes rather than cuts
    curly_angle_wanted: float = 50.0  # from it on curly wood needs no close cap iron
    curly_setback_most: float = 0.4  # of the cap iron, on curly wood below that angle
    setback_shavings_least: float = 2.0  # setback in thicknesses of the shaving
    setback_shavings_low: float = 3.0  # the nearest and the farthest to begin with, in the same
    setback_shavings_high: float = 5.0
    finishing_setback_most: float = 1.0  # the farthest cap iron that helps in finishing
    ridge_most: float = RIDGE_MOST
    shadow_seen: float = 0.1  # eyesight of about one minute of arc at 350 mm, from memory
    shading_seen: float = 0.01  # share of brightness that an eye tells; from memory, no source
    step_felt: float = 0.02  # catches a fingernail drawn across it
    flushing_least: float = 0.2  # planed off a face to flush the joints
    flushing_most: float = 0.3
    rim_planing_most: float = 0.5  # off the rim in all; above it the strip is looked at again
    lid_play_most: float = 0.5  # up and down in its grooves; above it a lid rattles
    spare: float = 15.0  # finish bought beyond what is spread [%]


CUSTOMS = SurfaceCustoms()


def cite(name: str) -> str:
    """How a finding names a custom."""
    return f"{CUSTOM} ({name})"
