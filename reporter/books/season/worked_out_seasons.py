"""How it is worked out: several logs put together, and season against season."""

TOGETHER: tuple[tuple[str, str], ...] = (
    (
        "Season",
        "One log. It is called by the years of its trips; by its file, where another log has trips of the "
        "same year.",
    ),
    (
        "Each log",
        "is read, checked and worked out by itself, with its own units, settings and weather: its rods, the "
        "fate of a blank, which of its days lay behind a front. Rows to fix says which log a row is of.",
    ),
    ("Units", "Everything is shown in the units of the last season. Hours of a front by its Time zone."),
    (
        "Names",
        "Techniques and waters are one where names differ in case, spaces, hyphens and punctuation alone, or "
        "where a log has one of them under Also called; they are spelled as the last log does. Two names of "
        "one log stay two. A style is the last one given. A client's code is a client's in its own log only.",
    ),
    ("Big fish", "Those of the length that the last season sets, in every season."),
    ("Hunches", "Those of the last season, held against the record of all."),
    (
        "Paperwork, keep rules",
        "Those of the last season, for its trips alone: papers and rules are of their year.",
    ),
    (
        "What cannot be put together",
        "logs of two guides, logs that count different species, and logs that hold the same trip: they are "
        "refused.",
    ),
)

SEASON_FORMULAS: tuple[tuple[str, str, str], ...] = (
    (
        "Season against season",
        "Mantel-Haenszel as in Side by side, the two sides being a season and the one before it. Strata: the "
        "same technique on the same kind of day; the same technique in the same month of the year. Trips, "
        "which reach over strata, are the units of the error; t on the trips of the season with fewer - 1",
        "As Side by side; Taylor linearisation over trips, ours, tested by simulation.",
    ),
    (
        "More or fewer in a season",
        "only where both ranges lie on the same side of 1, each at 1 - .05 / comparisons (Bonferroni); from "
        "5 trips and 5 fish in each season, and half of the rod-hours of both in strata that both have, "
        "either way",
        "Ours: in simulated seasons without a difference said in at most 5 of 100. It is about rates, never "
        "about how many fish there are.",
    ),
    (
        "Strata over several seasons",
        "in Side by side and hunches over different days a kind of day is one of its own in each season; the "
        "errors then are those of trips of one season. As if fished on the same mix of days: the same",
        "Ours: what changed between seasons is not taken for a technique's doing.",
    ),
    (
        "Ranges over several seasons",
        "kappa is the spread between trips of one season. The range of a rate over several seasons rests on "
        "how all of its trips differ, whichever season they are of: that takes in how seasons differ, and so "
        "is the wider one. Days 1 and 2 against ordinary are added up over seasons",
        "Ours.",
    ),
)
