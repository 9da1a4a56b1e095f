"""What a student owns: a folder, boxes, boards, guesses, and questions that mark themselves.

===================================================  ============================================
their own box, made at the first change              ``OwnBox``, ``boxes``, ``choose_box``
their own rack of boards, likewise                   ``OwnBoards``
one box in place of theirs, for paper                ``bound_to``
to keep a guess before looking                       ``guess``, ``guess_count``, ``guess_word``
to take one back; to compare with the answer         ``undo_guess``; ``reveal`` and its two kin
to ask about their own plan, and to mark the answer  ``draw``, ``mark``
a lesson's answers for the teacher, as Markdown      ``solutions``
what a lesson opens with, and its usual slips        ``first_guess``
===================================================  ============================================

No widgets and no pictures: those who show these things are elsewhere.
"""

from toolkit.study.bench_things import BenchThing, about, bench_things
from toolkit.study.box_names import BoxNameError, boxes, choose_box, current_name
from toolkit.study.first_guesses import first_guess
from toolkit.study.folder import (
    NoLessonsError,
    example_path,
    lesson_file,
    lesson_files,
    lessons_folder,
    student_folder,
)
from toolkit.study.guess_book import Guess
from toolkit.study.guesses import (
    Kept,
    guess,
    guess_count,
    guess_word,
    kept_guess,
    undo_guess,
)
from toolkit.study.marking import Marked, Question, Slip, mark
from toolkit.study.own_boards import LoadedBoards, OwnBoards
from toolkit.study.own_box import Loaded, OwnBox, bound_to
from toolkit.study.questions import NoQuestionsError, draw, lessons_with_questions
from toolkit.study.reveals import Reveal, reveal, reveal_count, reveal_word
from toolkit.study.solutions import solutions

__all__ = [
    "BenchThing",
    "BoxNameError",
    "Guess",
    "Kept",
    "Loaded",
    "LoadedBoards",
    "Marked",
    "NoLessonsError",
    "NoQuestionsError",
    "OwnBoards",
    "OwnBox",
    "Question",
    "Reveal",
    "Slip",
    "about",
    "bench_things",
    "bound_to",
    "boxes",
    "choose_box",
    "current_name",
    "draw",
    "example_path",
    "first_guess",
    "guess",
    "guess_count",
    "guess_word",
    "kept_guess",
    "lesson_file",
    "lesson_files",
    "lessons_folder",
    "lessons_with_questions",
    "mark",
    "reveal",
    "reveal_count",
    "reveal_word",
    "solutions",
    "student_folder",
    "undo_guess",
]
