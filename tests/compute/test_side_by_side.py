"""Fair comparisons of a season, from its trip-techniques."""

import numpy as np
import pandas as pd
import pytest

from reporter.compute.condition_classes import ConditionClasses
from reporter.compute.side_by_side import SideBySide, side_by_side
from reporter.compute.spread import Spread

STYLES = {"Jig": "slow", "Crankbait": "moving", "Spoon": ""}
NO_STINTS = pd.DataFrame(
    columns=["stint_no", "trip_no", "technique", "begin_min", "end_min", "timing", "fish", "rod_hours"]
)
ONE_BY_ONE = Spread(0.0, 100)
Fished = tuple[int, str, float, float]


def compared(*fished: Fished, of_trip: list[int], stints: pd.DataFrame = NO_STINTS) -> SideBySide:
    """Compare (trip, technique, fish, rod-hours), the trips numbered from 1."""
    pairs = pd.DataFrame(list(fished), columns=["trip_no", "technique", "landed", "rod_hours"])
    pairs = pairs.assign(in_rates=True, style=pairs["technique"].map(STYLES))
    labels = tuple(f"kind {number}" for number in range(max(of_trip, default=-1) + 1))
    classes = ConditionClasses(np.array(of_trip, dtype=np.int64), labels)
    return side_by_side(pairs, stints, range(1, len(of_trip) + 1), classes, ONE_BY_ONE)


def rows(fair: SideBySide, this: str) -> dict[str, pd.Series]:
    table = fair.table[fair.table["this"] == this]
    return {row["method"]: row for _, row in table.iterrows()}


def test_slow_technique_fished_on_hard_days_is_not_the_worse_one() -> None:
    # Computed with R epiR: crude .7132, within conditions 1.316754 (slow over moving).
    fair = compared(
        (1, "Jig", 27, 60),
        (1, "Crankbait", 3, 10),
        (2, "Jig", 10, 10),
        (2, "Crankbait", 60, 75),
        of_trip=[0, 1],
    )
    moving = rows(fair, "moving")
    crude = (37 / 70) / (63 / 85)
    assert crude == pytest.approx(0.7132, abs=1e-4)
    assert 1 / moving["same_condition"]["ratio"] == pytest.approx(1.316754, rel=1e-6)
    assert 1 / moving["same_trip"]["ratio"] == pytest.approx(1.316754, rel=1e-6)
    assert moving["same_trip"]["claim"] == "not_enough"


def test_standardised_rates_rest_on_kinds_of_day_that_all_were_fished_on() -> None:
    jig = [(trip, "Jig", 27 / 5, 12.0) for trip in range(1, 6)]
    jig += [(trip, "Jig", 2.0, 2.0) for trip in range(6, 11)]
    crank = [(trip, "Crankbait", 3 / 5, 2.0) for trip in range(1, 6)]
    crank += [(trip, "Crankbait", 12.0, 15.0) for trip in range(6, 11)]
    few = [(1, "Spoon", 9.0, 5.0), (11, "Spoon", 9.0, 5.0)]
    fair = compared(*jig, *crank, *few, of_trip=[0] * 5 + [1] * 5 + [2])
    found = fair.standardised.set_index("technique")
    # The season's mix is 75 and 85 of 160 rod-hours: the Spoon's 5 on the first kind count among them.
    assert found.loc["Jig", "rate"] == pytest.approx(0.45 * 75 / 160 + 1.0 * 85 / 160)
    assert found.loc["Crankbait", "rate"] == pytest.approx(0.3 * 75 / 160 + 0.8 * 85 / 160)
    assert np.isnan(found.loc["Spoon", "rate"])
    assert found["trips"].to_dict() == {"Crankbait": 10, "Jig": 10, "Spoon": 0}
    assert (fair.strata, fair.share) == (("kind 0", "kind 1"), pytest.approx(160 / 165))


def test_one_technique_more_is_held_against_the_one_most_used() -> None:
    fished = [
        (trip, name, 1.0, hours) for trip in range(1, 7) for name, hours in (("Jig", 3.0), ("Spoon", 2.0))
    ]
    fair = compared(*fished, of_trip=[0] * 6)
    assert fair.reference == "Jig"
    assert fair.table[["of", "method", "this", "against"]].to_numpy().tolist() == [
        ["technique", "same_trip", "Spoon", "Jig"],
        ["technique", "same_condition", "Spoon", "Jig"],
    ]
    assert rows(fair, "Spoon")["same_trip"]["ratio"] == pytest.approx(1.5)


def test_claim_needs_more_where_more_techniques_are_looked_at() -> None:
    fish = (6, 9, 4, 8, 7, 6, 9, 5)
    two = [
        (trip + 1, name, part, 2.0)
        for trip, n in enumerate(fish)
        for name, part in (("Jig", n / 2), ("Spoon", n))
    ]
    assert rows(compared(*two, of_trip=[0] * 8), "Spoon")["same_trip"]["claim"] == "this"
    ones = [(1, f"Other {number}", 0.0, 0.1) for number in range(40)]
    many = rows(compared(*two, *ones, of_trip=[0] * 8), "Spoon")["same_trip"]
    assert (many["claim"], many["low"] > 1) == ("cannot_tell", True)


def test_techniques_on_different_kinds_of_day_get_no_number() -> None:
    fished = [(trip, "Jig", 3.0, 4.0) for trip in range(1, 7)] + [
        (trip, "Spoon", 2.0, 3.0) for trip in range(7, 13)
    ]
    spoon = rows(compared(*fished, of_trip=[0] * 6 + [1] * 6), "Spoon")
    for row in spoon.values():
        assert (row["claim"], row["only_this"], row["only_against"]) == (
            "no_overlap",
            ("kind 1",),
            ("kind 0",),
        )
        assert np.isnan([row["ratio"], row["low"], row["high"]]).all()


def test_nothing_caught_gives_no_ratio() -> None:
    fished = [(trip, name, 0.0, 2.0) for trip in range(1, 7) for name in ("Jig", "Spoon")]
    row = rows(compared(*fished, of_trip=[0] * 6), "Spoon")["same_trip"]
    assert (row["claim"], row["fish_this"], row["hours_this"]) == ("no_ratio", 0, 12)
    assert np.isnan(row["ratio"])


def test_same_hours_are_compared_from_five_trips_on() -> None:
    fished = [(trip, name, 2.0, 3.0) for trip in range(1, 6) for name in ("Jig", "Spoon")]
    stints = pd.DataFrame(fished, columns=["trip_no", "technique", "fish", "rod_hours"])
    stints = stints.assign(stint_no=stints.index + 1, begin_min=360.0, end_min=540.0, timing="clock")
    stints["fish"] += stints["technique"] == "Spoon"
    whole = compared(*fished, of_trip=[0] * 5, stints=stints)
    found = rows(whole, "Spoon")["same_window"]
    assert (found["trips"], found["ratio"]) == (5, pytest.approx(1.5))
    four = compared(*fished, of_trip=[0] * 5, stints=stints[stints["trip_no"] < 5])
    assert "same_window" not in set(four.table["method"])


def test_moving_and_slow_are_compared_in_the_same_hours_too() -> None:
    fished = [(trip, name, 2.0, 3.0) for trip in range(1, 6) for name in ("Jig", "Crankbait")]
    stints = pd.DataFrame(fished, columns=["trip_no", "technique", "fish", "rod_hours"])
    stints = stints.assign(stint_no=stints.index + 1, begin_min=360.0, end_min=540.0, timing="clock")
    stints["fish"] += stints["technique"] == "Crankbait"
    found = rows(compared(*fished, of_trip=[0] * 5, stints=stints), "moving")["same_window"]
    assert (found["trips"], found["ratio"]) == (5, pytest.approx(1.5))


def test_one_technique_or_none_leaves_nothing_to_compare() -> None:
    assert compared((1, "Jig", 3.0, 2.0), of_trip=[0]).table.empty
    nothing = compared(of_trip=[])
    assert (nothing.table.empty, nothing.standardised.empty, nothing.reference) == (True, True, "")


def test_rows_behind_a_comparison_are_the_trips_and_the_kinds_of_day_with_both() -> None:
    fair = compared(
        (1, "Jig", 27, 60),
        (1, "Crankbait", 3, 10),
        (2, "Jig", 10, 10),
        (2, "Crankbait", 60, 75),
        (3, "Jig", 4, 2),
        (4, "Crankbait", 5, 3),
        of_trip=[0, 0, 1, 0],
    )
    sides = ["catch_this", "effort_this", "catch_against", "effort_against"]
    # 1: moving against slow; 2: Jig against Crankbait, which was fished more.
    trips = fair.rows.trips[["no", "trip_no", *sides]].to_numpy().tolist()
    assert trips == [
        [1, 1, 3, 10, 27, 60],
        [1, 2, 60, 75, 10, 10],
        [2, 1, 27, 60, 3, 10],
        [2, 2, 10, 10, 60, 75],
    ]
    # Trip 4 is of the first kind: without the other, but its kind of day has both.
    kinds = fair.rows.kinds[["no", "kind", *sides]].to_numpy().tolist()
    assert kinds == [[1, 0, 68, 88, 37, 70], [2, 0, 37, 70, 68, 88]]
    assert fair.rows.hours.empty


def test_rates_of_the_mix_rest_on_each_technique_on_each_of_its_kinds() -> None:
    jig = [(trip, "Jig", 3.0, 2.0) for trip in range(1, 6)] + [(6, "Jig", 2.0, 4.0)]
    crank = [(trip, "Crankbait", 1.0, 4.0) for trip in range(1, 6)]
    fair = compared(*jig, *crank, of_trip=[0, 0, 0, 1, 1, 2])
    assert fair.mix[["technique", "kind", "trips", "rod_hours", "fish", "rate"]].to_numpy().tolist() == [
        ["Crankbait", 0, 3, 12.0, 3.0, 0.25],
        ["Crankbait", 1, 2, 8.0, 2.0, 0.25],
        ["Jig", 0, 3, 6.0, 9.0, 1.5],
        ["Jig", 1, 2, 4.0, 6.0, 1.5],
    ]
    kinds = fair.kinds[["kind", "label", "rod_hours", "shared"]].to_numpy().tolist()
    assert kinds == [[0, "kind 0", 18.0, True], [1, "kind 1", 12.0, True], [2, "kind 2", 4.0, False]]
