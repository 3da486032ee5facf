"""What a workbook keeps beside its sheets that cells depend on: its date system, its order of calculation."""

import re
import zipfile
from typing import Final

from reporter.read.package import MAIN, book_part, linked_part, links_part, sheets_in
from reporter.write.patch.tags import Edit, Element, edited, elements, without

_TYPES: Final = "[Content_Types].xml"
_BEFORE_CALCULATION: Final = frozenset(
    {
        "fileVersion",
        "fileSharing",
        "workbookPr",
        "workbookProtection",
        "bookViews",
        "sheets",
        "functionGroups",
        "externalReferences",
        "definedNames",
    }
)
"""What stands before the calculation settings in a workbook part."""

_FORMULA = re.compile(rb"<(?:[\w.-]+:)?f[\s/>]")
_PIECE = 1 << 20
_OVERLAP = 64  # bytes kept of the piece before, so that a tag on the seam is found


def counts_from_1904(archive: zipfile.ZipFile) -> bool:
    """Whether the workbook's day 0 is in 1904."""
    properties = (one for one in elements(archive.read(book_part(archive))) if _is(one, "workbookPr"))
    return any(one.attributes.get("date1904") in ("1", "true") for one in properties)


def holds_formulas(archive: zipfile.ZipFile) -> bool:
    """Whether any worksheet holds a formula."""
    return any(_formula_in(archive, sheet.part) for sheet in sheets_in(archive) if sheet.kind == "worksheet")


def _formula_in(archive: zipfile.ZipFile, part: str) -> bool:
    before = b""
    with archive.open(part) as stream:
        while piece := stream.read(_PIECE):
            if _FORMULA.search(before + piece):
                return True
            before = piece[-_OVERLAP:]
    return False


def recalculated(archive: zipfile.ZipFile) -> tuple[str, bytes]:
    """Return the workbook part, set so that a spreadsheet program works out all formulas when it opens it."""
    part = book_part(archive)
    data = archive.read(part)
    top = [one for one in elements(data) if one.depth == 1]
    given = next((one for one in top if _is(one, "calcPr")), None)
    if given is not None:
        new = given.tag.made({"fullCalcOnLoad": "1"})
        return part, edited(data, [Edit(given.tag.start, given.tag.end, new)])
    before = [one for one in top if any(_is(one, name) for name in _BEFORE_CALCULATION)]
    new = b"<" + before[-1].tag.prefix + b'calcPr fullCalcOnLoad="1"/>'
    return part, edited(data, [Edit(before[-1].end, before[-1].end, new)])


def without_chain(archive: zipfile.ZipFile) -> tuple[str, dict[str, bytes]]:
    """Return the part with the order of calculation, or nothing, and the parts that no longer name it.

    A cell that has lost its formula must not be in that order; programs make it anew where it is missing.
    """
    chain = linked_part(archive, "calcChain")
    if chain not in archive.namelist():
        return "", {}
    links = links_part(book_part(archive))
    return chain, {
        links: without(
            archive.read(links), lambda one: one.attributes.get("Type", "").endswith("/calcChain")
        ),
        _TYPES: without(
            archive.read(_TYPES), lambda one: one.attributes.get("PartName", "").lstrip("/") == chain
        ),
    }


def _is(one: Element, name: str) -> bool:
    return one.depth == 1 and one.name == f"{MAIN} {name}"
