"""What the record cannot say yet, and what to write down next season to settle it."""

from collections.abc import Iterator
from typing import NamedTuple

import pandas as pd

from reporter.books.blocks import Line, Text
from reporter.books.words import counted, share
from reporter.compute.glance import every_client_caught
from reporter.compute.report import Report
from reporter.schema.thresholds import MIN_MEASURED_SHARE, MIN_OWN_TRIPS

_MOST = 3
_WORTH_SAYING = 0.2  # of the effort, the fish or the trips concerned: less is hardly missed
_HEADING = "What your record cannot say yet"
_NO_TRIPS = "Anything yet: your log holds no finished trip."
_NO_EFFORT = "What any technique gave: write the techniques of a trip on Effort, with their hours or parts."
_NOTHING = "Nothing stands out: what this report asks for, your log mostly holds."


class Gap(NamedTuple):
    """How much of the record is without an answer (0 to 1), and the sentence that says what would give it."""

    part: float
    text: str


def gap_box(report: Report) -> Text:
    """Return the largest gaps, three at most."""
    gaps = sorted(_gaps(report), key=lambda gap: -gap.part)
    said = [gap.text for gap in gaps if gap.part >= _WORTH_SAYING][:_MOST] or [_NOTHING]
    return Text((Line(_HEADING, "heading"), *(Line(text) for text in said)))


def _gaps(report: Report) -> Iterator[Gap]:
    if not report.whole["rod_hours"].iloc[0] > 0:
        yield Gap(1.0, _NO_EFFORT if report.season.trips["in_rates"].any() else _NO_TRIPS)
        return
    yield from _few_trips(report)
    yield from _days(report)
    yield from _conditions(report)
    yield from _fates(report)
    yield from _clients(report)
    yield from _lengths(report)


def _few_trips(report: Report) -> Iterator[Gap]:
    table = report.techniques[report.techniques["trips"] > 0]
    few = table[table["trips"] < MIN_OWN_TRIPS]
    yield Gap(
        len(few) / max(len(table), 1),
        f"What {len(few)} of your {counted(len(table), 'technique')} can do: fish each on {MIN_OWN_TRIPS} "
        "trips or more, and write the blanks too.",
    )


def _days(report: Report) -> Iterator[Gap]:
    rated = _rated(report)
    unknown = rated.loc[rated["day_type"] == "not_known", "rod_hours"].sum()
    yield _of_effort(
        report, float(unknown), "what a front did", "write a row a day on Weather, or give hourly weather"
    )


def _conditions(report: Report) -> Iterator[Gap]:
    stints = report.record.stints
    untold = {
        "water temperature": stints["water_temp_c"].isna(),
        "clarity": stints["clarity"] == "",
        "cover": stints["cover"] == "",
    }
    for name, lacking in untold.items():
        hours = float(stints.loc[lacking, "rod_hours"].sum())
        yield _of_effort(report, hours, f"what {name} did", f"write {name} on every trip")


def _of_effort(report: Report, hours: float, what: str, how: str) -> Gap:
    whole = float(report.whole["rod_hours"].iloc[0])
    return Gap(hours / whole, f"{what.capitalize()} on {share(hours, whole)} of your effort: {how}.")


def _fates(report: Report) -> Iterator[Gap]:
    whole = report.whole.iloc[0]
    unknown, fish = float(whole["fate_unknown"]), float(whole["fish"])
    rated = _rated(report)
    tallied = float((rated["landed"] - rated["on_rows"]).sum())
    if fish > 0:
        text = f"What became of {share(unknown, fish)} of your fish"
        yield Gap(unknown / fish, f"{text}: {_ON_CATCH if tallied > unknown / 2 else _FATE}.")


def _clients(report: Report) -> Iterator[Gap]:
    trips = report.season.trips
    guided = int((trips["in_rates"] & (trips["kind"] == "guided")).sum())
    told = len(every_client_caught(trips, report.season.fish))
    if guided:
        text = f"Whether every client caught one on {guided - told} of {counted(guided, 'guided trip')}"
        yield Gap((guided - told) / guided, f"{text}: write the angler beside every fish.")


def _lengths(report: Report) -> Iterator[Gap]:
    sizes = report.fish.sizes
    fish = float(sizes["fish"].sum()) + report.fish.surplus
    measured = float(sizes.loc[sizes["length_mm"].notna(), "fish"].sum())
    if fish > 0 and measured < MIN_MEASURED_SHARE * fish:
        yield Gap(1 - measured / fish, _LENGTHS.format(share=share(fish - measured, fish)))


_ON_CATCH = "those that are only tallied on Effort need a row on Catch, kept or released"
_FATE = "write kept or released, or set the usual fate on Season"
_LENGTHS = "How big your fish run: {share} have no length. Measure every fish, or every one on set days."


def _rated(report: Report) -> pd.DataFrame:
    pairs = report.season.pairs
    return pairs[pairs["in_rates"]]
