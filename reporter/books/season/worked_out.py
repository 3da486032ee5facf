"""How it is worked out: definitions, formulas, sources, thresholds, where every row and fish went."""

from collections.abc import Sequence

import numpy as np

from reporter import __version__
from reporter.books.blocks import Block, Cell, Field, Figure, Figures, Line, Live, Sheet, Table, Text
from reporter.books.season.glance_figures import record_figures
from reporter.books.season.worked_out_fish import SIZE_LINES_NOTE, SIZES, size_lines
from reporter.books.season.worked_out_formulas import DEFINITIONS, FORMULAS
from reporter.books.season.worked_out_fronts import fingerprints, front_tables
from reporter.books.season.worked_out_tackle import TACKLE
from reporter.books.season.worked_out_what_pays import what_pays
from reporter.books.season.worked_through import NAME as WORKED_THROUGH
from reporter.books.words import share
from reporter.compute.catch import REASONS
from reporter.compute.limits import garwood
from reporter.compute.report import Report
from reporter.compute.season import Season
from reporter.schema import thresholds
from reporter.schema.log import SCHEMA_VERSION


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
                Line(
                    "A rate with its range, and a comparison, step by step on your rows",
                    "body",
                    WORKED_THROUGH,
                ),
            )
        ),
        *_together(report),
        _table("words", "What the words mean", _WORDS, DEFINITIONS),
        _table(
            "formulas",
            "Formulas and their sources",
            (("what", "What", 24), ("how", "How", 60), ("source", "Source", 46)),
            _formulas(report),
        ),
        _table(
            "size_line",
            "Length categories and standard weights",
            (("species", "Species", 24), ("figures", "Figures", 60), ("paper", "Standard weight by", 46)),
            size_lines(report.season.system),
            SIZE_LINES_NOTE,
        ),
        *front_tables(report),
        record_figures(report),
        _rows(report),
        _fish(report),
        _in_force(report),
        _thresholds(),
        _origin(report),
    )
    return Sheet("How it is worked out", blocks, group="behind", landscape=True)


_WORDS = (("word", "Word", 24), ("means", "Means", 60))


def _together(report: Report) -> tuple[Table, ...]:
    """Return by which rules several logs were put together."""
    if not report.season.several:
        return ()
    from reporter.books.season.worked_out_seasons import TOGETHER

    return (_table("together", "How the logs were put together", _WORDS, TOGETHER),)


def _formulas(report: Report) -> tuple[tuple[str, str, str], ...]:
    rest = (*what_pays(report.season.system), *SIZES, *TACKLE)
    if not report.season.several:
        return *FORMULAS, *rest
    from reporter.books.season.worked_out_seasons import SEASON_FORMULAS

    return *FORMULAS, *SEASON_FORMULAS, *rest


def _table(
    key: str,
    title: str,
    columns: tuple[tuple[str, str, int], ...],
    rows: Sequence[tuple[str, ...]],
    note: str = "",
) -> Table:
    fields = tuple(Field(name, heading, "wrapped", width) for name, heading, width in columns)
    cells = {name: [row[index] for row in rows] for index, (name, _, _) in enumerate(columns)}
    return Table(key, fields, cells, title=title, note=note)


def _rows(report: Report) -> Table:
    """Return where every row of the log went."""
    season = report.season
    counts = [(one.name, *found) for one in season.each for found in one.counts.items()]
    keys = ("read", "used", "set_aside", "blank", "not_rows")
    headings = ("Read", "Used", "Set aside", "Blank", "Not rows")
    columns: dict[str, Sequence[Cell]] = {"sheet": [sheet for _, sheet, _ in counts]}
    if season.several:
        columns["log"] = [name for name, _, _ in counts]
    for key in keys:
        columns[key] = [getattr(count, key) for _, _, count in counts]
    of_log = (Field("log", "Log"),) if season.several else ()
    return Table(
        "row_count",
        (
            *of_log,
            Field("sheet", "Sheet"),
            *(Field(k, h, "whole") for k, h in zip(keys, headings, strict=True)),
        ),
        columns,
        title="Where every row went",
        note="Read = used + set aside + blank + not rows (totals lines, further headings).",
    )


def _fish(report: Report) -> Table:
    """Return where every fish went."""
    season = report.season
    went = season.identity
    by_reason = dict(zip(went["reason"], went["fish"], strict=True))
    fish = {reason: by_reason.get(reason, 0.0) for reason in ("", *REASONS)}
    shown = [reason for reason, count in fish.items() if count or not reason]
    return Table(
        "fish_count",
        (Field("where", "Where", "wrapped", 24), Field("fish", "Fish", "whole")),
        {
            "where": [REASONS.get(reason, "in the rates") for reason in shown],
            "fish": [Live(_went(reason), fish[reason]) for reason in shown],
        },
        title="Where every fish went",
        note=(
            f"{season.fish['fish'].sum():,.0f} on rows of Catch + {season.surplus:,.0f} tallied beyond "
            f"them = "
            f"{sum(fish.values()):,.0f}, all of them above."
        ),
    )


def _went(reason: str) -> str:
    """Return the formula of the fish that are outside the rates for a reason, or in them."""
    if reason == "not_counted":
        return "SUMIFS({fish.fish},{fish.counted},0)"
    if not reason:
        return "SUMIFS({pair.landed},{pair.in_rates},1)"
    return f'SUMIFS({{pair.landed}},{{pair.in_rates}},0,{{pair.why}},"{REASONS[reason]}")'


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
            f"{share(thresholds.EFFORT_OVER_NOTE, 1)} of the possible rod-hours",
            "Above it the effort of a trip is questioned.",
        ),
        (f"{share(thresholds.EFFORT_OVER_ASIDE, 1)} of them", "Above it the trip's stints are set aside."),
        (f"{share(thresholds.EFFORT_UNDER_NOTE, 1)} of them", "Below it I ask whether effort was left out."),
        (
            f"{thresholds.LONGEST_WRAP_HOURS:g} hours",
            "An end before the start is the next morning if the trip is no longer.",
        ),
        (f"{thresholds.LONGEST_TRIP_HOURS:g} hours", "A longer trip needs an End date."),
        (
            f"{share(thresholds.DUD_SHARE, 1)} with fish",
            "Above it I ask whether techniques without a fish were left out.",
        ),
    )
    return _table(
        "limits", "Thresholds in force", (("limit", "Limit", 46), ("effect", "What it does", 60)), rows
    )


def _origin(report: Report) -> Text:
    season = report.season
    return Text(
        (
            Line("Made from", "heading"),
            *(line for one in season.each for line in _log(one)),
            *fingerprints(report),
            Line(f"reporter {__version__}, season log schema {SCHEMA_VERSION}"),
        )
    )


def _log(season: Season) -> list[Line]:
    layout = [Line(f"Read through its layout: {season.layout_file}")] if season.layout_file else []
    return [Line(f"Log: {season.name}"), Line(f"SHA-256 of the log: {season.sha256}"), *layout]
