"""Everything that touches the disk: box files and files of boards, read, checked and changed.

============================================  ==============================================
to read a box, or a text                      ``read_box``, ``box_from_text``
to write a whole box                          ``as_toml``
to change keys of a box and keep its remarks  ``edited``
to read the boards on the rack                ``read_boards``, ``boards_from_text``
to put a board on it or take one off          ``with_board``, ``without_board``
a board as typed, field by field              ``board_from_typed``; ``typed_board``, the reverse
to read a class, with every student's box     ``read_class``
to write such a text into its file, or undo   ``BOX`` and ``BOARDS``: ``change``, ``undo``, …
============================================  ==============================================

What cannot be read raises a ``FileError`` whose text is one line: the file, the key, its line, what
was read and what to type. ``problems`` holds everything else that is wrong.
"""

from toolkit.files.boards_editing import with_board, without_board
from toolkit.files.boards_file import BOARDS, boards_from_text, read_boards
from toolkit.files.box_file import BOX, box_from_text, read_box
from toolkit.files.class_file import read_class
from toolkit.files.class_record import Buying, Day, Measured, Student, WeekendClass
from toolkit.files.editing import edited
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
    "BOARDS",
    "BOX",
    "BoardsFileError",
    "BoxFileError",
    "Buying",
    "ClassFileError",
    "Day",
    "FileError",
    "Measured",
    "Problem",
    "Student",
    "TypedBoard",
    "TypedDefect",
    "WeekendClass",
    "as_toml",
    "board_from_typed",
    "boards_from_text",
    "box_from_text",
    "edited",
    "read_boards",
    "read_box",
    "read_class",
    "typed_board",
    "with_board",
    "without_board",
]
