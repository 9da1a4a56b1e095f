"""The card that says what can still be done: choices in, ways out, and one of them kept."""

from pathlib import Path

import ipywidgets as widgets
import pytest

from tests.boxes import lift_off, postcard
from toolkit.explore import lesson3, lesson4
from toolkit.explore.bench_forms import MadeForm
from toolkit.explore.lessons import own
from toolkit.explore.rescue_card import RescueCard, mishaps
from toolkit.files import read_box
from toolkit.lesson.scene import worked_out
from toolkit.plan import WITH_LENGTH, WITHOUT, Stage, parts_of, usual_stage
from toolkit.study import OwnBox


@pytest.fixture
def card() -> RescueCard:
    return RescueCard(own, stages=("jointed",))


def too_short(card: RescueCard, size: str = "125.2 mm", stage: Stage = "jointed") -> None:
    card.which.value, card.size.value, card.stage.value = "front_length", size, stage
    card.look.click()


def ways(card: RescueCard) -> list[str]:
    """The ways out as HTML, without the line on how they are ranked."""
    found = []
    for way in card.ways.children[:-1]:
        found.append(way.value if isinstance(way, widgets.HTML) else way.children[0].value)
    return found


def buttons(card: RescueCard) -> list[widgets.Button]:
    pairs = [way for way in card.ways.children if isinstance(way, widgets.VBox)]
    return [pair.children[1].children[0] for pair in pairs]


def test_the_ways_out_with_sizes_findings_and_costs(card: RescueCard) -> None:
    too_short(card)
    assert "0.8 mm under" in card.said.value
    first, second = ways(card)
    assert "<b>1. " in first and "lid width 116 mm → 115.2 mm" in first
    assert "Costs about 40 min" in first and "<b>2. Make a new front" in second
    assert "customs, no source" in card.ways.children[-1].value
    # New wood is as meant: there is nothing to keep of it.
    assert [button.description for button in buttons(card)] == ["Keep this, no. 1"]


def test_only_a_button_writes_and_undo_takes_it_back(card: RescueCard, folder: Path) -> None:
    too_short(card)
    assert list(folder.iterdir()) == []
    buttons(card)[0].click()
    kept = read_box(folder / "my_box.toml")
    assert kept.made.front_length == 125.2 and kept.made.back_length == 125.2
    assert own().design.lid.width.value == pytest.approx(115.2)
    assert "Kept" in card.said.value and "115.2 mm" in card.said.value
    assert card.ways.children == () and "125.2 mm was meant" in card.about.value
    card.undo.click()
    assert "Taken back" in card.said.value
    assert own().design.lid.width.value == pytest.approx(116.0)
    card.undo.click()
    assert "bench-hint" in card.said.value


@pytest.mark.parametrize(
    ("size", "said"),
    [
        ("", "Type a length first"),
        ("125", "125 mm"),
        ("a bit short", "a bit short"),
        ("-3 mm", "3 mm"),
        ("0 mm", "cannot be; measure it again"),
    ],
)
def test_a_bad_length_is_a_sentence(card: RescueCard, size: str, said: str, folder: Path) -> None:
    too_short(card)
    too_short(card, size)
    assert said in card.said.value and "bench-hint" in card.said.value
    assert card.ways.children == () and list(folder.iterdir()) == []


def test_what_is_asked_for_follows_what_happened(card: RescueCard) -> None:
    shown = {}
    for what in [*WITH_LENGTH, *WITHOUT]:
        card.which.value = what
        boxes = (("size", card.size), ("corner", card.corner), ("tail", card.tail))
        assert (card.part.layout.display != "none") == bool(parts_of(what))
        shown[what] = {name for name, box in boxes if box.layout.display != "none"}
        assert (what in WITHOUT) == (card.about.value == "")
    assert shown.pop("lap_through") == shown.pop("lid_tight") == set()
    assert shown.pop("tail_wrong_side") == {"size", "corner", "tail"}
    assert all(shown[what] == ({"size"} if what in WITH_LENGTH else set()) for what in shown)


def test_one_of_a_pair(card: RescueCard) -> None:
    card.which.value, card.size.value = "side_thickness", "11.4 mm"
    assert card.part.options[0] == ("both sides", "")
    card.part.value = "left side"
    card.look.click()
    assert "Left side thickness 11.4 mm" in card.said.value
    assert "left side alone loses 0.6 mm" in ways(card)[0]
    card.part.value = "right side"
    assert card.ways.children == (), "what was shown was of the other"


def test_tails_are_those_of_the_corner(card: RescueCard) -> None:
    card.which.value = "tail_wrong_side"
    assert [n for _, n in card.tail.options] == [1, 2, 3]
    card.corner.value, card.size.value = "front", "1 mm"
    assert [n for _, n in card.tail.options] == [1, 2]
    card.tail.value = 2
    card.look.click()
    assert "Tail 2 of the front" in ways(card)[0]
    before = own().design.front.tails[1]
    buttons(card)[0].click()
    after = own().design.front.tails[1]
    assert after.high - after.low == pytest.approx(before.high - before.low - 1.0)


def test_stages_that_can_be_and_the_one_where_the_lesson_is() -> None:
    card = lesson4.rescue()
    found = {}
    for what in ("side_thickness", "lap_through", "groove_depth", "lid_width", "diagonals"):
        card.which.value = what
        found[what] = (card.stage.value, len(card.stage.options))
    assert found == {
        "side_thickness": ("grooved", 7),
        "lap_through": ("jointed", 4),
        "groove_depth": ("grooved", 5),
        "lid_width": ("fitted", 7),
        "diagonals": ("gluing", 3),
    }
    card = lesson3.rescue()
    card.which.value = "side_thickness"
    assert card.stage.value == "jointed"


@pytest.mark.parametrize("stages", [("rough", "true"), ("jointed",), ("grooved", "fitted")])
def test_the_stages_own_come_first_and_all_are_there(stages: tuple[Stage, ...]) -> None:
    names = mishaps(stages)
    assert sorted(names) == sorted([*WITH_LENGTH, *WITHOUT])
    own_ = [usual_stage(name) in stages for name in names]
    assert own_ == sorted(own_, reverse=True) and own_[0]


def test_what_was_changed_before_is_not_shown_any_more(card: RescueCard) -> None:
    too_short(card)
    old = buttons(card)[0]
    card.stage.value = "true"
    assert card.ways.children == ()
    OwnBox().keep({"thickness.side": "13 mm"})
    old.click()
    assert "another one by now" in card.said.value
    assert read_box(OwnBox().path).made.front_length is None


def test_a_press_that_comes_before_what_was_typed_is_answered(card: RescueCard) -> None:
    card.which.value = "front_length"
    card.look.click()
    assert "Type a length first" in card.said.value
    card.size.value = "125.2 mm"
    assert "0.8 mm under" in card.said.value
    assert "Make a new front" in "".join(ways(card))


def test_another_form_that_keeps_a_box_is_followed(card: RescueCard) -> None:
    too_short(card)
    form = MadeForm()
    form.which.value, form.size.value = "made.front_length", "125.5 mm"
    form.keep.click()
    assert card.ways.children == () and card.size.value == ""
    card.which.value = "front_length"
    assert "125.5 mm was meant" in card.about.value


def test_inches(card: RescueCard) -> None:
    OwnBox().switch_units("in")
    card.follow()
    card.which.value = "front_length"
    assert " in" in card.about.value and " mm" not in card.about.value
    assert card.size.placeholder.endswith(" in")
    too_short(card, '4 59/64"')
    assert " mm" not in card.said.value + "".join(ways(card))
    buttons(card)[0].click()
    assert own().choices.made.front_length == pytest.approx((4 + 59 / 64) * 25.4)


def test_a_box_that_has_no_such_thing() -> None:
    made = worked_out(lift_off())
    card = RescueCard(lambda: made, stages=("fitted",))
    card.which.value = "lid_tight"
    card.look.click()
    assert "sliding lid" in card.said.value and card.ways.children == ()
    card.which.value = "top_edge"
    assert "sliding lid" in card.about.value


def test_a_box_that_is_none() -> None:
    made = worked_out(postcard().having({"size.inside_length": None, "size.outside_length": 10.0}))
    assert not made.design.exists
    card = RescueCard(lambda: made, stages=("jointed",))
    for what in ("tail_wrong_side", "front_length", "lap_through"):
        card.which.value, card.size.value = what, "1 mm"
        card.look.click()
        assert "bench-hint" in card.said.value and card.ways.children == ()


def test_what_wont_work_has_no_button(card: RescueCard) -> None:
    card.which.value, card.size.value, card.stage.value = "side_thickness", "4 mm", "true"
    card.look.click()
    bad = [way for way in card.ways.children[:-1] if isinstance(way, widgets.HTML)]
    assert any("Won't work" in way.value.replace("&#x27;", "'") for way in bad)
    for way in card.ways.children[:-1]:
        if isinstance(way, widgets.VBox):
            assert "Won&#x27;t work" not in way.children[0].value
