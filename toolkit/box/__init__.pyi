from .bevels import bevel as bevel, slope as slope
from .change import told as told, value_written as value_written, written as written
from .choices import (
    Change as Change,
    Choices as Choices,
    CornerChoice as CornerChoice,
    GrooveChoice as GrooveChoice,
    Handed as Handed,
    Joint as Joint,
    Size as Size,
    Thickness as Thickness,
)
from .clearances import window as window
from .closures import CLOSURES as CLOSURES, Closure as Closure, LidChoice as LidChoice
from .content_sizes import (
    UnknownContents as UnknownContents,
    all_contents as all_contents,
    contents as contents,
)
from .corner import Corner as Corner, Piece as Piece
from .customs import Customs as Customs, cite as cite
from .designing import Design as Design, design as design
from .edges import edge_table as edge_table
from .either import EITHER as EITHER, Either as Either
from .fitting import (
    fitted_at as fitted_at,
    fitting_sentence as fitting_sentence,
    fitting_tables as fitting_tables,
    month_table as month_table,
    months as months,
)
from .grooves import Hole as Hole
from .holes import exit_table as exit_table
from .joinery.assembly import (
    glue_up_steps as glue_up_steps,
    joint_direction as joint_direction,
    step_table as step_table,
    transfer_steps as transfer_steps,
)
from .joinery.dividers import (
    Walk as Walk,
    between_baselines as between_baselines,
    gauge_settings as gauge_settings,
    has_ear as has_ear,
    marks_error as marks_error,
    setting_error as setting_error,
    walk as walk,
)
from .joinery.feelers import BLADES as BLADES, compare_readings as compare_readings
from .joinery.gap import Gaps as Gaps, gaps as gaps
from .joinery.hand import Hand as Hand, SawnJoint as SawnJoint, Spread as Spread
from .joinery.hold import holds as holds, lead_error as lead_error, socket_reach as socket_reach
from .joinery.lines import (
    Line as Line,
    line_table as line_table,
    proud_sentence as proud_sentence,
    setting_out_lines as setting_out_lines,
)
from .joinery.round_grooves import set_out_round_grooves as set_out_round_grooves
from .joinery.slopes import (
    cheek_length as cheek_length,
    slope_advice as slope_advice,
    slope_angle as slope_angle,
    slope_table as slope_table,
    tail_overhang as tail_overhang,
)
from .lid_way import droop as droop, held as held, sliding as sliding
from .made import Made as Made
from .panel_cures import Remedy as Remedy, refits as refits, remedies as remedies
from .panels import LiftOffLid as LiftOffLid, Panel as Panel
from .ploughing import plough_table as plough_table
from .rooms import Room as Room, Rooms as Rooms
from .seasons import making as making, making_told as making_told, year_between as year_between
from .settled import Settled as Settled
from .wall_ends import as_made as as_made
from .walls import Frame as Frame, Span as Span
