"""Bench drawings of a plan: pure functions of it, each with the sentence that it states."""

from toolkit.pictures.amounts import Jar, Stack, jars_picture, stack_picture
from toolkit.pictures.board.curve import curve_picture
from toolkit.pictures.board.drawing import board_picture
from toolkit.pictures.corner.drawing import corner_picture
from toolkit.pictures.exploded.drawing import box_apart
from toolkit.pictures.joint.gap import gap_picture
from toolkit.pictures.joint.pictorial import joint_apart
from toolkit.pictures.joint.unfolded import unfolded_end
from toolkit.pictures.kit.faces import face_of_drawings, svg_with_face, with_faces
from toolkit.pictures.kit.lettering import for_paper, usually_for_phones, worded
from toolkit.pictures.kit.picture import Drawn, DrawnLine, LabelBox, Outline, Picture
from toolkit.pictures.section.across import section_across
from toolkit.pictures.section.along import section_along
from toolkit.pictures.section.lid_way import lid_picture
from toolkit.pictures.sheets.drawing import sheet_pages
from toolkit.pictures.sheets.page import SheetPage, sheets_pdf
from toolkit.pictures.surface.drawing import raking_light
from toolkit.pictures.surface.iron import iron_picture
from toolkit.pictures.timetable import Bit, Kind, Row, Weekend, timetable_picture
from toolkit.pictures.tree.drawing import log_end
from toolkit.pictures.tree.states import Sawn, Year
from toolkit.pictures.tree.year_drawing import year_picture
from toolkit.pictures.truing.face import face_map
from toolkit.pictures.truing.inside import board_inside
from toolkit.pictures.truing.planing import clock_picture, shavings_picture
