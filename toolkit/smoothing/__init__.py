"""Smoothing: how the plane is set, what shows of its surface, and what goes on it.

Plain numbers in and out: millimetres, degrees, percent, mL and g. Nothing here knows a box: sizes
come as arguments.

==============================================  =================================================
the question                                    ask
==============================================  =================================================
is anything wrong with this setting             ``check_plane``
who says how far back the cap iron sits         ``setbacks``
what will a low lamp show, a nail feel          ``what_shows``, ``shadow_length``
which end does one start from                   ``where_to_start``
is anything wrong with joints planed flush      ``check_flushing``, ``check_lid_play``
how much finish                                 ``finish_needed``, ``shellac_cut``
is anything wrong with this finish              ``check_finish``
==============================================  =================================================
"""

from toolkit.smoothing.finish import Needed, finish_needed, shellac_cut
from toolkit.smoothing.finish_checks import (
    FinishPlan,
    check_finish,
    check_flushing,
    check_lid_play,
    well_flushed,
)
from toolkit.smoothing.grain import where_to_start
from toolkit.smoothing.plane_checks import check_plane, setbacks
from toolkit.smoothing.raking import shadow_length, what_shows
