"""The findings on At a glance: what the record can bear, in sentences, each with its evidence."""

from collections.abc import Iterator
from typing import Any, NamedTuple

import numpy as np

from reporter.books.blocks import Line, Text
from reporter.books.season.ranking import ranking_sentence
from reporter.books.season.side_words import claim_words
from reporter.books.words import counted
from reporter.compute.records import records
from reporter.compute.report import Report

_MOST = 3
_CLAIMS = ("this", "against")
_SIDE_BY_SIDE, _DAYS, _TECHNIQUES = "Side by side", "What the days did", "Techniques"


class Finding(NamedTuple):
    """A sentence, what it rests on, and the sheet that shows it."""

    text: str
    evidence: str
    sheet: str


def finding_lines(report: Report) -> Text:
    """Return the two or three findings that the record can bear, each leading to its sheet."""
    lines = [Line("What your record says", "heading")]
    for found in season_findings(report):
        lines += [Line(found.text, "body", found.sheet), Line(found.evidence, "note")]
    return Text(tuple(lines))


def season_findings(report: Report) -> list[Finding]:
    """Return what the record settles, fair comparisons first; then the best as fished, settled or not."""
    settled = [*_styles(report), *_front(report), *_techniques(report)]
    return [*settled[: _MOST - 1], _best(report), *seasons_findings(report)]


def seasons_findings(report: Report) -> list[Finding]:
    """Return, of several logs, what is settled of seasons against those before, or that nothing is."""
    if report.seasons is None:
        return []
    from reporter.books.season.season_words import seasons_said

    return [Finding(*seasons_said(report.seasons), "Seasons")]


def _comparisons(report: Report, of: str) -> list[dict[str, Any]]:
    table = report.fair.table
    return records(table[(table["of"] == of) & (table["method"] == "same_trip")])


def _styles(report: Report) -> Iterator[Finding]:
    """Yield what moving did against slow, or that it cannot be told."""
    for row in _comparisons(report, "style"):
        said = claim_words(row, row["overlap_share"])
        if row["claim"] not in _CLAIMS:
            said = f"{str(row['this']).capitalize()} against {row['against']}: {said[:1].lower()}{said[1:]}"
        yield Finding(said, _same_trips(row), _SIDE_BY_SIDE)


def _techniques(report: Report) -> Iterator[Finding]:
    """Yield the techniques that the fair comparisons tell from the one most used."""
    for row in _comparisons(report, "technique"):
        if row["claim"] in _CLAIMS:
            yield Finding(claim_words(row, row["overlap_share"]), _same_trips(row), _SIDE_BY_SIDE)


def _same_trips(row: dict[str, Any]) -> str:
    trips = counted(row["trips"], "trip")
    if not np.isfinite(row["ratio"]) or not np.isfinite(row["low"]):
        return f"Both on the same trip: {trips}."
    return (
        f"On {trips} with both, {row['this']} gave {row['ratio']:.2f} times the fish per rod-hour of "
        f"{row['against']} ({row['low']:.2f} to {row['high']:.2f})."
    )


def _front(report: Report) -> Iterator[Finding]:
    """Yield what days 1 and 2 behind a front did to a style, where its range leaves no doubt."""
    for row in records(report.hard_days["verdict"]):
        low, high = float(row["low"]), float(row["high"])
        if not (np.isfinite(low) and np.isfinite(high)) or low <= 1 <= high:
            continue
        style = str(row["style"] or "techniques without a style").capitalize()
        fewer = "fewer" if high < 1 else "more"
        yield Finding(
            f"{style} gave {fewer} fish on days 1 and 2 behind a front than on ordinary days.",
            f"{row['ratio']:.2f} times the fish per rod-hour ({low:.2f} to {high:.2f}): "
            f"{counted(row['hard_trips'], 'trip')} against {counted(row['ordinary_trips'], 'trip')}.",
            _DAYS,
        )


def _best(report: Report) -> Finding:
    ranking = report.ranking
    trips = counted(float(report.whole["trips"].iloc[0]), "trip")
    techniques = counted(len(ranking.table), "technique")
    drawn = "; a rate of few trips is drawn towards that of all" if ranking.offered else ""
    evidence = f"{techniques} with usable effort on {trips}{drawn}."
    return Finding(ranking_sentence(ranking), evidence, _TECHNIQUES)
