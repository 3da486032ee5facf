"""An archive's size, told before a library takes its whole directory into memory."""

from typing import BinaryIO, Final

MOST_PARTS: Final = 5000  # a workbook of 100 sheets with charts has about 500 parts

_ENTRY = b"PK\x01\x02"  # every entry of the directory begins so, wherever the directory says that it lies
_PIECE = 1 << 20


def too_many_parts(file: BinaryIO) -> bool:
    """Whether an open file could be an archive of more parts than any workbook has."""
    file.seek(0)
    count, cut = 0, b""
    while piece := file.read(_PIECE):
        count += (cut + piece).count(_ENTRY)
        cut = piece[1 - len(_ENTRY) :]
        if count > MOST_PARTS:
            return True
    return False
