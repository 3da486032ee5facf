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


def used(tackle: Tackle, by: str, *names: str) -> dict[str, Any]:
    rows = tackle.used[by].table.to_dict("records")
    keys = ("technique",) if by == "technique" else ("technique", "value")
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


def test_techniques_are_told_with_all_that_they_were_used(tackle: Tackle) -> None:
    row = used(tackle, "technique", "Jerkbait")
    # Deep on T-1 to T-5, shallow on T-1 and T-6: seven stints on six trips. Fish 1 + 2 + 0 + 0 + 1 + 0 + 4.
    assert (row["stints"], row["trips"], row["rod_hours"], row["landed"]) == (7, 6, 14, 8)
    assert (row["lures_lost"], row["lost_trips"], row["lost_rod_hours"]) == (5, 5, 11)
    assert row["share"] == pytest.approx(14 / 24)
    # 8 + 0 + 3 + 1: the jig's fish are the technique's, whichever stint caught them.
    assert tackle.used["technique"].table["landed"].tolist() == [8, 0, 3, 1]
    assert tackle.used["technique"].fish_left_out == 0


@pytest.mark.parametrize(("by", "value"), [("size", "1/2 oz"), ("colour", "dark")])
def test_names_typed_differently_are_one_line_as_first_typed(by: str, value: str, tackle: Tackle) -> None:
    row = used(tackle, by, "Jerkbait", value)
    # 1/2 oz, 1/2oz, 1/2-oz and dark, Dark, dark. on T-1 to T-5: fish 1 + 2 + 0 + 0 + 1, 1 + 1 lost.
    assert (row["stints"], row["trips"], row["rod_hours"]) == (5, 5, 10)
    assert (row["landed"], row["lures_lost"], row["lost_trips"], row["lost_rod_hours"]) == (4, 2, 5, 10)
    assert (row["share"], row["technique_share"]) == (pytest.approx(10 / 24), pytest.approx(10 / 14))


@pytest.mark.parametrize("by", ["size", "colour"])
def test_what_is_not_recorded_is_the_last_line_of_its_technique(by: str, tackle: Tackle) -> None:
    # Of Topwater, Drop shot and Casting jig none is recorded: they are in no line.
    table = tackle.used[by].table
    assert table["technique"].tolist() == ["Jerkbait", "Jerkbait"]
    assert table["value"].tolist()[-1] == ""
    # Shallow, on T-1 and T-6: 1 + 3 rod-hours, no fish and 4, 3 lost on T-1 alone.
    row = used(tackle, by, "Jerkbait", "")
    assert (row["stints"], row["trips"], row["rod_hours"], row["landed"]) == (2, 2, 4, 4)
    assert (row["lures_lost"], row["lost_trips"], row["lost_rod_hours"]) == (3, 1, 1)
    assert tackle.used[by].fish_left_out == 0


SIZED = ["Trip", "Technique", "Minutes", "Landed", "Size"]


def test_lines_stand_under_their_techniques_in_the_order_of_rod_hours(
    write_log: WriteLog,
) -> None:
    rows = [
        ("Drop shot", 60, "3/8 oz"),
        ("Jerkbait", 60, "large"),
        ("Jerkbait", 240, None),
        ("Jerkbait", 120, "small"),
        ("Drop shot", 120, "1/4 oz"),
        ("Topwater", 90, None),
        ("Drop shot", 30, "3/8 oz"),
    ]
    effort = [SIZED, *(["T-001", technique, minutes, 1, size] for technique, minutes, size in rows)]
    table = tackle_of(write_log, {"Effort": effort, "Catch": [CATCH]}).used["size"].table
    # Jerkbait 7 rod-hours, Drop shot 3.5 (2 and 1 + 0.5); Topwater has no size. Blank is last, though most.
    assert table[["technique", "value", "rod_hours"]].to_numpy().tolist() == [
        ["Jerkbait", "small", 2],
        ["Jerkbait", "large", 1],
        ["Jerkbait", "", 4],
        ["Drop shot", "1/4 oz", 2],
        ["Drop shot", "3/8 oz", 1.5],
    ]


def test_sizes_are_told_apart_by_their_signs_and_colours_are_not(write_log: WriteLog) -> None:
    typed = ["1/4 oz", "14 oz", "1/4-OZ", "1/4oz", "3.5 in", "35 in", "3.5in"]
    effort = [
        [*SIZED, "Colour"],
        *(["T-001", "Drop shot", 60, 1, text, text] for text in typed),
    ]
    made = tackle_of(write_log, {"Effort": effort, "Catch": [CATCH]})
    sizes, colours = (
        dict(zip(t["value"], t["stints"], strict=True))
        for t in (made.used["size"].table, made.used["colour"].table)
    )
    assert sizes == {"1/4 oz": 3, "3.5 in": 2, "14 oz": 1, "35 in": 1}
    assert colours == {"1/4 oz": 4, "3.5 in": 3}


def test_fish_that_belong_to_either_of_two_lines_are_left_out(write_log: WriteLog) -> None:
    changes = hand_made()
    effort = changes["Effort"]
    assert isinstance(effort, list)
    for row in effort:
        if row[1] == "Casting jig":
            row[9] = "dark" if row[10] == "dock" else "light"
    made = tackle_of(write_log, changes)
    assert (made.used["colour"].fish_left_out, made.used["size"].fish_left_out) == (1, 0)
    for colour in ("dark", "light"):
        assert math.isnan(used(made, "colour", "Casting jig", colour)["landed"])
    assert used(made, "technique", "Casting jig")["landed"] == 1


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


def test_what_to_have_is_what_each_technique_lost_per_rod_hour_over_all_its_rod_hours(tackle: Tackle) -> None:
    table = tackle.used["technique"].table
    assert table["technique"].tolist() == ["Jerkbait", "Topwater", "Drop shot", "Casting jig"]
    # Jerkbait lost 5 in 11 rod-hours that say, of 14: 70 / 11 = 6.4. Topwater 1 in 2, of 6: 3, and three are
    # three to have. Drop shot none in 3.
    rates, losses = table["lures_lost_per_rod_hour"].tolist(), table["expected_losses"].tolist()
    assert rates[:3] == pytest.approx([5 / 11, 1 / 2, 0])
    assert losses[:3] == pytest.approx([70 / 11, 3, 0])
    assert table["to_have"].tolist()[:3] == [7, 3, 0]


def test_technique_of_which_nothing_is_told_has_nothing_to_expect_and_not_none(tackle: Tackle) -> None:
    jig = used(tackle, "technique", "Casting jig")
    for key in ("lures_lost", "lures_lost_per_rod_hour", "expected_losses", "to_have"):
        assert math.isnan(jig[key]), key


def test_losses_of_a_technique_are_spread_by_rod_hours_and_add_up_to_it(tackle: Tackle) -> None:
    # 70 / 11 over 10 + 4 rod-hours, though the blank size lost 3 of the 5.
    for by in ("size", "colour"):
        assert tackle.used[by].table["expected_losses"].tolist() == pytest.approx([50 / 11, 20 / 11])


@pytest.mark.parametrize("minutes", [41, 43, 71])
def test_whole_losses_are_not_rounded_up_past_themselves(minutes: int, write_log: WriteLog) -> None:
    # 3 lost in all the rod-hours that it was fished are 3 to have, though in doubles 3 / h x h is over 3.
    hours = minutes / 60
    assert 3 / hours * hours > 3
    rows = [["Trip", "Technique", "Minutes", "Landed", "Lures lost"], ["T-001", "Drop shot", minutes, 1, 3]]
    made = tackle_of(write_log, {"Effort": rows, "Catch": [CATCH]})
    assert made.used["technique"].table["to_have"].tolist() == [3]
