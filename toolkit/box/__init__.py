"""The box: its choices, its corners, grooves and panels, and what a maker would say of them."""

from toolkit.box.change import written
from toolkit.box.choices import Change, Choices, Size, Thickness
from toolkit.box.contents import UnknownContents, contents
from toolkit.box.corner import Corner, Piece
from toolkit.box.customs import Customs
from toolkit.box.design import Design, design
from toolkit.box.frame import Frame, Span
from toolkit.box.grooves import Hole
from toolkit.box.panels import LiftOffLid, Panel
from toolkit.box.settled import Settled

__all__ = [
    "Change",
    "Choices",
    "Corner",
    "Customs",
    "Design",
    "Frame",
    "Hole",
    "LiftOffLid",
    "Panel",
    "Piece",
    "Settled",
    "Size",
    "Span",
    "Thickness",
    "UnknownContents",
    "contents",
    "design",
    "written",
]
