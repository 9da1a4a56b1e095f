"""From a warped rough board to true parts, by hand.

A board lies on the bench with its length from left to right: x runs along it from the left end,
y across it from the edge near you, heights upwards. Everything is in millimetres and degrees.

=================================================  ==============================================
the question                                       ask
=================================================  ==============================================
how is it bent, in words or as a face              ``Warp``, ``face_of``, ``cut_to``
what do winding sticks and squares show of it      ``stick_reading``, ``least_twist``,
                                                   ``out_of_square``
what do my own readings say                        ``warp_from_readings``, ``between_readings``
the true face that takes least off                 ``least_planing``
the thickest true board in it                      ``thickest_board``, ``thickness_from``
what does crosscutting first save                  ``crosscut_first``, ``longest_piece``
how thick must a part be sawn                      ``safe_thickness``
how many strokes, and how best laid                ``least_strokes``, ``strokes_as_set``
and all three planes, do their ridges show         ``planing_job``, ``clearing``
how long, how many shavings: estimates             ``bench_time``, ``shavings``
in which order, and the test after each step       ``order_of_work``, ``ORDERS``
how true is true enough                            ``Tolerances``
what to measure now, and can a rule tell it        ``worth_measuring``
what would a maker say of it                       ``check_thickness``, ``check_twist``,
                                                   ``check_scallops``, ``check_iron``
=================================================  ==============================================
"""

from toolkit.truing.checks import check_iron, check_scallops, check_thickness, check_twist
from toolkit.truing.estimates import LEARNER, SECONDS, BenchTime, bench_time, shavings
from toolkit.truing.flattest import LeastPlaning, ThickestBoard, least_planing, thickest_board
from toolkit.truing.jobs import PlaningJob, clearing, planing_job
from toolkit.truing.order import ORDERS, THICKNESS_FIRST, order_of_work
from toolkit.truing.readings import warp_from_readings
from toolkit.truing.saving import (
    SAW_MARKS,
    Yield,
    crosscut_first,
    longest_piece,
    safe_thickness,
    thickness_from,
)
from toolkit.truing.sticks import EYE, least_twist, out_of_square, stick_reading
from toolkit.truing.strokes import Strokes, least_strokes, strokes_as_set
from toolkit.truing.tolerances import Tolerances
from toolkit.truing.unread import between_readings
from toolkit.truing.warp import Warp, cut_to, face_of
from toolkit.truing.worth import worth_measuring
