"""Which cells of a worksheet have a comment; what it says is not read."""

import zipfile
import zlib
from xml.etree import ElementTree

from reporter.read.package import MAIN, linked_parts, tree_of
from reporter.read.raw import Address
from reporter.schema.a1 import row_and_column

_DAMAGED = (
    ElementTree.ParseError,
    zipfile.BadZipFile,
    zlib.error,
    KeyError,
    ValueError,
    EOFError,
    NotImplementedError,
)
_COMMENT = f"{{{MAIN}}}comment"


def find_comments(archive: zipfile.ZipFile, sheet_part: str) -> frozenset[Address]:
    """Find the cells of a worksheet that have a comment; a damaged list of them counts as none.

    Call it only after the look at the archive.
    """
    found: set[Address] = set()
    try:
        for part in linked_parts(archive, sheet_part, "/comments"):
            root = tree_of(archive, part)
            found |= {row_and_column(comment.get("ref", "")) for comment in root.iter(_COMMENT)}
    except _DAMAGED:  # broken comments must not keep a guide from his rows
        return frozenset()
    return frozenset(found)
