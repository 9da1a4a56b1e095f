"""Smoothing: how the plane is set, the surface that it leaves, and what goes on it.

Plain numbers in and out: millimetres, degrees, percent, mL and g. Nothing here knows a box: sizes
come as arguments.

>>> plane = Plane.smoother()
>>> round(plane.pitch, 1), round(plane.scallops.depth, 3)      # tracks, ridges [mm]
(26.7, 0.01)
>>> round(shadow_length(0.02, lamp_height=5), 2)               # of a step [mm]
0.23

==============================================  =================================================
the question                                    ask
==============================================  =================================================
at what angle does it cut                       ``cutting_angle``, ``skewed``
how does the edge's curve look to the wood      ``Iron``, ``camber_radius``
what do its tracks leave                        ``Scallops``, ``Plane``
where does the cap iron go                      ``setbacks``, ``setback_to_begin``,
                                                ``thickest_shaving``
is anything wrong with this setting             ``check_plane``
what will a low lamp show, a nail feel          ``what_shows``, ``shadow_length``, ``shading``
which end does one start from                   ``where_to_start``, ``opposite``
is the sole flat where it matters               ``sole``
make me a surface, stroke by stroke             ``planed``, over a ``grain_map``
what did a planing machine do to this wood      ``machine_planing``
who has measured these two surfaces             ``side_by_side``, ``studies``
what does flushing the joints take              ``after_flushing``
how much finish                                 ``box_areas``, ``finish_needed``, ``flakes_for``
is anything wrong with this finish              ``check_finish``
==============================================  =================================================
"""

from toolkit.smoothing.angles import (
    FIRST_FORM,
    SECOND_FORM,
    Bevel,
    CuttingAngle,
    Skewed,
    cutting_angle,
    skewed,
)
from toolkit.smoothing.areas import Area, Areas, area_words, box_areas
from toolkit.smoothing.cap_iron import Setback, setback_to_begin, setbacks, thickest_shaving
from toolkit.smoothing.customs import Customs
from toolkit.smoothing.finish import Needed, Spread, finish_needed, spread, spreads
from toolkit.smoothing.finish_checks import FinishPlan, check_finish
from toolkit.smoothing.flushing import Flushed, after_flushing
from toolkit.smoothing.grain import Reading, opposite, strength_kept, where_to_start
from toolkit.smoothing.grain_map import PATTERNS, grain_map
from toolkit.smoothing.iron import Iron, camber_radius
from toolkit.smoothing.machine import (
    MachinePlaning,
    from_hook,
    machine_planing,
    machine_planings,
)
from toolkit.smoothing.plane import Plane
from toolkit.smoothing.plane_checks import GRAINS, check_plane
from toolkit.smoothing.raking import Shows, shading, shadow_length, what_shows
from toolkit.smoothing.research import Comparison, Study, side_by_side, studies
from toolkit.smoothing.scallops import Scallops
from toolkit.smoothing.shellac import ShellacCut, flakes_for, shellac_cut
from toolkit.smoothing.sole import CAN, CANNOT, Sole, sole
from toolkit.smoothing.strokes import planed
from toolkit.smoothing.surface import Stroke, Surface
from toolkit.smoothing.tearing import MODEL

__all__ = [
    "CAN",
    "CANNOT",
    "FIRST_FORM",
    "GRAINS",
    "MODEL",
    "PATTERNS",
    "SECOND_FORM",
    "Area",
    "Areas",
    "Bevel",
    "Comparison",
    "Customs",
    "CuttingAngle",
    "FinishPlan",
    "Flushed",
    "Iron",
    "MachinePlaning",
    "Needed",
    "Plane",
    "Reading",
    "Scallops",
    "Setback",
    "ShellacCut",
    "Shows",
    "Skewed",
    "Sole",
    "Spread",
    "Stroke",
    "Study",
    "Surface",
    "after_flushing",
    "area_words",
    "box_areas",
    "camber_radius",
    "check_finish",
    "check_plane",
    "cutting_angle",
    "finish_needed",
    "flakes_for",
    "from_hook",
    "grain_map",
    "machine_planing",
    "machine_planings",
    "opposite",
    "planed",
    "setback_to_begin",
    "setbacks",
    "shading",
    "shadow_length",
    "shellac_cut",
    "side_by_side",
    "skewed",
    "sole",
    "spread",
    "spreads",
    "strength_kept",
    "studies",
    "thickest_shaving",
    "what_shows",
    "where_to_start",
]
