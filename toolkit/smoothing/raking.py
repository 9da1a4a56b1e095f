"""Tracks under a low lamp and under a fingernail."""

from __future__ import annotations

from dataclasses import dataclass
from math import atan, cos, degrees, radians, tan

from toolkit.measures import Rule
from toolkit.results import above, between, not_negative
from toolkit.smoothing.customs import CUSTOMS


def shadow_length(step: float, *, lamp_height: float, across: float = 0.0) -> float:
    """How long the shadow of a step is, measured square to the step.

    Parameters
    ----------
    step : float
        Height of the step, such as the track of an iron's corner. [mm]
    lamp_height : float
        Angle of the light above the surface. [degrees]
    across : float
        How far the light comes from the side of the square to the step. [degrees]

    Returns
    -------
    float
        Length of the shadow. [mm]

    Raises
    ------
    ValueError
        The step is negative, or an angle is out of range.

    Source
    ------
    Geometry: height over the tangent of the lamp's angle.

    >>> round(shadow_length(0.02, lamp_height=5), 2)
    0.23
    """
    not_negative(step, name="step", example="0.02")
    between(lamp_height, low=0.1, high=90, name="lamp height", example="5")
    between(across, low=0, high=90, name="direction across the step", example="0")
    if lamp_height == 90:
        return 0.0
    return step * cos(radians(across)) / tan(radians(lamp_height))


def shading(slope: float, *, lamp_height: float) -> float:
    """Change of brightness of a slope that faces the lamp, beside a level surface.

    Parameters
    ----------
    slope : float
        Slope towards the lamp, negative away from it. [degrees]
    lamp_height : float
        Angle of the light above the surface. [degrees]

    Returns
    -------
    float
        Change of brightness as a share of the level surface's; -1 where no light falls. [1]

    Raises
    ------
    ValueError
        An angle is out of range.

    Source
    ------
    Light falls on a dull surface by the cosine of its angle (Lambert's law); for slopes so small
    the share is tan(slope)/tan(lamp).

    >>> round(100 * shading(0.0862, lamp_height=5), 1)
    1.7
    """
    between(slope, low=-89, high=89, name="slope", example="1")
    between(lamp_height, low=0.1, high=89, name="lamp height", example="5")
    return max(tan(radians(slope)) / tan(radians(lamp_height)), -1.0)


@dataclass(frozen=True, slots=True)
class Shows:
    """Whether a low lamp shows a surface's tracks, and a nail feels them. [mm, degrees]"""

    lamp_height: float
    step: float
    shadow: float
    ridge: float
    slope: float  # of the scallops towards the lamp
    shading: float  # how much they change the brightness [1]
    scallops_cast: bool  # whether they throw a shadow themselves
    step_seen: bool
    scallops_seen: bool
    step_felt: bool

    def sentence(self, rule: Rule) -> str:
        """Both in words, with the customs named as such."""
        c, lamp = CUSTOMS, f"With the lamp at {self.lamp_height:g}°"
        rows = []
        if self.step > 0:
            rows.append(
                f"{lamp} a step of {rule.fine(self.step)} throws a shadow "
                f"{rule.fine(self.shadow)} long, which the eye "
                f"{'sees' if self.step_seen else 'misses'} (custom: "
                f"{rule.fine(c.shadow_seen)} and more); a nail drawn across "
                f"{'feels' if self.step_felt else 'misses'} it (custom: "
                f"{rule.fine(c.step_felt)} and more)."
            )
        if self.ridge > 0:
            how = (
                f"throw shadows of their own, being steeper ({self.slope:.2g}°) than the light"
                if self.scallops_cast
                else f"throw no shadow; they shade by {100 * self.shading:.2g} %"
            )
            rows.append(
                f"{lamp if not rows else 'The'}{' the' if not rows else ''} scallops' ridges of "
                f"{rule.fine(self.ridge)} {how}, which the eye "
                f"{'sees' if self.scallops_seen else 'misses'} (custom: "
                f"{100 * c.shading_seen:g} % and more)."
            )
        return " ".join(rows) or f"{lamp} nothing shows: the surface has neither steps nor ridges."


def what_shows(
    lamp_height: float,
    *,
    ridge: float = 0.0,
    slope: float = 0.0,
    step: float = 0.0,
    across: float = 0.0,
) -> Shows:
    """Whether a lamp across the tracks shows them, and a nail feels them. [mm]

    Shadows and shading: geometry and Lambert's law. What is noticed: customs, named as such.
    """
    shadow = shadow_length(step, lamp_height=lamp_height, across=across)
    not_negative(ridge, name="ridge", example="0.01")
    between(slope, low=0, high=89, name="slope of the scallops", example="0.1")
    # Along the tracks the light climbs their slope at a slant.
    slope = degrees(atan(tan(radians(slope)) * cos(radians(across))))
    share = shading(slope, lamp_height=min(lamp_height, 89.0))
    return Shows(
        lamp_height,
        step,
        shadow,
        ridge,
        slope,
        share,
        above(slope, lamp_height),
        bool(step) and not above(CUSTOMS.shadow_seen, shadow),
        bool(slope) and not above(CUSTOMS.shading_seen, share),
        bool(step) and not above(CUSTOMS.step_felt, step),
    )
