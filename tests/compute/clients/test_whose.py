"""Whose a fish is on a client's copy: his own, his party's without a name, or nobody's of his business."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest

from reporter.compute.clients.context import make_context
from reporter.compute.clients.days import LogClients, log_clients
from reporter.compute.clients.figures import count
from reporter.compute.clients.model import Day
from reporter.run.season import read_season
from tests.conftest import WriteLog

DAY = dt.date(2026, 4, 18)
Rows = list[list[object]]
Told = Callable[..., LogClients]


@pytest.fixture
def told(write_log: WriteLog) -> Told:
    """What one trip's clients are told: from its clients, anglers, stints and fish."""

    def read(
        clients: str,
        anglers: int,
        stints: Rows = (),
        fish: Rows = (),
        trip: dict[str, object] | None = None,
        more_on_effort: tuple[str, ...] = (),
        **sheets: object,
    ) -> LogClients:
        more = trip or {}
        heading = ["Trip", "Date", "Water", "Start", "End", "Anglers", "Client", *more]
        row = ["T-1", DAY, "Lake Arden", dt.time(6), dt.time(10), anglers, clients, *more.values()]
        log: Path = write_log(
            {
                "Trips": [heading, row],
                "Effort": [["Trip", "Technique", "Minutes", "Landed", "Angler", *more_on_effort], *stints],
                "Catch": [["Trip", "Technique", "Species", "Count", "Length (in)", "Fate", "Angler"], *fish],
                **sheets,
            }
        )
        reading = read_season(log)
        assert reading.season is not None
        return log_clients(reading.season, reading.log, make_context([reading.log]))

    return read


def stint(technique: str, landed: int | None = None, angler: str | None = None) -> list[object]:
    return ["T-1", technique, 60, landed, angler]


def fish(
    technique: str | None, number: int, angler: str | None = None, inches: float | None = None
) -> list[object]:
    return ["T-1", technique, "largemouth bass", number, inches, "released", angler]


def of(log: LogClients, code: str) -> tuple[int, int]:
    """Own fish and the party's."""
    (day,) = log.days[code]
    return count(day.own), count(day.party)


def test_named_fish_go_to_their_angler_alone_and_unnamed_ones_to_the_party(told: Told) -> None:
    log = told(
        "A1; B2",
        2,
        [stint("Drop shot")],
        [
            fish("Drop shot", 3, "A1"),
            fish("Drop shot", 4, "B2"),
            fish("Drop shot", 5),
            fish("Drop shot", 6, "guide"),
        ],
    )
    assert (of(log, "A1"), of(log, "B2")) == ((3, 5), (4, 5))


def test_unnamed_fish_of_a_trip_with_one_client_and_one_angler_are_his(told: Told) -> None:
    log = told("A1", 1, [stint("Drop shot")], [fish("Drop shot", 5), fish("Drop shot", 1, "A1")])
    assert of(log, "A1") == (6, 0)


def test_with_two_anglers_and_one_client_unnamed_fish_are_the_partys_and_may_be_bests(told: Told) -> None:
    log = told("A1", 2, [stint("Drop shot")], [fish("Drop shot", 1, None, 19.5)])
    (day,) = log.days["A1"]
    assert (of(log, "A1"), day.alone) == ((0, 1), True)
    assert [caught.length_mm for caught in day.his] == [pytest.approx(19.5 * 25.4)]


def test_somebody_else_named_at_a_fish_means_that_he_was_not_the_only_client(told: Told) -> None:
    log = told("A1", 1, [stint("Drop shot")], [fish("Drop shot", 2), fish("Drop shot", 1, "C3")])
    (day,) = log.days["A1"]
    assert (of(log, "A1"), day.alone, day.his) == ((0, 2), False, ())
    assert "C3" not in log.days


@pytest.mark.parametrize(
    ("stints", "rows", "own", "party"),
    [
        # Seven tallied without a name hold his two and the other client's three: two are left.
        ([stint("Drop shot", 7)], [fish("Drop shot", 2, "A1"), fish("Drop shot", 3, "B2")], 2, 2),
        # Four on rows of the other client's own tally of five: the fifth is the other's too.
        ([stint("Drop shot", 5, "B2"), stint("Jerkbait", 1)], [fish("Drop shot", 4, "B2")], 0, 1),
        # His own tally is his, beyond his rows.
        ([stint("Drop shot", 5, "A1")], [fish("Drop shot", 2, "A1")], 5, 0),
        # The guide's tally is nobody's.
        ([stint("Drop shot", 5, "guide"), stint("Jerkbait", 2)], [], 0, 2),
        # A fish without a technique may be among those tallied: it is not counted twice.
        ([stint("Drop shot", 3), stint("Jerkbait", 2)], [fish(None, 1, "A1"), fish(None, 1)], 1, 4),
        # One of the other client's without a technique comes off the tally.
        ([stint("Drop shot", 3), stint("Jerkbait", 2)], [fish(None, 2, "B2")], 0, 3),
        # More rows than tallied: the rows count.
        ([stint("Drop shot", 1)], [fish("Drop shot", 4)], 0, 4),
    ],
)
def test_tallied_fish_that_are_another_clients_never_enter(
    told: Told, stints: Rows, rows: Rows, own: int, party: int
) -> None:
    assert of(told("A1; B2", 2, stints, rows), "A1") == (own, party)


def test_what_another_client_or_the_guide_fished_by_name_is_not_tied_on_for_him(told: Told) -> None:
    log = told(
        "A1; B2", 2, [stint("Drop shot"), stint("Jerkbait", angler="B2"), stint("Tube", angler="guide")]
    )
    (day,) = log.days["A1"]
    assert [tied.technique for tied in day.tied_on] == ["Drop shot"]


@pytest.mark.parametrize(
    ("share", "masked", "called"),
    [
        ("yes", "a lake", "Lake Arden"),
        ("masked", "a lake", "a lake"),
        ("masked", None, ""),
        ("no", "a lake", ""),
        (None, "a lake", "a lake"),
        (None, None, ""),
    ],
)
def test_water_is_told_only_as_share_name_allows(
    told: Told, share: str | None, masked: str | None, called: str
) -> None:
    waters = [["Water", "Share name", "Masked name"], ["Lake Arden", share, masked]]
    log = told("A1", 1, [stint("Drop shot", 1)], Waters=waters)
    assert log.days["A1"][0].water == called
    assert log.unnamed == (() if called else ("Lake Arden",))


def test_water_that_is_not_on_waters_is_not_named(told: Told) -> None:
    log = told("A1", 1, [stint("Drop shot", 1)], Waters=[["Water", "Share name"], ["Bell River", "yes"]])
    assert log.days["A1"][0].water == ""


WORDS = [
    ("A fine morning", True, True),
    ("Bodil had the big one", False, True),
    ("Bodils fish, bodil's day", False, True),
    ("Call Øster about it", False, True),
    ("Well done B2!", False, True),
    ("Well done b-2", False, True),
    ("Well done A1", True, False),
    ("Arden at its best", False, False),
    ("Up at the hidden arm", False, False),
    ("Ardent all day on the lake", True, True),
    ("Ninon's day", True, True),
    ("Ask Nin about it", False, False),
    ("José was right", False, False),
    ("Jose\u0301 was right", False, False),
    ("Come back to Heron Bay", False, False),
    ("Try 41.1234, -85.2222", False, False),
    ("Paper LX-0042 is yours", False, False),
    ("We were 12 for 15", True, True),
]


@pytest.mark.parametrize(("words", "first", "second"), WORDS)
@pytest.mark.parametrize("column", ["For the client", "Colour"])
def test_words_that_name_someone_else_or_a_hidden_place_are_kept_back(
    told: Told, words: str, first: bool, second: bool, column: str
) -> None:
    on_effort = column == "Colour"
    log = told(
        "A1; B2",
        2,
        [[*stint("Drop shot", 1), words if on_effort else None]],
        trip={"For the client": None if on_effort else words, "Reach": "Heron Bay"},
        more_on_effort=("Colour",),
        Waters=[["Water", "Also called", "Share name"], ["Lake Arden", "Arden; Hidden Arm", "no"]],
        Clients=[
            ["Client", "Name on summary", "Consent to name", "Licence number"],
            ["A1", "Anneke", "yes", "LX-0042"],
            ["B2", "Bodil Øster", "yes", None],
            ["C3", "Nin José", "no", None],
            ["12", "Twelve", "yes", None],
        ],
    )
    days = [log.days[code][0] for code in ("A1", "B2")]
    said = [bool(day.tied_on[0].colour if on_effort else day.words) for day in days]
    assert said == [first, second]
    assert log.kept_back == (() if first and second else ((column, words),))


@pytest.mark.parametrize("trip", [{"Kind": "scouting"}, {"Kind": "own"}, {"Status": "log not finished"}])
def test_only_guided_trips_whose_log_is_finished_are_told(told: Told, trip: dict[str, object]) -> None:
    log = told("A1", 1, [stint("Drop shot", 1)], trip=trip)
    assert log.days == {}
    assert log.unfinished == ({"A1": 1} if "Status" in trip else {})


def test_days_hold_no_column_of_the_guide() -> None:
    """What a copy is made of has room for nothing else: these are all the fields of a day."""
    fields = (
        "date",
        "begin_min",
        "water",
        "hours",
        "alone",
        "blank",
        "weather",
        "words",
        "caught",
        "tied_on",
    )
    assert tuple(Day.__dataclass_fields__) == fields


def test_fish_without_a_name_on_somebodys_stint_are_his(told: Told) -> None:
    """Two rows on his stint of three are three fish, not five; the other client's five stay the other's."""
    stints = [stint("Drop shot", 3, "A1"), stint("Tube", 5, "B2")]
    log = told("A1; B2", 2, stints, [fish("Drop shot", 2), fish("Tube", 5)])
    assert (of(log, "A1"), of(log, "B2")) == ((3, 0), (5, 0))


def test_fish_of_a_technique_that_two_others_fished_by_name_are_not_a_thirds(told: Told) -> None:
    stints = [stint("Tube", 3, "A1"), stint("Tube", 2, "B2"), stint("Jerkbait", 0, "C3")]
    log = told("A1; B2; C3", 3, stints, [fish("Tube", 4)])
    assert of(log, "C3") == (0, 0)
    assert (of(log, "A1"), of(log, "B2")) == ((0, 4), (0, 4))


def test_where_the_guide_fished_too_fish_without_a_name_are_no_clients_own(told: Told) -> None:
    log = told(
        "A1", 1, [stint("Drop shot", 5)], [fish("Drop shot", 1, None, 20)], trip={"Guide fished": "yes"}
    )
    (day,) = log.days["A1"]
    assert (of(log, "A1"), day.alone, day.his) == ((0, 5), False, ())


@pytest.mark.parametrize("word", ["guest", "Walk-in", "TBD", "n/a", "none"])
def test_word_that_may_mean_anybody_is_nobodys_code(told: Told, word: str) -> None:
    log = told(f"A1; {word}", 2, [stint("Drop shot", 1)])
    assert set(log.days) == {"A1"}
    assert not log.days["A1"][0].alone
    listed = told(f"A1; {word}", 2, [stint("Drop shot", 1)], Clients=[["Client"], ["A1"], [word]])
    assert set(listed.days) == {"A1", word}


@pytest.mark.parametrize(
    ("stints", "rows", "blank"),
    [
        ([stint("Drop shot", 0)], [], True),
        ([stint("Drop shot")], [["T-1", None, "none", None, None, None, None]], True),
        ([stint("Drop shot")], [], False),
        ([stint("Drop shot", 1)], [], False),
        ([stint("Drop shot", 0)], [fish("Drop shot", 1, "B2")], False),
        ([stint("Drop shot", 0), ["T-1", "Tube", None, 0, None]], [], False),
    ],
)
def test_trip_is_blank_only_where_the_log_says_so(told: Told, stints: Rows, rows: Rows, blank: bool) -> None:
    assert told("A1; B2", 2, stints, rows).days["A1"][0].blank is blank


def test_fish_of_a_stint_without_its_time_are_told(told: Told) -> None:
    log = told("A1", 1, [["T-1", "Drop shot", None, 4, None]])
    assert of(log, "A1") == (4, 0)


def test_what_a_fish_came_on_was_tied_on(told: Told) -> None:
    log = told("A1", 1, [stint("Drop shot", 0)], [fish("Tube", 1)])
    assert [tied.technique for tied in log.days["A1"][0].tied_on] == ["Drop shot", "Tube"]
