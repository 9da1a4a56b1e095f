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

from __future__ import annotations

from typing import TYPE_CHECKING

from toolkit.lazy import fetcher

if TYPE_CHECKING:
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

# Where each name lives: a cut list asks for two of them, a lesson for nearly all.
_HOMES = {
    "assembly": "Direction glue_up_steps joint_direction",
    "dividers": "Walk marks_error setting_error walk",
    "feelers": "HandReading compare_readings",
    "gap": "Gaps gaps",
    "gauges": "GaugeSettings between_baselines gauge_settings has_ear",
    "hand": "Hand SawnJoint Spread spread",
    "hold": "Hold SocketReach holds lead_error socket_reach",
    "line_rows": "line_table proud_sentence",
    "lines": "Line setting_out_lines",
    "offers": "Offer RoundGrooves",
    "round_grooves": "set_out_round_grooves",
    "slopes": "SlopeAdvice flank_length slope_advice slope_angle slope_table tail_overhang",
    "steps": "BenchStep step_table",
    "transfer": "transfer_steps",
}

__all__ = [
    "BenchStep",
    "Direction",
    "Gaps",
    "GaugeSettings",
    "Hand",
    "HandReading",
    "Hold",
    "Line",
    "Offer",
    "RoundGrooves",
    "SawnJoint",
    "SlopeAdvice",
    "SocketReach",
    "Spread",
    "Walk",
    "between_baselines",
    "compare_readings",
    "flank_length",
    "gaps",
    "gauge_settings",
    "glue_up_steps",
    "has_ear",
    "holds",
    "joint_direction",
    "lead_error",
    "line_table",
    "marks_error",
    "proud_sentence",
    "set_out_round_grooves",
    "setting_error",
    "setting_out_lines",
    "slope_advice",
    "slope_angle",
    "slope_table",
    "socket_reach",
    "spread",
    "step_table",
    "tail_overhang",
    "transfer_steps",
    "walk",
]

__getattr__ = fetcher(__name__, _HOMES)
