"""The numbers that decide, in one place, each with its reason."""

MIN_OWN_TRIPS = 5
"""Trips from which a group's range rests on its own spread, and below which nothing reaches a headline.
In simulated seasons the default range keeps its promise from five trips on."""

MIN_SPREAD_DF = 8
"""Degrees of freedom from which the pooled between-trip spread is used; below it the spread is assumed."""

ASSUMED_SPREAD = 0.5
"""Squared coefficient of variation between trips where the record is too small to say (an assumption)."""

LEVEL = 0.95
"""Level of every printed range."""

EFFORT_OVER_NOTE = 1.05
"""Share of the possible rod-hours above which the logged effort is questioned: rounding explains 5 %."""

EFFORT_OVER_ASIDE = 1.5
"""Share above which the logged effort cannot be right: most likely all rods stand on every technique."""

EFFORT_UNDER_NOTE = 0.5
"""Share under which some effort is probably not logged."""

LONGEST_WRAP_HOURS = 12.0
"""An end before the start means past midnight only where that gives a trip of 12 hours or less."""

LONGEST_TRIP_HOURS = 16.0
"""Longer trips need an End date: an end typed on the wrong half of the clock is likelier."""

MOST_TRIP_DAYS = 31
"""Days of one row of Trips beyond which its End date is taken for a slip, and days between rows of one Outing
beyond which it is asked after: an outing lasts days, not months."""

SEA_DAY_HOURS = 4.0
"""Hours under way in a day from which it is a day of sea service on small boats (second-hand: an account of a
renewal; the licensing authority says what it takes)."""

DUD_SHARE = 0.95
"""Share of trip-techniques with fish above which the report asks whether the duds were left out.
At ordinary catch rates one technique in four or more goes without a fish on a trip."""

DUD_MIN_PAIRS = 20
"""Trip-techniques below which the dud check says nothing: a short lucky record looks the same."""

ERROR_CELL_STOP_SHARE = 0.05
"""Share of error cells in a date or trip column above which the column is broken, not a cell."""

HALF_DAY_HOURS = 4.0
HALF_DAY_RODS = 2
"""The half day of the plain words on At a glance: two anglers, four hours."""

DUPLICATE_BLOCK_ROWS = 3
"""Catch rows in a row that, repeated in order, look like a block pasted twice."""

NEAR_NAME_SCORE = 80
"""Similarity (0-100) from which a known name is offered as what may have been meant; never applied."""

MIN_SHRUNKEN_TECHNIQUES = 3
"""Techniques with effort from which rates are drawn towards their common one: two rates cannot tell how much
techniques differ from how much luck does."""

CLEAR_LEADER = 0.90
"""Chance of being the best from which a technique is a clear leader. In simulated seasons of
four techniques such claims were right nine times in ten, and made in 2 % of seasons where all were equal."""

AHEAD = 0.50
"""Chance above which a technique is ahead: likelier to be the best than all others together."""

CONTENDER = 0.05
"""Chance from which a technique may still be the best: below it the record speaks against it 19 to 1."""

MIN_SHARED_TRIPS = 5
"""Trips with both techniques from which a pair is compared: with fewer, the range within trips holds its
promise only by being endless, and one odd day decides."""

MIN_SHARED_FISH = 5
"""Fish on each technique, on those trips, from which a pair is compared: with fewer, one fish more or less
moves the ratio by a quarter or over."""

MIN_OVERLAP_SHARE = 0.5
"""Share of a pair's rod-hours in conditions where both were fished, below which no ratio is given: it would
speak for the smaller part of the record."""

DISAGREEMENT = 1.25
"""Times by which the two fair comparisons may differ before they are said to disagree. Switching when it
goes slow makes the fallback look 20 to 30 % better within trips than it is; a wider gap is no rounding."""

SAME_WINDOW_MIN = 15.0
"""Minutes by which the starts and ends of two stints may differ and still be one window."""

READING_HOURS = 3.0
"""Hours from a stint's midpoint within which a reading speaks for it; further off the trip's mean does."""

HEAT_STEPS = (0.5, 0.8, 1.25, 2.0)
"""Times the season's own rate at which the shade of a cell of Conditions deepens: a quarter either way is
noise in any guide's record, half and double are seen on the water."""

MIN_PICK_HOURS = 20.0
"""Rod-hours that must fit before What worked stops letting choices go: at usual rates some ten fish, of
which chance alone moves a rate by a third."""

MIN_BEST_HOURS = 8.0
"""Rod-hours, a half day for two anglers, from which a cover, depth, variant or retrieve may be called the one
that did best."""

GOOD_RECORD_TRIPS = 10
"""Trips from which the record behind a technique is called good; under MIN_OWN_TRIPS it is thin."""

MIN_MEASURED_SHARE = 0.7
"""Share of the fish in question that must be measured before their lengths are compared: big ones are
measured first."""

MIN_STOCK_FISH = 20
"""Measured fish of stock length from which a PSD is given: below it one fish more moves it by five points."""

FEW_STOCK_FISH = 100
"""Stock-length fish below which a PSD is called rough: even without bunches its range is 20 points wide."""

MIN_WEIGHED_FISH = 5
"""Weighed fish of a length class from which their mean relative weight is given: fewer are single fish."""

MIN_FREQUENCY_FISH = 20
MAIN_SPECIES = 3
"""Measured fish from which a species has a chart of its lengths (fewer leave most lengths with one or none),
and how many species have one at most: those measured most, so that the page stays short."""

BEST_FISH = 10
"""How many of the season's best fish are listed."""

BIG_FISH_HOURS = 10.0
"""Rod-hours for which big fish are given: in one there is hardly ever one."""

SETTLE_SEASONS = 10
"""Seasons beyond which the record that would settle a hunch is not counted any more."""

TURNED_DATES_FROM = 5
"""True dates of a column that must all have days up to 12, beside texts with the day first, before day and
month are said to be exchanged in them: five fall so by chance in less than one log of a hundred."""

OUNCES_POINTS_FROM = 3
OUNCES_POINTS_SHARE = 0.5
"""Weights with .10 to .15, and their share of those with two decimals, from which they look like pounds and
ounces: hundredths of a pound fall there one time in eighteen, so half of three or more by chance in less than
one log of three hundred."""

MIN_CHART_TECHNIQUES = 3
"""Techniques with trips enough that say from which hang-ups per rod-hour are charted: two numbers are read
faster than two bars."""

MOST_PAPERWORK_ROWS = 50_000
"""Rows behind the counts of Paperwork beyond which these stand as plain numbers. A paper has a row for every
trip that needs it: a thousand papers over a thousand trips would be as many rows as a sheet has. A season has
some hundreds."""
