"""Occurrences: the fish on Catch, and what the log says was not caught; never what it merely does not say."""

import datetime as dt

import pytest

from tests.compute.open_data.archives import CATCH, TRIPS, Row, data_of
from tests.conftest import Change, WriteLog

DAY = dt.date(2026, 4, 18)
EFFORT: Row = ["Trip", "Technique", "Minutes", "Anglers on it", "Landed"]
BLACK_BASS: Row = ["Species counted", "black bass"]
EVERY: Row = ["Species counted", None]


def one_trip(
    catch: list[Row], landed: list[object], counted: Row = BLACK_BASS, status: str | None = None
) -> dict[str, Change]:
    """A log of one trip with a stint for each tally; rows of Catch from Species on."""
    techniques = ["Drop shot", "Jerkbait"]
    stints = [["T-1", techniques[index], 60, 2, tally] for index, tally in enumerate(landed)]
    return {
        "Season": [["Setting", "Value"], ["Last day", dt.date(2026, 11, 30)], counted],
        "Trips": [[*TRIPS, "Status"], ["T-1", DAY, "Lake Arden", dt.time(6), dt.time(10), 2, status]],
        "Effort": [EFFORT, *stints],
        "Catch": [CATCH, *(["T-1", "Drop shot", *row] for row in catch)],
    }


def told(write_log: WriteLog, changes: dict[str, Change]) -> list[tuple[object, ...]]:
    """Status, Latin name, common name and number of the occurrences."""
    table = data_of(write_log(changes)).occurrences
    columns = ["occurrenceStatus", "scientificName", "vernacularName", "individualCount"]
    return list(table[columns].itertuples(index=False, name=None))


def test_row_of_catch_is_an_occurrence(write_log: WriteLog) -> None:
    fish: list[Row] = [["largemouth bass"], ["walleye", 3], ["saugeye"], ["black bass"], ["lake trout"]]
    table = data_of(write_log(one_trip(fish, [None]))).occurrences
    assert table["basisOfRecord"].unique().tolist() == ["HumanObservation"]
    assert table["recordedBy"].unique().tolist() == [""]
    columns = ["vernacularName", "individualCount", "scientificName", "taxonRank", "scientificNameID"]
    itis = "urn:lsid:itis.gov:itis_tsn:"
    assert list(table[columns].itertuples(index=False, name=None)) == [
        ("largemouth bass", 1, "Micropterus salmoides", "species", f"{itis}168160"),
        ("walleye", 3, "Sander vitreus", "species", f"{itis}650173"),
        ("saugeye", 1, "", "", ""),
        ("black bass", 1, "Micropterus", "genus", ""),
        ("lake trout", 1, "Salvelinus namaycush", "species", ""),
    ]
    assert table["occurrenceStatus"].unique().tolist() == ["detected"]


def test_day_without_a_fish_of_which_nothing_is_said_has_an_event_and_no_occurrence(
    write_log: WriteLog,
) -> None:
    data = data_of(write_log(one_trip([], [None, None])))
    assert (len(data.events), len(data.occurrences)) == (1, 0)
    assert data.events["eventRemarks"].tolist() == [""]


@pytest.mark.parametrize(
    ("catch", "landed"), [([], [0, 0]), ([["none"]], [None, None]), ([["none"]], [0, None])]
)
def test_none_that_was_written_is_a_species_not_detected(
    write_log: WriteLog, catch: list[Row], landed: list[object]
) -> None:
    data = data_of(write_log(one_trip(catch, landed)))
    assert data.events["eventRemarks"].tolist() == [
        "The log says that no fish of the species counted was caught."
    ]
    assert told(write_log, one_trip(catch, landed)) == [("notDetected", "Micropterus", "black bass", 0)]


def test_zero_of_one_technique_says_nothing_of_the_other(write_log: WriteLog) -> None:
    assert told(write_log, one_trip([], [0, None])) == []


def test_none_of_every_species_is_told_of_the_trip_alone(write_log: WriteLog) -> None:
    data = data_of(write_log(one_trip([["none"]], [None], EVERY)))
    assert len(data.occurrences) == 0
    assert data.events["eventRemarks"].tolist() == ["The log says that no fish was caught."]


def test_species_counted_one_by_one_are_not_detected_one_by_one(write_log: WriteLog) -> None:
    counted: Row = ["Species counted", "walleye; smallmouth bass"]
    assert told(write_log, one_trip([], [0], counted)) == [
        ("notDetected", "Micropterus dolomieu", "smallmouth bass", 0),
        ("notDetected", "Sander vitreus", "walleye", 0),
    ]


def test_other_fish_do_not_hide_that_none_of_the_species_counted_was_caught(write_log: WriteLog) -> None:
    assert told(write_log, one_trip([["bluegill", 2]], [0])) == [
        ("detected", "Lepomis macrochirus", "bluegill", 2),
        ("notDetected", "Micropterus", "black bass", 0),
    ]


def test_count_of_zero_is_a_species_not_detected(write_log: WriteLog) -> None:
    catch: list[Row] = [["smallmouth bass", 0], ["largemouth bass", 1], ["largemouth bass", 0]]
    assert told(write_log, one_trip(catch, [None])) == [
        ("detected", "Micropterus salmoides", "largemouth bass", 1),
        ("notDetected", "Micropterus dolomieu", "smallmouth bass", 0),
    ]


@pytest.mark.parametrize(
    "changes",
    [
        one_trip([["none"]], [0], status="log not finished"),
        one_trip([["none"], ["no such fish"]], [0]),  # a row of Catch that is set aside
    ],
)
def test_nothing_is_not_detected_where_the_log_is_incomplete(
    write_log: WriteLog, changes: dict[str, Change]
) -> None:
    assert told(write_log, changes) == []
    (remark,) = data_of(write_log(changes)).events["eventRemarks"]
    assert remark.endswith("its fish are incomplete.")


def test_rows_set_aside_are_counted(write_log: WriteLog) -> None:
    changes = one_trip([["largemouth bass"], ["no such fish"], ["another such"]], [None])
    trips = changes["Trips"]
    assert isinstance(trips, list)
    trips.append(["T-2", "31 June", "Lake Arden", dt.time(6), dt.time(10), 2, None])
    data = data_of(write_log(changes))
    assert (data.trips_aside, data.catch_aside) == (1, 2)


def test_fish_tallied_beyond_the_rows_are_told_of_the_trip(write_log: WriteLog) -> None:
    # Tallies of 5 and 2 make 7 of the species counted; 3 stand on rows (the bluegill is another): 4 more.
    changes = one_trip([["largemouth bass", 3], ["bluegill"]], [5, 2])
    data = data_of(write_log(changes))
    assert data.surplus == 4
    assert data.events["eventRemarks"].tolist() == [
        "4 more fish were landed than are listed here, species not written down."
    ]
    (row,) = data.measurements[data.measurements["measurementUnit"] == "fish"].to_dict("records")
    assert (row["measurementValue"], row["occurrenceID"]) == ("4", "")


def test_fish_of_the_log_are_the_sum_of_individual_counts(write_log: WriteLog) -> None:
    catch: list[Row] = [["largemouth bass", 3], ["bluegill", 12], ["walleye"], ["smallmouth bass", 0]]
    assert data_of(write_log(one_trip(catch, [9]))).occurrences["individualCount"].sum() == 16
