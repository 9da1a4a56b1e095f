"""What was made otherwise than meant, and how far the work had come: the words of a rescue."""

from __future__ import annotations

from dataclasses import dataclass
from difflib import get_close_matches
from typing import Any, Literal

from toolkit.measures import Rule
from toolkit.plan.box_plan import Plan
from toolkit.results import AXES, WALLS, capital, rows_by_name

Stage = Literal["rough", "true", "grooved", "jointed", "fitted", "gluing", "glued"]
STAGES: dict[Stage, str] = {
    "rough": "sawn over size; every size can still move",
    "true": "planed and cut one by one; no groove, no gauge line for the tails yet",
    "grooved": "the grooves are ploughed too",
    "jointed": "tail length gauged and tails sawn too; sides and ends have their length",
    "fitted": "lid and bottom are planed too; the box goes together dry",
    "gluing": "the glue is on, and has not grabbed yet",
    "glued": "the glue has set: sides, ends and bottom are one piece",
}
_ORDER = tuple(STAGES)

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
MateOf = Literal["", "left side", "right side", "back end", "front end"]
PARTS: tuple[MateOf, ...] = ("left side", "right side", "back end", "front end")

_TABLE = rows_by_name("plan/mishaps/mishaps.csv", "what")
# What each is, in the words of somebody at a bench; sizes of parts are told by their names.
HAPPENED = {what: row["happened"] for what, row in _TABLE.items()}
# The value that goes with each; None where a word is enough.
WITH_LENGTH: dict[str, str] = {
    **{name: f"{name.replace('_', ' ')} as measured" for name in SIZES},
    **{what: row["words"] for what, row in _TABLE.items() if row["length"]},
}
WITHOUT = {what: row["words"] for what, row in _TABLE.items() if not row["length"]}


def _stage(what: str, column: Literal["first", "usual", "last"]) -> Stage:
    """The first stage at which such a thing can happen, where it is mostly found, the last."""
    if what in _TABLE:
        return next(stage for stage in _ORDER if stage == _TABLE[what][column])
    part, _, axis = what.rpartition("_")
    if column == "first":
        return "rough"
    if column == "usual":
        return "fitted" if part in PANELS else "true"
    # What the glue holds cannot be another length, and the bottom is shut in.
    return "fitted" if part == "bottom" or (part in WALLS and axis == "length") else "glued"


def before(one: str, other: str) -> bool:
    """Whether one stage comes before another."""
    return _ORDER.index(one) < _ORDER.index(other)


def parts_of(what: str) -> tuple[MateOf, ...]:
    """The parts that may be named with a mishap, to tell one of a pair; none where it is plain."""
    if what in _TABLE:
        return PARTS if _TABLE[what]["part"] else ()
    return PARTS[:2] if what.startswith("side_") else ()


@dataclass(frozen=True, slots=True)
class Mishap:
    """One thing that went otherwise than meant: such as ``front_length`` or ``lap_through``.

    ``value`` is as measured, None for what needs no number. [mm] ``stage`` is how far the work had
    come; left out, the first at which such a thing happens. ``part`` names one of a pair, such as
    ``left side``; left out, both are so. ``corner`` and ``tail``, its number from the bottom edge,
    tell which tail was sawn on the wrong side.
    """

    what: str
    value: float | None = None
    stage: Stage | None = None
    corner: Literal["back", "front"] = "back"
    tail: int = 1
    part: MateOf = ""

    def __post_init__(self) -> None:
        """What cannot be meant is told at once, with what to type."""
        known = [*WITH_LENGTH, *WITHOUT]
        if self.what not in known:
            near = " or ".join(_nearest(self.what, known))
            raise ValueError(f"read {self.what!r}: no such mishap; type {near}")
        if self.reached not in STAGES:
            raise ValueError(f"read stage {self.stage!r}; type {' or '.join(STAGES)}")
        stages, said = stages_of(self.what), f"{self.what} does not happen at stage {self.stage}"
        if before(self.reached, stages[0]):
            raise ValueError(f"{said}; type {stages[0]} or a later one")
        if before(stages[-1], self.reached):
            raise ValueError(
                f"{said}: nothing can be changed of it any more; type {stages[-1]} or an earlier "
                f"one, or what it led to: {', '.join(_THEN)}"
            )
        parts = parts_of(self.what)
        if self.part and self.part not in parts:
            named = " or ".join(parts) or "it without a part"
            raise ValueError(f"{self.what}: read part {self.part!r}; type {named}")
        self._checked_value()

    def _checked_value(self) -> None:
        if self.what in WITH_LENGTH and self.value is None:
            raise ValueError(
                f"{self.what} needs its length ({WITH_LENGTH[self.what]}); "
                f'type such as {self.what}="7.5 mm"'
            )
        if self.what in WITHOUT and self.value is not None:
            raise ValueError(f"{self.what} goes without a length ({WITHOUT[self.what]})")
        from_zero = self.what in _TABLE and _TABLE[self.what]["length"] == "from 0"
        if self.value is not None and self.value < (0 if from_zero else 1e-9):
            raise ValueError(f"{self.what} of {self.value:g} mm cannot be; measure it again")

    @property
    def measured(self) -> float:
        """The length told; 0 for what needs none. [mm]"""
        return self.value or 0.0

    @property
    def reached(self) -> Stage:
        """How far the work had come; of a panel's size, that they are planed."""
        first, panel = stages_of(self.what)[0], self.what in SIZES and self.what.startswith(PANELS)
        early: Stage = "fitted" if panel else "true"
        return self.stage or (early if before(first, early) else first)

    def had(self, stage: Stage) -> bool:
        """Whether the work had come as far as a stage."""
        return not before(self.reached, stage)

    def _name(self) -> str:
        name = self.what.replace("_", " ")
        if not parts_of(self.what) or self.what in _TABLE:
            return name
        return f"{self.part or 'both sides:'} {name.removeprefix('side ')}"

    def sentence(self, rule: Rule, *, meant: float | None) -> str:
        """What was made against what was meant, in one sentence."""
        at = f"{self.part}: " if self.part and self.what in _TABLE else ""
        if self.value is None:
            return capital(f"{at}{WITHOUT[self.what]}.")
        text = capital(f"{at}{self._name()} {rule.exact(self.value)}")
        if meant is None:
            return f"{text}, {WITH_LENGTH[self.what]}."
        off = self.value - meant
        if abs(off) < 1e-9:
            return f"{text}, as meant."
        side = "over" if off > 0 else "under"
        return f"{text}, meant {rule.exact(meant)}: {rule.exact(abs(off))} {side}."


# What shows, once the glue is on, of what can no longer be changed.
_THEN = ("diagonals", "gap_beside_tail", "lid_play", "lid_tight", "glue_stuck")


def stages_of(what: str) -> tuple[Stage, ...]:
    """The stages at which a mishap can happen, by its name."""
    first, last = _stage(what, "first"), _stage(what, "last")
    return _ORDER[_ORDER.index(first) : _ORDER.index(last) + 1]


def usual_stage(what: str) -> Stage:
    """The stage at which a mishap is mostly found, by its name."""
    return _stage(what, "usual")


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
            return float(plan.part(part).cut[AXES.index(axis)].value)
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
        made |= {f"{wall}_length": getattr(f, f"{wall}_cut").value for wall in WALLS}
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
