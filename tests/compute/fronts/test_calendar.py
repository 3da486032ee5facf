"""Words of dates that several fronts could name, and the days behind one front."""

import numpy as np
import pytest

from reporter.compute.fronts.calendar import Label, calendar, spell

MONDAY = np.datetime64("2026-04-06", "D")
WEEK = MONDAY + np.arange(7)


def named(labels: list[Label], own: list[str] | None = None) -> list[tuple[str, str]]:
    """Return verdict and day type of each date of the week."""
    table = calendar(WEEK, own or ["no"] * 7, labels)
    assert table["date"].to_numpy().astype("datetime64[D]").tolist() == WEEK.tolist()
    return list(zip(table["verdict"], table["day_type"], strict=True))


def test_dates_without_a_word_have_their_own_verdict() -> None:
    own = ["no", "not_enough_data", "possible", "no", "no", "no", "no"]
    assert named([], own)[:3] == [
        ("no", "ordinary"),
        ("not_enough_data", "not_known"),
        ("possible", "possible"),
    ]


def test_front_flags_two_days_and_shows_a_third() -> None:
    assert named(spell(MONDAY + 1, 0, "yes_clear", recovered=False)) == [
        ("no", "ordinary"),
        ("yes_clear", "day_1"),
        ("yes_clear", "day_2"),
        ("no", "day_3"),
        *[("no", "ordinary")] * 3,
    ]


def test_front_that_the_weather_has_recovered_from_flags_one_day() -> None:
    assert named(spell(MONDAY + 1, 0, "yes_weak", recovered=True)) == [
        ("no", "ordinary"),
        ("yes_weak", "day_1"),
        *[("no", "ordinary")] * 5,
    ]


def test_new_front_restarts_at_day_1() -> None:
    first = spell(MONDAY, 0, "yes_weak", recovered=False)
    second = spell(MONDAY + 2, 1, "yes_clear", recovered=False)
    words = [day_type for _, day_type in named([*first, *second])]
    assert words[:5] == ["day_1", "day_2", "day_1", "day_2", "day_3"]


def test_day_1_of_a_new_front_goes_before_day_2_of_the_old_one_with_its_own_strength() -> None:
    first = spell(MONDAY, 0, "yes_weak", recovered=False)
    second = spell(MONDAY + 1, 1, "yes_clear", recovered=False)
    expected = [("yes_weak", "day_1"), ("yes_clear", "day_1"), ("yes_clear", "day_2")]
    assert named([*first, *second])[:3] == expected
    assert named([*second, *first])[:3] == expected


@pytest.mark.parametrize(
    ("stands", "gives_way"),
    [
        ("passing", "day_1"),
        ("passing", "day_2"),
        ("passing", "ahead"),
        ("day_1", "day_2"),
        ("day_2", "ahead"),
        ("day_2", "day_3"),
        ("ahead", "day_3"),
        ("day_2", "possible"),
        ("behind_low", "possible"),
        ("behind_low", "day_3"),
        ("day_2", "behind_low"),
    ],
)
def test_stronger_word_stands_whatever_the_order(stands: str, gives_way: str) -> None:
    two = [Label(MONDAY, stands, 0), Label(MONDAY, gives_way, 1)]
    assert named(two)[0][1] == stands
    assert named(two[::-1])[0][1] == stands


def test_ahead_and_passing_are_not_flagged() -> None:
    words = named([Label(MONDAY, "ahead", 0), Label(MONDAY + 1, "passing", 0)])
    assert words[:2] == [("no", "ahead"), ("no", "passing")]


def test_day_behind_a_low_is_possible_and_not_flagged() -> None:
    words = named([Label(MONDAY, "behind_low"), Label(MONDAY + 1, "possible")])
    assert words[:2] == [("possible", "behind_low"), ("possible", "possible")]


def test_third_day_keeps_its_own_verdict() -> None:
    own = ["no", "no", "not_enough_data", "no", "no", "no", "no"]
    assert named(spell(MONDAY, 0, "yes_clear", recovered=False), own)[2] == ("not_enough_data", "day_3")


def test_front_of_a_date_is_the_one_its_word_is_about() -> None:
    labels = [*spell(MONDAY, 4, "yes_weak", recovered=False), Label(MONDAY + 2, "ahead", 5)]
    assert calendar(WEEK, ["no"] * 7, labels)["front"].tolist() == [4, 4, 5, -1, -1, -1, -1]


def test_word_for_a_date_outside_the_calendar_is_dropped() -> None:
    assert named([Label(MONDAY - 1, "day_1", 0, "yes_clear")]) == [("no", "ordinary")] * 7
