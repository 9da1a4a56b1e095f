"""Bench drawings of a plan: pure functions of it, each with the sentence that it states."""

from toolkit.pictures.apart import box_apart, box_together
from toolkit.pictures.corner import corner_picture
from toolkit.pictures.picture import Drawn, LabelBox, Line, Outline, Picture
from toolkit.pictures.section import section_across
from toolkit.pictures.section_along import section_along

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
