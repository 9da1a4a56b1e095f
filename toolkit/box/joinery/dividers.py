"""The settings of dividers and marking gauges, where each mark falls, and what an error does."""

from __future__ import annotations

from dataclasses import dataclass

from toolkit.box.corner import Corner
from toolkit.box.designing import Design
from toolkit.measures import Rule
from toolkit.results import TaggedSize, Term, Working, above


@dataclass(frozen=True, slots=True)
class Walk:
    """Dividers walked over a corner from both half-pin marks. [mm]

    ``step`` is the right setting and ``error`` how far the dividers are really out. ``forward``
    holds every mark up from the lower half-pin mark, ``back`` every one down from the upper.
    ``pin`` is the pin aimed at.
    """

    corner: str
    height: float
    half_pin: float
    pin: float
    steps: int
    step: float
    error: float
    forward: tuple[float, ...]
    back: tuple[float, ...]

    @property
    def past(self) -> float:
        """How far the last mark falls past the far half-pin mark: the pin that comes of it. [mm]"""
        return self.forward[-1] - (self.height - self.half_pin)

    @property
    def off_edge(self) -> float:
        """How far the last mark lies off the board; 0 where it lies on it. [mm]"""
        off = self.forward[-1] - self.height
        return off if above(off, 0.0) else 0.0

    @property
    def accumulated(self) -> float:
        """What the error of one step has grown to at the last mark. [mm]"""
        return self.steps * self.error

    @property
    def tails(self) -> tuple[tuple[float, float], ...]:
        """Lower and upper edge of each tail as the two walks mark them. [mm]"""
        return tuple(zip(self.forward[:-1], reversed(self.back[:-1]), strict=True))

    @property
    def tail_width(self) -> float:
        """Width of every tail at the baseline; all come out alike. [mm]"""
        return self.tails[0][1] - self.tails[0][0]

    def remedy(self, rule: Rule) -> str:
        """What to do where the last mark has no wood to fall on; empty where it has."""
        if not self.off_edge:
            return ""
        return (
            f"The last mark falls {rule.exact(self.off_edge)} off the board: cramp a scrap flush "
            "with that edge to take it, or make the half pins as wide as a pin, which is sounder."
        )

    def sentence(self, rule: Rule) -> str:
        """Setting, steps and the test that the setting is right."""
        words = (
            f"{self.corner.capitalize()} corners: dividers at {rule.exact(self.step)}, "
            f"{self.steps} steps from the mark at {rule.exact(self.half_pin)}; the last must fall "
            f"{rule.exact(self.pin)} past the far half-pin mark."
        )
        if self.error:
            words += (
                f" Each step {rule.exact(abs(self.error))} {'over' if self.error > 0 else 'under'}"
                f" makes the last mark {rule.exact(abs(self.accumulated))} wrong: every pin comes "
                f"out {rule.exact(self.past)} and every tail {rule.exact(self.tail_width)}."
            )
        remedy = self.remedy(rule)
        return f"{words} {remedy}" if remedy else words


def walk(corner: Corner, *, error: float = 0.0) -> Walk | None:
    """Walk the dividers over a corner, set ``error`` wide of the step; None for unequal tails. [mm]

    A constant error e leaves the layout even: after n steps each pin is n·e wider and each tail (n
    − 1)·e narrower, and the last mark shows the pin that comes of it.
    """
    if corner.step is None or not corner.tails:
        return None
    first = corner.tails[0]
    steps, height, set_to = len(corner.tails), corner.height, corner.step + error
    half_pin = first.low
    forward = tuple(half_pin + i * set_to for i in range(steps + 1))
    back = tuple(height - half_pin - i * set_to for i in range(steps + 1))
    return Walk(
        corner=corner.name,
        height=height,
        half_pin=half_pin,
        pin=corner.step - first.width,
        steps=steps,
        step=corner.step,
        error=error,
        forward=forward,
        back=back,
    )


def setting_error(past: float, *, pin: float, steps: int) -> float:
    """How far the dividers are out, from where the last mark fell: close them by this much.

    Parameters
    ----------
    past : float
        Measured from the far half-pin mark to the last mark. [mm]
    pin : float
        The pin wanted, at the baseline. [mm]
    steps : int
        How many steps were walked.

    Returns
    -------
    float
        Error of one step; negative where the dividers must be opened. [mm]

    Raises
    ------
    ValueError
        No step was walked.

    Source
    ------
    (past − pin) / steps: geometry.

    >>> round(setting_error(6.6, pin=6, steps=3), 2)
    0.2
    """
    if steps < 1:
        raise ValueError(f"{steps} steps are no walk; give the number of tails, 1 or more")
    return (past - pin) / steps


def marks_error(corner: Corner, *, rule: Rule) -> Walk | None:
    """The walk with the dividers set to the nearest mark of a rule; None for unequal tails."""
    if corner.step is None:
        return None
    return walk(corner, error=rule.error(corner.step))


@dataclass(frozen=True, slots=True)
class GaugeSettings:
    """The gauges of a box, each a working; ``ear`` the two of an ear's end, where there is one.

    ``proud`` is how much the second setting goes over the tail board (negative: shy), in a through
    joint the first over the pin board too. It never goes onto the length of a half-blind tail,
    which would reach the lap before its shoulder closes.
    """

    tail_back: Working
    tail_front: Working
    board_back: Working
    board_front: Working
    ear: tuple[Working, Working] | None
    proud: float

    @property
    def names(self) -> dict[str, str]:
        """What each setting is called; back and front go by one name where they are alike."""
        alike = {
            "tail": self.tail_back.value == self.tail_front.value,
            "board": self.board_back.value == self.board_front.value,
        }
        return {
            f"{kind}_{corner}": f"gauge {number}" + ("" if alike[kind] else f", {corner}")
            for number, kind in ((1, "tail"), (2, "board"))
            for corner in ("back", "front")
        }


def has_ear(d: Design) -> bool:
    """Whether the sides carry tails below, and run on above, a low front."""
    return d.choices.corner.tails_on == "sides" and d.frame.lid_floor is not None


def gauge_settings(d: Design) -> GaugeSettings:
    """The settings of the marking gauges of one box, with what is left proud to plane flush.

    Fairham sets a trifle under the tail board's thickness, Noyes up to 1/32 in over. [mm]
    """
    f, proud = d.frame, d.choices.corner.proud
    back, front = d.tail_board_thickness
    extra = () if proud == 0 else (Term("proud" if proud > 0 else "shy", proud),)
    over = extra if d.choices.corner.joint == "through" else ()
    ear = None
    if has_ear(d):
        lap = Term("front lap", f.lap_front.value)
        tail = Term("tail length", f.tail_front.value)
        ear = (Working("tips", (lap,)), Working("baseline", (lap, tail, *over)))
    return GaugeSettings(
        tail_back=Working("tail length", (*f.tail_back.terms, *over)),
        tail_front=Working("tail length", (*f.tail_front.terms, *over)),
        board_back=Working("pin baseline", (Term("tail-board thickness", back), *extra)),
        board_front=Working("pin baseline", (Term("tail-board thickness", front), *extra)),
        ear=ear,
        proud=proud,
    )


# The tools of these lines by their names in the table of settings.
_TOOLS = {
    "gauge 1": "gauge 1, tail length",
    "gauge 2": "gauge 2, tail-board thickness",
    "front height": "front end, rip line",
}


def set_to(name: str, value: float, rule: Rule) -> TaggedSize:
    """What a line is gauged at, tagged as the setting that it is."""
    gauge, comma, corner = name.partition(", ")
    return TaggedSize(
        rule.show(value), f"{_TOOLS.get(gauge, name)}{comma}{corner}", "setting", value
    )


def between_baselines(d: Design) -> Working:
    """Inside length (tails on ends) or inside width (tails on sides), from a pin board as cut.

    It is cut as much longer as its two gauge lines are set proud. [mm]
    """
    s, f = gauge_settings(d), d.frame
    if d.choices.corner.tails_on == "ends":
        name, whole = "inside length", Term("side as cut", f.side_cut.value)
        lines = (s.board_back, s.board_front)
    else:
        name, whole = "inside width", Term("back end as cut", f.back_cut.value)
        lines = (s.board_back, s.board_back)
    taken = (("gauged from its back end", lines[0]), ("gauged from its front end", lines[1]))
    if lines[0].value == lines[1].value:
        return Working(name, (whole, Term("gauged from each end", -lines[0].value, 2)))
    return Working(name, (whole, *(Term(words, -line.value) for words, line in taken)))
