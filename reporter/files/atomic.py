"""Replaces a file whole or not at all."""

import errno
import os
import time
from collections.abc import Callable
from pathlib import Path

from reporter.files.errors import refusal, refusal_for, system_error_in
from reporter.files.real import real_path
from reporter.files.temporary import fresh_beside

_PAUSES_S = (0.2, 0.3, 0.5)  # between tries on a target that another program holds: one second in all


def replace_file(target: Path, write: Callable[[Path], None]) -> None:
    """Let ``write`` fill a temporary file beside ``target`` and put it in the target's place.

    The temporary lies in the target's own folder and ends in the target's suffix; it is gone whatever
    happens: a process that is killed leaves it to the next one that writes into the folder. A link is
    followed, never replaced. What the operating system refuses becomes CannotWrite; any other exception of
    ``write`` passes through. In each case the old file stays as it was.
    """
    final = real_path(target)
    try:
        if final.is_symlink():
            raise OSError(errno.ELOOP, os.strerror(errno.ELOOP))
        if final.is_dir():
            raise IsADirectoryError(errno.EISDIR, "a folder")
        temporary = fresh_beside(final)
    except OSError as error:
        raise refusal_for(target, error) from error
    try:
        _fill(temporary, write, target)
        _put_in_place(temporary, final, target)
    finally:
        temporary.unlink(missing_ok=True)


def _fill(temporary: Path, write: Callable[[Path], None], target: Path) -> None:
    try:
        write(temporary)
        with temporary.open("r+b") as file:
            os.fsync(file.fileno())
        temporary.chmod(0o666 & ~_umask())  # a temporary is made private; a report is an ordinary file
    except Exception as error:
        cause = system_error_in(error)
        if cause is None:
            raise
        raise refusal_for(target, cause) from error


def _put_in_place(temporary: Path, final: Path, target: Path) -> None:
    for pause in (*_PAUSES_S, None):
        try:
            temporary.replace(final)
        except PermissionError as error:
            if pause is None:
                reason = "it may be open in another program; close it there and run it again"
                raise refusal(target, f"{reason} (the old file is unchanged)") from error
            time.sleep(pause)
        except OSError as error:
            raise refusal_for(target, error) from error
        else:
            return


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask
