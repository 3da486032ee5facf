"""The engine for .xlsx and .xlsm: plain worksheets by the quick way, all others by openpyxl.

The other way also finds errors and unanswered formulas by address, which plain worksheets have not.
"""

import warnings
import zipfile
from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING, BinaryIO, cast

from reporter.read.comments import find_comments
from reporter.read.errors import SAVE_AGAIN, Refused
from reporter.read.limits import MAX_CELLS, MAX_MERGES, MAX_SHEETS, MAX_VALUES, too_much
from reporter.read.look import look_at
from reporter.read.marks import Marks, find_marks
from reporter.read.package import SheetPart, check_parts, sheets_in
from reporter.read.quick import quick_rows
from reporter.read.raw import CellValue, RawSheet
from reporter.read.rows import MarkedRows, Rows
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
    scans = {sheet.part: scan_sheet(archive, sheet) for sheet in asked}
    _check_size(scans.values())
    struck = struck_styles(archive)
    found = quick_rows(archive, asked, scans)
    if others := [sheet for sheet in asked if sheet.part not in found]:
        found |= _full_rows(archive, file, others, scans)
    sheets = [_raw(archive, sheet, scans[sheet.part], found[sheet.part], struck) for sheet in asked]
    return sheets, [sheet.name for sheet in worksheets if sheet not in asked]


def _check_size(scans: Iterable[Scan]) -> None:
    scans = list(scans)
    if sum(scan.values + scan.inline for scan in scans) > MAX_VALUES:
        raise too_much(f"{MAX_VALUES:,} filled cells")
    if sum(scan.cells for scan in scans) > MAX_CELLS:
        raise too_much(f"{MAX_CELLS:,} cells, blank or not")
    if sum(len(scan.merged) for scan in scans) > MAX_MERGES:
        raise too_much(f"{MAX_MERGES:,} merged cells")


def _full_rows(
    archive: zipfile.ZipFile, file: BinaryIO, sheets: list[SheetPart], scans: dict[str, Scan]
) -> dict[str, Rows]:
    """Read worksheets by openpyxl, each by its part."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # openpyxl names features it does not keep; nothing is written here
        book = _open_values(file, {sheet.name for sheet in sheets})
        rows = {sheet.part: _rows(archive, book, sheet, scans[sheet.part]) for sheet in sheets}
        book.close()
    return rows


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


def _rows(archive: zipfile.ZipFile, book: "Workbook", sheet: SheetPart, scan: Scan) -> Rows:
    rows = MarkedRows(Marks())
    try:
        if scan.formulas or scan.errors:
            with archive.open(sheet.part) as part:
                rows = MarkedRows(find_marks(part))
        worksheet = book[sheet.name]
        worksheet.reset_dimensions()  # the stored extent can be wrong, and rows beyond it would be dropped
        values = worksheet.iter_rows(values_only=True)
        rows.take(cast("Iterable[tuple[CellValue, ...]]", values))  # the others of its kinds are formulas
    except (Refused, MemoryError):
        raise
    except Exception as error:  # a damaged part can fail at any depth of the libraries
        raise _damaged(sheet, rows.last) from error
    return rows


def _damaged(sheet: SheetPart, row: int) -> Refused:
    return Refused(f"its sheet “{sheet.name}” is damaged below row {row}; {SAVE_AGAIN}")


def _raw(
    archive: zipfile.ZipFile, sheet: SheetPart, scan: Scan, rows: Rows, struck: frozenset[str]
) -> RawSheet:
    # Two independent counts: a cell stored out of its order would be passed over without a word.
    if not max(scan.values, scan.inline) <= rows.found <= scan.values + scan.inline:
        raise Refused(f"the cells of its sheet “{sheet.name}” are not stored in order; {SAVE_AGAIN}")
    return RawSheet(
        name=sheet.name,
        numbers=rows.numbers,
        rows=rows.rows,
        errors=rows.errors,
        uncalculated=rows.uncalculated,
        merged=tuple(sorted(scan.merged)),
        hidden_rows=frozenset(scan.hidden_rows).intersection(rows.numbers),
        visible=sheet.visible,
        struck_rows=_struck_rows(archive, sheet, struck).intersection(rows.numbers),
        commented=find_comments(archive, sheet.part),
    )


def _struck_rows(archive: zipfile.ZipFile, sheet: SheetPart, struck: frozenset[str]) -> frozenset[int]:
    if not struck:
        return frozenset()
    try:
        with archive.open(sheet.part) as part:
            return frozenset(find_struck_rows(part, struck))
    except Exception as error:  # such as an address that is none
        raise _damaged(sheet, 0) from error
