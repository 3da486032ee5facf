"""Steadied rates of techniques and the moments on which they stand, live: as in `reporter.compute.shrink`."""

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
import pandas as pd

from reporter.books.blocks import Cell, Field, Figure, Figures, Live
from reporter.books.season.numbers import live
from reporter.books.season.rate_tables import RATE
from reporter.compute.picker.words import STEADIED
from reporter.compute.shrink import ROUNDING
from reporter.schema.thresholds import MIN_SHRUNKEN_TECHNIQUES

_BUNCHING = "1: fish come one by one. 2: by bunches, so that a rate is as unsure as with half the rod-hours."
_DISTANCE = "Of its rate from that of all of them, squared, by its share of the rod-hours."
_NAME_WIDTH = 30  # of its own: the moments' labels above stand in this column, whatever techniques are called
STEADIED_FIELDS = (
    Field("technique", "Technique", "wrapped", _NAME_WIDTH),
    Field("technique_no", "Technique no.", "plain"),
    Field("trips", "Trips", "whole"),
    Field("rod_hours", "Rod-hours", "one"),
    Field("fish", "Landed", "whole"),
    Field("rate", "Fish per rod-hour", "two"),
    Field("squares", "Squares of rod-hours", "one", help="Each trip's rod-hours times themselves."),
    Field("phi", "Bunching", "two", help=_BUNCHING),
    Field("away", "Distance from all of them", "three", help=_DISTANCE),
    Field("steadied", "Steadied", "two", help=STEADIED),
)


class Steadied(NamedTuple):
    """Rates of techniques that are steadied, and under which names that stands in the report.

    figures, table: the keys of the moments and of the techniques. hours, fish: the columns of Trip techniques
    that are added up. rows: one row a technique: technique, technique_no, trips, rod_hours, fish,
    fish_per_rod_hour, squares (of a trip's rod-hours), phi, shrunken_rate. mean, variance: of all techniques,
    NaN where there is none. kappa: the season's between-trip spread.
    """

    figures: str
    table: str
    hours: str
    fish: str
    rows: pd.DataFrame
    mean: float
    variance: float
    kappa: float

    def figure(self, key: str) -> str:
        """Return what a formula calls one of the moments."""
        return f"{{{self.figures}.{key}}}"

    def column(self, key: str) -> str:
        """Return what a formula calls a column of the techniques."""
        return f"{{{self.table}.{key}}}"

    @property
    def offered(self) -> str:
        """The condition that there are enough techniques to steady any."""
        return f"{self.figure('techniques')}>={MIN_SHRUNKEN_TECHNIQUES}"

    @property
    def away(self) -> "pd.Series[float]":
        """What each technique adds to the spread of their rates."""
        total = self.rows["rod_hours"].sum()
        with np.errstate(all="ignore"):
            away = self.rows["rod_hours"] / total * (self.rows["fish_per_rod_hour"] - self.mean) ** 2
        return away.fillna(0.0)


def moments(of: Steadied) -> Figures:
    """Return the moments of steadied rates."""
    rows, figure = of.rows, of.figure
    total, mean = float(rows["rod_hours"].sum()), float(np.nan_to_num(of.mean))
    observed = float(of.away.sum())
    excess = observed - mean * float(rows["phi"].sum()) / total if total > 0 else 0.0
    hours = figure("hours")
    beyond = f"{figure('observed')}-{figure('mean')}*SUM({of.column('phi')})/{hours}"
    above = f"{figure('excess')}>{ROUNDING:g}*{figure('observed')}"
    items = (
        Figure("kappa", "Spread between trips", of.kappa, "three", "0: trips differ by luck alone"),
        Figure("hours", "Rod-hours", Live(f"SUM({of.column('rod_hours')})", total), "one"),
        Figure("fish", "Landed", Live(f"SUM({of.column('fish')})", float(rows["fish"].sum())), "whole"),
        Figure(
            "mean",
            "Fish per rod-hour, all of them",
            Live(f"IF({hours}>0,{figure('fish')}/{hours},0)", mean),
            "three",
        ),
        Figure(
            "techniques",
            "Techniques that fit",
            Live(f'COUNTIFS({of.column("rod_hours")},">0")', int((rows["rod_hours"] > 0).sum())),
            "plain",
        ),
        Figure("observed", "Spread of their rates", Live(f"SUM({of.column('away')})", observed), "three"),
        Figure("excess", "Of it beyond chance", Live(f"IF({hours}>0,{beyond},0)", excess), "three"),
        Figure(
            "variance",
            "Spread of their true rates",
            Live(f"IF(AND({of.offered},{above}),{figure('excess')},0)", float(np.nan_to_num(of.variance))),
            "three",
        ),
    )
    return Figures(of.figures, items, title="How rates are steadied")


def steadied_columns(of: Steadied) -> dict[str, Sequence[Cell]]:
    """Return the columns of STEADIED_FIELDS."""
    rows, mean, variance = of.rows, of.figure("mean"), of.figure("variance")
    own = "{pair.technique_no},{row.technique_no},{pair.in_rates},1"
    hours = f"{{pair.{of.hours}}}"
    mine = "({pair.technique_no}={row.technique_no})*{pair.in_rates}"
    there = "{row.rod_hours}>0"
    weight = f"{variance}/({variance}+{mean}*{{row.phi}}/{{row.rod_hours}})"
    drawn = f"IF({variance}>0,{weight}*({{row.rate}}-{mean}),0)"
    phi = f"1+{of.figure('kappa')}*{mean}*{{row.squares}}/{{row.rod_hours}}"
    away = f"{{row.rod_hours}}/{of.figure('hours')}*({{row.rate}}-{mean})^2"
    return {
        "technique": rows["technique"].tolist(),
        "technique_no": rows["technique_no"].tolist(),
        "trips": live(f'COUNTIFS({own},{hours},">0")', rows["trips"]),
        "rod_hours": live(f"SUMIFS({hours},{own})", rows["rod_hours"]),
        "fish": live(f"SUMIFS({{pair.{of.fish}}},{own})", rows["fish"]),
        "rate": live(RATE, rows["fish_per_rod_hour"]),
        "squares": live(f"SUMPRODUCT({mine}*{hours}*{hours})", rows["squares"]),
        "phi": live(f'IF({there},{phi},"")', rows["phi"]),
        "away": live(f"IF({there},{away},0)", of.away),
        "steadied": live(f'IF(AND({there},{of.offered}),{mean}+{drawn},"")', rows["shrunken_rate"]),
    }
