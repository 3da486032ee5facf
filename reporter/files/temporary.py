"""The hidden file beside a target that is filled before it takes the target's place.

Its name tells its process, so that what a killed one left behind is known from what another is filling. No
lock tells that: on network folders some systems keep a locked file from the very process that locked it,
others lock for one machine alone.
"""

import hashlib
import os
import re
import sys
import tempfile
import time
from contextlib import suppress
from functools import cache
from pathlib import Path

_LONGEST_STEM = 40  # of the name: file systems stop at 255 bytes, a letter takes up to 4
_NAME = re.compile(r"\..{1,40}\.([0-9a-f]{8})-(\d+)\.[a-z0-9_]{8}(?:\.\w+)?", re.DOTALL)
_OLD_S = 86_400  # a day: whatever its process, nothing is being filled for so long
_BOOT, _PROCESSES = Path("/proc/sys/kernel/random/boot_id"), Path("/proc/self/ns/pid")


def fresh_beside(final: Path) -> Path:
    """Make an empty private file of a new hidden name beside ``final``, under its suffix; OSError."""
    _clear_once(os.getpid(), final.parent)
    prefix = f".{final.stem[:_LONGEST_STEM]}.{owner()}."
    handle, name = tempfile.mkstemp(prefix=prefix, suffix=final.suffix, dir=final.parent)
    os.close(handle)
    return Path(name)


def owner() -> str:
    """Return what tells this process from any other, on whichever machine."""
    return f"{_here()}-{os.getpid()}"


@cache
def _clear_once(_process: int, folder: Path) -> None:
    """Clear a folder once a process: to list it for each file would grow with the square of their number."""
    clear_abandoned(folder)


def clear_abandoned(folder: Path) -> None:
    """Take away the temporaries in a folder that processes left behind: theirs ended here, or a day old."""
    with suppress(OSError), os.scandir(folder) as entries:
        for entry in entries:
            told = _NAME.fullmatch(entry.name)
            if told and _abandoned(entry, *told.groups()):
                Path(entry.path).unlink(missing_ok=True)


def _abandoned(entry: "os.DirEntry[str]", where: str, process: str) -> bool:
    if not entry.is_file(follow_symlinks=False):
        return False
    if where == _here() and _ended(int(process)):
        return True
    return time.time() - entry.stat(follow_symlinks=False).st_mtime > _OLD_S


@cache
def _here() -> str:
    """Return a key of the processes that this one can see: those of this start of this machine."""
    try:
        told = f"{_BOOT.read_text()} {_PROCESSES.stat().st_ino}"
    except OSError:  # not Linux
        import platform

        told = platform.node()
    return hashlib.sha256(told.encode()).hexdigest()[:8]


def _ended(process: int) -> bool:
    """Whether there is no such process; False where that cannot be asked."""
    if sys.platform == "win32":
        return False
    try:
        os.kill(process, 0)
    except (ProcessLookupError, OverflowError):
        return True
    except OSError:
        return False
    return False
