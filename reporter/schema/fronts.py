"""What makes a day post-frontal: points, windows and limits, each once.

No published standard defines a post-frontal day. These limits are a proposal, set once on the published
signs of a cold front (wind turns, pressure rises, air grows cooler and drier): they show no truth about fish.
Differences are in hPa and °C; winds are where they blow from.
"""

from typing import Literal

Verdict = Literal["yes_clear", "yes_weak", "possible", "no", "not_enough_data"]

DayType = Literal[
    "ordinary", "ahead", "passing", "day_1", "day_2", "day_3", "behind_low", "possible", "not_known"
]

Source = Literal["hourly", "daily", "trip", ""]

Remark = Literal["easterly_surge", "recovered", "consistent", ""]
"""easterly_surge: pressure and air as behind a front, with wind from the north-east to east. recovered: the
weather was back, so that the day after day 1 is no day 2. consistent: a single reading of north-west wind
under a clear sky, which is consistent with a front and shows none."""

FLAGGED: tuple[Verdict, ...] = ("yes_clear", "yes_weak")

DAY_TYPES: tuple[DayType, ...] = (
    "ordinary",
    "ahead",
    "passing",
    "day_1",
    "day_2",
    "day_3",
    "behind_low",
    "possible",
    "not_known",
)
"""In the order of the page."""

DAYS: dict[DayType, str] = {
    "ordinary": "ordinary",
    "ahead": "ahead of a front",
    "passing": "front passing",
    "day_1": "day 1 behind a front",
    "day_2": "day 2 behind a front",
    "day_3": "day 3",
    "behind_low": "behind a low",
    "possible": "possible",
    "not_known": "not known",
}
"""In words."""

CALL_DAY_TYPES: dict[str, DayType] = {
    "ahead": "ahead",
    "front today": "passing",
    "day after": "day_1",
    "second day": "day_2",
    "no front": "ordinary",
}
"""The guide's call as a day type; any other call is not_known."""

CALL_YES = ("day after", "second day")
CALL_NO = ("ahead", "no front")

LEGS = ("pressure", "wind", "air", "dew", "sky")
"""The signs that earn points, in the order of the page."""

PRESSURE_RISE_HPA = (3.0, 6.0)
"""Rise that earns one and two points. 12 hours cancel the twice-daily tide of about 1 hPa."""

AIR_FALL_C = (2.5, 5.0)
"""Cooling that earns one and two points, between the same clock hours of two days."""

DEW_FALL_C = (3.0, 7.0)
"""Fall of the dew point that earns one and two points."""

TURN_DEG = (25.0, 45.0)
"""Clockwise turn that earns one and two points; 45 degrees is the wind shift of surface observing rules."""

NORTH_GAIN_MS = 2.0
"""Gain of the northerly component that earns a point where the wind did not back by more than TURN_DEG[0]."""

SECTOR_DEG = (250.0, 45.0)
"""Where the wind comes from behind a cold front, clockwise through north."""

EASTERLY_DEG = (45.0, 110.0)
"""Where the wind comes from in an easterly surge: pressure up and air cooler, but no cold front's wind."""

LIGHT_WIND_MS = 1.5
"""Resultant below which wind has no direction (3 knots)."""

CLOUDY_OKTAS = 5.0
CLEAR_OKTAS = 3.0
"""From at least the first to at most the second earns the sky's one point, a bonus that is never required."""

YES_POINTS = 4
YES_POINTS_ONE_AIR_LEG = 3
CLEAR_POINTS = 6
"""Points of a front, of one where air or dew point is not known, and of a clear one."""

PRESSURE_HOURS = 12
SMOOTHING_HOURS = 3
LONGEST_FILL_HOURS = 3
WIND_BEFORE = (-6, -1)
WIND_AFTER = (2, 9)
AIR_AFTER = (3, 18)
DEW_BEFORE = (-6, -1)
DEW_AFTER = (3, 12)
SKY_BEFORE = (-6, 0)
SKY_AFTER = (6, 18)
"""Windows of the hourly rule in hours from the hour in question, both ends in."""

MIN_WIND_HOURS = 2
MIN_AIR_PAIRS = 8
MIN_DEW_BEFORE = 3
MIN_DEW_AFTER = 5
MIN_SKY_HOURS = 2

PASSAGE_GAP_HOURS = 6
"""Hours of YES no further apart than this are one passage."""

SAME_PASSAGE_HOURS = 18
"""Passages no further apart are one."""

SEARCH_HOURS = 6
"""How far before the first and after the last hour of YES the sharpest hour is looked for."""

LOW_HOURS = 3
LOW_CLEAR_OF_FRONT_HOURS = 36
"""Hours of one run that make a day behind a low, and how far away any passage must be."""

FISHING_DAY = (6, 18)
"""Clock hours of the fishing day, the end left out."""

AHEAD_HOURS = 24
"""A date is ahead of a front where half its fishing day lies within so many hours before the passage."""

UNDECIDED_RUN_HOURS = 4
DECIDING_HOURS = 48
"""A date is NO only where no run of undecided hours this long, in so many hours to 06, could hide a front."""

RECOVERED_SECTOR_DEG = (110.0, 240.0)
RECOVERED_WIND_MS = 2.0
RECOVERED_AIR_C = 1.0
RECOVERED_DEW_C = 3.0
RECOVERED_FALL_HPA = 3.0
RECOVERED_SIGNS = 2
MIN_RECOVERY_HOURS = 4
"""Day 2 is over where two of three signs are back: southerly wind, air and dew point, pressure falling."""

TRIP_HOURS = (12.0, 60.0)
TRIP_MIDDLE_HOURS = 36.0
TRIP_SAME_CLOCK_HOURS = 3.0
"""Earlier readings that a reading is held against, and how near their clock must be for the air."""

AROUND_DAYS = 5
"""Days before and after a log's own dates whose hours can still matter to them."""

HOURLY_STEP_HOURS = 3
HOURLY_ENOUGH = 0.75
"""Share of hours that must lie between observations no further apart than the step: six-hourly or
daylight-only observations do not, and are read day by day instead."""

WATER_DAYS = 3
"""How long ago the last water temperature on the same water may be."""

MIN_KAPPA_DATES = 20
MIN_KAPPA_MARGIN = 5
"""Dates, and dates in every margin, from which kappa is printed."""

TROPICS_DEG = 23.0
"""Nearer to the equator than this the rules were not made for."""
