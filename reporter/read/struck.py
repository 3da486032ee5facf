"""Rows whose writing is struck through; only a workbook with such a font is looked at for it."""

import zipfile
from typing import IO
from xml.etree import ElementTree
from xml.parsers import expat

from reporter.read.package import MAIN, linked_part, tree_of

_OFF = ("0", "false")
_ROW, _CELL = f"{MAIN} row", f"{MAIN} c"
_VALUES = frozenset({f"{MAIN} v", f"{MAIN} is"})


def struck_styles(archive: zipfile.ZipFile) -> frozenset[str]:
    """Return the numbers of the cell styles whose font is struck through, as cells write them.

    Call it only after the look at the archive. A workbook may have no styles at all.
    """
    part = linked_part(archive, "styles")
    if part not in archive.namelist():
        return frozenset()
    root = tree_of(archive, part)
    fonts = root.iterfind(f"{{{MAIN}}}fonts/{{{MAIN}}}font")
    struck = {str(number) for number, font in enumerate(fonts) if _is_struck(font)}
    styles = root.iterfind(f"{{{MAIN}}}cellXfs/{{{MAIN}}}xf")
    return frozenset(str(number) for number, style in enumerate(styles) if style.get("fontId") in struck)


def _is_struck(font: ElementTree.Element) -> bool:
    strike = font.find(f"{{{MAIN}}}strike")
    return strike is not None and strike.get("val", "1") not in _OFF


def find_struck_rows(sheet: IO[bytes], styles: frozenset[str]) -> set[int]:
    """Find the rows of an open worksheet part that hold a value in one of these styles."""
    found: set[int] = set()
    row = 0
    crossed = False

    def start(tag: str, attributes: dict[str, str]) -> None:
        nonlocal row, crossed
        if tag == _ROW:
            row = int(attributes.get("r", row + 1))
        elif tag == _CELL:
            crossed = attributes.get("s") in styles
        elif crossed and tag in _VALUES:
            found.add(row)

    parser = expat.ParserCreate(namespace_separator=" ")
    parser.StartElementHandler = start
    parser.ParseFile(sheet)
    return found
