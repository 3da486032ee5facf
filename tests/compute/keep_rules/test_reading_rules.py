"""The twelve rules by which Keep rules are read, each on its own; numbers by hand beside the fish."""

import datetime as dt

import pytest

from reporter.schema.keep_tables import CANNOT_CHECK, CHECK_THIS, NO_PROBLEM, NOT_CHECKED
from tests.compute.keep_rules.logs import Fish, Row, Trip, broken, check, results, rule
from tests.conftest import WriteLog

FORK, ARDEN, OTTER = "Pike Fork", "Lake Arden", "Otter River"
LMB, SMB, WAE, RBT, BLC = "largemouth bass", "smallmouth bass", "walleye", "rainbow trout", "black crappie"
JUNE, NEXT = "2026-06-06", "2026-06-07"


def bag(limit: int = 5, **more: object) -> list[Row]:
    return [rule("R1", "*", "LMB", daily_limit=limit, **more)]


def test_1_all_rows_that_apply_must_hold(write_log: WriteLog) -> None:
    rules = [rule("R1", "*", "LMB", min=14), rule("R2", "*", "LMB", action="RELEASE")]
    checks = check(write_log, [Trip(FORK, JUNE, [Fish(LMB, 13)])], rules)
    assert sorted(broken(checks)) == ["R1", "R2"]


def test_2_a_waters_own_row_drops_general_ones_for_its_species_alone(write_log: WriteLog) -> None:
    # R03 of Lake Arden speaks of LMB: a 13 in LMB is below its slot; R02, 14 in, still holds for SMB.
    checks = check(write_log, [Trip(ARDEN, JUNE, [Fish(LMB, 13), Fish(SMB, 13)])])
    assert results(checks) == [(SMB, CHECK_THIS, "R02"), (LMB, NO_PROBLEM, "R01; R03")]


def test_2_fish_under_a_waters_own_row_leave_the_count_of_a_general_one(write_log: WriteLog) -> None:
    # 4 + 4 crappie kept on one day: white ones count against R1 alone, black ones against R2 alone.
    fish = [Fish(BLC, 11, 4), Fish("white crappie", 11, 4)]
    rules = [rule("R1", "*", "BLC;WHC", daily_limit=5), rule("R2", ARDEN, "BLC", daily_limit=9)]
    assert broken(check(write_log, [Trip(ARDEN, JUNE, fish)], rules)) == []
    assert broken(check(write_log, [Trip(FORK, JUNE, fish)], rules)) == ["R1"]


def test_2_a_general_row_with_everywhere_holds_beside_a_waters_own(write_log: WriteLog) -> None:
    own = rule("R2", ARDEN, "LMB", daily_limit=9)
    trip = [Trip(ARDEN, JUNE, [Fish(LMB, 15, 6)])]
    assert broken(check(write_log, trip, [*bag(everywhere="Y"), own])) == ["R1"]
    assert broken(check(write_log, trip, [*bag(), own])) == []


@pytest.mark.parametrize(("day", "result"), [("2026-06-04", CHECK_THIS), ("2026-06-05", NO_PROBLEM)])
def test_2_outside_the_dates_of_its_own_row_the_general_one_holds(
    day: str, result: str, write_log: WriteLog
) -> None:
    # R11 of Otter River says release to 4 June; from 5 June R10 is left, five trout a day.
    assert [row[1] for row in results(check(write_log, [Trip(OTTER, day, [Fish(RBT, 12)])]))] == [result]


@pytest.mark.parametrize("fate", ["kept", "released"])
def test_3_a_species_whose_rows_leave_out_the_date_is_closed(fate: str, write_log: WriteLog) -> None:
    rules = [rule("R1", "*", "WAE", ("05-04", "09-30"), daily_limit=5)]
    checks = check(write_log, [Trip(FORK, "2026-10-01", [Fish(WAE, 20, fate=fate)])], rules)
    assert results(checks) == [(WAE, CHECK_THIS, "R1")]
    assert f"WAE was entered as {fate}; your rule R1 does not cover this date: closed." in str(
        checks.table["message"][0]
    )


def test_3_a_row_closed_alone_says_nothing_of_other_dates(write_log: WriteLog) -> None:
    rules = [rule("R1", "*", "WAE", ("03-01", "05-03"), "CLOSED")]
    trips = [Trip(FORK, day, [Fish(WAE, 20, fate="released")]) for day in ("2026-05-03", "2026-05-04")]
    assert [row[1] for row in results(check(write_log, trips, rules))] == [CHECK_THIS, NOT_CHECKED]


def test_4_a_species_without_any_row_is_not_checked_kept_or_released(write_log: WriteLog) -> None:
    trips = [Trip(FORK, JUNE, [Fish(WAE, 20)]), Trip(FORK, JUNE, [Fish(WAE, 20, fate="released")])]
    assert results(check(write_log, trips, bag())) == [(WAE, NOT_CHECKED, "")] * 2


def test_4_without_any_rule_nothing_is_checked(write_log: WriteLog) -> None:
    checks = check(write_log, [Trip(FORK, JUNE, [Fish(WAE, 20)])], [])
    assert (results(checks), checks.rules) == ([(WAE, NOT_CHECKED, "")], 0)


def test_5_blank_says_nothing_and_0_says_none(write_log: WriteLog) -> None:
    trip = [Trip(FORK, JUNE, [Fish(LMB, 15, 30)])]
    assert broken(check(write_log, trip, [rule("R1", "*", "LMB", min=14)])) == []
    assert broken(check(write_log, [Trip(FORK, JUNE, [Fish(LMB, 15)])], bag(0))) == ["R1"]
    none_over = [rule("R1", "*", "LMB", over_length=18, over_count=0)]
    assert broken(check(write_log, [Trip(FORK, JUNE, [Fish(LMB, 18.25)])], none_over)) == ["R1"]


def two(count: int, other: int, day: str = NEXT, water: str = FORK, **more: object) -> list[Trip]:
    """Two trips of one client: so many bass kept on the first, and on the second."""
    return [
        Trip(FORK, JUNE, [Fish(LMB, 15, count, angler="C01")], clients=("C01",)),
        Trip(water, day, [Fish(LMB, 15, other, angler="C01")], clients=("C01",)),
    ]


def test_6_limits_are_of_an_angler(write_log: WriteLog) -> None:
    fish = [Fish(LMB, 15, 6, angler="C01"), Fish(LMB, 15, 3, angler="C02")]
    checks = check(write_log, [Trip(FORK, JUNE, fish, anglers=2)], bag())
    assert broken(checks) == ["R1"]
    assert "6 LMB were entered as kept by C01; your rule R1 allows 5 an angler a day." in str(
        checks.table["message"][0]
    )


def test_6_limits_are_of_a_calendar_day_whatever_the_trips(write_log: WriteLog) -> None:
    assert broken(check(write_log, two(3, 3), bag())) == []
    checks = check(write_log, two(3, 3, JUNE), bag())
    assert broken(checks) == ["R1"]
    assert checks.table["trip"].tolist() == ["T-2"]
    assert "6 LMB were entered as kept by C01 on 2 trips" in checks.table["message"][0]


def test_6_a_general_limit_counts_all_waters_and_a_waters_own_its_own(write_log: WriteLog) -> None:
    assert broken(check(write_log, two(3, 3, JUNE, ARDEN), bag())) == ["R1"]
    own = [rule("R1", water, "LMB", daily_limit=5) for water in (FORK, ARDEN)]
    assert broken(check(write_log, two(3, 3, JUNE, ARDEN), own)) == []


def test_6_a_party_that_names_the_same_clients_is_one_party_that_day(write_log: WriteLog) -> None:
    # 6 + 6 bass of two clients with a limit of 5: each trip alone is within 10, the day is not.
    trips = [
        Trip(FORK, JUNE, [Fish(LMB, 15, 6)], anglers=2, clients=pair) for pair in (("A", "B"), ("B", "A"))
    ]
    assert broken(check(write_log, trips, bag())) == ["R1"]
    others = [trips[0], Trip(FORK, JUNE, [Fish(LMB, 15, 6)], anglers=2, clients=("C", "D"))]
    assert broken(check(write_log, others, bag())) == []


def test_6_after_midnight_is_the_next_day(write_log: WriteLog) -> None:
    fish = [Fish(LMB, 15, 3, time="22:00"), Fish(LMB, 15, 3, time="0:30")]
    night = Trip(FORK, JUNE, fish, start="20:00", end="1:30")
    checks = check(write_log, [night], bag())
    assert checks.table["date"].dt.strftime("%m-%d").tolist() == ["06-06", "06-07"]
    assert [row[1] for row in results(checks)] == [NO_PROBLEM, NO_PROBLEM]


def test_6_fish_of_a_night_without_their_time_may_be_of_either_day(write_log: WriteLog) -> None:
    for fish in ([Fish(LMB, 15, 4, time="22:00"), Fish(LMB, 15, 3)], [Fish(LMB, 15, 6)]):
        night = Trip(FORK, JUNE, fish, start="20:00", end="1:30")
        assert results(check(write_log, [night], bag())) == [(LMB, CANNOT_CHECK, "R1")]


def test_7_fish_without_an_angler_that_one_angler_may_keep_are_no_problem(write_log: WriteLog) -> None:
    trip = Trip(FORK, JUNE, [Fish(LMB, 15, 5)], anglers=3)
    assert results(check(write_log, [trip], bag())) == [(LMB, NO_PROBLEM, "R1")]


def test_7_unnamed_fish_join_those_of_the_named(write_log: WriteLog) -> None:
    # C01 has 5 already; one more without a name may be his. 2 x 5 = 10 hold 6.
    fish = [Fish(LMB, 15, 5, angler="C01"), Fish(LMB, 15)]
    assert results(check(write_log, [Trip(FORK, JUNE, fish, anglers=2)], bag())) == [
        (LMB, CANNOT_CHECK, "R1")
    ]
    assert results(check(write_log, [Trip(FORK, JUNE, fish)], bag())) == [(LMB, CHECK_THIS, "R1")]


@pytest.mark.parametrize(("counts", "found"), [("N", ["R1"]), (None, ["R1"]), ("Y", [])])
def test_7_the_guides_rod_is_eligible_only_where_his_fish_count(
    counts: str | None, found: list[str], write_log: WriteLog
) -> None:
    # 6 unnamed bass of one client and a guide who fished: 1 x 5 or 2 x 5.
    trip = Trip(FORK, JUNE, [Fish(LMB, 15, 6)], guide_fished="yes")
    assert broken(check(write_log, [trip], guide(counts))) == found


@pytest.mark.parametrize(("counts", "found"), [("N", []), ("Y", ["R1"])])
def test_7_the_guides_own_fish_count_against_nobody_unless_the_rule_says_so(
    counts: str, found: list[str], write_log: WriteLog
) -> None:
    fish = [Fish(LMB, 15, 5, angler="C01"), Fish(LMB, 15, 7, angler="guide")]
    trip = Trip(FORK, JUNE, fish, clients=("C01",), guide_fished="yes")
    assert broken(check(write_log, [trip], guide(counts))) == found


def guide(counts: str | None) -> list[Row]:
    return bag(guides_fish_count=counts)


@pytest.mark.parametrize("fish", [Fish(LMB), Fish(LMB, 20, measured="estimated"), Fish("black bass", 20)])
def test_8_a_kept_fish_whose_length_is_not_sure_cannot_be_checked(fish: Fish, write_log: WriteLog) -> None:
    checks = check(write_log, [Trip(FORK, JUNE, [fish])], [rule("R1", "*", "LMB", min=14)])
    assert [row[1:] for row in results(checks)] == [(CANNOT_CHECK, "R1")]


def test_8_a_length_that_decides_nothing_is_not_asked_for(write_log: WriteLog) -> None:
    rules = [rule("R1", "*", "LMB", over_length=18, over_count=1)]
    assert [r[1] for r in results(check(write_log, [Trip(FORK, JUNE, [Fish(LMB)])], rules))] == [NO_PROBLEM]
    for fish in ([Fish(LMB, 19), Fish(LMB)], [Fish(LMB, count=2)]):
        checks = check(write_log, [Trip(FORK, JUNE, fish)], rules)
        assert [r[1] for r in results(checks)] == [CANNOT_CHECK]


@pytest.mark.parametrize(
    ("length", "found"),
    [("355 mm", ["R1"]), ("355.5 mm", ["R1"]), ("356 mm", []), (14, []), ("35.56 cm", [])],
)
def test_9_exact_values_are_compared_in_mm(length: object, found: list[str], write_log: WriteLog) -> None:
    # 14 in = 355.6 mm exactly; 355 mm = 13.976 in.
    checks = check(write_log, [Trip(FORK, JUNE, [Fish(LMB, length)])], [rule("R1", "*", "LMB", min=14)])
    assert broken(checks) == found
    if length == "355 mm":
        assert "LMB 13.976 in was entered as kept; your rule R1 has a minimum of 14 in." in str(
            checks.table["message"][0]
        )


def test_9_metric_logs_are_told_in_their_unit(write_log: WriteLog) -> None:
    rules = [rule("R1", "*", "LMB", slot_from=356, slot_to=460, slot_ends="IN")]
    checks = check(write_log, [Trip(FORK, JUNE, [Fish(LMB, 356)])], rules, units="metric")
    assert "LMB 35.6 cm was entered as kept; your rule R1 protects 35.6-46 cm." in checks.table["message"][0]


SLOT = [(13.99, []), (14, "in"), (14.01, "both"), (17.99, "both"), (18, "in"), (18.01, [])]


@pytest.mark.parametrize(("length", "protected"), SLOT)
def test_9_ends_of_a_slot_are_protected_or_not_as_the_rule_says(
    length: float, protected: object, write_log: WriteLog
) -> None:
    found = {}
    for ends in ("IN", "OUT", None):
        rules = [rule("R1", "*", "LMB", slot_from=14, slot_to=18, slot_ends=ends)]
        found[ends] = results(check(write_log, [Trip(FORK, JUNE, [Fish(LMB, length)])], rules))[0][1]
    inside, at_end = protected == "both", protected == "in"
    assert found["IN"] == (CHECK_THIS if inside or at_end else NO_PROBLEM)
    assert found["OUT"] == (CHECK_THIS if inside else NO_PROBLEM)
    assert found[None] == (CHECK_THIS if inside else CANNOT_CHECK if at_end else NO_PROBLEM)


def test_9_equal_to_the_maximum_may_be_kept(write_log: WriteLog) -> None:
    rules = [rule("R1", "*", "LMB", max=16)]
    trips = [Trip(FORK, JUNE, [Fish(LMB, length)]) for length in (16, 16.125)]
    assert [r[1] for r in results(check(write_log, trips, rules))] == [NO_PROBLEM, CHECK_THIS]


def test_10_released_fish_break_no_length_and_no_limit(write_log: WriteLog) -> None:
    fish = [Fish(LMB, 10, 20, "released"), Fish(LMB, 15, 5)]
    rules = [rule("R1", "*", "LMB", min=14, daily_limit=5), rule("R2", "*", "SMB", action="RELEASE")]
    trip = Trip(FORK, JUNE, [*fish, Fish(SMB, 12, fate="released")])
    assert broken(check(write_log, [trip], rules)) == []


@pytest.mark.parametrize("fate", ["kept", "released"])
def test_10_closed_is_closed_to_released_fish_too(fate: str, write_log: WriteLog) -> None:
    trip = Trip(FORK, JUNE, [Fish(LMB, 15, fate=fate)])
    assert broken(check(write_log, [trip], [rule("R1", "*", "LMB", action="CLOSED")])) == ["R1"]


@pytest.mark.parametrize(
    ("kept", "let_go", "result"), [(24, 1, CHECK_THIS), (25, 1, CANNOT_CHECK), (25, 0, NO_PROBLEM)]
)
def test_10_fish_let_go_before_the_first_25_are_kept(
    kept: int, let_go: int, result: str, write_log: WriteLog
) -> None:
    fish = [Fish(BLC, 8, kept), *([Fish(BLC, 7, let_go, "released")] if let_go else [])]
    rules = [rule("R1", "*", "BLC", action="KEEPFIRST", daily_limit=25)]
    assert [r[1] for r in results(check(write_log, [Trip(FORK, JUNE, fish)], rules))] == [result]


def test_10_the_first_25_are_a_limit_too(write_log: WriteLog) -> None:
    rules = [rule("R1", "*", "BLC", action="KEEPFIRST", daily_limit=25)]
    assert broken(check(write_log, [Trip(FORK, JUNE, [Fish(BLC, 8, 26)])], rules)) == ["R1"]


@pytest.mark.parametrize(
    ("day", "other", "found"), [(NEXT, 5, []), (NEXT, 6, ["R1"]), ("2026-06-08", 6, []), (JUNE, 6, [])]
)
def test_11_possession_warns_on_days_in_a_row(
    day: str, other: int, found: list[str], write_log: WriteLog
) -> None:
    # 5 + 5 = 10 is the limit; 5 + 6 = 11 is over it, unless a day lies between, or it is one day's.
    checks = check(write_log, two(5, other, day), bag(9 if day != JUNE else 11, possession=10))
    assert broken(checks) == found
    if found:
        assert "11 LMB were entered as kept on 2 days in a row" in checks.table["message"][1]
        assert "The log cannot see what was eaten." in checks.table["message"][1]


def test_11_one_day_is_held_against_possession_where_there_is_no_daily_limit(write_log: WriteLog) -> None:
    rules = [rule("R1", "*", "LMB", possession=10)]
    assert broken(check(write_log, [Trip(FORK, JUNE, [Fish(LMB, 15, 11)], clients=("A",))], rules)) == ["R1"]


def test_12_rows_that_differ_leave_their_species_unchecked_and_no_other(write_log: WriteLog) -> None:
    rules = [rule("R1", "*", "LMB;SMB", min=14), rule("R2", "*", "LMB", min=15)]
    checks = check(write_log, [Trip(FORK, JUNE, [Fish(LMB, 10), Fish(SMB, 13)])], rules)
    assert results(checks) == [(SMB, CHECK_THIS, "R1"), (LMB, CANNOT_CHECK, "R1; R2")]


ALIKE = rule("R2", "*", "LMB", min=15)


@pytest.mark.parametrize(
    "other",
    [
        rule("R2", ARDEN, "LMB", min=15),
        rule("R2", "*", "LMB", min=15, everywhere="Y"),
        rule("R2", "*", "LMB", min=15, edition=2027),
        rule("R2", "*", "SMB", min=15),
        rule("R2", "*", "LMB", ("07-01", "12-31"), min=15),
        rule("R2", "*", "LMB", min=14),
        rule("R2", "*", "LMB;SMB", daily_limit=3),
    ],
    ids=["own water", "layer", "edition", "species", "dates", "same number", "limit within a limit"],
)
def test_12_rows_that_do_not_meet_do_not_clash(other: Row, write_log: WriteLog) -> None:
    first = rule("R1", "*", "LMB", ("01-01", "06-30"), min=14, daily_limit=5)
    trip = [Trip(FORK, JUNE, [Fish(LMB, 16)])]
    assert CANNOT_CHECK in [r[1] for r in results(check(write_log, trip, [first, ALIKE]))]
    assert [r[1] for r in results(check(write_log, trip, [first, other]))] == [NO_PROBLEM]


@pytest.mark.parametrize(
    ("day", "inside"),
    [
        ("2027-02-28", True),
        ("2028-02-28", True),
        ("2028-02-29", True),
        ("2027-03-01", False),
        ("2028-03-01", False),
        ("2027-11-30", False),
        ("2027-12-01", True),
        ("2028-12-31", True),
        ("2028-01-01", True),
    ],
)
def test_dates_wrap_the_year_and_end_with_february(day: str, inside: bool, write_log: WriteLog) -> None:
    rules = [rule("R1", "*", "BLC", ("12-01", "02-end"), edition=None, daily_limit=5)]
    checks = check(write_log, [Trip(FORK, day, [Fish(BLC, 9)])], rules)
    assert [r[1] for r in results(checks)] == [NO_PROBLEM if inside else CHECK_THIS]


@pytest.mark.parametrize(
    ("day", "inside"), [("2027-02-27", False), ("2027-02-28", True), ("2028-02-28", False)]
)
def test_a_rule_may_begin_with_the_end_of_february(day: str, inside: bool, write_log: WriteLog) -> None:
    rules = [rule("R1", "*", "BLC", ("02-end", "03-31"), edition=None, daily_limit=5)]
    checks = check(write_log, [Trip(FORK, day, [Fish(BLC, 9)])], rules)
    assert [r[1] for r in results(checks)] == [NO_PROBLEM if inside else CHECK_THIS]


def test_a_rule_without_dates_holds_all_year(write_log: WriteLog) -> None:
    rules = [[*rule("R1", "*", "LMB", daily_limit=1)]]
    rules[0][4] = rules[0][5] = None
    assert broken(check(write_log, [Trip(FORK, "2026-12-31", [Fish(LMB, 15, 2)])], rules)) == ["R1"]


def test_each_edition_is_of_its_year(write_log: WriteLog) -> None:
    rules = [*bag(5, edition=2025), rule("R2", "*", "LMB", daily_limit=3)]
    trips = [Trip(FORK, day, [Fish(LMB, 15, 4)]) for day in ("2025-12-31", "2026-01-01")]
    assert results(check(write_log, trips, rules)) == [(LMB, NO_PROBLEM, "R1"), (LMB, CHECK_THIS, "R2")]


def test_only_trips_of_the_period_are_told_and_those_before_it_count(write_log: WriteLog) -> None:
    period = (dt.date(2026, 6, 7), dt.date(2026, 6, 7))
    trips = [*two(5, 6), Trip(FORK, "2026-06-08", [Fish(LMB, 15, 10)])]
    checks = check(write_log, trips, bag(9, possession=10), period=period)
    assert (checks.table["trip"].tolist(), broken(checks)) == (["T-2"], ["R1"])
