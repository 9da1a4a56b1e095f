"""What was made against what was meant, and what can still be done."""

from toolkit.plan.rescue.data import rescue_data
from toolkit.plan.rescue.mishap import (
    STAGES,
    WITH_LENGTH,
    WITHOUT,
    Mishap,
    Stage,
    meant_of,
    stages_of,
    usual_stage,
)
from toolkit.plan.rescue.option import Costs, Option, Weights
from toolkit.plan.rescue.rescue import Rescue, rescue
