"""The figures on At a glance, and how much of the log stands behind them."""

from typing import Any

import numpy as np
import pandas as pd

from reporter.books.blocks import Figure, Figures, Live, Look
from reporter.books.season.front_days import MEND
from reporter.books.words import RESTS_ON, counted, number
from reporter.compute.fronts.rates import DAY_GROUPS
from reporter.compute.glance import every_client_caught, fish_a_client
from reporter.compute.records import records
from reporter.compute.report import Report
from reporter.schema.species import BY_CODE

_WHERE = "of another species, or without usable effort"
_OUTSIDE = "SUMIFS({pair.landed},{pair.in_rates},0)+SUMIFS({fish.fish},{fish.counted},0)"
_ALL_HOURS = "SUMIFS({pair.rod_hours},{pair.in_rates},1)"
_PARTS_HOURS = "SUMIFS({pair.parts_hours},{pair.in_rates},1)"
EVERY_CLIENT = (
    'COUNTIFS({trip.every_client},"yes")&" of "'
    '&COUNTIFS({trip.every_client},"yes")+COUNTIFS({trip.every_client},"no")'
)
_GUIDED = 'SUMPRODUCT(({trip.rated}=1)*({trip.kind}="guided"))'


def season_figures(report: Report) -> Figures:
    """Return the season in five figures, live."""
    whole = records(report.whole)[0]
    return Figures(
        "season",
        (
            _sum("trips", "Trips in the rates", "new_trip", whole, "whole", sheet="Trips"),
            _sum("boat_hours", "Hours fished", "trip_hours", whole, "one", flag="new_trip", sheet="Trips"),
            _sum(
                "rod_hours",
                "Rod-hours",
                "rod_hours",
                whole,
                "one",
                remark="rods on it x hours",
                sheet="Trip techniques",
            ),
            _sum(
                "fish",
                "Landed",
                "landed",
                whole,
                "whole",
                remark=_what_counts(report),
                sheet="Trip techniques",
            ),
            _rate(whole),
        ),
        large=True,
    )


def _sum(
    key: str,
    label: str,
    source: str,
    whole: dict[str, Any],
    look: Look,
    flag: str = "in_rates",
    remark: str = "",
    sheet: str = "",
) -> Figure:
    live = Live(f"SUMIFS({{pair.{source}}},{{pair.{flag}}},1)", float(whole[key]))
    return Figure(key, label, live, look, remark, sheet)


def _rate(whole: dict[str, Any]) -> Figure:
    rate = float(whole["fish_per_rod_hour"])
    known = bool(np.isfinite(rate))
    remark = (
        f"your record supports {whole['low']:.2f} to {whole['high']:.2f} ({RESTS_ON[whole['interval_rule']]})"
        if known
        else ""
    )
    formula = 'IF({season.rod_hours}>0,{season.fish}/{season.rod_hours},"")'
    live = Live(formula, rate if known else "")
    return Figure("rate", "Fish per rod-hour", live, "two", remark, "Trip techniques")


def _what_counts(report: Report) -> str:
    counted_codes = report.season.settings["species_counted"]
    if not counted_codes:
        return "every species"
    names = [BY_CODE[code].name for code in counted_codes]
    return "black bass of every kind" if len(names) > 4 else ", ".join(names)


def business_figures(report: Report) -> Figures:
    """Return a guide's business in a few lines: who caught, blanks, what a client catches, big fish."""
    trips = report.season.trips
    rated = trips[trips["in_rates"]]
    told = every_client_caught(trips, report.season.fish)
    not_finished = int((trips["fished"] & ~trips["in_rates"]).sum())
    of_finished = f"of {counted(len(rated), 'finished trip')}"
    items = [
        Figure(
            "guided",
            "Guided trips",
            Live(_GUIDED, int((rated["kind"] == "guided").sum())),
            "whole",
            of_finished,
            "Trips",
        ),
        Figure(
            "every_client",
            "Every named client caught one",
            Live(EVERY_CLIENT, f"{told.sum():.0f} of {len(told)}") if len(told) else "not known",
            remark="guided trips on which your log can tell",
        ),
        Figure(
            "blank",
            "Blank trips",
            Live("COUNTIFS({trip.rated},1,{trip.landed},0)", int((rated["fish"] == 0).sum())),
            "whole",
            of_finished,
        ),
        _each_client(report),
        *_big_fish(report),
    ]
    if not_finished:
        label = "Trips whose log is not finished"
        live = Live("COUNTIFS({trip.rated},0)", not_finished)
        items.append(Figure("not_finished", label, live, "whole", "in no rate"))
    return Figures("business", tuple(items), title="Your days")


def _each_client(report: Report) -> Figure:
    middle = fish_a_client(report.season.trips)
    low, high = (number(value, 1) for value in middle) if middle else ("", "")
    said = f"{low} to {high}" if middle else "not known"
    return Figure(
        "each_client", "Fish for each client on a trip", said, remark="the middle half of guided trips"
    )


def _big_fish(report: Report) -> list[Figure]:
    """Return on how many trips a big fish was landed, where Season says what one is."""
    season = report.season
    if season.settings["big_fish_mm"] is None:
        return []
    rated = season.pairs[season.pairs["in_rates"]]
    trips = int(rated.loc[rated["big"] > 0, "trip_no"].nunique())
    of_all = f"of {counted(rated['trip_no'].nunique(), 'trip')} in the rates"
    live = Live('COUNTIFS({trip.big},">0")', trips)
    return [Figure("big", "Trips with a big fish", live, "whole", of_all, "Fish")]


def _unknown_days(rated: pd.DataFrame) -> Figure:
    """Return how much effort lies on days of which nobody can say what they were, and what would tell."""
    unknown = rated["rod_hours"].where(rated["day_type"] == "not_known", 0.0)
    mend = f"; {MEND} would tell" if unknown.sum() else ""
    those = (
        f"SUMIFS({{pair.rod_hours}},{{pair.in_rates}},1,{{pair.day_no}},{DAY_GROUPS.index('not_known') + 1})"
    )
    return _share("unknown_days", "Effort on days that nobody can tell", those, unknown, rated, mend)


def _share(
    key: str, label: str, those: str, part: pd.Series, rated: pd.DataFrame, remark: str = ""
) -> Figure:
    """Return a part of the rod-hours in the rates as a share of them; those: its formula."""
    whole = float(rated["rod_hours"].sum())
    value = float(part.sum()) / whole if whole > 0 else ""
    formula = f'IF({_ALL_HOURS}>0,{those}/{_ALL_HOURS},"")'
    return Figure(key, label, Live(formula, value), "share", f"of the rod-hours{remark}")


def record_figures(report: Report) -> Figures:
    """Return how many rows were used and what the rates rest on."""
    season = report.season
    counts = season.counts.values()
    used, aside = sum(count.used for count in counts), sum(count.set_aside for count in counts)
    read = sum(count.read for count in counts)
    rated = season.pairs[season.pairs["in_rates"]]
    parts = rated["parts_rod_hours"]
    outside = season.identity.loc[season.identity["reason"] != "", "fish"].sum()
    of_read = f"of {read:,} read in all sheets; {aside:,} set aside" + (": see Rows to fix" if aside else "")
    return Figures(
        "record",
        (
            Figure("used", "Rows used", Live("SUM({row_count.used})", used), "whole", of_read),
            Figure("outside", "Fish outside the rates", Live(_OUTSIDE, float(outside)), "whole", _WHERE),
            _share("parts", "Effort shared out by Parts", _PARTS_HOURS, parts, rated),
            _unknown_days(rated),
            Figure("above", "Rows read as 'trip of the row above'", season.from_above, "whole"),
        ),
        title="Your record",
    )
