"""Boxes that many tests start from."""

from toolkit.box import Choices, Size, Thickness
from toolkit.box.choices import Change, CornerChoice, GrooveChoice, Panels, Tools, Wood
from toolkit.measures import Rule

INCH = 25.4


def postcard() -> Choices:
    """The workbook's example: a postcard box for A6 cards, in millimetres."""
    return Choices(
        Size(inside_length=152.0, inside_width=110.0, inside_height=38.0),
        Thickness(side=12.0, end=12.0, bottom=8.0, lid=9.0),
        title="Postcard box",
        corner=CornerChoice(lap=4.0, slope=7.0, half_pin=6.0, pin=6.0, tails_back=3, tails_front=2),
        groove=GrooveChoice(width=6.0, depth=4.0, bottom_edge=8.0, top_edge=8.0),
        panels=Panels(bottom_across=2.0, lid_across=2.0, under_lid=0.6),
        tools=Tools(chisel=3.0, plough_irons=(6.0,)),
        wood=Wood(rings=0.0),
    )


def inch_postcard() -> Choices:
    """The same box built in inches. Not a conversion: it closes in its own fractions."""
    return Choices(
        Size(inside_length=6 * INCH, inside_width=(4 + 5 / 16) * INCH, inside_height=1.5 * INCH),
        Thickness(side=INCH / 2, end=INCH / 2, bottom=5 / 16 * INCH, lid=3 / 8 * INCH),
        title="Postcard box",
        rule=Rule.inches(),
        corner=CornerChoice(
            lap=5 / 32 * INCH,
            slope=7.0,
            half_pin=INCH / 4,
            pin=INCH / 4,
            tails_back=3,
            tails_front=2,
        ),
        groove=GrooveChoice(
            width=INCH / 4, depth=5 / 32 * INCH, bottom_edge=11 / 32 * INCH, top_edge=11 / 32 * INCH
        ),
        panels=Panels(
            bottom_across=5 / 64 * INCH,
            lid_across=5 / 64 * INCH,
            along=INCH / 32,
            under_lid=INCH / 32,
        ),
        tools=Tools(chisel=INCH / 8, plough_irons=(INCH / 4,)),
        wood=Wood(rings=0.0),
    )


def _edges(half_pin: float, fence: float, under_lid: float) -> Change:
    fences = {"groove.bottom_edge": fence, "groove.top_edge": fence}
    return {
        "corner.half_pin": half_pin,
        **fences,
        "groove.ends": "through",
        "panels.under_lid": under_lid,
    }


def first_postcard() -> Choices:
    """The postcard box as the example was at first, of which many tables were worked by hand.

    Its half pins are narrower than its pins, and its grooves 1 mm nearer to the edges; whatever the
    joint, they are ploughed right through.
    """
    return postcard().having(_edges(5.0, 7.0, 0.3))


def first_inch_postcard() -> Choices:
    """The same, built in inches."""
    return inch_postcard().having(_edges(3 / 16 * INCH, 9 / 32 * INCH, 0.3))


def first_ears() -> Choices:
    """The first postcard box with its tails on the sides."""
    return first_postcard().having({"corner.tails_on": "sides"})


def first_lift_off() -> Choices:
    """The first postcard box under a lift-off lid."""
    return first_postcard().having({"lid.kind": "lift-off"})


def ears() -> Choices:
    """The postcard box with its tails on the sides, and so with ears above the low front."""
    return postcard().having({"corner.tails_on": "sides"})


def lift_off() -> Choices:
    """The postcard box under a lift-off lid."""
    return postcard().having({"lid.kind": "lift-off"})
