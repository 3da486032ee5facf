"""Cells far away or without a value must cost little: measured in a process of its own."""

import subprocess
import sys
import zipfile
from collections.abc import Callable, Iterator
from pathlib import Path

import openpyxl
import pytest

MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
TABLE = [["Trip", "Landed"], [1, 4], [2, 0]]

# VmHWM counts from the start of this program; ru_maxrss would count the test runner that started it.
MEASURED = """
import re, sys, time
from pathlib import Path
from reporter.read.door import open_log
start = time.process_time()
(sheet,) = open_log(Path(sys.argv[1]), lambda _: True).sheets
took = time.process_time() - start
mib = int(re.search(r"VmHWM:\\s*(\\d+)", Path("/proc/self/status").read_text())[1]) / 2**10
print(took, mib, len(sheet.rows), sheet.numbers[-1], len(sheet.rows[-1]))
"""


def _measured(path: Path) -> tuple[float, float, int, int, int]:
    if not Path("/proc/self/status").exists():
        pytest.skip("peak memory is read from /proc, which this system has not")
    run = subprocess.run([sys.executable, "-c", MEASURED, path], capture_output=True, text=True, check=True)
    took, mib, rows, last, width = run.stdout.split()
    return float(took), float(mib), int(rows), int(last), int(width)


def _with_sheet(source: Path, target: Path, pieces: Iterator[str]) -> Path:
    with zipfile.ZipFile(source) as old, zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED) as new:
        for entry in old.namelist():
            if entry != "xl/worksheets/sheet1.xml":
                new.writestr(entry, old.read(entry))
        with new.open("xl/worksheets/sheet1.xml", "w") as part:
            for piece in pieces:
                part.write(piece.encode())
    return target


@pytest.fixture
def ghost(tmp_path: Path) -> Callable[[int, str], Path]:
    """A table of three rows above so many rows of blank formatted cells."""

    def make(rows: int, cells: str) -> Path:
        openpyxl.Workbook().save(tmp_path / "plain.xlsx")

        def pieces() -> Iterator[str]:
            yield f'<worksheet xmlns="{MAIN}"><sheetData>'
            for number, row in enumerate(TABLE, start=1):
                kinds = ["str" if isinstance(value, str) else "n" for value in row]
                values = zip("AB", kinds, row, strict=True)
                yield (
                    f'<row r="{number}">'
                    + "".join(
                        f'<c r="{letter}{number}" t="{kind}"><v>{value}</v></c>'
                        for letter, kind, value in values
                    )
                    + "</row>"
                )
            for number in range(4, 4 + rows):
                blank = "".join(f'<c r="{letter}{number}" s="0"/>' for letter in cells)
                yield f'<row r="{number}">{blank}</row>'
            yield "</sheetData></worksheet>"

        return _with_sheet(tmp_path / "plain.xlsx", tmp_path / "ghost.xlsx", pieces())

    return make


@pytest.mark.parametrize("value", [" ", "x"])
@pytest.mark.parametrize("cell", ["L1048576", "XFD1048576"])
def test_a_single_cell_at_the_far_end_costs_nothing(cell: str, value: str, tmp_path: Path) -> None:
    book = openpyxl.Workbook()
    for row in TABLE:
        book.active.append(row)
    book.active[cell] = value
    book.save(tmp_path / "log.xlsx")
    took, mib, rows, last, width = _measured(tmp_path / "log.xlsx")
    if value == " ":
        assert (rows, last, width) == (3, 3, 2)
    else:
        assert (rows, last, width) == (4, 1048576, 16384 if "XFD" in cell else 12)
    assert took < 5
    assert mib < 200


def test_rows_of_blank_formatted_cells_leave_no_trace_and_take_bounded_time(
    ghost: Callable[[int, str], Path],
) -> None:
    took, mib, rows, last, _ = _measured(ghost(200_000, "ABC"))
    assert (rows, last) == (3, 3)
    assert took < 15
    assert mib < 300
