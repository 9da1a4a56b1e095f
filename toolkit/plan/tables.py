"""The plan as tables of words, on the student's own rule, for bench, lesson and handout."""

from __future__ import annotations

from toolkit.box import Customs
from toolkit.measures import Rule, keys_of
from toolkit.plan.box_plan import Plan
from toolkit.plan.comparison import Comparison
from toolkit.results import AXES, Table, listed


def cut_list(plan: Plan) -> Table:
    """Sizes of every part before it is jointed. Width is across the grain."""
    rule = plan.choices.rule
    rows = tuple(
        (
            part.name,
            str(part.count),
            *part.sizes("cut", rule),
            part.wood,
        )
        for part in plan.parts
    )
    return Table(
        "Cut list, sizes before the joints are cut",
        ("part", "how many", "length", "width", "thickness", "wood"),
        rows,
        note="Length runs along the grain, width across it." + _left_standing(plan),
        numeric=(1, 2, 3, 4),
    )


def _left_standing(plan: Plan) -> str:
    """Which walls are cut to another length than they have in the box, and why."""
    rule, proud = plan.choices.rule, plan.design.choices.corner.proud
    walls = [part for part in plan.parts if part.cut_length.value != part.length.value]
    if not walls:
        return ""
    named = listed("sides" if part.name == "side" else part.name for part in walls)
    by, way = rule.exact(2 * abs(proud)), "longer" if proud > 0 else "shorter"
    why = (
        "that end grain stands proud of the box and is planed flush with it"
        if proud > 0
        else "that end grain ends shy, and the faces beside it are planed down to it"
    )
    return f" Cut {by} {way} than in the finished box: {named}; {why}."


def rough_list(plan: Plan) -> Table:
    """Sizes to saw first. Rounded up; thickness to a finer mark than length and width."""
    rule = plan.choices.rule
    rows = [(part.name, str(part.count), *part.sizes("rough", rule)) for part in plan.parts]
    note = "Rounded up to what a saw can follow."
    if plan.design.frame.lid_floor is not None:
        note += " The front is sawn and ploughed at full height and ripped low afterwards."
    return Table(
        "Rough list, to saw first",
        ("part", "how many", "length", "width", "thickness"),
        tuple(rows),
        note=note,
        numeric=(1, 2, 3, 4),
    )


def workings(plan: Plan) -> Table:
    """Where every finished size comes from."""
    rule = plan.choices.rule
    rows = []
    f = plan.design.frame
    for size in (f.outside_length, f.outside_width, f.wall_height, f.inside_height):
        rows.append((size.name, size.reckoned(rule)))
    for part in plan.parts:
        for axis, size in zip(AXES, part.finished, strict=True):
            if not size.given or size.terms[0].label == "as made":
                rows.append((f"{part.name} {axis}", size.reckoned(rule)))
        if part.cut_length.value != part.length.value:
            rows.append((f"{part.name} length as cut", part.cut_length.reckoned(rule)))
    for corner, tail in (("back", f.tail_back), ("front", f.tail_front)):
        rows.append((f"tail length, {corner}", tail.reckoned(rule)))
    return Table("Where the numbers come from", ("size", "working"), tuple(rows))


def tails(plan: Plan) -> Table:
    """Every tail's edges at the baseline, up from the bottom edge."""
    rule, rows = plan.choices.rule, []
    for corner in (plan.design.back, plan.design.front):
        for number, tail in enumerate(corner.tails, 1):
            rows.append(
                (
                    f"{corner.name} {number}",
                    rule.show(tail.low),
                    rule.show(tail.high),
                    rule.show(tail.width),
                    rule.show(tail.tip_width),
                )
            )
    return Table(
        "Tails, from the bottom edge",
        ("tail", "from", "to", "width at baseline", "width at tip"),
        tuple(rows),
        numeric=(1, 2, 3, 4),
    )


def tool_settings(plan: Plan) -> Table:
    """Gauges, dividers, bevel, plough: what to set and where to use it."""
    return Table(
        "Settings",
        ("tool", "set to", "use"),
        tuple((row.tool, row.value, row.use) for row in plan.settings),
    )


def chosen(plan: Plan) -> Table:
    """What the file left out, and what a rule chose for it."""
    return Table(
        "Chosen for you, because the file left it out",
        ("key", "value", "rule"),
        tuple((row.key, row.value, row.why) for row in plan.chosen),
    )


def changed_customs(plan: Plan) -> Table:
    """Rules of thumb that this box changes."""
    rule = plan.choices.rule
    rows = []
    for name, value, default in plan.choices.customs.changed():
        custom = keys_of(Customs)[name]
        now, was = (
            (rule.exact(value), rule.exact(default))
            if custom.kind == "length"
            else (f"{value:g}", f"{default:g}")
        )
        rows.append((f"customs.{name}", now, was, custom.words))
    return Table(
        "Customs changed from their default", ("key", "now", "default", "meaning"), tuple(rows)
    )


def comparison(told: Comparison, rule: Rule) -> Table:
    """What changed between two boxes, part by part."""
    rows = []
    for change in told.changes:
        amount = change.amount
        moved = "" if amount is None else f"{'+' if amount > 0 else '−'}{rule.exact(abs(amount))}"
        was = "none" if change.before is None else rule.exact(change.before.value)
        now = "none" if change.after is None else rule.exact(change.after.value)
        rows.append((change.where, was, now, moved, change.why(rule)))
    note = f"{len(told.same)} sizes stay as they were." if told.same else ""
    return Table(
        "What changed, and why",
        ("size", "before", "after", "change", "because of"),
        tuple(rows),
        note=note,
        numeric=(1, 2, 3),
    )


def whole_plan(plan: Plan) -> tuple[Table, ...]:
    """Every table of a plan that has something to say, in the order of use at the bench."""
    every = (
        cut_list(plan),
        rough_list(plan),
        tails(plan),
        tool_settings(plan),
        workings(plan),
        chosen(plan),
        changed_customs(plan),
    )
    return tuple(table for table in every if table.rows)
