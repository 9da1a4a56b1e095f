"""Mistakes that a plan could make, each written into the plain data of a sound one. [mm]"""

from collections.abc import Callable, Iterator
from typing import Any

from toolkit.box import Choices

Data = dict[str, Any]
Mistake = Callable[[Data, Choices], bool | None]

MISTAKES: dict[str, Mistake] = {}


def mistake(make: Mistake) -> Mistake:
    """Keep a mistake under its name; it returns False where this box can't make it."""
    MISTAKES[make.__name__.strip("_").replace("_", " ")] = make
    return make


def _finished(data: Data, name: str) -> dict[str, float]:
    for part in data["parts"]:
        if part["name"] == name:
            finished: dict[str, float] = part["finished"]
            return finished
    raise KeyError(name)


def _rows(data: Data, *lists: str) -> Iterator[dict[str, float]]:
    for corner in data["corners"].values():
        for name in lists:
            yield from corner[name]


def _swap_ends(rows: Iterator[dict[str, float]]) -> None:
    for row in rows:
        row["low"], row["tip_low"] = row["tip_low"], row["low"]
        row["high"], row["tip_high"] = row["tip_high"], row["high"]


@mistake
def _wide_and_narrow_end_of_the_tails_swapped(data: Data, c: Choices) -> None:
    _swap_ends(_rows(data, "tails"))


@mistake
def _wide_and_narrow_end_of_the_pins_swapped(data: Data, c: Choices) -> None:
    _swap_ends(_rows(data, "pins"))


@mistake
def _tails_and_pins_agree_but_taper_the_wrong_way(data: Data, c: Choices) -> None:
    _swap_ends(_rows(data, "tails", "pins"))


@mistake
def _slope_reversed_from_the_baseline(data: Data, c: Choices) -> None:
    for row in _rows(data, "tails", "pins"):
        row["tip_low"] = 2 * row["low"] - row["tip_low"]
        row["tip_high"] = 2 * row["high"] - row["tip_high"]


@mistake
def _angle_of_another_slope(data: Data, c: Choices) -> None:
    for corner in data["corners"].values():
        corner["angle_deg"] = 7.125  # 1 in 8


@mistake
def _lap_forgotten(data: Data, c: Choices) -> bool | None:
    """The joint is worked out as a through one, the same in every number."""
    if c.corner.joint == "through":
        return False
    ends = c.corner.tails_on == "ends"
    whole = _finished(data, "side" if ends else "back")["thickness"]
    for corner in data["corners"].values():
        grows = whole / corner["tail_length"]
        corner["tail_length"] = whole
        for row in (*corner["tails"], *corner["pins"]):
            row["tip_low"] = row["low"] + (row["tip_low"] - row["low"]) * grows
            row["tip_high"] = row["high"] + (row["tip_high"] - row["high"]) * grows
    if ends:
        for name in ("back", "front"):
            _finished(data, name)["length"] = data["outside"]["width"]
    else:
        _finished(data, "side")["length"] = data["outside"]["length"]
    return None


@mistake
def _lap_forgotten_in_the_tail_length_alone(data: Data, c: Choices) -> bool | None:
    if c.corner.joint == "through":
        return False
    ends = c.corner.tails_on == "ends"
    for corner in data["corners"].values():
        corner["tail_length"] = _finished(data, "side" if ends else "back")["thickness"]
    return None


@mistake
def _lowest_half_pin_dropped(data: Data, c: Choices) -> None:
    del data["corners"]["back"]["pins"][0]


@mistake
def _topmost_half_pin_dropped(data: Data, c: Choices) -> None:
    del data["corners"]["front"]["pins"][-1]


@mistake
def _topmost_pin_of_the_front_at_the_wrong_height(data: Data, c: Choices) -> bool | None:
    """Pins that end at the low front though the side goes on, or the other way round."""
    if c.lid.kind != "sliding":
        return False
    pin, rim = data["corners"]["front"]["pins"][-1], _finished(data, "back")["width"]
    front = _finished(data, "front")["width"]
    pin["high"] = pin["tip_high"] = front if c.corner.tails_on == "ends" else rim
    return None


@mistake
def _pins_a_hundredth_loose(data: Data, c: Choices) -> None:
    for corner in data["corners"].values():
        for pin in corner["pins"][1:-1]:
            pin["high"] -= 0.01
            pin["tip_high"] -= 0.01


@mistake
def _tails_a_hundredth_high(data: Data, c: Choices) -> None:
    for row in _rows(data, "tails"):
        for edge in row:
            row[edge] += 0.01


@mistake
def _one_groove_counted_in_the_width_of_the_bottom(data: Data, c: Choices) -> None:
    _finished(data, "bottom")["width"] -= data["grooves"]["bottom"]["depth"]


@mistake
def _one_groove_counted_in_the_length_of_the_bottom(data: Data, c: Choices) -> None:
    _finished(data, "bottom")["length"] -= data["grooves"]["bottom"]["depth"]


@mistake
def _one_groove_counted_in_the_width_of_the_lid(data: Data, c: Choices) -> bool | None:
    if c.lid.kind != "sliding":
        return False
    _finished(data, "lid")["width"] -= data["grooves"]["bottom"]["depth"]
    return None


@mistake
def _front_forgotten_in_the_length_of_the_lid(data: Data, c: Choices) -> bool | None:
    if c.lid.kind != "sliding":
        return False
    _finished(data, "lid")["length"] -= _finished(data, "front")["thickness"]
    return None


@mistake
def _two_thicknesses_swapped(data: Data, c: Choices) -> None:
    side, back, front = (_finished(data, name) for name in ("side", "back", "front"))
    side["thickness"], back["thickness"] = back["thickness"], side["thickness"]
    front["thickness"] = back["thickness"]


@mistake
def _thicknesses_swapped_in_the_inside(data: Data, c: Choices) -> None:
    """Sides taken off the length and ends off the width, the outside being given."""
    inside, more = data["inside"], 2 * (c.thickness.side - c.thickness.end)
    inside["length"] -= more
    inside["width"] += more


@mistake
def _front_as_high_as_the_walls(data: Data, c: Choices) -> bool | None:
    if c.lid.kind != "sliding":
        return False
    _finished(data, "front")["width"] = data["outside"]["height"]
    return None


@mistake
def _drop_of_the_front_forgotten(data: Data, c: Choices) -> bool | None:
    if c.lid.kind != "sliding":
        return False
    _finished(data, "front")["width"] = data["grooves"]["lid"]["low"]
    return None


@mistake
def _tail_boards_as_long_as_the_outside(data: Data, c: Choices) -> bool | None:
    """The laps are not taken off."""
    if c.corner.joint == "through":
        return False
    if c.corner.tails_on == "sides":
        _finished(data, "side")["length"] = data["outside"]["length"]
    else:
        _finished(data, "back")["length"] = data["outside"]["width"]
    return None


@mistake
def _ear_forgotten(data: Data, c: Choices) -> bool | None:
    """The side stops a lap of 4 mm short of the front face too."""
    if c.corner.tails_on == "ends" or c.lid.kind != "sliding" or c.corner.joint == "through":
        return False
    _finished(data, "side")["length"] -= 4.0
    return None


@mistake
def _groove_a_hundredth_high(data: Data, c: Choices) -> None:
    for edge in ("low", "high"):
        data["grooves"]["bottom"][edge] += 0.01


@mistake
def _groove_a_hundredth_deep(data: Data, c: Choices) -> None:
    data["grooves"]["bottom"]["depth"] += 0.01


@mistake
def _walls_without_the_width_of_a_groove(data: Data, c: Choices) -> None:
    wide = data["grooves"]["bottom"]["high"] - data["grooves"]["bottom"]["low"]
    data["outside"]["height"] -= wide
    for name in ("side", "back"):
        _finished(data, name)["width"] -= wide
