"""Setting a corner out: by the number of tails, by the width of the pins, or tail by tail."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Literal

from toolkit.box.change import Change
from toolkit.box.choices import Choices
from toolkit.box.corner import Corner
from toolkit.box.design import Design, design
from toolkit.measures import Rule
from toolkit.results import below

CornerName = Literal["back", "front"]
MeasuredAt = Literal["baseline", "tip"]
Positions = tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True)
class SetOut:
    """A corner set out one way or another, with the changes to the box file that make it so.

    Lengths in the changes are numbers. [mm]
    """

    corner: Corner
    changes: Change

    @property
    def fits(self) -> bool:
        """Whether the tails find room."""
        return bool(self.corner.tails)

    def sentence(self, rule: Rule) -> str:
        """Tails and pins at both their faces."""
        c = self.corner
        where = f"{c.name.capitalize()} corners"
        if not c.tails:
            return f"{where}: {c.asked} tails find no room in {rule.exact(c.height)}."
        words = f"{where}: {tails_words(c, rule)} at the baseline"
        words += f", {rule.exact(c.overhang)} more on each side at the tip"
        if c.whole_pins:
            pin = min(c.whole_pins, key=lambda piece: piece.tip_width)
            words += (
                f"; pins {rule.exact(pin.width)} where they are widest and "
                f"{rule.exact(pin.tip_width)} where they are narrowest"
            )
        half = min(c.half_pins, key=lambda piece: piece.tip_width)
        return f"{words}; half pins {rule.exact(half.width)} and {rule.exact(half.tip_width)}."


def tails_words(corner: Corner, rule: Rule) -> str:
    """``3 even tails of 14 mm``, or the width of each. Lengths in mm."""
    widths = [tail.width for tail in corner.tails]
    if len(widths) == 1:
        return f"one tail of {rule.exact(widths[0])}"
    if not below(min(widths), max(widths)):
        return f"{len(widths)} even tails of {rule.exact(widths[0])}"
    figures = [rule.exact(width, unit=False) for width in widths]
    return f"tails of {', '.join(figures[:-1])} and {rule.exact(widths[-1])}"


def _corner(d: Design, name: CornerName) -> Corner:
    return d.back if name == "back" else d.front


def set_out(
    choices: Choices,
    *,
    corner: CornerName = "back",
    tails: int | Positions | None = None,
    pin: float | None = None,
    half_pin: float | None = None,
    measured_at: MeasuredAt = "baseline",
) -> SetOut:
    """Set one corner out.

    Parameters
    ----------
    choices : Choices
        The box. [mm]
    corner : str
        ``back`` or ``front``.
    tails : int, positions or None
        A number of even tails, or the lower and upper edge of each tail [mm]; None lets the
        workbook choose how many, by the width of the pins.
    pin, half_pin : float or None
        Widths; None leaves them as the box has them. They hold for all corners. [mm]
    measured_at : str
        Where pins, half pins and positions are measured: ``baseline`` (pins are widest there and
        tails narrowest) or ``tip``.

    Returns
    -------
    SetOut
        The corner and the changes to the box file; no tails where they find no room.

    Raises
    ------
    ValueError
        The box can't be reckoned at all: a size is missing.

    Source
    ------
    At the tip a pin is narrower than at the baseline by tail length / slope on each side that
    slopes, a half pin on one side: geometry.
    """
    out = _corner(design(choices), corner).overhang if measured_at == "tip" else 0.0
    changes: dict[str, Any] = {}
    if pin is not None:
        changes["corner.pin"] = float(pin + 2 * out)
    if half_pin is not None:
        changes["corner.half_pin"] = float(half_pin + out)
    key = f"corner.tails_{corner}"
    if isinstance(tails, tuple):
        changes[key] = tuple((float(low + out), float(high - out)) for low, high in tails)
    elif tails is not None:
        changes[key] = tails
    else:
        changes[key] = None
    laid = _corner(design(choices.having(changes)), corner)
    if tails is None:
        changes[key] = laid.asked
    return SetOut(laid, changes)


def one_template(choices: Choices) -> SetOut | None:
    """The low front set out with the back's own template: its lower tails, and a wide half pin.

    Parameters
    ----------
    choices : Choices
        The box. [mm]

    Returns
    -------
    SetOut or None
        The front; None where no tail of the back has room under the front's edge.

    Source
    ------
    Common practice, no source: less handsome than tails of the front's own, but one template
    does for all four corners.
    """
    d = design(choices)
    customs = d.choices.customs
    board = d.pin_board_thickness[1]
    least = max(customs.half_pin_least, customs.half_pin_share * board) + d.front.overhang
    room = d.front.height - least
    kept = tuple((tail.low, tail.high) for tail in d.back.tails if not below(room, tail.high))
    return set_out(choices, corner="front", tails=kept) if kept else None
