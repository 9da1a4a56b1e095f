"""Reads the cells of the tables that lie beside the code."""

from __future__ import annotations


def needed(cell: str) -> float:
    """The number in a cell that may not be empty. [the unit of its column]"""
    return float(cell)
