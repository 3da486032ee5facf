"""Fish, trips and rules of which the log does not say enough: said, and never taken for no problem."""

import datetime as dt

import pytest

from reporter.schema.keep_tables import CANNOT_CHECK, CHECK_THIS, KEEP_CHECKS, NO_PROBLEM, NOT_CHECKED
from tests.compute.keep_rules.logs import BASS, WATERS, Fish, Row, Trip, broken, check, results, rule
from tests.conftest import WriteLog

FORK, ARDEN = "Pike Fork", "Lake Arden"
LMB, SMB, WAE, BLC = "largemouth bass", "smallmouth bass", "walleye", "black crappie"
BARE = "black bass, unspecified"
JUNE = "2026-06-06"
FIVE_BASS = rule("R1", "*", BASS, daily_limit=5)
SPECIES_COUNTED = ["Species counted", "LMB;SMB;SPB"]


def found(
    write_log: WriteLog, fish: list[Fish], rules: list[Row], **more: object
) -> list[tuple[str, str, str]]:
    return results(check(write_log, [Trip(FORK, JUNE, fish, **more)], rules))  # type: ignore[arg-type]


def test_bare_bass_count_against_a_limit_on_all_bass_that_the_log_knows(write_log: WriteLog) -> None:
    fish = [Fish("black bass", count=3), Fish(LMB, 15, 3)]
    assert found(write_log, fish, [FIVE_BASS]) == [(f"{BARE}; {LMB}", CHECK_THIS, "R1")]


def test_bare_bass_may_count_where_a_rule_leaves_out_a_kind_of_bass(write_log: WriteLog) -> None:
    # With a rule about shoal bass the three of R1 are not all: 3 sure and 3 that may count are 6.
    fish = [Fish("black bass", count=3), Fish(LMB, 15, 3)]
    rules = [FIVE_BASS, rule("R2", "*", "SHB", daily_limit=1)]
    made = found(write_log, fish, rules)
    assert (f"{BARE}; {LMB}", CANNOT_CHECK, "R1") in made
    assert not {NO_PROBLEM, CHECK_THIS} & {row[1] for row in made}


def test_bare_bass_cannot_be_held_against_a_rule_of_one_kind(write_log: WriteLog) -> None:
    made = found(write_log, [Fish("black bass", 10)], [rule("R1", "*", "LMB", min=14)])
    assert made == [(BARE, CANNOT_CHECK, "R1")]
    closed = [rule("R1", "*", "LMB", action="RELEASE"), rule("R2", "*", "SMB", daily_limit=5)]
    assert found(write_log, [Fish("black bass", 15)], closed) == [(BARE, CANNOT_CHECK, "R1")]


def test_group_words_stand_for_their_species(write_log: WriteLog) -> None:
    rules = [rule("R1", "*", "black bass", daily_limit=5), rule("R2", "*", "crappie", min=10)]
    fish = [Fish(LMB, 15, 3), Fish("spotted bass", 12, 3), Fish(BLC, 9), Fish("crappie", 9)]
    assert broken(check(write_log, [Trip(FORK, JUNE, fish)], rules)) == ["R2", "R2", "R1"]


def test_crappie_not_told_apart_are_of_a_rule_for_both(write_log: WriteLog) -> None:
    rules = [rule("R1", "*", "BLC;WHC", daily_limit=5)]
    assert [row[1] for row in found(write_log, [Fish("crappie", 9, 6)], rules)] == [CHECK_THIS]


def test_fish_without_a_fate_are_said_and_may_count(write_log: WriteLog) -> None:
    fish = [Fish(LMB, 15, 4, fate=None), Fish(SMB, 15, 3)]
    made = found(write_log, fish, [FIVE_BASS])
    assert (LMB, CANNOT_CHECK, "R1") in made
    assert (f"{LMB}; {SMB}", CANNOT_CHECK, "R1") in made
    assert NO_PROBLEM not in {row[1] for row in made}


def test_fate_that_season_gives_to_blanks_is_theirs(write_log: WriteLog) -> None:
    trip = [Trip(FORK, JUNE, [Fish(LMB, 15, 6, fate=None)])]
    assert broken(check(write_log, trip, [FIVE_BASS], [["Fate if blank", "kept"]])) == ["R1"]
    released = check(write_log, trip, [FIVE_BASS], [["Fate if blank", "released"]])
    assert results(released) == [(LMB, NO_PROBLEM, "R1")]


def test_tallied_fish_without_rows_are_bass_of_unknown_fate(write_log: WriteLog) -> None:
    # 9 tallied and 4 on Catch leave 5, of which nothing is written; 4 + 5 may be over five.
    trip = Trip(FORK, JUNE, [Fish(LMB, 15, 4)], landed=9)
    checks = check(write_log, [trip], [FIVE_BASS], [SPECIES_COUNTED])
    assert sorted(results(checks)) == [(BARE, CANNOT_CHECK, "R1"), (f"{BARE}; {LMB}", CANNOT_CHECK, "R1")]
    assert "5 black bass tallied beyond the rows of Catch were entered without a fate" in " ".join(
        checks.table["message"]
    )


def test_tallied_fish_of_every_kind_are_said_too(write_log: WriteLog) -> None:
    trip = Trip(FORK, JUNE, [Fish(LMB, 15, 4)], landed=5)
    checks = check(write_log, [trip], [FIVE_BASS])
    assert results(checks) == [("kind not given", CANNOT_CHECK, "R1"), (LMB, NO_PROBLEM, "R1")]


UNREAD = [
    (rule("R9", "Lake Ardne", "LMB", min=14), 1),
    (rule("R9", "*", "bass", min=14), 2),
    (rule("R9", "*", "", min=14), 2),
    (rule("R9", "*", ";;", min=14), 2),
    (rule("R9", "", "LMB", min=14), 1),
    (rule("R9", "*", "LMB", ("03-01", ""), min=14), 1),
    (rule("R9", "*", "LMB", ("3 March", "04-01"), min=14), 1),
    (rule("R9", "*", "LMB", action="", min=14), 1),
    (rule("R9", "*", "LMB"), 1),
    (rule("R9", "*", "LMB", min=14, daily_limit="lots"), 1),
    (rule("R9", "*", "LMB", slot_from=14), 1),
    (rule("R9", "*", "LMB", slot_from=18, slot_to=14), 1),
    (rule("R9", "*", "LMB", over_count=1), 1),
    (rule("R9", "*", "LMB", min=18, max=14), 1),
    (rule("R9", "*", "LMB", action="KEEPFIRST"), 1),
    (rule("R9", "*", "LMB", action="RELEASE", min=14), 1),
    (rule("R9", "*", "LMB", action="CLOSED", daily_limit=2), 1),
    (rule("", "*", "LMB", min=14), 1),
]


@pytest.mark.parametrize(("bad", "species"), UNREAD, ids=[str(number) for number in range(len(UNREAD))])
def test_what_a_rule_that_cannot_be_read_may_speak_of_cannot_be_checked(
    bad: Row, species: int, write_log: WriteLog
) -> None:
    checks = check(write_log, [Trip(FORK, "2026-03-20", [Fish(LMB, 15), Fish(SMB, 15)])], [FIVE_BASS, bad])
    assert [row[1] for row in results(checks)].count(CANNOT_CHECK) == species
    assert (checks.rules, checks.unread, broken(checks)) == (1, 1, [])


def test_what_it_does_not_speak_of_is_checked(write_log: WriteLog) -> None:
    bad = [
        rule("R7", ARDEN, "LMB"),
        rule("R8", "*", "LMB", ("07-01", "08-31")),
        rule("R9", "*", "LMB", edition=2025),
    ]
    assert found(write_log, [Fish(LMB, 15)], [FIVE_BASS, *bad]) == [(LMB, NO_PROBLEM, "R1")]


@pytest.mark.parametrize("who", ["res", "nonres", "youth"])
def test_a_rule_that_binds_some_is_not_checked_and_said(who: str, write_log: WriteLog) -> None:
    rules = [FIVE_BASS, rule("R2", "*", "LMB", min=14, who=who)]
    checks = check(write_log, [Trip(FORK, JUNE, [Fish(LMB, 10), Fish(SMB, 10)])], rules)
    assert results(checks) == [(LMB, NOT_CHECKED, "R2"), (SMB, NO_PROBLEM, "R1")]
    assert checks.unseen.to_numpy().tolist() == [
        ["R2", "Who", who, "The log does not say whom it binds."],
    ]


def test_fork_length_cannot_be_held_against_total_length(write_log: WriteLog) -> None:
    rules = [rule("R1", "*", "LMB", min=14, measure="FL")]
    assert found(write_log, [Fish(LMB, 20)], rules) == [(LMB, CANNOT_CHECK, "R1")]


def test_what_no_log_shows_is_listed(write_log: WriteLog) -> None:
    rules = [
        rule("R1", "*", "LMB", daily_limit=5, possession=10, cull_allowed="N", notes="hatchery fish only")
    ]
    checks = check(write_log, [Trip(FORK, JUNE, [Fish(LMB, 15)])], rules)
    assert checks.unseen[["heading", "value"]].to_numpy().tolist() == [
        ["Cull allowed", "N"],
        ["Possession", "10"],
        ["Notes", "hatchery fish only"],
    ]


def test_general_rules_are_of_their_jurisdiction_where_the_water_says_its_own(write_log: WriteLog) -> None:
    waters = [["Water", "Region"], [FORK, "US-XX"], [ARDEN, "US-YY"], *([w, None] for w in WATERS[1:4])]
    trips = [Trip(water, JUNE, [Fish(LMB, 15, 6)]) for water in (FORK, ARDEN, "Otter River")]
    rules = [rule("R1", "*", "LMB", daily_limit=5, jurisdiction="us-xx")]
    checks = check(write_log, trips, rules, Waters=waters)
    assert [row[1] for row in results(checks)] == [CHECK_THIS, NOT_CHECKED, CHECK_THIS]


def test_also_called_names_a_water_of_a_rule(write_log: WriteLog) -> None:
    waters = [["Water", "Also called"], [ARDEN, "Arden; the big one"]]
    checks = check(
        write_log,
        [Trip(ARDEN, JUNE, [Fish(LMB, 10)])],
        [rule("R1", "THE BIG ONE", "LMB", min=14)],
        Waters=waters,
    )
    assert broken(checks) == ["R1"]


def test_only_guided_trips_that_took_place_are_checked(write_log: WriteLog) -> None:
    fish = [Fish(LMB, 15, 6)]
    trips = [
        Trip(FORK, JUNE, fish, kind="scouting"),
        Trip(FORK, JUNE, fish, kind="own"),
        Trip(FORK, JUNE, fish, status="cancelled"),
        Trip(FORK, JUNE, fish, status="cut short"),
        Trip(FORK, JUNE, fish, status="log not finished"),
    ]
    checks = check(write_log, trips, [FIVE_BASS])
    assert checks.table["trip"].tolist() == ["T-4", "T-5", "T-5"]
    assert results(checks)[1:] == [(LMB, CHECK_THIS, "R1"), ("", NOT_CHECKED, "")]
    assert "log is not finished, so fish may be missing" in checks.table["message"][2]


def test_rows_of_catch_that_are_set_aside_are_said(write_log: WriteLog) -> None:
    checks = check(write_log, [Trip(FORK, JUNE, [Fish(LMB, 15), Fish("wallaye"), Fish("bass")])], [FIVE_BASS])
    assert results(checks) == [("", NOT_CHECKED, ""), (LMB, NO_PROBLEM, "R1")]
    assert "rows 3-4 of Catch, not used; see Rows to fix." in checks.table["message"][0]


@pytest.mark.parametrize(
    ("fish", "heading"),
    [
        (Fish(LMB, 15, fate="eaten"), "Fate"),
        (Fish(LMB, 15, count="6-7"), "Count"),  # type: ignore[arg-type]
        (Fish(LMB, 15, measured="sort of"), "Measured"),
    ],
)
def test_cells_that_would_decide_and_cannot_be_read_are_said(
    fish: Fish, heading: str, write_log: WriteLog
) -> None:
    checks = check(write_log, [Trip(FORK, JUNE, [fish])], [FIVE_BASS], [["Fate if blank", "released"]])
    assert results(checks)[0] == ("", NOT_CHECKED, "")
    assert f"row 2 of Catch, {heading} not used; see Rows to fix." in checks.table["message"][0]


def test_log_without_fish_or_without_the_sheet_is_checked_without_a_row(write_log: WriteLog) -> None:
    assert check(write_log, [Trip(FORK, JUNE)], [FIVE_BASS]).table.empty
    sheets = check(write_log, [Trip(FORK, JUNE, [Fish(LMB, 15)])], **{"Keep rules": None})
    assert results(sheets) == [(LMB, NOT_CHECKED, "")]


def test_table_has_the_columns_of_the_schema_in_the_order_of_trips(write_log: WriteLog) -> None:
    trips = [Trip(FORK, day, [Fish(LMB, 15, 6), Fish(WAE, 20)]) for day in ("2026-07-01", JUNE)]
    checks = check(write_log, trips, [FIVE_BASS])
    assert checks.table.columns.tolist() == ["trip_no", *(field.name for field in KEEP_CHECKS.fields)]
    assert checks.table["trip"].tolist() == ["T-1", "T-1", "T-2", "T-2"]
    assert checks.table["date"].dt.date.tolist()[::2] == [dt.date(2026, 7, 1), dt.date(2026, 6, 6)]
    assert checks.table["result"].tolist() == [CHECK_THIS, NOT_CHECKED] * 2
