"""The whole box, reckoned from its choices: walls, corners, grooves, panels."""

from __future__ import annotations

from dataclasses import dataclass

from toolkit.box.change import key_at
from toolkit.box.choices import Choices
from toolkit.box.corner import Corner, lay_out, settled_tails
from toolkit.box.defaults import settle, stray_keys
from toolkit.box.grooves import GrooveFit, Hole, groove_fits, holes
from toolkit.box.panels import LiftOffLid, Panel, bottom, lids
from toolkit.box.settled import Settled
from toolkit.box.walls import Frame, Span
from toolkit.results import Chosen


@dataclass(frozen=True, slots=True)
class Design:
    """A box as it follows from its choices; every room from here on reads this. [mm]

    ``choices`` are the settled ones: nothing in them is left out. ``chosen`` tells which of them
    a rule chose, ``stray`` which were given though this kind of box has no use for them. A box
    that cannot exist is still a design: its findings say why.
    """

    choices: Settled
    frame: Frame
    back: Corner
    front: Corner
    bottom: Panel
    lids: tuple[Panel | LiftOffLid, ...]
    fits: tuple[GrooveFit, ...]
    holes: tuple[Hole, ...]
    chosen: tuple[Chosen, ...]
    stray: tuple[str, ...]

    def __hash__(self) -> int:
        """Of what sliders move: a drawing asks many times, and all fields are hundreds."""
        c = self.choices
        return hash((c.size, c.thickness, c.corner, c.groove))

    @property
    def exists(self) -> bool:
        """Whether there is a space inside, and tails at every corner."""
        f = self.frame
        inside = min(f.inside_length.value, f.inside_width.value, f.inside_height.value)
        return inside > 0 and bool(self.back.tails) and bool(self.front.tails)

    @property
    def panels(self) -> tuple[Panel | LiftOffLid, ...]:
        """The bottom, and above it what closes the box."""
        return (self.bottom, *self.lids)

    @property
    def panel_words(self) -> str:
        """The panels by name, from above: ``lid and bottom``."""
        return " and ".join(panel.name for panel in reversed(self.panels))

    @property
    def grooved(self) -> tuple[Panel, ...]:
        """The panels that stand in grooves: the bottom, and a sliding lid."""
        return tuple(panel for panel in self.panels if isinstance(panel, Panel))

    @property
    def upper_panel(self) -> Panel:
        """The lid where it runs in grooves, else the bottom."""
        return self.grooved[-1]

    @property
    def uppermost(self) -> Panel | LiftOffLid:
        """The lid; of a box that nothing closes, the bottom."""
        return self.panels[-1]

    @property
    def lid(self) -> Panel | LiftOffLid:
        """What closes the box; ``lids`` for whoever does not know whether anything does."""
        return self.lids[0]

    @property
    def sliding_lid(self) -> Panel | None:
        """The lid where it runs in grooves."""
        return next((lid for lid in self.lids if isinstance(lid, Panel)), None)

    @property
    def lift_off_lid(self) -> LiftOffLid | None:
        """The lid where it lies on the rim."""
        return next((lid for lid in self.lids if isinstance(lid, LiftOffLid)), None)

    def wood_of(self, panel: Panel | LiftOffLid) -> str:
        """The wood of a panel, by name."""
        return str(getattr(self.choices.wood, panel.name))

    @property
    def tail_board_thickness(self) -> tuple[float, float]:
        """Thickness of the tail boards at the back and the front corners. [mm]"""
        f = self.frame
        if self.choices.corner.tails_on == "ends":
            return f.back_thickness.value, f.front_thickness.value
        return f.side_thickness.value, f.side_thickness.value

    @property
    def pin_board_thickness(self) -> tuple[float, float]:
        """Thickness of the pin boards at the back and the front corners. [mm]"""
        f = self.frame
        if self.choices.corner.tails_on == "ends":
            return f.side_thickness.value, f.side_thickness.value
        return f.back_thickness.value, f.front_thickness.value


def _corners(c: Settled, f: Frame, notes: list[Chosen]) -> tuple[Corner, Corner]:
    corner, customs = c.corner, c.customs
    made = []
    grooves: tuple[Span, ...]
    for name in ("back", "front"):
        back = name == "back"
        height = (f.wall_height if back else f.front_height).value
        grooves = (f.bottom_groove,)
        if back and f.lid_groove is not None:
            grooves = (f.bottom_groove, f.lid_groove)
        asked = corner.tails_back if back else corner.tails_front
        tails = settled_tails(
            asked,
            height=height,
            half_pin=corner.half_pin,
            pin=corner.pin,
            grooves=grooves,
            least=customs.tail_least,
            most=customs.tail_most,
            margin_least=customs.groove_margin_least,
            margin=customs.groove_margin_wanted,
        )
        if asked is None:
            key = f"corner.tails_{name}"
            notes.append(Chosen(key, str(tails), key_at(key).rule))
        # With tails on the ends the side is the pin board, and its topmost pin at the low front
        # reaches up to the rim.
        on_ends = corner.tails_on == "ends"
        made.append(
            lay_out(
                name,
                height=height,
                rim=f.wall_height.value if on_ends else height,
                tail_length=(f.tail_back if back else f.tail_front).value,
                slope=corner.slope,
                half_pin=corner.half_pin,
                pin=corner.pin,
                tails=tails,
            )
        )
    return made[0], made[1]


def design(choices: Choices) -> Design:
    """Reckon a box from its choices: walls, corners, grooves and panels. [mm]

    Negative sizes where the box cannot exist. Defaults are common practice, no source.
    """
    c, f, chosen = settle(choices)
    notes = list(chosen)
    back, front = _corners(c, f, notes)
    return Design(
        choices=c,
        frame=f,
        back=back,
        front=front,
        bottom=bottom(c, f),
        lids=lids(c, f),
        fits=groove_fits(f, back, front),
        holes=holes(c, f, back, front),
        chosen=tuple(notes),
        stray=stray_keys(choices),
    )
