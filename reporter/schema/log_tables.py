"""The tables that keep what was typed: one a sheet of the log, and one of the headings above it.

No other table holds every column: what nothing is computed from, as notes, permits or fees, is here.
"""

import re

from reporter.schema.column import Column, Sheet
from reporter.schema.csv_table import CsvField, CsvTable
from reporter.schema.log import SHEETS

_BETWEEN_WORDS = re.compile(r"[^a-z0-9]+")


def typed_name(column: Column) -> str:
    """Return the name of a column as typed: its heading's words, for its values are in the log's own unit."""
    return _BETWEEN_WORDS.sub("_", column.heading.lower()).strip("_")


def typed_table(sheet: Sheet) -> str:
    """Return the name of a sheet's table."""
    return f"log_{sheet.key}"


def _table(sheet: Sheet) -> CsvTable:
    row = CsvField("row", "integer", "Row of the sheet in the log.")
    typed = (CsvField(typed_name(each), "string", f"{each.heading}, as typed.") for each in sheet.columns)
    return CsvTable(
        typed_table(sheet),
        f"a row of {sheet.name} as it stands in the log, used or not; private, as the log is",
        (row, *typed),
    )


LOG_COLUMNS = CsvTable(
    "log_columns",
    "a column of the log that is read",
    (
        CsvField("sheet", "string", "Sheet of the log."),
        CsvField("name", "string", "Name of the column in the sheet's log table."),
        CsvField("heading", "string", "Heading as typed, with its unit."),
        CsvField("column", "string", "Letters of the column."),
    ),
)

LOG_TABLES: tuple[CsvTable, ...] = (LOG_COLUMNS, *(_table(sheet) for sheet in SHEETS))
