"""What is tied on, for how long, and at which true rate; arrays are shaped (techniques, trips)."""

import numpy as np
from numpy.random import RandomState

from tests.demo import truth
from tests.demo.outings import CLOCK, PARTS, BoolArray, FloatArray, IntArray, Trips

MOVING = np.array([technique.style == "moving" for technique in truth.TECHNIQUES])


def pick(rng: RandomState, trips: Trips) -> BoolArray:
    count = len(trips.day)
    numbers, chances = zip(*truth.TECHNIQUES_A_TRIP.items(), strict=True)
    how_many = rng.choice(numbers, size=count, p=chances)
    share = np.where(trips.post_frontal, truth.MOVING_SHARE["post-frontal"], truth.MOVING_SHARE["ordinary"])
    moving = rng.binomial(how_many, share)
    weights = _weights(trips)
    # The smallest of exponential waiting times: drawing without replacement with these weights.
    with np.errstate(divide="ignore"):
        waits = rng.exponential(1.0, weights.shape) / weights
    picked = np.zeros(weights.shape, dtype=bool)
    for style, wanted in ((MOVING, moving), (~MOVING, how_many - moving)):
        ranks = np.argsort(np.argsort(waits[style], axis=0), axis=0)
        picked[style] = (ranks < wanted) & (weights[style] > 0)
    return picked


def _weights(trips: Trips) -> FloatArray:
    table = np.array([(*technique.weights, technique.weights[-1]) for technique in truth.TECHNIQUES])
    windows = np.array([technique.window for technique in truth.TECHNIQUES])
    tied_on = (trips.water_f >= windows[:, :1]) & (trips.water_f < windows[:, 1:])
    return np.where(tied_on, table[:, trips.clarity], 0.0)


def parts_of(rng: RandomState, shares: FloatArray, trips: Trips) -> IntArray:
    """A mark an angler a half hour, some forgotten."""
    marks = shares * 2.0 * trips.hours * trips.rods * rng.uniform(0.85, 1.0, len(trips.day))
    parts = np.where(shares > 0, np.maximum(np.rint(marks), 1.0), 0.0)
    return np.where(trips.timing == PARTS, parts, 0.0).astype(np.int64)


def times_of(rng: RandomState, shares: FloatArray, trips: Trips) -> tuple[IntArray, IntArray, IntArray]:
    """Minutes, anglers on it, and the lane of each technique on trips timed by minutes or by the clock."""
    noted = rng.uniform(0.88, 0.98, len(trips.day))
    rod_minutes = shares * trips.rods * trips.hours * 60.0 * noted
    loose_rods = np.where(rod_minutes > 0.85 * trips.hours * 60.0, np.minimum(trips.rods, 2), 1)

    order = np.cumsum(shares > 0, axis=0) - 1
    lane = np.where(trips.rods > 1, order % 2, 0)
    lane_rods = np.where(lane == 0, np.maximum(trips.rods // 2, 1), trips.rods - trips.rods // 2)
    in_lane = np.where(lane == 0, (shares * (lane == 0)).sum(axis=0), (shares * (lane == 1)).sum(axis=0))
    lane_minutes = shares / np.where(in_lane > 0, in_lane, 1.0) * trips.hours * 60.0

    clock = trips.timing == CLOCK
    rods = np.where(clock, lane_rods, loose_rods)
    minutes = np.where(clock, lane_minutes, np.rint(rod_minutes / loose_rods / 5.0) * 5.0)
    minutes = np.where(clock, np.floor(minutes / 5.0) * 5.0, minutes)
    written = (shares > 0) & (trips.timing != PARTS)
    return (
        np.where(written, minutes, 0.0).astype(np.int64),
        np.where(written, rods, 0).astype(np.int64),
        lane.astype(np.int64),
    )


def true_rates_of(trips: Trips) -> FloatArray:
    base = np.array([technique.rate for technique in truth.TECHNIQUES])[:, None]
    band = np.searchsorted(truth.BAND_EDGES_F, trips.water_f, side="right")
    by_style = {
        style: np.where(trips.post_frontal, truth.POST_FRONTAL_EFFECT[style], 1.0)
        * np.array(truth.BAND_EFFECT[style])[band]
        for style in truth.STYLES
    }
    style_effect = np.stack([by_style[technique.style] for technique in truth.TECHNIQUES])
    return np.asarray(base * style_effect * np.array(truth.WATER_EFFECT)[trips.water])
