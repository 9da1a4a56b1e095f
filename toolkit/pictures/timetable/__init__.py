"""A class's weekend drawn as bars: who does what when, who waits, who runs over."""

from toolkit.pictures.timetable.drawing import timetable_picture
from toolkit.pictures.timetable.rows import Bit, Kind, Row, Weekend

__all__ = ["Bit", "Kind", "Row", "Weekend", "timetable_picture"]
