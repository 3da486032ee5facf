"""The proof of a patched copy: read through the one door, it holds the same cells but for those corrected."""

import datetime as dt
from collections.abc import Mapping
from pathlib import Path
from typing import Final

from reporter.read.door import open_log
from reporter.read.errors import Unreadable
from reporter.read.raw import Address, CellValue, RawSheet
from reporter.write.clean import without_controls
from reporter.write.patch.content import as_iso
from reporter.write.patch.errors import CannotPatch
from reporter.write.patch.workbook import Corrections

_NOT_THE_SAME: Final = "a copy of it did not read the same in its other cells"
_CLOSE_S: Final = 0.01  # moments are stored as parts of a day
_DAY_0: Final = dt.datetime(1899, 12, 30)


def prove(log: Path, copy: Path, corrections: Corrections) -> None:
    """Raise CannotPatch unless the copy reads as the log does, with the corrected cells as they shall be."""
    try:
        before, after = (open_log(path, corrections.__contains__) for path in (log, copy))
    except Unreadable as unreadable:
        raise CannotPatch("a copy of it could not be read again") from unreadable
    if (before.mark, before.unread) != (after.mark, after.unread) or len(before.sheets) != len(after.sheets):
        raise CannotPatch(_NOT_THE_SAME)
    for old, new in zip(before.sheets, after.sheets, strict=True):
        if not _same(old, new, corrections[old.name]):
            raise CannotPatch(_NOT_THE_SAME)


def _same(old: RawSheet, new: RawSheet, cells: Mapping[Address, CellValue]) -> bool:
    rows = {row for row, _ in cells}
    alike = (
        (old.name, old.merged, old.visible) == (new.name, new.merged, new.visible)
        and old.hidden_rows - rows == new.hidden_rows - rows
        and old.struck_rows - rows == new.struck_rows - rows
        and {at: text for at, text in old.errors.items() if at not in cells} == new.errors
        and old.uncalculated - cells.keys() == new.uncalculated
    )
    were, are = _values(old), _values(new)
    others = {at: value for at, value in were.items() if at not in cells}
    return (
        alike
        and others == {at: value for at, value in are.items() if at not in cells}
        and all(_is(are.get(at), value) for at, value in cells.items())
    )


def _values(sheet: RawSheet) -> dict[Address, CellValue]:
    return {
        (number, column): value
        for number, row in zip(sheet.numbers, sheet.rows, strict=True)
        for column, value in enumerate(row, start=1)
        if value is not None
    }


def _is(read: CellValue, wanted: CellValue) -> bool:
    """Whether a cell holds what it shall; a moment may stand there as text."""
    if isinstance(wanted, str):
        return read == without_controls(wanted)
    if isinstance(wanted, dt.date | dt.time | dt.timedelta):
        if isinstance(read, dt.date | dt.time | dt.timedelta):
            return abs(_seconds(read) - _seconds(wanted)) < _CLOSE_S
        return read == as_iso(wanted)
    return isinstance(read, bool) == isinstance(wanted, bool) and read == wanted


def _seconds(value: dt.date | dt.time | dt.timedelta) -> float:
    if isinstance(value, dt.timedelta):
        return value.total_seconds()
    if isinstance(value, dt.time):
        return (dt.datetime.combine(_DAY_0, value) - _DAY_0).total_seconds()
    moment = value if isinstance(value, dt.datetime) else dt.datetime.combine(value, dt.time())
    return (moment - _DAY_0).total_seconds()
