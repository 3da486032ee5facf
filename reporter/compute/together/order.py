"""The seasons of several logs in the order of time, each with the label by which pages tell it apart."""

from collections import Counter
from collections.abc import Sequence
from pathlib import Path

import pandas as pd

from reporter.compute.season import Season


def labelled(logs: Sequence[tuple[Path, Season]]) -> tuple[tuple[Path, Season], ...]:
    """Return logs with their seasons, the earliest first, each season with its label.

    The label is the years of its trips, or the file's name where another log has trips of the same year; of
    files of one name also the folder's, or else a number. The order in which the logs are given is nothing.
    """
    ordered = sorted(logs, key=_place)
    spans = [_years(season) for _, season in ordered]
    shared = Counter(year for years in spans for year in years)
    labels = [
        years_said(years) if years and all(shared[year] == 1 for year in years) else path.stem
        for years, (path, _) in zip(spans, ordered, strict=True)
    ]
    folders = [path.absolute().parent.name for path, _ in ordered]
    labels = _apart(labels, [f"{label}, {folder}" for label, folder in zip(labels, folders, strict=True)])
    labels = _apart(labels, [f"{label} ({place})" for place, label in enumerate(labels, start=1)])
    return tuple(
        (path, season._replace(label=label)) for (path, season), label in zip(ordered, labels, strict=True)
    )


def years_said(years: Sequence[int]) -> str:
    """Return years, ascending, in words: 2026, or 2025 to 2026."""
    first, last = min(years), max(years)
    return f"{first}" if first == last else f"{first} to {last}"


def record_title(seasons: Sequence[Season]) -> str:
    """Return what a record of several seasons is called, by its years: it names the file too."""
    years = [year for season in seasons for year in _years(season)]
    return f"Seasons {years_said(years)}" if years else "Seasons"


def _place(log: tuple[Path, Season]) -> tuple[pd.Timestamp, pd.Timestamp, str, str]:
    _, season = log
    dates = season.trips["date"].dropna()
    ends = (dates.min(), dates.max()) if len(dates) else (pd.Timestamp.min, pd.Timestamp.min)
    return *ends, season.name, season.sha256


def _years(season: Season) -> list[int]:
    return sorted(set(season.trips["date"].dropna().dt.year.tolist()))


def _apart(labels: list[str], longer: list[str]) -> list[str]:
    """Return labels, the longer ones where several are alike."""
    alike = Counter(label.casefold() for label in labels)
    return [
        more if alike[label.casefold()] > 1 else label for label, more in zip(labels, longer, strict=True)
    ]
