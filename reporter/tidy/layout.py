"""Where each column of the log stands in a workbook: sheet by sheet, heading by heading.

Everything above reads cells only through a Layout, so that a workbook with other names needs another
Layout and nothing else. This one is found by the schema's own headings.
"""

from collections.abc import Container, Iterable

from reporter.read.raw import CellValue, RawBook, RawSheet
from reporter.schema.a1 import address
from reporter.schema.column import Column, Sheet
from reporter.schema.log import SHEETS, TEXT_SHEETS, find_sheet, folded
from reporter.schema.problems import Problem, problem
from reporter.tidy.headings import heading_key, match_heading
from reporter.tidy.near import nearest
from reporter.tidy.places import Layout, Placed, SheetLayout
from reporter.tidy.second_table import side_table
from reporter.tidy.words import plain

_HEADING_SEARCH_ROWS = 40
_TEXT_SHEETS = frozenset(folded(name) for name in TEXT_SHEETS)


def wanted_sheet(name: str) -> bool:
    """Whether a worksheet of that name is a sheet of the log."""
    return find_sheet(name) is not None


def find_layout(book: RawBook) -> tuple[Layout, list[Problem]]:
    """Find each sheet and column of the log by its name; what is missing, doubled or unknown is said."""
    layout: Layout = {}
    problems = [problem("sheet_not_read", name) for name in unread_sheets(book)]
    if book.blind:
        problems.append(problem("format_blind", "Workbook", value=book.blind))
    for raw in book.sheets:
        sheet = find_sheet(raw.name)
        if sheet is None or not raw.rows:
            continue
        if sheet.key in layout:
            first = layout[sheet.key].name
            problems.append(problem("sheet_twice", sheet.name, first=first, second=raw.name))
            continue
        layout[sheet.key], found = _place(raw, sheet)
        problems += found
    return layout, [*_missing_sheets(book, layout), *problems]


def unread_sheets(book: RawBook) -> list[str]:
    """Return the worksheets that are not read; those of a blank log that hold text are not meant to be."""
    return [name for name in book.unread if folded(name) not in _TEXT_SHEETS]


def _missing_sheets(book: RawBook, layout: Layout) -> list[Problem]:
    others = unread_sheets(book)
    hint = f" I found {_listed(others)}." if others else ""
    empty = {sheet.key for raw in book.sheets if (sheet := find_sheet(raw.name))} - set(layout)
    return [
        problem("no_headings", sheet.name)
        if sheet.key in empty
        else problem("sheet_missing", sheet.name, hint=hint)
        for sheet in SHEETS
        if sheet.required and sheet.key not in layout
    ]


def _place(raw: RawSheet, sheet: Sheet) -> tuple[SheetLayout, list[Problem]]:
    index = _heading_index(raw, sheet)
    row = raw.numbers[index]
    columns: dict[str, Placed] = {}
    unknown: list[tuple[int, str]] = []
    doubled: list[Problem] = []
    for position, cell in enumerate(raw.rows[index]):
        if cell is None:
            continue
        heading = plain(str(cell))
        column, unit = match_heading(heading, sheet)
        if column is None:
            unknown.append((position, heading))
        elif column.key not in columns:
            columns[column.key] = Placed(position, heading, unit)
        elif _holds_values(raw, index, position):
            earlier = columns[column.key]
            if _holds_values(raw, index, earlier.position):
                doubled.append(_twice(sheet, column, row, earlier, Placed(position, heading)))
            else:
                columns[column.key] = Placed(position, heading, unit)
    placed = SheetLayout(raw.name, row, columns)
    missing = _missing_columns(sheet, columns, [heading for _, heading in unknown])
    tables = _second_table(raw, index, placed, doubled, sheet)
    return placed, [*missing, *tables, *_not_read(raw, index, sheet, unknown, columns)]


def _second_table(
    raw: RawSheet, index: int, placed: SheetLayout, doubled: list[Problem], sheet: Sheet
) -> list[Problem]:
    """Stop at a second table beside the first: one problem, however many of its headings are there twice."""
    if len(doubled) == 1:
        return doubled
    if doubled:
        first = doubled[0]
        why = f"'{first.value}' and {len(doubled) - 1} more of its headings are there already"
        return [_table_at(sheet, placed.heading_row, first.cell, first.value, why)]
    read = {column.position for column in placed.columns.values()}
    begin = side_table(raw.rows[index], raw.rows[index + 1 :], read)
    if begin is None:
        return []
    heading = plain(str(raw.rows[index][begin]))
    why = "an empty column stands before it, and its rows end elsewhere"
    return [_table_at(sheet, placed.heading_row, address(placed.heading_row, begin + 1), heading, why)]


def _table_at(sheet: Sheet, row: int, cell: str, heading: str, why: str) -> Problem:
    letters = cell.rstrip("0123456789")
    return problem("second_table", sheet.name, row=row, cell=cell, value=heading, letters=letters, why=why)


def _heading_index(raw: RawSheet, sheet: Sheet) -> int:
    """Return the index of the row with the most headings that are known; the first of several."""

    def known(row: Iterable[CellValue]) -> int:
        found = {heading_key(plain(cell), sheet.key) for cell in row if isinstance(cell, str)}
        return len(found - {""})

    counts = [known(row) for row in raw.rows[:_HEADING_SEARCH_ROWS]]
    return counts.index(max(counts))


def _holds_values(raw: RawSheet, index: int, position: int) -> bool:
    return any(position < len(row) and row[position] is not None for row in raw.rows[index + 1 :])


def _twice(sheet: Sheet, column: Column, row: int, first: Placed, second: Placed) -> Problem:
    return problem(
        "column_twice",
        sheet.name,
        row=row,
        cell=address(row, second.position + 1),
        heading=column.heading,
        value=second.heading,
        first=first.heading,
        second=second.heading,
        first_cell=address(row, first.position + 1),
        second_cell=address(row, second.position + 1),
    )


def missing_headings(sheet: Sheet, columns: Container[str]) -> list[str]:
    """Return the headings of what the sheet needs and the columns that are there (by key) do not give."""
    missing = [
        column.heading for column in sheet.columns if column.required is True and column.key not in columns
    ]
    if sheet.one_of and not any(all(key in columns for key in group) for group in sheet.one_of):
        missing.append(
            " or ".join(" + ".join(sheet.column(key).heading for key in group) for group in sheet.one_of)
        )
    return missing


def _missing_columns(sheet: Sheet, columns: dict[str, Placed], others: list[str]) -> list[Problem]:
    """Return a stop for every column that the sheet needs and the headings lack."""
    found = f" I found {_listed(others)}: is one of them it?" if others else ""
    missing = missing_headings(sheet, columns)
    near = {heading: nearest(heading, others) for heading in missing}
    return [
        problem(
            "column_missing",
            sheet.name,
            heading=heading,
            value=heading,
            hint=f" I found '{near[heading]}': is that it?" if near[heading] else found,
        )
        for heading in missing
    ]


def _not_read(
    raw: RawSheet, index: int, sheet: Sheet, unknown: list[tuple[int, str]], columns: dict[str, Placed]
) -> list[Problem]:
    row = raw.numbers[index]
    free = [column.heading for column in sheet.columns if column.key not in columns]
    problems = [
        problem(
            "column_not_read",
            sheet.name,
            row=row,
            cell=address(row, position + 1),
            value=heading,
            hint=f" Did you mean '{near}'?" if (near := nearest(heading.partition("(")[0], free)) else "",
        )
        for position, heading in unknown
    ]
    headed = {position for position, cell in enumerate(raw.rows[index]) if cell is not None}
    loose = [
        (number, position)
        for number, cells in zip(raw.numbers[index + 1 :], raw.rows[index + 1 :], strict=True)
        for position, cell in enumerate(cells)
        if cell is not None and position not in headed
    ]
    if loose:
        first = address(loose[0][0], loose[0][1] + 1)
        problems.append(problem("beyond_headings", sheet.name, cell=first, count=len(loose)))
    return problems


def _listed(names: list[str], most: int = 3) -> str:
    quoted = [f"'{name}'" for name in names[:most]]
    return ", ".join(quoted) + (" and others" if len(names) > most else "")
