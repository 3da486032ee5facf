"""How much room text takes, in pixels at 96 to the inch, with a little to spare for other screens."""

import math
import re
from functools import lru_cache
from itertools import takewhile
from typing import Final

from xlsxwriter.utility import xl_pixel_width

from reporter.write.style import BODY_SIZE

DIGIT_PX: Final = 7  # the width that column widths count in, of the body type
PADDING_PX: Final = 5
DEFAULT_WIDTH: Final = (64 - PADDING_PX) / DIGIT_PX  # characters in a column that nobody set
INDENT_PX: Final = 9  # what text keeps clear of the number to its left
FILTER_BUTTON_PX: Final = 18
TALLEST_PX: Final = 545  # of a row; a spreadsheet takes 409 points

# Of every letter of Latin-1, so that a column of many texts is measured quickly; any other counts as `?`.
_WIDTHS = bytes(xl_pixel_width(chr(code)) for code in range(256))
_SPARE = 1.03  # letters come out wider on some screens and at some zooms
_BOLD = 1.06
_PIECES = re.compile(r"[^ -]*-+ *|[^ -]+ *| +")  # a line may end after a blank or a hyphen
_LINE = 1.65  # pixels of line height to a point of type


def text_px(text: str, size: float = BODY_SIZE, *, bold: bool = False) -> float:
    """Width of one line of text."""
    pixels = sum(text.encode("latin-1", "replace").translate(_WIDTHS))
    return pixels * size / BODY_SIZE * _SPARE * (_BOLD if bold else 1)


def column_px(characters: float) -> int:
    """Width of a column that is so many characters wide."""
    return int(characters * DIGIT_PX + 0.5) + PADDING_PX


def characters(pixels: float) -> float:
    """Column width in whole characters that holds a line of so many pixels."""
    return float(math.ceil(pixels / DIGIT_PX) + 1)


def lines_needed(text: str, room_px: float, size: float = BODY_SIZE, *, bold: bool = False) -> int:
    """Lines that text takes when it is wrapped at words into a width."""
    room = max(room_px - PADDING_PX, 1)
    if "\n" not in text and text_px(text, size, bold=bold) <= room:
        return 1
    return sum(_wrapped(line, room, size, bold) for line in text.split("\n"))


def broken(text: str, room_px: float, size: float = BODY_SIZE, *, bold: bool = False) -> list[str]:
    """Break text into lines that fit into a width: at words, a word wider than that inside."""
    room = max(room_px - PADDING_PX, 1)
    lines = [""]
    for piece in _PIECES.findall(text.replace("\n", " ")):
        if lines[-1] and text_px((lines[-1] + piece).rstrip(), size, bold=bold) > room:
            lines.append("")
        lines[-1] += piece
        while text_px(lines[-1].rstrip(), size, bold=bold) > room and len(lines[-1]) > 1:
            fits = _fitting(lines[-1], room, size, bold)
            lines[-1:] = [lines[-1][:fits], lines[-1][fits:]]
    return [line.rstrip() for line in lines]


def height_px(lines: int, size: float = BODY_SIZE) -> int:
    """Height of a row of so many lines."""
    return min(math.ceil(lines * size * _LINE) + 4, TALLEST_PX)


def _fitting(word: str, room: float, size: float, bold: bool) -> int:
    """Count the letters at a word's beginning that fit into a width, one at least."""
    reaches = (text_px(word[:end], size, bold=bold) for end in range(2, len(word) + 1))
    return 1 + sum(1 for _ in takewhile(lambda reach: reach <= room, reaches))


def _wrapped(line: str, room: float, size: float, bold: bool) -> int:
    if text_px(line, size, bold=bold) <= room:
        return 1
    lines, used = 1, 0.0
    for piece in _PIECES.findall(line):
        width, blanks = _piece_px(piece, size, bold)
        if used and used + width > room:
            lines, used = lines + 1, 0.0
        if width > room:  # a word wider than the column is broken inside
            lines += math.ceil(width / room) - 1
            width %= room
        used += width + blanks
    return lines


@lru_cache(maxsize=4096)
def _piece_px(piece: str, size: float, bold: bool) -> tuple[float, float]:
    """Width of a word, and of the blanks behind it; kept, as texts repeat their words."""
    return text_px(piece.rstrip(), size, bold=bold), text_px(" ", size, bold=bold) * piece.count(" ")
