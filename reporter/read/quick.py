"""Values of a worksheet that is laid out plainly, as the common programs lay out a log: the quick way.

No library: what openpyxl gives, in a fifth of its time and without importing it. Nothing is guessed. The
tags around the cells go through an XML parser. What stands behind a cell's address must match one strict
pattern, whole; each such ending is looked at once, for a log says the same few things on every row. A sheet
with anything else in it, a formula or an error for one, is Uncommon: it is left to openpyxl. What openpyxl
parses beside the values (panes, filters, fonts, names) is not looked at here and need not be sound.
"""

import re
import zipfile
from collections.abc import Iterable, Mapping
from typing import IO
from xml.parsers import expat

from reporter.read.endings import Endings, Uncommon
from reporter.read.errors import Refused
from reporter.read.moments import moment_styles
from reporter.read.package import MAIN, SheetPart, begins_with, counts_from_1904
from reporter.read.rows import Rows
from reporter.read.scan import Scan
from reporter.read.shapes import Shapes
from reporter.read.shared_texts import shared_texts

_PIECE = 1 << 20
_LONGEST = 4 << 20  # of a row, and of all that follows the rows

_BEGIN, _END, _ROW_END, _CELL_START = b"<sheetData>", b"</sheetData>", "</row>", '<c r="'
_BLANK_ROWS = r"(?:<row [^<>]*+(?<=/)>)*+"
_ROW = re.compile(rf'{_BLANK_ROWS}<row r="([1-9][0-9]*)"(?: [^<>]*+(?<!/))?>')
_REST = re.compile(_BLANK_ROWS)
_ANY_ROW = re.compile(rb"<(?:[^\s<>/]+:)?row[\s/>]")


def quick_rows(
    archive: zipfile.ZipFile, sheets: Iterable[SheetPart], scans: Mapping[str, Scan]
) -> dict[str, Rows]:
    """Read those worksheets that are laid out plainly, by their parts; Refused where one reaches too far.

    Call it only after the look at the archive.
    """
    endings, shapes = _endings(archive), Shapes()
    found: dict[str, Rows] = {}
    for sheet in sheets:
        if endings is not None and not scans[sheet.part].formulas and not scans[sheet.part].errors:
            rows = _QuickRows(endings, shapes)
            if _is_read(rows, archive, sheet.part):
                found[sheet.part] = rows
    return found


def _is_read(rows: "_QuickRows", archive: zipfile.ZipFile, part: str) -> bool:
    try:
        with archive.open(part) as opened:
            rows.read(opened)
    except (Refused, MemoryError):
        raise
    except Exception:  # whatever is uncommon or broken, the other way has its word for it
        return False
    return True


def _endings(archive: zipfile.ZipFile) -> Endings | None:
    try:
        if counts_from_1904(archive):
            return None
        return Endings(shared_texts(archive), moment_styles(archive))
    except (Refused, MemoryError):
        raise
    except Exception:  # as above
        return None


class _QuickRows(Rows):
    """Rows of a worksheet that is laid out plainly; else Uncommon, or another exception, at whatever row."""

    def __init__(self, endings: Endings, shapes: Shapes) -> None:
        super().__init__()
        self._endings = endings
        self._shapes = shapes
        # Of the tags around the cells.
        self._outline = expat.ParserCreate(namespace_separator=" ")

    def read(self, part: IO[bytes]) -> None:
        """Read an open worksheet part to its end."""
        data = part.read(_PIECE)
        if not begins_with(data, b"<worksheet "):
            raise Uncommon("another beginning")
        if _BEGIN not in data:  # no rows, or a long way to them
            return self._check_tail(data + part.read(_LONGEST), part)
        head, begin, data = data.partition(_BEGIN)
        self._check_head(head + begin)
        while _END not in data:
            cut = data.rfind(b"</row>") + len(_ROW_END) if b"</row>" in data else 0
            self._take(data[:cut].decode())
            more = part.read(_PIECE)
            if not more or len(data) - cut > _LONGEST:
                raise Uncommon("rows without end")
            data = data[cut:] + more
        rows, end, tail = data.partition(_END)
        self._take(rows.decode())
        return self._check_tail(end + tail + part.read(_LONGEST), part)

    def _check_head(self, head: bytes) -> None:
        """Take everything up to the rows, which must begin just there."""
        path: list[str] = []
        self._outline.StartElementHandler = lambda tag, _: path.append(tag)
        self._outline.EndElementHandler = lambda _: path.pop()
        self._outline.Parse(head)
        self._outline.StartElementHandler = self._outline.EndElementHandler = None
        if path != [f"{MAIN} worksheet", f"{MAIN} sheetData"]:
            raise Uncommon("rows elsewhere")

    def _check_tail(self, tail: bytes, part: IO[bytes]) -> None:
        """Take everything behind the rows, which must not hold any."""
        if part.read(1) or _ANY_ROW.search(tail):
            raise Uncommon("rows elsewhere")
        self._outline.Parse(tail, True)

    def _take(self, text: str) -> None:
        """Take whole rows."""
        endings, shapes = self._endings, self._shapes
        *rows, rest = text.split(_ROW_END)
        tags: list[str] = []
        for row in rows:
            tag, *cells = row.split(_CELL_START)
            found = _ROW.fullmatch(tag)
            if found is None:
                raise Uncommon(tag)
            tags.append(tag)
            if cells:
                number = found[1]
                behind = f'{number}"'
                letters, _, ends = zip(*[cell.partition(behind) for cell in cells], strict=True)
                values = [endings[end] for end in ends]
                blank = values.count(None)
                if endings.unseen:
                    blank -= sum(map(endings.unseen.__contains__, ends))
                values.append(None)
                spread = shapes[letters](values)
                self.reach(int(number), len(spread), len(ends) - blank)
                self.add(int(number), spread)
        outline = _ROW_END.join([*tags, rest])
        if not _REST.fullmatch(rest) or "xmlns" in outline:
            raise Uncommon("something stands between the rows")
        self._outline.Parse(outline)
