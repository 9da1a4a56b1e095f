"""The lines of a box as a table of words: one row for all the faces that one setting marks."""

from __future__ import annotations

from collections.abc import Iterable

from toolkit.box.design import Design
from toolkit.box.joinery.gauges import between_baselines, gauge_settings
from toolkit.box.joinery.lines import Line, setting_out_lines
from toolkit.measures import Rule
from toolkit.results import Table, above, below

PAIRS = (
    ("inside face", "outside face", "both faces"),
    ("bottom edge", "top edge", "both edges"),
)
PROUD_MOST, SHY_MOST = 0.5, 0.2


def _faces(rows: list[Line], rule: Rule, full: float) -> str:
    words = [row.face for row in rows]
    said: list[str] = list(words)
    for one, other, both in PAIRS:
        if one in words and other in words:
            said[said.index(one)] = both
            said.remove(other)
    text = " and ".join(filter(None, [", ".join(said[:-1]), said[-1]]))
    top = max(row.high for row in rows)
    along = all(row.low == row.high for row in rows)
    return text if along or not below(top, full) else f"{text}, up to {rule.show(top)}"


def _grouped(lines: Iterable[Line]) -> Iterable[list[Line]]:
    groups: dict[tuple[object, ...], list[Line]] = {}
    for row in lines:
        key = (row.part, row.end, row.tool, row.name, row.gauged_from, row.setting, row.purpose)
        groups.setdefault(key, []).append(row)
    return groups.values()


def proud_sentence(d: Design, *, proud: float | None = None) -> str:
    """What setting the second gauge proud or shy does to this box; None for its own customs. [mm]

    0.2 shy to 0.5 proud: common practice, no source.
    """
    show = d.choices.rule.exact
    s = gauge_settings(d, proud=proud)
    if s.proud == 0:
        return "The second gauge is set to the tail board's own thickness: the pins end flush."
    left = between_baselines(d, proud=proud)
    exact = between_baselines(d, proud=0.0)
    by = abs(s.proud)
    if s.proud > 0:
        words = (
            f"The second gauge is {show(by)} proud: the pins' end grain stands out by that and is "
            f"planed flush. It leaves {show(left.value)} between the two baselines instead of "
            f"{show(exact.value)}: leave the pin boards {show(2 * by)} longer, or the box comes "
            "out that much smaller inside."
        )
        too_much, most = above(by, PROUD_MOST), PROUD_MOST
    else:
        words = (
            f"The second gauge is {show(by)} shy: the pins end that far below the tail boards, "
            "whose faces are planed down to them."
        )
        too_much, most = above(by, SHY_MOST), SHY_MOST
    if too_much:
        words += f" Over {show(most)} is more than is planed off with pleasure."
    return f"{words} Never set the first gauge so: a half-blind tail would meet its lap too soon."


def line_table(d: Design, *, proud: float | None = None) -> Table:
    """Which line goes on which face, gauged from where; ``proud`` as for `proud_sentence`. [mm]"""
    rule, full = d.choices.rule, d.frame.wall_height.value
    rows = []
    for group in _grouped(setting_out_lines(d, proud=proud)):
        first = group[0]
        tool = first.name if first.tool == "marking gauge" else first.tool
        setting = "" if first.setting is None else rule.show(first.setting.value)
        if first.tool == "bevel gauge":
            setting = f"1 in {d.back.slope:g}, {d.back.angle:.1f}°"
        end = "its whole length" if first.end == "along" else first.end
        faces = _faces(group, rule, full if first.part != "front" else first.high)
        rows.append((first.part, end, faces, tool, first.gauged_from, setting, first.purpose))
    return Table(
        "Which line on which face",
        ("part", "end", "on", "with", "from", "set to", "for"),
        tuple(rows),
        note="Leave each gauge set until the last board is marked. "
        + proud_sentence(d, proud=proud),
        numeric=(5,),
    )
