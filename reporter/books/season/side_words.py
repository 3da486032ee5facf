"""What a fair comparison says, in plain words."""

from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np

from reporter.books.words import counted
from reporter.compute.condition_classes import OF_SEASON
from reporter.schema.thresholds import LEVEL, MIN_OVERLAP_SHARE, MIN_SHARED_FISH, MIN_SHARED_TRIPS

_DISAGREE = (
    "The two fair comparisons disagree. The usual cause is switching when it goes slow: "
    "fish both at the same time to settle it."
)


def claim_words(row: Mapping[str, Any], share: float, window: Mapping[str, Any] | None = None) -> str:
    """Return the verdict of one comparison, from its row of the same trips.

    share: of the rod-hours of both, those on kinds of day on which both were fished. window: its row of the
    same hours, where there is one.
    """
    this, against = str(row["this"]), str(row["against"])
    said = str(row["claim"])
    if said == "no_overlap":
        return _no_overlap(row, share)
    if said == "disagree" and window is not None and np.isfinite(window["low"]):
        held = f"your record supports {window['low']:.2f} to {window['high']:.2f}"
        return (
            "The two fair comparisons disagree. In the same hours, which switching cannot bend, "
            f"{this} caught {window['ratio']:.2f} times as many ({held}; {counted(window['trips'], 'trip')})."
        )
    if said == "no_ratio":
        sides = " and ".join(
            f"{name} {counted(row[f'fish_{side}'], 'fish', 'fish')} in {row[f'hours_{side}']:.1f} rod-hours"
            for name, side in ((this, "this"), (against, "against"))
        )
        return f"No ratio: on the same trips {sides}."
    return {
        "this": f"{_capital(this)} out-fished {against}.",
        "against": f"{_capital(against)} out-fished {this}.",
        "disagree": _DISAGREE,
        "cannot_tell": "Your record cannot tell them apart.",
        "not_enough": (
            f"Not enough same-trip data ({counted(row['trips'], 'trip')}): it takes {MIN_SHARED_TRIPS} trips "
            f"with both and {MIN_SHARED_FISH} fish on each."
        ),
    }[said]


def ratio_words(row: Mapping[str, Any], where: str) -> str:
    """Return one ratio with its range and the trips behind it, as a part of a sentence."""
    if not np.isfinite(row["ratio"]):
        return f"{where} no ratio"
    share = round(100 * LEVEL)
    held = (
        f"your record supports {row['low']:.2f} to {row['high']:.2f} at {share} %"
        if np.isfinite(row["low"])
        else "too few trips for a range"
    )
    return f"{where} {row['ratio']:.2f} times as many ({held}; {counted(row['trips'], 'trip')})"


def lone_words(row: Mapping[str, Any]) -> list[str]:
    """Return a sentence for each side that was fished alone on some kinds of day."""
    return [
        f"Only {row[side]}: {listed(row[f'only_{side}'])}."
        for side in ("this", "against")
        if row[f"only_{side}"]
    ]


def listed(labels: Sequence[str]) -> str:
    """Return kinds of day in one line, those of several seasons season by season."""
    seasons: dict[str, list[str]] = {}
    for label in labels:
        season, _, kind = label.rpartition(OF_SEASON)
        seasons.setdefault(f"{season}: " if season else "", []).append(kind)
    return "; ".join(f"{season}{'; '.join(kinds)}" for season, kinds in seasons.items())


def _no_overlap(row: Mapping[str, Any], share: float) -> str:
    met = f"{round(100 * share)} %" if np.isfinite(share) and share > 0 else "none"
    least = f"{round(100 * MIN_OVERLAP_SHARE)} %"
    several = any(OF_SEASON in label for side in ("this", "against") for label in row[f"only_{side}"])
    why = " See below." if several else "".join(f" {part}" for part in lone_words(row))
    return (
        f"Cannot be compared fairly: {met} of their rod-hours were on kinds of day on which both were "
        f"fished; it takes {least}.{why}"
    )


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
