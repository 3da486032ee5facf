"""The name of a file from what somebody typed: what every file system takes."""

import hashlib
import re

_FORBIDDEN = re.compile(r'[<>:"/\\|?*\x00-\x1f\x7f]+')
_RESERVED = re.compile(r"(con|prn|aux|nul|com\d|lpt\d)(\..*)?", re.IGNORECASE)
_LONGEST = 160  # of the 255 bytes that a name may have
_DIGITS = 6


def file_name(word: str, suffix: str) -> str:
    """Return the name of a word's file, ending in `suffix`: the word without what a file system refuses.

    Nor does it begin as lock files, hidden files or the formulas of a spreadsheet do. It hangs on the word
    alone: one that had to be changed carries a few digits of its own, so that no two words share a file.
    """
    bare = _FORBIDDEN.sub("-", word).lstrip(" .~$=+-@'").rstrip(" .")
    whole = bare.encode("utf-8", errors="ignore")
    safe = whole[:_LONGEST].decode("utf-8", errors="ignore").rstrip(" .")
    if safe == word and not _RESERVED.fullmatch(safe):
        return f"{safe}{suffix}"
    digits = hashlib.sha256(word.encode("utf-8", errors="surrogatepass")).hexdigest()[:_DIGITS]
    return f"{safe} {digits}".strip() + suffix
