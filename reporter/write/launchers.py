"""Small files to drop a season log on: each builds the report beside the log and opens it.

They are plain text, so that whoever is asked to trust one can read what it does. One for this computer runs
the Python that has this program; one for another kind of computer looks there for `reporter` on the PATH.
"""

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Final, Literal

from reporter.files.atomic import replace_file
from reporter.files.real import real_path
from reporter.write import launcher_texts as texts
from reporter.write.launcher_texts import NAME

Desktop = Literal["windows", "macos", "linux"]

MARK: Final = "Written by: reporter launcher"
"""Stands in every file, and tells ours from others."""

_EXECUTABLE: Final = 0o755
_RUN: Final = "from reporter.cli.main import run; run()"
_ON_THE_PATH: Final = "reporter"
_BESIDE: Final = (
    f'at=${{0#at:}}; run="${{at%/*}}/{NAME}.sh"; '
    f'[ -f "$run" ] || run="$(xdg-user-dir DESKTOP)/{NAME}.sh"; exec sh "$run" "$@"'
)


def launcher_names(desktop: Desktop) -> tuple[str, ...]:
    """Return the names of the files of a desktop, the one to drop a log on last."""
    script = {"windows": f"{NAME}.bat", "macos": f"{NAME}.command", "linux": f"{NAME}.sh"}[desktop]
    return (script, f"{NAME}.desktop") if desktop == "linux" else (script,)


def write_launcher(folder: Path, desktop: Desktop, python: str | None) -> None:
    """Write the files of a desktop into a folder.

    python: path of the Python that has this program; None where the files are for another computer.
    CannotWrite where the system refuses.
    """
    script = None if python is None else folder / f"{NAME}.sh"
    make: Mapping[str, Callable[[], str]] = {
        f"{NAME}.bat": lambda: windows_script(python),
        f"{NAME}.command": lambda: macos_script(python),
        f"{NAME}.sh": lambda: linux_script(python),
        f"{NAME}.desktop": lambda: desktop_entry(script),
    }
    for name in launcher_names(desktop):
        text = make[name]()

        def write(path: Path, text: str = text) -> None:
            path.write_bytes(text.encode("utf-8"))

        replace_file(folder / name, write)
        (folder / name).chmod(_EXECUTABLE)


def windows_script(python: str | None) -> str:
    """Return the batch file; its lines end as Windows wants them, and % in the path is doubled."""
    here = python is not None
    text = texts.WINDOWS.format(
        mark=MARK,
        please=texts.DROP,
        find="" if here else texts.FIND_WINDOWS,
        run=_ON_THE_PATH if python is None else f'"{python.replace("%", "%%")}" -P -c "{_RUN}"',
        missing="" if here else texts.MISSING_WINDOWS,
    )
    return text.replace("\n", "\r\n")


def macos_script(python: str | None) -> str:
    """Return the script that macOS runs in a window when it is double-clicked."""
    return _shell_script(python, texts.DOUBLE_CLICK, "open", texts.CHOOSE_MACOS)


def linux_script(python: str | None) -> str:
    """Return the script that the entry of a Linux desktop runs."""
    return _shell_script(python, texts.DROP, "xdg-open", texts.CHOOSE_LINUX.format(please=texts.DROP))


def _shell_script(python: str | None, please: str, opener: str, choose: str) -> str:
    """Return a script for a shell. opener: the command that opens a file or folder in its program."""
    return texts.SHELL.format(
        mark=MARK,
        please=please,
        find=texts.FIND_SHELL if python is None else "",
        choose=choose,
        run=_ON_THE_PATH if python is None else f"{_shell_quoted(python)} -P -c '{_RUN}'",
        open=opener,
    )


def _shell_quoted(text: str) -> str:
    return "'" + text.replace("'", "'\\''") + "'"


def desktop_entry(script: Path | None) -> str:
    """Return the entry that a Linux desktop takes a dropped file by.

    script: what it runs; None where it will lie beside the entry on another computer. The entry then asks for
    its own place by %k; a desktop may leave that out, and then it looks on the desktop itself.
    """
    beside = f"sh -c {_exec_quoted(_BESIDE)} at:%k"
    command = _exec_quoted(str(real_path(script))) if script else beside
    return texts.DESKTOP.format(mark=MARK, please=texts.DROP, script=f"{NAME}.sh", name=NAME, command=command)


def _exec_quoted(text: str) -> str:
    """Return one argument of an Exec line.

    Source: Desktop Entry Specification, "The Exec key": in quotes four signs are escaped by a backslash, % is
    doubled; the whole value is then a string, in which backslashes are escaped once more.
    """
    for sign in ("\\", '"', "`", "$"):
        text = text.replace(sign, f"\\{sign}")
    return '"' + text.replace("%", "%%").replace("\\", "\\\\") + '"'
