"""Ways in which the lessons change files, for tests to call by name."""

from pathlib import Path

from toolkit.files import BOARDS, BOX, edited, with_board, without_board


def change_box(path, changes, **options):
    return BOX.change(path, lambda text: edited(text, changes, name=Path(path).name), **options)


def migrate_box(path):
    before = Path(path).read_bytes()
    change_box(path, {})
    return Path(path).read_bytes() != before


def keep_board(path, board, *, instead_of=None, **options):
    name = Path(path).name
    return BOARDS.change(
        path, lambda text: with_board(text, board, name=name, instead_of=instead_of), **options
    )


def remove_board(path, board, **options):
    name = Path(path).name
    return BOARDS.change(path, lambda text: without_board(text, board, name=name), **options)
