"""Trips on 18 April, 4 July and 12 September 2026, against papers and boats."""

import datetime as dt

import pytest

from reporter.schema.problems import Problem
from tests.tidy.shared import Read

HEADINGS = ["Document", "Kind", "Holder", "Waters", "Valid from", "Valid to"]
APRIL, JULY, SEPTEMBER = dt.date(2026, 4, 18), dt.date(2026, 7, 4), dt.date(2026, 9, 12)
DAY = dt.timedelta(days=1)


def said(read: Read, *papers: list[object], **trips: object) -> list[Problem]:
    reading = read({"Documents": [HEADINGS, *papers], "Trips": trips})
    return reading.problems


def card(valid_from: object = None, valid_to: object = None, name: str = "CPR card") -> list[object]:
    return [name, "card", None, None, valid_from, valid_to]


@pytest.mark.parametrize(
    ("paper", "trips"),
    [
        (card(APRIL, SEPTEMBER), 0),  # both ends count
        (card(None, SEPTEMBER), 0),
        (card(APRIL, None), 0),
        (card(), 0),
        (card(APRIL, SEPTEMBER - DAY), 1),
        (card(APRIL + DAY, SEPTEMBER), 1),
        (card(None, JULY - DAY), 2),
        (card(SEPTEMBER + DAY, None), 3),
    ],
)
def test_paper_is_valid_on_every_day_of_a_trip_or_said_once(
    paper: list[object], trips: int, read: Read
) -> None:
    problems = said(read, paper)
    assert [p.code for p in problems] == ["paper_ran_out"] * (trips > 0)
    assert all(f"trips on other days: {trips}, the first" in p.text for p in problems)


def test_first_trip_without_the_paper_is_named_and_the_day_that_is_beyond(read: Read) -> None:
    (problem,) = said(read, card(APRIL, JULY))
    assert problem.cell == "F2"
    assert "CPR card is valid from 2026-04-18 to 2026-07-04" in problem.text
    assert "the first T-003 on 2026-09-12" in problem.text


def test_last_day_of_a_trip_over_several_days_counts(read: Read) -> None:
    problems = said(read, card(None, SEPTEMBER), G1="End date", G4=SEPTEMBER + DAY)
    (problem,) = [problem for problem in problems if problem.sheet == "Documents"]
    assert "the first T-003 on 2026-09-13" in problem.text


def test_papers_named_alike_but_for_their_year_renew_each_other(read: Read) -> None:
    assert not said(read, card(None, JULY, "CPR 2025"), card(JULY + DAY, None, "CPR 2026"))
    (gap,) = said(read, card(None, JULY - DAY, "CPR 2025"), card(JULY + DAY, None, "CPR 2026"))
    assert (gap.row, gap.cell) == (2, "F2")
    assert "other days: 1, the first T-002" in gap.text


def test_day_between_two_papers_alike_is_met_within_a_trip_over_several_days(read: Read) -> None:
    # The trip lasts from 12 to 15 September; on the 14th the old card is out and the new one not begun.
    cards = [card(None, SEPTEMBER + DAY, "CPR 2025"), card(SEPTEMBER + 3 * DAY, None, "CPR 2026")]
    problems = said(read, *cards, G1="End date", G4=SEPTEMBER + 3 * DAY)
    (gap,) = [problem for problem in problems if problem.sheet == "Documents"]
    assert "the first T-003 on 2026-09-14" in gap.text
    whole = [card(None, SEPTEMBER + DAY, "CPR 2025"), card(SEPTEMBER + 2 * DAY, None, "CPR 2026")]
    problems = said(read, *whole, G1="End date", G4=SEPTEMBER + 3 * DAY)
    assert not [problem for problem in problems if problem.sheet == "Documents"]


def test_paper_without_a_kind_is_a_permit_where_trips_name_it_so(read: Read) -> None:
    paper = ["Lake permit", None, None, None, None, APRIL]
    (every,) = said(read, paper)
    assert "other days: 2, the first T-002" in every.text
    (one,) = said(read, paper, G1="Permit", G4="lake permit")
    assert "other days: 1, the first T-003" in one.text


def test_other_paper_of_the_same_kind_does_not_stand_in(read: Read) -> None:
    assert len(said(read, card(None, JULY, "CPR card"), card(None, None, "First aid card"))) == 1


@pytest.mark.parametrize(
    ("holder", "guides", "said_of"),
    [
        ("Ben", ("Anna", "Ben", "Anna"), "T-002"),
        ("ben", ("Anna", "Ben", "Ben"), "T-002"),
        ("Ben", ("Anna", "Anna", "Anna"), None),
        ("Ben", (None, None, None), None),  # nobody says that he guided
    ],
)
def test_paper_with_a_holder_concerns_his_trips_alone(
    holder: str, guides: tuple[str | None, ...], said_of: str | None, read: Read
) -> None:
    typed = {"G1": "Guide", "G2": guides[0], "G3": guides[1], "G4": guides[2]}
    problems = said(read, ["CPR", "card", holder, None, None, APRIL], **typed)
    assert [f"the first {said_of} " in p.text for p in problems] == [True] * (said_of is not None)


def test_guide_of_the_season_holds_papers_where_trips_name_nobody(read: Read) -> None:
    season = {"A8": "Guide or outfit", "B8": "Anna"}
    documents = [HEADINGS, ["CPR", "card", "Anna", None, None, APRIL]]
    problems = read({"Season": season, "Documents": documents}).problems
    assert [p.code for p in problems] == ["paper_ran_out"]


def test_licence_of_some_waters_concerns_trips_there(read: Read) -> None:
    assert not said(read, ["State licence", "licence", None, "Lake Arden", None, JULY])
    (problem,) = said(read, ["State licence", "licence", None, "Arden; Bell River", None, JULY])
    assert "the first T-003" in problem.text


def test_permit_concerns_the_trips_that_count_on_it(read: Read) -> None:
    permit = ["Lake permit", "permit", None, None, None, APRIL]
    assert not said(read, permit)
    (problem,) = said(read, permit, G1="Permit", G4="lake permit")
    assert "other days: 1, the first T-003" in problem.text


@pytest.mark.parametrize(
    ("heading", "typed"), [("Kind", "scouting"), ("Kind", "own"), ("Status", "cancelled"), ("Status", "void")]
)
def test_day_without_clients_needs_no_papers(heading: str, typed: str, read: Read) -> None:
    problems = said(read, card(None, JULY), G1=heading, G4=typed)
    assert "paper_ran_out" not in [p.code for p in problems]


BOATS = ["Document", "Holder", "Allowed", "Counting rule"]


@pytest.mark.parametrize(
    ("paper", "cells", "over"),
    [
        (["Skiff", None, 6, None], {"H2": "Skiff", "G2": 6}, False),  # five who pay and one who does not
        (["Skiff", None, 6, None], {"H2": "skiff", "G2": 7}, True),
        (["Certificate", "Skiff", 6, None], {"H2": "Skiff", "G2": 7}, True),
        (["Skiff", None, 6, None], {"G2": 7}, False),
        (["Skiff", None, 6, None], {"H2": "Canoe", "G2": 7}, False),
        (["Skiff", None, 6, "client-days"], {"H2": "Skiff", "G2": 7}, False),  # use over a season
        (["Skiff", None, None, None], {"H2": "Skiff", "G2": 7}, False),
        (["Skiff", None, 1, None], {"H2": "Skiff"}, True),  # two anglers, where Passengers is blank
        (["Skiff", None, 2, None], {"H2": "Skiff"}, False),
    ],
)
def test_boat_may_carry_what_its_paper_allows(
    paper: list[object], cells: dict[str, object], over: bool, read: Read
) -> None:
    trips = {"G1": "Passengers", "H1": "Boat", **cells}
    problems = read({"Documents": [BOATS, paper], "Trips": trips}).problems
    assert [(p.code, p.row) for p in problems] == [("passengers_over", 2)] * over
