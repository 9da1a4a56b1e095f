"""The flattest planes through a face: ``python -m tests.benchmarks.truing``.

Compare within one run only. Wanted: both planes of a face of 65 readings in 5 ms or less.
"""

from collections.abc import Callable

import numpy as np

from tests.benchmarks.timing import timed
from toolkit.planes import JACK
from toolkit.truing import (
    Warp,
    crosscut_first,
    face_of,
    least_planing,
    least_strokes,
    thickest_board,
    warp_from_readings,
)

TURNS = 200
WANTED = 5.0  # [ms]


def main() -> None:
    """Measure and print."""
    chance = np.random.default_rng(7)
    board = Warp(700, 72, bow=1.5, cup=-0.5, twist=1.3)

    def rough(along: int, across: int) -> tuple[np.ndarray, ...]:
        face = face_of(board, thickness=16, along=along, across=across)
        top = face.height + chance.normal(0, 0.1, len(face.x)) + 0.003 * face.x
        return face.x, face.y, top, face.bottom + chance.normal(0, 0.1, len(face.x))

    faces = [rough(13, 5) for _ in range(20)]
    fine = rough(41, 21)
    turn = iter(range(10**9))

    def least() -> object:
        x, y, top, _ = faces[next(turn) % len(faces)]
        return least_planing(x=x, y=y, height=top)

    def thickest() -> object:
        x, y, top, bottom = faces[next(turn) % len(faces)]
        return thickest_board(x=x, y=y, top=top, bottom=bottom)

    def both() -> object:
        return least(), thickest()

    readings = list(zip(*(column.tolist() for column in faces[0][:3]), strict=True))
    rows: list[tuple[str, Callable[[], object], int]] = [
        ("least planing, 65 readings", least, TURNS),
        ("thickest board, 65 readings", thickest, TURNS),
        ("both planes, 65 readings", both, TURNS),
        (
            "least planing, 861 readings",
            lambda: least_planing(x=fine[0], y=fine[1], height=fine[2]),
            50,
        ),
        (
            "bow, cup, twist of 65 readings",
            lambda: warp_from_readings(readings, length=700, width=72),
            50,
        ),
        (
            "crosscut first, a slider step",
            lambda: crosscut_first(board, thickness=16, length=190),
            50,
        ),
        ("least strokes, a slider step", lambda: least_strokes(JACK, width=64, remove=3.5), TURNS),
    ]
    for name, what, turns in rows:
        middle, most = timed(what, turns=turns)
        told = f"   wanted {WANTED:g}" if what is both else ""
        print(f"{name:34} median {middle:8.2f} ms   most {most:8.2f} ms{told}")


if __name__ == "__main__":
    main()
