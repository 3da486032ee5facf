"""What the cells of a worksheet must hold to: their order, their kinds, their values."""

import math
import re
from collections.abc import Iterator
from xml.etree import ElementTree as ET

from tests.programs.package import MAIN, Package
from tests.programs.places import box
from tests.programs.rules_book import STYLES

_LONGEST_TEXT, _LONGEST_FORMULA = 32_767, 8_192
_TALLEST, _WIDEST = 409.5, 255.0
_PAST_THE_CALENDAR = 2_958_466  # 1 January 10000
_KINDS = {"n", "s", "str", "b"}  # no error values, no text in place
_DATED = re.compile(r"[dmyhs]", re.IGNORECASE)
_LITERAL = re.compile(r'"[^"]*"|\\.|\[[^\]]*\]')
_BUILT_IN_DATES = {*range(14, 23), *range(45, 48)}


def cells(package: Package) -> Iterator[str]:
    """Say which rows and cells are out of order, and which values no program takes."""
    formats = _dated(package)
    for sheet, part in package.sheets.items():
        last_row = 0
        for row in package.tree(part).iterfind(f"{MAIN}sheetData/{MAIN}row"):
            number = int(row.attrib["r"])
            if number <= last_row:
                yield f"{sheet}: row {number} after row {last_row}"
            last_row = number
            if float(row.get("ht", 0)) > _TALLEST:
                yield f"{sheet}: row {number} is {row.attrib['ht']} tall"
            yield from (f"{sheet}!{said}" for said in _cells_of(row, number, package, formats))


def _cells_of(row: ET.Element, number: int, package: Package, formats: list[bool]) -> Iterator[str]:
    last = 0
    for cell in row:
        address = cell.attrib["r"]
        place = box(address)
        if place is None or place.top != number or place.left <= last:
            yield f"{address}: out of order"
        else:
            last = place.left
        style = int(cell.get("s", 0))
        if style >= len(formats):
            yield f"{address}: no format {style}"
        elif said := _fault(cell, package, dated=formats[style]):
            yield f"{address}: {said}"


def _fault(cell: ET.Element, package: Package, *, dated: bool) -> str:
    kind, value, formula = cell.get("t", "n"), cell.find(f"{MAIN}v"), cell.find(f"{MAIN}f")
    text = "" if value is None else value.text or ""
    if kind not in _KINDS:
        return f"of the kind {kind}"
    if formula is not None and not 0 < len(formula.text or "") <= _LONGEST_FORMULA:
        return "a formula too long, or none"
    if kind == "s":
        return "" if text.isdigit() and int(text) < len(package.strings) else f"no shared text {text}"
    if kind == "str":
        return "" if formula is not None else "text without a formula"
    if kind == "b":
        return "" if text in ("0", "1") else f"neither true nor false: {text}"
    return _number_fault(text, dated=dated)


def _number_fault(text: str, *, dated: bool) -> str:
    if not text:
        return ""
    try:
        number = float(text)
    except ValueError:
        return f"no number: {text}"
    if not math.isfinite(number):
        return f"no number: {text}"
    return f"no date: {text}" if dated and not 0 <= number < _PAST_THE_CALENDAR else ""


def _dated(package: Package) -> list[bool]:
    """Say of each format of cells whether it shows a number as a date or a time."""
    tree = package.tree(STYLES)
    dates = {
        int(one.attrib["numFmtId"])
        for one in tree.iter(f"{MAIN}numFmt")
        if _DATED.search(_LITERAL.sub("", one.attrib["formatCode"]))
    } | _BUILT_IN_DATES
    return [int(form.attrib["numFmtId"]) in dates for form in tree.iterfind(f"{MAIN}cellXfs/{MAIN}xf")]


def texts(package: Package) -> Iterator[str]:
    """Say which shared texts are longer than a cell holds."""
    for number, text in enumerate(package.strings):
        if len(text.encode("utf-16-le")) // 2 > _LONGEST_TEXT:
            yield f"shared text {number}: {len(text)} characters"


def columns(package: Package) -> Iterator[str]:
    """Say which columns are too wide, or described twice or out of order."""
    for sheet, part in package.sheets.items():
        last = 0
        for column in package.tree(part).iterfind(f"{MAIN}cols/{MAIN}col"):
            if int(column.attrib["min"]) <= last or float(column.attrib["width"]) > _WIDEST:
                yield f"{sheet}: the column {column.attrib}"
            last = int(column.attrib["max"])


RULES = (cells, texts, columns)
