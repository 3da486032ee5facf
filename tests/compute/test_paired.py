"""Ratios of two techniques: worked by hand, and against changes of a trip's weight done by numbers."""

import numpy as np
import pytest

from reporter.compute.pair import members_of, pair_of
from reporter.compute.paired import RatioRange, same_condition, same_trip
from reporter.compute.ratio_error import between_trips_of_strata_error

# On each trip A = a t0 / T and B = b t1 / T: (4 x 2 / 4, 1 x 2 / 4) = (2, 0.5) and (3 x 1 / 4, 2 x 3 / 4) =
# (0.75, 1.5); the third trip has one technique only.
THIS = ([4, 3, 7], [2, 3, 5])
AGAINST = ([1, 2, 9], [2, 1, 0])
FIELDS = RatioRange.__slots__


def test_ratio_of_two_shared_trips() -> None:
    found = same_trip(*THIS, *AGAINST)
    assert (found.numerator, found.denominator) == (2.75, 2.0)
    assert found.ratio == pytest.approx(1.375)
    assert (found.trips, found.fish_this, found.fish_against) == (2, 7, 3)
    assert found.overlap_share == pytest.approx(8 / 13)
    # Deviations A - 1.375 B are 1.3125 and -1.3125: error sqrt(2 x 2 x 1.3125^2) / 2.75 = 0.9545455, which
    # t = 12.7062 on one degree of freedom makes 12.12865.
    assert np.log(found.high / found.ratio) == pytest.approx(12.12865, rel=1e-6)
    assert np.log(found.ratio / found.low) == pytest.approx(12.12865, rel=1e-6)


def test_trips_alike_are_no_surer_than_independent_fish() -> None:
    # Six times 2 fish in 1 h against 1 in 1 h: variance 6 x 3 / 4 / (6 x 1 x 6 x 0.5) = 0.25.
    found = same_trip([2] * 6, [1] * 6, [1] * 6, [1] * 6)
    assert found.ratio == 2
    assert np.log(found.high / 2) == pytest.approx(1.959964 * 0.5, rel=1e-6)


def test_fish_of_trips_without_the_other_technique_change_nothing() -> None:
    without = same_trip(*(part[:2] for part in (*THIS, *AGAINST)))
    found = same_trip(*THIS, *AGAINST)
    for name in set(FIELDS) - {"overlap_share"}:
        assert getattr(found, name) == getattr(without, name)


def test_no_shared_trip_is_no_ratio() -> None:
    found = same_trip([3, 0], [2, 0], [0, 4], [0, 2])
    assert np.isnan([found.ratio, found.low, found.high]).all()
    assert (found.trips, found.numerator, found.denominator, found.overlap_share) == (0, 0, 0, 0)


def test_no_effort_at_all_is_no_ratio_and_no_overlap() -> None:
    for found in (same_trip([1], [0], [1], [0]), same_condition([], [], [], [], [])):
        assert np.isnan([found.ratio, found.low, found.high, found.overlap_share]).all()
        assert found.trips == 0


@pytest.mark.parametrize("catches", [([0, 0], [3, 1]), ([3, 1], [0, 0]), ([0, 0], [0, 0])])
def test_none_caught_on_one_side_is_no_ratio(catches: tuple[list[int], list[int]]) -> None:
    hours = [2, 2]
    for found in (
        same_trip(catches[0], hours, catches[1], hours),
        same_condition(catches[0], hours, catches[1], hours, [0, 0]),
    ):
        assert np.isnan([found.ratio, found.low, found.high]).all()
        assert (found.trips, found.fish_this, found.fish_against) == (2, sum(catches[0]), sum(catches[1]))


def test_one_trip_has_a_ratio_and_no_range() -> None:
    for found in (same_trip([4], [2], [1], [2]), same_condition([4], [2], [1], [2], [0])):
        assert found.ratio == 4
        assert np.isnan([found.low, found.high]).all()


def test_effort_that_is_not_known_is_not_fished() -> None:
    found = same_trip([4, 3, 8], [2, 3, np.nan], [1, 2, 8], [2, 1, 2])
    assert (found.ratio, found.trips) == (pytest.approx(1.375), 2)


def test_same_condition_compares_different_trips() -> None:
    # Condition 0: 6 fish in 4 h against 1 in 4 h, A = 3 and B = 0.5; condition 7: one technique only.
    found = same_condition([6, 0, 0, 2], [4, 0, 0, 2], [0, 1, 0, 0], [0, 3, 1, 0], [0, 0, 0, 7])
    assert found.ratio == 6
    assert (found.trips, found.fish_this, found.fish_against) == (3, 6, 1)
    assert found.overlap_share == pytest.approx(8 / 10)


def test_range_within_conditions_follows_from_the_pull_of_each_trip() -> None:
    trips, strata = _record()
    error, df = _by_small_changes(trips, strata)
    found = same_condition(*trips, strata)
    assert between_trips_of_strata_error(pair_of(*trips), members_of(strata)) == pytest.approx(
        error, rel=1e-6
    )
    assert df == 8
    # Student's t at 97.5 % on 8 degrees of freedom, any printed table: 2.306004.
    assert np.log(found.high / found.ratio) == pytest.approx(2.306004 * error, rel=1e-6)


def test_condition_of_one_trip_adds_the_variance_of_independent_fish() -> None:
    # Condition 0: two trips alike, A = 4 and B = 2 of 8 and 4 fish in 2 h each; condition 1: one trip,
    # 4 fish in 1 h against 2 in 1 h, A = 2 and B = 1. Ratio 2; 2 x (4 + 2) / 4 = 3 alone, so sqrt(3) / 6.
    pair = pair_of([4, 4, 4], [1, 1, 1], [2, 2, 2], [1, 1, 1])
    assert between_trips_of_strata_error(pair, members_of([0, 0, 1])) == pytest.approx(3**0.5 / 6)


def test_trips_of_no_known_condition_are_left_out_and_count_against_the_overlap() -> None:
    found = same_condition([4, 3, 9], [2, 3, 1], [1, 2, 9], [2, 1, 1], [0, 0, -1])
    without = same_condition([4, 3], [2, 3], [1, 2], [2, 1], [0, 0])
    for name in set(FIELDS) - {"overlap_share"}:
        assert getattr(found, name) == getattr(without, name)
    assert (found.overlap_share, without.overlap_share) == (pytest.approx(0.8), 1)


def test_this_and_against_exchanged_give_one_over_the_ratio() -> None:
    (a, t1, b, t0), strata = _record()
    for one, other in (
        (same_trip(a, t1, b, t0), same_trip(b, t0, a, t1)),
        (same_condition(a, t1, b, t0, strata), same_condition(b, t0, a, t1, strata)),
    ):
        assert other.ratio == pytest.approx(1 / one.ratio)
        assert (other.low, other.high) == (pytest.approx(1 / one.high), pytest.approx(1 / one.low))


def test_higher_level_is_a_wider_range() -> None:
    trips, strata = _record()
    for usual, sure in (
        (same_trip(*trips), same_trip(*trips, level=0.99)),
        (same_condition(*trips, strata), same_condition(*trips, strata, level=0.99)),
    ):
        assert sure.low < usual.low < usual.ratio == sure.ratio < usual.high < sure.high


@pytest.mark.parametrize("own_strata", [False, True])
def test_many_seasons_at_once_are_each_as_alone(own_strata: bool) -> None:
    rng = np.random.default_rng(11)
    shape = (3, 2, 9)
    efforts = rng.uniform(1, 4, (2, *shape)) * (rng.random((2, *shape)) < 0.7)
    a, b = rng.poisson(efforts)
    strata = rng.integers(0, 3, shape if own_strata else shape[-1:])
    together = same_trip(a, efforts[0], b, efforts[1])
    within = same_condition(a, efforts[0], b, efforts[1], strata)
    for name in FIELDS:
        assert getattr(together, name).shape == getattr(within, name).shape == shape[:-1]
    for season in np.ndindex(shape[:-1]):
        trips = (a[season], efforts[0][season], b[season], efforts[1][season])
        own = strata[season] if own_strata else strata
        for found, alone in ((together, same_trip(*trips)), (within, same_condition(*trips, own))):
            for name in FIELDS:
                np.testing.assert_allclose(getattr(found, name)[season], getattr(alone, name), rtol=1e-12)


def test_shapes_that_do_not_go_together_are_refused() -> None:
    with pytest.raises(ValueError, match="shape"):
        same_trip([1, 2], [1, 2], [1, 2, 3], [1, 2, 3])


def _record() -> tuple[tuple[list[float], list[float], list[float], list[float]], list[int]]:
    """Twelve trips of three conditions; the last condition has one technique only, one trip no effort."""
    a = [3, 0, 5, 2, 1, 4, 9, 0, 2, 6, 1, 0]
    t1 = [2, 3, 4, 1.5, 2, 3.5, 2, 0, 1, 3, 2, 0]
    b = [1, 1, 6, 0, 2, 3, 0, 4, 1, 0, 0, 0]
    t0 = [2.5, 3, 2, 4, 3, 2.5, 0, 3, 2, 0, 1, 0]
    return (a, t1, b, t0), [0, 0, 0, 0, 0, 1, 1, 1, 1, 2, 1, 0]


def _by_small_changes(
    trips: tuple[list[float], list[float], list[float], list[float]], strata: list[int]
) -> tuple[float, int]:
    """Error of the log of the ratio, and df, from what a little more of each trip does to it."""
    step = 1e-5

    def log_ratio(weights: list[float]) -> float:
        above = below = 0.0
        for stratum in set(strata):
            rows = [row for row, own in enumerate(strata) if own == stratum]
            a, t1, b, t0 = (sum(weights[row] * part[row] for row in rows) for part in trips)
            above += a * t0 / (t1 + t0)
            below += b * t1 / (t1 + t0)
        return float(np.log(above / below))

    def pull(row: int) -> float:
        up, down = ([1.0 + sign * step * (row == other) for other in range(12)] for sign in (1, -1))
        return (log_ratio(up) - log_ratio(down)) / (2 * step)

    variance, df = 0.0, 0
    for stratum in (0, 1):
        rows = [row for row, own in enumerate(strata) if own == stratum and trips[1][row] + trips[3][row] > 0]
        pulls = np.array([pull(row) for row in rows])
        variance += len(rows) / (len(rows) - 1) * float(((pulls - pulls.mean()) ** 2).sum())
        df += len(rows) - 1
    return variance**0.5, df
