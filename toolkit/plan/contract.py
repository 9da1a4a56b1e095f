"""The plan as plain data: what ``workbook plan --json`` prints, for other programs to read.

All lengths in mm, unrounded. The names and the shape are relied on by others.
"""

from __future__ import annotations

from typing import Any

from toolkit.box import Corner, Piece, Span
from toolkit.plan.box_plan import Plan
from toolkit.results import Finding, Part, Working

AXES = ("length", "width", "thickness")


def _three(sizes: tuple[Working, Working, Working]) -> dict[str, float]:
    return {axis: size.value for axis, size in zip(AXES, sizes, strict=True)}


def _part(part: Part, plan: Plan) -> dict[str, Any]:
    rule = plan.choices.rule
    return {
        "name": part.name,
        "count": part.count,
        "finished": _three(part.finished),
        "cut": _three(part.cut),
        "rough": _three(part.rough),
        "working": {
            axis: size.sentence(rule) for axis, size in zip(AXES, part.finished, strict=True)
        },
    }


def _piece(piece: Piece) -> dict[str, float]:
    return {
        "low": piece.low,
        "high": piece.high,
        "tip_low": piece.tip_low,
        "tip_high": piece.tip_high,
    }


def finding_data(row: Finding) -> dict[str, str]:
    """A finding by the names that programs know it by."""
    return {
        "level": row.level,
        "code": row.code,
        "where": row.where,
        "message": row.message,
        "remedy": row.remedy,
        "source": row.source,
    }


def _corner(corner: Corner) -> dict[str, Any]:
    return {
        "tail_length": corner.tail_length,
        "step": corner.step,
        "angle_deg": corner.angle,
        "tails": [_piece(piece) for piece in corner.tails],
        "pins": [_piece(piece) for piece in corner.pins],
    }


def _groove(span: Span | None, depth: float | None) -> dict[str, float | None] | None:
    return None if span is None else {"low": span.low, "high": span.high, "depth": depth}


def as_data(plan: Plan) -> dict[str, Any]:
    """The plan as dictionaries and lists of numbers and text, all lengths in mm."""
    d, f = plan.design, plan.design.frame
    depth = d.choices.groove.depth
    return {
        "title": plan.choices.title,
        "fingerprint": plan.fingerprint,
        "outside": {
            "length": f.outside_length.value,
            "width": f.outside_width.value,
            "height": f.wall_height.value,
        },
        "inside": {
            "length": f.inside_length.value,
            "width": f.inside_width.value,
            "height": f.inside_height.value,
        },
        "parts": [_part(part, plan) for part in plan.parts],
        "corners": {"back": _corner(d.back), "front": _corner(d.front)},
        "grooves": {
            "bottom": _groove(f.bottom_groove, depth),
            "lid": _groove(f.lid_groove, depth),
        },
        "findings": [finding_data(row) for row in plan.findings],
    }
