"""Names of files from what people typed: what every file system takes, each its own."""

import re
from collections.abc import Iterable

_FORBIDDEN = re.compile(r'[<>:"/\\|?*\x00-\x1f\x7f]+')
_RESERVED = re.compile(r"(con|prn|aux|nul|com\d|lpt\d)(\..*)?", re.IGNORECASE)
_LONGEST = 160  # of the 255 bytes that a name may have


def file_names(words: Iterable[str], suffix: str) -> dict[str, str]:
    """Return each word -> the name of its file, ending in `suffix`; no two differ only by case."""
    taken: set[str] = set()
    names = {}
    for word in words:
        stem = _safe(word)
        name, number = f"{stem}{suffix}", 2
        while name.casefold() in taken:
            name, number = f"{stem} {number}{suffix}", number + 1
        taken.add(name.casefold())
        names[word] = name
    return names


def _safe(word: str) -> str:
    """Return a word without what a file system refuses.

    Nor does it begin as lock files, hidden files or the formulas of a spreadsheet do.
    """
    bare = _FORBIDDEN.sub("-", word).lstrip(" .~$=+-@'").rstrip(" .")
    whole = bare.encode("utf-8", errors="ignore")
    safe = whole[:_LONGEST].decode("utf-8", errors="ignore").rstrip(" .")
    return f"{safe}-" if _RESERVED.fullmatch(safe) else safe or "client"
