"""The engine for .xlsx and .xlsm: values by openpyxl, errors and unanswered formulas by address."""

import warnings
import zipfile
from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING, BinaryIO, cast

from reporter.read.cells import AS_THEY_ARE, CellError, Texts, settled_value
from reporter.read.comments import find_comments
from reporter.read.errors import SAVE_AGAIN, Refused
from reporter.read.limits import (
    MAX_AREA,
    MAX_CELLS,
    MAX_COLUMNS,
    MAX_MERGES,
    MAX_SHEETS,
    MAX_VALUES,
    too_much,
)
from reporter.read.look import look_at
from reporter.read.marks import Marks, find_marks
from reporter.read.package import SheetPart, check_parts, sheets_in
from reporter.read.raw import Address, CellValue, RawSheet
from reporter.read.scan import Scan, scan_sheet
from reporter.read.struck import find_struck_rows, struck_styles

if TYPE_CHECKING:
    from openpyxl.workbook import Workbook


def read_xlsx(
    archive: zipfile.ZipFile, file: BinaryIO, wanted: Callable[[str], bool]
) -> tuple[list[RawSheet], list[str]]:
    """Read the wanted worksheets; with them the names of the others, each in the workbook's order.

    ``archive`` is ``file`` opened as an archive. Refused, or almost any exception of the libraries beneath,
    where the file cannot be read.
    """
    look_at(archive)
    worksheets = [sheet for sheet in sheets_in(archive) if sheet.kind == "worksheet"]
    if len(worksheets) > MAX_SHEETS:
        raise too_much(f"{MAX_SHEETS:,} sheets")
    check_parts(archive, worksheets)
    asked = [sheet for sheet in worksheets if wanted(sheet.name)]
    scans = [scan_sheet(archive, sheet) for sheet in asked]
    _check_size(scans)
    struck = struck_styles(archive)
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # openpyxl names features it does not keep; nothing is written here
        book = _open_values(file, {sheet.name for sheet in asked})
        sheets = [_read(archive, book, sheet, scan, struck) for sheet, scan in zip(asked, scans, strict=True)]
        book.close()
    return sheets, [sheet.name for sheet in worksheets if sheet not in asked]


def _check_size(scans: list[Scan]) -> None:
    if sum(scan.values + scan.inline for scan in scans) > MAX_VALUES:
        raise too_much(f"{MAX_VALUES:,} filled cells")
    if sum(scan.cells for scan in scans) > MAX_CELLS:
        raise too_much(f"{MAX_CELLS:,} cells, blank or not")
    if sum(len(scan.merged) for scan in scans) > MAX_MERGES:
        raise too_much(f"{MAX_MERGES:,} merged cells")


def _open_values(file: BinaryIO, names: set[str]) -> "Workbook":
    """Open the sheets of these names with results in place of formulas, their rows still unread.

    Only the steps that values depend on are taken: broken print areas, document properties, themes, links to
    other files, charts and sheets that nobody asked for must not keep a guide from his rows.
    """
    from openpyxl.reader.excel import ExcelReader
    from openpyxl.styles.stylesheet import apply_stylesheet

    reader = ExcelReader(file, read_only=True, data_only=True, keep_links=False)
    reader.read_manifest()
    reader.read_strings()
    reader.read_workbook()
    apply_stylesheet(reader.archive, reader.wb)
    reader.parser.sheets = [sheet for sheet in reader.parser.sheets if sheet.name in names]
    reader.read_worksheets()
    return reader.wb


def _read(
    archive: zipfile.ZipFile, book: "Workbook", sheet: SheetPart, scan: Scan, struck: frozenset[str]
) -> RawSheet:
    marks = Marks()
    rows = _Rows(marks)
    crossed: set[int] = set()
    try:
        if struck:
            with archive.open(sheet.part) as part:
                crossed = find_struck_rows(part, struck)
        if scan.formulas or scan.errors:
            with archive.open(sheet.part) as part:
                rows = _Rows(marks := find_marks(part))
        worksheet = book[sheet.name]
        worksheet.reset_dimensions()  # the stored extent can be wrong, and rows beyond it would be dropped
        values = worksheet.iter_rows(values_only=True)
        rows.take(cast("Iterable[tuple[CellValue, ...]]", values))  # the others of its kinds are formulas
    except (Refused, MemoryError):
        raise
    except Exception as error:  # a damaged part can fail at any depth of the libraries
        where = f"its sheet “{sheet.name}” is damaged below row {rows.last}"
        raise Refused(f"{where}; {SAVE_AGAIN}") from error
    # Two independent counts: a cell stored out of its order would be passed over without a word.
    if not max(scan.values, scan.inline) <= rows.found <= scan.values + scan.inline:
        raise Refused(f"the cells of its sheet “{sheet.name}” are not stored in order; {SAVE_AGAIN}")
    return RawSheet(
        name=sheet.name,
        numbers=rows.numbers,
        rows=rows.rows,
        errors=rows.errors,
        uncalculated=frozenset(marks.uncalculated),
        merged=tuple(sorted(scan.merged)),
        hidden_rows=frozenset(scan.hidden_rows).intersection(rows.numbers),
        visible=sheet.visible,
        struck_rows=frozenset(crossed).intersection(rows.numbers),
        commented=find_comments(archive, sheet.part),
    )


class _Rows:
    """Gathers the rows that hold something."""

    def __init__(self, marks: Marks) -> None:
        self.numbers: list[int] = []
        self.rows: list[tuple[CellValue, ...]] = []
        self.errors: dict[Address, str] = dict(marks.errors)
        self.found = 0  # stored values met, before blank-looking text is dropped
        self.last = 0
        self._area = 0
        self._texts = Texts()
        self._marked: dict[int, list[int]] = {}  # row -> columns with a mark
        for row, column in (*marks.errors, *marks.uncalculated):
            self._marked.setdefault(row, []).append(column)

    def take(self, rows: Iterable[tuple[CellValue, ...]]) -> None:
        for number, row in enumerate(rows, start=1):
            if row:
                self._take_row(number, row)

    def _take_row(self, number: int, row: tuple[CellValue, ...]) -> None:
        self._area += len(row)
        if len(row) > MAX_COLUMNS:
            raise too_much(f"{MAX_COLUMNS:,} columns")
        if self._area > MAX_AREA:
            raise too_much(f"{MAX_AREA:,} cells, blank ones before a row's last counted")
        self.found += len(row) - row.count(None)
        self.last = number
        values = self._settled(number, row)
        marked = self._marked.get(number, ())
        for column in marked:
            values[column - 1] = None
        end, least = len(values), max(marked, default=0)
        while end > least and values[end - 1] is None:
            end -= 1
        if end:
            self.numbers.append(number)
            self.rows.append(tuple(values[:end]))

    def _settled(self, number: int, row: tuple[CellValue, ...]) -> list[CellValue]:
        texts = self._texts
        values: list[CellValue] = [
            texts[value]
            if type(value) is str
            else value
            if type(value) in AS_THEY_ARE
            else settled_value(value)
            for value in row
        ]
        if CellError in map(type, values):
            for column, value in enumerate(values, start=1):
                if isinstance(value, CellError):
                    self.errors.setdefault((number, column), str(value))
                    self._marked.setdefault(number, []).append(column)
        return values
