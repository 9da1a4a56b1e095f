"""What a student owns: a folder, boxes, boards, guesses, and questions that mark themselves.

===================================================  ============================================
their own box, made at the first change              ``OwnBox``, ``boxes``, ``choose_box``
their own rack of boards, likewise                   ``OwnBoards``
one box in place of theirs, for paper                ``bound_to``
to keep a guess before looking; to take one back     ``guess``, ``guess_count``; ``undo_guess``
to compare it with the answer                        ``reveal``, ``reveal_count``
to ask about their own plan, and to mark the answer  ``draw``, ``mark``
what a lesson opens with, and its usual slips        ``first_guess``
a lesson's answers for the teacher, as Markdown      ``solutions``
to keep an answer; how far they are in the lessons   ``keep_answer``; ``so_far``
===================================================  ============================================

No widgets and no pictures: those who show these things are elsewhere.
"""

from toolkit.study.answers import first_guess, leaning_saw, solutions
from toolkit.study.folder import (
    LessonError,
    example_path,
    lesson_file,
    lesson_files,
    lessons_by_number,
    lessons_folder,
    student_folder,
)
from toolkit.study.guesses import guess, guess_count, reveal, reveal_count, undo_guess
from toolkit.study.marking import Question, Slip, mark
from toolkit.study.own_box import (
    Loaded,
    LoadedBoards,
    OwnBoards,
    OwnBox,
    bound_to,
    boxes,
    choose_box,
)
from toolkit.study.progress import keep_answer, so_far
from toolkit.study.questions import draw, lessons_with_questions
