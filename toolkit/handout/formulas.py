"""The formulas that the numbers rest on, with the student's own numbers put in."""

from __future__ import annotations

from collections.abc import Iterator

from toolkit.document import Block, Formula, Heading
from toolkit.plan import Plan
from toolkit.results import Working, capital, listed
from toolkit.stock import END_WASTE, GAP, blanks_of, to_buy
from toolkit.wood import equilibrium_moisture, species

NO_BREAK = "\N{NO-BREAK SPACE}"
MOISTURE = (
    r"M = \frac{1800}{W} \left[ \frac{K H}{1 - K H} + "
    r"\frac{K_1 K H + 2 K_1 K_2 K^2 H^2}{1 + K_1 K H + K_1 K_2 K^2 H^2} \right]"
)
# With the temperature in degrees Celsius.
COEFFICIENTS = (
    "W = 349 + 1.29 T + 0.0135 T^2",
    "K = 0.805 + 0.000736 T - 0.00000273 T^2",
    "K_1 = 6.27 - 0.00938 T - 0.000303 T^2",
    "K_2 = 1.91 + 0.0407 T - 0.000293 T^2",
)


def formula_blocks(plan: Plan) -> tuple[Block, ...]:
    """The formulas of a box that exists, under a heading of their own."""
    rows = (*_moisture(plan), *_movement(plan), *_sums(plan), *_joint(plan), *_stick(plan))
    return Heading("The formulas they rest on"), *rows


def _words(text: str) -> str:
    # The converter drops plain spaces from words that begin with a figure.
    return rf"\text{{{NO_BREAK.join(text.split(' '))}}}"


def _moisture(plan: Plan) -> Iterator[Formula]:
    rooms = plan.choices.rooms
    lines = []
    for name, room in (("bench", rooms.make), ("dampest", rooms.damp), ("driest", rooms.dry)):
        settled = equilibrium_moisture(temperature=room.temperature, humidity=room.humidity)
        lines.append(
            rf"{_words(name + ': ')} T = {room.temperature:g}\,{_words('°C')},\; "
            rf"H = {room.humidity / 100:g},\; M = {settled:.1f}\,\%"
        )
    yield Formula(
        "Moisture that wood comes to in a room",
        (MOISTURE, *COEFFICIENTS, *lines),
        "M is the moisture in percent of the dry wood's weight, T the temperature of the air, "
        "H its relative humidity (0.5 for 50 %).",
        "Wood Handbook (FPL-GTR-190), Eq. 4-5.",
    )


def _movement(plan: Plan) -> Iterator[Formula]:
    panel, choices = plan.design.upper_panel, plan.choices
    name, rings, rule, season = panel.name, choices.wood.rings, choices.rule, panel.season
    wood = species(plan.design.wood_of(panel))
    change, saturation = season.swelling, wood.fibre_saturation
    damp, make = min(season.damp, saturation), min(season.make, saturation)
    if not change:
        return
    # The law solved for the shrinkage that it used, so that what is printed is what was reckoned.
    shrinkage = 100 * saturation / ((damp - make) / change + saturation - make)
    size, angle = rule.exact(panel.moving, unit=False), f"{rings:g}{_words('°')}"
    yield Formula(
        f"What the {name} swells from bench to dampest room",
        (
            r"\Delta b = b \, \frac{M_2 - M_1}{100 F / S - F + M_1}, \quad "
            r"S = S_t \cos^2 \alpha + S_r \sin^2 \alpha",
            rf"S = {wood.shrinkage_tangential:g} \times \cos^2 {angle} + "
            rf"{wood.shrinkage_radial:g} \times \sin^2 {angle} = {shrinkage:.3g}\,\%",
            rf"\Delta b = {_words(size)} \times \frac{{{damp:.1f} - {make:.1f}}}"
            rf"{{100 \times {saturation:g} / {shrinkage:.3g} - {saturation:g} + {make:.1f}}} = "
            rf"{_words(rule.exact(round(panel.swelling, 2)))}",
        ),
        f"b is the {name}'s size across its grain; M the moisture in percent, before (1) and after "
        f"(2); F the fibre saturation of {wood.name}, {saturation:g} %; S its shrinkage, along (t) "
        "and across (r) the rings; α the angle of the rings to the width.",
        "Wood Handbook (FPL-GTR-190), Eq. 13-3 (its form from memory) and Table 4-3.",
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
    yield Formula(
        "Angle of a tail",
        (
            rf"\theta = \arctan \, \frac{{1}}{{r}} = \arctan \, \frac{{1}}{{{back.slope:g}}} = "
            rf"{back.angle:.1f}{_words('°')}",
        ),
        f"The slope is 1 in r: here 1 across for {back.slope:g} along.",
        "Geometry.",
    )
    if back.step is None or corner.half_pin is None or corner.pin is None:
        return
    sizes = (back.height, corner.half_pin, corner.pin)
    height, half, pin = (_words(rule.exact(size, unit=False)) for size in sizes)
    step = _words(rule.exact(back.step))
    yield Formula(
        "Step of the dividers, back corners",
        (
            rf"s = \frac{{h - 2 e + p}}{{n}} = "
            rf"\frac{{{height} - 2 \times {half} + {pin}}}{{{len(back.tails)}}} = {step}",
        ),
        "h is the height of the end, e a half pin, p a pin at the baseline, n the number of tails.",
        "Geometry.",
    )


def _stick(plan: Plan) -> Iterator[Formula]:
    rule = plan.choices.rule
    first = to_buy(blanks_of(plan.parts))[0]
    names = [part.name for part in first.parts]
    lengths = " + ".join(_words(rule.exact(part.length, unit=False)) for part in first.parts)
    cuts, gap, ends = len(names) - 1, rule.exact(GAP, unit=False), rule.exact(END_WASTE, unit=False)
    lines = (
        r"L = l_1 + l_2 + \dots + l_n + (n - 1) \, k + w",
        rf"L = {lengths} + {cuts} \times {_words(gap)} + {_words(ends)} = "
        rf"{_words(rule.exact(first.length))}",
    )
    yield Formula(
        f"Length of one stick for {listed(names)}",
        lines,
        "l is the rough length of each part, n how many they are, k what a saw cut takes between "
        "two parts with its wander (the kerf and a little more), w what is lost at the two ends.",
        "Geometry; k and w are customs: common practice, no source.",
    )
