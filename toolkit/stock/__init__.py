"""From the rack to rough parts: boards and what is wrong with them, laying out, buying.

===============================================  ================================================
the question                                     ask
===============================================  ================================================
which rough parts does a box need                ``blanks_of``
where do they lie on one board, for yield or     ``lay_out``, ``BoardLayouts``
looks
and on several boards of different thickness     ``lay_out_box``, ``BoxLayouts``
and of a whole class, with proof or gap          ``lay_out_class``
which saw cuts, in which order                   ``saw_cuts``, ``cut_table``, ``piece_table``
what does grain round the corners cost           ``corner_prices``
why does a part not fit                          ``why_not_all_fit``, ``missing_sentences``
what does a board give when it is resawn         ``resaw``
how much wood is that, and as a yard counts      ``cubic_metres``, ``board_feet``, ``quarter``
what to buy, and by when                         ``to_buy``, ``order_by``, ``sets_needed``
===============================================  ================================================

How the solver works is told in ``toolkit.stock.layout``.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from toolkit.lazy import fetcher
from toolkit.stock.boards import Board, Defect, DefectKind, named_as_typed

if TYPE_CHECKING:
    from toolkit.stock.blanks import Blank, Corners, blanks_of
    from toolkit.stock.box_layout import BoxLayouts, lay_out_box
    from toolkit.stock.buying import OrderBy, Purchase, order_by, to_buy
    from toolkit.stock.class_layout import ClassLaid, lay_out_class
    from toolkit.stock.class_prices import Prices
    from toolkit.stock.corners import CornerPrice, corner_prices
    from toolkit.stock.cuts import Cut, saw_cuts
    from toolkit.stock.laid import BoxLaid, Laid, Piece, Point, Section, Strip
    from toolkit.stock.layout import BoardLayouts, DoesNotFitError, lay_out
    from toolkit.stock.layout_data import layout_as_data
    from toolkit.stock.layout_tables import curve_sentence, cut_table, piece_table
    from toolkit.stock.resawing import Resawn, resaw
    from toolkit.stock.sizes import LumberSize, lumber_sizes, quarter, size_to_ask_for
    from toolkit.stock.volume import (
        BoardFeet,
        board_feet,
        board_feet_by_volume,
        board_feet_of_sticks,
        cubic_metres,
        sets_needed,
        tally,
    )
    from toolkit.stock.why_not import WhyNot, missing_sentences, why_not_all_fit

# Where each name lives. They are fetched when first asked for: whoever only reads a file of
# boards need not wait for numpy.
_HOMES = {
    "blanks": "Blank Corners blanks_of",
    "box_layout": "BoxLayouts lay_out_box",
    "buying": "OrderBy Purchase order_by to_buy",
    "class_layout": "ClassLaid lay_out_class",
    "class_prices": "Prices",
    "corners": "CornerPrice corner_prices",
    "cuts": "Cut saw_cuts",
    "laid": "BoxLaid Laid Piece Point Section Strip",
    "layout": "BoardLayouts DoesNotFitError lay_out",
    "layout_data": "layout_as_data",
    "layout_tables": "curve_sentence cut_table piece_table",
    "resawing": "Resawn resaw",
    "sizes": "LumberSize lumber_sizes quarter size_to_ask_for",
    "volume": "BoardFeet board_feet board_feet_by_volume board_feet_of_sticks cubic_metres "
    "sets_needed tally",
    "why_not": "WhyNot missing_sentences why_not_all_fit",
}

__all__ = [
    "Blank",
    "Board",
    "BoardFeet",
    "BoardLayouts",
    "BoxLaid",
    "BoxLayouts",
    "ClassLaid",
    "CornerPrice",
    "Corners",
    "Cut",
    "Defect",
    "DefectKind",
    "DoesNotFitError",
    "Laid",
    "LumberSize",
    "OrderBy",
    "Piece",
    "Point",
    "Prices",
    "Purchase",
    "Resawn",
    "Section",
    "Strip",
    "WhyNot",
    "blanks_of",
    "board_feet",
    "board_feet_by_volume",
    "board_feet_of_sticks",
    "corner_prices",
    "cubic_metres",
    "curve_sentence",
    "cut_table",
    "lay_out",
    "lay_out_box",
    "lay_out_class",
    "layout_as_data",
    "lumber_sizes",
    "missing_sentences",
    "named_as_typed",
    "order_by",
    "piece_table",
    "quarter",
    "resaw",
    "saw_cuts",
    "sets_needed",
    "size_to_ask_for",
    "tally",
    "to_buy",
    "why_not_all_fit",
]

__getattr__ = fetcher(__name__, _HOMES)
