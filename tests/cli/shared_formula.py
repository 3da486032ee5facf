"""A log with a formula that the cell below shares, as spreadsheet programs store one that was filled down."""

import re
import zipfile
from pathlib import Path

import openpyxl


def with_shared_formula(log: Path, sheet: str, cell: str) -> Path:
    """Make the number in a cell the result of a shared formula."""
    number = openpyxl.load_workbook(log).sheetnames.index(sheet) + 1
    part = f"xl/worksheets/sheet{number}.xml"
    with zipfile.ZipFile(log) as archive:
        parts = {name: archive.read(name) for name in archive.namelist()}
    formula = rb'<c r="%s"><f t="shared" ref="%s:Z99" si="0">1+1</f>' % (cell.encode(), cell.encode())
    parts[part], found = re.subn(rb'<c r="%s"[^>]*>' % cell.encode(), formula, parts[part])
    assert found == 1
    with zipfile.ZipFile(log, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, content in parts.items():
            archive.writestr(name, content)
    return log
