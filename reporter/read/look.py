"""The look at a workbook's archive before anything in it is parsed: sizes, locks, declarations."""

import zipfile
from xml.parsers import expat

from reporter.read.errors import COPY_AGAIN, SAVE_AGAIN, Refused

# A full season's log unpacks to about 5 MB, a log of 100,000 fish to 60 MB.
MAX_UNPACKED = 512 << 20  # bytes of all parts: what a small machine can work through
MAX_PART = 256 << 20  # bytes of one part
MAX_RATIO = 200  # unpacked to packed; real worksheets stay below 15, bombs start near 1,000
RATIO_FROM = 1 << 20  # smaller parts cannot do harm, and a blank one may pack very well
MAX_ENTRIES = 5000  # a workbook of 100 sheets with charts has about 500 parts

_PIECE = 4096
_MAX_PROLOGUE = 1 << 20  # before the first element stand a declaration and perhaps a comment
_UTF_16 = (b"\xff\xfe", b"\xfe\xff", b"\0<", b"<\0")


def look_at(archive: zipfile.ZipFile) -> None:
    """Raise Refused where unpacking or parsing would be unsafe.

    Declared sizes can be relied on: zipfile never unpacks more than they say.
    """
    entries = archive.infolist()
    if any(entry.flag_bits & 1 for entry in entries):
        raise Refused("parts of it are locked with a password; take the password off and try again")
    if (
        len(entries) > MAX_ENTRIES
        or sum(entry.file_size for entry in entries) > MAX_UNPACKED
        or any(_swollen(entry) for entry in entries)
    ):
        reason = "it unpacks to far more than any season log holds"
        raise Refused(f"{reason}; copy your sheets into a new workbook, save that and try again")
    for entry in entries:
        _check_prologue(archive, entry)


def _swollen(entry: zipfile.ZipInfo) -> bool:
    size, packed = entry.file_size, max(entry.compress_size, 1)
    return size > MAX_PART or (size > RATIO_FROM and size > MAX_RATIO * packed)


class _Prologue:
    """Watches a part up to its first element."""

    def __init__(self) -> None:
        self.over = False
        self.parser = expat.ParserCreate()
        self.parser.StartDoctypeDeclHandler = self._declaration
        self.parser.StartElementHandler = self._element

    def _declaration(self, *_: object) -> None:
        reason = "it holds a document type declaration, which no spreadsheet program writes"
        raise Refused(f"{reason}; {SAVE_AGAIN}")

    def _element(self, *_: object) -> None:
        self.over = True
        self.parser.StartElementHandler = None


def _check_prologue(archive: zipfile.ZipFile, entry: zipfile.ZipInfo) -> None:
    """Refuse a part with a document type declaration, the seat of every XML bomb, or in wide characters."""
    prologue = _Prologue()
    with archive.open(entry) as part:
        for start in range(0, _MAX_PROLOGUE, _PIECE):
            piece = part.read(_PIECE)
            if start == 0 and piece.startswith(_UTF_16) and entry.filename.endswith((".xml", ".rels")):
                raise Refused(f"it is written in an unusual character code; {SAVE_AGAIN}")
            try:
                prologue.parser.Parse(piece, not piece)
            except expat.ExpatError:
                return  # not XML, such as a picture; a broken worksheet is met when it is read
            if prologue.over or not piece:
                return
    raise Refused(f"it is damaged; {COPY_AGAIN}")
