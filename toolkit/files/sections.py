"""The sections of a box file, key by key.

Defaults are not said here: a key that is left out is left to the choices, which have them.
"""

from __future__ import annotations

from dataclasses import fields
from typing import Any

from pydantic import ConfigDict, Field, create_model

from toolkit.box.choices import Made
from toolkit.box.customs import Customs, describe
from toolkit.files import kinds
from toolkit.files.kinds import Section


def left_out(words: str = "") -> Any:
    """A key that need not be there."""
    return Field(default=None, description=words or None)


def _one_of_two(axis: str, *instead: str) -> Any:
    """In JSON Schema: inside or outside but not both, or something else instead of either."""
    two = [f"inside_{axis}", f"outside_{axis}"]
    return {
        "anyOf": [{"required": [key]} for key in (*two, *instead)],
        "not": {"required": two},
    }


class RuleSection(Section):
    """How lengths are written out, and the three finenesses they are rounded to."""

    units: kinds.Units = left_out("Millimetres or inches.")
    joints: kinds.Length = left_out("Fineness of joints.")
    sizes: kinds.Length = left_out("Fineness of finished sizes.")
    rough: kinds.Length = left_out("Fineness of rough sizes.")


class SizeSection(Section):
    """Inside or outside for each of length, width and height, or contents with some ease."""

    model_config = ConfigDict(
        json_schema_extra={
            "allOf": [
                _one_of_two("length", "contents"),
                _one_of_two("width", "contents"),
                _one_of_two("height"),
            ],
            "dependentRequired": {"ease": ["contents"]},
        }
    )

    inside_length: kinds.Length = left_out("Between the ends.")
    inside_width: kinds.Length = left_out("Between the sides.")
    inside_height: kinds.Length = left_out("From the bottom panel to the lid, or to the rim.")
    outside_length: kinds.Length = left_out("Over the ends.")
    outside_width: kinds.Length = left_out("Over the sides.")
    outside_height: kinds.Length = left_out("Of the back.")
    contents: kinds.Contents = left_out("Replaces inside length and width, or checks them.")
    ease: kinds.LengthOrZero = left_out("Room beside the contents.")


class ThicknessSection(Section):
    """Thickness of each kind of part as planned."""

    side: kinds.Length
    end: kinds.Length
    bottom: kinds.Length
    lid: kinds.Length


class CornerSection(Section):
    """The dovetails; pin, half pin and tails are measured at the baseline."""

    model_config = ConfigDict(
        json_schema_extra={
            "not": {"required": ["lap", "tail_length"]},
            "if": {"properties": {"joint": {"const": "through"}}, "required": ["joint"]},
            "then": {"properties": {"lap": False, "tail_length": False}},
        }
    )

    joint: kinds.Joint = left_out("With a lap, or right through.")
    tails_on: kinds.TailsOn = left_out("The parts that carry the tails.")
    lap: kinds.Length = left_out("Wood left in front of a tail.")
    tail_length: kinds.Length = left_out("Instead of the lap.")
    slope: kinds.Slope = left_out("Of the tails' sides.")
    half_pin: kinds.Length = left_out("At the baseline.")
    pin: kinds.Length = left_out("At the baseline.")
    tails_back: kinds.Tails = left_out()
    tails_front: kinds.Tails = left_out()


class GrooveSection(Section):
    """One plough setting for both panels."""

    width: kinds.Length = left_out("The plough iron.")
    depth: kinds.Length = left_out("From the inside face.")
    bottom_edge: kinds.LengthOrZero = left_out("From the wall's bottom edge to the bottom groove.")
    top_edge: kinds.LengthOrZero = left_out("From the wall's top edge to the lid groove.")
    ends: kinds.GrooveEnds = left_out("How a groove ends at a corner.")


class PanelsSection(Section):
    """Clearances and edges of lid and bottom."""

    model_config = ConfigDict(
        json_schema_extra={
            "if": {"required": ["across"]},
            "then": {"properties": {"bottom_across": False, "lid_across": False}},
        }
    )

    across: kinds.LengthOrZero = left_out("Across the grain, both sides together, both panels.")
    bottom_across: kinds.LengthOrZero = left_out("The same of the bottom alone.")
    lid_across: kinds.LengthOrZero = left_out("The same of the lid alone.")
    along: kinds.LengthOrZero = left_out("Of the bottom along the grain, both ends together.")
    bottom_tongue: kinds.LengthOrZero = left_out("Groove width less tongue thickness.")
    lid_tongue: kinds.LengthOrZero = left_out("Groove width less tongue thickness.")
    bottom_profile: kinds.Profile = left_out()
    lid_profile: kinds.Profile = left_out()
    bevel_width: kinds.Length = left_out("Of a bevelled edge, from its rim to where it ends.")
    front_drop: kinds.LengthOrZero = left_out("Front end below the floor of the lid groove.")
    grain: kinds.Grain = left_out("Of lid and bottom, to the length of the box.")


class LidSection(Section):
    """How the box is closed; all but the kind belongs to a lift-off lid."""

    kind: kinds.LidKind = left_out()
    seat: kinds.Seat = left_out("How a lift-off lid sits.")
    overhang: kinds.LengthOrZero = left_out("Of a lift-off lid over the walls.")
    rebate_depth: kinds.Length = left_out()
    batten_width: kinds.Length = left_out()
    batten_thickness: kinds.Length = left_out()


class ToolsSection(Section):
    """What is on the bench."""

    chisel: kinds.Length = left_out("The narrowest.")
    plough_irons: kinds.Irons = left_out()


class WoodSection(Section):
    """Woods by name."""

    model_config = ConfigDict(
        json_schema_extra={
            "dependentRequired": {
                "sides": ["ends"],
                "ends": ["sides"],
                "bottom": ["lid"],
                "lid": ["bottom"],
            },
            "dependentSchemas": {
                "walls": {"properties": {"sides": False, "ends": False}},
                "panels": {"properties": {"bottom": False, "lid": False}},
            },
        }
    )

    walls: kinds.Species = left_out("Sides and ends.")
    sides: kinds.Species = left_out()
    ends: kinds.Species = left_out()
    panels: kinds.Species = left_out("Bottom and lid.")
    bottom: kinds.Species = left_out()
    lid: kinds.Species = left_out()
    rings: kinds.Rings = left_out("Of lid and bottom.")


class RoomSection(Section):
    """The air of a room."""

    temperature: kinds.Temperature = left_out()
    humidity: kinds.Humidity = left_out()


class RoomsSection(Section):
    """Where the box is made, and the dampest and driest room it will live in."""

    make: RoomSection = left_out()
    damp: RoomSection = left_out()
    dry: RoomSection = left_out()


class AllowanceSection(Section):
    """Rough over finished, of one part."""

    length: kinds.LengthOrZero = left_out()
    width: kinds.LengthOrZero = left_out()
    thickness: kinds.LengthOrZero = left_out()


class AllowancesSection(AllowanceSection):
    """Rough over finished, of all parts and of each part that has its own."""

    side: AllowanceSection = left_out()
    back: AllowanceSection = left_out()
    front: AllowanceSection = left_out()
    bottom: AllowanceSection = left_out()
    lid: AllowanceSection = left_out()
    batten: AllowanceSection = left_out()


ALLOWED_PARTS = tuple(
    part for part in AllowancesSection.model_fields if part not in AllowanceSection.model_fields
)


def _customs() -> type[Section]:
    keys: dict[str, Any] = {}
    for spec in fields(Customs):
        kind, words, _source = describe(spec.name)
        keys[spec.name] = (kinds.CUSTOM_KINDS[kind], left_out(f"{words}."))
    return create_model("CustomsSection", __base__=Section, __doc__="Rules of thumb.", **keys)


_OF_SQUARE = {
    "end_out": "an end, over the width",
    "end_lean": "an end, over the thickness",
    "edge_out": "the edge that the fence runs on, over the thickness",
}


def _made() -> type[Section]:
    keys: dict[str, Any] = {}
    for spec in fields(Made):
        size = spec.name.partition("_")[2]
        gap = f"gap under a square's blade at {_OF_SQUARE[size]}," if size in _OF_SQUARE else ""
        kind = kinds.LengthOrZero if gap or size == "edge" else kinds.Length
        keys[spec.name] = (kind, left_out(f"{gap or spec.name.replace('_', ' ')} as measured."))
    return create_model("MadeSection", __base__=Section, __doc__="What exists already.", **keys)


CustomsSection = _customs()
MadeSection = _made()


class BoxFile(Section):
    """A box for the hand-tool class workbook."""

    format: kinds.Format = left_out()
    title: kinds.Title = left_out()
    rule: RuleSection = left_out()
    size: SizeSection
    thickness: ThicknessSection
    corner: CornerSection = left_out()
    groove: GrooveSection = left_out()
    panels: PanelsSection = left_out()
    lid: LidSection = left_out()
    tools: ToolsSection = left_out()
    wood: WoodSection = left_out()
    rooms: RoomsSection = left_out()
    allowances: AllowancesSection = left_out()
    customs: CustomsSection = left_out()  # type: ignore[valid-type]
    made: MadeSection = left_out()  # type: ignore[valid-type]
