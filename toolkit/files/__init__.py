"""Everything that touches the disk: box files and files of boards, read, checked and changed.

============================================  ===========================================
to read a box, or a text                      ``read_box``, ``box_from_text``
to change keys of a file and keep its remarks ``change_box``; ``undo`` takes it back
to write a whole file                         ``as_toml``, ``write_box``
to bring an older file up to this format      ``migrate_box``
to read the boards on the rack                ``read_boards``, ``boards_from_text``
to put a board on it or take one off          ``keep_board``, ``remove_board``; ``undo_boards``
to read a class, with every student's box     ``read_class``
a board as typed, field by field              ``board_from_typed``; ``typed_board``, the reverse
============================================  ===========================================

What cannot be read raises a ``FileError`` whose text is one line: the file, the key, its line, what
was read and what to type. ``problems`` holds everything else that is wrong.
"""

from toolkit.files.boards_changing import keep_board, remove_board, undo_boards
from toolkit.files.boards_file import boards_from_text, read_boards
from toolkit.files.box_file import box_from_text, read_box
from toolkit.files.changing import change_box, migrate_box, undo, write_box
from toolkit.files.class_file import read_class
from toolkit.files.class_record import Buying, Day, Student, WeekendClass
from toolkit.files.errors import (
    BoardsFileError,
    BoxFileError,
    ClassFileError,
    FileError,
    Problem,
)
from toolkit.files.toml_out import as_toml
from toolkit.files.typed_boards import TypedBoard, TypedDefect, board_from_typed, typed_board

__all__ = [
    "BoardsFileError",
    "BoxFileError",
    "Buying",
    "ClassFileError",
    "Day",
    "FileError",
    "Problem",
    "Student",
    "TypedBoard",
    "TypedDefect",
    "WeekendClass",
    "as_toml",
    "board_from_typed",
    "boards_from_text",
    "box_from_text",
    "change_box",
    "keep_board",
    "migrate_box",
    "read_boards",
    "read_box",
    "read_class",
    "remove_board",
    "typed_board",
    "undo",
    "undo_boards",
    "write_box",
]
