"""Text as lines for a terminal: safe to show, wrapped so that a number keeps its unit."""

import os
import re
import shlex
import textwrap
from pathlib import Path

# A terminal obeys control characters and turned writing, and what is printed may quote what someone typed.
_DROPPED = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u061c\u200e\u200f\u2028\u2029\u202a-\u202e\u2066-\u2069]")
_UNREADABLE = re.compile("[\ud800-\udfff]")  # bytes of a file name that are no text
_OBEYED_IN_QUOTES = frozenset('"$`\\!')

_TIE = "\x1f"  # stands for a space where no line may end; `clean` leaves none in a text
_NUMBER = r"\(?\d[\d.,:/–-]*"
_BEHIND_NUMBER = re.compile(rf"(?<!\S)({_NUMBER})(?<![.,:]) (?=\S)")
_BEFORE_NUMBER = re.compile(rf"(?<=[\w(]) (?={_NUMBER}[).,:;]*(?!\S))")
_LONGEST_TIED = 24


def clean(text: str) -> str:
    """Return text on one line that a terminal shows and does not obey."""
    return " ".join(_UNREADABLE.sub("�", _DROPPED.sub("", text)).split())


def cut(text: str, columns: int) -> str:
    """Return text on one line, shortened to so many columns where it is longer."""
    line = clean(text)
    return line if len(line) <= columns else f"{line[: columns - 1]}…"


def wrapped(text: str, columns: int, first: str = "", rest: str = "") -> list[str]:
    """Return text in lines of so many columns at most; no line ends beside a number within a phrase.

    first, rest: what the first line and the others begin with. A word longer than a line, as a path may be,
    stays whole.
    """
    lines = textwrap.wrap(
        _tied(clean(text)),
        columns,
        initial_indent=first,
        subsequent_indent=rest,
        break_long_words=False,
        break_on_hyphens=False,
    )
    return [line.replace(_TIE, " ") for line in lines] or [first.rstrip()]


def _tied(text: str) -> str:
    """Tie numbers to the words beside them; what grows too long to keep together is left loose."""
    tied = _BEFORE_NUMBER.sub(_TIE, _BEHIND_NUMBER.sub(rf"\1{_TIE}", text))
    return " ".join(
        piece if len(piece) <= _LONGEST_TIED else piece.replace(_TIE, " ") for piece in tied.split(" ")
    )


def quoted(path: Path) -> str:
    """Return a path as it is typed on a command line of this computer."""
    text = clean(str(path))
    return f'"{text}"' if os.name == "nt" or not _OBEYED_IN_QUOTES & set(text) else shlex.quote(text)
