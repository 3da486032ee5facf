"""Reads a workbook of another format from standard input and prints its cells: the inside of a child process.

The library that reads these formats can ask for all memory at once, take for ever or end the process it runs
in; here that is the end of a child, and of no report. `python -m reporter.read.foreign_child` prints one line
of JSON a sheet: name, visible, and of each row that holds something its number and its cells from column A
on; a moment is ["kind", "as ISO 8601 or seconds"]. Exit REPEATED where a few cells stand for far too many.
"""

import datetime as dt
import io
import json
import sys
from typing import Any

# Bytes of addresses: a file of 10 kB can ask for 500 GB. A sheet takes some 80 for each cell of the rectangle
# that holds its values, so that six columns may reach to the last row of all; 100,000 fish take 300 MiB.
MOST_MEMORY = 768 << 20
SMALL_FILE_S = 4  # of the processor's time; with it, for each MiB of the file:
MIB_S = 4  # a log of 100,000 fish has 4 MiB and takes two in all
FEW_VALUES = 100_000  # so many may come from any file; beyond, so many for each of its bytes:
VALUES_A_BYTE = 8  # 100,000 fish saved as .ods have 0.6, and one value repeated has a thousand
REPEATED = 9

_MIB = 1 << 20


def main() -> None:
    """Read standard input, write standard output."""
    data = sys.stdin.buffer.read()
    _limit(SMALL_FILE_S + MIB_S * len(data) // _MIB)
    from python_calamine import CalamineWorkbook, SheetTypeEnum, SheetVisibleEnum

    values = 0
    book = CalamineWorkbook.from_filelike(io.BytesIO(data))
    for sheet in book.sheets_metadata:
        if sheet.typ is not SheetTypeEnum.WorkSheet:
            continue
        rows = book.get_sheet_by_name(sheet.name).to_python(skip_empty_area=False)
        values += sum(len(row) - row.count("") for row in rows)
        if values > max(FEW_VALUES, VALUES_A_BYTE * len(data)):
            sys.exit(REPEATED)
        said = {
            "name": sheet.name,
            "visible": sheet.visible is SheetVisibleEnum.Visible,
            "rows": [
                (number, [_plain(cell) for cell in row])
                for number, row in enumerate(rows, start=1)
                if row.count("") < len(row)
            ],
        }
        sys.stdout.write(json.dumps(said, ensure_ascii=True) + "\n")


def _limit(seconds: int) -> None:
    """Bound the addresses and the time of this process where the system can."""
    try:
        import resource
    except ImportError:
        return
    resource.setrlimit(resource.RLIMIT_AS, (MOST_MEMORY, MOST_MEMORY))
    resource.setrlimit(resource.RLIMIT_CPU, (seconds, seconds + 1))


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
