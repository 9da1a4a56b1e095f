"""Lessons made alive: the slider engine, the five lessons of the notebooks, cards and forms.

==============================================  ===================================================
the lessons that a notebook imports             ``lesson1`` … ``lesson5``, each a ``LiveLesson``
the sliders of a scene over the student's box   ``Explorer``; ``refresh`` and ``followed`` tell it
the student's own box and rack, and a block of  ``own``, ``rack``, ``of_own``
a guess, its reveal, and questions              ``guess_card compare_guess compare_count``,
                                                ``YourTurn question_cards``
a show of hands                                 ``HandsForm`` of what is ``Asked``
==============================================  ===================================================

Its public names stand in ``__init__.pyi`` and are fetched when first asked for: a lesson waits for
its own forms alone.
"""

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
