"""Forms for the bench: what was measured, whether a board is ready to cut, feeler gauges read."""

from __future__ import annotations

from collections.abc import Callable
from html import escape
from itertools import zip_longest
from statistics import fmean

import ipywidgets as widgets

from toolkit.box import Made, compare_readings, fitting_sentence, making
from toolkit.document import as_html, findings_html
from toolkit.explore.controls import Card, button, text_box
from toolkit.explore.engine import followed, follows
from toolkit.lesson import drawable, gaps_of, worked_out
from toolkit.measures import humidity, keys_of, length, mass, percent, slope, temperature
from toolkit.plan import Plan, compare, tables
from toolkit.results import Finding
from toolkit.study import Loaded, OwnBox
from toolkit.truing import Tolerances, worth_measuring
from toolkit.wood import BoardSeen, equilibrium_moisture, moisture_by_weight, ready_to_cut

_KEYS = {f"made.{name}": key for name, key in keys_of(Made).items()}


class MadeForm(Card):
    """Choose what was measured, type its size, keep it; the box follows. Display it in a cell."""

    def __init__(self) -> None:
        super().__init__()
        self.which = widgets.Dropdown(
            description="measured",
            options=[(key.words, name) for name, key in _KEYS.items()],
            layout={"width": "28em"},
        )
        self.size = text_box("as made", "with its unit: 11.4 mm")
        self.keep = button("It is made", lambda: self._change(self._kept))
        self.undo = button("Undo", lambda: self._change(lambda own: own.undo()))
        self.next = widgets.HTML()
        row = widgets.HBox([self.which, self.size, self.keep, self.undo])
        self.lay(row, self.said, self.next)
        self.follow()
        follows(self)

    def _kept(self, own: OwnBox) -> Loaded:
        zero = _KEYS[self.which.value].least is not None
        length(self.size.value, what=self.which.label, allow="zero" if zero else "positive")
        return own.keep({self.which.value: self.size.value})

    def _change(self, change: Callable[[OwnBox], Loaded]) -> None:
        own = OwnBox()
        loaded = self.tried(lambda: (own.load(), change(own)))
        if loaded is not None:
            self._changed(*loaded)

    def _changed(self, before: Loaded, after: Loaded) -> None:
        """What follows from it, and what is to be said of the box now."""
        rule = after.choices.rule
        told = compare(worked_out(before.choices), worked_out(after.choices))
        parts = [as_html(tables.comparison(told, rule))] if told.changes else []
        if not told.changes:
            parts.append("<p>Nothing else changes.</p>")
        if told.new_findings:
            parts.append(findings_html(told.new_findings))
        self.show("".join(parts))
        followed(after.choices)

    def follow(self) -> None:
        """What is worth measuring now, on the student's own rule, the most telling first."""
        choices = OwnBox().load().choices
        known = [key.partition(".")[2] for key in _KEYS if choices.value(key) is not None]
        limits = Tolerances(square=choices.customs.square_most)
        worth = worth_measuring(worked_out(choices).parts, made=known, limits=limits)
        items = "".join(f"<li>{escape(row.sentence(choices.rule))}</li>" for row in worth[:3])
        words = f"<p>Worth measuring now:</p><ul>{items}</ul>" if items else ""
        self.next.value = f'<div class="bench-view">{words}</div>'


_STYLE = {"description_width": "15em"}
_WIDE = {"width": "36em"}


class ReadyCard(Card):
    """Boxes to type readings into, and what an experienced maker would say to them."""

    def __init__(self, own: Callable[[], Plan]) -> None:
        super().__init__()
        room = own().choices.rooms.make
        self.temperature = _box("temperature, last weeks", f"{room.temperature:g} °C")
        self.humidity = _box("humidity, last weeks", f"{room.humidity:g} %")
        self.moisture = _box("meter, one reading a board", "", hint="9.5 %, 10.2 %, 9.8 %")
        self.weights = _box("weights of alike pieces", "", hint="412 g, 405 g, 409 g")
        self.grain = _box("grain runs out, one a board", "", hint="1 in 20, 1 in 15, 1 in 25")
        self.check = button("Ready?", self._look)
        boxes = [self.temperature, self.humidity, self.moisture, self.weights, self.grain]
        self.lay(*boxes, widgets.HBox([self.check]), self.said)

    def _look(self) -> None:
        if found := self.tried(self.findings):
            self.show(findings_html(found))

    def findings(self) -> tuple[Finding, ...]:
        """What is to be said to the readings that stand in the boxes now."""
        room = equilibrium_moisture(
            temperature=temperature(self.temperature.value, what="the room's temperature"),
            humidity=humidity(self.humidity.value, what="the room's humidity"),
        )
        wet = [percent(text, what="a meter's reading") for text in each_of(self.moisture.value)]
        grams = [mass(text, what="a weight") for text in each_of(self.weights.value)]
        runs = [slope(text, what="the grain") for text in each_of(self.grain.value)]
        if not wet and not grams and not runs:
            raise ValueError("Type a reading of the meter or two weights first.")
        seen = [
            BoardSeen(f"board {number}", moisture=moisture, weight=weight, grain=run)
            for number, (moisture, weight, run) in enumerate(zip_longest(wet, grams, runs), 1)
        ]
        return ready_to_cut(seen, room_moisture=room)


_TODAY = "by the air of one day"


class MoistureForm(Card):
    """How wet the panels' wood is, by the best that was measured; what clearance it then gets."""

    def __init__(self, own: Callable[[], Plan]) -> None:
        super().__init__()
        self._own = own
        self.meter = _box("1. meter, on the panels", "", hint="9.5 %, 10.2 %")
        self.weights = _box("2. offcut now, oven-dry", "", hint="41.2 g, 37.8 g")
        self.weeks = _box("3. air, two or three weeks", "", hint="20 °C, 50 %")
        self.today = _box("4. air, today alone", "", hint="22 °C, 70 %")
        look = button("What clearance?", lambda: self.tried(self._look))
        keep = button("Keep this moisture", self._keep)
        boxes = [self.meter, self.weights, self.weeks, self.today]
        self.lay(*boxes, widgets.HBox([look, keep]), self.said)

    def moisture(self) -> tuple[float, str]:
        """Moisture by the first of the boxes that is filled in, and by what. [%]"""
        if wet := [percent(text, what="a meter's reading") for text in each_of(self.meter.value)]:
            return fmean(wet), "by the meter"
        if weighed := each_of(self.weights.value):
            if len(weighed) not in (2, 3):
                raise ValueError(
                    "Type two weights of one offcut, now and oven-dry: 41.2 g, 37.8 g. Was it not "
                    "oven-dry, its moisture then as well: 41.2 g, 42.3 g, 12 %."
                )
            now, before = (mass(text, what="a weight") for text in weighed[:2])
            then = percent(weighed[2], what="its moisture then") if len(weighed) == 3 else 0.0
            return moisture_by_weight(now, before=before, moisture_before=then), "by its weight"
        for box, source in ((self.weeks, "by the air of those weeks"), (self.today, _TODAY)):
            if read := each_of(box.value):
                if len(read) != 2:
                    raise ValueError("Type temperature and humidity of the air: 20 °C, 50 %.")
                air = {
                    "temperature": temperature(read[0], what="the air's temperature"),
                    "humidity": humidity(read[1], what="the air's humidity"),
                }
                return equilibrium_moisture(**air), source
        raise ValueError("Type what you have, the first of the four if you can: 9.5 %.")

    def _look(self) -> float:
        design = drawable(self._own()).design
        moisture, source = self.moisture()
        kept = making(design.choices.rooms)
        words = f"Read {source}. {fitting_sentence(design, moisture=moisture)}"
        if source == _TODAY:
            words += (
                " Wood follows the air in weeks, and one day says little: it may still be as it "
                f"was reckoned. {fitting_sentence(design, moisture=kept)}"
            )
        self.say(words)
        return moisture

    def _keep(self) -> None:
        def kept() -> Loaded:
            own, moisture = OwnBox(), self._look()
            own.load()
            return own.keep({"rooms.make_moisture": f"{moisture:.1f} %"})

        if loaded := self.tried(kept):
            followed(loaded.choices)


def _box(label: str, value: str, *, hint: str = "") -> widgets.Text:
    return text_box(label, hint, value=value, layout=_WIDE, style=_STYLE)


def each_of(text: str) -> list[str]:
    """Readings between commas or semicolons; a decimal comma has no space behind it."""
    parts = (part.strip(" ,") for part in text.replace(";", ", ").split(", "))
    return [part for part in parts if part]


def readings_of(text: str) -> tuple[float, ...]:
    """Thicknesses as they are typed, parted by commas or semicolons. [mm]"""
    return tuple(
        0.0 if part == "0" else length(part, what="reading", allow="zero") for part in each_of(text)
    )


def feeler_card(own: Callable[[], Plan]) -> widgets.Widget:
    """A box for readings, and what they say."""
    card = Card()
    box = text_box("my readings", "0.1 mm, 0.25 mm, 0", continuous_update=False)

    def told() -> str:
        plan = drawable(own())
        read = compare_readings(gaps_of(plan), readings=readings_of(box.value))
        return read.sentence(plan.choices.rule)

    def read() -> None:
        if box.value.strip() and (words := card.tried(told)):
            card.say(words)

    box.observe(lambda _: read(), names="value")
    card.lay(widgets.HBox([box, button("What do they say?", read)]), card.said)
    return card.widget
