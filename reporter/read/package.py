"""How a workbook's archive hangs together: its sheets, in order, and the parts that hold them."""

import posixpath
import re
import zipfile
from collections.abc import Iterable
from typing import Literal, NamedTuple
from xml.etree import ElementTree

from reporter.read.errors import SAVE_AGAIN, Refused
from reporter.read.limits import MAX_STYLES, MAX_TAGS, too_much

MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
_STRICT = "http://purl.oclc.org/ooxml/spreadsheetml/main"
_LINK = "{http://schemas.openxmlformats.org/package/2006/relationships}Relationship"
_LINK_ID = "{http://schemas.openxmlformats.org/officeDocument/2006/relationships}id"

_OVERRIDE = "{http://schemas.openxmlformats.org/package/2006/content-types}Override"
_DECLARATION = re.compile(
    rb"""<\?xml version=["']1\.0["'](?: encoding=["'](?:UTF|utf)-8["'])?"""
    rb"""(?: standalone=["'](?:yes|no)["'])?\s*\?>\s*"""
)

_PIECE = 1 << 20
_TAGS_A_TEXT = 4

SheetKind = Literal["worksheet", "other"]  # chart sheets, dialogs and macro sheets hold no rows


class SheetPart(NamedTuple):
    """A sheet as the workbook lists it. ``part`` is its path inside the archive."""

    name: str
    part: str
    kind: SheetKind
    visible: bool


def sheets_in(archive: zipfile.ZipFile) -> list[SheetPart]:
    """List every sheet of the workbook, in order; Refused if it is no workbook of the ordinary kind.

    Call it only after the look at the archive: it parses two small parts.
    """
    tree_of(archive, "[Content_Types].xml")  # which the other library parses
    book = book_part(archive)
    root = tree_of(archive, book)
    if root.tag.startswith(f"{{{_STRICT}}}"):
        raise Refused(
            "it is a Strict Open XML workbook; save it as an ordinary Excel workbook (.xlsx) instead"
        )
    if root.tag != f"{{{MAIN}}}workbook":
        raise Refused(f"it is packed like a workbook but there is no spreadsheet in it; {SAVE_AGAIN}")
    links = _links(archive, book)
    return [
        _sheet(sheet, links)
        for sheet in root.iterfind(f"{{{MAIN}}}sheets/{{{MAIN}}}sheet")
        if sheet.get(_LINK_ID) in links
    ]


def counts_from_1904(archive: zipfile.ZipFile) -> bool:
    """Whether dates are counted from 1904."""
    properties = tree_of(archive, book_part(archive)).find(f"{{{MAIN}}}workbookPr")
    return properties is not None and properties.get("date1904", "0") not in ("0", "false")


def linked_part(archive: zipfile.ZipFile, kind: str) -> str:
    """Return the part of a kind that the workbook names, as its `styles`, or nothing."""
    return next(iter(linked_parts(archive, book_part(archive), f"/{kind}")), "")


def linked_parts(archive: zipfile.ZipFile, source: str, ending: str) -> list[str]:
    """Return the parts to which a part leads by relations with this ending; none where it has no links."""
    if links_part(source) not in archive.namelist():
        return []
    return [part for relation, part in _links(archive, source).values() if relation.endswith(ending)]


def part_of_type(archive: zipfile.ZipFile, kind: str) -> str:
    """Return the first part that the list of contents gives this type, or nothing."""
    root = tree_of(archive, "[Content_Types].xml")
    found = (each.attrib["PartName"] for each in root.iterfind(_OVERRIDE) if each.get("ContentType") == kind)
    return next(found, "").removeprefix("/")


def begins_with(part: bytes, tag: bytes) -> bool:
    """Whether a part begins with this, behind nothing but a declaration of UTF-8."""
    declared = _DECLARATION.match(part)
    return part.startswith(tag, declared.end() if declared else 0)


def tree_of(archive: zipfile.ZipFile, part: str) -> ElementTree.Element:
    """Parse a part whole, which takes many times its size; Refused where it holds too much for that."""
    if _tags(archive, part) > MAX_STYLES:
        raise too_much(f"{MAX_STYLES:,} styles or names")
    return ElementTree.fromstring(archive.read(part))  # noqa: S314 - declarations were refused by the look


def check_parts(archive: zipfile.ZipFile, sheets: Iterable[SheetPart]) -> None:
    """Refuse a workbook of which a part beside its sheets, such as its list of texts, would take minutes."""
    parts = {sheet.part for sheet in sheets}
    for entry in archive.infolist():
        aside = entry.filename not in parts and entry.file_size > MAX_TAGS
        if aside and _tags(archive, entry.filename) > MAX_TAGS:
            raise too_much(f"{MAX_TAGS // _TAGS_A_TEXT:,} different texts or styles")


def _tags(archive: zipfile.ZipFile, part: str) -> int:
    with archive.open(part) as stream:
        return sum(piece.count(b"<") for piece in iter(lambda: stream.read(_PIECE), b""))


def _sheet(sheet: ElementTree.Element, links: dict[str, tuple[str, str]]) -> SheetPart:
    relation, part = links[sheet.attrib[_LINK_ID]]
    return SheetPart(
        name=sheet.attrib["name"],
        part=part,
        kind="worksheet" if relation.endswith("/worksheet") else "other",
        visible=sheet.get("state", "visible") == "visible",
    )


def book_part(archive: zipfile.ZipFile) -> str:
    """Return the part that lists the workbook's sheets; Refused where there is none."""
    for relation, part in _links(archive, "").values():
        if relation.endswith("/officeDocument"):
            return part
    raise Refused(f"it is packed like a workbook but there is no spreadsheet in it; {SAVE_AGAIN}")


def _links(archive: zipfile.ZipFile, source: str) -> dict[str, tuple[str, str]]:
    """Read the relations of a part (``""``: of the package): id -> kind of relation, part it leads to."""
    folder = posixpath.dirname(source)
    root = tree_of(archive, links_part(source))
    return {
        link.attrib["Id"]: (link.attrib["Type"], _resolved(folder, link.attrib["Target"]))
        for link in root.iterfind(_LINK)
        if link.get("TargetMode") != "External"
    }


def links_part(source: str) -> str:
    """Return the part that holds the relations of a part."""
    folder, name = posixpath.split(source)
    return posixpath.join(folder, "_rels", f"{name}.rels")


def _resolved(folder: str, target: str) -> str:
    return posixpath.normpath(posixpath.join("/", folder, target)).lstrip("/")
