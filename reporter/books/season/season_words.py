"""What may be said of a season against the one before it, in plain words."""

from collections.abc import Iterator, Mapping
from typing import Any

import numpy as np

from reporter.books.words import counted
from reporter.compute.records import records
from reporter.compute.report import Report
from reporter.compute.season_ratios import METHODS
from reporter.compute.seasons import Seasons
from reporter.schema.thresholds import MIN_OVERLAP_SHARE, MIN_SHARED_FISH, MIN_SHARED_TRIPS

Row = Mapping[str, Any]

CAUTION = (
    "Catch rates change with guests, skill, waters fished and weather. They do not measure how many fish "
    "there are: a fisheries agency's survey does that."
)
ON = {"same_condition": "days of the same kind", "same_month": "the same months"}
"""Way to compare -> on what the same technique is compared."""
_WHERE = {"same_condition": "on days of the same kind", "same_month": "in the same months"}

CLAIMS = ("this", "against")
UNTOLD = ("not_enough", "no_ratio", "no_overlap")


def comparisons(seasons: Seasons) -> list[tuple[dict[str, Any], ...]]:
    """Return the rows of each comparison, one a way, the earliest comparison first."""
    return list(
        zip(*(records(seasons.ratios[seasons.ratios["method"] == way]) for way in METHODS), strict=True)
    )


def claim_words(rows: tuple[Row, ...]) -> str:
    """Return the verdict on a season against the one before it, from its rows."""
    first = rows[0]
    this, against = first["this"], first["against"]
    alike = "with the same techniques on days of the same kind and in the same months"
    return {
        "this": f"{this} gave more fish per rod-hour than {against}, {alike}.",
        "against": f"{this} gave fewer fish per rod-hour than {against}, {alike}.",
        "disagree": f"The two fair comparisons of {this} with {against} disagree, so neither is ahead.",
        "cannot_tell": f"Your record bears no difference between {this} and {against}.",
        "not_enough": (
            f"{this} against {against}: too little that they have in common. It takes {MIN_SHARED_TRIPS} "
            f"trips and {MIN_SHARED_FISH} fish in each."
        ),
        "no_ratio": (
            f"{this} against {against}: no ratio, as one of them caught nothing where they can be compared."
        ),
        "no_overlap": f"{this} and {against} cannot be compared fairly: {_overlap(rows)}.",
    }[first["claim"]]


def _overlap(rows: tuple[Row, ...]) -> str:
    """Say on which of the two ways the seasons had too little in common."""
    short = [row for row in rows if not row["overlap_share"] >= MIN_OVERLAP_SHARE]
    shares = " and ".join(
        f"{round(100 * np.nan_to_num(row['overlap_share']))} % {_WHERE[row['method']]}" for row in short
    )
    return (
        f"of their rod-hours only {shares} went to a technique that both fished so; it takes "
        f"{round(100 * MIN_OVERLAP_SHARE)} %"
    )


def ratio_words(rows: tuple[Row, ...]) -> str:
    """Return what a comparison rests on: its ratios with their ranges and trips, where there are any."""
    first = rows[0]
    pair = f"{first['this']} against {first['against']}"
    trips = " and ".join(counted(first[f"trips_{side}"], "trip") for side in ("this", "against"))
    told = [row for row in rows if np.isfinite(row["low"]) and first["claim"] not in UNTOLD]
    if not told:
        return f"{pair}: {trips} on the same techniques and days of the same kind."
    ratios = ", ".join(
        f"{row['ratio']:.2f} times {_WHERE[row['method']]} ({row['low']:.2f} to {row['high']:.2f})"
        for row in told
    )
    return f"{pair}, fish per rod-hour: {ratios}; {trips}. It says nothing of how many fish there are."


def changes(report: Report, seasons: Seasons) -> Iterator[tuple[str, list[str], list[str]]]:
    """Yield each season from the second on with the techniques first fished in it, and no longer fished."""
    table = seasons.techniques
    for number, one in enumerate(report.season.several[1:], start=2):
        of = table[table["season_no"] == number]
        gained, lost = (of.loc[of["change"] == word, "technique"].tolist() for word in ("gained", "lost"))
        yield one.label, gained, lost


def change_words(season: str, gained: list[str], lost: list[str]) -> str:
    """Return in a sentence which techniques a season brought and which it left out."""
    if not gained and not lost:
        return f"{season}: the same techniques as before."
    parts = [
        f"{words} {', '.join(names)}"
        for words, names in (("first fished", gained), ("no longer fished", lost))
        if names
    ]
    return f"{season}: {'; '.join(parts)}."


def seasons_said(seasons: Seasons) -> tuple[str, str]:
    """Return what the record settles of seasons in a sentence or two, and what that rests on."""
    pairs = comparisons(seasons)
    claims = [pair for pair in pairs if pair[0]["claim"] in CLAIMS]
    if claims:
        return " ".join(claim_words(pair) for pair in claims), ratio_words(claims[-1])
    compared = [pair for pair in pairs if pair[0]["claim"] not in UNTOLD]
    if not compared:
        return "No season can be held against the one before it yet.", claim_words(pairs[-1])
    none = "Season against season there is no difference that your record can bear."
    return none, ratio_words(compared[-1])
