"""Why a file could not be written, in words a guide can act on."""

import errno
from pathlib import Path
from typing import Final


class CannotWrite(Exception):  # noqa: N818 - named as it reads in an except clause
    """A file was not written and what was there before is untouched; ``str()`` is one plain sentence."""


IS_A_FILE: Final = "is a file, not a folder; choose another name"
"""Why nothing is written into what should be a folder, completing its name."""

_REASONS = {
    errno.ENOENT: "the folder does not exist; make it first or choose another",
    errno.ENOTDIR: "part of its path is a file, not a folder; choose another folder",
    errno.EISDIR: "that is a folder; add a file name to it",
    errno.EACCES: "you have no permission to write there; choose another folder",
    errno.EPERM: "you have no permission to write there; choose another folder",
    errno.EROFS: "that disk is read-only; choose another folder",
    errno.ENOSPC: "the disk is full; make room and run it again",
    errno.EDQUOT: "your share of the disk is full; make room and run it again",
    errno.ELOOP: "a link on its path leads round in a circle; choose another place",
    errno.ENAMETOOLONG: "the name is too long; choose a shorter one",
}


def refusal(target: Path, reason: str) -> CannotWrite:
    """Make the exception that says ``reason`` about ``target``."""
    return CannotWrite(f"I cannot write to {target}: {reason}.")


def refusal_for(target: Path, error: OSError) -> CannotWrite:
    """Make the exception for what the operating system said about ``target``."""
    said = error.strerror or type(error).__name__
    return refusal(
        target, _REASONS.get(error.errno or 0, f"the computer says “{said}”; choose another place")
    )


def system_error_in(error: BaseException) -> OSError | None:
    """Find the operating system's error: this one, or one that a writing library wrapped; else None."""
    for candidate in (error, *error.args, error.__cause__):
        if isinstance(candidate, OSError):
            return candidate
    return None
