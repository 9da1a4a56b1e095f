from .blanks import CORNERS as CORNERS, Blank as Blank, Corners as Corners, blanks_of as blanks_of
from .boards import (
    LONGEST_BOARD as LONGEST_BOARD,
    MOST_TABLES as MOST_TABLES,
    Board as Board,
    Defect as Defect,
    DefectKind as DefectKind,
)
from .box_layout import BoxLayouts as BoxLayouts, missing_sentences as missing_sentences
from .buying import (
    Purchase as Purchase,
    order_by as order_by,
    to_buy as to_buy,
)
from .class_layout import ClassLaid as ClassLaid, lay_out_class as lay_out_class
from .corners import corner_prices as corner_prices
from .cuts import SawCut as SawCut, saw_cuts as saw_cuts
from .laid import (
    BoxLaid as BoxLaid,
    Laid as Laid,
    LaidPart as LaidPart,
    LaidSection as LaidSection,
    Point as Point,
    Strip as Strip,
)
from .layout_tables import (
    curve_sentence as curve_sentence,
    cut_table as cut_table,
    layout_as_data as layout_as_data,
    piece_table as piece_table,
)
from .losses import LOST as LOST, Sawing as Sawing, resawn as resawn, sawing as sawing
from .sizes import lumber_sizes as lumber_sizes, size_to_ask_for as size_to_ask_for
from .volume import (
    MM_PER_FOOT as MM_PER_FOOT,
    SPARE as SPARE,
    board_feet as board_feet,
    board_feet_by_volume as board_feet_by_volume,
    board_feet_of_sticks as board_feet_of_sticks,
    cubic_metres as cubic_metres,
    sets_needed as sets_needed,
    tally as tally,
)
