"""The sheet Season: each setting read by its own rule, and what is wrong with one never breaks the others."""

import datetime as dt

import pytest

from tests.tidy.shared import Tidy, triples, with_season

SOUND = {"Units": "us", "Last day": "2026-11-30", "Time zone": "America/Chicago"}


@pytest.mark.parametrize(
    ("setting", "typed", "key", "value"),
    [
        ("Units", "Metric", "units", "metric"),
        ("Units", "imperial", "units", "us"),
        ("units:", "US", "units", "us"),
        ("As-of date", "2026-11-30", "as_of", dt.date(2026, 11, 30)),
        ("as of date", dt.datetime(2026, 11, 30), "as_of", dt.date(2026, 11, 30)),
        ("Species counted", "largemouth; smallmouth bass", "species_counted", ("LMB", "SMB")),
        ("Species counted", "walleye, perch", "species_counted", ("WAE", "YEP")),
        ("Species counted", "every", "species_counted", ()),
        ("Fate if blank", "Released", "fate_if_blank", "released"),
        ("Rods per angler", 2, "rods_per_angler", 2),
        ("Rods per angler", "2", "rods_per_angler", 2),
        ("Big fish from", 18, "big_fish_mm", 457.2),
        ("Big fish from", "45 cm", "big_fish_mm", 450),
        ("Usual start", "6:30", "usual_start", 390),
        ("Usual end", dt.time(11), "usual_end", 660),
        ("All fish measured", True, "all_measured", "yes"),
        ("Decimal mark", ",", "decimal_mark", "comma"),
        ("Date order", "dmy", "date_order", "day first"),
        ("Latitude", 45.5, "latitude", 45.5),
        ("Guide or outfit", 7, "guide", "7"),
    ],
)
def test_setting_is_read_by_its_own_rule(
    setting: str, typed: object, key: str, value: object, tidied: Tidy
) -> None:
    log = tidied({"Season": with_season({**SOUND, setting: typed})})
    assert log.settings[key] == (pytest.approx(value) if isinstance(value, float) else value)


@pytest.mark.parametrize(
    ("setting", "typed"),
    [
        ("Units", "cubits"),
        ("Rods per angler", 0),
        ("Rods per angler", "two"),
        ("Rods per angler", 1.5),
        ("Latitude", 91),
        ("Species counted", "largemouth; unicorn"),
        ("Bass means", "trout"),
        ("First day", "31 June 2026"),
        ("Usual start", "early"),
        ("Big fish from", "4 lb"),
        ("Usual end", "#REF!"),
        ("Time zone", "#N/A"),
    ],
)
def test_setting_that_cannot_be_read_is_set_aside_alone(setting: str, typed: object, tidied: Tidy) -> None:
    settings = {**SOUND}
    settings.pop(setting, None)
    at = len(settings) + 2
    made = tidied({"Season": with_season({**settings, setting: typed})})
    assert triples(made) == [("Season", at, "required_unread")]


def test_blank_setting_is_used_and_says_nothing(tidied: Tidy) -> None:
    log = tidied({"Season": with_season({**SOUND, "Latitude": None, "Big fish from": None})})
    assert log.problems == []
    assert log.fates["season"].count().used == 5


def test_answer_without_a_setting_is_set_aside(tidied: Tidy) -> None:
    rows = [*with_season(SOUND), [None, "metric"]]
    assert triples(tidied({"Season": rows})) == [("Season", 5, "required_blank")]


def test_first_row_of_a_setting_written_twice_serves(tidied: Tidy) -> None:
    rows = [*with_season(SOUND), ["units", "metric"]]
    log = tidied({"Season": rows})
    assert log.settings.system == "us"


def test_setting_near_a_known_one_is_offered(tidied: Tidy) -> None:
    (problem,) = tidied({"Season": with_season({**SOUND, "Usual starts": "6:00"})}).problems
    assert problem.code == "setting_unknown"
    assert "'Usual start'" in problem.text


def test_dates_of_the_settings_follow_the_date_order_wherever_it_stands(tidied: Tidy) -> None:
    settings = {"Last day": "1/12/2026", "Time zone": "UTC", "Units": "metric", "Date order": "day first"}
    log = tidied({"Season": with_season(settings), "Catch": {"D1": "Length (in)"}})
    assert log.settings["last_day"] == dt.date(2026, 12, 1)


def test_setting_may_name_its_own_unit(tidied: Tidy) -> None:
    log = tidied({"Season": with_season({**SOUND, "Big fish from (cm)": 45})})
    assert log.settings["big_fish_mm"] == 450


def test_number_that_needs_a_unit_is_refused_where_none_is_set(tidied: Tidy) -> None:
    settings = {"Last day": "2026-11-30", "Time zone": "UTC", "Big fish from": 18}
    assert triples(tidied({"Season": with_season(settings)})) == [("Season", 4, "required_unread")]


def test_log_without_the_sheet_is_read_with_what_the_headings_say(tidied: Tidy) -> None:
    assert triples(tidied({"Season": None})) == [("Season", 0, "no_as_of"), ("Season", 0, "no_time_zone")]


def test_sheet_without_answers_is_read_as_blank(tidied: Tidy) -> None:
    assert triples(tidied({"Season": [["Setting", "Answer"], ["Units", "us"]]})) == [
        ("Season", 0, "no_as_of"),
        ("Season", 0, "no_time_zone"),
        ("Season", 1, "column_not_read"),
    ]
