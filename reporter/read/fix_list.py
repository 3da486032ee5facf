"""A filled-in fix list: which cells of which log shall hold which values."""

from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import NamedTuple

from reporter.read.door import open_log
from reporter.read.errors import Unreadable
from reporter.read.raw import CellValue, RawSheet
from reporter.schema import fix_list as words
from reporter.schema.a1 import address, row_and_column

_SHEETS = frozenset({words.SHEET, words.PLACES_SHEET})
_HEADINGS = (words.NUMBER, words.WHERE, words.CORRECTED)
_PLACE_HEADINGS = (words.NUMBER, words.WHERE, words.PLACE_SHEET, words.PLACE_CELL)

_LAST_ROW, _LAST_COLUMN = 1_048_576, 16_384  # of a worksheet


class Correction(NamedTuple):
    """A corrected value: line of the list, worksheet and cell of the log, value; None makes it blank."""

    line: int
    sheet: str
    cell: str
    value: CellValue


class FilledIn(NamedTuple):
    """A fix list as filled in.

    log_name, sha256: of the log that it was made of. refused: a sentence for every line that cannot be
    understood.
    """

    log_name: str
    sha256: str
    corrections: list[Correction]
    refused: list[str]


class _Line(NamedTuple):
    """A row of a table of ours, by heading, and the address of its corrected value."""

    cells: Mapping[str, CellValue]
    row: int


def read_fix_list(path: Path) -> FilledIn:
    """Read a filled-in fix list; Unreadable, one sentence, where the file is none of ours."""
    book = open_log(path, _SHEETS.__contains__)
    sheets = {sheet.name: sheet for sheet in book.sheets}
    if book.mark != "fix list" or not sheets.keys() >= _SHEETS:
        raise Unreadable(
            f"I cannot use {path.name}: it is not a fix list that reporter wrote; "
            "make one with --fix-list, fill it in, and save it as an .xlsx workbook."
        )
    main, places_sheet = sheets[words.SHEET], sheets[words.PLACES_SHEET]
    known = {_whole(line.cells[words.NUMBER]): line.cells for line in _table(places_sheet, _PLACE_HEADINGS)}
    lines = list(_table(main, _HEADINGS))
    if not known or not lines:
        raise Unreadable(f"I cannot use {path.name}: its headings have been changed; make a new list.")
    corrections: list[Correction] = []
    refused: list[str] = []
    for line, at in _filled(main, lines):
        made = _understood(main, line, at, known)
        if isinstance(made, Correction):
            corrections.append(made)
        elif made:
            refused.append(made)
    return FilledIn(
        _said(places_sheet, words.LOG_NAME), _said(places_sheet, words.LOG_FINGERPRINT), corrections, refused
    )


def _table(sheet: RawSheet, headings: tuple[str, ...]) -> Iterator[_Line]:
    """Go through the rows below the row that has all these headings; nothing where there is none."""
    index = next((i for i, row in enumerate(sheet.rows) if set(headings) <= set(row)), None)
    if index is None:
        return
    at = {heading: sheet.rows[index].index(heading) for heading in headings}
    for number, row in zip(sheet.numbers[index + 1 :], sheet.rows[index + 1 :], strict=True):
        cells = {heading: row[place] if place < len(row) else None for heading, place in at.items()}
        yield _Line(cells, number)


def _filled(sheet: RawSheet, lines: list[_Line]) -> Iterator[tuple[_Line, tuple[int, int]]]:
    """Go through the lines with something in their corrected value, be it an error or a formula."""
    head = next(row for row in sheet.rows if set(_HEADINGS) <= set(row))
    column = head.index(words.CORRECTED) + 1
    for line in lines:
        at = (line.row, column)
        if line.cells[words.CORRECTED] is not None or at in sheet.errors or at in sheet.uncalculated:
            yield line, at


def _understood(
    sheet: RawSheet,
    line: _Line,
    at: tuple[int, int],
    known: Mapping[int, Mapping[str, CellValue]],
) -> Correction | str:
    """Return the correction of a line, nothing where it has none, or a sentence why it cannot be taken."""
    where, value = address(*at), line.cells[words.CORRECTED]
    number = _whole(line.cells[words.NUMBER])
    place = known.get(number)
    if place is None or place[words.WHERE] != line.cells[words.WHERE] or _spoilt(place[words.PLACE_CELL]):
        return f"{where} of the list: what says where it belongs has been changed; clear it."
    cell, own_sheet = place[words.PLACE_CELL], place[words.PLACE_SHEET]
    if not isinstance(cell, str) or not isinstance(own_sheet, str):
        if value == words.NO_PLACE:
            return ""
        return f"Line {number} ({place[words.WHERE]}) can only be mended in the log itself; clear {where}."
    if at in sheet.errors:
        return f"Line {number}: {where} of the list shows {sheet.errors[at]}; type the value in."
    if at in sheet.uncalculated:
        return f"Line {number}: {where} of the list is a formula without a result; type the value in."
    blank = isinstance(value, str) and value.strip().casefold() == words.BLANK
    return Correction(number, own_sheet, address(*row_and_column(cell)), None if blank else value)


def _spoilt(cell: CellValue) -> bool:
    """Whether the cell of a place has been changed into something that is none."""
    try:
        row, column = row_and_column(str(cell)) if cell is not None else (1, 1)
    except ValueError:
        return True
    return row > _LAST_ROW or column > _LAST_COLUMN


def _whole(value: CellValue) -> int:
    """Return a line's number; 0, which no line has, where it is none."""
    is_number = isinstance(value, int | float) and not isinstance(value, bool)
    return int(value) if is_number and value == int(value) else 0  # type: ignore[arg-type]


def _said(sheet: RawSheet, label: str) -> str:
    """Return what stands beside a label."""
    for row in sheet.rows:
        given = [value for value in row if value is not None]
        if len(given) > 1 and given[0] == label:
            return str(given[1])
    return ""
