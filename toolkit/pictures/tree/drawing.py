"""The log's end with the board in it, and the board's end before and after it dried."""

from __future__ import annotations

from toolkit.measures import Rule
from toolkit.pictures.kit.edition import edition
from toolkit.pictures.kit.lettering import Place
from toolkit.pictures.kit.notes import title, unit_words
from toolkit.pictures.kit.picture import Picture
from toolkit.pictures.kit.sheet import PAPER_TEXT, Sheet
from toolkit.pictures.kit.view import View, still_scale
from toolkit.pictures.tree.ends import (
    AFTER,
    AS_SAWN,
    MIDDLE,
    SECTION_ROOM,
    draw_after,
    draw_as_sawn,
    warp_of,
)
from toolkit.pictures.tree.log import LOG_ROOM, PITH_X, PITH_Y, draw_log, log_radius
from toolkit.pictures.tree.sawn import Sawn
from toolkit.pictures.tree.warp import WarpedSection

HEIGHT = 318.0
LOG = 160.0  # radius of the log that is drawn, unless told: no source [mm]
WARP = 8


def log_end(
    board: Sawn,
    *,
    rule: Rule,
    log: float = LOG,
    warp: int = WARP,
    ghost: Sawn | None = None,
    paper: bool = False,
) -> Picture:
    """Draw the end of a log, the board where it was sawn from it, and what became of the board.

    Parameters
    ----------
    board : Sawn
        The board's end in the log, with its cup. [mm]
    rule : Rule
        Whose rule the sizes are read on.
    log : float
        Radius of the log; a board that reaches further gets a larger one. [mm]
    warp : int
        How many times the change of shape is drawn; fewer where there is no room. [1]
    ghost : Sawn, optional
        An earlier state, drawn thinly behind. [mm]
    paper : bool
        Larger letters, for print.

    Returns
    -------
    Picture
        Log and sections in true proportion; the exaggeration of the change is said beside it.

    Source
    ------
    The shape is the result's own. Where the heartwood ends and how far apart the rings lie is
    how it is drawn, no source.
    """
    text = PAPER_TEXT if paper else edition().text
    radius = log_radius(*([board] if ghost is None else [board, ghost]), least=log)
    small = still_scale((radius, LOG_ROOM * 1.06))
    kept = None
    if ghost is not None:
        kept = still_scale((ghost.width, SECTION_ROOM[0]), (ghost.thickness, SECTION_ROOM[1]))
    large = still_scale(
        (board.width, SECTION_ROOM[0]), (board.thickness, SECTION_ROOM[1]), kept=kept
    )
    sheet = Sheet(scale=small, height=HEIGHT, text=text)
    draw_log(View(sheet, PITH_X, PITH_Y, small), board, radius=radius, ghost=ghost, rule=rule)
    title(sheet, "the log's end", x=PITH_X, y=26.0)
    draw_as_sawn(View(sheet, MIDDLE, AS_SAWN, large), board, radius=radius, rule=rule)
    title(sheet, "the board's end as sawn", x=MIDDLE, y=HEIGHT - 20.0)
    after = View(sheet, MIDDLE, AFTER, large)
    if board.cup is None:
        words = "the pith lies in the board:\nit splits as it dries,\nand no cup can be foretold"
        sheet.write(words, [Place(MIDDLE, AFTER + 12.0, "center")], rank=0, red=True)
    else:
        larger = warp_of(board.cup, scale=large, times=warp)
        if ghost is not None and ghost.cup is not None:
            before = WarpedSection(ghost.cup, times=larger.times)
            after.area("ghost after", before.outline, edge="ghost")
        draw_after(after, board, board.cup, larger, radius=radius, rule=rule)
        title(sheet, f"{board.became}, warp × {larger.times:g}", x=MIDDLE, y=26.0)
    unit_words(sheet, rule=rule, ghost=ghost is not None)
    return sheet.picture(board.sentence(rule))
