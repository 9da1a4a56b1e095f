"""The formulas that the numbers rest on, with the student's own numbers put in."""

from __future__ import annotations

from collections.abc import Iterator

from toolkit.document import Block, Formula, Heading
from toolkit.plan import Plan
from toolkit.results import Working, capital, listed, read_words
from toolkit.stock import LOST, blanks_of, to_buy
from toolkit.wood import equilibrium_moisture, species

NO_BREAK = "\N{NO-BREAK SPACE}"


def formula_blocks(plan: Plan) -> tuple[Block, ...]:
    """The formulas of a box that exists, under a heading of their own."""
    rows = (*_moisture(plan), *_movement(plan), *_sums(plan), *_joint(plan), *_stick(plan))
    return Heading("The formulas they rest on"), *rows


def _formula(key: str, *lines: str, **values: object) -> Formula:
    """A formula of the table, with the lines that have the student's own numbers in them."""
    row = read_words("handout/formulas.toml")[key]
    name, where, source = (row[part].format(**values) for part in ("name", "where", "source"))
    return Formula(name, (*row.get("lines", ()), *lines), where, source)


def _words(text: str) -> str:
    # The converter drops plain spaces from words that begin with a figure.
    return rf"\text{{{NO_BREAK.join(text.split(' '))}}}"


def _moisture(plan: Plan) -> Iterator[Formula]:
    rooms = plan.choices.rooms
    lines = []
    if rooms.make_moisture:
        lines.append(rf"{_words('wood, as measured: ')} M = {rooms.make_moisture:.1f}\,\%")
    bench = () if rooms.make_moisture else (("bench", rooms.make),)
    for name, room in (*bench, ("dampest", rooms.damp), ("driest", rooms.dry)):
        settled = equilibrium_moisture(temperature=room.temperature, humidity=room.humidity)
        lines.append(
            rf"{_words(name + ': ')} T = {room.temperature:g}\,{_words('°C')},\; "
            rf"H = {room.humidity / 100:g},\; M = {settled:.1f}\,\%"
        )
    yield _formula("moisture", *lines)


def _movement(plan: Plan) -> Iterator[Formula]:
    panel, choices = plan.design.upper_panel, plan.design.choices
    name, rings, rule, season = panel.name, choices.wood.rings, choices.rule, panel.season
    wood = species(plan.design.wood_of(panel))
    change, saturation = season.swelling, wood.fibre_saturation
    damp, make = min(season.damp, saturation), min(season.make, saturation)
    if not change:
        return
    # The law solved for the shrinkage that it used, so that what is printed is what was reckoned.
    shrinkage = 100 * saturation / ((damp - make) / change + saturation - make)
    size, angle = rule.exact(panel.moving, unit=False), f"{rings:g}{_words('°')}"
    yield _formula(
        "movement",
        rf"S = {wood.shrinkage_tangential:.3g} \times \cos^2 {angle} + "
        rf"{wood.shrinkage_radial:.3g} \times \sin^2 {angle} = {shrinkage:.3g}\,\%",
        rf"\Delta b = {_words(size)} \times \frac{{{damp:.1f} - {make:.1f}}}"
        rf"{{100 \times {saturation:g} / {shrinkage:.3g} - {saturation:g} + {make:.1f}}} = "
        rf"{_words(rule.exact(round(panel.swelling, 2)))}",
        name=name,
        wood=wood.name,
        saturation=saturation,
        told=season.told,
        shrinkage_from=wood.coefficients_from if wood.from_memory else "Table 4-3",
    )


def _sums(plan: Plan) -> Iterator[Formula]:
    d = plan.design
    for size, source in (
        (d.upper_panel.width, "Geometry; the clearance is chosen."),
        (d.frame.wall_height, "Geometry."),
    ):
        if not size.given:
            yield Formula(capital(size.name), (_sum(size, plan),), "", source)


def _sum(size: Working, plan: Plan) -> str:
    """A sum set as on paper, a term to a line."""
    rule = plan.choices.rule
    rows = []
    for place, term in enumerate(size.terms):
        sign = "-" if term.value < 0 else "+" if place else ""
        times = rf"{abs(term.times)} \times " if abs(term.times) != 1 else ""
        each = _words(rule.exact(abs(term.each), unit=False))
        rows.append(rf"{sign} & {times}{each} & {_words(term.label)}")
    total = _words(rule.exact(size.value))
    rows.append(rf"= & {total} & {_words(size.name)}")
    return r"\begin{array}{rll} " + r" \\ ".join(rows) + r" \end{array}"


def _joint(plan: Plan) -> Iterator[Formula]:
    back, rule, corner = plan.design.back, plan.choices.rule, plan.design.choices.corner
    if not back.tails:
        return
    line = (
        rf"\theta = \arctan \, \frac{{1}}{{r}} = \arctan \, \frac{{1}}{{{back.slope:g}}} = "
        rf"{back.angle:.1f}{_words('°')}"
    )
    yield _formula("angle", line, slope=back.slope)
    if back.step is None or corner.half_pin is None or corner.pin is None:
        return
    sizes = (back.height, corner.half_pin, corner.pin)
    height, half, pin = (_words(rule.exact(size, unit=False)) for size in sizes)
    step = _words(rule.exact(back.step))
    line = (
        rf"s = \frac{{h - 2 e + p}}{{n}} = "
        rf"\frac{{{height} - 2 \times {half} + {pin}}}{{{len(back.tails)}}} = {step}"
    )
    yield _formula("dividers", line)


def _stick(plan: Plan) -> Iterator[Formula]:
    rule = plan.choices.rule
    first, lost = to_buy(blanks_of(plan.parts), rule=rule)[0], LOST[rule.units]
    names = [part.name for part in first.parts]
    lengths = " + ".join(_words(rule.exact(part.length, unit=False)) for part in first.parts)
    cuts, gap, ends = len(names) - 1, *(rule.exact(lost[k], unit=False) for k in ("cut", "ends"))
    line = (
        rf"L = {lengths} + {cuts} \times {_words(gap)} + {_words(ends)} = "
        rf"{_words(rule.exact(first.length))}"
    )
    yield _formula("stick", line, names=listed(names))
