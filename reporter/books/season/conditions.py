"""Conditions: fish per rod-hour on each kind of water, weather, light and cover, as shaded tables."""

from bisect import bisect_right
from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple

from reporter.books.blocks import Block, Cell, Field, Line, Live, Sheet, Table, Text
from reporter.books.season.condition_rates import columns_of, row_key
from reporter.books.words import counted
from reporter.compute.conditions.classes import Condition
from reporter.compute.conditions.rates import ALL
from reporter.compute.records import records
from reporter.compute.report import Report
from reporter.schema.thresholds import HEAT_STEPS, MIN_OWN_TRIPS

_COLUMNS_A_PAGE = 16
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


class _Lines(NamedTuple):
    """The lines of one condition on Condition rates: its number, bands in order, rows by band and column."""

    number: int
    bands: list[int]
    rows: dict[tuple[int, int], dict[str, Any]]

    def told(self, condition: Condition) -> bool:
        """Whether anything stands in a band and not only under not recorded."""
        return any(band <= len(condition.bands) for band in self.bands)


def _lines(report: Report, columns: Mapping[tuple[str, str], int]) -> dict[str, _Lines]:
    """Return the lines of every condition."""
    made = {one.key: _Lines(place, [], {}) for place, one in enumerate(report.record.conditions, start=1)}
    for row in records(report.by_condition):
        lines, column = made[row["condition"]], columns[row["of"], row["group"]]
        lines.rows[row["band_no"], column] = row
        if row["of"] == ALL:
            lines.bands.append(row["band_no"])
    return made


def conditions(report: Report) -> Sheet:
    """Return the sheet Conditions."""
    if report.by_condition.empty:
        nothing = Line("No stint has usable effort yet, so there is no rate by condition.")
        return Sheet("Conditions", (Text((_TITLE, nothing)),), group="me", landscape=True)
    columns = columns_of(report)
    lines = _lines(report, columns)
    told = [one for one in report.record.conditions if lines[one.key].told(one)]
    untold = [one for one in report.record.conditions if not lines[one.key].told(one)]
    blocks: list[Block] = [Text((_TITLE, _LEAD, Line(_SHADES, "note"), Line(_ONE_DAY, "note")))]
    season = float(report.whole["fish_per_rod_hour"].iloc[0])
    blocks += [_matrix(one, lines[one.key], columns, season) for one in told]
    blocks += _without_a_table(untold)
    pages_wide = -(-len(columns) // _COLUMNS_A_PAGE)
    return Sheet("Conditions", tuple(blocks), group="me", landscape=True, pages_wide=pages_wide)


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


def _matrix(
    condition: Condition, lines: _Lines, groups: Mapping[tuple[str, str], int], season: float
) -> Table:
    """Return a condition's bands down and groups across; every rate by its key on Condition rates."""
    whole = [lines.rows[band, groups[ALL, ALL]] for band in lines.bands]
    columns: dict[str, Sequence[Cell]] = {
        "band": [row["band"] for row in whole],
        "no": lines.bands,
        **{key: [_by_key(key, row, lines.number, groups[ALL, ALL]) for row in whole] for key in _SOURCES},
        "low": [row["low"] for row in whole],
        "high": [row["high"] for row in whole],
    }
    fields = [*_WHOLE_FIELDS]
    heat = {"rate": [_heat(row, season) for row in whole]}
    for (of, name), column in groups.items():
        if of == ALL:
            continue
        key = f"group_{column}"
        words = (name or "style not given").capitalize() if of == "style" else name
        fields.append(Field(key, words, "two"))
        found = [lines.rows.get((band, column)) for band in lines.bands]
        columns[key] = [_by_key("rate", row, lines.number, column) if row else None for row in found]
        heat[key] = [_heat(row, season) if row else 0 for row in found]
    notes = (_NEEDS.get(condition.key, ""), _left_out(condition))
    return Table(
        f"cond_{condition.key}",
        tuple(fields),
        columns,
        title=condition.title,
        note=" ".join(note for note in notes if note),
        heat=heat,
    )


_SOURCES = {"trips": "trips", "rod_hours": "rod_hours", "rate": "fish_per_rod_hour"}
_WHOLE_FIELDS = (
    Field("band", "Band", width=32.0),
    Field("no", "No.", "plain"),
    Field("trips", "Trips", "whole"),
    Field("rod_hours", "Rod-hours", "one"),
    Field("rate", "All together", "two"),
    Field("low", "From", "two"),
    Field("high", "To", "two"),
)


def _by_key(key: str, row: Mapping[str, Any], condition: int, column: int) -> Live:
    of_band = f"{{row.no}}*{row_key(0, 1, 0)}+{row_key(condition, 0, column)}"
    return Live(f"SUMIFS({{cond.{key}}},{{cond.key}},{of_band})", row[_SOURCES[key]])


def _heat(row: Mapping[str, Any], season: float) -> int:
    """Return how deep a cell is shaded; -1 where there are too few trips."""
    if row["trips"] < MIN_OWN_TRIPS:
        return -1
    return bisect_right([step * season for step in HEAT_STEPS], row["fish_per_rod_hour"]) + 1
