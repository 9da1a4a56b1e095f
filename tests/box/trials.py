"""Joints sawn many times over, each cheek an exact plane: the check on the sums."""

from dataclasses import dataclass
from math import atan, cos, sin

import numpy as np
from numpy.typing import NDArray

from toolkit.box.joinery.hand import GapFace, Hand, SawnJoint

Array = NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class Trials:
    """Corners tried. One number for each corner: its widest gap at either face [mm], and the most
    wood left over anywhere on its cheeks, which has to be pared. [mm]"""

    far: Array
    knifed: Array
    left_over: Array

    def widest(self, face: GapFace) -> Array:
        """The widest gap of each corner at one face. [mm]"""
        return self.far if face == "far" else self.knifed

    def at_most(self, gap: float, *, face: GapFace = "far") -> float:
        """Share of corners in which no gap is wider than this [mm]. [1]"""
        return float((self.widest(face) <= gap).mean())

    def quantile(self, share: float, *, face: GapFace = "far") -> float:
        """The gap that this share of corners stays within. [mm]"""
        return float(np.quantile(self.widest(face), share))

    @property
    def unpared(self) -> float:
        """Share of corners that went home without paring. [1]"""
        return float((self.left_over <= 0).mean())


def _plane(joint: SawnJoint, offset: Array, slope: Array, lead: Array) -> Array:
    """Wood missing at the four corners of each cheek, from the plane that the saw really cut.

    Axes: l along the cheek from the tip, z through the board, w square to the cheek into the
    wood. The plane holds the sawn line on the knifed face, z 0, and leans along the trace that
    it leaves on the board's end, which stands square to the board and so at the tail's angle to
    the cheek. The last axis of what comes back: tip and baseline at z 0, the same at the far face.
    """
    angle, zero = atan(1 / joint.slope), np.zeros_like(offset)
    on_face = np.stack([np.cos(slope), zero, np.sin(slope)], axis=-1)
    across = np.sin(lead)
    on_end = np.stack([across * sin(angle), np.cos(lead), across * cos(angle)], axis=-1)
    normal = np.cross(on_face, on_end)
    through = np.stack([zero, zero, offset], axis=-1)
    level = (normal * through).sum(axis=-1)
    spots = [
        (along, deep) for deep in (0.0, joint.thickness) for along in (0.0, joint.cheek_length)
    ]
    w = [(level - normal[..., 0] * along - normal[..., 1] * deep) / normal[..., 2]
         for along, deep in spots]  # fmt: skip
    return np.stack(w, axis=-1)


def _copied_line(tail: Array, joint: SawnJoint) -> tuple[Array, Array]:
    """Offset and slope of the knife line that a real tail leaves: its outline on the inside."""
    tip, base = tail[..., 2], tail[..., 3]
    return tip, np.arctan((base - tip) / joint.cheek_length)


def try_joints(
    joint: SawnJoint,
    *,
    hand: Hand,
    copied: bool = False,
    squared: bool = False,
    keep_off: float = 0.0,
    trials: int = 20_000,
    seed: int = 1,
) -> Trials:
    """Saw a corner many times over: exact planes in three dimensions, as `gaps` is asked."""
    rng = np.random.default_rng(seed)
    size = (trials, joint.cheeks)

    def cuts(lead: float) -> tuple[Array, Array, Array]:
        return (
            rng.normal(-keep_off, hand.offset, size),
            np.radians(rng.normal(0.0, hand.slope, size)),
            np.radians(rng.normal(0.0, lead, size)),
        )

    tail = _plane(joint, *cuts(0.0 if squared else hand.lead))
    offset, slope, lead = cuts(hand.lead)
    if copied:
        # The pin's own line is the tail's outline, and what the tail lacks the pin is left.
        line, turned = _copied_line(tail, joint)
        offset, slope = offset - line, slope - turned
    missing = tail + _plane(joint, offset, slope, lead)
    return Trials(
        far=np.maximum(missing[..., 2:], 0).max(axis=(-2, -1)),
        knifed=np.maximum(missing[..., :2], 0).max(axis=(-2, -1)),
        left_over=np.maximum(-missing, 0).max(axis=(-2, -1)),
    )
