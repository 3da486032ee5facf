"""Big fish per 10 rod-hours: which fish are big, over which effort, with which range."""

import pytest
from scipy.stats import gamma

from tests.compute.fish_logs import LMB, NO_TALLY, Row, fish_row, read
from tests.conftest import WriteLog


def test_big_fish_are_those_from_the_length_on_that_is_set(write_log: WriteLog) -> None:
    rows = [
        fish_row(1, LMB, 18),
        fish_row(1, LMB, "45.72 cm"),  # 18 in
        fish_row(1, LMB, 17.99),
        fish_row(2, LMB, 19, None, "estimated"),  # an estimate counts
        fish_row(2, "northern pike", 30),  # not counted
        fish_row(3, LMB),
        ["T-001", None, LMB, None, 21, None, None, None],  # no technique on a trip with two
    ]
    settings: list[Row] = [["Big fish from", 18], ["Species counted", "black bass"]]
    season, page = read(write_log, rows, settings, Effort=NO_TALLY)
    assert page.big is not None
    table = page.big.techniques
    assert table["technique"].tolist() == ["Drop shot", "Jerkbait"]
    assert table[["trips", "rod_hours", "fish", "sized", "big"]].to_numpy().tolist() == [
        [2, 12, 4, 4, 3],
        [2, 12, 1, 0, 0],
    ]
    # 10 x 3 fish / 12 rod-hours.
    assert table["big_per_10_rod_hours"].tolist() == pytest.approx([2.5, 0])
    assert table["interval_rule"].tolist() == ["assumed", "none_caught"]
    assert season.pairs["big"].sum() == 4


def test_range_of_big_fish_is_that_of_every_rate_ten_times(write_log: WriteLog) -> None:
    rows = [fish_row(1, LMB, 18)]
    effort = [["Trip", "Technique", "Minutes", "Anglers on it"], ["T-001", "Drop shot", 240, 2]]
    _, page = read(write_log, rows, [["Big fish from", 18]], Effort=effort)
    assert page.big is not None
    (found,) = page.big.techniques.to_dict("records")
    # One fish in 8 rod-hours on one trip, kappa .5 assumed: v = (R E + .5 R^2 E^2) / E^2 = 1.5 / 64, so
    # y* = R^2 / v = 1 / 1.5; limits R / y* x gamma quantile = .1875 x quantile, computed with scipy.
    expected = (1.875 * gamma.ppf(0.025, 1 / 1.5), 1.875 * gamma.ppf(0.975, 1 + 1 / 1.5))
    assert (found["low"], found["high"]) == pytest.approx(expected, rel=1e-9)


def test_without_a_length_of_big_fish_there_are_none(write_log: WriteLog) -> None:
    season, page = read(write_log, [fish_row(1, LMB, 22)], Effort=NO_TALLY)
    assert page.big is None
    assert season.pairs["big"].sum() == 0
