"""The box as solids, built once from its design; sections and faces are cut from them."""

from toolkit.shape.areas import finishing_areas
from toolkit.shape.box import Solid, solids
from toolkit.shape.ends import end_grain, waste_on
from toolkit.shape.sections import CutPart, cut_across, cut_along
from toolkit.shape.slices import Outline, block, moved
from toolkit.shape.walls import JointedEnd, JointedWall, Which, end_of, wall, wall_as_cut
