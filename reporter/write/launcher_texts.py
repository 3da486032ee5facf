"""What stands in the files to drop a season log on, with places for what differs by computer."""

from typing import Final

NAME: Final = "Season report"

DROP: Final = (
    "Drop a season log on this file: its report is built and opened. "
    "Of a folder of logs all are built, and it is opened."
)
DOUBLE_CLICK: Final = (
    "Double-click this file and choose a season log: its report is built beside it and opened."
)

WINDOWS: Final = """\
@echo off
rem {mark}
rem {please}
rem It runs: reporter build LOG, then opens "LOG report.xlsx", which lies beside the log. Of a folder of logs
rem the reports lie in it, and it is opened itself.
chcp 65001 >nul
{find}if "%~1"=="" (
  echo {please}
  pause
  exit /b 2
)
:next
if "%~1"=="" goto done
{run} build "%~1"
set code=%errorlevel%
if exist "%~1\\* report.xlsx" (
  if not %code%==0 echo.
  if not %code%==0 echo Not every log in "%~1" has a new report: see above.
  start "" "%~1"
) else if not %code%==0 (
  echo.
  echo No report for "%~1": see above.
) else if exist "%~dpn1 report.xlsx" (
  start "" "%~dpn1 report.xlsx"
)
shift
goto next
:done
pause
exit /b 0
{missing}"""

FIND_WINDOWS: Final = """\
where reporter >nul 2>nul
if errorlevel 1 goto missing
"""
# The last two on one line: the launcher may be written anew while it waits there.
MISSING_WINDOWS: Final = """\
:missing
echo I cannot find reporter on this computer's PATH.
echo You need Python 3.11 or later and nothing else. In the folder with this tool's README run
echo   py -3 -m venv .venv ^&^& .venv\\Scripts\\python -m pip install -q -e .
echo and then, for a launcher that finds it, in the place of this one:
echo   .venv\\Scripts\\reporter launcher "%~dp0."
pause & exit /b 2
"""

SHELL: Final = """\
#!/bin/sh
# {mark}
# {please}
# It runs: reporter build LOG, then opens "LOG report.xlsx", which lies beside the log. Of a folder of logs
# the reports lie in it, and it is opened itself.
close() {{
    if [ -t 0 ]; then
        printf 'Press Enter to close. '
        read -r _
    fi
    exit "$1"
}}
holds_reports() {{
    for report in "$1"/*" report.xlsx"; do
        if [ -f "$report" ]; then return 0; fi
    done
    return 1
}}
{find}{choose}for log in "$@"; do
    if {run} build "$log"; then failed=; else failed=yes; fi
    beside=${{log%/}}
    case ${{beside##*/}} in
        ?*.*) beside=${{beside%.*}} ;;
    esac
    if [ -d "$log" ] && holds_reports "$log"; then
        if [ "$failed" ]; then printf '%s\\n' "Not every log in $log has a new report: see above."; fi
        {open} "$log"
    elif [ "$failed" ]; then
        printf '%s\\n' "No report for $log: see above."
    elif [ -f "$beside report.xlsx" ]; then
        {open} "$beside report.xlsx"
    fi
done
close 0
"""

FIND_SHELL: Final = """\
if ! command -v reporter >/dev/null; then
    cat <<'END'
I cannot find reporter on this computer's PATH.
You need Python 3.11 or later and nothing else. In the folder with this tool's README run
  python3 -m venv .venv && .venv/bin/python -m pip install -q -e .
and then, for a launcher that finds it, in the place of this one:
END
    printf '  .venv/bin/reporter launcher "%s"\\n' "$(cd "$(dirname "$0")" && pwd)"
    close 2
fi
"""

# What is dropped on a script is not told to it there, so it asks; as an applet it could not be read.
CHOOSE_MACOS: Final = """\
if [ $# -eq 0 ]; then
    log=$(osascript -e 'POSIX path of (choose file with prompt "Which season log?")') || exit 0
    set -- "$log"
fi
"""
CHOOSE_LINUX: Final = """\
if [ $# -eq 0 ]; then
    echo '{please}'
fi
"""

DESKTOP: Final = """\
[Desktop Entry]
# {mark}
# {please}
# It runs the file {script} that lies in the same folder: read there what it does.
Type=Application
Name={name}
Comment=Build the report of a season log and open it
Exec={command} %F
Terminal=true
MimeType=application/vnd.openxmlformats-officedocument.spreadsheetml.sheet;inode/directory;
"""
