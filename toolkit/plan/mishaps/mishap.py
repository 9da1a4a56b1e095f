"""What was made otherwise than meant, and how far the work had come: the words of a rescue."""

from __future__ import annotations

from dataclasses import dataclass
from difflib import get_close_matches
from typing import Any, Literal

from toolkit.measures import Rule
from toolkit.plan.box_plan import Plan
from toolkit.results import WALLS, capital

Stage = Literal["rough", "true", "jointed", "grooved", "fitted"]
STAGES: dict[Stage, str] = {
    "rough": "sawn over size; every size can still move",
    "true": "walls planed and cut one by one, no gauge line for the tails yet",
    "jointed": "tail length gauged and tails sawn; all four walls have their length",
    "grooved": "the grooves are ploughed too",
    "fitted": "lid and bottom are planed too",
}

PANELS = ("bottom", "lid")
SIZES = (
    *(f"{part}_{axis}" for part in (*WALLS, *PANELS) for axis in ("length", "thickness")),
    "side_width",
    "back_width",
    "front_width",
    "bottom_width",
    "lid_width",
)
GROOVES = ("bottom_edge", "top_edge", "groove_width", "groove_depth")

# The value that goes with each; None where a word is enough.
WITH_LENGTH: dict[str, str] = {
    **{name: f"{name.replace('_', ' ')} as measured" for name in SIZES},
    "bottom_edge": "from a wall's bottom edge to the bottom groove, as measured",
    "top_edge": "from a wall's top edge to the lid groove, as measured",
    "groove_width": "width of a groove as measured",
    "groove_depth": "depth of a groove as measured",
    "baseline_over": "how far a saw cut runs past the baseline",
    "socket_depth": "depth of a socket, from the pin board's inside face, as measured",
    "tail_wrong_side": "how much too narrow a tail is, sawn on the wrong side of its line",
    "lid_play": "side play of the lid, both sides together",
    "lid_rattle": "play of the lid up and down in its groove",
    "diagonals": "the longer diagonal less the shorter",
}
WITHOUT: dict[str, str] = {
    "lap_through": "the lap of a socket is broken through",
    "lid_tight": "the lid binds in its grooves",
}


@dataclass(frozen=True, slots=True)
class Mishap:
    """One thing that went otherwise than meant: such as ``front_length`` or ``lap_through``.

    ``value`` is as measured, None for what needs no number. [mm] ``stage`` is how far the work had
    come; left out, the first at which such a thing happens. ``corner`` and ``tail``, its number
    from the bottom edge, tell which tail was sawn on the wrong side.
    """

    what: str
    value: float | None = None
    stage: Stage | None = None
    corner: Literal["back", "front"] = "back"
    tail: int = 1

    def __post_init__(self) -> None:
        """What cannot be meant is told at once, with what to type."""
        known = [*WITH_LENGTH, *WITHOUT]
        if self.what not in known:
            near = " or ".join(_nearest(self.what, known))
            raise ValueError(f"read {self.what!r}: no such mishap; type {near}")
        if self.reached not in STAGES:
            raise ValueError(f"read stage {self.stage!r}; type {' or '.join(STAGES)}")
        if self.what in _FIRST and not self.had(_FIRST[self.what]):
            raise ValueError(
                f"{self.what} does not happen at stage {self.stage}; "
                f"type {_FIRST[self.what]} or a later one"
            )
        if self.what in WITH_LENGTH and self.value is None:
            raise ValueError(
                f"{self.what} needs its length ({WITH_LENGTH[self.what]}); "
                f'type such as {self.what}="7.5 mm"'
            )
        if self.what in WITHOUT and self.value is not None:
            raise ValueError(f"{self.what} goes without a length ({WITHOUT[self.what]})")
        if self.value is not None and self.value < (0 if self.what in _FROM_ZERO else 1e-9):
            raise ValueError(f"{self.what} of {self.value:g} mm cannot be; measure it again")

    @property
    def measured(self) -> float:
        """The length told; 0 for what needs none. [mm]"""
        return self.value or 0.0

    @property
    def reached(self) -> Stage:
        """How far the work had come."""
        return self.stage or _FIRST.get(self.what, "true")

    def had(self, stage: Stage) -> bool:
        """Whether the work had come as far as a stage."""
        order = list(STAGES)
        return order.index(self.reached) >= order.index(stage)

    def sentence(self, rule: Rule, *, meant: float | None) -> str:
        """What was made against what was meant, in one sentence."""
        if self.value is None:
            return f"{capital(WITHOUT[self.what])}."
        name = self.what.replace("_", " ")
        text = f"{capital(name)} {rule.exact(self.value)}"
        if meant is None:
            return f"{text}: {WITH_LENGTH[self.what]}."
        off = self.value - meant
        if abs(off) < 1e-9:
            return f"{text}, as meant."
        side = "over" if off > 0 else "under"
        return f"{text}, meant {rule.exact(meant)}: {rule.exact(abs(off))} {side}."


# The first stage at which such a thing can happen; the others are as old as the board.
_FIRST: dict[str, Stage] = {
    **dict.fromkeys(("lap_through", "baseline_over", "socket_depth", "tail_wrong_side"), "jointed"),
    **dict.fromkeys(("lid_tight", "lid_play", "lid_rattle", "diagonals"), "fitted"),
}
# When it is mostly found; what is not named here, while the walls are made.
_USUAL: dict[str, Stage] = {
    **dict.fromkeys(GROOVES, "grooved"),
    **{name: "fitted" for name in SIZES if name.startswith(PANELS)},
    **_FIRST,
}
_FROM_ZERO = ("bottom_edge", "top_edge", "lid_play", "lid_rattle", "diagonals")


def stages_of(what: str) -> tuple[Stage, ...]:
    """The stages at which a mishap can happen, by its name."""
    order = list(STAGES)
    return tuple(order[order.index(_FIRST[what]) :] if what in _FIRST else order)


def usual_stage(what: str) -> Stage:
    """The stage at which a mishap is mostly found, by its name."""
    return _USUAL.get(what, "true")


def _nearest(word: str, known: list[str]) -> list[str]:
    """The names that have the word in them, else those spelled like it, else all."""
    having = sorted(name for name in known if word and f"_{word}_" in f"_{name}_")
    return having or get_close_matches(word, known, n=3) or known


def meant_of(plan: Plan, what: str) -> float | None:
    """The size that a plan meant, or None for what is nobody's wish. [mm]"""
    c, f = plan.design.choices, plan.design.frame
    part, _, axis = what.rpartition("_")
    if what in SIZES:
        try:
            return float(getattr(plan.part(part), axis).value)
        except KeyError:
            raise ValueError(
                f"this box has no {part} that can be reckoned; see its check"
            ) from None
    if what in ("top_edge", "lid_play", "lid_rattle", "lid_tight") and f.lid_groove is None:
        raise ValueError(f"{what} belongs to a sliding lid, and this box has none")
    meant: dict[str, float | None] = {
        "bottom_edge": c.groove.bottom_edge,
        "top_edge": c.groove.top_edge,
        "groove_width": c.groove.width,
        "groove_depth": c.groove.depth,
        "socket_depth": f.tail_back.value + c.customs.socket_over,
        "lid_play": c.panels.lid_across,
        "lid_rattle": c.panels.lid_tongue,
        "diagonals": 0.0,
    }
    return meant.get(what)


def facts(plan: Plan, mishap: Mishap) -> dict[str, Any]:
    """What exists at the mishap's stage, as changes of the box that keep it so. [mm]"""
    c, f, groove = plan.choices, plan.design.frame, plan.design.choices.groove
    made: dict[str, float | None] = {}
    if mishap.had("true"):
        made |= dict.fromkeys(("side_width", "back_width"), f.wall_height.value)
    if mishap.had("jointed"):
        half_blind = c.corner.joint == "half-blind"
        made |= {"tail_length": f.tail_back.value} if half_blind else {}
        made |= {f"{wall}_length": getattr(f, f"{wall}_length").value for wall in WALLS}
    if mishap.had("grooved"):
        made |= {"groove_width": groove.width, "groove_depth": groove.depth}
        made["bottom_edge"] = groove.bottom_edge
        made |= {"top_edge": groove.top_edge} if f.lid_groove is not None else {}
    if mishap.had("fitted"):
        axes, panels = ("length", "width", "thickness"), plan.design.panels
        sizes = [f"{panel.name}_{axis}" for panel in panels for axis in axes]
        made |= {size: meant_of(plan, size) for size in sizes}
    known = {f"made.{key}": size for key, size in made.items() if getattr(c.made, key) is None}
    return known | (_set_out(plan) if mishap.had("jointed") else {})


def _set_out(plan: Plan) -> dict[str, Any]:
    """What was chosen for the joints, which are cut now, as a student would have chosen it. [mm]"""
    chosen, d = plan.choices.corner, plan.design
    found = {
        f"corner.{key}": getattr(d.choices.corner, key)
        for key in ("slope", "pin", "half_pin")
        if getattr(chosen, key) is None
    }
    for corner in (d.back, d.front):
        if getattr(chosen, f"tails_{corner.name}") is None:
            found[f"corner.tails_{corner.name}"] = len(corner.tails)
    return found
