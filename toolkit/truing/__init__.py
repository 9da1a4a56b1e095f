"""From a warped rough board to true parts, by hand.

A board lies on the bench with its length from left to right: x runs along it from the left end,
y across it from the edge near you, heights upwards. Everything is in millimetres and degrees.

=================================================  ==============================================
the question                                       ask
=================================================  ==============================================
how is it bent, in words or as a face              ``Warp``, ``face_of``, ``cut_to``
what do winding sticks or a straightedge mean      ``twist_from_sticks``, ``stick_reading``,
                                                   ``magnification``, ``least_twist``,
                                                   ``curve_from_straightedge``
what do my own readings say                        ``warp_from_readings``, ``rocking``,
                                                   ``between_readings``
the true face that takes least off                 ``least_planing``
the thickest true board in it                      ``thickest_board``, ``thickness_from``
what does crosscutting first save                  ``crosscut_first``, ``longest_piece``
what must I saw for a part                         ``rough_size``, ``Allowances``
how wide a shaving, what ridge, how many strokes   ``Plane``, ``JACK``, ``TRY``, ``SMOOTHER``,
                                                   ``least_strokes``, ``stroke_choices``,
                                                   ``strokes_at_overlap``, ``strokes_with``
and all three planes, do their ridges show         ``planing_job``, ``clearing``
is the sum right, and if my strokes stray          ``simulate_strokes``, ``scatter_cost``
how long, how many shavings: estimates             ``bench_time``, ``shavings``
is the edge square, how much is left, which end    ``out_of_square``, ``angle_of_edge``,
                                                   ``to_gauge_line``, ``hollow_ridden``
in which order, and the test after each step       ``order_of_work``, ``check_order``, ``ORDERS``
how true is true enough                            ``Limits``
what to measure now, and can a rule tell it        ``worth_measuring``, ``rule_error``
what would a maker say of it                       ``check_thickness``, ``check_twist``,
                                                   ``check_walls``, ``check_gauge_line``,
                                                   ``check_scallops``, ``check_iron``
=================================================  ==============================================
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from toolkit.lazy import fetcher

if TYPE_CHECKING:
    from toolkit.truing.accuracy import RuleClass, rule_error
    from toolkit.truing.board_checks import (
        check_gauge_line,
        check_thickness,
        check_twist,
        check_walls,
    )
    from toolkit.truing.edges import Remaining, angle_of_edge, out_of_square, to_gauge_line
    from toolkit.truing.estimates import LEARNER, SECONDS, BenchTime, Shavings, bench_time, shavings
    from toolkit.truing.flattest import LeastPlaning, least_planing
    from toolkit.truing.jobs import Clearing, Job, clearing, planing_job
    from toolkit.truing.limits import Limits
    from toolkit.truing.order import BenchTest, OrderOfWork, Task, check_order, order_of_work
    from toolkit.truing.order_steps import (
        ENDS_FIRST,
        NEEDS,
        ORDERS,
        STEPS,
        THICKNESS_FIRST,
        Need,
        Step,
    )
    from toolkit.truing.places import CORNERS, place_on_board, places_on_board
    from toolkit.truing.plane_checks import check_iron, check_scallops
    from toolkit.truing.planes import JACK, PLANES, SMOOTHER, TRY, Plane, fewest_tracks
    from toolkit.truing.readings import FittedWarp, Rocking, rocking, warp_from_readings
    from toolkit.truing.riding import Hollow, hollow_ridden
    from toolkit.truing.rough import Allowances, RoughSize, rough_size
    from toolkit.truing.saving import (
        SAW_MARKS,
        CrosscutFirst,
        Yield,
        crosscut_first,
        longest_piece,
        thickness_from,
    )
    from toolkit.truing.scatter import ScatterCost, scatter_cost
    from toolkit.truing.simulation import Planed, simulate_strokes
    from toolkit.truing.sticks import (
        EYE,
        curve_from_straightedge,
        least_twist,
        magnification,
        stick_reading,
        twist_from_sticks,
    )
    from toolkit.truing.strokes import (
        Strokes,
        least_strokes,
        stroke_choices,
        strokes_at_overlap,
        strokes_with,
    )
    from toolkit.truing.thickest import ThickestBoard, thickest_board
    from toolkit.truing.unread import between_readings
    from toolkit.truing.warp import Face, Warp, cut_to, face_of
    from toolkit.truing.worth import SQUARE, Worth, worth_measuring

# Where each name lives. They are fetched when first asked for: whoever only asks what a rule can
# tell need not wait for numpy, and scipy comes with the first plane that is looked for.
_HOMES = {
    "accuracy": "RuleClass rule_error",
    "board_checks": "check_gauge_line check_thickness check_twist check_walls",
    "edges": "Remaining angle_of_edge out_of_square to_gauge_line",
    "estimates": "LEARNER SECONDS BenchTime Shavings bench_time shavings",
    "flattest": "LeastPlaning least_planing",
    "jobs": "Clearing Job clearing planing_job",
    "limits": "Limits",
    "order": "BenchTest OrderOfWork Task check_order order_of_work",
    "order_steps": "ENDS_FIRST NEEDS ORDERS STEPS THICKNESS_FIRST Need Step",
    "places": "CORNERS place_on_board places_on_board",
    "plane_checks": "check_iron check_scallops",
    "planes": "JACK PLANES SMOOTHER TRY Plane fewest_tracks",
    "readings": "FittedWarp Rocking rocking warp_from_readings",
    "riding": "Hollow hollow_ridden",
    "rough": "Allowances RoughSize rough_size",
    "saving": "SAW_MARKS CrosscutFirst Yield crosscut_first longest_piece thickness_from",
    "scatter": "ScatterCost scatter_cost",
    "simulation": "Planed simulate_strokes",
    "sticks": "EYE curve_from_straightedge least_twist magnification stick_reading "
    "twist_from_sticks",
    "strokes": "Strokes least_strokes stroke_choices strokes_at_overlap strokes_with",
    "thickest": "ThickestBoard thickest_board",
    "unread": "between_readings",
    "warp": "Face Warp cut_to face_of",
    "worth": "SQUARE Worth worth_measuring",
}

__all__ = [
    "CORNERS",
    "ENDS_FIRST",
    "EYE",
    "JACK",
    "LEARNER",
    "NEEDS",
    "ORDERS",
    "PLANES",
    "SAW_MARKS",
    "SECONDS",
    "SMOOTHER",
    "SQUARE",
    "STEPS",
    "THICKNESS_FIRST",
    "TRY",
    "Allowances",
    "BenchTest",
    "BenchTime",
    "Clearing",
    "CrosscutFirst",
    "Face",
    "FittedWarp",
    "Hollow",
    "Job",
    "LeastPlaning",
    "Limits",
    "Need",
    "OrderOfWork",
    "Plane",
    "Planed",
    "Remaining",
    "Rocking",
    "RoughSize",
    "RuleClass",
    "ScatterCost",
    "Shavings",
    "Step",
    "Strokes",
    "Task",
    "ThickestBoard",
    "Warp",
    "Worth",
    "Yield",
    "angle_of_edge",
    "bench_time",
    "between_readings",
    "check_gauge_line",
    "check_iron",
    "check_order",
    "check_scallops",
    "check_thickness",
    "check_twist",
    "check_walls",
    "clearing",
    "crosscut_first",
    "curve_from_straightedge",
    "cut_to",
    "face_of",
    "fewest_tracks",
    "hollow_ridden",
    "least_planing",
    "least_strokes",
    "least_twist",
    "longest_piece",
    "magnification",
    "order_of_work",
    "out_of_square",
    "place_on_board",
    "places_on_board",
    "planing_job",
    "rocking",
    "rough_size",
    "rule_error",
    "scatter_cost",
    "shavings",
    "simulate_strokes",
    "stick_reading",
    "stroke_choices",
    "strokes_at_overlap",
    "strokes_with",
    "thickest_board",
    "thickness_from",
    "to_gauge_line",
    "twist_from_sticks",
    "warp_from_readings",
    "worth_measuring",
]

__getattr__ = fetcher(__name__, _HOMES)
