from .bench_forms import (
    MadeForm as MadeForm,
    MoistureForm as MoistureForm,
    ReadyCard as ReadyCard,
    feeler_card as feeler_card,
)
from .board_form import own_board as own_board
from .cards import (
    Asked as Asked,
    HandsForm as HandsForm,
    YourTurn as YourTurn,
    compare_count as compare_count,
    compare_guess as compare_guess,
    guess_card as guess_card,
    question_cards as question_cards,
)
from .engine import Explorer as Explorer, followed as followed, refresh as refresh
from .lessons import (
    LiveLesson as LiveLesson,
    lesson1 as lesson1,
    lesson2 as lesson2,
    lesson3 as lesson3,
    lesson4 as lesson4,
    lesson5 as lesson5,
    of_own as of_own,
    own as own,
    rack as rack,
)
from .readings_form import ReadingsForm as ReadingsForm
from .rescue_card import RescueCard as RescueCard
