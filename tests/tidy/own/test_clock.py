"""Start and end that stand in one cell."""

import datetime as dt

import pytest

from reporter.read.raw import CellValue
from reporter.tidy.moments import read_time
from reporter.tidy.own.clock import are_two_times, split_clock


@pytest.mark.parametrize(
    ("text", "start", "end"),
    [
        ("6:30-11:00", 390, 660),
        ("6:30 – 11", 390, 660),
        ("0630-1100", 390, 660),
        ("6:30 am to 2 pm", 390, 840),
        ("6-11am", 360, 660),
        ("1-5pm", 780, 1020),
        ("11-3pm", 660, 900),
        ("8pm-1am", 1200, 60),
        ("6 till 10", 360, 600),
    ],
)
def test_two_times_in_one_cell_are_put_apart(text: str, start: float, end: float) -> None:
    cells: dict[str, CellValue] = {"clock": text}
    split_clock(cells)
    assert (read_time(cells["start"]), read_time(cells["end"])) == (start, end)
    assert are_two_times(text)


@pytest.mark.parametrize("value", ["morning", "6:30", "6-10-2", "-", dt.date(2026, 6, 11), 4])
def test_what_is_no_two_times_stays_in_both_cells(value: CellValue) -> None:
    cells: dict[str, CellValue] = {"clock": value}
    split_clock(cells)
    assert cells["start"] == cells["end"] == value


def test_two_words_are_no_two_times() -> None:
    assert not are_two_times("all day - late")
