"""The drawing kit: pens, lettering, dimensions, the page; its face names what all drawings use."""

from toolkit.pictures.kit.lettering import Anchor, Label, Slot, extent
from toolkit.pictures.kit.picture import Picture, Point
from toolkit.pictures.kit.sheet import WIDTH, Sheet
from toolkit.pictures.kit.view import PartView, band, rectangle, still_scale, upright_band
