"""The parts as solids: closed, of the right size, without overlap, and leaving no gap."""

from collections.abc import Sequence
from itertools import combinations

import numpy as np
import pytest
from manifold3d import Manifold

from tests.boxes import first_postcard as postcard
from toolkit.box import Choices
from toolkit.plan import plan
from toolkit.shape import Solid, block, cut_across, cut_along, end_grain, end_of, solids, waste_on

NOTHING = 1e-3  # [mm³]
RIGHT = 1e-6  # relative, for sums of a few products in binary fractions


def _boxes() -> dict[str, Choices]:
    box = postcard()
    through = box.having({"corner.joint": "through", "corner.lap": None})
    rows: dict[str, Choices] = {}
    for tails in ("ends", "sides"):
        for name, joint in (("half-blind", box), ("through", through)):
            one = joint.having({"corner.tails_on": tails})
            rows[f"{name}, tails on {tails}"] = one
            rows[f"{name}, tails on {tails}, stopped"] = one.having({"groove.ends": "stopped"})
            rows[f"{name}, tails on {tails}, lift-off"] = one.having({"lid.kind": "lift-off"})
            rows[f"{name}, tails on {tails}, battens"] = one.having(
                {"lid.kind": "lift-off", "lid.seat": "battens"}
            )
    rows["bevelled"] = box.having(
        {"panels.lid_profile": "bevelled", "panels.bottom_profile": "bevelled"}
    )
    rows["flat"] = box.having(
        {
            "panels.lid_profile": "flat",
            "panels.bottom_profile": "flat",
            "thickness.lid": 5.7,
            "thickness.bottom": 5.8,
        }
    )
    rows["groove at a pin"] = box.having({"groove.bottom_edge": 21.0})
    rows["groove half in a pin"] = box.having({"corner.tails_back": 5})
    rows["unequal tails"] = box.having(
        {"corner.tails_back": ((5.0, 21.0), (27.0, 35.0), (41.0, 59.0))}
    )
    rows["unlike walls"] = box.having(
        {"made.side_thickness": 11.4, "made.back_thickness": 13.0, "made.front_thickness": 10.5}
    )
    return rows


BOXES = _boxes()
every_box = pytest.mark.parametrize("box", BOXES.values(), ids=BOXES)


def _parts(box: Choices) -> dict[str, Solid]:
    return {f"{row.name} {row.place}".strip(): row for row in solids(plan(box).design)}


def _overlap(one: Manifold, other: Manifold) -> float:
    return float((one ^ other).volume())


@every_box
def test_every_part_is_one_closed_solid(box: Choices) -> None:
    for part in _parts(box).values():
        assert part.shape.status().name == "NoError"
        assert len(part.shape.decompose()) == 1, part.name
        triangles = np.asarray(part.shape.to_mesh64().tri_verts, dtype=np.int64)
        edges = [(int(row[k]), int(row[k - 2])) for row in triangles for k in range(3)]
        assert len(set(edges)) == len(edges)
        assert {(b, a) for a, b in edges} == set(edges)


@every_box
def test_no_two_parts_are_in_one_place(box: Choices) -> None:
    for (one, a), (other, b) in combinations(_parts(box).items(), 2):
        assert _overlap(a.shape, b.shape) < NOTHING, f"{one} and {other}"


@every_box
def test_every_part_is_as_large_as_the_cut_list_says(box: Choices) -> None:
    p = plan(box)
    for part in solids(p.design):
        low, high = np.array(part.shape.bounding_box()).reshape(2, 3)
        along = high[part.grain] - low[part.grain]
        others = sorted((high - low)[axis] for axis in range(3) if axis != part.grain)
        row = p.part(part.name)
        assert along == pytest.approx(row.length.value, abs=1e-9), part.name
        assert others == pytest.approx(sorted((row.thickness.value, row.width.value)), abs=1e-9), (
            part.name
        )


@pytest.mark.parametrize("tails", ["ends", "sides"])
@pytest.mark.parametrize("joint", ["half-blind", "through"])
def test_the_walls_leave_nothing_open_but_what_the_design_leaves(tails: str, joint: str) -> None:
    """A loose joint has no overlap either: what the walls do not fill must be meant."""
    box = BOXES[f"{joint}, tails on {tails}"]
    d = plan(box).design
    f, depth = d.frame, 4.0
    length, width, height = 176.0, 134.0, 64.0
    left = block((0, length), (0, width), (0, height))
    for part in solids(d):
        if part.name in ("side", "back", "front"):
            left = left - part.shape
    left = left - block((12, 164), (12, 122), (0, height))
    # Over the low front, between the sides or, under ears, between the inside of the ears.
    left = left - block((164, length), (12, 122), (f.front_height.value, height))
    grooves = [(7.0, 13.0), (51.0, 57.0)]
    for z in grooves:
        left = left - block((12 - depth, length), (12 - depth, 122 + depth), z)
    if joint == "through":
        # Ploughed right through, every groove of the tail boards comes out at the tips.
        for z in grooves:
            if tails == "ends":
                left = left - block((8, 12), (0, width), z) - block((164, 168), (0, width), z)
            else:
                left = left - block((0, length), (8, 12), z) - block((0, length), (122, 126), z)
    elif tails == "ends":
        for z in grooves:
            left = left - block((8, 12), (4, 130), z) - block((164, 168), (4, 130), z)
    else:
        for z in grooves:
            left = left - block((4, 172), (8, 12), z) - block((4, 172), (122, 126), z)
    assert left.volume() < NOTHING


def test_volumes_of_the_postcard_box_by_hand() -> None:
    """From the sizes printed in the plan alone; a tail is 8 mm long and 1/7 flares on each side."""
    parts = _parts(postcard())
    flare = 8 / 7
    tails_back = 3 * 8 * (14 + flare)  # outline of three tails of 14 mm at the baseline
    tails_front = 2 * 8 * ((50.7 - 4) / 2 - 6 + flare)
    groove = 6 * 4.0
    side = 176 * 64 * 12 - 12 * (tails_back + tails_front) - groove * (176 - 24 + 176 - 12)
    back = 12 * (110 * 64 + 2 * tails_back) - 2 * groove * 126
    front = 12 * (110 * 50.7 + 2 * tails_front) - groove * 126
    bottom = 159 * 116 * 5.8 + 149 * 106 * 2.2
    lid = 168 * 116 * 5.7 + 163 * 106 * 3.3
    by_hand = {
        "side near": side, "side far": side, "back": back, "front": front, "bottom": bottom,
        "lid": lid,
    }  # fmt: skip
    found = {name: part.shape.volume() for name, part in parts.items()}
    assert found == pytest.approx(by_hand, rel=RIGHT)


def _cut(shape: Manifold, axis: int, at: float) -> float:
    """Area of a cut across an axis. [mm²]"""
    order = [(axis + 1) % 3, (axis + 2) % 3, axis]
    return float(shape.transform(np.eye(4)[order]).slice(at).area())


def _area(outline: Sequence[tuple[float, float]]) -> float:
    turned = zip(outline, [*outline[1:], *outline[:1]], strict=True)
    return abs(sum(x0 * z1 - x1 * z0 for (x0, z0), (x1, z1) in turned)) / 2


@every_box
def test_sections_and_ends_are_cuts_through_the_whole_parts(box: Choices) -> None:
    """They are put together from cuts through pieces, which is quicker."""
    d, parts = plan(box).design, _parts(box)
    f = d.frame
    long, wide = f.outside_length.value, f.outside_width.value
    names = {"left side": "side near", "right side": "side far"}
    names |= {"back end": "back", "front end": "front"}
    for cuts, axis, at in ((cut_across(d), 0, long / 2 + 0.01), (cut_along(d), 1, wide / 2)):
        for name in {cut.name for cut in cuts if "batten" not in cut.name}:
            drawn = sum(_area(cut.points) for cut in cuts if cut.name == name)
            assert drawn == pytest.approx(_cut(parts[names.get(name, name)].shape, axis, at)), name
    on_ends = d.choices.corner.tails_on == "ends"
    for which, name in (("back", "back"), ("front", "front")):
        part = "side" if on_ends else which
        grain = sum(map(_area, end_grain(d, part=part, which=which)))  # type: ignore[arg-type]
        shape = parts["side near" if on_ends else name].shape
        end = 1e-5 if which == "back" or not on_ends else long - 1e-5
        assert grain == pytest.approx(_cut(shape, 0 if on_ends else 1, end), rel=1e-5), which
        socket = waste_on(end_of(d, part=part, which=which), on="end grain")  # type: ignore[arg-type]
        assert len(socket) == len((d.back if which == "back" else d.front).tails)


@pytest.mark.parametrize(
    ("name", "way"),
    [
        ("side near", (0, 0.01, 0)),
        ("side near", (0, 0, 0.01)),
        ("back", (0.01, 0, 0)),
        ("back", (0, 0.01, 0)),
        ("back", (0, 0, 0.01)),
        ("front", (-0.01, 0, 0)),
        ("bottom", (0, 0, -0.01)),
        ("lid", (0, 0, -0.01)),
    ],
)
def test_a_part_a_hundredth_out_of_place_is_found(
    name: str, way: tuple[float, float, float]
) -> None:
    parts = _parts(postcard())
    moved = parts[name].shape.translate(way)
    others = [part.shape for key, part in parts.items() if key != name]
    assert max(_overlap(moved, other) for other in others) > NOTHING


def test_tails_lock_against_every_way_but_their_own() -> None:
    for tails in ("ends", "sides"):
        parts = _parts(BOXES[f"half-blind, tails on {tails}"])
        walls = {"side near": (0, -1, 0), "back": (-1, 0, 0)}
        free = "back" if tails == "ends" else "side near"
        for name, way in walls.items():
            moved = parts[name].shape.translate(way)
            rest = [part for key, part in parts.items() if key != name]
            caught = max(_overlap(moved, part.shape) for part in rest)
            assert (caught < NOTHING) == (name == free), name


def test_the_ear_stands_over_the_low_front_and_the_lid_slides_out_past_it() -> None:
    parts = _parts(BOXES["half-blind, tails on sides"])
    ear = parts["side near"].shape ^ block((172.01, 176), (0, 12), (0, 64))
    low, high = np.array(ear.bounding_box()).reshape(2, 3)
    assert (low[2], high[2]) == pytest.approx((50.7, 64.0))
    for out in np.linspace(0, 180, 19):
        lid = parts["lid"].shape.translate((out, 0, 0))
        assert all(_overlap(lid, p.shape) < NOTHING for n, p in parts.items() if n != "lid")


def test_a_box_that_cannot_exist_is_refused_in_words() -> None:
    for box in (
        postcard().having({"corner.tails_back": 12}),
        postcard().having({"size.inside_height": None, "size.outside_height": 20.0}),
    ):
        with pytest.raises(ValueError, match="cannot be drawn"):
            solids(plan(box).design)


def test_pins_whose_cheeks_meet_end_there() -> None:
    """A pin with no width left at the outside is drawn as the wedge that it is."""
    d = plan(postcard().having({"corner.pin": 2.0, "corner.half_pin": 3.0})).design
    assert d.back.narrowest_pin < 0
    side = next(part.shape for part in solids(d) if part.name == "side")
    # Two half pins reach to the lap, the two whole ones end one millimetre before it.
    for low, high, end in ((0, 3, 4.0), (21, 23, 5.0), (41, 43, 5.0), (61, 64, 4.0)):
        pin = side ^ block((1, 11), (4.001 if end > 4 else 3.9, 12), (low, high))
        reach = end if end > 4 else 3.9
        assert pin.bounding_box()[1] == pytest.approx(reach), low
