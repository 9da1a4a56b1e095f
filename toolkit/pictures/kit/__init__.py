"""The drawing kit: pens, lettering, dimensions, the page; its face names what all drawings use."""

from toolkit.pictures.kit.lettering import Anchor, Label, Place, extent
from toolkit.pictures.kit.picture import Picture, Point
from toolkit.pictures.kit.sheet import WIDTH, Sheet
from toolkit.pictures.kit.view import View, band, rectangle, still_scale

__all__ = [
    "WIDTH",
    "Anchor",
    "Label",
    "Picture",
    "Place",
    "Point",
    "Sheet",
    "View",
    "band",
    "extent",
    "rectangle",
    "still_scale",
]
