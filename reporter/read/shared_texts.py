"""The list of texts of a workbook, which its cells name by number."""

import re
import zipfile
from typing import Final
from xml.etree import ElementTree

from reporter.read.limits import MAX_LETTERS
from reporter.read.package import MAIN, begins_with, part_of_type

TEXTS_TYPE: Final = "application/vnd.openxmlformats-officedocument.spreadsheetml.sharedStrings+xml"

_ROOT = re.compile(rf'<sst xmlns="{MAIN}"(?: (?:count|uniqueCount)="[0-9]*")*(?:/>|>)')
# What has an entity, a line end to be settled or a character that XML has not is left to the parser.
_PLAIN = re.compile(r'<t(?: xml:space="preserve")?>([^<>&\r\x00-\x08\x0b\x0c\x0e-\x1f\ufffe\uffff]*)</t>')
_OF_TEXT = frozenset({"t", "r", "rPh", "phoneticPr"})
_OF_RUN = frozenset({"t", "rPr"})
_END = "</sst>"


def shared_texts(archive: zipfile.ZipFile) -> list[str]:
    """Read the list as openpyxl gives it; ValueError or another exception where it is laid out unusually."""
    part = part_of_type(archive, TEXTS_TYPE)
    if not part:
        return []
    if archive.getinfo(part).file_size > MAX_LETTERS:
        raise ValueError("too long to be taken at once")
    data = archive.read(part)
    whole = data.decode()
    root = _ROOT.search(whole)
    if root is None or not begins_with(data, b"<sst "):
        raise ValueError("no list of texts as common programs write it")
    if root[0].endswith("/>"):
        return []
    body = whole[root.end() :].rstrip()
    if not body.endswith(_END):
        raise ValueError("the list has no end")
    before, *items = body[: -len(_END)].split("<si>")
    if before.strip():
        raise ValueError("something stands before the first text")
    # The other way drops these letters, of an escape of an escape, from this list, and nowhere else.
    return [_item(item).replace("x005F_", "") for item in items]


def _item(item: str) -> str:
    inside, end, behind = item.partition("</si>")
    if not end or behind.strip():
        raise ValueError("something stands between two texts")
    return text_in(inside)


def text_in(inside: str) -> str:
    """Return the text of an item of the list, or of a cell that has its own; ValueError if it is unusual."""
    plain = _PLAIN.fullmatch(inside)
    return plain[1] if plain else _parsed(inside)


def _parsed(inside: str) -> str:
    """Return a text with entities, or in runs of several fonts."""
    root = ElementTree.fromstring(f"<si>{inside}</si>")  # noqa: S314 - declarations were refused by the look
    runs = root.findall("r")
    texts = [_text_of(root, _OF_TEXT), *(_text_of(run, _OF_RUN) for run in runs)]
    return "".join(texts)


def _text_of(element: ElementTree.Element, known: frozenset[str]) -> str:
    texts = element.findall("t")
    if len(texts) > 1 or not {child.tag for child in element} <= known:
        raise ValueError("not a text as common programs write it")
    return "".join(text.text or "" for text in texts)
