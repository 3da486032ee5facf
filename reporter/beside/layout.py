"""The layout of a log that is not ours, kept beside it as "NAME layout.xlsx"."""

import textwrap
from pathlib import Path
from typing import NamedTuple

from reporter.beside.tables import TableRow, table_under
from reporter.files.layouts import layout_path
from reporter.files.mark import read_mark
from reporter.read.door import open_log
from reporter.read.errors import Unreadable
from reporter.read.raw import CellValue, RawBook, RawSheet
from reporter.schema.a1 import row_and_column
from reporter.schema.fix_list import MENDED
from reporter.schema.log import folded
from reporter.schema.own_layout import NOT_READ, ROW_IS, meanings
from reporter.schema.own_layout_book import (
    ANSWER,
    COLUMNS,
    COLUMNS_SHEET,
    EVERY_ROW,
    LAYOUT_SHEET,
    QUESTION,
    QUESTIONS,
    WORKSHEETS,
    YES,
)
from reporter.tidy.layout import wanted_sheet
from reporter.tidy.own.model import OwnColumn, OwnLayout, OwnSheet
from reporter.tidy.words import plain, shown

_MOST_HEADING_ROWS = 10
_HEADING_ROWS = {str(number): number for number in range(1, _MOST_HEADING_ROWS + 1)}
_LONGEST_SHOWN = 40  # letters of something typed that a sentence shows
_YES = frozenset({folded(YES), "y"})


def layout_beside(log: Path) -> OwnLayout | None:
    """Read the confirmed layout of a log; None where it has none.

    Unreadable, one sentence, where it is not confirmed yet, cannot be read or contradicts itself.
    """
    path = next((path for path in layouts_of(log) if read_mark(path) == "layout"), None)
    if path is None:
        return None
    book = open_log(path, lambda name: name in (LAYOUT_SHEET, COLUMNS_SHEET) or wanted_sheet(name))
    return _Reader(log, book).layout()


def layouts_of(log: Path) -> list[Path]:
    """Return where a log's layout may be: a mended copy is read by that of the log it was made from."""
    found = [layout_path(log)]
    copied = log.stem
    while copied.endswith(MENDED):
        copied = copied.removesuffix(MENDED)
        found.append(layout_path(log.with_name(f"{copied}{log.suffix}")))
    return found


class _Reader(NamedTuple):
    log: Path
    book: RawBook

    def layout(self) -> OwnLayout:
        front, columns = self._sheet(LAYOUT_SHEET), self._sheet(COLUMNS_SHEET)
        answers = {
            folded(row.text(QUESTION)): row.value(ANSWER) for row in table_under(front, (QUESTION, ANSWER))
        }
        given = {key: answers.get(folded(question)) for key, question in QUESTIONS.items()}
        if folded(plain(shown(given["use"]))) not in _YES:
            raise self._refused(
                f"is not confirmed yet; look through it, answer '{QUESTIONS['use']}' with {YES}, and save it"
            )
        sheets = tuple(self._own_sheets(front))
        read = {sheet.name for sheet in sheets}
        return OwnLayout(
            self.book.name,
            sheets,
            tuple(column for column in self._own_columns(columns) if column.sheet in read),
            folded(plain(shown(given["evenly"]))) in _YES,
            {
                sheet: {
                    key: given[key] for key, of in EVERY_ROW.items() if of == sheet and given[key] is not None
                }
                for sheet in EVERY_ROW.values()
            },
            tuple(raw for raw in self.book.sheets if raw.name not in (LAYOUT_SHEET, COLUMNS_SHEET)),
        )

    def _sheet(self, name: str) -> RawSheet:
        found = next((raw for raw in self.book.sheets if raw.name == name and raw.rows), None)
        if found is None:
            raise self._refused(f"has no sheet '{name}' any more; delete it and adopt the log again")
        return found

    def _refused(self, why: str) -> Unreadable:
        return Unreadable(f"I cannot read {self.log.name}: its layout {self.book.name} {why}.")

    def _wrong(self, sheet: str, row: TableRow, value: CellValue, what: str) -> Unreadable:
        said = textwrap.shorten(shown(value), _LONGEST_SHOWN, placeholder=" ...")
        return self._refused(f"says '{said}' on {sheet} row {row.number}, which {what}")

    def _own_sheets(self, front: RawSheet) -> list[OwnSheet]:
        kinds = {folded(label): key for key, label in ROW_IS.items()} | {folded(NOT_READ): "", "": ""}
        sheets: list[OwnSheet] = []
        for row in table_under(front, tuple(WORKSHEETS.values())[:3]):
            row_is = kinds.get(folded(row.text(WORKSHEETS["row_is"])))
            if row_is is None:
                said = row.value(WORKSHEETS["row_is"])
                raise self._wrong(LAYOUT_SHEET, row, said, "is none of the kinds of row that it offers")
            name = row.typed(WORKSHEETS["worksheet"])
            if row_is and any(sheet.name == name for sheet in sheets):
                raise self._wrong(LAYOUT_SHEET, row, name, "is there already; delete one of the two rows")
            if row_is:
                sheets.append(OwnSheet(name, self._heading_rows(row), row_is))
        if not sheets:
            raise self._refused("reads no worksheet; say on it what one row of your worksheets is")
        return sheets

    def _heading_rows(self, row: TableRow) -> int:
        value = row.value(WORKSHEETS["heading_rows"])
        number = 1 if value is None else _HEADING_ROWS.get(shown(value), 0)
        if not number:
            raise self._wrong(
                LAYOUT_SHEET, row, value, f"is no number of heading rows (1 to {_MOST_HEADING_ROWS})"
            )
        return number

    def _own_columns(self, sheet: RawSheet) -> list[OwnColumn]:
        known = {folded(label): meant for label, meant in meanings().items()}
        known |= {folded(NOT_READ): ("", ""), "": ("", "")}
        columns: list[OwnColumn] = []
        taken: dict[tuple[str, str, str, str], int] = {}
        for row in table_under(sheet, tuple(COLUMNS.values())[:3]):
            meant = known.get(folded(row.text(COLUMNS["means"])))
            if meant is None:
                said = row.value(COLUMNS["means"])
                raise self._wrong(COLUMNS_SHEET, row, said, "is no meaning that the drop-down offers")
            group = row.text(COLUMNS["group"])
            where = row.typed(COLUMNS["worksheet"])
            first = taken.setdefault((where, *meant, folded(group)), row.number)
            if meant[0] and first != row.number:
                again = f"rows {first} and {row.number} of {COLUMNS_SHEET} mean the same"
                raise self._refused(
                    f"gives one meaning twice: {again}; change one, or set them apart by Group"
                )
            columns.append(
                OwnColumn(
                    where,
                    self._position(row),
                    row.text(COLUMNS["heading"]),
                    *meant,
                    group=group,
                    unit=row.text(COLUMNS["unit"]),
                )
            )
        return columns

    def _position(self, row: TableRow) -> int:
        letters = row.text(COLUMNS["column"])
        try:
            return row_and_column(f"{letters.upper()}1")[1] - 1
        except ValueError:
            what = "is no letter of a column"
            raise self._wrong(COLUMNS_SHEET, row, row.value(COLUMNS["column"]), what) from None
