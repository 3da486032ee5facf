"""Typed text, made plain: the same words whatever keyboard or spreadsheet they came from."""

import datetime as dt
import re
import unicodedata
from dataclasses import dataclass
from fractions import Fraction

from reporter.read.raw import CellValue

_SPACES = re.compile(r"\s+")
_ODD = str.maketrans(
    {
        "\u2018": "'",
        "\u2019": "'",
        "\u2032": "'",
        "\u201c": '"',
        "\u201d": '"',
        "\u2033": '"',
        "\u2010": "-",
        "\u2011": "-",
        "\u2012": "-",
        "\u2013": "-",
        "\u2014": "-",
        "\u2212": "-",
        "\u2044": "/",
        "\u200b": None,
        "\ufeff": None,
    }
)
_VULGAR = {
    chr(code): f" {Fraction(unicodedata.numeric(chr(code))).limit_denominator(10)}"
    for code in (0xBC, 0xBD, 0xBE, *range(0x2150, 0x215F))
}


@dataclass(frozen=True, slots=True)
class NotRead:
    """A cell that is not used: why, completing "'value' ...", how to mend it, whether it was impossible.

    said: whether a problem of the whole log stands for it, so that the cell needs no line of its own.
    """

    why: str
    remedy: str
    impossible: bool = False
    said: bool = False


def plain(text: str) -> str:
    """Return text with ordinary spaces, quotes, dashes, digits and fractions, trimmed."""
    if text.isascii():
        return _SPACES.sub(" ", text).strip()
    spelled = "".join(_VULGAR.get(letter, letter) for letter in text)
    folded = unicodedata.normalize("NFKC", spelled).translate(_ODD)
    return _SPACES.sub(" ", folded).strip()


def trimmed(text: str) -> str:
    """Return text as typed, with white space made single and trimmed."""
    return _SPACES.sub(" ", text.replace("\u200b", "").replace("\ufeff", "")).strip()


def shown(value: CellValue) -> str:
    """Return any cell's content as the text that a person would recognise."""
    if value is None:
        return ""
    if isinstance(value, bool):
        return "TRUE" if value else "FALSE"
    if isinstance(value, float):
        return f"{value:.15g}"
    if isinstance(value, dt.datetime):
        return (
            value.strftime("%Y-%m-%d %H:%M") if (value.hour, value.minute) != (0, 0) else f"{value:%Y-%m-%d}"
        )
    if isinstance(value, dt.time):
        return f"{value:%H:%M}"
    if isinstance(value, dt.timedelta):
        minutes = round(value.total_seconds() / 60)
        return f"{minutes // 60}:{minutes % 60:02d}"
    return trimmed(str(value))
