"""The mark on a text file that we wrote and somebody may fill in: a last line that says if he has."""

import hashlib
from pathlib import Path
from typing import Final, Literal

from reporter.files.mark import MARK_PROPERTY

Found = Literal["ours", "typed over", "foreign"]

_LAST_LINE: Final = f"<!-- {MARK_PROPERTY} open data "
_END: Final = " -->\n"
_LONGEST: Final = 1 << 20  # such a file takes a few thousand bytes


def with_mark(text: str) -> str:
    """Return an XML document with our mark as its last line."""
    return f"{text}{_LAST_LINE}{_digest(text)}{_END}"


def find_mark(path: Path) -> Found:
    """Say whether a file is ours as we wrote it, ours and changed since, or somebody else's. Never raises."""
    try:
        if path.stat().st_size > _LONGEST:
            return "foreign"
        text = path.read_text(encoding="utf-8")
    except (OSError, ValueError):
        return "foreign"
    before, mark, rest = text.rpartition(_LAST_LINE)
    if not mark:
        return "foreign"
    return "ours" if rest == f"{_digest(before)}{_END}" else "typed over"


def _digest(text: str) -> str:
    return hashlib.sha256(text.encode()).hexdigest()
