"""What the days did: rates by type of day, by the tool's verdict and by the guide's own call."""

from collections.abc import Mapping, Sequence

import numpy as np
import numpy.typing as npt
import pandas as pd

from reporter.books.blocks import Field, Line, Sheet, Table, Text, Value
from reporter.books.season.front_words import day_group_words
from reporter.books.season.rate_tables import Grouping, rate_table
from reporter.books.words import counted
from reporter.compute.fronts.rates import CALL_GROUPS, DAY_GROUPS, By
from reporter.compute.records import records
from reporter.compute.report import STYLES, Report
from reporter.schema.thresholds import MIN_OWN_TRIPS

_GREY_NOTE = f"Grey: fewer than {MIN_OWN_TRIPS} trips, too little to go by."
_WHOSE: dict[By, str] = {"verdict": "by the tool's verdict", "call": "by your own call"}
_NUMBER: dict[By, str] = {"verdict": "day_no", "call": "call_no"}
_GROUPS: dict[By, Sequence[str]] = {"verdict": DAY_GROUPS, "call": CALL_GROUPS}
_FLATTERS = (
    "Rates by your own call flatter it: a day is called hard because it fished hard, or is remembered so, "
    "and then its low rate is no surprise. Only a call written before the first cast is evidence. The tool's "
    "verdict knows the weather and not the fish."
)
_WITHOUT = ("boat_hours", "kept", "released", "fate_unknown")


def day_rates(report: Report) -> Sheet:
    """Return the sheet What the days did."""
    if report.by_day_type.empty:
        nothing = Line("No stint has usable effort yet, so there is no rate by type of day.")
        return Sheet("What the days did", (Text((_TITLE, nothing)),), group="me", landscape=True)
    blocks: list[Text | Table] = [Text((_TITLE, _LEAD))]
    rates, techniques = _numbered(report.by_day_type), report.season.techniques
    numbers = dict(zip(techniques["technique"], techniques["technique_no"].tolist(), strict=True))
    ways: tuple[By, ...] = ("verdict", "call")
    for by in ways:
        note = (Line(_FLATTERS, "note"),) if by == "call" else ()
        heading = Line(f"{_WHOSE[by].capitalize()}", "heading")
        blocks += [Text((heading, *note, *_ratios(report, by))), _whole(rates, by), _styles(rates, by)]
    blocks += [_techniques(rates, by, numbers) for by in ways]
    return Sheet("What the days did", tuple(blocks), group="me", landscape=True)


_TITLE = Line("What the days did", "title")
_LEAD = Line("Fish per rod-hour on each type of day: all together, by style, by technique.", "lead")


def _ratios(report: Report, by: By) -> tuple[Line, ...]:
    """Return one line a style: behind a front against ordinary days."""
    return tuple(Line(_ratio(style)) for style in records(report.hard_days[by]))


def _ratio(row: dict[str, object]) -> str:
    name = str(row["style"] or "style not given").capitalize()
    ratio = float(str(row["ratio"]))
    trips = (
        f"{counted(float(str(row['hard_trips'])), 'trip')} on days 1 and 2, "
        f"{counted(float(str(row['ordinary_trips'])), 'trip')} on ordinary days"
    )
    if not np.isfinite(ratio):
        return (
            f"{name}: days 1 and 2 behind a front cannot be compared with ordinary days; each needs "
            f"{MIN_OWN_TRIPS} trips and a fish ({trips})."
        )
    low, high = float(str(row["low"])), float(str(row["high"]))
    return (
        f"{name}: {ratio:.2f} times as many fish per rod-hour on days 1 and 2 behind a front as on ordinary "
        f"days; your record supports {low:.2f} to {high:.2f} ({trips})."
    )


def _numbered(rates: pd.DataFrame) -> pd.DataFrame:
    """Return the rates by type of day with the name and the number of each type."""
    groups = [
        f"{day} {strength}".strip()
        for day, strength in zip(rates["day_type"], rates["strength"], strict=True)
    ]
    places = {
        (by, group): place for by, names in _GROUPS.items() for place, group in enumerate(names, start=1)
    }
    return rates.assign(group=groups, day_no=[places[key] for key in zip(rates["by"], groups, strict=True)])


def _rows(rates: pd.DataFrame, by: By, of: str) -> pd.DataFrame:
    wanted: npt.NDArray[np.bool_] = (rates["by"].to_numpy() == by) & (rates["of"].to_numpy() == of)
    return rates.loc[wanted].reset_index(drop=True)


def _table(
    key: str,
    title: str,
    rows: pd.DataFrame,
    grouping: Grouping,
    labels: tuple[Field, ...],
    cells: dict[str, list[Value]],
) -> Table:
    days = {"day_no": rows["day_no"].tolist(), "day": [day_group_words(group) for group in rows["group"]]}
    return rate_table(
        key,
        title,
        grouping,
        (*labels, _DAY_NO, _DAY),
        {**cells, **days},
        rows,
        note=_GREY_NOTE,
        without=_WITHOUT,
    )


_DAY_NO = Field("day_no", "Day no.", "plain")
_DAY = Field("day", "Type of day")
_NO = Field("no", "No.", "plain")


def _whole(rates: pd.DataFrame, by: By) -> Table:
    rows = _rows(rates, by, "season")
    grouping = Grouping({_NUMBER[by]: "day_no"}, "new_trip")
    return _table(f"days_{by}", f"All techniques together, {_WHOSE[by]}", rows, grouping, (), {})


def _styles(rates: pd.DataFrame, by: By) -> Table:
    rows = _rows(rates, by, "style")
    cells: dict[str, list[Value]] = {
        "no": [STYLES.index(style) + 1 for style in rows["name"]],
        "style": [style or "not given" for style in rows["name"]],
    }
    grouping = Grouping({"style_no": "no", _NUMBER[by]: "day_no"}, "new_style_trip")
    labels = (_NO, Field("style", "Style"))
    return _table(f"style_days_{by}", f"Moving and slow, {_WHOSE[by]}", rows, grouping, labels, cells)


def _techniques(rates: pd.DataFrame, by: By, numbers: Mapping[str, int]) -> Table:
    """Return the rates of each technique; numbers are the season's, by technique."""
    rows = _rows(rates, by, "technique")
    rows = rows.assign(no=[numbers[name] for name in rows["name"]]).sort_values(
        ["no", "day_no"], ignore_index=True
    )
    cells: dict[str, list[Value]] = {"no": rows["no"].tolist(), "technique": rows["name"].tolist()}
    grouping = Grouping({"technique_no": "no", _NUMBER[by]: "day_no"}, "in_rates")
    labels = (_NO, Field("technique", "Technique"))
    return _table(f"technique_days_{by}", f"Each technique, {_WHOSE[by]}", rows, grouping, labels, cells)
