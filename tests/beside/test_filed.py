"""What was filed stays as it was filed; a later run tells what differs."""

from pathlib import Path

import pytest

from reporter.beside.filed import add_filing, filed_path, read_filings
from reporter.compute.filed import Change, Filed, amended
from reporter.read.errors import Unreadable


def filing(rows: list[dict[str, str]], kept: str = "4", last: str = "2026-07-31") -> Filed:
    return Filed("2026-07-01", last, "2026-08-03", "log.xlsx", "a" * 64, "1.0", {"kept": kept}, tuple(rows))


ROWS = [{"trip": "T-1", "kept": "1"}, {"trip": "T-2", "kept": "3"}]


def test_filings_are_kept_in_order_and_read_again(tmp_path: Path) -> None:
    log = tmp_path / "season ünï.xlsx"
    assert read_filings(log) == []
    first, second = filing(ROWS), filing(ROWS[:1], "1")
    add_filing(log, first)
    add_filing(log, second)
    assert read_filings(log) == [first, second]
    assert filed_path(log).name == "season ünï filed.json"


def test_nothing_filed_is_nothing_amended() -> None:
    assert amended([], filing(ROWS)) is None
    assert amended([filing(ROWS, last="2026-06-30")], filing(ROWS)) is None


def test_what_was_filed_and_stands_has_no_change() -> None:
    found = amended([filing(ROWS)], filing(ROWS))
    assert found is not None
    assert (found.number, found.changes, found.totals) == (1, (), ())


def test_change_is_told_by_row_field_old_and_new_with_both_totals() -> None:
    now = filing([{"trip": "T-2", "kept": "2"}, {"trip": "T-3", "kept": "5"}], "7")
    found = amended([filing(ROWS, "9"), filing(ROWS)], now)
    assert found is not None
    assert found.number == 2
    assert found.changes == (
        Change("T-1", "the row", "filed", ""),
        Change("T-2", "kept", "3", "2"),
        Change("T-3", "the row", "", "new"),
    )
    assert found.totals == (("kept", "4", "7"),)


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"{}",
        b"[1]",
        b'{"season-reporter": "tables", "filings": []}',
        b'{"season-reporter": "filed", "filings": [{}]}',
        b'{"season-reporter": "filed", "filings": 3}',
        b"\xff\xfe",
        b"[" * 100_000,
    ],
)
def test_file_that_is_not_as_we_wrote_it_is_a_sentence_and_stays(content: bytes, tmp_path: Path) -> None:
    log = tmp_path / "log.xlsx"
    filed_path(log).write_bytes(content)
    with pytest.raises(Unreadable, match=r"I cannot read log filed\.json, which says what was filed"):
        read_filings(log)
    with pytest.raises(Unreadable):
        add_filing(log, filing(ROWS))
    assert filed_path(log).read_bytes() == content
