"""Conditions: fish per rod-hour on each kind of water, weather, light and cover, as shaded tables."""

from collections.abc import Sequence

import numpy as np
import pandas as pd

from reporter.books.blocks import Block, Cell, Field, Line, Live, Sheet, Table, Text
from reporter.books.words import counted
from reporter.compute.conditions.classes import Condition
from reporter.compute.conditions.rates import ALL
from reporter.compute.report import Report
from reporter.schema.sheets.names import STYLES
from reporter.schema.thresholds import HEAT_STEPS, MIN_OWN_TRIPS

_TITLE = Line("Conditions", "title")
_LEAD = Line(
    "Fish per rod-hour by what you fished in: all techniques together with the range your record supports, "
    "then each style and technique. As fished: it does not say why.",
    "lead",
)
_SHADES = (
    f"The darker, the more against your season's own rate: under {HEAT_STEPS[0]:g} times, to "
    f"{HEAT_STEPS[1]:g}, to {HEAT_STEPS[2]:g}, to {HEAT_STEPS[3]:g}, and over. Grey: fewer than "
    f"{MIN_OWN_TRIPS} trips, too little to go by. Blank: never fished so. Trips, rod-hours and ranges of "
    "every cell are on Condition rates; the reading behind every stint is on Stint conditions."
)
_ONE_DAY = (
    "One day has one temperature, one wind and one sky: what looks like the one may be the other. Rates "
    "side by side here are not a fair comparison; Side by side is."
)
_NEEDS = {
    "light": "Needs Time zone, Latitude and Longitude on Season, and stints on the clock.",
    "first_two_hours": "Needs stints on the clock.",
    "moon": "The quarter whose moment is nearest to the date.",
    "day_type": "The tool's own word, from the weather: never your call.",
    "skill": "The angler of the stint, else the trip's clients. Mixed: they differ.",
}


def conditions(report: Report) -> Sheet:
    """Return the sheet Conditions."""
    if report.by_condition.empty:
        nothing = Line("No stint has usable effort yet, so there is no rate by condition.")
        return Sheet("Conditions", (Text((_TITLE, nothing)),), group="me", landscape=True)
    table = report.by_condition.assign(line=np.arange(1, len(report.by_condition) + 1))
    told: list[tuple[Condition, pd.DataFrame]] = []
    untold: list[tuple[Condition, pd.DataFrame]] = []
    for condition in report.record.conditions:
        rows = table[table["condition"] == condition.key]
        (told if rows["band_no"].min() <= len(condition.bands) else untold).append((condition, rows))
    blocks: list[Block] = [Text((_TITLE, _LEAD, Line(_SHADES, "note"), Line(_ONE_DAY, "note")))]
    blocks += [_matrix(report, condition, rows) for condition, rows in told]
    blocks += _without_a_table([condition for condition, _ in untold])
    return Sheet("Conditions", tuple(blocks), group="me", landscape=True)


def _without_a_table(untold: Sequence[Condition]) -> list[Text]:
    """Say of which conditions nothing was left, and which were not recorded."""
    left = [Line(f"{one.title}. {_left_out(one)}") for one in untold if one.left_out]
    needs = [Line(f"{one.title}. {_NEEDS.get(one.key, '')}".strip()) for one in untold if not one.left_out]
    parts = (("Nothing left to show", left), ("Not recorded at all", needs))
    return [Text((Line(heading, "heading"), *lines)) for heading, lines in parts if lines]


def _left_out(condition: Condition) -> str:
    """Return what was left out of a condition, nothing where nothing was."""
    if not condition.left_out:
        return ""
    pairs = counted(condition.left_out, "technique on a trip", "techniques on trips")
    return f"Left out: {pairs} in several bands whose fish the record cannot tell apart."


def _matrix(report: Report, condition: Condition, rows: pd.DataFrame) -> Table:
    """Return a condition's bands down and groups across; every rate by its line on Condition rates."""
    whole = rows[rows["of"] == ALL]
    bands = whole["band_no"].tolist()
    columns: dict[str, Sequence[Cell]] = {"band": whole["band"].tolist()}
    for key in ("trips", "rod_hours", "rate"):
        source = "fish_per_rod_hour" if key == "rate" else key
        columns[key] = [
            _of_line(key, line, value)
            for line, value in zip(whole["line"].tolist(), whole[source].tolist(), strict=True)
        ]
    columns["low"], columns["high"] = whole["low"].tolist(), whole["high"].tolist()
    fields = [
        Field("band", "Band", width=32.0),
        Field("trips", "Trips", "whole"),
        Field("rod_hours", "Rod-hours", "one"),
        Field("rate", "All together", "two", width=10.0),
        Field("low", "From", "two"),
        Field("high", "To", "two"),
    ]
    season = float(report.whole["fish_per_rod_hour"].iloc[0])
    heat = {"rate": _heat(whole, bands, season)}
    for place, (of, name) in enumerate(_groups(report)):
        group = rows[(rows["of"] == of) & (rows["group"] == name)].set_index("band_no").reindex(bands)
        key = f"group_{place + 1}"
        fields.append(Field(key, name.capitalize() if of == "style" else name, "two", width=9.5))
        columns[key] = [
            _of_line("rate", int(line), rate) if line > 0 else None
            for line, rate in zip(group["line"].fillna(0), group["fish_per_rod_hour"], strict=True)
        ]
        heat[key] = _heat(group, bands, season)
    notes = (_NEEDS.get(condition.key, ""), _left_out(condition))
    return Table(
        f"cond_{condition.key}",
        tuple(fields),
        columns,
        title=condition.title,
        note=" ".join(note for note in notes if note),
        heat=heat,
    )


def _groups(report: Report) -> list[tuple[str, str]]:
    """Return the columns: both styles, then techniques in their order, as far as they were fished."""
    there = set(zip(report.by_condition["of"], report.by_condition["group"], strict=True))
    techniques = report.season.techniques["technique"].tolist()
    order = [*(("style", style) for style in STYLES), *(("technique", name) for name in techniques)]
    return [one for one in order if one in there]


def _of_line(key: str, line: int, value: float) -> Live:
    return Live(f"SUMIFS({{cond.{key}}},{{cond.line}},{line})", value)


def _heat(rows: pd.DataFrame, bands: Sequence[int], season: float) -> list[int]:
    """Return how deep each cell is shaded; -1 where there are too few trips, 0 without a rate."""
    trips, rates = rows["trips"].to_numpy(dtype=float), rows["fish_per_rod_hour"].to_numpy(dtype=float)
    level = np.searchsorted(np.array(HEAT_STEPS) * season, rates, side="right") + 1
    level = np.where(trips < MIN_OWN_TRIPS, -1, level)
    made: list[int] = np.where(np.isfinite(rates), level, 0).tolist()
    return made
