"""What stands in the files to drop a log on: no path is taken for an order, no jump leads nowhere."""

import re
import shlex
from collections.abc import Callable
from pathlib import Path

import pytest

from reporter.write.launchers import desktop_entry, linux_script, macos_script, windows_script
from tests.readme import README
from tests.write.exec_line import unescaped


def test_batch_file_quotes_paths_and_ends_its_lines_as_windows_does() -> None:
    text = windows_script("C:\\100% mine & yours\\python.exe")
    assert text.replace("\r\n", "").count("\n") == 0
    assert '"C:\\100%% mine & yours\\python.exe" -P -c' in text
    assert '"%~1"' in text
    assert text.count('start "" "%~dpn1 report.xlsx"') == 1
    assert "missing" not in text


@pytest.mark.parametrize("python", ["C:\\python.exe", None])
def test_batch_file_opens_a_folder_with_reports_and_says_what_has_none(python: str | None) -> None:
    """What is done with a folder stands before what is done with a log."""
    lines = windows_script(python).splitlines()
    folder = lines.index('if exist "%~1\\* report.xlsx" (')
    log = next(place for place, line in enumerate(lines) if line.startswith(") else if not %code%==0"))
    assert lines[folder - 1] == "set code=%errorlevel%"
    inside = lines[folder + 1 : log]
    assert inside[-1].strip() == 'start "" "%~1"'
    assert '  if not %code%==0 echo Not every log in "%~1" has a new report: see above.' in inside
    assert not any("No report for" in line for line in inside)
    jumps = {line.split("goto ")[1] for line in lines if "goto " in line}
    assert {f":{label}" for label in jumps} == {line for line in lines if line.startswith(":")}


def test_batch_file_from_elsewhere_looks_for_reporter_first_and_says_what_to_install() -> None:
    lines = windows_script(None).splitlines()
    assert lines.index("where reporter >nul 2>nul") < lines.index('reporter build "%~1"')
    missing = lines[lines.index(":missing") :]
    # In a batch file a sign that would join two commands is written with a caret before it.
    told = "\n".join(line.removeprefix("echo ").replace("^&", "&").strip() for line in missing)
    readme = README.read_text(encoding="utf-8")
    for words in (
        "You need Python 3.11 or later and nothing else.",
        "py -3 -m venv .venv && .venv\\Scripts\\python -m pip install -q -e .",
    ):
        assert words in told
        assert words in readme
    assert not [line for line in missing if line.startswith("echo") and re.search(r"[^^]&|[<>|]", line)]


@pytest.mark.parametrize("make_script", [linux_script, macos_script])
def test_shell_takes_the_path_of_python_as_it_is(make_script: Callable[[str], str]) -> None:
    python = "/opt/o'brien $x/`id`/python"
    (line,) = (line for line in make_script(python).splitlines() if " -P -c " in line)
    words = shlex.split(line.split("if ", 1)[1].split("; then")[0])
    assert words[0] == python


@pytest.mark.parametrize(
    "name", ["plain.sh", 'a "quoted".sh', "50 % $off.sh", "back`tick.sh", "back\\slash.sh"]
)
def test_desktop_entry_names_the_script_whatever_its_path_is(name: str, tmp_path: Path) -> None:
    script = tmp_path / name
    (line,) = (line for line in desktop_entry(script).splitlines() if line.startswith("Exec="))
    command, field = line.removeprefix("Exec=").rsplit(" ", 1)
    assert field == "%F"
    assert unescaped(command) == str(script)
