"""Tackle of a log made by hand: every number worked out from the typed rows, as the comments show."""

import math
from typing import Any

import pytest

from reporter.compute.report import make_report
from reporter.compute.tackle.tackle import Tackle
from reporter.run.season import read_season
from tests.conftest import Change, WriteLog

TRIPS = ["Trip", "Date", "Water", "Start", "End", "Anglers", "Status"]
EFFORT = [
    *("Trip", "Technique", "Minutes", "Landed", "Missed", "Hang-ups", "Lures lost"),
    *("Variant", "Size", "Colour", "Cover"),
]
CATCH = ["Trip", "Technique", "Species"]
DEEP = ("deep", "1/2 oz", "dark", "rock")


def hand_made() -> dict[str, Change]:
    """Seven trips, one rod on everything, so that rod-hours are minutes / 60; T-7 is not finished.

    Jerkbait deep: 2 rod-hours on each of five trips; lost 1, 0, 0, 1, 0. Jerkbait shallow: 1 rod-hour that
    lost 3, and 3 of which nothing is told. Topwater: 1 rod-hour on each of six trips, two of which tell
    what was lost: 1, 0. Drop shot: 1 rod-hour on three trips, none lost. Casting jig: half a rod-hour on each
    of two covers, of which nothing is told, and one fish that belongs to either. 10 + 4 + 6 + 3 + 1 = 24.
    """
    trips: list[list[object]] = [list(TRIPS)]
    for number in range(1, 8):
        status = "log not finished" if number == 7 else None
        trips.append([f"T-{number}", f"2026-05-{number:02d}", "Lake Arden", "06:00", "12:00", 2, status])
    effort: list[list[object]] = [
        list(EFFORT),
        ["T-1", "Jerkbait", 120, 1, 1, 2, 1, *DEEP],
        ["T-2", "jerk bait", 120, 2, 0, 0, 0, "Deep", "1/2oz", "Dark", "Rock"],
        ["T-3", "Jerkbait", 120, 0, None, None, 0, *DEEP],
        ["T-4", "Jerkbait", 120, 0, 0, 1, 1, "DEEP", "1/2-oz", "dark.", "rock"],
        ["T-5", "Jerkbait", 120, 1, None, None, 0, *DEEP],
        ["T-1", "Jerkbait", 60, 0, None, None, 3, "shallow", None, None, "dock"],
        ["T-6", "Jerkbait", 180, 4, None, None, None, "Shallow", None, None, None],
        *(["T-" + str(n), "Drop shot", 60, 1, None, 0, 0, None, None, None, "DOCK"] for n in (1, 2, 3)),
        ["T-6", "Casting jig", 30, None, 1, None, None, None, None, None, "dock"],
        ["T-6", "Casting jig", 30, None, 2, None, None, None, None, None, "rock"],
        ["T-7", "Jerkbait", 60, 0, None, 1, 4, *DEEP],
    ]
    for number in range(1, 7):
        lost = {1: 1, 2: 0}.get(number)
        effort.append([f"T-{number}", "Topwater", 60, 0, None, None, lost, None, None, None, None])
    return {
        "Trips": trips,
        "Effort": effort,
        "Catch": [list(CATCH), ["T-6", "Casting jig", "largemouth bass"]],
        "Techniques": None,
        "Waters": None,
    }


def tackle_of(write_log: WriteLog, changes: dict[str, Change]) -> Tackle:
    season = read_season(write_log(changes)).season
    assert season is not None
    return make_report(season).tackle


@pytest.fixture(scope="module")
def tackle(write_log: WriteLog) -> Tackle:
    return tackle_of(write_log, hand_made())


def group(tackle: Tackle, by: str, *names: str) -> dict[str, Any]:
    keys = ("technique", "variant") if by == "variant" else (by,)
    rows = tackle.rates[by].table.to_dict("records")
    (row,) = (row for row in rows if tuple(row[key] for key in keys) == names)
    return {str(key): value for key, value in row.items()}


def line(tackle: Tackle, *names: str) -> dict[str, Any]:
    rows = tackle.used.table.to_dict("records")
    keys = ("technique", "variant", "size", "colour")
    (row,) = (row for row in rows if tuple(row[key] for key in keys) == names)
    return {str(key): value for key, value in row.items()}


def test_rate_stands_on_the_stints_that_say(tackle: Tackle) -> None:
    row = group(tackle, "technique", "Jerkbait")
    # Fished on T-1 to T-6, 5 x 2 + 1 + 3 rod-hours. Hang-ups are told on T-1, T-2, T-4: 2 + 0 + 1 in 6
    # rod-hours. Lures lost on T-1 to T-5: 1 + 3 + 0 + 0 + 1 + 0 in 11.
    assert (row["trips"], row["rod_hours"]) == (6, 14)
    assert (row["hang_ups"], row["hang_up_trips"], row["hang_up_rod_hours"]) == (3, 3, 6)
    assert row["hang_ups_per_rod_hour"] == 0.5
    assert (row["lures_lost"], row["lost_trips"], row["lost_rod_hours"]) == (5, 5, 11)
    assert row["lures_lost_per_rod_hour"] == pytest.approx(5 / 11)


def test_none_counted_is_0_and_not_recorded_is_blank(tackle: Tackle) -> None:
    none = group(tackle, "technique", "Drop shot")
    assert (none["hang_ups"], none["hang_ups_per_rod_hour"], none["lures_lost"]) == (0, 0, 0)
    blank = group(tackle, "technique", "Casting jig")
    assert (blank["hang_up_trips"], blank["hang_up_rod_hours"], blank["lost_trips"]) == (0, 0, 0)
    for key in ("hang_ups", "hang_ups_per_rod_hour", "lures_lost", "lures_lost_per_rod_hour"):
        assert math.isnan(blank[key]), key


@pytest.mark.parametrize(
    ("by", "hours"),
    [
        # In the order of rod-hours: what is used most stands first, what is not recorded last.
        ("technique", {"Jerkbait": 14, "Topwater": 6, "Drop shot": 3, "Casting jig": 1}),
        # rock: 5 x 2 + 1/2; dock: 1 + 3 + 1/2; not recorded: 3 + 6.
        ("cover", {"rock": 10.5, "dock": 4.5, "": 9}),
        ("variant", {"deep": 10, "shallow": 4, "": 10}),
    ],
)
def test_groups_stand_in_the_order_of_rod_hours_and_add_up_to_the_season(
    by: str, hours: dict[str, float], tackle: Tackle
) -> None:
    table, whole = tackle.rates[by].table, tackle.rates[by].whole
    assert dict(zip(table[by], table["rod_hours"], strict=True)) == hours
    assert list(table[by]) == list(hours)
    assert list(table["no"]) == list(range(1, len(hours) + 1))
    assert whole["rod_hours"].tolist() == [24] == [sum(hours.values())]
    # Six trips, two of which stand in several groups.
    assert whole["trips"].tolist() == [6]
    # 5 on Jerkbait, 1 on Topwater, none on Drop shot, in 11 + 2 + 3 rod-hours; T-7 is in no rate.
    assert whole["lures_lost"].tolist() == [6] == [table["lures_lost"].sum()]
    assert whole["lost_rod_hours"].tolist() == [16]


def test_bites_are_held_against_the_fish_of_the_stints_that_say(tackle: Tackle) -> None:
    row = group(tackle, "technique", "Jerkbait")
    # T-1, T-2, T-4: missed 1 + 0 + 0, landed 1 + 2 + 0; the four fish of T-6 say nothing of misses.
    assert (row["bite_trips"], row["bite_rod_hours"], row["missed"], row["landed"]) == (3, 6, 1, 3)
    assert row["share_landed"] == 0.75


def test_fish_that_cannot_be_told_apart_count_together_or_are_left_out(tackle: Tackle) -> None:
    row = group(tackle, "technique", "Casting jig")
    # Both stints say what was missed, 1 + 2, and the fish is the technique's.
    assert (row["missed"], row["landed"], row["share_landed"]) == (3, 1, 0.25)
    assert (tackle.rates["technique"].left_out, tackle.rates["cover"].left_out) == (0, 1)
    # By cover it is either's: rock has Jerkbait's bites alone, dock none that say.
    assert (group(tackle, "cover", "rock")["missed"], group(tackle, "cover", "rock")["landed"]) == (1, 3)
    assert group(tackle, "cover", "dock")["bite_trips"] == 0
    # Neither stint names a variant, so they are one group there.
    assert tackle.rates["variant"].left_out == 0
    assert group(tackle, "variant", "", "")["missed"] == 3


def test_fish_of_a_stint_that_does_not_say_take_its_technique_out_where_they_are_one(
    write_log: WriteLog,
) -> None:
    changes = hand_made()
    effort = changes["Effort"]
    assert isinstance(effort, list)
    (second,) = (row for row in effort if row[1] == "Casting jig" and row[4] == 2)
    second[4] = None
    row = group(tackle_of(write_log, changes), "technique", "Casting jig")
    assert row["bite_trips"] == 0
    assert math.isnan(row["missed"])


def test_names_typed_differently_are_one_line_as_first_typed(tackle: Tackle) -> None:
    row = line(tackle, "Jerkbait", "deep", "1/2 oz", "dark")
    assert (row["stints"], row["trips"], row["rod_hours"]) == (5, 5, 10)
    assert (row["landed"], row["lures_lost"], row["lost_trips"], row["lost_rod_hours"]) == (4, 2, 5, 10)
    assert row["share"] == pytest.approx(10 / 24)


def test_lines_stand_in_the_order_of_rod_hours(tackle: Tackle) -> None:
    # 10, 6, 4, 3, 1; nothing beyond the technique is one line a technique.
    table = tackle.used.table
    names = [tuple(row) for row in table[["technique", "variant", "size"]].to_numpy().tolist()]
    assert names == [
        ("Jerkbait", "deep", "1/2 oz"),
        ("Topwater", "", ""),
        ("Jerkbait", "shallow", ""),
        ("Drop shot", "", ""),
        ("Casting jig", "", ""),
    ]
    # All 4 + 4 + 3 + 1 fish: the jig's stints are one line.
    assert table["landed"].tolist() == [4, 0, 4, 3, 1]
    assert tackle.used.fish_left_out == 0


def test_fish_that_belong_to_either_of_two_lines_are_left_out(write_log: WriteLog) -> None:
    changes = hand_made()
    effort = changes["Effort"]
    assert isinstance(effort, list)
    for row in effort:
        if row[1] == "Casting jig":
            row[9] = "dark" if row[10] == "dock" else "light"
    made = tackle_of(write_log, changes)
    assert made.used.fish_left_out == 1
    for colour in ("dark", "light"):
        assert math.isnan(line(made, "Casting jig", "", "", colour)["landed"])


def test_what_was_lost_on_stints_in_no_rate_is_counted_outside(tackle: Tackle) -> None:
    assert (tackle.written["hang_ups"].outside, tackle.written["lures_lost"].outside) == (1, 4)


@pytest.mark.parametrize(
    ("typed", "only"),
    [
        ([1, None, 2, None], True),
        ([1, 0, 2, None], False),
        ([1, 1, 2, 3], False),
        ([None, None, None, None], False),
    ],
)
def test_losses_alone_are_suspected_where_no_0_is_written_and_some_are_blank(
    typed: list[object], only: bool, write_log: WriteLog
) -> None:
    rows: list[list[object]] = [["Trip", "Technique", "Minutes", "Landed", "Lures lost"]]
    rows += [["T-001", "Drop shot", 60, 1, lost] for lost in typed]
    made = tackle_of(write_log, {"Effort": rows, "Catch": [CATCH]})
    assert made.written["lures_lost"].only_losses is only
    assert not made.written["hang_ups"].only_losses


def test_restock_list_takes_a_lines_own_record_or_its_techniques(tackle: Tackle) -> None:
    rows = tackle.restock.table.to_dict("records")
    found = {(row["technique"], row["variant"]): row for row in rows}
    assert list(found) == [("Jerkbait", "deep"), ("Topwater", ""), ("Jerkbait", "shallow")]
    deep = found["Jerkbait", "deep"]
    # Five trips that say: its own 2 in 10 rod-hours. 10 x 0.2 = 2, and two are two to have.
    assert (deep["record"], deep["trips"], deep["lures_lost"], deep["lost_rod_hours"]) == ("own", 5, 2, 10)
    assert (deep["expected_losses"], deep["to_have"]) == (pytest.approx(2), 2)
    shallow = found["Jerkbait", "shallow"]
    # One trip that says: all Jerkbait, 5 in 11 rod-hours. 4 x 5 / 11 = 1.82.
    assert (shallow["record"], shallow["trips"], shallow["lures_lost"]) == ("technique", 5, 5)
    assert (shallow["expected_losses"], shallow["to_have"]) == (pytest.approx(20 / 11), 2)
    topwater = found["Topwater", ""]
    # Two trips that say, 1 in 2 rod-hours: 6 x 0.5 = 3.
    assert (topwater["record"], topwater["trips"]) == ("technique", 2)
    assert (topwater["expected_losses"], topwater["to_have"]) == (pytest.approx(3), 3)


def test_lines_that_are_not_listed_are_counted(tackle: Tackle) -> None:
    # Drop shot lost none; of Casting jig, one rod-hour, nothing is told.
    restock = tackle.restock
    assert (restock.none_lost, restock.not_told, restock.not_told_rod_hours) == (1, 1, 1)
    assert len(restock.table) + restock.none_lost + restock.not_told == len(tackle.used.table)


@pytest.mark.parametrize("minutes", [41, 43, 71])
def test_whole_losses_are_not_rounded_up_past_themselves(minutes: int, write_log: WriteLog) -> None:
    # 3 lost in all the rod-hours that it was fished are 3 to have, though in doubles 3 / h x h is over 3.
    hours = minutes / 60
    assert 3 / hours * hours > 3
    rows = [["Trip", "Technique", "Minutes", "Landed", "Lures lost"], ["T-001", "Drop shot", minutes, 1, 3]]
    made = tackle_of(write_log, {"Effort": rows, "Catch": [CATCH]})
    assert made.restock.table["to_have"].tolist() == [3]
