"""Everything that touches the disk: box files and files of boards, read, checked and changed.

============================================  ==============================================
to read a box, or a text                      ``read_box``, ``box_from_text``
to write a whole box                          ``as_toml``
to change keys of a box and keep its remarks  ``edited``
to read the boards on the rack                ``read_boards``, ``boards_from_text``
to put a board on it or take one off          ``with_board``, ``without_board``
a board as typed, field by field              ``board_from_typed``
to read a class, with every student's box     ``read_class``
to write such a text into its file, or undo   ``BOX`` and ``BOARDS``: ``change``, ``undo``, …
to write any file, wholly or not at all       ``locked``, ``write_file``, ``clear_left``
to refuse an output that would do harm        ``check_output``, ``spare_inputs``, …
============================================  ==============================================

What cannot be read raises a ``FileError`` whose text is one line: the file, the key, its line, what
was read and what to type. ``problems`` holds everything else that is wrong.
"""

from toolkit.files.boards_editing import with_board, without_board
from toolkit.files.boards_file import (
    BOARDS,
    TypedBoard,
    TypedDefect,
    board_from_typed,
    boards_from_text,
    read_boards,
)
from toolkit.files.box_file import BOX, box_from_text, read_box
from toolkit.files.class_file import read_class
from toolkit.files.class_record import Buying, Day, Measured, Student, WeekendClass
from toolkit.files.editing import as_toml, edited
from toolkit.files.errors import (
    BoardsFileError,
    BoxFileError,
    ClassFileError,
    FileError,
    Problem,
)
from toolkit.files.syntax import KindOfFile, file_text
from toolkit.files.writing import (
    check_output,
    check_output_folder,
    clear_left,
    locked,
    spare_inputs,
    write_file,
)
