"""The look at a workbook's archive before anything in it is parsed: sizes, locks, declarations."""

import zipfile
from xml.parsers import expat

from reporter.files.archive import MOST_PARTS
from reporter.read.errors import COPY_AGAIN, SAVE_AGAIN, Refused
from reporter.read.limits import MIB

# A full season's log unpacks to about 5 MB, a log of 100,000 fish to 60 MB.
MAX_UNPACKED = 512 * MIB  # of all parts: what a small machine can work through
MAX_PART = 256 * MIB  # of one part
MAX_RATIO = 200  # unpacked to packed; real worksheets stay below 15, bombs start near 1,000
RATIO_FROM = 1 << 20  # smaller parts cannot do harm, and a blank one may pack very well

_NEW_WORKBOOK = "copy your sheets into a new workbook, save that and try again"
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
    if sum(entry.file_size for entry in entries) > MAX_UNPACKED:
        raise _swollen(f"{MAX_UNPACKED // MIB} MiB")
    if any(entry.file_size > MAX_PART for entry in entries):
        raise _swollen(f"{MAX_PART // MIB} MiB in one part")
    if any(entry.file_size > max(RATIO_FROM, MAX_RATIO * max(entry.compress_size, 1)) for entry in entries):
        raise _swollen(f"{MAX_RATIO} times its size")
    for entry in entries:
        _check_prologue(archive, entry)


def too_many_packed() -> Refused:
    """Make the refusal of an archive of too many parts."""
    return Refused(f"it is packed of more than {MOST_PARTS:,} parts, as no season log is; {_NEW_WORKBOOK}")


def _swollen(most: str) -> Refused:
    return Refused(f"it unpacks to more than {most}, as no season log does; {_NEW_WORKBOOK}")


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
