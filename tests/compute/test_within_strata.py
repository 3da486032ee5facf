"""Ratios within strata that reach over trips: worked by hand, and again in plain numbers cell by cell."""

import math
import random
from collections import defaultdict
from collections.abc import Hashable, Sequence
from dataclasses import dataclass

import numpy as np
import pytest

from reporter.compute.paired import RatioRange, same_condition, same_trip, same_window, within_strata

FIELDS = RatioRange.__slots__
Z = 1.959964
# Student's t at 97.5 %, any printed table, by degrees of freedom from 1.
T_975 = (12.70620, 4.302653, 3.182446, 2.776445, 2.570582, 2.446912, 2.364624, 2.306004, 2.262157, 2.228139)
T_975 += (2.200985, 2.178813, 2.160369, 2.144787, 2.131450)


@dataclass(frozen=True)
class Cell:
    """What both sides had in one stratum on one trip; a side with 0 in its whole was not fished."""

    stratum: Hashable
    trip: Hashable
    part_this: float
    whole_this: float
    part_against: float
    whole_against: float


@dataclass(frozen=True)
class Plain:
    """What the formulas give: the ratio, both errors of its logarithm, its range, trips, share compared.

    df: degrees of freedom of t.
    """

    ratio: float
    robust: float
    independent: float
    low: float
    high: float
    trips: int
    df: int
    share: float


def worked_out(cells: Sequence[Cell], *, counted: bool = True) -> Plain:
    """Ratio = sum(a t0 / T) / sum(b t1 / T); range: x exp(+-max(t robust, z independent)).

    independent^2 = sum((a + b) t1 t0 / T^2) / (sum(a t0 / T) sum(b t1 / T)); robust from the pull of each
    cell, added up by trip; t on the trips of the side with fewer - 1.
    """
    fished = [clean(cell) for cell in cells]
    whole: dict[Hashable, list[float]] = defaultdict(lambda: [0.0] * 4)
    for cell in fished:
        for place, number in enumerate(four_of(cell)):
            whole[cell.stratum][place] += number
    both = {stratum: four for stratum, four in whole.items() if four[1] > 0 and four[3] > 0}
    this = sum(a * t0 / (t1 + t0) for a, t1, _, t0 in both.values())
    against = sum(b * t1 / (t1 + t0) for _, t1, b, t0 in both.values())
    every = sum(t1 + t0 for _, t1, _, t0 in whole.values())
    share = sum(t1 + t0 for _, t1, _, t0 in both.values()) / every if every else math.nan
    compared = [cell for cell in fished if cell.stratum in both and cell.whole_this + cell.whole_against > 0]
    trips = len({cell.trip for cell in compared})
    sides = [{cell.trip for cell in compared if four_of(cell)[whole] > 0} for whole in (1, 3)]
    df = min(map(len, sides)) - 1
    if not (this > 0 and against > 0):
        return Plain(math.nan, math.nan, math.nan, math.nan, math.nan, trips, df, share)
    ratio = this / against
    spread = sum((a + b) * t1 * t0 / (t1 + t0) ** 2 for a, t1, b, t0 in both.values())
    independent = math.sqrt(spread / (this * against))
    pulls: dict[Hashable, float] = defaultdict(float)
    for cell in compared:
        pulls[cell.trip] += pull_of(cell, both[cell.stratum], ratio)
    if trips < 2:
        return Plain(ratio, math.nan, independent, math.nan, math.nan, trips, df, share)
    robust = math.sqrt(trips / (trips - 1) * sum(pull**2 for pull in pulls.values())) / this
    if df < 1:
        return Plain(ratio, robust, independent, math.nan, math.nan, trips, df, share)
    half = max(T_975[df - 1] * robust, Z * independent if counted else 0.0)
    return Plain(
        ratio, robust, independent, ratio * math.exp(-half), ratio * math.exp(half), trips, df, share
    )


def clean(cell: Cell) -> Cell:
    """The cell without the parts of a side that was not fished."""
    a, t1, b, t0 = four_of(cell)
    return Cell(cell.stratum, cell.trip, a if t1 > 0 else 0, t1, b if t0 > 0 else 0, t0)


def four_of(cell: Cell) -> tuple[float, float, float, float]:
    return cell.part_this, cell.whole_this, cell.part_against, cell.whole_against


def pull_of(cell: Cell, stratum: Sequence[float], ratio: float) -> float:
    a, t1, b, t0 = four_of(cell)
    a_s, t1_s, b_s, t0_s = stratum
    own = (t0_s * a - ratio * t1_s * b) / (t1_s + t0_s)
    return own + (a_s + ratio * b_s) * (t1_s * t0 - t0_s * t1) / (t1_s + t0_s) ** 2


def found_of(cells: Sequence[Cell], *, counted: bool = True) -> RatioRange:
    strata = numbered([cell.stratum for cell in cells])
    trips = numbered([cell.trip for cell in cells])
    columns = [list(column) for column in zip(*map(four_of, cells), strict=True)]
    return within_strata(*columns, strata, trips, counted=counted)


def numbered(labels: Sequence[Hashable]) -> list[int]:
    order = list(dict.fromkeys(labels))
    return [order.index(label) for label in labels]


def assert_same(found: RatioRange, plain: Plain) -> None:
    for name in ("ratio", "low", "high"):
        assert float(getattr(found, name)) == pytest.approx(getattr(plain, name), rel=2e-6, nan_ok=True), name
    assert int(found.trips) == plain.trips
    assert float(found.overlap_share) == pytest.approx(plain.share, nan_ok=True)


# One technique, eight days: 4, 2, 4 and 2 fish in 2 h each on one side, 1, 2, 1 and 2 on the other.
ONE_TECHNIQUE = [
    *(Cell("drop shot", day, fish, 2, 0, 0) for day, fish in enumerate((4, 2, 4, 2))),
    *(Cell("drop shot", 4 + day, 0, 0, fish, 2) for day, fish in enumerate((1, 2, 1, 2))),
]


def test_one_stratum_of_one_technique_is_compared_over_days() -> None:
    # A = 12 x 8 / 16 = 6, B = 6 x 8 / 16 = 3, ratio 2. Fish one by one: 18 x 8 x 8 / 256 / (6 x 3) = 0.25, of
    # which the root times z is 0.979982. Pulls: 4 x 8 / 16 - 24 x 8 x 2 / 256 = 0.5, then -0.5, and so on:
    # sqrt(8 / 7 x 2) / 6 = 0.251976 between trips, which t = 3.182446 makes 0.8019, and that is less.
    found = found_of(ONE_TECHNIQUE)
    assert (found.numerator, found.denominator, found.ratio) == (6, 3, 2)
    assert (found.trips, found.fish_this, found.fish_against) == (8, 12, 6)
    assert (found.hours_this, found.hours_against, found.overlap_share) == (8, 8, 1)
    assert np.log(found.high / 2) == pytest.approx(0.979982, rel=1e-6)
    assert np.log(2 / found.low) == pytest.approx(0.979982, rel=1e-6)


def test_what_is_no_count_is_only_as_sure_as_trips_differ() -> None:
    found = found_of(ONE_TECHNIQUE, counted=False)
    assert found.ratio == 2
    assert np.log(found.high / 2) == pytest.approx(3.182446 * (16 / 7) ** 0.5 / 6, rel=1e-6)


def test_few_days_held_against_many_are_only_as_sure_as_few_days() -> None:
    # Two days of 3 and 5 fish in 2 h against eight of 2 in 2 h: a = 8, t1 = 4, b = 16, t0 = 16, T = 20, so
    # A = 6.4, B = 3.2, ratio 2. Pulls of the two: 16 x 3 / 20 - 40 x 16 x 2 / 400 = -0.8, and 0.8; of the
    # others -2 x 4 x 2 / 20 + 40 x 4 x 2 / 400 = 0. Ten trips: sqrt(10 / 9 x 1.28) / 6.4, which t = 12.7062
    # widens, as two days leave one degree of freedom.
    few = [Cell("worm", day, fish, 2, 0, 0) for day, fish in enumerate((3, 5))]
    many = [Cell("worm", 2 + day, 0, 0, 2, 2) for day in range(8)]
    found = found_of([*few, *many])
    assert (found.ratio, found.trips) == (pytest.approx(2), 10)
    assert np.log(found.high / found.ratio) == pytest.approx(12.7062 * (12.8 / 9) ** 0.5 / 6.4, rel=1e-6)


def test_one_day_held_against_many_has_no_range() -> None:
    many = [Cell("worm", day, 0, 0, 2, 2) for day in range(1, 9)]
    found = found_of([Cell("worm", 0, 4, 2, 0, 0), *many])
    assert (found.ratio, found.trips) == (pytest.approx(2), 9)
    assert np.isnan([found.low, found.high]).all()


def test_alike_trips_of_what_is_no_count_leave_no_range() -> None:
    cells = [Cell("worm", trip, 700, 2, 350, 1) for trip in range(5)]
    found = found_of(cells, counted=False)
    assert (found.low, found.ratio, found.high) == (1, 1, 1)


def test_pull_of_a_trip_is_added_up_over_its_strata_before_it_is_squared() -> None:
    # Stratum 1: A - 2 B is 1 on trip 1 and -1 on trip 2; in stratum 2 the other way round. By trip nothing
    # is left; by cell there would be.
    cells = [
        Cell(1, 1, 6, 1, 2, 1),
        Cell(1, 2, 2, 1, 2, 1),
        Cell(2, 1, 2, 1, 2, 1),
        Cell(2, 2, 6, 1, 2, 1),
    ]
    found = found_of(cells, counted=False)
    assert (found.low, found.ratio, found.high) == (2, 2, 2)
    apart = found_of([Cell(*(cell.stratum, place), *four_of(cell)) for place, cell in enumerate(cells)])
    assert apart.low < 2 < apart.high
    assert (found.trips, apart.trips) == (2, 4)


def test_stratum_that_one_side_was_not_fished_in_counts_against_the_overlap_and_nothing_else() -> None:
    alone = [Cell("jig", 9, 9, 8, 0, 0), Cell("jig", 10, 3, 4, 0, 0)]
    without, found = found_of(ONE_TECHNIQUE), found_of([*ONE_TECHNIQUE, *alone])
    for name in set(FIELDS) - {"overlap_share"}:
        assert getattr(found, name) == getattr(without, name), name
    assert found.overlap_share == pytest.approx(16 / 28)


def random_cells(seed: int) -> list[Cell]:
    """Up to 4 strata on 2 to 12 trips, some sides not fished; trips differ much on even seeds."""
    dice = random.Random(seed)  # noqa: S311 - nothing secret
    hours, fish = ([0, 1], [1, 1, 2]) if seed % 2 else ([0, 0.5, 1, 2.25, 3.1], [0, 1, 2, 3, 7])
    cells = []
    for trip in range(dice.randint(2, 12)):
        for stratum in range(dice.randint(1, 4)):
            t1, t0 = (dice.choice(hours) for _ in range(2))
            a, b = (dice.choice(fish) for _ in range(2))
            cells.append(Cell(stratum, trip, a, t1, b, t0))
    return cells


@pytest.mark.parametrize("counted", [True, False])
@pytest.mark.parametrize("seed", range(30))
def test_random_tables_give_what_the_formulas_give(seed: int, counted: bool) -> None:
    cells = random_cells(seed)
    assert_same(found_of(cells, counted=counted), worked_out(cells, counted=counted))


def test_random_tables_try_either_error_and_tables_without_a_ratio() -> None:
    made = [worked_out(random_cells(seed)) for seed in range(30)]
    wider = [T_975[one.df - 1] * one.robust > Z * one.independent for one in made if one.df > 0]
    assert {True, False} == set(wider)
    assert sum(not math.isnan(one.ratio) for one in made) > 20


@pytest.mark.parametrize("seed", range(5))
def test_cells_that_are_each_a_stratum_are_windows(seed: int) -> None:
    cells = [Cell(place, cell.trip, *four_of(cell)) for place, cell in enumerate(random_cells(seed))]
    columns = [list(column) for column in zip(*map(four_of, cells), strict=True)]
    windows = same_window(*columns, [cell.trip for cell in cells])
    found = found_of(cells)
    for name in FIELDS:
        np.testing.assert_allclose(getattr(found, name), getattr(windows, name), rtol=1e-12, err_msg=name)


@pytest.mark.parametrize("seed", range(5))
def test_trips_that_are_each_a_stratum_are_same_trips(seed: int) -> None:
    cells = [Cell(place, place, *four_of(cell)) for place, cell in enumerate(random_cells(seed))]
    columns = [list(column) for column in zip(*map(four_of, cells), strict=True)]
    trips, found = same_trip(*columns), found_of(cells)
    for name in FIELDS:
        np.testing.assert_allclose(getattr(found, name), getattr(trips, name), rtol=1e-12, err_msg=name)


@pytest.mark.parametrize("seed", range(5))
def test_strata_that_are_conditions_of_trips_give_their_ratio(seed: int) -> None:
    cells = [Cell(place % 3, place, *four_of(cell)) for place, cell in enumerate(random_cells(seed))]
    columns = [list(column) for column in zip(*map(four_of, cells), strict=True)]
    conditions = same_condition(*columns, [place % 3 for place in range(len(cells))])
    found = found_of(cells)
    for name in set(FIELDS) - {"low", "high"}:
        np.testing.assert_allclose(getattr(found, name), getattr(conditions, name), rtol=1e-12, err_msg=name)


@pytest.mark.parametrize("counted", [True, False])
def test_one_trip_has_a_ratio_and_no_range(counted: bool) -> None:
    found = found_of([Cell(1, 1, 4, 2, 1, 2), Cell(2, 1, 4, 2, 1, 2)], counted=counted)
    assert (found.ratio, found.trips) == (4, 1)
    assert np.isnan([found.low, found.high]).all()


def test_second_trip_that_fished_nothing_shared_gives_no_range() -> None:
    found = found_of([Cell(1, 1, 4, 2, 1, 2), Cell(2, 2, 4, 2, 0, 0)])
    assert (found.ratio, found.trips) == (4, 1)
    assert np.isnan([found.low, found.high]).all()


@pytest.mark.parametrize("parts", [(0, 3), (3, 0), (0, 0)])
def test_none_counted_on_one_side_is_no_ratio(parts: tuple[int, int]) -> None:
    found = found_of([Cell(1, trip, parts[0], 2, parts[1], 2) for trip in range(6)])
    assert np.isnan([found.ratio, found.low, found.high]).all()
    assert (found.trips, found.fish_this, found.fish_against) == (6, 6 * parts[0], 6 * parts[1])


def test_no_cell_at_all_is_no_ratio() -> None:
    found = within_strata([], [], [], [], [], [])
    assert np.isnan([found.ratio, found.low, found.high, found.overlap_share]).all()
    assert (found.trips, found.hours_this, found.hours_against) == (0, 0, 0)


def test_sides_exchanged_give_one_over_the_ratio() -> None:
    cells = random_cells(3)
    found = found_of(cells)
    other = found_of([Cell(c.stratum, c.trip, *four_of(c)[2:], *four_of(c)[:2]) for c in cells])
    assert other.ratio == pytest.approx(1 / found.ratio)
    assert (other.low, other.high) == (pytest.approx(1 / found.high), pytest.approx(1 / found.low))


def test_order_of_cells_and_the_numbers_of_strata_and_trips_do_not_matter() -> None:
    cells = random_cells(8)
    turned = [Cell((7, c.stratum), ("x", c.trip), *four_of(c)) for c in reversed(cells)]
    for name in FIELDS:
        np.testing.assert_allclose(getattr(found_of(turned), name), getattr(found_of(cells), name), rtol=1e-9)


@pytest.mark.parametrize("own", [False, True])
def test_many_tables_at_once_are_each_as_alone(own: bool) -> None:
    rng = np.random.default_rng(5)
    shape = (3, 2, 14)
    efforts = rng.uniform(1, 4, (2, *shape)) * (rng.random((2, *shape)) < 0.7)
    a, b = rng.poisson(efforts)
    strata = rng.integers(0, 3, shape if own else shape[-1:])
    trips = rng.integers(0, 6, shape if own else shape[-1:])
    together = within_strata(a, efforts[0], b, efforts[1], strata, trips)
    for name in FIELDS:
        assert getattr(together, name).shape == shape[:-1]
    for table in np.ndindex(shape[:-1]):
        alone = within_strata(
            a[table],
            efforts[0][table],
            b[table],
            efforts[1][table],
            strata[table] if own else strata,
            trips[table] if own else trips,
        )
        for name in FIELDS:
            np.testing.assert_allclose(getattr(together, name)[table], getattr(alone, name), rtol=1e-10)
