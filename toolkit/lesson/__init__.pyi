from .controls import (
    ChoiceControl as ChoiceControl,
    Control as Control,
    CountControl as CountControl,
    LengthControl as LengthControl,
    NumberControl as NumberControl,
    in_box as in_box,
)
from .lesson2_board import stick_of as stick_of, walls as walls
from .lesson3_joint import gaps_of as gaps_of
from .lessons import Lesson as Lesson, lesson as lesson
from .scene import (
    ImpossibleError as ImpossibleError,
    Scene as Scene,
    Shown as Shown,
    SliderState as SliderState,
    Tried as Tried,
    View as View,
    drawable as drawable,
    possible as possible,
    spoken as spoken,
    worked_out as worked_out,
)
