"""Season against season: ratios against published values and plain arithmetic, and what a claim asks."""

import math
from collections import defaultdict
from collections.abc import Iterable
from pathlib import Path

import numpy as np
import pandas as pd
import pytest
from scipy.stats import norm, t

from reporter.compute.claims import claim_of_seasons
from reporter.compute.condition_classes import ConditionClasses
from reporter.compute.season_ratios import METHODS, season_ratio, season_rows
from reporter.compute.seasons import technique_changes
from tests.conftest import WriteLog
from tests.season_logs import Trip, put_together, season_sheets, table, write_seasons

Cell = tuple[int, int, float, float, int]
"""Season (1 or 0), trip, fish, rod-hours, stratum."""


def cells(*rows: Cell) -> pd.DataFrame:
    made = pd.DataFrame(list(rows), columns=["log", "trip_no", "landed", "rod_hours", "same_condition"])
    return made.assign(same_month=made["same_condition"])


def test_ratio_of_two_seasons_is_mantel_haenszels() -> None:
    # 27 in 60 h against 3 in 10 h on one kind of day, 10 in 10 h against 60 in 75 h on the other:
    # computed with R epiR 1.316754. By hand: (27 x 10/70 + 10 x 75/85) / (3 x 60/70 + 60 x 10/85).
    made = cells((1, 1, 27, 60, 0), (0, 2, 3, 10, 0), (1, 3, 10, 10, 1), (0, 4, 60, 75, 1))
    found = season_ratio(made, 1, "same_condition")
    assert found.ratio == pytest.approx(1.316754, rel=1e-6)
    assert found.ratio == pytest.approx((270 / 70 + 750 / 85) / (180 / 70 + 600 / 85))


def test_stratum_of_one_season_alone_counts_in_the_overlap_and_nowhere_else() -> None:
    made = cells((1, 1, 6, 4, 0), (0, 2, 2, 4, 0), (1, 3, 50, 8, 1), (1, 4, 9, 4, -1))
    found = season_ratio(made, 1, "same_condition")
    assert found.ratio == pytest.approx(3.0)
    assert found.overlap_share == pytest.approx(8 / 20)
    assert (found.trips_this, found.trips_against, found.fish_this) == (1, 1, 6)


def test_rows_behind_a_ratio_are_the_cells_of_techniques_that_both_seasons_fished_on_like_days() -> None:
    """Jig in May, on kind 1 in all three seasons; worm in June of the first two, on a kind of day each."""
    made = pd.DataFrame(
        [
            (0, 1, "jig", 2, 4.0, 1, 5),
            (0, 2, "worm", 1, 3.0, 1001, 1006),
            (1, 3, "jig", 6, 4.0, 1, 5),
            (1, 4, "worm", 5, 2.0, 1000, 1006),
            (2, 5, "jig", 7, 5.0, 1, -1),
        ],
        columns=["log", "trip_no", "technique", "landed", "rod_hours", *METHODS],
    )
    found = season_rows(
        made, 3, ConditionClasses(np.zeros(5, dtype=np.int64), ("no front", "behind a front"))
    )
    on_days, in_months = "behind a front", ("May", "June")
    rows = found[["line", "this_no", "method", "stratum", "alike", "trip_no"]].itertuples(index=False)
    assert [tuple(row) for row in rows] == [
        (1, 2, "same_condition", 1, on_days, 1),
        (1, 2, "same_condition", 1, on_days, 3),
        (2, 2, "same_month", 2, in_months[0], 1),
        (2, 2, "same_month", 3, in_months[1], 2),
        (2, 2, "same_month", 2, in_months[0], 3),
        (2, 2, "same_month", 3, in_months[1], 4),
        (3, 3, "same_condition", 4, on_days, 3),
        (3, 3, "same_condition", 4, on_days, 5),
    ]


def many(season: int, fish: float, trips: int = 6, stratum: int = 0) -> list[Cell]:
    """Trips of 4 rod-hours, their fish going up and down by a fifth."""
    first = 100 * season + 10 * stratum
    return [(season, first + n, fish * (0.8 if n % 2 else 1.2), 4.0, stratum) for n in range(trips)]


@pytest.mark.parametrize(
    ("rows", "said"),
    [
        ([*many(1, 20), *many(0, 5)], "this"),
        ([*many(1, 5), *many(0, 20)], "against"),
        ([*many(1, 10), *many(0, 10)], "cannot_tell"),
        ([*many(1, 20, trips=4), *many(0, 5)], "not_enough"),
        ([*many(1, 20), *many(0, 5, trips=4)], "not_enough"),
        ([*many(1, 20), *many(0, 0.5)], "not_enough"),
        ([*many(1, 20), *many(0, 0)], "no_ratio"),
        ([*many(1, 20), *many(0, 5), *many(1, 20, trips=20, stratum=1)], "no_overlap"),
    ],
)
def test_claim_asks_the_same_of_either_season(rows: list[Cell], said: str) -> None:
    made = cells(*rows)
    assert claim_of_seasons(*(season_ratio(made, 1, method) for method in METHODS)) == said


def test_claim_needs_both_ways_to_compare() -> None:
    made = cells(*many(1, 20), *many(0, 5))
    by_day = season_ratio(made, 1, "same_condition")
    rest = made.assign(same_month=np.where(made["trip_no"] % 3 == 0, made["same_month"], made["trip_no"] + 9))
    by_month = season_ratio(rest, 1, "same_month")
    assert claim_of_seasons(by_day, by_day) == "this"
    assert claim_of_seasons(by_day, by_month) == claim_of_seasons(by_month, by_day) == "no_overlap"


def test_technique_is_gained_when_first_fished_and_lost_after_the_last_time() -> None:
    fished = {"Always": (0, 1, 2), "Gained": (1, 2), "Lost": (0,), "Once": (1,), "Again": (0, 2)}
    pairs = pd.DataFrame(
        [(technique, log) for technique, logs in fished.items() for log in logs], columns=["technique", "log"]
    ).assign(stints=1.0, reason="")
    assert technique_changes(pairs, 3) == {
        ("Gained", 1): "gained",
        ("Lost", 1): "lost",
        ("Once", 1): "gained",
        ("Once", 2): "lost",
    }


def test_trip_that_was_cancelled_fished_no_technique() -> None:
    pairs = pd.DataFrame({"technique": ["Jig", "Jig"], "log": [0, 1], "stints": 1.0})
    assert technique_changes(pairs.assign(reason=["", "not_fished"]), 2) == {("Jig", 1): "lost"}
    assert technique_changes(pairs.assign(reason=["", "no_effort"]), 2) == {}


JIG, CRANK = "Drop shot", "Jerkbait"
FIRST = [
    Trip(4, 3, 45, {JIG: (120, 2), CRANK: (120, 0)}),
    Trip(4, 20, 55, {JIG: (90, 1)}),
    Trip(5, 2, 55, {CRANK: (240, 6)}),
    Trip(5, 9, 65, {JIG: (60, 3), CRANK: (180, 4)}),
    Trip(6, 1, 65, {CRANK: (200, 2)}),
    Trip(6, 21, 72, {JIG: (240, 1), CRANK: (60, 2)}),
]
SECOND = [
    Trip(4, 8, 55, {JIG: (100, 4), CRANK: (140, 1)}),
    Trip(4, 22, 55, {JIG: (240, 3)}),
    Trip(5, 5, 65, {CRANK: (240, 9)}),
    Trip(5, 19, 65, {JIG: (30, 0), CRANK: (210, 7)}),
    Trip(6, 6, 72, {CRANK: (180, 5), JIG: (60, 2)}),
    Trip(7, 4, 72, {JIG: (240, 1)}),
    Trip(8, 4, 72, {JIG: (120, 4), CRANK: (30, 1)}),
]


def test_printed_ratios_are_those_of_a_plain_computation(write_log: WriteLog, tmp_path: Path) -> None:
    seasons = {"a": season_sheets(2024, FIRST), "b": season_sheets(2025, SECOND)}
    put_together(write_seasons(write_log, tmp_path, seasons), tmp_path)
    rows = {row["method"]: row for row in table(tmp_path, "season_ratios")}
    strata = {"same_condition": lambda trip: trip.water // 10, "same_month": lambda trip: trip.month}
    for method, stratum in strata.items():
        ratio, low, high = plain_ratio(
            (side, (side, number), technique, stratum(trip), fish, minutes / 60)
            for side, trips in ((1, SECOND), (0, FIRST))
            for number, trip in enumerate(trips)
            for technique, (minutes, fish) in trip.fished.items()
        )
        assert float(rows[method]["ratio"]) == pytest.approx(ratio, rel=1e-9)
        assert float(rows[method]["low"]) == pytest.approx(low, rel=1e-9)
        assert float(rows[method]["high"]) == pytest.approx(high, rel=1e-9)


PlainCell = tuple[int, tuple[int, int], str, float, float, float]


def plain_ratio(given: Iterable[PlainCell]) -> tuple[float, float, float]:
    """The ratio within technique and day, and its range, cell by cell from the formulas as published.

    Greenland and Robins 1985 for ratio and error of independent fish; Taylor linearisation over trips for the
    error between trips, n / (n - 1) over the trips of strata that both have, t on those of the side with
    fewer - 1; the larger of the two makes the range.
    """
    every = list(given)
    sums: dict[tuple[str, float], list[float]] = defaultdict(lambda: [0.0, 0.0, 0.0, 0.0])
    for side, _, technique, day, fish, hours in every:
        of = sums[technique, day]
        of[0 if side else 2] += fish
        of[1 if side else 3] += hours
    both = {key: of for key, of in sums.items() if of[1] > 0 and of[3] > 0}
    above = sum(a * t0 / (t1 + t0) for a, t1, _, t0 in both.values())
    below = sum(b * t1 / (t1 + t0) for _, t1, b, t0 in both.values())
    ratio = above / below
    apart = sum((a + b) * t1 * t0 / (t1 + t0) ** 2 for a, t1, b, t0 in both.values())
    independent = math.sqrt(apart / (above * below))
    pulls: dict[tuple[int, int], float] = defaultdict(float)
    for side, trip, technique, day, fish, hours in every:
        if (technique, day) not in both:
            continue
        a, t1, b, t0 = both[technique, day]
        own = fish * t0 if side else -ratio * fish * t1
        turned = -t0 * hours if side else t1 * hours
        pulls[trip] += own / (t1 + t0) + (a + ratio * b) * turned / (t1 + t0) ** 2
    trips = len(pulls)
    between = math.sqrt(trips / (trips - 1) * sum(pull**2 for pull in pulls.values())) / above
    fewer = min(sum(side == one for one, _ in pulls) for side in (0, 1))
    factor = math.exp(max(t.ppf(0.975, fewer - 1) * between, norm.ppf(0.975) * independent))
    return ratio, ratio / factor, ratio * factor
