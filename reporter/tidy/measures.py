"""Measures: numbers with a unit, as people type them, in the unit that is kept inside."""

import datetime as dt
import re
from typing import Literal

from reporter.read.raw import CellValue
from reporter.schema.units import Quantity, System, Unit, find_unit
from reporter.tidy.numbers import LONGEST, NOT_A_NUMBER, DecimalMark, number_in_text, read_number, with_point
from reporter.tidy.words import NotRead, plain, shown

WeightPoint = Literal["pounds", "ounces"] | None

_BEHIND = re.compile(r"(.*?[\d.])\s*([^\d.,\s][^\d]*)")
_POUNDS_OUNCES = re.compile(
    r"(\d+)\s*(?:-|lbs?\.?|pounds?|#)\s*-?\s*(\d+(?:\.\d+| \d+/\d+)?)\s*(?:oz\.?|ounces?)?", re.IGNORECASE
)
_FEET_INCHES = re.compile(
    r"(\d+)\s*(?:ft\.?|feet|foot|'(?!'))\s*(?:(\d+(?:\.\d+| \d+/\d+)?)\s*(?:in\.?|inch(?:es)?|\"|'')?)?",
    re.IGNORECASE,
)
_HOURS_MINUTES = re.compile(
    r"(\d+)\s*(?::|h(?:ours?|rs?)?\.?)\s*(\d{1,2})(?::00|\s*m(?:in(?:ute)?s?)?\.?)?", re.IGNORECASE
)
_POINT_OUNCES = re.compile(r"(\d+)[.,](\d{1,2})")
_BARE_FRACTION = re.compile(r"\s*\d+\s*/\s*\d+\s*")
_WITH_UNIT: dict[Quantity, str] = {"weight": "Type it as 4 lb 8 oz.", "fish length": "Type it as 18 1/4 in."}
_OUNCES_STOP = NotRead("has 16 ounces or more", "Type pounds and ounces, the ounces below 16.")
_ONE_OR_TEN = NotRead("could end in 1 or in 10 ounces", "Type it as 4 lb 10 oz.")
_POUNDS_OR_FRACTION = NotRead("could be pounds and ounces or a fraction", "Type 4 lb 8 oz, or 0.5.")


def read_measure(value: CellValue, quantity: Quantity, unit: Unit, mark: DecimalMark) -> float | NotRead:
    """Read a measure from a cell into the unit kept inside; `unit` serves where the cell names none."""
    if isinstance(value, str) and len(value) > LONGEST:
        return NOT_A_NUMBER
    if quantity in ("hours", "minutes"):
        return _read_duration(value, quantity, unit, mark)
    if isinstance(value, str):
        if quantity == "weight" and _BARE_FRACTION.fullmatch(value):
            return _POUNDS_OR_FRACTION
        return _measure_in_text(plain(value), quantity, unit, mark)
    if isinstance(value, dt.date) and quantity in _WITH_UNIT:
        return NotRead("is a date: the spreadsheet changed what you typed", _WITH_UNIT[quantity])
    number = read_number(value, mark)
    return number if isinstance(number, NotRead) else unit.inside(number)


def length_system(value: CellValue, unit: Unit, mark: DecimalMark) -> System:
    """Return the system in which a fish was measured, from a readable length; `unit` as in `read_measure`."""
    text = with_point(plain(value), mark) if isinstance(value, str) else None
    if isinstance(text, str):
        if _FEET_INCHES.fullmatch(text):
            return "us"
        if typed := _BEHIND.fullmatch(text):
            unit = find_unit("fish length", typed[2]) or unit
    return "us" if unit.label == "in" else "metric"


def read_pounds_point_ounces(value: CellValue, unit: Unit, mark: DecimalMark) -> float | NotRead:
    """Read a weight whose point stands between pounds and ounces; all other forms as any weight."""
    text = plain(shown(value)) if isinstance(value, str | int | float) else ""
    typed = _POINT_OUNCES.fullmatch(text)
    if typed is None:
        return read_measure(value, "weight", unit, mark)
    if typed[2] == "1" and not isinstance(value, str):
        return _ONE_OR_TEN  # a number cell keeps no 0 at its end
    return read_measure(f"{typed[1]}-{typed[2]}", "weight", unit, mark)


def _measure_in_text(text: str, quantity: Quantity, unit: Unit, mark: DecimalMark) -> float | NotRead:
    pointed = with_point(text, mark)
    if isinstance(pointed, NotRead):
        return pointed
    if quantity == "weight" and (typed := _POUNDS_OUNCES.fullmatch(pointed)):
        ounces = number_in_text(typed[2], None)
        if isinstance(ounces, NotRead):
            return ounces
        return _OUNCES_STOP if ounces >= 16 else float(typed[1]) * 453.59237 + ounces * 28.349523125
    if quantity == "fish length" and (typed := _FEET_INCHES.fullmatch(pointed)):
        inches = number_in_text(typed[2] or "0", None)
        return inches if isinstance(inches, NotRead) else (float(typed[1]) * 12 + inches) * 25.4
    own = unit
    if typed := _BEHIND.fullmatch(pointed):
        named = find_unit(quantity, typed[2])
        if named is None:
            return NOT_A_NUMBER
        pointed, own = typed[1], named
    number = number_in_text(pointed, None)
    return number if isinstance(number, NotRead) else own.inside(number)


def _read_duration(value: CellValue, quantity: Quantity, unit: Unit, mark: DecimalMark) -> float | NotRead:
    """Read a duration; a clock-like cell or text means hours and minutes."""
    per_hour = 1.0 if quantity == "hours" else 60.0
    if isinstance(value, dt.time):
        return (value.hour + value.minute / 60 + value.second / 3600) * per_hour
    if isinstance(value, dt.timedelta):
        return value.total_seconds() / 3600 * per_hour
    if isinstance(value, str):
        text = plain(value)
        if (typed := _HOURS_MINUTES.fullmatch(text)) and int(typed[2]) < 60:
            return (int(typed[1]) + int(typed[2]) / 60) * per_hour
        return _measure_in_text(text, quantity, unit, mark)
    number = read_number(value, mark)
    return number if isinstance(number, NotRead) else unit.inside(number)
