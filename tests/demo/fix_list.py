"""The fix list of the season with mistakes as a guide would fill it in: the plain slips."""

import datetime as dt
from dataclasses import replace
from pathlib import Path

from reporter.books.blocks import Book, Cell, Table
from reporter.run.fix_list import fix_list_of
from reporter.run.season import read_season
from reporter.schema.fix_list import BLANK

CORRECTED: dict[tuple[str, str], Cell] = {
    ("Trips", "E64"): dt.time(19, 0),
    ("Trips", "C29"): "Lake Arden",
    ("Catch", "D265"): 2,
    ("Catch", "E6"): 16.5,
    ("Catch", "F268"): "1 lb 2 oz",
    ("Weather", "A139"): dt.datetime(2026, 7, 1),
    ("Season", "A26"): None,
}
"""What is typed, by cell of the log; None makes the cell blank."""


def filled_fix_list(log: Path) -> Book:
    """The fix list of a log, beside it, with these cells corrected; a cell without a line is a KeyError."""
    book = fix_list_of(read_season(log), log)
    main, *others = book.sheets
    lead, table = main.blocks
    assert isinstance(table, Table)
    wanted = {f"{sheet} {cell}": value for (sheet, cell), value in CORRECTED.items()}
    where = [str(cell).partition(",")[0] for cell in table.columns["where"]]
    typed = list(table.columns["corrected"])
    for place, value in wanted.items():
        typed[where.index(place)] = BLANK if value is None else value
    filled = replace(table, columns={**table.columns, "corrected": typed})
    return book._replace(sheets=(replace(main, blocks=(lead, filled)), *others))
