"""Where every row names its trip, the order of the rows on Effort and Catch changes no rate."""

import datetime as dt
import random
from pathlib import Path

import pandas as pd
from hypothesis import given, settings
from hypothesis import strategies as st

from reporter.compute.report import make_report
from reporter.compute.season import Season, compute_season
from reporter.read.raw import RawBook
from reporter.tidy.layout import find_layout
from reporter.tidy.season import tidy_log
from tests.properties.random_cells import Cell, raw_sheet

TECHNIQUES = ["Drop shot", "Jerkbait", "Tube", "Swimbait"]
SPECIES = ["LMB", "SMB", "walleye", "none"]
TRIPS = [["Trip", "Date", "Water", "Start", "End", "Anglers", "Status"]]
EFFORT = ["Trip", "Technique", "Parts", "Minutes", "Anglers on it", "Landed", "Missed", "Stint"]
CATCH = ["Trip", "Technique", "Species", "Count", "Fate", "Stint"]
WATERS = ["Lake Arden", "Bell River"]

Rows = list[list[Cell]]


@st.composite
def logs(draw: st.DrawFn) -> tuple[Rows, Rows, Rows]:
    """Trips, stints and fish of a small season, timed and written in every way, with gaps."""
    numbers = range(1, draw(st.integers(2, 6)) + 1)
    dice = random.Random(draw(st.integers(0, 2**32)))  # noqa: S311 - nothing secret
    trips, effort, catch = [], [], []
    for number in numbers:
        day, water = dt.datetime(2026, 4, number), dice.choice(WATERS)
        status = dice.choice([None, None, None, "cut short", "log not finished"])
        trips.append([f"T-{number}", day, water, dt.time(6), dt.time(12), 2, status])
        timing = dice.choice(["parts", "minutes", "both"])
        for name in dice.sample(TECHNIQUES, dice.randint(1, 4)) + dice.sample(TECHNIQUES, dice.randint(0, 1)):
            parts = dice.randint(1, 6) if timing in ("parts", "both") else None
            minutes = dice.choice([30, 60, 90]) if timing == "minutes" or dice.random() < 0.3 else None
            tally = dice.choice([None, 0, 1, 2, 5])
            effort.append([f"T-{number}", name, parts, minutes, 1, tally, dice.choice([None, 1]), None])
        for _ in range(dice.randint(0, 5)):
            name = dice.choice([*TECHNIQUES, None])
            fate = dice.choice(["kept", "released", None])
            catch.append([f"T-{number}", name, dice.choice(SPECIES), dice.choice([None, 2]), fate, None])
    return trips, effort, catch


def season_of(trips: Rows, effort: Rows, catch: Rows) -> Season:
    sheets = (
        raw_sheet("Trips", [*TRIPS, *trips]),
        raw_sheet("Effort", [EFFORT, *effort]),
        raw_sheet("Catch", [CATCH, *catch]),
        raw_sheet("Techniques", [["Technique", "Style"], *([name, "slow"] for name in TECHNIQUES)]),
    )
    book = RawBook(Path("log.xlsx"), "log.xlsx", "0" * 64, None, sheets, ())
    layout, found = find_layout(book)
    return compute_season(tidy_log(book, layout, found))


@settings(derandomize=True, deadline=None, max_examples=12)
@given(logs(), st.randoms(use_true_random=False))
def test_order_of_rows_changes_no_rate(log: tuple[Rows, Rows, Rows], dice: random.Random) -> None:
    trips, effort, catch = log
    before = make_report(season_of(trips, effort, catch))
    dice.shuffle(effort)
    dice.shuffle(catch)
    after = make_report(season_of(trips, effort, catch))
    for name in ("techniques", "styles", "waters", "months", "whole"):
        pd.testing.assert_frame_equal(getattr(before, name), getattr(after, name), rtol=1e-12, atol=1e-12)
    assert before.whole["rod_hours"].notna().all()
    assert sorted(p.code for p in before.season.problems) == sorted(p.code for p in after.season.problems)
