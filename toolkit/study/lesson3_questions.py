"""Lesson 3, dovetails: what to reckon before marking out, and how it goes wrong."""

from __future__ import annotations

from toolkit.study.lesson3_dividers import divider_error, divider_step, off_edge, tail_width
from toolkit.study.lesson3_marking import between, glued, knife_lines, saw_reach, second_gauge
from toolkit.study.lesson3_tails import bevel, narrow_half_pin, narrow_pin, overhang, tail_length

TEMPLATES = (
    tail_length,
    overhang,
    divider_step,
    tail_width,
    divider_error,
    off_edge,
    narrow_pin,
    narrow_half_pin,
    bevel,
    second_gauge,
    between,
    knife_lines,
    saw_reach,
    glued,
)
