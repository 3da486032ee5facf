"""What the cells of a whole log settle together: date order, decimal mark, the point in a weight."""

import datetime as dt

import pytest

from tests.tidy.shared import Find, Tidy, triples, with_season

US = {"Units": "us", "As-of date": dt.date(2026, 12, 31), "Time zone": "America/Chicago", "Latitude": 36}
POUND, OUNCE = 453.59237, 28.349523125


def _weather(*days: object) -> list[list[object]]:
    return [["Date", "Sky"], *([day, "clear"] for day in days)]


def _weights(*weights: object) -> dict[str, object]:
    """Weights of three fish whose lengths are not written."""
    cells: dict[str, object] = {f"D{row}": None for row in (2, 3, 4)}
    return {**cells, "F1": "Weight (lb)", **{f"F{row}": w for row, w in enumerate(weights, start=2)}}


@pytest.mark.parametrize(
    ("days", "read"),
    [
        (("13/07/2026", "03/07/2026"), [dt.date(2026, 7, 13), dt.date(2026, 7, 3)]),
        (("07/03/2026", "07/13/2026"), [dt.date(2026, 7, 3), dt.date(2026, 7, 13)]),
    ],
)
def test_one_date_proves_the_order_of_all(tidied: Tidy, days: tuple[str, str], read: list[dt.date]) -> None:
    log = tidied({"Weather": _weather(*days)})
    assert [day.date() for day in log.tables["weather"]["date"]] == read
    assert [p.code for p in log.problems] == ["date_order_found"]


def test_order_that_season_sets_is_not_asked_for(tidied: Tidy) -> None:
    settings = with_season({**US, "Date order": "month first"})
    log = tidied({"Season": settings, "Weather": _weather("03/07/2026", "13/07/2026")})
    assert log.tables["weather"]["date"][0].date() == dt.date(2026, 3, 7)
    assert [p.code for p in log.problems] == ["required_unread"]


def test_dates_of_two_orders_are_one_problem_and_name_how_many(tidied: Tidy) -> None:
    log = tidied({"Weather": _weather("13/07/2026", "07/14/2026", "03/07/2026", "04/07/2026", "05/07/2026")})
    (problem,) = log.problems
    assert problem.code == "date_orders_mixed"
    assert "Weather A3" in problem.text
    assert "5 dates" in problem.text
    count = log.fates["weather"].count()
    assert (count.read, count.used, count.set_aside) == (5, 2, 3)


def test_true_dates_with_a_later_day_are_not_exchanged(found: Find) -> None:
    days = [dt.date(2026, month, 4) for month in range(1, 6)]
    assert found({"Weather": _weather("13/04/2026", *days, dt.date(2026, 6, 20))}) == []
    assert found({"Weather": _weather("13/04/2026", *days[:4])}) == []


@pytest.mark.parametrize(
    ("first", "second"),
    [("15,5", "14"), ("15.5", "14.25"), ("15,5", "14,25"), ("15.5", "1,200.5"), ("15,5", "1.200,5")],
)
def test_one_decimal_mark_is_no_problem_of_the_log(tidied: Tidy, first: str, second: str) -> None:
    log = tidied({"Catch": {"D2": first, "D3": second}})
    assert "decimal_marks_mixed" not in [p.code for p in log.problems]


def test_decimal_mark_that_season_sets_refuses_the_other_cell_alone(tidied: Tidy) -> None:
    settings = with_season({**US, "Decimal mark": "comma"})
    log = tidied({"Season": settings, "Catch": {"D2": "15,5", "D3": "14.5"}})
    assert triples(log) == [("Catch", 3, "cell_unread")]
    assert log.tables["catch"]["length_mm"][0] == pytest.approx(393.7)


def test_hundredths_of_a_pound_are_no_ounces(found: Find) -> None:
    assert found({"Catch": _weights(2.12, 3.47, 4.6)}) == []
    assert found({"Catch": _weights(2.12, 3.13, 4.6)}) == []
    assert found({"Catch": _weights("2.12 lb", "3-10", 4.6)}) == []


def test_weights_that_all_end_below_sixteen_are_asked_about_once(found: Find) -> None:
    assert found({"Catch": _weights(2.12, "3.10", 4.15)}) == [("Catch", 2, "weight_points")]


def test_kilograms_are_never_pounds_and_ounces(found: Find) -> None:
    assert found({"Catch": {**_weights(2.12, 1.11, 1.15), "F1": "Weight (kg)"}}) == []


@pytest.mark.parametrize(
    ("point", "grams"),
    [
        ("pounds", [2.12 * POUND, 3.1 * POUND, 4.5 * POUND]),
        ("ounces", [2 * POUND + 12 * OUNCE, 3 * POUND + 10 * OUNCE, 4 * POUND + 5 * OUNCE]),
    ],
)
def test_season_says_what_the_point_in_a_weight_means(tidied: Tidy, point: str, grams: list[float]) -> None:
    settings = with_season({**US, "Weight point": point})
    log = tidied({"Season": settings, "Catch": _weights(2.12, "3.10", 4.5)})
    assert list(log.tables["catch"]["weight_g"]) == pytest.approx(grams)
    assert log.problems == []


def test_a_number_that_may_have_lost_its_zero_is_refused(found: Find) -> None:
    settings = with_season({**US, "Weight point": "ounces"})
    refused = [("Catch", 2, "cell_unread"), ("Catch", 4, "cell_unread")]
    assert found({"Season": settings, "Catch": _weights(3.1, 3.2, 3.16)}) == refused
