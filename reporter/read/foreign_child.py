"""Reads a workbook of another format from standard input and prints its cells: the inside of a child process.

The library that reads these formats can ask for all memory at once or end the process it runs in; here that
is the end of a child, and of no report. `python -m reporter.read.foreign_child` prints one line of JSON a
sheet: name, visible and rows, from cell A1 on; a moment is ["kind", "as ISO 8601 or seconds"].
"""

import datetime as dt
import io
import json
import sys
from typing import Any

MOST_MEMORY = 2 << 30  # bytes of addresses: a file of 10 kB can ask for 500 GB


def main() -> None:
    """Read standard input, write standard output."""
    _limit_memory()
    from python_calamine import CalamineWorkbook, SheetTypeEnum, SheetVisibleEnum

    book = CalamineWorkbook.from_filelike(io.BytesIO(sys.stdin.buffer.read()))
    for sheet in book.sheets_metadata:
        if sheet.typ is not SheetTypeEnum.WorkSheet:
            continue
        rows = book.get_sheet_by_name(sheet.name).to_python(skip_empty_area=False)
        found = {
            "name": sheet.name,
            "visible": sheet.visible is SheetVisibleEnum.Visible,
            "rows": [[_plain(cell) for cell in row] for row in rows],
        }
        sys.stdout.write(json.dumps(found, ensure_ascii=True) + "\n")


def _limit_memory() -> None:
    """Bound the addresses of this process where the system can."""
    try:
        import resource
    except ImportError:
        return
    resource.setrlimit(resource.RLIMIT_AS, (MOST_MEMORY, MOST_MEMORY))


def _plain(cell: Any) -> Any:
    if cell == "":
        return None
    if isinstance(cell, dt.datetime):
        return ["datetime", cell.isoformat()]
    if isinstance(cell, dt.date):
        return ["datetime", dt.datetime.combine(cell, dt.time()).isoformat()]
    if isinstance(cell, dt.time):
        return ["time", cell.isoformat()]
    if isinstance(cell, dt.timedelta):
        return ["timedelta", cell.total_seconds()]
    return cell


if __name__ == "__main__":
    main()
