"""Numbers of trips: each accounted for."""

import shutil
from pathlib import Path

import pytest

from reporter.compute.paperwork.log_numbers import log_numbers
from reporter.compute.paperwork.numbering import NumberedTrip, Run, number_runs
from tests.compute.paperwork.logs import day, read, trips_sheet
from tests.conftest import WriteLog
from tests.run.test_own_layouts import read_adopted

SAMPLES = Path(__file__).parents[3] / "sample_workbooks"


def runs(*numbers: str, void: tuple[str, ...] = ()) -> tuple[Run, ...]:
    return number_runs([NumberedTrip(number, "void" if number in void else "done") for number in numbers])


# Test S1: 001-012 with 007 missing, 009 twice, 010 void.
def test_numbers_missing_used_twice_and_void_are_told_apart() -> None:
    typed = [f"{number:03d}" for number in (*range(1, 7), *range(8, 10), 9, *range(10, 13))]
    (run,) = runs(*typed, void=("010",))
    assert run.words == "1 number missing (007), 1 used twice (009), 1 void (010)"
    assert run.blocks
    assert (run.first, run.last, run.numbers) == ("001", "012", 11)


def test_run_without_a_number_twice_blocks_nothing() -> None:
    (run,) = runs("T-1", "T-2", "T-4", "T-5")
    assert (run.missing, run.blocks) == (("T-3",), False)
    (whole,) = runs("T-1", "T-2")
    assert whole.words == "all numbers there"


def test_12_and_012_and_t_12_are_not_merged() -> None:
    made = runs("12", "012", "T-12", "13")
    assert [run.twice for run in made] == [(), ()]
    assert [run.numbers for run in made] == [3, 1]
    assert [run.alike for run in made] == [("12 and 012",), ("12 and T-12",)]


def test_same_number_in_another_case_is_the_same() -> None:
    (run,) = runs("t-001", "T-001", "T-002")
    assert run.twice == ("t-001",)


def test_void_row_fills_its_gap_though_it_says_nothing_else() -> None:
    trips = [
        NumberedTrip("001", "done", ("anna", "skiff", "2026")),
        NumberedTrip("002", "void", ("", "", "")),
        NumberedTrip("003", "done", ("anna", "skiff", "2026")),
        NumberedTrip("101", "done", ("anna", "canoe", "2026")),
        NumberedTrip("102", "void", ("", "canoe", "")),
        NumberedTrip("104", "done", ("anna", "canoe", "2026")),
    ]
    skiff, canoe = number_runs(trips)
    assert (skiff.run, skiff.numbers, skiff.void, skiff.missing) == (
        ("anna", "skiff", "2026"),
        3,
        ("002",),
        (),
    )
    assert (canoe.run, canoe.void, canoe.missing) == (("anna", "canoe", "2026"), ("102",), ("103",))


def test_number_that_another_boat_has_is_not_missing_and_a_gap_is_named_once() -> None:
    boats = [("skiff", "canoe")[number % 2] for number in range(1, 13)]
    trips = [
        NumberedTrip(f"{number:03d}", "done", ("", boat, "2026"))
        for number, boat in zip(range(1, 13), boats, strict=True)
        if number != 6
    ]
    assert [run.missing for run in number_runs(trips)] == [("006",), ()]


def test_numbers_with_more_gaps_than_members_are_no_run() -> None:
    (run,) = runs("20260418", "20260704", "20260912")
    assert run.missing == ()


def test_row_written_twice_is_one_number_and_a_row_set_aside_has_its_own(write_log: WriteLog) -> None:
    row = ("T-002", day(6, 4))
    trips = trips_sheet([], ("T-001", day(6, 3)), row, row, ("T-003", None), ("T-005", day(6, 9)))
    made, _ = read(write_log, {"Trips": trips})
    (run,) = made.numbering
    assert (run.twice, run.missing, run.numbers) == ((), ("T-004",), 4)


def test_run_is_named_as_its_guide_and_boat_were_first_written(write_log: WriteLog) -> None:
    rows = [("T-001", day(6, 3), "Ann Lea", "Big Skiff"), ("T-002", day(6, 4), "ann lea", "BIG SKIFF")]
    made, _ = read(write_log, {"Trips": trips_sheet(["Guide", "Boat"], *rows)})
    assert [run.run for run in made.numbering] == [("Ann Lea", "Big Skiff", "2026")]


@pytest.mark.parametrize("typed", ["Smith party", "½"])
def test_numbers_without_digits_make_no_run(typed: str) -> None:
    assert runs(typed) == ()


@pytest.mark.parametrize(("sample", "numbers"), [("three sheets", 14), ("a row a fish", 0)])
def test_names_that_trips_without_numbers_are_given_are_no_numbers(
    sample: str, numbers: int, tmp_path: Path
) -> None:
    path = Path(shutil.copy(SAMPLES / f"my season, {sample}.xlsx", tmp_path))
    assert len(log_numbers(read_adopted(path).log)) == numbers
