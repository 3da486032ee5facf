import datetime as dt

import numpy as np
import pandas as pd
import pytest

from reporter.write.values import settled


@pytest.mark.parametrize(
    "nothing", [None, "", "\x00", float("nan"), float("inf"), -float("inf"), pd.NA, pd.NaT, np.float64("nan")]
)
def test_what_is_no_value_is_blank(nothing):
    assert settled(nothing) is None


@pytest.mark.parametrize(
    ("value", "kept"),
    [
        (1 / 3, 0.333333333333),
        (123456789.123456789, 123456789.123),
        (7, 7),
        (123456789012.0, 123456789012.0),
        (1234567890123.0, 1234567890120.0),
        (np.float64(3), 3.0),
        (True, True),
        (np.int64(7), 7),
        (np.bool_(True), True),
        (10**16, "10000000000000000"),
        (dt.date(1899, 12, 31), "1899-12-31"),
        (dt.datetime(1890, 1, 2, 3, 4), "1890-01-02T03:04:00"),
        (dt.date(2026, 3, 1), dt.date(2026, 3, 1)),
        (dt.time(6, 30), dt.time(6, 30)),
    ],
)
def test_values_are_kept_as_a_spreadsheet_can_hold_them(value, kept):
    assert settled(value) == kept
    assert type(settled(value)) is type(kept)


def test_a_zero_has_no_sign():
    assert str(settled(-0.0)) == "0.0"
    assert str(settled(-1e-320)) == "-1e-320"


@pytest.mark.parametrize("moment", [dt.datetime(2026, 3, 1, tzinfo=dt.UTC), dt.time(6, tzinfo=dt.UTC)])
def test_a_moment_with_a_time_zone_is_refused(moment):
    with pytest.raises(ValueError, match="time zone"):
        settled(moment)


def test_a_thing_that_is_no_value_is_refused():
    with pytest.raises(TypeError, match="no value for a cell"):
        settled(object())
