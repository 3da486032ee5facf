"""How it is worked out: definitions, formulas, sources, thresholds, where every row and fish went."""

from collections.abc import Sequence

import numpy as np

from reporter import __version__
from reporter.books.blocks import Block, Cell, Field, Figure, Figures, Line, Sheet, Table, Text
from reporter.books.season.worked_out_fronts import fingerprints, front_tables
from reporter.compute.catch import REASONS
from reporter.compute.limits import garwood
from reporter.compute.report import Report
from reporter.schema import thresholds
from reporter.schema.log import BY_KEY, SCHEMA_VERSION

_DEFINITIONS: tuple[tuple[str, str], ...] = (
    ("Trip", "One guide's day on one water: one row of Trips. A night trip belongs to its first day."),
    ("Stint", "Part of a trip fished with one technique by so many rods: one row of Effort."),
    (
        "Rod-hours",
        "Minutes / 60 x rods on that technique. With Parts: its parts / all parts of the trip x hours "
        "fished x rods in the water (anglers, and you if you fished, x rods per angler).",
    ),
    ("Hours fished", "Lines in to lines out, less hours off."),
    (
        "Landed",
        "Kept + released + fate not known, of the species counted. Of a tally (Landed) and the rows of Catch "
        "the larger counts, for each technique on each trip. A fish lost at the boat is a missed bite.",
    ),
    (
        "In the rates",
        "A technique on a trip counts where all its stints have usable effort and the trip's log is "
        "finished; otherwise it leaves every rate with all its fish. Trips cut short stay in. A technique "
        "with "
        "effort and no fish counts as 0.",
    ),
)

_FORMULAS: tuple[tuple[str, str, str], ...] = (
    (
        "Fish per rod-hour",
        "all fish landed / all rod-hours, over the trips (ratio of means); never the mean of the "
        "trips' rates",
        "Published: catch per unit of effort of completed trips, NRC 2006, Review of Recreational "
        "Fisheries Survey Methods, ch. 3; N. Am. J. Fish. Manage. 2015, doi 10.1080/02755947.2014.996689. "
        "From memory: Cochran 1977, Sampling Techniques, ch. 6.",
    ),
    (
        "Kept, released per rod-hour",
        "kept (released) fish over the same rod-hours; with fate not known they add up to fish per rod-hour",
        "Published: NRC 2006, ch. 3.",
    ),
    (
        "Variance of a rate",
        "n / (n - 1) x sum of (catch - rate x effort)^2 over trips / (all effort)^2: trips, not "
        "stints, are the units",
        "From memory: Cochran 1977, section 2.11 and ch. 6.",
    ),
    (
        "The range your record supports (95 %)",
        "variance v = the larger of the variance x (t / 1.96)^2 and that of fish "
        "coming one by one; y* = rate^2 / v fish that would vary as much; from rate / y* x gamma quantile "
        ".025 of "
        "shape y*, to rate / y* x gamma quantile .975 of shape y* + 1",
        "Published: Fay and Feuer 1997, Stat. Med. "
        "16:791-801 (gamma limits), Garwood 1936, Biometrika 28:437-442 (the case y* = y). From memory: "
        "Korn and "
        "Graubard 1998, Survey Methodology 24 (allowance for few trips). Putting them together is ours; "
        "simulated "
        "seasons keep its promise in 94 of 100 or better from five trips on.",
    ),
    (
        "With one to four trips",
        "v = (rate x effort + kappa x rate^2 x sum of effort^2) / effort^2, widened by "
        "(t / 1.96)^2 where kappa is your own",
        "Ours, tested by simulation.",
    ),
    (
        "kappa, the spread between trips",
        "pooled once over your techniques: max(0, (sum of n / (n - 1) x (catch - "
        "expected)^2 - expected) / sum of expected^2)",
        "Method of moments; no further source.",
    ),
    (
        "None caught",
        "0 to U, where the sum over trips of ln(1 + kappa x U x effort) / kappa = 3.689",
        "Elementary: the negative binomial's chance of nothing at all.",
    ),
    (
        "Half day",
        "rate of each trip x 2 rods x 4 hours; the middle half of them",
        "Quartiles of your own trips; ours.",
    ),
)


def worked_out(report: Report) -> Sheet:
    """Return the sheet How it is worked out."""
    blocks: tuple[Block, ...] = (
        Text(
            (
                Line("How it is worked out", "title"),
                Line(
                    "Every number on the other sheets, with its formula and where the formula comes from.",
                    "lead",
                ),
                Line(
                    "What was caught is known exactly. A range says what rate to expect on more trips "
                    "like these."
                ),
            )
        ),
        _table("words", "What the words mean", (("word", "Word", 24), ("means", "Means", 100)), _DEFINITIONS),
        _table(
            "formulas",
            "Formulas and their sources",
            (("what", "What", 24), ("how", "How", 64), ("source", "Source", 52)),
            _FORMULAS,
        ),
        *front_tables(report),
        _rows(report),
        _fish(report),
        _in_force(report),
        _thresholds(),
        _origin(report),
    )
    return Sheet("How it is worked out", blocks, group="behind", landscape=True)


def _table(
    key: str, title: str, columns: tuple[tuple[str, str, int], ...], rows: Sequence[tuple[str, ...]]
) -> Table:
    fields = tuple(Field(name, heading, "wrapped", width) for name, heading, width in columns)
    cells = {name: [row[index] for row in rows] for index, (name, _, _) in enumerate(columns)}
    return Table(key, fields, cells, title=title)


def _rows(report: Report) -> Table:
    """Return where every row of the log went."""
    counts = report.season.counts
    keys = ("read", "used", "set_aside", "blank", "not_rows")
    headings = ("Read", "Used", "Set aside", "Blank", "Not rows")
    columns: dict[str, Sequence[Cell]] = {"sheet": [BY_KEY[key].name for key in counts]}
    for key in keys:
        columns[key] = [getattr(count, key) for count in counts.values()]
    return Table(
        "row_count",
        (Field("sheet", "Sheet"), *(Field(k, h, "whole") for k, h in zip(keys, headings, strict=True))),
        columns,
        title="Where every row went",
        note="Read = used + set aside + blank + not rows (totals lines, further headings).",
    )


def _fish(report: Report) -> Table:
    """Return where every fish went."""
    season = report.season
    went = season.identity
    words = ["in the rates", *REASONS.values()]
    by_reason = dict(zip(went["reason"], went["fish"], strict=True))
    fish = [by_reason.get("", 0.0), *(by_reason.get(reason, 0.0) for reason in REASONS)]
    shown = [
        (word, count)
        for index, (word, count) in enumerate(zip(words, fish, strict=True))
        if count or not index
    ]
    return Table(
        "fish_count",
        (Field("where", "Where", width=60), Field("fish", "Fish", "whole")),
        {"where": [word for word, _ in shown], "fish": [count for _, count in shown]},
        title="Where every fish went",
        note=(
            f"{season.fish['fish'].sum():,.0f} on rows of Catch + {season.surplus:,.0f} tallied beyond "
            f"them = "
            f"{sum(fish):,.0f}, all of them above."
        ),
    )


def _in_force(report: Report) -> Figures:
    spread = report.season.spread
    borrowed = bool(np.asarray(spread.borrowed).item())
    used = float(np.asarray(spread.kappa_used).item())
    remark = "pooled over your techniques" if borrowed else "assumed: too few trips to say"
    return Figures(
        "spread",
        (
            Figure("kappa", "kappa, the spread between trips", used, "three", remark),
            Figure("df", "Degrees of freedom behind it", int(np.asarray(spread.df).item()), "whole"),
            Figure(
                "phi", "Index of dispersion", report.phi, "two", "1: fish come one by one; above: in bunches"
            ),
            Figure("one_by_one", "The season's range, if they came one by one", _one_by_one(report)),
        ),
        title="This season's spread between trips",
    )


def _one_by_one(report: Report) -> str:
    """Return the exact Poisson limits of the season's rate, for comparison with the range that is used."""
    whole = report.whole.iloc[0]
    if not whole["rod_hours"] > 0:
        return ""
    low, high = (limits.item() / whole["rod_hours"] for limits in garwood(whole["fish"]))
    return f"{low:.2f} to {high:.2f}"


def _thresholds() -> Table:
    rows = (
        (
            f"{thresholds.MIN_OWN_TRIPS} trips",
            "From here a range rests on the group's own trips; below it is grey.",
        ),
        (
            f"{thresholds.MIN_SPREAD_DF} degrees of freedom",
            f"Below it kappa is assumed to be {thresholds.ASSUMED_SPREAD}.",
        ),
        (
            f"{thresholds.EFFORT_OVER_NOTE:.0%} of the possible rod-hours",
            "Above it the effort of a trip is questioned.",
        ),
        (f"{thresholds.EFFORT_OVER_ASIDE:.0%} of them", "Above it the trip's stints are set aside."),
        (f"{thresholds.EFFORT_UNDER_NOTE:.0%} of them", "Below it I ask whether effort was left out."),
        (
            f"{thresholds.LONGEST_WRAP_HOURS:g} hours",
            "An end before the start is the next morning if the trip is no longer.",
        ),
        (f"{thresholds.LONGEST_TRIP_HOURS:g} hours", "A longer trip needs an End date."),
        (
            f"{thresholds.DUD_SHARE:.0%} with fish",
            "Above it I ask whether techniques without a fish were left out.",
        ),
    )
    return _table(
        "limits", "Thresholds in force", (("limit", "Limit", 40), ("effect", "What it does", 80)), rows
    )


def _origin(report: Report) -> Text:
    season = report.season
    return Text(
        (
            Line("Made from", "heading"),
            Line(f"Log: {season.name}"),
            Line(f"SHA-256 of the log: {season.sha256}"),
            *fingerprints(report),
            Line(f"reporter {__version__}, season log schema {SCHEMA_VERSION}"),
        )
    )
