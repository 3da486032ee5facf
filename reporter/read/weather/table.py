"""The wanted columns of a table of text."""

import csv
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

from reporter.read.weather.raw import LeftOut
from reporter.read.weather.recognise import Found, is_heading, plain_headings, split_line
from reporter.schema.weather_files.form import Key, WeatherColumn
from reporter.schema.weather_files.limits import ERRONEOUS

_WRONG_COUNT = "with more or fewer columns than the headings"
_FIRST_SHOWN = 60  # letters of a line that was left out
_SIGN = 8  # letters by which lines are looked at that may be headings again


@dataclass(slots=True)
class Table:
    """The columns of a file as they grow, block by block: files joined end to end bring their headings along.

    columns, headings, units and lines are those of RawWeather; wrong: numbers of lines of another width.
    """

    columns: dict[Key, list[str]] = field(default_factory=dict)
    headings: dict[Key, str] = field(default_factory=dict)
    units: dict[Key, str] = field(default_factory=dict)
    lines: list[int] = field(default_factory=list)
    wrong: list[int] = field(default_factory=list)


def read_table(lines: list[str], found: Found) -> Table:
    """Read the table below its headings."""
    table = Table()
    starts = [found.line, *_further_headings(lines, found)]
    for start, end in zip(starts, [*starts[1:], len(lines)], strict=True):
        headings = found.headings if start < 0 else split_line(lines[start], found.delimiter)
        wanted = list(_wanted(found, headings))
        first = start + 1
        if found.format.units_row and first < end:
            first += _note_units(table, wanted, split_line(lines[first], found.delimiter))
        _add(table, found, headings, wanted, _filled(lines, first, end), lines)
    return table


def left_out(table: Table, lines: list[str]) -> tuple[LeftOut, ...]:
    """Return the lines that have another number of columns than the headings."""
    if not table.wrong:
        return ()
    return (LeftOut(_WRONG_COUNT, table.wrong, lines[table.wrong[0] - 1].strip()[:_FIRST_SHOWN]),)


Wanted = list[tuple[WeatherColumn, list[int]]]


def _add(
    table: Table, found: Found, headings: list[str], wanted: Wanted, numbers: list[int], lines: list[str]
) -> None:
    """Add a block's lines; those of another width than the headings are left out."""
    places = [place for _, own in wanted for place in own]
    rows = _rows([lines[number - 1] for number in numbers], found.delimiter, len(headings), places)
    before = len(table.lines)
    table.lines += [number for number, row in zip(numbers, rows, strict=True) if row]
    table.wrong += [number for number, row in zip(numbers, rows, strict=True) if not row]
    cells = iter(zip(*filter(None, rows), strict=True))
    for column, own in wanted:
        pieces = [list(map(str.strip, next(cells, ()))) for _ in own]
        table.headings.setdefault(column.key, headings[own[0]].strip())
        table.columns.setdefault(column.key, [""] * before).extend(_texts(pieces, column))
    for filled in table.columns.values():
        filled += [""] * (len(table.lines) - len(filled))


def _further_headings(lines: list[str], found: Found) -> list[int]:
    if found.line < 0:
        return []
    sign = lines[found.line][:_SIGN]
    alike = [i for i in range(found.line + 1, len(lines)) if lines[i].startswith(sign)]
    return [
        i
        for i in alike
        if is_heading(set(plain_headings(split_line(lines[i], found.delimiter))), found.format)
    ]


def _note_units(table: Table, wanted: Wanted, units: list[str]) -> bool:
    """Note the units below the headings; whether that line is one of units: its first cell is empty."""
    if not units or units[0].strip():
        return False
    for column, places in wanted:
        if places[0] < len(units):
            table.units.setdefault(column.key, units[places[0]].strip())
    return True


def _wanted(found: Found, headings: list[str]) -> Iterator[tuple[WeatherColumn, list[int]]]:
    """Yield each column that is read with the places of its headings; of two for one thing, the first."""
    plain = {heading: place for place, heading in reversed(list(enumerate(plain_headings(headings))))}
    taken: set[Key] = set()
    for column in found.format.columns:
        places = [plain[heading] for heading in column.headings if heading in plain]
        if places and column.key not in taken:
            taken.add(column.key)
            yield column, places if column.key == "cloud" else places[:1]


def _filled(lines: list[str], first: int, end: int) -> list[int]:
    """Return the numbers, from 1, of lines that are neither blank nor a remark (#)."""
    return [i + 1 for i in range(first, end) if (line := lines[i]) and line[0] != "#" and not line.isspace()]


def _rows(lines: list[str], delimiter: str, width: int, places: list[int]) -> list[tuple[str, ...]]:
    """Split lines and return the cells at some places, nothing for lines of another width.

    Where a stray quote would swallow the lines that follow it, they are split one by one.
    """
    try:
        rows = [_own(cells, width, places) for cells in _split(lines, delimiter)]
    except csv.Error:
        rows = []
    if len(rows) == len(lines):
        return rows
    return [_own(split_line(line, delimiter), width, places) for line in lines]


def _own(cells: list[str], width: int, places: list[int]) -> tuple[str, ...]:
    return tuple([cells[place] for place in places]) if len(cells) == width else ()


def _split(lines: list[str], delimiter: str) -> Iterable[list[str]]:
    if delimiter == " ":
        return map(str.split, lines)
    if any('"' in line for line in lines):
        return csv.reader(lines, delimiter=delimiter)
    return (line.split(delimiter) for line in lines)


def _texts(pieces: list[list[str]], column: WeatherColumn) -> list[str]:
    """Return one text a line: of several columns joined, of a cell with parts the one that is wanted."""
    if len(pieces) > 1:
        return list(map(" ".join, zip(*pieces, strict=True)))
    if column.part < 0:
        return pieces[0]
    found = {text: _piece(text, column) for text in set(pieces[0])}
    return [found[text] for text in pieces[0]]


def _piece(text: str, column: WeatherColumn) -> str:
    """Return the wanted piece of a cell; what the archive marks as wrong keeps its mark, and is no number."""
    pieces = [piece.strip() for piece in text.split(",")]
    wanted = pieces[column.part] if column.part < len(pieces) else ""
    mark = pieces[column.quality] if 0 <= column.quality < len(pieces) else ""
    return f"{wanted} marked {mark}" if mark in ERRONEOUS else wanted
