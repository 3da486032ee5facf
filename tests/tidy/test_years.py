"""Last year typed by habit: only what its neighbours prove is set aside."""

import datetime as dt

import pytest

from tests.tidy.shared import Find, with_season

SIX, TEN = dt.time(6), dt.time(10)
DEC, JAN_TYPED, JAN = dt.date(2025, 12, 28), dt.date(2025, 1, 4), dt.date(2026, 1, 10)
LEAP = dt.date(2024, 2, 29)


def _found(found: Find, *days: dt.date, **settings: object) -> list[tuple[str, int, str]]:
    rows = [[f"T-{n}", day, "Lake Arden", SIX, TEN, 2] for n, day in enumerate(days, start=1)]
    head = ["Trip", "Date", "Water", "Start", "End", "Anglers"]
    season = with_season(
        {"Units": "us", "Time zone": "America/Chicago", "Latitude": 36, "As-of date": dt.date(2026, 6, 30)}
        | {key.replace("_", " "): value for key, value in settings.items()}
    )
    effort = [["Trip", "Technique", "Minutes", "Anglers on it", "Landed"]]
    catch = [["Trip", "Technique", "Species"]]
    triples = found({"Trips": [head, *rows], "Season": season, "Effort": effort, "Catch": catch})
    return [triple for triple in triples if triple[2] != "no_fish_written"]


@pytest.mark.parametrize(
    ("days", "rows"),
    [
        ((DEC, JAN_TYPED, JAN), [3]),
        ((DEC, JAN_TYPED, dt.date(2025, 1, 8), JAN), [3, 4]),
        ((DEC, JAN_TYPED, dt.date(2026, 2, 20), dt.date(2025, 2, 22), dt.date(2026, 3, 1)), [3, 5]),
        ((dt.date(2025, 2, 10), LEAP, dt.date(2025, 3, 5)), [3]),
    ],
)
def test_year_that_both_neighbours_gainsay_takes_its_row(
    found: Find, days: tuple[dt.date, ...], rows: list[int]
) -> None:
    assert _found(found, *days) == [("Trips", row, "wrong_year") for row in rows]


@pytest.mark.parametrize(
    "days",
    [
        (DEC, JAN),
        (JAN_TYPED, JAN),  # nothing stands above the first row
        (DEC, JAN_TYPED, dt.date(2025, 2, 1), dt.date(2025, 3, 1)),  # sorted by water: the next lake begins
        (DEC, JAN_TYPED),  # nothing below, and no season that says
        (DEC, dt.date(2025, 3, 4), JAN),  # no habit lasts until March
        (dt.date(2025, 9, 1), JAN_TYPED, JAN),  # too far from the row above
    ],
)
def test_year_that_may_be_meant_is_left(found: Find, days: tuple[dt.date, ...]) -> None:
    assert _found(found, *days) == []


def test_last_row_is_a_slip_where_only_the_next_year_is_in_the_season(found: Find) -> None:
    season = {"First_day": dt.date(2025, 10, 1), "Last_day": dt.date(2026, 4, 30)}
    assert _found(found, DEC, JAN_TYPED, **season) == [("Trips", 3, "wrong_year")]
    assert _found(found, DEC, JAN_TYPED, First_day=dt.date(2025, 1, 1)) == []
