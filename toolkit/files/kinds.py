"""The types of the values in a file: how each is read, and what the JSON Schema says of it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from functools import partial
from typing import Annotated, Any, Literal, get_args

from pydantic import BaseModel, ConfigDict, GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic_core import CoreSchema, core_schema

from toolkit import stock
from toolkit.box import choices, customs
from toolkit.files import values
from toolkit.files.formats import FORMAT, read_format
from toolkit.results import capital
from toolkit.wood import RING_WORDS


@dataclass(frozen=True)
class Read:
    """Pydantic's way to a reader of ours, which says all that there is to say of a value."""

    reader: Callable[[Any], Any]
    json: dict[str, Any] = field(hash=False)

    def __get_pydantic_core_schema__(
        self, source: Any, handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        return core_schema.no_info_plain_validator_function(self.reader)

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        return dict(self.json)


class Section(BaseModel):
    """A table of a file: every key is known, and what is left out stays left out."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    def given(self) -> dict[str, Any]:
        """The keys that the file has, with their values as read."""
        return {key: getattr(self, key) for key in type(self).model_fields if self.has(key)}

    def has(self, key: str) -> bool:
        """Whether the file has this key."""
        return key in self.model_fields_set


def _length(allow: values.Allow, most: float = values.LONGEST_LENGTH) -> Read:
    span = f"{'above 0' if allow == 'positive' else '0'} to {most / 1000:g} m"
    return Read(
        partial(values.read_length, allow=allow, most=most),
        {
            "type": "string",
            "description": f"A length with its unit, {span}.",
            "examples": ["12 mm", "1/2 in"],
        },
    )


def _text(reader: Callable[[Any], Any], description: str, *examples: str) -> Read:
    return Read(
        reader,
        {
            "type": "string",
            "minLength": 1,
            "maxLength": values.LONGEST_TITLE,
            "description": description,
            "examples": list(examples),
        },
    )


def word(literal: Any) -> Read:
    """One of a few words."""
    words = get_args(literal)
    return Read(partial(values.read_word, words=words), {"enum": list(words)})


def _name(what: str, example: str) -> Read:
    reader = partial(values.read_name, what=what, example=example)
    return _text(reader, f"{capital(what)}: one printable line.", example)


_PAIR = {"type": "array", "items": {"type": "string"}, "minItems": 2, "maxItems": 2}

Length = Annotated[float, _length("positive")]
LengthOrZero = Annotated[float, _length("zero")]
BoardLength = Annotated[float, _length("positive", values.LONGEST_BOARD)]
Point = Annotated[
    tuple[float, float],
    Read(
        values.read_point,
        {
            **_PAIR,
            "description": "Along and across the board, from its lower left corner.",
            "examples": [["250 mm", "40 mm"]],
        },
    ),
]
HeartLine = Annotated[
    tuple[tuple[float, float], ...],
    Read(
        values.read_heart_line,
        {
            "type": "array",
            "minItems": 2,
            "maxItems": values.MOST_POINTS,
            "items": _PAIR,
            "examples": [[["0 mm", "180 mm"], ["2200 mm", "195 mm"]]],
        },
    ),
]
Format = Annotated[int, Read(read_format, {"const": FORMAT})]
Title = Annotated[str, _name("the title", "Postcard box")]
BoardName = Annotated[str, _name("the name", "long cherry")]
Contents = Annotated[
    str, _text(values.read_contents, "What the box is for, by its name in the table.", "A6 cards")
]
Species = Annotated[str, _text(values.read_species, "A wood of the table.", "black cherry")]
Slope = Annotated[
    float,
    Read(
        values.read_slope,
        {
            "type": ["number", "string"],
            "minimum": values.LEAST_SLOPE,
            "maximum": values.MOST_SLOPE,
            "description": "1 in so many, or an angle.",
            "examples": [7, "1:7", "8.1 deg"],
        },
    ),
]
Share = Annotated[
    float,
    Read(
        values.read_share,
        {
            "type": ["number", "string"],
            "minimum": 0,
            "maximum": values.MOST_SHARE,
            "description": "A share of another size, 1 being the same, or a fraction as text.",
            "examples": [0.25, "1/4"],
        },
    ),
]
Number = Annotated[
    float,
    Read(
        partial(values.read_number, least=0, most=1e6, example="2"),
        {"type": "number", "minimum": 0, "maximum": 1e6},
    ),
]
Temperature = Annotated[
    float, _text(values.read_temperature, "A temperature with its unit.", "20 °C", "68 °F")
]
Humidity = Annotated[float, _text(values.read_humidity, "A relative humidity.", "50 %")]
Rings = Annotated[
    float,
    _text(
        values.read_rings,
        "Rings to the face of lid and bottom: a word or an angle from 0 to 90 degrees.",
        *RING_WORDS,
        "30 deg",
    ),
]
Tails = Annotated[
    int | tuple[tuple[float, float], ...],
    Read(
        values.read_tails,
        {
            "description": "How many, or the lower and upper edge of each at the baseline.",
            "oneOf": [
                {"type": "integer", "minimum": 1, "maximum": values.MOST_TAILS},
                {
                    "type": "array",
                    "minItems": 1,
                    "maxItems": values.MOST_TAILS,
                    "items": _PAIR,
                },
            ],
            "examples": [3, [["5 mm", "19 mm"], ["25 mm", "39 mm"]]],
        },
    ),
]
Irons = Annotated[
    tuple[float, ...],
    Read(
        values.read_irons,
        {
            "type": "array",
            "minItems": 1,
            "maxItems": values.MOST_IRONS,
            "items": {"type": "string"},
            "description": "Widths of the plough's irons.",
            "examples": [["6 mm"]],
        },
    ),
]
Joint = Annotated[choices.Joint, word(choices.Joint)]
TailsOn = Annotated[choices.TailsOn, word(choices.TailsOn)]
LidKind = Annotated[choices.LidKind, word(choices.LidKind)]
Seat = Annotated[choices.Seat, word(choices.Seat)]
Profile = Annotated[choices.Profile, word(choices.Profile)]
GrooveEnds = Annotated[choices.GrooveEnds, word(choices.GrooveEnds)]
Grain = Annotated[choices.Grain, word(choices.Grain)]
Units = Annotated[Literal["mm", "in"], word(Literal["mm", "in"])]
DefectKind = Annotated[stock.DefectKind, word(stock.DefectKind)]

CUSTOM_KINDS: dict[customs.Kind, Any] = {
    "length": LengthOrZero,
    "share": Share,
    "slope": Slope,
    "number": Number,
}
