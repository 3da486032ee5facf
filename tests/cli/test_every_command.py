"""What holds of every command, a new one too: help with an example, --quiet, lines that fit, exit codes."""

import re
import shlex
from pathlib import Path

import pytest

from reporter.cli.main import COMMANDS
from tests.cli.conftest import Run
from tests.cli.every_command import LOG, OWN, RIGHT, WRONG, fill

CONTROLS = re.compile(r"[\x00-\x09\x0b-\x1f\x7f-\x9f\u202e]")


@pytest.fixture
def place(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    fill(tmp_path)
    monkeypatch.chdir(tmp_path)
    return tmp_path


def names(folder: Path) -> set[str]:
    return {str(path.relative_to(folder)) for path in folder.rglob("*")}


def test_every_command_is_held_to_these_promises() -> None:
    assert set(RIGHT) == set(WRONG) == set(COMMANDS)


@pytest.mark.parametrize("command", COMMANDS)
def test_help_fits_and_has_its_example_on_one_line_and_says_what_is_written(command: str, run: Run) -> None:
    ran = run(command, "--help")
    assert max(map(len, ran.out.splitlines())) <= 80
    (example,) = [line.strip() for line in ran.out.splitlines() if line.strip().startswith("Example: ")]
    assert ran.out.rstrip().endswith(example)
    assert any(line.startswith("  Writes ") for line in ran.out.splitlines())
    assert re.search(r"^  --quiet +Print nothing but failures\.$", ran.out, re.MULTILINE)


@pytest.mark.parametrize("command", COMMANDS)
def test_example_of_the_help_does_what_it_says(command: str, place: Path, run: Run) -> None:
    (example,) = re.findall(r"Example: reporter (.+)", run(command, "--help").out)
    if command == "blank":
        (place / LOG).unlink()
    before = names(place)
    ran = run(*shlex.split(example))
    assert (ran.code, ran.err) == (0, "")
    assert (names(place) == before) == (command in ("check", "pick"))


@pytest.mark.parametrize("command", COMMANDS)
def test_piped_results_stand_on_stdout_in_lines_that_fit_and_stderr_is_silent(
    command: str, place: Path, run: Run
) -> None:
    ran = run(command, *RIGHT[command])
    assert (ran.code, ran.err) == (0, "")
    assert ran.out.strip()
    assert not CONTROLS.search(ran.out)
    assert [line for line in ran.out.splitlines() if len(line) > 80] == []
    assert [line for line in ran.out.splitlines() if line != line.rstrip()] == []


@pytest.mark.parametrize("command", COMMANDS)
def test_quiet_does_the_same_and_prints_nothing(command: str, place: Path, run: Run) -> None:
    ran = run(command, *RIGHT[command], "--quiet")
    assert (ran.code, ran.out, ran.err) == (0, "", "")
    written = names(place)
    for path in sorted(place.rglob("*"), reverse=True):
        path.rmdir() if path.is_dir() else path.unlink()
    fill(place)
    assert run(command, *RIGHT[command]).code == 0
    assert names(place) == written


@pytest.mark.parametrize("quiet", [(), ("--quiet",)])
@pytest.mark.parametrize("command", COMMANDS)
def test_what_cannot_be_done_is_a_sentence_on_stderr_and_exit_code_1(
    command: str, quiet: tuple[str, ...], place: Path, run: Run
) -> None:
    before = names(place)
    ran = run(command, *WRONG[command], *quiet)
    assert (ran.code, ran.out) == (1, "")
    assert re.match(r"I cannot (read|write to) ", ran.err)
    assert names(place) == before


@pytest.mark.parametrize("command", COMMANDS)
@pytest.mark.parametrize("arguments", [(), ("--frobnicate",)])
def test_wrong_command_line_is_exit_code_2_with_the_usage(
    command: str, arguments: tuple[str, ...], place: Path, run: Run
) -> None:
    before = names(place)
    ran = run(command, *arguments)
    assert (ran.code, ran.out) == (2, "")
    assert ran.err.startswith("Usage: ")
    assert "Error: " in ran.err
    assert names(place) == before


@pytest.mark.parametrize("command", COMMANDS)
def test_no_name_of_a_file_gives_the_terminal_orders(command: str, place: Path, run: Run) -> None:
    hostile = {
        LOG: "a\x1b[31m\x9b2J\rb\u202e.xlsx",
        OWN: "c\x1b]0;x\x07.xlsx",
        "new.xlsx": "n\x1b[2J.xlsx",
        "desk": "d\x1b[2J",
    }
    for name in (LOG, OWN):
        (place / name).rename(place / hostile[name])
    ran = run(command, *(hostile.get(word, word) for word in RIGHT[command]))
    assert (ran.code, ran.err) == (0, "")
    assert not CONTROLS.search(ran.out)
