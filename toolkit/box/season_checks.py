"""What an experienced maker would say of lid and bottom through the seasons."""

from __future__ import annotations

from toolkit.box.customs import cite
from toolkit.box.design import Design
from toolkit.box.window import window
from toolkit.results import About, Finding, Place, above, below

_lid, _season, _space = About("lid"), About("season"), About("space")

MOVEMENT = "Wood Handbook GTR-190, Eq. 4-5 (moisture) and Eq. 13-3 (movement, form from memory)"


def _grain_across(d: Design) -> list[Finding]:
    if d.choices.panels.grain == "along":
        return []
    show = d.choices.rule.exact
    moves = max(panel.swelling + panel.shrinking for panel in d.grooved)
    return [
        _season(
            "wont_work",
            "panel-grain-across",
            Place("grain", name=d.panel_words),
            f"laid with their grain across, they move {show(moves)} in length between damp and "
            "dry, and their long tongues are short grain that snaps like biscuit.",
            f"Run the grain of {d.panel_words} along the box.",
            MOVEMENT,
            brief="the grain of the panels runs the wrong way",
        )
    ]


def check_seasons(d: Design) -> list[Finding]:
    """Panels that swell until they burst the joint, or shrink until they drop out."""
    c = d.choices
    across = _grain_across(d)
    if across:
        return across
    found, show, customs = [], c.rule.exact, c.customs
    for panel in d.grooved:
        need = panel.swelling + customs.swelling_room
        year = panel.season
        if below(panel.across, need):
            found.append(
                _season(
                    "wont_work",
                    "swells-tight",
                    Place("clearance", panel.name),
                    f"from {year.make:.1f} % moisture on the bench to {year.damp:.1f} % in the "
                    f"damp it swells {show(panel.swelling)}; its clearance of "
                    f"{show(panel.across)} should be {show(need)}. It will burst the joint in "
                    "a damp summer.",
                    f"Plane it {show(need - panel.across)} narrower, or use quarter-sawn wood."
                    if window(d, panel=panel.name).open
                    else "No clearance does for damp and dry: plough deeper, make the box "
                    "narrower, or use quarter-sawn wood or one that moves less.",
                    f"{MOVEMENT}; {cite('swelling_room')}",
                    brief="a panel will swell until it is tight",
                    note=f"{panel.name} swells {c.rule.show(panel.swelling)}: too tight",
                )
            )
        grip = max(panel.worst_grip, 0.0)
        if below(panel.worst_grip, customs.grip_least):
            found.append(
                _season(
                    "wont_work",
                    "drops-out",
                    Place("grip", panel.name),
                    f"dry ({year.dry:.1f} %) and pushed to one side it is "
                    f"{show(grip)} in the groove on the other, under "
                    f"{show(customs.grip_least)}: it will drop out in February.",
                    "Plough deeper, make the box narrower, or use wood that moves less.",
                    f"{MOVEMENT}; {cite('grip_least')}",
                    brief="a panel can drop out when it is dry",
                    note=f"{panel.name}, dry: {c.rule.show(grip)} left in its groove",
                )
            )
        if not any(row.where == panel.name for row in found):
            found.append(
                _season(
                    "good",
                    "good-season",
                    Place(part=panel.name),
                    f"clearance {show(panel.across)}, {show(need)} needed in the damp; when dry "
                    f"still {show(panel.worst_grip)} in its groove on the worst side.",
                    "",
                    MOVEMENT,
                )
            )
    return found


def check_lift_off(d: Design) -> list[Finding]:
    """A lid that lies on the rim."""
    lid, c = d.lift_off_lid, d.choices
    found: list[Finding] = []
    if lid is None:
        return []
    show, thick = c.rule.exact, lid.thickness.value
    if lid.seat == "rebate" and not below(lid.down, thick):
        found.append(
            _lid(
                "wont_work",
                "lid-rebate-through",
                Place("lid rebate", "lid"),
                f"a rebate {show(lid.down)} deep goes through a lid of {show(thick)}.",
                f"Rebate it {show(thick / 2)} deep, or use thicker wood.",
                brief="the rebate goes through the lid",
            )
        )
    moves = d.frame.outside_width.value * (lid.season.swelling - lid.season.shrinking)
    overhang = (lid.width.value - d.frame.outside_width.value) / 2
    if below(2 * overhang, moves):
        found.append(
            _season(
                "care",
                "lid-overhang-small",
                Place(part="lid"),
                f"between dry and damp it moves {show(moves)} across; its overhang of "
                f"{show(overhang)} a side will show one year as a step.",
                f"Let it overhang {show(moves / 2)} or more on each long side.",
                MOVEMENT,
            )
        )
    usable = d.frame.inside_height.value - lid.down
    if not above(usable, 0.0):
        found.append(
            _space(
                "wont_work",
                "inside-negative",
                Place("inside", name="inside height"),
                f"the lid reaches {show(lid.down)} down and leaves nothing of the height.",
                "Make the box deeper.",
                brief="nothing is left inside",
            )
        )
    if not found:
        message = f"it moves {show(moves)} across in a year and leaves {show(usable)} of height."
        found.append(_season("good", "good-lift-off", Place(part="lid"), message, "", MOVEMENT))
    return found


CHECKS = (check_seasons, check_lift_off)
