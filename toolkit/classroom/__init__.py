"""The class: its timetable, what it shares, how its boxes are marked, and its folder."""

from toolkit.classroom.folder import make_class
from toolkit.classroom.folder_run import OnProgress
