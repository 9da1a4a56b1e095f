"""The student's own box and rack, of which a lesson's cells speak."""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache, wraps
from inspect import signature
from pathlib import Path
from typing import Any

from toolkit.document import Block
from toolkit.lesson import worked_out
from toolkit.plan import Plan
from toolkit.stock import Board
from toolkit.study import OwnBoards, OwnBox


def own() -> Plan:
    """The student's own box, worked out; the workbook's example until one is kept."""
    return worked_out(OwnBox().load().choices)


def rack() -> tuple[Board, ...]:
    """The boards on the student's rack, read again only when their file was changed. [mm]"""
    path = OwnBoards().source
    return _rack(path, path.stat().st_mtime_ns)


@lru_cache(maxsize=4)
def _rack(path: Path, changed: int) -> tuple[Board, ...]:
    return OwnBoards().load().boards


def of_own(block: Callable[..., Block]) -> Callable[..., Block]:
    """What a lesson shows of a plan and of boards, as a cell asks for it: of the student's own."""
    taken = signature(block)
    asked = {"plan": own, "boards": rack}
    given = [asked.pop(name) for name in taken.parameters if name in asked]

    @wraps(block)
    def shown(*args: Any, **named: Any) -> Block:
        return block(*(fetch() for fetch in given), *args, **named)

    less = list(taken.parameters.values())[len(given) :]
    shown.__signature__ = taken.replace(parameters=less)  # type: ignore[attr-defined]
    return shown
