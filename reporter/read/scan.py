"""One cheap pass over a worksheet's bytes: how much it holds, and whether it needs a closer look.

Whole tags are found by their spelling, not by a parser, which costs a tenth of reading the sheet. What is
counted here is compared with what the reader finds, so that no cell can be lost between the two.
"""

import re
import zipfile
from dataclasses import dataclass, field

from reporter.read.errors import SAVE_AGAIN, Refused
from reporter.read.limits import MAX_ROWS, too_much
from reporter.read.package import SheetPart
from reporter.schema.a1 import corners

_PIECE = 1 << 20
_LONGEST_TAG = 4 << 20  # from one tag to the next: a cell's text has at most 32,767 characters
_ROOT = re.compile(rb"<((?:[\w.-]+:)?)worksheet[\s>]")
_NUMBER = re.compile(rb"""\br\s*=\s*["'](\d+)["']""")
_HIDDEN = re.compile(rb"""\bhidden\s*=\s*["'](?:1|true)["']""")
_REFERENCE = re.compile(rb"""\bref\s*=\s*["']([^"']+)["']""")


@dataclass(slots=True)
class Scan:
    """What a pass found in one worksheet."""

    cells: int = 0  # with or without a value
    values: int = 0  # cells with a stored value
    inline: int = 0  # cells with their own text; a few programs write both into one cell
    formulas: bool = False
    errors: bool = False
    last_row: int = 0
    hidden_rows: list[int] = field(default_factory=list)
    merged: list[tuple[int, int, int, int]] = field(default_factory=list)


class _Scanner:
    """Scans pieces that each end just before a tag, so that a tag is never cut."""

    def __init__(self, prefix: bytes) -> None:
        self.scan = Scan()
        name = re.escape(prefix)
        self._cell = b"<" + prefix + b"c"  # a few other tags start so too; limits are not that exact
        self._value = b"<" + prefix + b"v>"
        self._value_end = b"</" + prefix + b"v>"
        self._inline = b"<" + prefix + b"is"
        self._formula = re.compile(b"<" + name + rb"f[\s/>]")
        self._row = re.compile(b"<" + name + rb"""row(?: r="(\d+)")?((?:\s[^>]*)?)/?>""")
        self._merge = re.compile(b"<" + name + rb"mergeCell\s[^>]*>")

    def take(self, piece: bytes) -> None:
        scan = self.scan
        scan.cells += piece.count(self._cell)
        empty = piece.count(self._value + b"<") + piece.endswith(self._value)
        scan.values += piece.count(self._value_end) - empty
        scan.inline += piece.count(self._inline)
        scan.formulas = scan.formulas or self._formula.search(piece) is not None
        scan.errors = scan.errors or b't="e"' in piece
        self._take_rows(piece)
        if b"mergeCell" in piece:
            references = (_REFERENCE.search(tag) for tag in self._merge.findall(piece))
            scan.merged += [corners(found[1].decode()) for found in references if found]

    def _take_rows(self, piece: bytes) -> None:
        scan = self.scan
        for first, attributes in self._row.findall(piece):
            number = int(first) if first else self._number(attributes)
            if number > MAX_ROWS:
                raise too_much(f"{MAX_ROWS:,} rows")
            if number <= scan.last_row:
                raise Refused(f"the rows of a sheet are not stored in order; {SAVE_AGAIN}")
            scan.last_row = number
            if b"hidden" in attributes and _HIDDEN.search(attributes):
                scan.hidden_rows.append(number)

    def _number(self, attributes: bytes) -> int:
        """Return the number of a row that does not begin with it."""
        found = _NUMBER.search(attributes)
        return int(found[1]) if found else self.scan.last_row + 1


def scan_sheet(archive: zipfile.ZipFile, sheet: SheetPart) -> Scan:
    """Scan a worksheet; Refused if it is not laid out as one."""
    with archive.open(sheet.part) as stream:
        data = stream.read(_PIECE)
        root = _ROOT.search(data)
        if root is None:
            raise Refused(f"its sheet “{sheet.name}” is damaged; {SAVE_AGAIN}")
        scanner = _Scanner(root[1])
        while more := stream.read(_PIECE):
            cut = data.rfind(b"<")
            scanner.take(data[:cut])
            data = data[cut:] + more
            if len(data) > _LONGEST_TAG + _PIECE:
                raise Refused(f"its sheet “{sheet.name}” is damaged; {SAVE_AGAIN}")
        scanner.take(data)
    return scanner.scan
