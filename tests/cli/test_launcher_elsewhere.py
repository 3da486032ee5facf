"""A launcher for another kind of computer than the one on which it is written."""

import re
import shlex
import sys
from pathlib import Path

import pytest

from reporter.write.launchers import launcher_names, write_launcher
from tests.cli.desktop import OPENERS, Desk, launched, needs_shell, opened_in, put_program, run, script_of
from tests.demo import make
from tests.readme import README
from tests.write.exec_line import unescaped

ELSEWHERE: dict[str, str] = {"windows": "linux", "macos": "windows", "linux": "macos"}
"""Kind of computer that a launcher is for -> another one, on which it is written."""


@pytest.mark.parametrize("desktop", ELSEWHERE)
def test_launcher_for_another_kind_of_computer_names_nothing_of_this_one(
    desktop: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("reporter.run.launcher.this_desktop", lambda: ELSEWHERE[desktop])
    made = launched(str(tmp_path), "--for", desktop)
    said = " ".join(made.stdout.split())
    assert "made for another kind of computer and was not tried on this one" in said
    for path in tmp_path.iterdir():
        text = path.read_text(encoding="utf-8")
        for own in (sys.executable, sys.prefix, str(tmp_path), str(make.SAMPLES.parent)):
            assert own not in text


@pytest.mark.parametrize("desktop", ELSEWHERE)
def test_launcher_for_this_kind_of_computer_runs_the_python_that_wrote_it(
    desktop: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("reporter.run.launcher.this_desktop", lambda: desktop)
    for chosen in ((), ("--for", desktop)):
        made = launched(str(tmp_path), *chosen)
        assert "another kind of computer" not in " ".join(made.stdout.split())
        (script,) = [path for path in tmp_path.iterdir() if path.suffix != ".desktop"]
        text = script.read_text(encoding="utf-8")
        assert sys.executable in text
        assert "find reporter" not in text


@needs_shell
@pytest.mark.parametrize("desktop", OPENERS)
def test_launcher_from_elsewhere_runs_the_reporter_on_the_path(desktop: Desk, tmp_path: Path) -> None:
    script = script_of(tmp_path, desktop, None)
    program = f'{shlex.quote(sys.executable)} -c "from reporter.cli.main import run; run()" "$@"'
    put_program(tmp_path / "bin" / "reporter", program)
    log = tmp_path / "mine.xlsx"
    log.write_bytes((make.SAMPLES / make.CLEAN).read_bytes())
    done = run(script, log, home=tmp_path)
    assert (done.returncode, done.stderr) == (0, "")
    assert opened_in(tmp_path) == [str(tmp_path / "mine report.xlsx")]


@needs_shell
@pytest.mark.parametrize("desktop", OPENERS)
def test_launcher_from_elsewhere_says_what_to_install_in_the_words_of_the_readme(
    desktop: Desk, tmp_path: Path
) -> None:
    script = script_of(tmp_path, desktop, None)
    done = run(script, tmp_path / "mine.xlsx", home=tmp_path)
    assert (done.returncode, done.stderr) == (2, "")
    assert "I cannot find reporter on this computer's PATH." in done.stdout
    assert f'.venv/bin/reporter launcher "{tmp_path}"' in done.stdout
    assert opened_in(tmp_path) == []
    readme = README.read_text(encoding="utf-8")
    for words in (
        "You need Python 3.11 or later and nothing else.",
        "python3 -m venv .venv && .venv/bin/python -m pip install -q -e .",
    ):
        assert words in done.stdout
        assert words in readme


@needs_shell
@pytest.mark.parametrize("told", [True, False], ids=["place told", "place left out"])
def test_desktop_entry_from_elsewhere_runs_the_script_beside_it(told: bool, tmp_path: Path) -> None:
    """The desktop puts the entry's own path for %k, or nothing, and what is dropped for %F, each a word."""
    folder = tmp_path / "it's 50 % of $HOME"
    folder.mkdir()
    write_launcher(folder, "linux", None)
    put_program(
        tmp_path / "bin" / "xdg-user-dir", f"echo {'elsewhere' if told else shlex.quote(str(folder))}"
    )
    script, entry = (folder / name for name in launcher_names("linux"))
    script.write_text('printf "%s\\n" "$@"\n')
    (line,) = (line for line in entry.read_text().splitlines() if line.startswith("Exec="))
    found = re.fullmatch(r"Exec=sh -c (\".*\") at:%k %F", line)
    assert found is not None
    place = f"at:{entry if told else ''}"
    done = run("sh", "-c", unescaped(found[1]), place, "a log.xlsx", "b.xlsx", home=tmp_path)
    assert (done.stdout, done.stderr) == ("a log.xlsx\nb.xlsx\n", "")
