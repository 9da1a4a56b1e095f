"""Boxes and boards written as a person would type them, for what is to be read back."""

from dataclasses import fields
from typing import Any

from toolkit.files import TypedBoard, TypedDefect
from toolkit.files.editing import as_toml as as_toml, quoted as quoted, toml as toml
from toolkit.measures import Rule, length_text
from toolkit.stock import Board

_MILLIMETRES = Rule.millimetres()


def typed_board(board: Board, *, rule: Rule = _MILLIMETRES) -> TypedBoard:
    """A board as somebody would have to type it to have exactly this one, in a rule's units."""

    def text(value: Any) -> Any:
        if isinstance(value, tuple):
            return tuple(map(text, value))
        return value if isinstance(value, str) else length_text(value, rule=rule)

    def typed(record: Any, *without: str) -> dict[str, Any]:
        names = (spec.name for spec in fields(record) if spec.name not in without)
        return {name: text(getattr(record, name)) for name in names}

    defects = tuple(TypedDefect(**typed(each)) for each in board.defects)
    return TypedBoard(**typed(board, "defects"), defects=defects)
