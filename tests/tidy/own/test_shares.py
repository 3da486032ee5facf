"""What stands for a technique's share of a trip."""

import datetime as dt

import pytest

from reporter.read.raw import CellValue
from reporter.tidy.own.shares import as_share


@pytest.mark.parametrize(
    ("cell", "share"),
    [
        (dt.time(2, 30), 2.5),
        (dt.timedelta(hours=25, minutes=15), 25.25),
        ("x", 1.0),
        (" X ", 1.0),
        ("yes", 1.0),
        (True, 1.0),
        (3, 3),
        ("some", "some"),
        (None, None),
    ],
)
def test_durations_and_marks_are_shares(cell: CellValue, share: CellValue) -> None:
    assert as_share(cell) == share
