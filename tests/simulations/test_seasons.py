"""How often one season is said to have given more than the one before, over simulated pairs of seasons.

A season has 25 to 45 trips from April to October. A trip lies behind a front or not, in water that is colder
or warmer with the month; both change what bites, and so does the month by itself. Every day has a rate of its
own beside that (gamma, coefficient of variation .6), shared by all techniques of the trip. Two or three of
four techniques are fished on a trip for 1 to 5 rod-hours each, more often the slow ones behind a front. The
second season has more trips in spring and more behind a front than the first, so that the plain rates differ
though nothing else does.
"""

from functools import cache

import numpy as np
import pandas as pd

from reporter.compute.claims import claim_of_seasons
from reporter.compute.ratio import FloatArray
from reporter.compute.season_ratios import METHODS, season_ratio

PAIRS = 1000
SEED = 20_250
TRIPS = (25, 45)
MONTHS = np.arange(4, 11)
MONTH_CHANCES = (np.array([1, 1, 1, 1, 1, 1, 1]) / 7, np.array([3, 3, 2, 1, 1, 1, 1]) / 12)
MONTH_RATES = np.array([0.7, 1.0, 1.2, 1.0, 0.9, 1.0, 0.8])
FRONT_CHANCE = (0.25, 0.5)
FRONT_RATES = np.array([1.0, 0.4])
RATES = np.array([0.9, 0.7, 0.6, 0.5])
PICKED = np.array([[0.8, 0.7, 0.5, 0.4], [0.4, 0.4, 0.8, 0.7]])
"""Chance that a technique is tied on: on a day without a front, behind one."""
DAY_CV = 0.6
HOURS = (1.0, 5.0)


def test_seasons_without_a_difference_are_said_to_differ_in_at_most_5_of_100() -> None:
    said = np.array([claims for claims, _ in _simulated(1.0)])
    assert np.isin(said, ("this", "against", "disagree", "cannot_tell")).mean() > 0.9
    assert np.isin(said, ("this", "against")).mean() <= 0.05


def test_plain_rates_of_the_same_seasons_would_lead_astray() -> None:
    crude = np.array([ratio for _, ratio in _simulated(1.0)])
    assert np.median(crude) < 0.85


def test_season_with_twice_the_rate_is_mostly_said_to_have_given_more() -> None:
    said = np.array([claims for claims, _ in _simulated(2.0)])
    assert (said == "this").mean() >= 0.55
    assert (said == "against").sum() == 0


@cache
def _simulated(times: float) -> list[tuple[str, float]]:
    """The claim of each pair of seasons, and the ratio of their plain rates; times: the true ratio."""
    rng = np.random.default_rng([SEED, int(times)])
    return [_claim(pd.concat([_season(rng, 0, 1.0), _season(rng, 1, times)])) for _ in range(PAIRS)]


def _claim(cells: pd.DataFrame) -> tuple[str, float]:
    said = claim_of_seasons(*(season_ratio(cells, 1, method) for method in METHODS))
    sums = cells.groupby("log")[["landed", "rod_hours"]].sum()
    rates: FloatArray = (sums["landed"] / sums["rod_hours"]).to_numpy()
    return str(said), float(rates[1] / rates[0])


def _season(rng: np.random.Generator, log: int, times: float) -> pd.DataFrame:
    """The cells of a season: see `reporter.compute.season_ratios.season_cells`."""
    trips, techniques = int(rng.integers(*TRIPS, endpoint=True)), len(RATES)
    month = rng.choice(len(MONTHS), trips, p=MONTH_CHANCES[log])
    front = (rng.random(trips) < FRONT_CHANCE[log]).astype(int)
    warm = (rng.random(trips) < np.minimum(month / 4, 0.9)).astype(int)
    day = rng.gamma(DAY_CV**-2, DAY_CV**2, trips) * MONTH_RATES[month] * FRONT_RATES[front]
    fished = rng.random((trips, techniques)) < PICKED[front]
    hours = np.where(fished, rng.uniform(*HOURS, fished.shape), 0.0)
    fish = rng.poisson(day[:, None] * RATES * hours * times)
    trip, technique = np.nonzero(fished)
    return pd.DataFrame(
        {
            "log": log,
            "trip_no": 1000 * log + trip,
            "landed": fish[trip, technique],
            "rod_hours": hours[trip, technique],
            "same_condition": technique * 10 + 2 * front[trip] + warm[trip],
            "same_month": technique * 10 + month[trip],
        }
    )
