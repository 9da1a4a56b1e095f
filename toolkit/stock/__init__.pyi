from .blanks import CORNERS as CORNERS
from .blanks import Blank as Blank
from .blanks import Corners as Corners
from .blanks import blanks_of as blanks_of
from .boards import Board as Board
from .boards import Defect as Defect
from .boards import DefectKind as DefectKind
from .box_layout import BoxLayouts as BoxLayouts
from .buying import (
    END_WASTE as END_WASTE,
)
from .buying import (
    Purchase as Purchase,
)
from .buying import (
    order_by as order_by,
)
from .buying import (
    to_buy as to_buy,
)
from .class_layout import ClassLaid as ClassLaid
from .class_layout import lay_out_class as lay_out_class
from .corners import corner_prices as corner_prices
from .cuts import SawCut as SawCut
from .cuts import saw_cuts as saw_cuts
from .laid import (
    BoxLaid as BoxLaid,
)
from .laid import (
    Laid as Laid,
)
from .laid import (
    LaidPart as LaidPart,
)
from .laid import (
    LaidSection as LaidSection,
)
from .laid import (
    Point as Point,
)
from .laid import (
    Strip as Strip,
)
from .layout import GAP as GAP
from .layout_data import layout_as_data as layout_as_data
from .layout_tables import (
    curve_sentence as curve_sentence,
)
from .layout_tables import (
    cut_table as cut_table,
)
from .layout_tables import (
    piece_table as piece_table,
)
from .resawing import KERF as KERF
from .resawing import TRUING as TRUING
from .resawing import WANDER as WANDER
from .resawing import resaw as resaw
from .sizes import lumber_sizes as lumber_sizes
from .sizes import size_to_ask_for as size_to_ask_for
from .volume import (
    MM_PER_FOOT as MM_PER_FOOT,
)
from .volume import (
    SPARE as SPARE,
)
from .volume import (
    board_feet as board_feet,
)
from .volume import (
    board_feet_by_volume as board_feet_by_volume,
)
from .volume import (
    board_feet_of_sticks as board_feet_of_sticks,
)
from .volume import (
    cubic_metres as cubic_metres,
)
from .volume import (
    sets_needed as sets_needed,
)
from .volume import (
    tally as tally,
)
from .why_not import missing_sentences as missing_sentences
