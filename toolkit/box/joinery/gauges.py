"""The settings of the marking gauges: tail length, tail-board thickness, and an ear's own two."""

from __future__ import annotations

from dataclasses import dataclass

from toolkit.box.design import Design
from toolkit.results import Term, Working


@dataclass(frozen=True, slots=True)
class GaugeSettings:
    """The gauges of a box, each a working; ``ear`` the two of an ear's end, where there is one.

    ``proud`` is how much the second setting goes over the tail board (negative: shy). It never
    goes onto a tail's length: a half-blind tail would reach the lap before its shoulder closes.
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


def gauge_settings(d: Design, *, proud: float | None = None) -> GaugeSettings:
    """The settings of the marking gauges of one box.

    ``proud`` is how far the second gauge goes over the tail board's thickness, so that the pins'
    end grain stands proud and is planed flush; negative for shy, None for the box's own customs
    pins_proud and pins_shy (Fairham sets a trifle under, Noyes up to 1/32 in over). [mm]
    """
    f, customs = d.frame, d.choices.customs
    if proud is None:
        proud = customs.pins_proud - customs.pins_shy
    back, front = d.tail_board_thickness
    extra = () if proud == 0 else (Term("proud" if proud > 0 else "shy", proud),)
    ear = None
    if has_ear(d):
        lap = Term("front lap", f.lap_front.value)
        tail = Term("tail length", f.tail_front.value)
        ear = (Working("tip line", (lap,)), Working("baseline", (lap, tail)))
    return GaugeSettings(
        tail_back=Working("tail length", f.tail_back.terms),
        tail_front=Working("tail length", f.tail_front.terms),
        board_back=Working("pin baseline", (Term("tail-board thickness", back), *extra)),
        board_front=Working("pin baseline", (Term("tail-board thickness", front), *extra)),
        ear=ear,
        proud=proud,
    )


def between_baselines(d: Design, *, proud: float | None = None) -> Working:
    """Inside length (tails on ends) or inside width (tails on sides) as it will come out.

    Each end that is gauged proud takes that much from it, unless the board is cut longer. [mm]
    """
    s, f = gauge_settings(d, proud=proud), d.frame
    if d.choices.corner.tails_on == "ends":
        name, whole = "inside length", Term("outside length", f.outside_length.value)
        lines = (s.board_back, s.board_front)
    else:
        name, whole = "inside width", Term("outside width", f.outside_width.value)
        lines = (s.board_back, s.board_back)
    taken = tuple(Term(t.label, -t.each, t.times) for line in lines for t in line.terms)
    return Working(name, (whole, *taken))
