"""`reporter launcher`: files to drop a log on. The one for Linux is run, the others are read."""

import shlex
import stat
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from reporter.cli.main import cli
from reporter.write.launchers import desktop_entry, shell_script, windows_script
from tests.demo import make


def launched(*arguments: str) -> Result:
    return CliRunner().invoke(cli, ["launcher", *arguments])


def script_of(folder: Path) -> Path:
    """The script of a Linux launcher, and beside it a program that writes down what it is asked to open."""
    assert launched(str(folder), "--for", "linux").exit_code == 0
    opener = folder / "bin" / "xdg-open"
    opener.parent.mkdir()
    opener.write_text(f'#!/bin/sh\nprintf "%s\\n" "$1" >> {shlex.quote(str(folder / "opened"))}\n')
    opener.chmod(0o755)
    return folder / "Season report.sh"


def run(script: Path, *logs: Path) -> subprocess.CompletedProcess[str]:
    path = f"{script.parent / 'bin'}:/usr/bin:/bin"
    return subprocess.run(
        [str(script), *map(str, logs)],
        env={"PATH": path, "PYTHONPATH": str(make.SAMPLES.parent)},
        capture_output=True,
        text=True,
        stdin=subprocess.DEVNULL,
        check=False,
    )


@pytest.mark.skipif(sys.platform == "win32", reason="a script for a shell")
def test_log_that_is_dropped_gets_its_report_and_the_report_is_opened(tmp_path: Path) -> None:
    folder = tmp_path / "it's a $HOME"
    script = script_of(folder)
    log = folder / "my season; rm 2026.xlsx"
    log.write_bytes((make.SAMPLES / make.CLEAN).read_bytes())
    done = run(script, log)
    report = folder / "my season; rm 2026 report.xlsx"
    assert report.exists(), done.stderr
    assert (folder / "opened").read_text().splitlines() == [str(report)]
    assert "919 read" in done.stdout


@pytest.mark.skipif(sys.platform == "win32", reason="a script for a shell")
def test_log_that_cannot_be_done_is_said_and_the_others_are_built(tmp_path: Path) -> None:
    script = script_of(tmp_path)
    broken, good = tmp_path / "broken.xlsx", tmp_path / "good.xlsx"
    broken.write_bytes(b"no workbook")
    good.write_bytes((make.SAMPLES / make.CLEAN).read_bytes())
    done = run(script, broken, good)
    assert f"No report for {broken}" in done.stdout
    assert (tmp_path / "opened").read_text().splitlines() == [str(tmp_path / "good report.xlsx")]


def test_files_can_be_read_and_run(tmp_path: Path) -> None:
    for desktop, names in (
        ("windows", ["Season report.bat"]),
        ("macos", ["Season report.command"]),
        ("linux", ["Season report.desktop", "Season report.sh"]),
    ):
        folder = tmp_path / desktop
        assert launched(str(folder), "--for", desktop).exit_code == 0
        assert sorted(path.name for path in folder.iterdir()) == names
        for path in folder.iterdir():
            assert path.stat().st_mode & stat.S_IXUSR
            assert "Written by: reporter launcher" in path.read_text(encoding="utf-8")


def test_launcher_is_written_anew_over_its_own_and_over_nothing_else(tmp_path: Path) -> None:
    assert launched(str(tmp_path), "--for", "windows").exit_code == 0
    assert launched(str(tmp_path), "--for", "windows").exit_code == 0
    other = tmp_path / "Season report.command"
    other.write_text("mine")
    refused = launched(str(tmp_path), "--for", "macos")
    assert refused.exit_code == 1
    assert "was not written by reporter" in " ".join(refused.stderr.split())
    assert other.read_text() == "mine"


def test_file_in_the_place_of_the_folder_is_a_sentence(tmp_path: Path) -> None:
    place = tmp_path / "a file"
    place.write_text("")
    refused = launched(str(place))
    assert refused.exit_code == 1
    assert refused.stderr.startswith("I cannot write")


def test_batch_file_quotes_paths_and_ends_its_lines_as_windows_does() -> None:
    text = windows_script("C:\\100% mine & yours\\python.exe")
    assert text.replace("\r\n", "").count("\n") == 0
    assert '"C:\\100%% mine & yours\\python.exe" -P -c' in text
    assert '"%~1"' in text
    assert text.count('start "" "%~dpn1 report.xlsx"') == 1


def test_shell_takes_the_path_of_python_as_it_is() -> None:
    python = "/opt/o'brien $x/`id`/python"
    (line,) = (line for line in shell_script(python, "open", "").splitlines() if " -P -c " in line)
    words = shlex.split(line.split("if ", 1)[1].split(";")[0] + "'")
    assert words[0] == python


def unescaped(value: str) -> str:
    """Read a string value, then one quoted argument, as the Desktop Entry Specification says."""
    once = value.replace("\\\\", "\\")
    assert once[0] == once[-1] == '"'
    out, rest = "", once[1:-1]
    while rest:
        step = 2 if rest[0] == "\\" else 1
        out += rest[step - 1]
        rest = rest[step:]
    return out.replace("%%", "%")


@pytest.mark.parametrize(
    "name", ["plain.sh", 'a "quoted".sh', "50 % $off.sh", "back`tick.sh", "back\\slash.sh"]
)
def test_desktop_entry_names_the_script_whatever_its_path_is(name: str, tmp_path: Path) -> None:
    script = tmp_path / name
    (line,) = (line for line in desktop_entry(script).splitlines() if line.startswith("Exec="))
    command, field = line.removeprefix("Exec=").rsplit(" ", 1)
    assert field == "%F"
    assert unescaped(command) == str(script)
