"""Text that may stand in a workbook: what XML or a cell cannot hold is dropped or cut where one sees it."""

import re
from typing import Final

LONGEST_TEXT: Final = 32_767  # UTF-16 units in a cell
CUT: Final = " … (cut here: a cell holds no more)"

_UNSAFE = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\ud800-\udfff\ufffe\uffff]")
_RICH = ("<r>", "</r>")  # xlsxwriter takes a text between these for markup of its own
_SURELY_FITS = LONGEST_TEXT // 2  # a character takes at most two units


def clean(text: str) -> str:
    """Make text fit for a cell.

    Control characters (but tab and line end), lone surrogates and U+FFFE/U+FFFF go; what is too long is cut.
    """
    safe = text if text.isprintable() and len(text) <= _SURELY_FITS else _cut(without_controls(text))
    if safe.startswith(_RICH[0]) and safe.endswith(_RICH[1]):
        return safe + " "
    return safe


def without_controls(text: str) -> str:
    """Drop what XML cannot hold: control characters (but tab and line end), surrogates, U+FFFE/U+FFFF."""
    return _UNSAFE.sub("", text.replace("\r\n", "\n").replace("\r", "\n"))


def one_line(text: str) -> str:
    """Clean text with every run of white space made one space, for headers and titles of boxes."""
    return " ".join(clean(text).split())


def units(text: str) -> int:
    """Length as a spreadsheet counts it: in UTF-16 units. The text must be clean."""
    return len(text) if text.isascii() else len(text.encode("utf-16-le")) // 2


def _cut(text: str) -> str:
    if len(text) <= _SURELY_FITS or units(text) <= LONGEST_TEXT:
        return text
    kept = text.encode("utf-16-le")[: 2 * (LONGEST_TEXT - len(CUT))]
    return kept.decode("utf-16-le", errors="ignore") + CUT
