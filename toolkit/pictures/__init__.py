"""Bench drawings of a plan: pure functions of it, each with the sentence that it states."""

from toolkit.pictures.apart.drawing import box_apart, box_together
from toolkit.pictures.corner.drawing import corner_picture
from toolkit.pictures.kit.picture import Drawn, LabelBox, Line, Outline, Picture
from toolkit.pictures.section.across import section_across
from toolkit.pictures.section.along import section_along

__all__ = [
    "Drawn",
    "LabelBox",
    "Line",
    "Outline",
    "Picture",
    "box_apart",
    "box_together",
    "corner_picture",
    "section_across",
    "section_along",
]
