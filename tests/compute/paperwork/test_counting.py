"""Use by the nine counting rules. Expected values are the specification's own, or worked out by hand here."""

import datetime as dt

import pytest

from reporter.compute.paperwork.count import Count
from reporter.compute.paperwork.paperwork import Paperwork
from reporter.compute.paperwork.period import OPEN, Period
from reporter.schema.paperwork import RULE_WORDS
from reporter.schema.sheets.papers import COUNTING_RULES
from tests.compute.paperwork import keystone
from tests.compute.paperwork.logs import Row, day, read, trips_sheet
from tests.conftest import WriteLog

PERMIT = "Land permit"
JUNE = Period(day(6, 1), day(6, 30))


def permit(rule: str, *more: object) -> list[list[object]]:
    return [["Document", "Kind", "Counting rule", "Allowed"], [PERMIT, "permit", rule, *more]]


def on_permit(
    write_log: WriteLog, rule: str, headings: list[str], *rows: Row, period: Period = OPEN
) -> Count:
    """The count of trips on Lake Arden, all on one permit."""
    waters = [["Water", "Permit"], ["Lake Arden", PERMIT], ["Private pond", None]]
    made, _ = read(
        write_log,
        {"Trips": trips_sheet(headings, *rows), "Waters": waters, "Documents": permit(rule)},
        period,
    )
    (use,) = made.uses
    return use.count


def adds(count: Count) -> list[tuple[str, float]]:
    return list(zip(count.rows["trip"], count.rows["adds"], strict=True))


def test_every_rule_has_its_words() -> None:
    assert set(RULE_WORDS) == set(COUNTING_RULES)


@pytest.mark.parametrize(("rule", "answer"), keystone.ANSWERS.items())
def test_one_trip_has_five_right_answers(rule: str, answer: float, write_log: WriteLog) -> None:
    made, _ = read(write_log, keystone.keystone_sheets(rule))
    (use,) = made.uses
    assert use.count.count == answer
    assert use.count.rows["adds"].sum() == answer
    assert use.count.words == RULE_WORDS[rule]
    if rule == "trips":
        assert use.count.clients == keystone.CLIENTS_OF_TRIPS


# Test L2 of the specification (a state's rule: each day a trip, each site of a day a trip of its own).
def test_each_day_is_a_log_trip_and_each_site_of_it(write_log: WriteLog) -> None:
    rows = [
        ("T-001", day(6, 12), "1"),
        ("T-002", day(6, 13), "1"),
        ("T-003", day(6, 13), "2"),
        ("T-004", day(6, 14), "1"),
    ]
    assert on_permit(write_log, "log trips", ["Site"], *rows).count == 4


def test_blank_site_is_one_site_of_its_water_and_guides_are_apart(write_log: WriteLog) -> None:
    rows = [
        ("T-001", day(6, 12), "Lake Arden", None, None),
        ("T-002", day(6, 12), "Lake Arden", None, None),  # the same site
        ("T-003", day(6, 12), "Lake Arden", "1-2", None),
        ("T-004", day(6, 12), "Lake Arden", "12", None),  # another code
        ("T-005", day(6, 12), "Lake Arden", "12 ", "Ben"),
    ]
    count = on_permit(write_log, "log trips", ["Water", "Site", "Guide"], *rows)
    assert adds(count) == [("T-001", 1), ("T-002", 0), ("T-003", 1), ("T-004", 1), ("T-005", 1)]


SEASON_F1: list[Row] = [
    # A: 3 Jun half day, 3 clients. B: 10-11 Jun, 4 clients. C: 20-22 Jun, 2 clients, one leaves on the 21st.
    ("A", day(6, 3), 3, "C01; C02; C03", None, None),
    ("B", day(6, 10), 4, "C01; C02; C03; C04", day(6, 11), None),
    ("C-1", day(6, 20), 2, "C05; C06", day(6, 21), None),
    ("C-2", day(6, 22), 1, "C05", None, None),
    # D: 5 Jul morning and evening, the same two. E: 9 Jul, 3 clients, private water only.
    ("D-1", day(7, 5), 2, "C07; C08", None, None),
    ("D-2", day(7, 5), 2, "c-07; C 08", None, None),  # the same codes, as codes are compared
    ("E", day(7, 9), 3, "C01; C02; C03", None, "Private pond"),
]
F1_HEADINGS = ["Anglers", "Client", "End date", "Water"]


def _f1() -> list[Row]:
    return [(*row[:5], row[5] or "Lake Arden") for row in SEASON_F1]


# Test F1: 3 + 8 + 5 + 2 + 0 = 18 by clients and days, 3 + 8 + 5 + 4 + 0 = 20 by outings. The reading of a
# service day rests on a newspaper's account of a forest's plan.
@pytest.mark.parametrize(("rule", "total", "of_d"), [("client-days", 18, 2), ("outings", 20, 4)])
def test_days_of_clients_are_counted_once_and_outings_each_time(
    rule: str, total: float, of_d: float, write_log: WriteLog
) -> None:
    count = on_permit(write_log, rule, F1_HEADINGS, *_f1())
    assert count.count == total
    by_trip = count.rows.groupby("trip")["adds"].sum()
    assert by_trip["A"] == 3
    assert by_trip["B"] == 8
    assert by_trip[["C-1", "C-2"]].sum() == 5
    assert by_trip[["D-1", "D-2"]].sum() == of_d
    assert "E" not in by_trip
    as_outings = [note for note in count.notes if note.startswith("Counted as outings it would be 20;")]
    assert len(as_outings) == (1 if rule == "client-days" else 0)


def test_days_belong_to_their_months_and_months_add_up(write_log: WriteLog) -> None:
    rows = [("T-001", day(6, 29), "C01; C02", day(7, 2))]
    june = on_permit(write_log, "client-days", ["Client", "End date"], *rows, period=JUNE)
    july = on_permit(
        write_log, "client-days", ["Client", "End date"], *rows, period=Period(day(7, 1), day(7, 31))
    )
    assert (june.count, july.count) == (4, 4)
    trips = on_permit(write_log, "trips", ["Client", "End date"], *rows, period=Period(day(7, 1), None))
    assert trips.count == 0  # it began in June


def test_outing_over_two_months_is_a_trip_of_the_first(write_log: WriteLog) -> None:
    rows = [("T-001", day(6, 30), "X"), ("T-002", day(7, 1), "x ")]
    june = on_permit(write_log, "trips", ["Outing"], *rows, period=JUNE)
    july = on_permit(write_log, "trips", ["Outing"], *rows, period=Period(day(7, 1), day(7, 31)))
    assert (june.count, july.count) == (1, 0)
    assert adds(june) == [("T-001", 1), ("T-002", 0)]


def test_night_trip_without_an_end_date_belongs_to_its_first_day(write_log: WriteLog) -> None:
    rows = [("T-001", day(6, 30), dt.time(20, 30), dt.time(1, 15), "C01; C02")]
    assert on_permit(write_log, "client-days", ["Start", "End", "Client"], *rows).count == 2


def test_anglers_without_a_code_are_added_to_each_day(write_log: WriteLog) -> None:
    rows = [
        ("T-001", day(6, 3), 3, "C01", day(6, 4)),  # 3 persons on 2 days
        ("T-002", day(6, 4), 3, "C01; guest", None),  # C01 is there already: two more
    ]
    count = on_permit(write_log, "client-days", ["Anglers", "Client", "End date"], *rows)
    assert count.count == 6 + 2
    # Without a code: two on each of two days, and two: 6.
    assert any(note.startswith("Anglers without a client code add 6") for note in count.notes)


@pytest.mark.parametrize("rule", ["client-days", "angler-days"])
def test_outings_are_counted_and_it_is_said_where_nobody_is_named(rule: str, write_log: WriteLog) -> None:
    rows = [("T-001", day(7, 5), 2), ("T-002", day(7, 5), 2)]
    count = on_permit(write_log, rule, ["Anglers"], *rows)
    assert (count.count, count.counted_as, count.words) == (4, "outings", RULE_WORDS["outings"])
    assert count.notes[0].startswith("No trip names a client, so this is counted as outings.")


def test_who_did_not_fish_is_a_client_but_no_angler(write_log: WriteLog) -> None:
    rows = [("T-001", day(7, 5), 1, "C01; C02", 3), ("T-002", day(7, 5), 0, "C03", 1)]
    headings = ["Anglers", "Client", "Passengers"]
    anglers = on_permit(write_log, "angler-days", headings, *rows)
    assert anglers.count == 1
    assert any("More client codes than anglers on trips T-001 and T-002" in note for note in anglers.notes)
    clients = on_permit(write_log, "client-days", headings, *rows)
    assert clients.count == 3
    assert any("More passengers than anglers and client codes on trip T-001" in n for n in clients.notes)


# Test L1: dock 05:40-14:10, lines in 06:15-13:45, 3 anglers, 4 lines.
L1 = ("T-001", day(6, 3), 3, 4, *(dt.time(*at) for at in ((6, 15), (13, 45), (5, 40), (14, 10))))
L1_HEADINGS = ["Anglers", "Lines", "Start", "End", "Left dock", "Back at dock"]


@pytest.mark.parametrize(("rule", "hours"), [("angler-hours", 22.5), ("line-hours", 30.0)])
def test_hours_are_those_with_lines_in(rule: str, hours: float, write_log: WriteLog) -> None:
    assert on_permit(write_log, rule, L1_HEADINGS, L1).count == pytest.approx(hours)


def test_hours_off_are_no_hours_with_lines_in(write_log: WriteLog) -> None:
    count = on_permit(write_log, "angler-hours", [*L1_HEADINGS, "Hours off"], (*L1, 1.5))
    assert count.count == pytest.approx(3 * 6.0)


def test_line_hours_without_lines_are_not_guessed(write_log: WriteLog) -> None:
    other = ("T-002", day(6, 4), 2, None)
    count = on_permit(write_log, "line-hours", L1_HEADINGS, L1, other)
    assert count.count == pytest.approx(30.0)
    assert any(note.startswith("Lines is blank on trip T-002") for note in count.notes)
    nothing = on_permit(write_log, "line-hours", L1_HEADINGS, other)
    assert nothing.count != nothing.count  # not known, which is not 0


# Test N1: trips of 3 clients x 8 h and 1 client x 4 h: (24 + 4) / 4 customers.
def test_customers_weigh_the_average_of_hours(write_log: WriteLog) -> None:
    rows = [
        ("T-001", day(6, 3), 3, dt.time(6), dt.time(14)),
        ("T-002", day(6, 4), 1, dt.time(6), dt.time(10)),
    ]
    count = on_permit(write_log, "average customer hours", ["Anglers", "Start", "End"], *rows)
    assert count.count == pytest.approx(7.0)
    assert (count.rows["adds"].sum(), count.rows["over"].sum()) == (28, 4)


def test_rows_of_one_outing_add_up_for_one_customer(write_log: WriteLog) -> None:
    # C01 is out 4 h on both days, C02 on the first alone, and one unnamed on both: 4 x 5 = 20 h, 3 customers.
    rows = [("T-001", day(6, 3), 3, "C01; C02", "X"), ("T-002", day(6, 4), 2, "C01", "X")]
    count = on_permit(write_log, "average customer hours", ["Anglers", "Client", "Outing"], *rows)
    assert count.count == pytest.approx(20 / 3)


def test_dock_to_dock_is_used_where_both_times_are_written_and_said(write_log: WriteLog) -> None:
    # 8.5 h x 3 dock to dock, 4 h x 1 lines in to lines out, 4 customers.
    rows = [L1, ("T-002", day(6, 4), 1, None, dt.time(6), dt.time(10), dt.time(5, 30), None)]
    count = on_permit(write_log, "average customer hours", L1_HEADINGS, *rows)
    assert count.count == pytest.approx((25.5 + 4) / 4)
    assert "Dock to dock on 1 row of Trips, lines in to lines out on 1 row." in count.notes


def test_clients_of_trips_are_distinct_and_unnamed_ones_those_of_the_fullest_day(
    write_log: WriteLog,
) -> None:
    rows = [
        ("T-001", day(6, 3), 3, "C01", "X"),  # two boats on one day: 2 + 1 unnamed
        ("T-002", day(6, 3), 2, "C02", "X"),
        ("T-003", day(6, 4), 3, "C01", "X"),  # the next day two of them again
        ("T-004", day(6, 9), 1, "C01", None),  # another trip of a client already counted
    ]
    count = on_permit(write_log, "trips", ["Anglers", "Client", "Outing"], *rows)
    assert (count.count, count.clients) == (2, 2 + 3)


@pytest.mark.parametrize("rule", COUNTING_RULES)
@pytest.mark.parametrize(
    ("kind", "status", "counts"),
    [
        (None, None, True),
        ("guided", "cut short", True),
        ("guided", "log not finished", True),
        ("scouting", None, False),
        ("own", None, False),
        ("guided", "cancelled", False),
        ("guided", "void", False),
    ],
)
def test_guided_trips_that_took_place_count(
    rule: str, kind: str | None, status: str | None, counts: bool, write_log: WriteLog
) -> None:
    rows = [("T-001", day(6, 3), None, None, 2), ("T-002", day(6, 4), kind, status, 2)]
    count = on_permit(write_log, rule, ["Kind", "Status", "Lines"], *rows)
    assert count.trips == 1 + counts
    assert any("is not finished" in note for note in count.notes) == (status == "log not finished")


def test_trip_counts_on_its_own_permit_before_its_waters(write_log: WriteLog) -> None:
    papers = [
        ["Document", "Kind", "Counting rule", "Holder", "Waters"],
        [PERMIT, "permit", "trips", None, None],
        ["Other permit", "permit", "trips", "Ben", None],
        ["Licence", "licence", "trips", None, "Bell River"],
        ["Ben's card", "card", "trips", "Ben", None],
        ["All", "licence", "trips", None, None],
    ]
    rows = [
        ("T-001", day(6, 3), "Lake Arden", None, None),  # the water's permit
        ("T-002", day(6, 4), "Lake Arden", "Other permit", None),  # its own, though Ben did not guide
        ("T-003", day(6, 5), "Bell River", None, "Ben"),
    ]
    made, _ = read(
        write_log,
        {
            "Trips": trips_sheet(["Water", "Permit", "Guide"], *rows),
            "Waters": [["Water", "Permit"], ["Lake Arden", PERMIT], ["Bell River", None]],
            "Documents": papers,
        },
    )
    found = {use.name: use.count.rows["trip"].tolist() for use in made.uses}
    assert found == {
        PERMIT: ["T-001"],
        "Other permit": ["T-002"],
        "Licence": ["T-003"],
        "Ben's card": ["T-003"],
        "All": ["T-001", "T-002", "T-003"],
    }


def test_trips_on_a_permits_waters_that_count_on_none_are_said(write_log: WriteLog) -> None:
    made, _ = read(
        write_log,
        {
            "Trips": trips_sheet([], ("T-001", day(6, 3))),
            "Documents": [
                ["Document", "Kind", "Counting rule", "Waters"],
                [PERMIT, "permit", "trips", "Lake Arden"],
            ],
        },
    )
    (use,) = made.uses
    assert use.count.count == 0
    assert "On its waters but on no permit, so not counted: trip T-001." in use.count.notes[0]


def reported(made: Paperwork) -> dict[str, float]:
    return {use.name: use.count.count for use in made.uses if use.sheet == "Reports"}


def test_report_counts_the_trips_of_its_document_by_its_own_rule(write_log: WriteLog) -> None:
    sheets = keystone.keystone_sheets("client-days")
    sheets["Reports"] = [
        ["Report", "Document", "Counting rule"],
        ["By trips", keystone.PERMIT, "trips"],
        ["All", None, "guide-days"],
        ["Of another", "Unlisted permit", "trips"],
        ["Without a rule", keystone.PERMIT, None],
    ]
    made, _ = read(write_log, sheets)
    assert reported(made) == {"By trips": 1, "All": 3, "Of another": 0}


def test_end_date_of_another_year_is_a_slip_that_counts_its_first_day(write_log: WriteLog) -> None:
    rows = [("T-001", day(6, 3), "C01; C02", dt.date(2027, 6, 4))]
    count = on_permit(write_log, "client-days", ["Client", "End date"], *rows)
    assert count.count == 2
    assert any("read as a slip" in note for note in count.notes)
    hours = on_permit(write_log, "angler-hours", ["Client", "End date"], *rows)
    assert hours.count != hours.count


def test_nights_within_hours_and_one_outing_over_months_are_said(write_log: WriteLog) -> None:
    nights = on_permit(write_log, "angler-hours", ["End date"], ("T-001", day(6, 3), day(6, 5)))
    assert any("nights are in them" in note for note in nights.notes)
    rows = [("T-001", day(6, 3), "half day"), ("T-002", day(8, 3), "half day")]
    outing = on_permit(write_log, "trips", ["Outing"], *rows)
    assert outing.count == 1
    assert any("more than 31 days apart (trip T-002)" in note for note in outing.notes)


def test_log_without_papers_or_waters_has_no_counts(write_log: WriteLog) -> None:
    made, _ = read(write_log, {"Trips": trips_sheet([], ("T-001", day(6, 3))), "Waters": None})
    assert made.uses == ()
    assert made.allowance.empty
