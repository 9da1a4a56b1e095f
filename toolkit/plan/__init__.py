"""The plan of a box: the rooms put together."""

from toolkit.plan.compare import Comparison, Moved, compare
from toolkit.plan.contract import as_data
from toolkit.plan.plan import Plan, plan
from toolkit.plan.settings import Setting

__all__ = ["Comparison", "Moved", "Plan", "Setting", "as_data", "compare", "plan"]
