"""Shares of fish: Wilson's limits, with and without clusters, against other programs."""

import numpy as np
import pytest
from statsmodels.stats.proportion import proportion_confint

from reporter.compute.shares import share_interval, wilson

STOCK, QUALITY = [6, 3, 8, 5, 7, 4], [4, 1, 7, 2, 6, 3]


def test_plain_limits_of_28_in_40() -> None:
    # Computed with R 4.2.2; below the same method is held live against statsmodels.
    assert wilson(28 / 40, 40) == pytest.approx((0.5456998, 0.8192515), rel=1e-6)


@pytest.mark.parametrize("level", [0.8, 0.9, 0.95, 0.99])
def test_limits_agree_with_statsmodels_over_a_grid(level: float) -> None:
    counts = np.array([1, 2, 5, 20, 33, 100, 1234])
    for n in counts.tolist():
        part = np.unique(np.linspace(0, n, 9).astype(int))
        # Computed live with statsmodels: proportion_confint(method="wilson").
        expected = proportion_confint(part, n, alpha=1 - level, method="wilson")
        found = wilson(part / n, np.full(len(part), n), level)
        np.testing.assert_allclose(found, expected, rtol=1e-9, atol=1e-12)


def test_clusters_of_six_trips() -> None:
    found = share_interval(QUALITY, STOCK)
    # Computed with R survey::svyratio(~quality, ~stock, svydesign(id = ~trip, weights = ~1)): p and se; with
    # them n_eff = p (1 - p) / (se^2 (t / z)^2), t of 5 degrees of freedom, and Wilson's limits by hand.
    p, se = 0.6969697, 0.08629818
    assert found.share == pytest.approx(p, rel=1e-7)
    assert found.effective == pytest.approx(p * (1 - p) / (se * 2.570582 / 1.959964) ** 2, rel=1e-6)
    assert found.effective == pytest.approx(16.48656, rel=1e-6)
    assert (found.low.item(), found.high.item()) == pytest.approx((0.4565303, 0.8629649), rel=1e-6)


def test_clusters_widen_what_fish_alone_would_give() -> None:
    # Wilson's limits of 23 in 33 without clusters, as printed beside the example above.
    assert wilson(23 / 33, 33) == pytest.approx((0.5266186, 0.8262447), rel=1e-6)
    found = share_interval(QUALITY, STOCK)
    assert found.low < 0.5266186
    assert found.high > 0.8262447


def test_trips_that_are_all_alike_leave_the_fish_as_they_are() -> None:
    # One of two on each of ten trips: nothing between trips, so 20 independent fish.
    found = share_interval([1] * 10, [2] * 10)
    expected = proportion_confint(10, 20, method="wilson")
    assert found.effective == 20
    assert (found.low.item(), found.high.item()) == pytest.approx(expected, rel=1e-9)


@pytest.mark.parametrize("part", [0, 1])
def test_none_or_all_shows_no_bunches_and_keeps_every_fish(part: int) -> None:
    found = share_interval([6 * part, 3 * part, 4 * part], [6, 3, 4])
    expected = proportion_confint(13 * part, 13, method="wilson")
    assert found.effective == 13
    assert (found.low.item(), found.high.item()) == pytest.approx(expected, rel=1e-9, abs=1e-12)


def test_single_trip_has_a_share_but_no_range() -> None:
    found = share_interval([[3, 0]], [[5, 0]])
    assert found.share == 0.6
    assert np.isnan([found.low, found.high]).all()


def test_no_fish_has_no_share() -> None:
    found = share_interval([0, 0], [0, 0])
    assert np.isnan([found.share, found.low, found.high]).all()
