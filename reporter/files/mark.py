"""The mark that says we wrote a workbook: a custom document property, which survives being saved again."""

import zipfile
from pathlib import Path
from typing import Final, Literal, get_args
from xml.parsers import expat

from reporter.files.archive import too_many_parts

Kind = Literal["report", "client", "filing", "rollup", "rollup guides", "fix list", "layout", "log"]

MARK_PROPERTY: Final = "season-reporter"
KINDS: Final[frozenset[str]] = frozenset(get_args(Kind))
TYPED_IN: Final[frozenset[str]] = frozenset({"log", "fix list", "layout"})

_PART = "docProps/custom.xml"
_LONGEST_PART = 1 << 20  # a handful of properties takes a few hundred bytes


class _Properties:
    """Collects the text of the property of our name."""

    def __init__(self) -> None:
        self.text = ""
        self._inside = False

    def start(self, tag: str, attributes: dict[str, str]) -> None:
        if tag.rpartition(":")[2] == "property":
            self._inside = attributes.get("name") == MARK_PROPERTY

    def characters(self, text: str) -> None:
        if self._inside:
            self.text += text

    def refuse(self, *_: object) -> None:
        raise ValueError("a document type declaration has no place in a workbook")


def read_mark(path: Path) -> str | None:
    """Read the kind of the workbook at ``path`` if we wrote it (one of KINDS), else None. Never raises."""
    try:
        with path.open("rb") as file:
            if too_many_parts(file):
                return None
            with zipfile.ZipFile(file) as archive:
                return mark_in(archive)
    except (OSError, zipfile.BadZipFile, ValueError, NotImplementedError):
        return None


def mark_in(archive: zipfile.ZipFile) -> str | None:
    """Read the mark of an archive that is open already: one small part. Never raises."""
    try:
        if archive.getinfo(_PART).file_size > _LONGEST_PART:
            return None
        kind = _property(archive.read(_PART))
    # A damaged file can fail at any depth of unpacking; whatever it is, the answer is: not ours.
    except Exception:
        return None
    return kind if kind in KINDS else None


def _property(xml: bytes) -> str:
    found = _Properties()
    parser = expat.ParserCreate()
    parser.StartElementHandler = found.start
    parser.CharacterDataHandler = found.characters
    parser.StartDoctypeDeclHandler = found.refuse
    parser.Parse(xml, True)
    return found.text.strip()
