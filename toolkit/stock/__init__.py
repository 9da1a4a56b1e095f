"""From the rack to rough parts: boards and what is wrong with them."""

from toolkit.stock.boards import Board, Defect, DefectKind

__all__ = ["Board", "Defect", "DefectKind"]
