"""Write a launcher: files to drop a log on, for those who never type a command."""

import sys
from pathlib import Path

from reporter.files.errors import refusal, refusal_for
from reporter.files.folders import make_folder
from reporter.write.launchers import MARK, Desktop, launcher_names, write_launcher

_ENOUGH = 1_000  # bytes in which the mark stands


def this_desktop() -> Desktop:
    """Return the kind of desktop that this computer has."""
    if sys.platform == "win32":
        return "windows"
    return "macos" if sys.platform == "darwin" else "linux"


def make_launcher(folder: Path, desktop: Desktop) -> Path:
    """Write the launcher of a desktop into a folder and return the file to drop a log on.

    One for another kind of computer names nothing of this one.
    CannotWrite, one sentence, where something else has its name or the system refuses.
    """
    make_folder(folder)
    targets = [folder / name for name in launcher_names(desktop)]
    for target in targets:
        _guard(target)
    write_launcher(folder, desktop, sys.executable if desktop == this_desktop() else None)
    return targets[-1]


def _guard(target: Path) -> None:
    try:
        if not target.exists():
            return
        with target.open("rb") as file:
            ours = MARK.encode() in file.read(_ENOUGH)
    except OSError as error:
        raise refusal_for(target, error) from error
    if not ours:
        raise refusal(target, "it exists and was not written by reporter; choose another folder or move it")
