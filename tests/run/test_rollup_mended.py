"""A log and its mended copy in a roll-up: one of the two is counted, and what is said of them is so."""

import datetime as dt
from pathlib import Path

import pytest

from reporter.run.rollup import RolledUp
from reporter.run.rollup_logs import mended_first
from tests.rollup_logs import WATERS, Day, GuideLog
from tests.run.rolled import rolled, table


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """Log a, of one trip with three anglers."""
    (tmp_path / "logs").mkdir()
    saved(tmp_path / "logs" / "a.xlsx", 3)
    return tmp_path / "logs"


def saved(path: Path, anglers: int, sheet_less: bool = False) -> None:
    log = GuideLog("G1", [Day(dt.date(2026, 6, 2), "Lake Arden", anglers)], WATERS)
    log.save(path)
    if sheet_less:
        import openpyxl

        book = openpyxl.load_workbook(path)
        del book["Trips"]
        book.save(path)


def counted(folder: Path, out: Path) -> tuple[list[tuple[str, str]], list[tuple[str, str]]]:
    """Logs not counted with their states; anglers and logs of the guide."""
    done = rolled(folder, out)
    rows = table(out / "tables", "guide_effort")
    missed = [(log.file, log.state) for log in done.made.missed]
    return missed, [(row["anglers"], row["logs"]) for row in rows]


def said(done: RolledUp, file: str) -> str:
    (log,) = [log for log in done.made.missed if log.file == file]
    return " ".join(log.sentences)


def test_log_is_counted_where_its_mended_copy_cannot_be_read_or_stops(folder: Path, tmp_path: Path) -> None:
    mended = folder / "a mended.xlsx"
    mended.write_bytes(b"PK\x03\x04 torn")
    assert counted(folder, tmp_path / "out") == ([("a mended.xlsx", "cannot be read")], [("3", "1")])
    saved(mended, 2, sheet_less=True)
    assert counted(folder, tmp_path / "out") == ([("a mended.xlsx", "stops")], [("3", "1")])
    saved(mended, 2)
    assert counted(folder, tmp_path / "out") == ([("a.xlsx", "there twice")], [("2", "1")])


def test_mended_copy_of_a_mended_copy_stands_for_both(folder: Path, tmp_path: Path) -> None:
    saved(folder / "a mended.xlsx", 2)
    saved(folder / "a mended mended.xlsx", 1)
    done = rolled(folder, tmp_path / "out")
    assert counted(folder, tmp_path / "out")[1] == [("1", "1")]
    one = "Log 1, a mended mended.xlsx, is its mended copy; that one is counted."
    assert said(done, "a mended.xlsx") == one
    other = "Log 2, a mended.xlsx, is its mended copy; log 1, a mended mended.xlsx, is counted for it."
    assert said(done, "a.xlsx") == other
    (folder / "a mended mended.xlsx").write_bytes(b"PK\x03\x04 torn")
    assert counted(folder, tmp_path / "out")[1] == [("2", "1")]


def test_log_whose_mended_copy_has_a_trip_of_another_log_is_not_said_to_be_counted(
    folder: Path, tmp_path: Path
) -> None:
    """Log 1 is A.xlsx, log 2 the mended copy, log 3 the log itself."""
    saved(folder / "A.xlsx", 2)
    saved(folder / "a mended.xlsx", 2)
    book = GuideLog("G1", [Day(dt.date(2026, 6, 2), "Lake Arden", 2), Day(dt.date(2026, 6, 3), "Lake Arden")])
    book.save(folder / "a mended.xlsx")
    done = rolled(folder, tmp_path / "out")
    assert "stands in log 1, A.xlsx, too" in said(done, "a mended.xlsx")
    assert said(done, "a.xlsx") == (
        "Log 2, a mended.xlsx, is its mended copy; that one is not counted either, see there."
    )


def test_log_comes_behind_its_mended_copy_whatever_they_are_called() -> None:
    """A folder of .csv files has no ending: its mended copy comes behind it by name."""
    names = ("a", "a mended", "a mended mended", "b mended.xlsx", "b.xlsx")
    assert [log.name for log in mended_first([Path(name) for name in names])] == [
        "a mended mended",
        "a mended",
        "a",
        "b mended.xlsx",
        "b.xlsx",
    ]
