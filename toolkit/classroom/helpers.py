"""What helpers do for a timetable: they sit with the slow, who then keep up with a novice."""

from __future__ import annotations

from collections.abc import Sequence

from toolkit.classroom.steps import Pace

SITS_WITH = 2  # slow students, one helper at their bench: common practice, no source


def helped(paces: Sequence[Pace], *, helpers: int, each: int = SITS_WITH) -> tuple[Pace, ...]:
    """The paces of a class with its helpers.

    Parameters
    ----------
    paces : sequence of str
        practised, novice or slow, for each student.
    helpers : int
        How many there are, the teacher not counted.
    each : int
        How many slow students one of them sits with; those work at a novice's pace then.

    Returns
    -------
    tuple of str
        As many paces, the first slow students helped first.

    Raises
    ------
    ValueError
        A number is under 0.

    Source
    ------
    Common practice, no source: time your own class and change ``each``.

    >>> helped(("slow", "novice", "slow", "slow"), helpers=1)
    ('novice', 'novice', 'novice', 'slow')
    """
    if helpers < 0 or each < 0:
        raise ValueError(f"{min(helpers, each)} helpers or students each; type 0 or more")
    hands = helpers * each
    found: list[Pace] = []
    for pace in paces:
        if pace == "slow" and hands:
            hands -= 1
            pace = "novice"
        found.append(pace)
    return tuple(found)
