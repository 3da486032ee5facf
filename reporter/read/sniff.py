"""What kind of file this is, by its content: names and endings are often wrong."""

import zipfile
from typing import BinaryIO, Literal

from reporter.files.archive import too_many_parts
from reporter.read.errors import COPY_AGAIN, SAVE_AGAIN
from reporter.read.look import too_many_packed

Kind = Literal[
    "xlsx", "xlsb", "xls", "ods", "locked", "empty", "cut short", "zip", "xml", "web page", "text", "unknown"
]

# What to say of each kind that no engine reads.
SENTENCES: dict[Kind, str] = {
    "locked": "it is locked with a password; take the password off in your spreadsheet program, save it and "
    "try again",
    "empty": f"it is empty; {COPY_AGAIN}",
    "cut short": f"it is damaged or only part of it is here; {COPY_AGAIN}",
    "zip": f"it is packed like a workbook but there is no spreadsheet in it; {SAVE_AGAIN}",
    "xml": f"it is an XML file, not a workbook; {SAVE_AGAIN}",
    "web page": f"it is a web page under a spreadsheet's name; {SAVE_AGAIN}",
    "text": f"it is plain text, such as CSV, not a workbook; {SAVE_AGAIN}; hourly weather goes behind "
    "--weather",
    "unknown": f"it is not a spreadsheet that I know; {SAVE_AGAIN}",
}

FOREIGN: dict[Kind, str] = {"xlsb": ".xlsb", "xls": ".xls", "ods": ".ods"}
"""Formats of other engines, in which an error looks like a blank cell."""

_OLE = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"  # the container of old Office files and of encrypted new ones
_ZIP = (b"PK\x03\x04", b"PK\x05\x06")
_ODS = b"application/vnd.oasis.opendocument.spreadsheet"
_HEAD = 4096
_WHOLE = 64 << 20  # an encrypted container names its stream in a directory that can lie anywhere


def sniff(file: BinaryIO) -> Kind:
    """Tell the kind of an open file from its first bytes and, of an archive, its directory.

    Refused where an archive has more parts than can be listed without harm.
    """
    file.seek(0)
    head = file.read(_HEAD)
    if not head:
        return "empty"
    if head.startswith(_OLE):
        file.seek(0)
        return "locked" if "EncryptedPackage".encode("utf-16-le") in file.read(_WHOLE) else "xls"
    if head.startswith(_ZIP):
        return _zip_kind(file)
    return _plain_kind(head)


def _zip_kind(file: BinaryIO) -> Kind:
    if too_many_parts(file):
        raise too_many_packed()
    try:
        with zipfile.ZipFile(file) as archive:
            return _packed_kind(archive)
    except Exception:  # a damaged archive can fail at any depth of unpacking
        return "cut short"


def _packed_kind(archive: zipfile.ZipFile) -> Kind:
    names = set(archive.namelist())
    if "mimetype" in names:
        with archive.open("mimetype") as entry:
            return "ods" if entry.read(len(_ODS)) == _ODS else "zip"
    if "xl/workbook.bin" in names:
        return "xlsb"
    return "xlsx" if "[Content_Types].xml" in names else "zip"


def _plain_kind(head: bytes) -> Kind:
    text = head.removeprefix(b"\xef\xbb\xbf").lstrip().lower()
    if text.startswith(b"<") and any(tag in text for tag in (b"<html", b"<table", b"<!doctype html")):
        return "web page"
    if text.startswith(b"<?xml"):
        return "xml"
    if head.startswith((b"\xff\xfe", b"\xfe\xff")):
        return "text"
    return "unknown" if b"\0" in head else "text"
