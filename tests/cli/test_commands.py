"""The command line itself: help, exit codes, what is printed where, what is imported when."""

import subprocess
import sys
from pathlib import Path

import openpyxl
import pytest

from reporter.cli import say
from reporter.cli.main import COMMANDS
from reporter.files.mark import read_mark
from tests.cli.conftest import Run
from tests.conftest import WriteLog

HEAVY = {"pandas", "numpy", "scipy", "openpyxl", "xlsxwriter"}


def test_help_lists_every_command_with_its_line(run: Run) -> None:
    ran = run("--help")
    assert ran.code == 0
    for command, (_, line) in COMMANDS.items():
        assert f"{command}  " in ran.out
        assert line in ran.out


@pytest.mark.parametrize("arguments", [["--help"], ["--version"], ["check", "--help"], ["build", "--help"]])
def test_nothing_heavy_is_imported_to_print_help(arguments: list[str]) -> None:
    code = (
        "import sys\nfrom reporter.cli.main import main\n"
        f"try:\n    main({arguments!r})\nexcept SystemExit as end:\n    assert not end.code\n"
        "print(*sys.modules, file=sys.stderr)"
    )
    ran = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    imported = {name.partition(".")[0] for name in ran.stderr.split()}
    assert "reporter" in imported
    assert "click" in imported
    assert not imported & HEAVY


def test_installed_command_gives_the_exit_code_to_the_shell(tmp_path: Path) -> None:
    command = Path(sys.executable).with_name("reporter")
    ran = subprocess.run(
        [command, "check", tmp_path / "no.xlsx"], capture_output=True, text=True, check=False
    )
    assert ran.returncode == 1
    assert ran.stdout == ""
    assert ran.stderr.startswith("I cannot read no.xlsx: there is no such file")
    assert "Traceback" not in ran.stderr


@pytest.mark.parametrize(
    "arguments",
    [
        ["build"],
        ["check"],
        ["blank"],
        ["build", "--wrong", "log.xlsx"],
        ["check", "--out", "x", "log.xlsx"],
        ["frobnicate"],
        ["blank", "log.xlsx", "--units", "cubits"],
        ["blank", "log.xlsx", "--season", "soon"],
        ["blank", "log.ods"],
        ["blank", "a.xlsx", "b.xlsx"],
        ["build", "log.xlsx", "--out"],
    ],
)
def test_wrong_command_line_exits_2_and_writes_nothing(
    arguments: list[str], tmp_path: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    ran = run(*arguments)
    assert ran.code == 2
    assert ran.out == ""
    assert "Error: " in ran.err
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("units", ["us", "metric"])
def test_blank_writes_a_log_that_has_nothing_wrong_but_its_emptiness(
    units: str, tmp_path: Path, run: Run
) -> None:
    path = tmp_path / "new.xlsx"
    ran = run("blank", path, "--units", units, "--season", "2026")
    assert (ran.code, ran.err) == (0, "")
    assert "new.xlsx" in ran.out
    assert read_mark(path) == "log"
    length = "Length (in)" if units == "us" else "Length (cm)"
    assert length in [cell.value for cell in openpyxl.load_workbook(path)["Catch"][1]]
    checked = " ".join(run("check", path).out.split())
    assert "Stop: no report until these are mended (1)" in checked
    assert "Set aside" not in checked


def test_blank_adds_the_ending_where_none_is_typed(tmp_path: Path, run: Run) -> None:
    assert run("blank", tmp_path / "season").code == 0
    assert [path.name for path in tmp_path.iterdir()] == ["season.xlsx"]


@pytest.mark.parametrize("kind", ["ours", "report", "foreign"])
def test_blank_never_writes_over_a_file(kind: str, write_log: WriteLog, run: Run) -> None:
    path = write_log()
    if kind == "ours":
        path.unlink()
        assert run("blank", path).code == 0
    elif kind == "report":
        assert run("build", path).code == 0
        path = path.with_name("log report.xlsx")
    before = path.read_bytes()
    ran = run("blank", path)
    assert ran.code == 1
    assert ran.out == ""
    assert ran.err.startswith(f"I cannot write to {path}: ")
    assert path.read_bytes() == before


def test_blank_into_a_folder_that_is_not_there_is_one_sentence(tmp_path: Path, run: Run) -> None:
    ran = run("blank", tmp_path / "no" / "season.xlsx")
    assert ran.code == 1
    assert "the folder does not exist" in ran.err
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(
    ("changes", "heading"),
    [
        ({}, "Nothing to mend: every row was read and used."),
        ({"Trips": {"C4": "Lk Arden"}}, "Note: used as it stands (1)"),
        ({"Catch": {"A4": "T-045"}}, "Set aside: not used, in no total (1)"),
    ],
)
def test_check_exits_0_where_nothing_stops_the_report(
    changes: dict[str, object], heading: str, write_log: WriteLog, run: Run
) -> None:
    ran = run("check", write_log(changes))
    assert (ran.code, ran.err) == (0, "")
    assert heading in ran.out
    assert "Stop:" not in ran.out


def test_check_names_the_place_and_the_cell_and_counts_the_rows(write_log: WriteLog, run: Run) -> None:
    ran = run("check", write_log({"Catch": {"D2": 1650}}))
    said = " ".join(ran.out.split())
    assert "Catch row 2, Length (in) (D2): 1650 is more than any length can be" in said
    rows = {line.split()[0]: line.split()[1:] for line in ran.out.splitlines() if line.startswith("  Catch ")}
    assert rows["Catch"][-5:] == ["3", "3", "0", "0", "0"]
    assert "read = used + set aside + blank + not rows" in said


def test_check_warns_of_sorting_where_blanks_mean_the_row_above(write_log: WriteLog, run: Run) -> None:
    said = " ".join(run("check", write_log({"Effort": {"A3": None}})).out.split())
    assert "1 row without a trip was read as the trip of the row above: never sort Effort or Catch" in said
    said = " ".join(run("check", write_log({"Effort": {"A3": None}, "Catch": {"A3": None}})).out.split())
    assert "2 rows without a trip were read as the trip of the row above: never sort Effort or Catch" in said
    assert "sort" not in run("check", write_log()).out


def test_rows_one_after_another_with_one_thing_to_say_share_a_line(write_log: WriteLog, run: Run) -> None:
    said = " ".join(run("check", write_log({"Effort": {"C2": 700, "C3": 700}})).out.split())
    assert said.count("All its stints leave the rates.") == 1
    assert "Effort rows 2-3: Trip T-001: its stints add to 46.7 rod-hours" in said  # 2 x 2 rods x 700 / 60 h
    assert "Set aside: not used, in no total (2)" in said


def test_several_logs_end_in_a_line_that_counts_them(tmp_path: Path, write_log: WriteLog, run: Run) -> None:
    for name, changes in (("a.xlsx", {}), ("b.xlsx", {"Catch": None}), ("c.xlsx", {})):
        write_log(changes, name=name, folder=tmp_path)
    assert run("check", tmp_path).out.endswith("\n\n3 logs: 1 with something that stops the report.\n")
    assert run("build", tmp_path).out.endswith("\n\n3 logs: 2 with a report, 1 without.\n")


def test_long_name_is_cut_so_that_the_table_fits(capsys: pytest.CaptureFixture[str]) -> None:
    say.table(("What worked", "trips"), [("x" * 100, 1), ("short\x1b[2J", 1_000)])
    assert capsys.readouterr().out.splitlines() == [
        "  What worked" + " " * 60 + "  trips",
        "  " + "x" * 70 + "…" + "      1",
        "  short[2J" + " " * 63 + "   1000",
    ]


def test_long_label_is_cut_and_never_touches_its_text(capsys: pytest.CaptureFixture[str]) -> None:
    say.labelled("What we threw in March", "not read", label_width=12)
    assert capsys.readouterr().out == "  What we th… not read\n"


def test_build_prints_its_summary_and_quiet_nothing(write_log: WriteLog, run: Run) -> None:
    log = write_log({"Trips": {"C4": "Lk Arden"}})
    ran = run("build", log)
    assert (ran.code, ran.err) == (0, "")
    assert "1 note" in ran.out
    assert str(log.with_name("log report.xlsx")) in ran.out.replace("\n            ", "")
    quiet = run("build", log, "--quiet")
    assert (quiet.code, quiet.out, quiet.err) == (0, "", "")


def test_quiet_still_says_why_something_failed(write_log: WriteLog, run: Run) -> None:
    ran = run("build", write_log({"Catch": None}), "--quiet")
    assert ran.code == 1
    assert "There is no sheet 'Catch'" in ran.err
