"""Windows of a trip in which two techniques were fished at the same time."""

import numpy as np
import pandas as pd
import pytest

from reporter.compute.paired import same_trip, same_window
from reporter.compute.windows import shared_windows

SIX, NINE = 360.0, 540.0
Row = tuple[int, str, float, float, str, float, float]


def stints(*rows: Row) -> pd.DataFrame:
    names = ["trip_no", "name", "begin_min", "end_min", "timing", "fish", "rod_hours"]
    made = pd.DataFrame(list(rows), columns=names)
    return made.assign(stint_no=range(1, len(made) + 1))


def row(
    technique: str, begin: float, end: float, fish: float = 1.0, timing: str = "clock", trip: int = 1
) -> Row:
    return (trip, technique, begin, end, timing, fish, (end - begin) / 60)


def test_stints_that_start_and_end_within_fifteen_minutes_share_a_window() -> None:
    found = shared_windows(stints(row("A", SIX, NINE, 4), row("B", SIX + 15, NINE - 15, 2)), "B")
    assert found.to_dict("records") == [
        {
            "name": "A",
            "trip_no": 1,
            "catch_this": 4,
            "effort_this": 3.0,
            "catch_against": 2,
            "effort_against": 2.5,
            "stint_this": 1,
            "stint_against": 2,
        }
    ]


@pytest.mark.parametrize(
    "other",
    [
        row("B", SIX + 16, NINE),
        row("B", SIX, NINE + 16),
        row("B", SIX, NINE, timing="minutes"),
        row("B", SIX, NINE, fish=np.nan),
        row("B", SIX, NINE, trip=2),
        row("B", SIX, SIX),
    ],
)
def test_other_stints_share_none(other: Row) -> None:
    assert shared_windows(stints(row("A", SIX, NINE), other), "B").empty


def test_each_stint_serves_the_window_that_fits_it_best() -> None:
    found = shared_windows(
        stints(row("A", SIX, NINE, 1), row("B", SIX + 10, NINE, 2), row("B", SIX + 5, NINE, 3)), "B"
    )
    assert found["catch_against"].tolist() == [3]


def test_a_stint_may_serve_windows_of_several_techniques() -> None:
    found = shared_windows(stints(row("A", SIX, NINE), row("C", SIX, NINE), row("B", SIX, NINE, 3)), "B")
    assert found[["name", "catch_against"]].to_numpy().tolist() == [["A", 3], ["C", 3]]


def test_one_window_on_every_trip_is_the_comparison_of_trips() -> None:
    this, against = ([3, 0, 5, 2], [2, 3, 4, 1.5]), ([1, 1, 6, 0], [2.5, 3, 2, 4])
    trips, windows = same_trip(*this, *against), same_window(*this, *against, [0, 1, 2, 3])
    for key in ("ratio", "low", "high", "trips", "fish_this", "overlap_share"):
        assert getattr(windows, key) == pytest.approx(getattr(trips, key), rel=1e-12)


def test_windows_of_one_trip_are_one_unit_of_its_error() -> None:
    # A = a t0 / T is 1, 1 and 3, B = b t1 / T is 1, 0 and 1 with an hour for each; ratio 5 / 2. By trip A is
    # 2 and 3, B 1 and 1: deviations -1/2 and 1/2, error sqrt(2 x 1/2) / 5 = 0.2; t of one degree is 12.7062.
    # Independent fish: sum of (a + b) / 4 = 14 / 4 over 5 x 2, error .591608, times 1.959964 is 1.15953.
    found = same_window([2, 2, 6], [1, 1, 1], [2, 0, 2], [1, 1, 1], [7, 7, 9])
    assert (found.trips, found.ratio) == (2, pytest.approx(2.5))
    assert np.log(found.high / 2.5) == pytest.approx(max(12.7062 * 0.2, 1.159530), rel=1e-5)
