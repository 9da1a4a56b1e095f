"""The five lessons: from a plan and the sliders' places to what is shown. No widgets.

==============================================  ===================================================
a lesson's scenes and blocks                    ``lesson``, a ``Lesson``
sliders and what they come to                   ``Scene`` with ``Control``; ``Shown`` or ``View``
what a slider moves                             ``LengthControl NumberControl CountControl``,
                                                ``ChoiceControl``
where there is nothing to show                  ``ImpossibleError``
a box worked out once for all lessons           ``worked_out``; ``possible`` or refused
==============================================  ===================================================

Its public names stand in ``__init__.pyi`` and are fetched when first asked for: a lesson loads no
other one.
"""

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
