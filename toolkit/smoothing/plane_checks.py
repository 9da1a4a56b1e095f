"""What an experienced maker would say of a plane's setting before it touches the wood."""

from __future__ import annotations

from typing import Literal

from toolkit.measures import Rule
from toolkit.planes import Plane, fine
from toolkit.results import GEOMETRY, Finding, above, below, one_of
from toolkit.smoothing.cap_iron import setback_to_begin, thickest_shaving
from toolkit.smoothing.customs import CUSTOMS, cite

Grain = Literal["straight", "interlocked", "curly"]
GRAINS: tuple[Grain, ...] = ("straight", "interlocked", "curly")


def check_plane(plane: Plane, *, rule: Rule, grain: Grain = "straight") -> tuple[Finding, ...]:
    """Everything there is to say of a plane's setting for a piece of wood."""
    one_of(grain, name="grain", allowed=GRAINS)
    return (
        *_angle(plane, rule, grain),
        *_cap_iron(plane, rule, grain),
        *_edge(plane, rule),
    )


def _angle(plane: Plane, rule: Rule, grain: Grain) -> list[Finding]:
    where, cutting, angle = "cutting angle", plane.cutting, plane.working_angle
    held = f", skewed {plane.skew:g}°" if plane.skew else ""
    found = []
    if not above(cutting.clearance, 0.0):
        found.append(
            Finding(
                "wont_work",
                "no-clearance",
                where,
                f"the clearance behind the edge is {cutting.clearance:g}°: the iron rides on its "
                "heel and won't cut.",
                "Hone a lower bevel, or bed the iron higher.",
                GEOMETRY,
            )
        )
    elif below(cutting.clearance, CUSTOMS.clearance_least):
        found.append(
            Finding(
                "care",
                "clearance-small",
                where,
                f"the clearance behind the edge is {cutting.clearance:g}°, under "
                f"{CUSTOMS.clearance_least:g}°: as the edge wears it soon rubs.",
                "Hone a lower bevel.",
                cite("clearance_least"),
            )
        )
    if grain != "straight" and below(angle, CUSTOMS.awkward_angle_least):
        found.append(
            Finding(
                "care",
                "angle-low",
                where,
                f"{angle:.1f}°{held} is under {CUSTOMS.awkward_angle_least:g}° on {grain} wood: "
                "tear-out is likely.",
                "Set the cap iron close, or raise the angle with a back bevel or a steeper one.",
                cite("awkward_angle_least"),
            )
        )
    if above(angle, CUSTOMS.cutting_angle_most):
        found.append(
            Finding(
                "care",
                "angle-steep",
                where,
                f"{angle:.1f}°{held} is over {CUSTOMS.cutting_angle_most:g}°: it scrapes, pushes "
                "hard and dulls soon.",
                "Hone a lower back bevel, or bed the iron lower.",
                cite("cutting_angle_most"),
            )
        )
    if not found:
        found.append(
            Finding(
                "good",
                "good-angle",
                where,
                f"{angle:.1f}°{held} with {cutting.clearance:g}° of clearance suits {grain} wood.",
                "",
                GEOMETRY,
            )
        )
    return found


def _cap_iron(plane: Plane, rule: Rule, grain: Grain) -> list[Finding]:
    where, setback = "cap iron", plane.setback
    low, high = setback_to_begin(plane.shaving)
    begin = f"Begin at {fine(low, rule=rule, unit=False)} to {fine(high, rule=rule)}"
    lower = below(plane.working_angle, CUSTOMS.curly_angle_wanted)
    if setback is None:
        if grain == "straight" or not lower:
            return []
        return [
            Finding(
                "care",
                "no-cap-iron",
                where,
                f"on {grain} wood a plane without one has only its cutting angle of "
                f"{plane.working_angle:.1f}° against tear-out, under "
                f"{CUSTOMS.curly_angle_wanted:g}°.",
                "Raise the angle, or take a plane with a cap iron.",
                cite("curly_angle_wanted"),
            )
        ]
    said, shaving = fine(setback, rule=rule), fine(plane.shaving, rule=rule)
    thickest = thickest_shaving(setback, bed=plane.bed)
    if not above(thickest, plane.shaving):
        return [
            Finding(
                "wont_work",
                "cap-iron-in-the-wood",
                where,
                f"{said} from the edge it meets the wood itself once the edge is "
                f"{fine(thickest, rule=rule)} deep, and the shaving is to be {shaving}.",
                f"{begin} from the edge.",
                GEOMETRY,
            )
        ]
    least = CUSTOMS.setback_shavings_least * plane.shaving
    if below(setback, least):
        return [
            Finding(
                "care",
                "cap-iron-chokes",
                where,
                f"{said} from the edge, under {CUSTOMS.setback_shavings_least:g} shavings of "
                f"{shaving}, it chokes the cut: the shaving crumples.",
                f"{begin}.",
                cite("setback_shavings_least"),
            )
        ]
    found = []
    if plane.finishing and above(setback, CUSTOMS.finishing_setback_most):
        found.append(
            Finding(
                "care",
                "cap-iron-far",
                where,
                f"{said} from the edge, over {fine(CUSTOMS.finishing_setback_most, rule=rule)}, "
                "it is too far back to help against tear-out.",
                f"{begin}.",
                cite("finishing_setback_most"),
            )
        )
    elif grain == "curly" and lower and above(setback, CUSTOMS.curly_setback_most):
        thin = CUSTOMS.curly_setback_most / CUSTOMS.setback_shavings_low
        found.append(
            Finding(
                "care",
                "cap-iron-far-for-curly",
                where,
                f"{said} from the edge is over {fine(CUSTOMS.curly_setback_most, rule=rule)} on "
                f"curly wood, and {plane.working_angle:.1f}° is under "
                f"{CUSTOMS.curly_angle_wanted:g}°: it will tear.",
                f"Bring it within that, with shavings no thicker than {fine(thin, rule=rule)}, or "
                "raise the angle.",
                cite("curly_setback_most"),
            )
        )
    if not found:
        found.append(
            Finding(
                "good",
                "good-cap-iron",
                where,
                f"{said} from the edge, {setback / plane.shaving:.1f} shavings of {shaving}.",
                "Judge it by the shaving: straight is right, crumpled too close.",
                cite("setback_shavings_low"),
            )
        )
    return found


def _edge(plane: Plane, rule: Rule) -> list[Finding]:
    where, found = "edge of the iron", []
    ridge, dig = plane.scallops.depth, plane.corner_depth
    if above(dig, 0.0):
        found.append(
            Finding(
                "care",
                "corners-dig",
                where,
                f"the corners cut {fine(dig, rule=rule)} deep where the middle cuts "
                f"{fine(plane.shaving, rule=rule)}: each track that lies a little deeper than "
                "its neighbour ends in a step.",
                f"Give the edge {fine(plane.camber_needed, rule=rule)} of camber, or take "
                "thinner shavings.",
                GEOMETRY,
            )
        )
    if plane.finishing and above(ridge, CUSTOMS.ridge_most):
        found.append(
            Finding(
                "care",
                "ridge-high",
                where,
                f"the tracks leave ridges {fine(ridge, rule=rule)} high, over "
                f"{fine(CUSTOMS.ridge_most, rule=rule)}.",
                "Let the strokes overlap more, or hone a flatter camber.",
                cite("ridge_most"),
            )
        )
    if not found:
        found.append(
            Finding(
                "good",
                "good-edge",
                where,
                f"its corners stay clear of the wood and its tracks leave ridges "
                f"{fine(ridge, rule=rule)} high.",
                "",
                GEOMETRY,
            )
        )
    return found
