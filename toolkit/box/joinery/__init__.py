"""The dovetail itself: slope, layout, dividers, gauge lines, what holds it, and how well it fits.

===================================================  ============================================
the question                                         ask
===================================================  ============================================
what angle is 1 in 7, and who says which slope       ``slope_angle``, ``slope_advice``,
                                                     ``slope_table``
which layouts hide my grooves, and look well         ``set_out_round_grooves``
where do the dividers' marks fall                    ``walk``, ``setting_error``, ``marks_error``
which line goes on which face, gauged from where     ``setting_out_lines``, ``line_table``,
                                                     ``gauge_settings``, ``between_baselines``
what holds the corner, what can a saw reach          ``holds``, ``socket_reach``,
                                                     ``lead_error``
which way does it go together, lock, and open        ``joint_direction``, ``glue_up_steps``
how are the pins copied from the tails               ``transfer_steps``, ``step_table``
how wide a gap is my sawing likely to leave          ``gaps``
what do feeler gauges say of my hand                 ``compare_readings``
===================================================  ============================================

Names as at the bench: a *tail board* carries tails, its *baseline* is where they are narrowest;
the *knifed* face of a flank is the outside of the tail board, the *far* face its inside.
"""

from toolkit.box.joinery.assembly import Direction, glue_up_steps, joint_direction
from toolkit.box.joinery.dividers import Walk, marks_error, setting_error, walk
from toolkit.box.joinery.feelers import HandReading, compare_readings
from toolkit.box.joinery.gap import Gaps, gaps
from toolkit.box.joinery.gauges import (
    GaugeSettings,
    between_baselines,
    gauge_settings,
    has_ear,
)
from toolkit.box.joinery.hand import Hand, SawnJoint, Spread, spread
from toolkit.box.joinery.hold import (
    Hold,
    SocketReach,
    holds,
    lead_error,
    socket_reach,
)
from toolkit.box.joinery.line_rows import line_table, proud_sentence
from toolkit.box.joinery.lines import Line, setting_out_lines
from toolkit.box.joinery.offers import Offer, RoundGrooves
from toolkit.box.joinery.round_grooves import set_out_round_grooves
from toolkit.box.joinery.slopes import (
    SlopeAdvice,
    flank_length,
    slope_advice,
    slope_angle,
    slope_table,
    tail_overhang,
)
from toolkit.box.joinery.steps import BenchStep, step_table
from toolkit.box.joinery.transfer import transfer_steps
