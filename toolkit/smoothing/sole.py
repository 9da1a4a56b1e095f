"""Flatness of a plane's sole: where it matters, and what a flat one can and can't do."""

from __future__ import annotations

from dataclasses import dataclass
from math import isfinite
from typing import Literal

from toolkit.measures import Rule
from toolkit.results import Finding, above, below
from toolkit.smoothing._checks import above_zero, one_of
from toolkit.smoothing.customs import Customs, cite
from toolkit.smoothing.words import fine

Kind = Literal["smoother", "jack"]
KINDS: tuple[Kind, ...] = ("smoother", "jack")

CAN = (
    "A sole whose toe, front of mouth and heel lie in one plane presses the wood down just ahead "
    "of the edge and lets a thin shaving begin and end where it should."
)
CANNOT = (
    "It can't make a board flatter than its own length allows, take twist out by itself, or do "
    "the work of a sharp iron and a close cap iron."
)
_MOUTH = 1 / 3  # where the front of the mouth lies between toe and heel, about: no source


@dataclass(frozen=True, slots=True)
class Sole:
    """How a sole lies, measured at the places that matter.

    Attributes
    ----------
    kind : str
        ``"smoother"`` or ``"jack"``.
    at_mouth : float
        How far the front of the mouth stands proud of the line from toe to heel, negative where
        it is hollow. [mm]
    between : float
        Deepest hollow elsewhere, negative; or highest bump, positive. [mm]
    behind_mouth : float
        How far a bump just behind the mouth stands proud of the line. [mm]
    allowed : float
        How far toe, mouth and heel may differ, by custom. [mm]
    """

    kind: Kind
    at_mouth: float
    between: float
    behind_mouth: float
    allowed: float

    def findings(self, *, rule: Rule, shaving: float = 0.03) -> tuple[Finding, ...]:
        """What it means at the bench, for a shaving so thick. [mm]"""
        above_zero(shaving, name="shaving", example="0.03")
        where = f"sole of the {self.kind}"
        source = cite("sole_smoother" if self.kind == "smoother" else "sole_jack")
        limit, found = fine(self.allowed, rule=rule), []
        if below(self.at_mouth, -self.allowed):
            found.append(
                Finding(
                    "care",
                    "sole-hollow-at-mouth",
                    where,
                    f"the front of the mouth stands {fine(-self.at_mouth, rule=rule)} off the wood "
                    f"when toe and heel touch, over {limit}: nothing presses the wood down ahead "
                    "of the edge, so it tears sooner, and the iron must reach that much farther.",
                    "Rub toe and heel down on a flat until the front of the mouth marks as well.",
                    source,
                )
            )
        if above(self.at_mouth, self.allowed):
            found.append(
                Finding(
                    "care",
                    "sole-rocks",
                    where,
                    f"the front of the mouth stands {fine(self.at_mouth, rule=rule)} proud of toe "
                    f"and heel, over {limit}: the plane rocks on it and follows every hollow.",
                    "Rub the middle of the sole down until toe and heel mark as well.",
                    source,
                )
            )
        if above(self.behind_mouth, 0.0):
            # The edge is held off by about as much as the bump just behind it stands proud.
            lifts = not below(self.behind_mouth, shaving)
            found.append(
                Finding(
                    "wont_work" if lifts else "care",
                    "sole-bump-behind-mouth",
                    where,
                    f"a bump of {fine(self.behind_mouth, rule=rule)} behind the mouth holds the "
                    "edge off the wood"
                    + (
                        f": a shaving of {fine(shaving, rule=rule)} won't begin, and then the "
                        "iron digs."
                        if lifts
                        else f" by nearly that, out of a shaving of {fine(shaving, rule=rule)}."
                    ),
                    "Rub the sole down on a flat, iron wedged and drawn back, until the bump is "
                    "gone.",
                    "geometry; custom: common practice, no source",
                )
            )
        if not found:
            hollow = ""
            if self.between < 0:
                hollow = (
                    f" The hollow of {fine(-self.between, rule=rule)} between them touches "
                    "nothing and does no harm."
                )
            found.append(
                Finding(
                    "good",
                    "good-sole",
                    where,
                    f"toe, front of mouth and heel lie within {fine(abs(self.at_mouth), rule=rule)}"
                    f" of one line, {limit} allowed.{hollow}",
                    "",
                    source,
                )
            )
        return tuple(found)


_DEFAULTS = Customs()


def sole(
    toe: float,
    *,
    mouth: float,
    heel: float,
    between: float = 0.0,
    behind_mouth: float = 0.0,
    kind: Kind = "smoother",
    customs: Customs = _DEFAULTS,
) -> Sole:
    """A sole by its heights at the places that matter, from any straight reference.

    Parameters
    ----------
    toe, mouth, heel : float
        How far toe, front of mouth and heel stand out towards the wood, negative for hollow; all
        from one straight edge laid along the sole. [mm]
    between : float
        The same at the place between them that differs most. [mm]
    behind_mouth : float
        The same just behind the mouth. [mm]
    kind : str
        ``"smoother"`` or ``"jack"``.
    customs : Customs
        How far they may differ.

    Returns
    -------
    Sole
        Heights above the line from toe to heel. [mm]

    Raises
    ------
    ValueError
        A height is no number, or there is no such plane.

    Source
    ------
    Geometry; the mouth a third of the way from toe to heel. Tolerances: customs.

    >>> round(sole(0, mouth=-0.08, heel=0).at_mouth, 3)
    -0.08
    """
    one_of(kind, name="kind", allowed=KINDS)
    given = {"toe": toe, "mouth": mouth, "heel": heel, "between": between, "behind": behind_mouth}
    for name, value in given.items():
        if not isfinite(value):
            raise ValueError(f"{name} was given as {value:g} mm; give a height such as -0.05")
    line = toe + _MOUTH * (heel - toe)
    allowed = customs.sole_smoother if kind == "smoother" else customs.sole_jack
    return Sole(
        kind,
        mouth - line,
        between - line,
        max(behind_mouth - line, 0.0),
        allowed,
    )
