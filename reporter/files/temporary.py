"""The hidden file beside a target that is filled before it takes the target's place.

It has one name a target, so that whoever writes the target next clears away what a killed process left there.
What a process that lives is filling stays: it holds the file by a lock of the system, which ends with it.
"""

import hashlib
import os
import sys
import tempfile
from pathlib import Path
from typing import BinaryIO

_LONGEST_STEM = 40  # of the name: file systems stop at 255 bytes, a letter takes up to 4


def open_temporary(final: Path) -> tuple[BinaryIO, Path]:
    """Make an empty file beside ``final``, private, under its suffix; OSError where there can be none.

    The file is held for as long as the returned object is open. Where another process holds the one of that
    name, or the file system has no locks, it gets a name of its own, which tells its process.
    """
    stem = f".{final.stem[:_LONGEST_STEM]}."
    key = hashlib.sha256(final.name.encode("utf-8", "surrogateescape")).hexdigest()[:8]
    own = final.with_name(f"{stem}{key}{final.suffix}")
    held = _made(own) if cleared(own) else None
    if held is not None:
        return held, own
    handle, name = tempfile.mkstemp(prefix=f"{stem}{os.getpid()}.", suffix=final.suffix, dir=final.parent)
    return os.fdopen(handle, "r+b"), Path(name)


def drop_temporary(held: BinaryIO, path: Path) -> None:
    """Take a temporary away, before anyone else may hold it."""
    let_go(held)
    path.unlink(missing_ok=True)
    held.close()


def _made(path: Path) -> BinaryIO | None:
    """Make and hold the file of that name; None where another process is at it, or nothing can be held."""
    try:
        file = os.fdopen(os.open(path, _NEW, 0o600), "r+b")
    except OSError:
        return None
    try:
        if hold(file.fileno(), path):
            return file
    except OSError:
        path.unlink(missing_ok=True)
    file.close()
    return None


def _is(handle: int, path: Path) -> bool:
    try:
        return os.path.samestat(os.fstat(handle), path.lstat())
    except OSError:
        return False


if sys.platform == "win32":
    _NEW = os.O_RDWR | os.O_CREAT | os.O_EXCL | os.O_NOINHERIT | os.O_BINARY

    def let_go(held: BinaryIO) -> None:
        """Close what this system neither moves nor takes away while it is open."""
        held.close()

    def hold(handle: int, path: Path) -> bool:
        """Whether the open file is that of this name: what is open cannot be taken away here."""
        return _is(handle, path)

    def cleared(path: Path) -> bool:
        """Take away what nobody has open; whether there is nothing now."""
        try:
            path.unlink(missing_ok=True)
        except OSError:
            return False
        return True

else:
    import fcntl

    _NEW = os.O_RDWR | os.O_CREAT | os.O_EXCL

    def let_go(held: BinaryIO) -> None:
        """Keep hold: an open file is moved and taken away here as any other."""

    def hold(handle: int, path: Path) -> bool:
        """Lock an open file; whether it is this process's alone now, and still the one of this name.

        OSError where the file system has no locks.
        """
        try:
            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            return False
        return _is(handle, path)

    def cleared(path: Path) -> bool:
        """Take away what no process holds; whether there is nothing now."""
        try:
            handle = os.open(path, os.O_RDWR | os.O_NOFOLLOW | os.O_NONBLOCK)
        except FileNotFoundError:
            return True
        except OSError:
            return False
        try:
            if not hold(handle, path):
                return False
            path.unlink()
        except OSError:
            return False
        finally:
            os.close(handle)
        return True
