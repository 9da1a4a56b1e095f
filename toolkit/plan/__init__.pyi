from .bands import (
    BANDS as BANDS,
    FAIR as FAIR,
    FINE as FINE,
    NOTE as NOTE,
    Band as Band,
    Criterion as Criterion,
    rubric as rubric,
    rubric_table as rubric_table,
    told as told,
)
from .bench import around as around, bench_steps_of as bench_steps_of, rows_for as rows_for
from .box_plan import Plan as Plan, plan as plan
from .comparison import Comparison as Comparison, Moved as Moved, compare as compare
from .contract import as_data as as_data
from .flushing import flushed as flushed, panel_stages as panel_stages
from .mishaps.mishap import (
    HAPPENED as HAPPENED,
    PARTS as PARTS,
    STAGES as STAGES,
    WITH_LENGTH as WITH_LENGTH,
    WITHOUT as WITHOUT,
    Mishap as Mishap,
    Stage as Stage,
    meant_of as meant_of,
    parts_of as parts_of,
    stages_of as stages_of,
    usual_stage as usual_stage,
)
from .mishaps.option import Option as Option, Weights as Weights
from .mishaps.ranked import Rescue as Rescue, rescue as rescue, rescue_data as rescue_data
from .thick_wood import thick_boards as thick_boards
from .tool_settings import Setting as Setting
