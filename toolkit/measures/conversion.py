"""The workbook's one pint registry, made when first needed, and conversions through it."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING, Any

from toolkit.measures.errors import MeasureError, is_finite
from toolkit.measures.figures import ReadingError

if TYPE_CHECKING:
    import pint

    from toolkit.measures.units import Kind


def _pint() -> Any:
    # Not at the top: with its registry pint takes half a second, and few of the rooms need it.
    import pint

    return pint


@cache
def registry() -> pint.UnitRegistry[Any]:
    """The one unit registry of the workbook, made on first use.

    Beside pint's own units it knows ``metric_teaspoon``, 5 mL (common practice, no source); its
    ``board_foot`` is 144 in³.
    """
    made: pint.UnitRegistry[Any] = _pint().UnitRegistry()
    made.define("metric_teaspoon = 5 milliliter")
    return made


def convert(value: float, *, unit: str, to: str) -> float:
    """A number of one unit in another, for volumes, areas and temperatures. [to]

    >>> round(convert(68, unit="degF", to="degC"), 6)
    20.0
    """
    if not is_finite(value):
        raise MeasureError(
            "value", read=value, problem="is not a finite number", hint=f"give a number of {unit}"
        )
    factor = _factor(unit, to)
    return float(value) * factor if factor else _through_pint(float(value), unit, to)


@cache
def _factor(unit: str, to: str) -> float | None:
    """What to multiply by, or None between scales whose zeros differ.

    Kept, since asking pint takes a fifth of a millisecond each time.
    """
    return None if _through_pint(0.0, unit, to) else _through_pint(1.0, unit, to)


def _through_pint(value: float, unit: str, to: str) -> float:
    start, end = _unit(unit), _unit(to)
    try:
        return float(registry().Quantity(value, start).to(end).magnitude)
    except _pint().DimensionalityError:
        raise MeasureError(
            "unit",
            read=to,
            problem=f"does not measure the same thing as {unit}",
            hint=f'type a unit of the same kind as "{unit}"',
        ) from None


def _unit(name: str) -> pint.Unit:
    try:
        return registry().Unit(name)
    # What pint raises for a text that names no unit depends on the text.
    except Exception as error:
        raise MeasureError(
            "unit",
            read=name,
            problem="is not a unit that the workbook knows",
            hint='type for example "board_foot", "degF" or "ft**2"',
        ) from error


def is_quantity(value: object) -> bool:
    """Whether a value is a pint quantity, of whatever registry, without importing pint."""
    return hasattr(value, "magnitude") and hasattr(value, "units")


def quantity_value(quantity: Any, kind: Kind) -> float:
    """The value of a pint quantity in the kind's own unit, else a ReadingError.

    The unit goes by its name, so that a quantity of another registry can be read. The name's
    format is given, since that registry may have been told to print short names.
    """
    magnitude = quantity.magnitude
    try:
        if isinstance(magnitude, (bool, str)) or getattr(magnitude, "shape", None):
            raise TypeError
        number, name = float(magnitude), format(quantity.units, "D")
    except (TypeError, ValueError, OverflowError):
        raise ReadingError("does not hold one plain number") from None
    try:
        if kind.quantity_names and name not in kind.quantity_names:
            raise ReadingError(f"is not {kind.noun}")
        # Its long names are words that people type too; the door's own units are exact.
        if unit := kind.find(name.replace("_", " ")):
            return unit.own(number)
        return float(registry().Quantity(number, name).to(kind.quantity_unit).magnitude)
    except _pint().UndefinedUnitError:
        raise ReadingError("has a unit that the workbook does not know") from None
    except _pint().PintError:
        raise ReadingError(f"is not {kind.noun}") from None
