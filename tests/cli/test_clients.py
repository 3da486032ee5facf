"""`reporter clients` as a guide runs it."""

import csv
import datetime as dt
from collections.abc import Callable
from pathlib import Path

import openpyxl
import pytest

from reporter.files.mark import read_mark
from tests.books.printed import pages_printed
from tests.cli.conftest import Run
from tests.conftest import WriteLog

Contents = Callable[[Path], dict[str, bytes]]
CLIENTS = [
    ["Client", "Name on summary", "Consent to name"],
    ["C01", "Anneke", "yes"],
    ["C02", "Bodil", "no"],
    ["C03", "Carla", "yes"],
]


def clients_log(write_log: WriteLog, name: str = "log.xlsx", year: int = 2026, **sheets: object) -> Path:
    """Three trips: C01 alone, C02 alone and blank, both; C03 never came."""
    days = [dt.date(year, 4, 18), dt.date(year, 7, 4), dt.date(year, 9, 12)]
    start, end = dt.time(6), dt.time(10)
    season = [
        ["Setting", "Value"],
        ["Units", "us"],
        ["First day", dt.date(year, 1, 1)],
        ["Last day", dt.date(year, 12, 31)],
    ]
    return write_log(
        {
            "Season": season,
            "Trips": [
                ["Trip", "Date", "Water", "Start", "End", "Anglers", "Client"],
                ["T-001", days[0], "Lake Arden", start, end, 1, "C01"],
                ["T-002", days[1], "Lake Arden", start, end, 1, "C02"],
                ["T-003", days[2], "Lake Arden", start, end, 2, "C01; C02"],
            ],
            "Effort": [
                ["Trip", "Technique", "Minutes", "Anglers on it", "Landed"],
                ["T-001", "Drop shot", 240, 1, 1],
                ["T-002", "Jerkbait", 240, 1, 0],
                ["T-003", "Jerkbait", 240, 2, 2],
            ],
            "Catch": [
                ["Trip", "Technique", "Species", "Length (in)", "Fate", "Angler"],
                ["T-001", "Drop shot", "largemouth bass", 15.5, "released"],
                ["T-002", None, "none"],
                ["T-003", "Jerkbait", "largemouth bass", 18.25, "released", "C01"],
            ],
            "Waters": [["Water", "Share name"], ["Lake Arden", "yes"]],
            "Clients": CLIENTS,
            **sheets,
        },
        name=name,
    )


def listed(folder: Path) -> list[list[str]]:
    with (folder / "clients.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.reader(file))


def texts(path: Path) -> str:
    book = openpyxl.load_workbook(path)
    return "\n".join(
        str(cell)
        for sheet in book
        for row in sheet.iter_rows(values_only=True)
        for cell in row
        if cell is not None
    )


def test_every_client_with_a_trip_gets_a_copy_and_the_list_names_them(
    run: Run, write_log: WriteLog, tmp_path: Path
) -> None:
    ran = run("clients", clients_log(write_log), "--out", tmp_path / "copies")
    assert (ran.code, ran.err) == (0, "")
    assert "C03: no copy" in ran.out
    assert listed(tmp_path / "copies") == [
        ["client", "file"],
        ["C01", "C01 your days.xlsx"],
        ["C02", "C02 your days.xlsx"],
    ]
    assert read_mark(tmp_path / "copies" / "C01 your days.xlsx") == "client"
    first = texts(tmp_path / "copies" / "C01 your days.xlsx")
    assert "For Anneke" in first
    assert "18.25 in (measured)" in first
    second = texts(tmp_path / "copies" / "C02 your days.xlsx")
    assert "Bodil" not in second
    assert "18.25" not in second


def test_one_client_is_written_and_others_on_the_list_stay(
    run: Run, write_log: WriteLog, tmp_path: Path, contents: Contents
) -> None:
    log = clients_log(write_log)
    run("clients", log, "--out", tmp_path)
    before = contents(tmp_path)
    (tmp_path / "C02 your days.xlsx").unlink()
    ran = run("clients", log, "--out", tmp_path, "--client", "c02")
    assert ran.code == 0
    assert contents(tmp_path) == before
    alone = tmp_path / "alone"
    run("clients", log, "--out", alone, "--client", "C01")
    assert listed(alone) == [["client", "file"], ["C01", "C01 your days.xlsx"]]


def test_several_clients_may_be_asked_for(run: Run, write_log: WriteLog, tmp_path: Path) -> None:
    ran = run("clients", clients_log(write_log), "--out", tmp_path, "--client", "C02", "--client", "C01")
    assert ran.code == 0
    assert {row[0] for row in listed(tmp_path)[1:]} == {"C01", "C02"}


def test_no_two_lines_of_the_list_name_one_file(run: Run, write_log: WriteLog, tmp_path: Path) -> None:
    (tmp_path / "clients.csv").write_text(
        "client,file\nOld,C01 your days.xlsx\nC7,C7.xlsx\n", encoding="utf-8"
    )
    run("clients", clients_log(write_log), "--out", tmp_path, "--client", "C01")
    assert listed(tmp_path)[1:] == [["C7", "C7.xlsx"], ["C01", "C01 your days.xlsx"]]


def test_same_log_gives_the_same_bytes(
    run: Run, write_log: WriteLog, tmp_path: Path, contents: Contents
) -> None:
    log = clients_log(write_log)
    for folder in ("one", "two"):
        run("clients", log, "--out", tmp_path / folder)
    assert contents(tmp_path / "one") == contents(tmp_path / "two")


def test_client_without_a_trip_gets_none_and_is_told_so(
    run: Run, write_log: WriteLog, tmp_path: Path
) -> None:
    ran = run("clients", clients_log(write_log), "--out", tmp_path / "out", "--client", "C03")
    assert ran.code == 1
    assert "C03: no copy" in ran.out
    assert not (tmp_path / "out").exists()


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("--client", "C09", "--out", "x"), "no log has a client 'C09'"),
        (("--client", "C011", "--out", "x"), "Did you mean"),
        ((), "Missing option '--out'"),
        (("--out", "x", "--clients", "C01"), "No such option"),
        (("--client", "", "--out", "x"), "no log has a client ''"),
    ],
)
def test_command_line_that_is_wrong_writes_nothing(
    run: Run,
    write_log: WriteLog,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    arguments: tuple[str, ...],
    said: str,
) -> None:
    monkeypatch.chdir(tmp_path)
    ran = run("clients", clients_log(write_log), *arguments)
    assert (ran.code, said in ran.err) == (2, True), ran.err
    assert list(tmp_path.iterdir()) == []


def test_log_with_a_stop_gives_no_copy(run: Run, write_log: WriteLog, tmp_path: Path) -> None:
    good = clients_log(write_log)
    bad = clients_log(
        write_log, "bad.xlsx", Catch=[["Trip", "Technique", "Beast"], ["T-001", "Drop shot", "x"]]
    )
    ran = run("clients", good, bad, "--out", tmp_path / "out")
    assert ran.code == 1
    assert "No copies from bad.xlsx" in ran.err
    assert not (tmp_path / "out").exists()


def test_file_that_is_no_log_gives_no_copy(run: Run, write_log: WriteLog, tmp_path: Path) -> None:
    ran = run("clients", clients_log(write_log), tmp_path / "none.xlsx", "--out", tmp_path / "out")
    assert (ran.code, "there is no such file" in ran.err) == (1, True)
    assert not (tmp_path / "out").exists()


def test_two_seasons_are_one_copy_in_order(run: Run, write_log: WriteLog, tmp_path: Path) -> None:
    logs = [clients_log(write_log, f"{year}.xlsx", year) for year in (2026, 2025)]
    ran = run("clients", *logs, "--out", tmp_path)
    assert ran.code == 0
    told = texts(tmp_path / "C01 your days.xlsx")
    assert "4 trips, 16 hours fished, from Fri Apr 18, 2025 to Sat Sep 12, 2026." in told


def test_same_log_twice_counts_once(run: Run, write_log: WriteLog, tmp_path: Path) -> None:
    log = clients_log(write_log)
    ran = run("clients", log, log, "--out", tmp_path)
    assert ran.code == 0
    assert "2 trips" in texts(tmp_path / "C01 your days.xlsx")


def test_another_name_under_one_code_gives_that_client_no_copy(
    run: Run, write_log: WriteLog, tmp_path: Path
) -> None:
    other = [CLIENTS[0], ["C01", "Dagmar", "yes"], *CLIENTS[2:]]
    logs = [clients_log(write_log, "a.xlsx", 2025), clients_log(write_log, "b.xlsx", 2026, Clients=other)]
    ran = run("clients", *logs, "--out", tmp_path)
    assert ran.code == 1
    assert "No copy for C01: the logs call it 'Anneke' and 'Dagmar'." in ran.err
    assert [row[0] for row in listed(tmp_path)] == ["client", "C02"]


def test_copy_of_a_log_is_told_from_another_season(run: Run, write_log: WriteLog, tmp_path: Path) -> None:
    logs = [
        clients_log(write_log, "a.xlsx"),
        clients_log(write_log, "b.xlsx", Techniques=[["Technique", "Style"], ["Drop shot", "slow"]]),
    ]
    ran = run("clients", *logs, "--out", tmp_path / "out")
    assert ran.code == 1
    assert "two logs have one trip of that client on 2026-04-18" in ran.err
    assert not (tmp_path / "out").exists()


def test_client_who_is_asked_for_is_not_made_to_pay_for_another(
    run: Run, write_log: WriteLog, tmp_path: Path
) -> None:
    other = [CLIENTS[0], CLIENTS[1], ["C02", "Dagmar", "yes"]]
    logs = [clients_log(write_log, "a.xlsx", 2025), clients_log(write_log, "b.xlsx", 2026, Clients=other)]
    assert run("clients", *logs, "--out", tmp_path, "--client", "C01").code == 0
    assert run("clients", *logs, "--out", tmp_path, "--client", "C02").code == 1


def test_folder_that_cannot_be_one_is_a_sentence(run: Run, write_log: WriteLog, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("x", encoding="utf-8")
    for out in (tmp_path / "file", tmp_path / ("x" * 300)):
        ran = run("clients", clients_log(write_log), "--out", out)
        assert (ran.code, "I cannot write to" in ran.err) == (1, True), ran.err


def test_fish_of_an_angler_whom_the_trip_does_not_list_are_said(
    run: Run, write_log: WriteLog, tmp_path: Path
) -> None:
    log = clients_log(write_log)
    book = openpyxl.load_workbook(log)
    book["Catch"]["F2"] = "C02"
    book.save(log)
    assert "anglers whom their trips do not list" in " ".join(
        run("clients", log, "--out", tmp_path).out.split()
    )


def test_client_by_name_is_the_client(run: Run, write_log: WriteLog, tmp_path: Path) -> None:
    log = clients_log(write_log)
    book = openpyxl.load_workbook(log)
    book["Trips"]["G2"], book["Catch"]["F4"] = "anneke", "Anneke"
    book.save(log)
    run("clients", log, "--out", tmp_path)
    assert "2 trips" in texts(tmp_path / "C01 your days.xlsx")
    assert "18.25 in" in texts(tmp_path / "C01 your days.xlsx")


@pytest.mark.parametrize("name", ["C01 your days.xlsx", "clients.csv"])
def test_file_that_is_not_ours_is_left_alone(
    run: Run, write_log: WriteLog, tmp_path: Path, name: str
) -> None:
    (tmp_path / name).write_text("address,street\n", encoding="utf-8")
    ran = run("clients", clients_log(write_log), "--out", tmp_path)
    assert (ran.code, "I cannot write to" in ran.err) == (1, True)
    assert [path.name for path in tmp_path.iterdir()] == [name]


def test_copies_never_go_into_a_log_of_csv_files(run: Run, write_log: WriteLog, tmp_path: Path) -> None:
    (tmp_path / "Trips.csv").write_text("Trip,Date\n", encoding="utf-8")
    ran = run("clients", clients_log(write_log), "--out", tmp_path)
    assert (ran.code, "it is a log of .csv files" in ran.err) == (1, True)


def test_codes_that_are_no_names_of_files_get_one(run: Run, write_log: WriteLog, tmp_path: Path) -> None:
    codes = {"C01": "=A/1", "C02": "b?"}
    rows = [["Client"], *[[code] for code in codes.values()]]
    log = clients_log(write_log, Clients=rows)
    book = openpyxl.load_workbook(log)
    for row in (2, 3, 4):
        cell = book["Trips"].cell(row, 7)
        cell.value, cell.data_type = "; ".join(codes[code] for code in str(cell.value).split("; ")), "s"
    page = book["Clients"]
    page["A2"].data_type = "s"
    book["Catch"]["F4"].value = "b?"
    book.save(log)
    ran = run("clients", log, "--out", tmp_path)
    assert ran.code == 0
    (first, one), (second, other) = listed(tmp_path)[1:]
    assert (first, second) == ("'=A/1", "b?")
    assert one.startswith("A-1 ")
    assert other.startswith("b- ")
    assert {one, other} < {path.name for path in tmp_path.iterdir()}


def test_log_without_clients_is_told_so(run: Run, write_log: WriteLog, tmp_path: Path) -> None:
    ran = run("clients", write_log(), "--out", tmp_path / "out")
    assert ran.code == 1
    assert "No copy: no client stands in the column Client of Trips" in ran.err
    assert not (tmp_path / "out").exists()


def test_quiet_prints_nothing(run: Run, write_log: WriteLog, tmp_path: Path) -> None:
    ran = run("clients", clients_log(write_log), "--out", tmp_path, "--quiet")
    assert (ran.code, ran.out, ran.err) == (0, "", "")


def test_words_are_kept_back_and_waters_not_named_with_a_line_that_says_so(
    run: Run, write_log: WriteLog, tmp_path: Path
) -> None:
    log = clients_log(write_log, Waters=[["Water", "Share name"], ["Lake Arden", "no"]])
    book = openpyxl.load_workbook(log)
    book["Trips"]["H1"], book["Trips"]["H2"] = "For the client", "Arden? No: Bodil's lake"
    book.save(log)
    ran = run("clients", log, "--out", tmp_path)
    said = " ".join(ran.out.split())
    assert "not named Lake Arden: Share name on Waters does not allow it" in said
    assert "kept back For the client “Arden? No: Bodil's lake”: names someone else" in said


@pytest.mark.libreoffice
def test_copy_of_one_day_prints_on_a_page_and_one_of_what_was_tied_on(
    run: Run, write_log: WriteLog, tmp_path: Path
) -> None:
    log = clients_log(write_log)
    book = openpyxl.load_workbook(log)
    book["Trips"]["G4"] = "C02"
    book.save(log)
    run("clients", log, "--out", tmp_path, "--client", "C01")
    assert pages_printed(tmp_path / "C01 your days.xlsx", tmp_path) == 2
