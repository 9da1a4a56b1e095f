"""Rules of thumb of smoothing: each a named default that a teacher may change, with its source."""

from __future__ import annotations

from dataclasses import dataclass, field, fields

from toolkit.results import CUSTOM

TRADE = "custom: a trade's habit as handed on, no source"
EYES = "custom: eyesight of about one minute of arc at 350 mm, from memory"


def _custom(default: float, words: str, source: str = CUSTOM) -> float:
    value: float = field(default=default, metadata={"words": words, "source": source})
    return value


@dataclass(frozen=True, slots=True)
class Customs:
    """Every rule of thumb that the findings use. Lengths in mm, angles in degrees.

    A custom is no limit of the wood: a finding that leans on one says so.
    """

    clearance_least: float = _custom(7.0, "least clearance behind the edge [degrees]")
    awkward_angle_least: float = _custom(
        43.0, "least cutting angle on interlocked or curly wood [degrees]"
    )
    cutting_angle_most: float = _custom(
        65.0, "cutting angle above which a plane scrapes rather than cuts [degrees]"
    )
    curly_angle_wanted: float = _custom(
        50.0, "cutting angle from which curly wood needs no close cap iron [degrees]"
    )
    curly_setback_most: float = _custom(
        0.4, "farthest cap iron on curly wood below that angle [mm]"
    )
    setback_shavings_least: float = _custom(
        2.0, "least setback of the cap iron, in thicknesses of the shaving [1]"
    )
    setback_shavings_low: float = _custom(
        3.0, "nearest setback to begin with, in thicknesses of the shaving [1]"
    )
    setback_shavings_high: float = _custom(
        5.0, "farthest setback to begin with, in thicknesses of the shaving [1]"
    )
    finishing_setback_most: float = _custom(1.0, "farthest cap iron that helps in finishing [mm]")
    ridge_most: float = _custom(0.015, "highest ridge to leave after smoothing [mm]")
    shadow_seen: float = _custom(0.1, "shortest shadow that an eye sees [mm]", EYES)
    shading_seen: float = _custom(
        0.01,
        "least change of brightness that an eye sees [share]",
        "custom: from memory, no source",
    )
    step_felt: float = _custom(0.02, "least step that catches a fingernail drawn across it [mm]")
    flushing_least: float = _custom(0.2, "least planed off a face to flush the joints [mm]")
    flushing_most: float = _custom(0.3, "most planed off a face to flush the joints [mm]")
    rim_planing_most: float = _custom(
        0.5, "planed off the rim in all, above which its strip is looked at again [mm]"
    )
    lid_play_most: float = _custom(
        0.5, "play of a lid up and down in its grooves, above which it rattles [mm]"
    )
    sole_smoother: float = _custom(
        0.05, "how far toe, front of mouth and heel of a smoother may differ [mm]"
    )
    sole_jack: float = _custom(
        0.15, "how far toe, front of mouth and heel of a jack may differ [mm]"
    )
    spare: float = _custom(15.0, "finish bought beyond what is spread [%]")


def described(name: str) -> tuple[str, str]:
    """What a custom means, and whose it is."""
    for spec in fields(Customs):
        if spec.name == name:
            return spec.metadata["words"], spec.metadata["source"]
    raise KeyError(name)


def cite(name: str) -> str:
    """How a finding names a custom."""
    return f"{described(name)[1]} ({name})"
