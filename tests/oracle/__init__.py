"""Boxes built as solids, a second opinion on every number of a plan."""
