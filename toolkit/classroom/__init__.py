"""The class: its timetable, what it shares, and how its boxes are marked."""

from toolkit.classroom.assessment import (
    Assessment,
    Mark,
    Measured,
    assess,
)
from toolkit.classroom.bands import BANDS, Limits, WordRow, limits, play_band, word_rows
from toolkit.classroom.folder import FolderMade, make_class
from toolkit.classroom.hours import Hours
from toolkit.classroom.late import Bought, bought_back, offers
from toolkit.classroom.sheets import blank_rubric, class_table, student_sheet
from toolkit.classroom.simulation import Bar
from toolkit.classroom.steps import (
    Saving,
    Step,
    critical_path,
    if_late,
    savings,
    spared,
    weekend,
)
from toolkit.classroom.timetable import Timetable, shared_tools, timetable

__all__ = [
    "BANDS",
    "Assessment",
    "Bar",
    "Bought",
    "FolderMade",
    "Hours",
    "Limits",
    "Mark",
    "Measured",
    "Saving",
    "Step",
    "Timetable",
    "WordRow",
    "assess",
    "blank_rubric",
    "bought_back",
    "class_table",
    "critical_path",
    "if_late",
    "limits",
    "make_class",
    "offers",
    "play_band",
    "savings",
    "shared_tools",
    "spared",
    "student_sheet",
    "timetable",
    "weekend",
    "word_rows",
]
