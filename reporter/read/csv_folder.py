"""The engine for a folder of .csv files, each named after its sheet: text as it stands, one row a record."""

import csv
import hashlib
import io
from collections.abc import Callable
from itertools import islice
from pathlib import Path

from reporter.read.cells import settled_row, visible_text
from reporter.read.errors import COPY_AGAIN, Refused
from reporter.read.limits import (
    MAX_AREA,
    MAX_COLUMNS,
    MAX_ROWS,
    MAX_SHEETS,
    MAX_VALUES,
    MIB,
    ONE_SEASON,
    too_much,
)
from reporter.read.raw import Address, CellValue, RawSheet

MAX_BYTES = (
    32 * MIB
)  # of all files: 100,000 fish take 10 MB, and a letter in memory up to four times its room

_LONGEST_LINE = 1 << 16  # letters of the first line: enough to tell its sign
_DELIMITERS = ",;\t"  # in this order where two would do
_MARKED = ((b"\xef\xbb\xbf", "utf-8-sig"), (b"\xff\xfe", "utf-16"), (b"\xfe\xff", "utf-16"))


def read_folder(folder: Path, wanted: Callable[[str], bool]) -> tuple[list[RawSheet], list[str], str]:
    """Read the wanted files of a folder; with them the names of the others, and the SHA-256 of all of them.

    Refused, or an OSError, where one cannot be read.
    """
    files = sorted(islice(filter(_is_csv, folder.iterdir()), MAX_SHEETS + 1), key=lambda path: path.name)
    if len(files) > MAX_SHEETS:
        raise too_much(f"{MAX_SHEETS:,} files", ONE_SEASON)
    if sum(path.stat().st_size for path in files) > MAX_BYTES:
        raise too_much(f"{MAX_BYTES // MIB} MiB", ONE_SEASON)
    whole = hashlib.sha256()
    sheets: list[RawSheet] = []
    unread: list[str] = []
    for path in files:
        data = path.read_bytes()
        whole.update(path.name.encode() + b"\0" + data)
        if wanted(path.stem):
            sheets.append(_sheet(path, data))
        else:
            unread.append(path.stem)
    return sheets, unread, whole.hexdigest()


def _is_csv(path: Path) -> bool:
    return path.suffix.casefold() == ".csv" and path.is_file() and not path.name.startswith((".", "~"))


def _sheet(path: Path, data: bytes) -> RawSheet:
    text = _decoded(path, data)
    numbers: list[int] = []
    rows: list[tuple[CellValue, ...]] = []
    errors: dict[Address, str] = {}
    values = area = number = 0
    try:
        for number, record in enumerate(csv.reader(_lines(text), delimiter=_delimiter(text)), start=1):
            if number > MAX_ROWS or len(record) > MAX_COLUMNS:
                raise too_much(f"{MAX_ROWS:,} rows or {MAX_COLUMNS:,} columns in its {path.name}", ONE_SEASON)
            cells = settled_row(map(visible_text, record), number, errors)
            if cells:
                numbers.append(number)
                rows.append(cells)
            values += len(cells) - cells.count(None)
            area += len(cells)
            if values > MAX_VALUES:
                raise too_much(f"{MAX_VALUES:,} filled cells in its {path.name}", ONE_SEASON)
            if area > MAX_AREA:
                raise too_much(f"{MAX_AREA:,} cells in its {path.name}, blank or not", ONE_SEASON)
    except csv.Error as error:
        raise Refused(f"its {path.name} is damaged below row {number}; {COPY_AGAIN}") from error
    return RawSheet(path.stem, numbers, rows, errors, frozenset(), (), frozenset(), True)


def _decoded(path: Path, data: bytes) -> str:
    """Return the text of a file: by its mark, else UTF-8, else Windows-1252."""
    marked = next((code for mark, code in _MARKED if data.startswith(mark)), "")
    if not marked and b"\0" in data:
        raise Refused(f"its {path.name} is no text; {COPY_AGAIN}")
    for code in (marked,) if marked else ("utf-8", "cp1252"):
        try:
            return data.decode(code)
        except UnicodeDecodeError:
            continue
    raise Refused(
        f"its {path.name} is in a character code that I do not know; save it as UTF-8 and try again"
    )


def _lines(text: str) -> io.StringIO:
    """Return the lines of a text with their ends, of whichever of the three kinds."""
    return io.StringIO(text, newline="")


def _delimiter(text: str) -> str:
    """Return the sign that parts the first line that holds anything into most cells."""
    starts = (line[:_LONGEST_LINE] for line in _lines(text))
    line = next((line for line in starts if line.strip(_DELIMITERS + ' "\r\n')), "")
    parts = {sign: len(next(csv.reader([line], delimiter=sign), [])) for sign in _DELIMITERS}
    return max(_DELIMITERS, key=lambda sign: parts[sign])
