"""Small files to drop a season log on: each builds the report beside the log and opens it.

They are plain text, so that whoever is asked to trust one can read what it does.
"""

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Final, Literal

from reporter.files.atomic import replace_file

Desktop = Literal["windows", "macos", "linux"]

MARK: Final = "Written by: reporter launcher"
"""Stands in every file, and tells ours from others."""

NAME: Final = "Season report"

_EXECUTABLE: Final = 0o755
_RUN: Final = "from reporter.cli.main import run; run()"
_PLEASE = "Drop a season log on this file, or a folder of logs, and its report is built and opened."

_WINDOWS = """\
@echo off
rem {mark}
rem {please}
rem It runs: reporter build LOG, then opens "LOG report.xlsx", which lies beside the log.
chcp 65001 >nul
if "%~1"=="" (
  echo {please}
  pause
  exit /b 2
)
:next
if "%~1"=="" goto done
"{python}" -P -c "{run}" build "%~1"
if errorlevel 1 (
  echo.
  echo No report for "%~1": see above.
) else if exist "%~dpn1 report.xlsx" (
  start "" "%~dpn1 report.xlsx"
)
shift
goto next
:done
pause
"""

_SHELL = """\
#!/bin/sh
# {mark}
# {please}
# It runs: reporter build LOG, then opens "LOG report.xlsx", which lies beside the log.
{choose}for log in "$@"; do
    if {python} -P -c '{run}' build "$log"; then
        report="${{log%.*}} report.xlsx"
        if [ -f "$report" ]; then {open} "$report"; fi
    else
        echo "No report for $log: see above."
    fi
done
if [ -t 0 ]; then
    printf 'Press Enter to close. '
    read -r _
fi
"""

# What is dropped on a script is not told to it there, so it asks; as an applet it could not be read.
_CHOOSE_MACOS = """\
if [ $# -eq 0 ]; then
    log=$(osascript -e 'POSIX path of (choose file with prompt "Which season log?")') || exit 0
    set -- "$log"
fi
"""
_CHOOSE_LINUX = """\
if [ $# -eq 0 ]; then
    echo '{please}'
fi
"""

_DESKTOP = """\
[Desktop Entry]
# {mark}
# {please}
# It runs the file {script} that lies in the same folder: read there what it does.
Type=Application
Name={name}
Comment=Build the report of a season log and open it
Exec="{script_path}" %F
Terminal=true
MimeType=application/vnd.openxmlformats-officedocument.spreadsheetml.sheet;
"""


def launcher_names(desktop: Desktop) -> tuple[str, ...]:
    """Return the names of the files of a desktop, the one to drop a log on last."""
    script = {"windows": f"{NAME}.bat", "macos": f"{NAME}.command", "linux": f"{NAME}.sh"}[desktop]
    return (script, f"{NAME}.desktop") if desktop == "linux" else (script,)


def write_launcher(folder: Path, desktop: Desktop, python: str) -> None:
    """Write the files of a desktop into a folder. python: path of the Python that has this program.

    CannotWrite where the system refuses.
    """
    make: Mapping[str, Callable[[], str]] = {
        f"{NAME}.bat": lambda: windows_script(python),
        f"{NAME}.command": lambda: shell_script(python, "open", _CHOOSE_MACOS),
        f"{NAME}.sh": lambda: shell_script(python, "xdg-open", _CHOOSE_LINUX),
        f"{NAME}.desktop": lambda: desktop_entry(folder / f"{NAME}.sh"),
    }
    for name in launcher_names(desktop):
        text = make[name]()

        def write(path: Path, text: str = text) -> None:
            path.write_bytes(text.encode("utf-8"))

        replace_file(folder / name, write)
        (folder / name).chmod(_EXECUTABLE)


def windows_script(python: str) -> str:
    """Return the batch file; its lines end as Windows wants them, and % in the path is doubled."""
    text = _WINDOWS.format(mark=MARK, please=_PLEASE, python=python.replace("%", "%%"), run=_RUN)
    return text.replace("\n", "\r\n")


def shell_script(python: str, opener: str, choose: str) -> str:
    """Return the script for a shell. opener: the command that opens a file in its program."""
    asks = choose.replace("{please}", _PLEASE)
    quoted = "'" + python.replace("'", "'\\''") + "'"
    return _SHELL.format(mark=MARK, please=_PLEASE, choose=asks, python=quoted, run=_RUN, open=opener)


def desktop_entry(script: Path) -> str:
    """Return the entry that a Linux desktop takes a dropped file by. script: what it runs.

    Source: Desktop Entry Specification, "The Exec key": in quotes four signs are escaped by a backslash, % is
    doubled; the whole value is then a string, in which backslashes are escaped once more.
    """
    path = str(script.resolve())
    for sign in ("\\", '"', "`", "$"):
        path = path.replace(sign, f"\\{sign}")
    path = path.replace("%", "%%").replace("\\", "\\\\")
    return _DESKTOP.format(mark=MARK, please=_PLEASE, script=script.name, name=NAME, script_path=path)
