"""What a cell stores for a value: the type and the XML inside its tags, and the kind of number format."""

import datetime as dt
import re
from typing import Final, Literal, NamedTuple
from xml.sax.saxutils import escape

from reporter.read.raw import CellValue
from reporter.write.clean import without_controls

Form = Literal["any", "number", "date", "moment", "time", "duration"]
"""What the number format of the cell must show for its value to be read again as what it is."""

_DAY: Final = dt.timedelta(days=1)
_LIKE_AN_ESCAPE = re.compile(r"_(?=x[0-9A-Fa-f]{4}_)")
_NOT_ASCII = re.compile(r"[^\x00-\x7f]")
_FIRST_SERIAL: Final = 61  # 1 March 1900: the calendar of spreadsheets has a 29 February before it


class Content(NamedTuple):
    """What a cell stores: its type (`t`), the XML inside, and the form that its number format must have."""

    type: str | None
    inside: bytes
    form: Form


def content_of(value: CellValue, first_day: dt.datetime) -> Content:
    """Return what a cell stores for a value; None leaves it blank.

    first_day: day 0 of the workbook's date system. A day that no spreadsheet counts rightly becomes text.
    """
    if value is None:
        return Content(None, b"", "any")
    if isinstance(value, str):
        return _text(value)
    if isinstance(value, bool):
        return Content("b", b"<v>%d</v>" % value, "any")
    if isinstance(value, int | float):
        return _number(value, "number")
    if isinstance(value, dt.timedelta):
        return _number(value / _DAY, "duration")
    if isinstance(value, dt.time):
        return _number((dt.datetime.combine(dt.date.min, value) - dt.datetime.min) / _DAY, "time")
    return _day(value, first_day)


def first_day_of(date_1904: bool) -> dt.datetime:
    """Return day 0 of a date system."""
    return dt.datetime(1904, 1, 1) if date_1904 else dt.datetime(1899, 12, 30)


def as_iso(value: CellValue) -> CellValue:
    """Return a day or a clock time as the text that reads the same everywhere; any other value as it is."""
    if isinstance(value, dt.datetime):
        return value.isoformat(" ", "minutes") if value.time() != dt.time() else value.date().isoformat()
    if isinstance(value, dt.date | dt.time):
        return value.isoformat() if isinstance(value, dt.date) else value.isoformat("minutes")
    return value


def _day(value: dt.date, first_day: dt.datetime) -> Content:
    moment = value if isinstance(value, dt.datetime) else dt.datetime.combine(value, dt.time())
    serial = (moment - first_day) / _DAY
    if serial < _FIRST_SERIAL:
        return _text(str(as_iso(moment)))
    return _number(serial, "moment" if moment.time() != dt.time() else "date")


def _number(value: float, form: Form) -> Content:
    shown = str(value) if isinstance(value, int) else f"{value:.17g}"
    return Content(None, f"<v>{shown}</v>".encode("ascii"), form)


def _text(text: str) -> Content:
    """Write text inside the cell itself, in ASCII, so that it does not depend on the part's code."""
    safe = _LIKE_AN_ESCAPE.sub("_x005F_", without_controls(text))
    inside = _NOT_ASCII.sub(lambda found: f"&#{ord(found[0])};", escape(safe))
    return Content("inlineStr", f'<is><t xml:space="preserve">{inside}</t></is>'.encode("ascii"), "any")
