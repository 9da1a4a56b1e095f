"""What exists already of a box, as measured at the bench. [mm]"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from toolkit.measures import key
from toolkit.results import SQUARE


def _gap(part: str, where: str) -> Any:
    """A gap under the blade of a square, the worst of all pieces and ends."""
    return key(f"{part}, {SQUARE[where]}: gap", least=0)


@dataclass(frozen=True, slots=True)
class Made:
    """What exists already, as measured: it no longer moves, the rest is reckoned from it.

    Lengths of walls are as cut, with the end grain that will be planed flush.
    """

    side_thickness: float | None = key("side, thickness")
    side_length: float | None = key("side, length")
    side_width: float | None = key("side, width")
    back_thickness: float | None = key("back, thickness")
    back_length: float | None = key("back, length")
    back_width: float | None = key("back, width")
    front_thickness: float | None = key("front, thickness")
    front_length: float | None = key("front, length")
    front_width: float | None = key("front, width")
    bottom_thickness: float | None = key("bottom, thickness")
    bottom_length: float | None = key("bottom, length")
    bottom_width: float | None = key("bottom, width")
    lid_thickness: float | None = key("lid, thickness")
    lid_length: float | None = key("lid, length")
    lid_width: float | None = key("lid, width")
    tail_length: float | None = key("gauge set to the tail length")
    groove_depth: float | None = key("groove depth")
    groove_width: float | None = key("groove width")
    bottom_edge: float | None = key("bottom groove from the edge", least=0)
    top_edge: float | None = key("lid groove from the edge", least=0)
    wall_board_thickness: float | None = key("walls' rough board, thickness")
    panel_board_thickness: float | None = key("panels' rough board, thickness")
    side_end_out: float | None = _gap("side", "end_out")
    side_end_lean: float | None = _gap("side", "end_lean")
    side_edge_out: float | None = _gap("side", "edge_out")
    back_end_out: float | None = _gap("back", "end_out")
    back_end_lean: float | None = _gap("back", "end_lean")
    back_edge_out: float | None = _gap("back", "edge_out")
    front_end_out: float | None = _gap("front", "end_out")
    front_end_lean: float | None = _gap("front", "end_lean")
    front_edge_out: float | None = _gap("front", "edge_out")
    bottom_end_out: float | None = _gap("bottom", "end_out")
    lid_end_out: float | None = _gap("lid", "end_out")
