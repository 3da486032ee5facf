"""Stint conditions: the data sheet on which rates by condition and What worked stand."""

from typing import Any

import numpy as np
import pandas as pd

from reporter.books.blocks import Field, Line, Live, Look, Sheet, Table, Text
from reporter.books.season.data_sheets import cells
from reporter.books.season.front_words import compass_point
from reporter.books.season.row_fields import row_fields, with_season
from reporter.books.season.what_worked_behind import fits_formula
from reporter.compute.ratio import IntArray
from reporter.compute.report import STYLES, Report
from reporter.schema.choices import STEPS, TEMPERATURE
from reporter.schema.fronts import DAYS
from reporter.schema.units import usual_unit

NAME = "Stint conditions"

_LEAD = (
    "One row a stint that counts in the rates, with what it was fished under: the reading nearest its "
    "middle within 3 hours, else the trip's average or most frequent. Fish whose stint the record cannot "
    "tell stand on the first of their technique and trip."
)
_SPAN = 10_000  # beyond the numbers of bands, styles and techniques
_WIDTH = 11.5  # of so many columns: the longest word of their headings
_FIRST_HELP = (
    "The first of its trip in its band. 3: of all. 2: of its style. 1: of its technique. Blank: not."
)
_NUMBER_HELP = "The band's number on Condition rates. 0: left out, the record cannot tell the fish apart."


_NOTHING = Line("No stint has usable effort yet.")
_PICK_COLUMNS: dict[str, tuple[str, str, Look]] = {
    "time_of_year_no": ("time_of_year", "Time of year no.", "plain"),
    "water_no": ("water", "Water no.", "plain"),
    "variant_no": ("variant", "Variant no.", "plain"),
    "retrieve_no": ("retrieve", "Retrieve no.", "plain"),
    "pair_no": ("pair_no", "Line of Trip techniques", "plain"),
    "pick_hours": ("rod_hours", "Rod-hours to choose from", "two"),
    "pick_fish": ("fish", "Fish to choose from", "one"),
}
"""Column -> its source in the record of What worked, heading and look. Rod-hours and fish are 0 where the
fish cannot be told apart between kinds of day."""


def stint_conditions(report: Report) -> Sheet:
    """Return the sheet with one row a counted stint."""
    stints, system = report.record.stints, report.season.system
    if stints.empty:
        return Sheet(NAME, (Text((Line(NAME, "title"), _NOTHING)),), group="behind", landscape=True)
    temp, speed = usual_unit("temperature", system), usual_unit("speed", system)
    numbers = report.season.techniques.set_index("technique")["technique_no"]
    styles = {style: place for place, style in enumerate(STYLES, start=1)}
    made = with_season(report.season, stints).assign(
        technique_no=stints["technique"].map(numbers),
        style_no=stints["style"].map(styles),
        water_temp=[temp.shown(value) for value in stints["water_temp_c"]],
        wind_speed=[speed.shown(value) for value in stints["wind_speed_ms"]],
        wind_from=[_wind(value) for value in stints["wind_from_deg"]],
        day=[DAYS[value] for value in stints["day_type"]],
    )
    fields = [
        *row_fields(report.season, "Effort"),
        Field("trip_no", "Trip no.", "plain"),
        Field("trip", "Trip"),
        Field("technique", "Technique"),
        Field("technique_no", "Technique no.", "plain"),
        Field("style_no", "Style no.", "plain"),
        Field("rod_hours", "Rod-hours", "two"),
        Field("counted_fish", "Fish", "one"),
        Field("water_temp", f"Water temp ({temp.label})", "one"),
        Field("clarity", "Clarity"),
        Field("sky", "Sky"),
        Field("wind_from", "Wind from"),
        Field("wind_speed", f"Wind speed ({speed.label})", "one"),
        Field("water_level", "Water level"),
        Field("day", "Type of day"),
    ]
    columns: dict[str, Any] = {field.key: cells(made[field.key]) for field in fields}
    for condition in report.record.conditions:
        fields.append(
            Field(f"{condition.key}_no", f"{condition.title} no.", "plain", _WIDTH, help=_NUMBER_HELP)
        )
        columns[f"{condition.key}_no"] = condition.numbers.tolist()
    for condition in report.record.conditions:
        fields.append(
            Field(f"{condition.key}_first", f"{condition.title}: first", "plain", _WIDTH, help=_FIRST_HELP)
        )
        columns[f"{condition.key}_first"] = _firsts(made, condition.numbers)
    for field, values in _picks(report):
        fields.append(field)
        columns[field.key] = values
    table = Table("cond_stint", tuple(fields), columns, filtered=True)
    text = Text((Line(NAME, "title"), Line(_LEAD, "lead")))
    return Sheet(NAME, (text, table), group="behind", landscape=True, private=True, pages_wide=2)


def _firsts(stints: pd.DataFrame, numbers: IntArray) -> list[int | None]:
    """Return how far each stint is the first of its trip in its band, nothing where not."""
    firsts = np.zeros(len(stints), dtype=np.int64)
    of_trip = stints["trip_no"].to_numpy(dtype=np.int64) * _SPAN + numbers
    for group, level in (("technique_no", 1), ("style_no", 2), ("", 3)):
        of_group = stints[group].to_numpy(dtype=np.int64) if group else 0
        firsts[np.unique(of_trip * _SPAN + of_group, return_index=True)[1]] = level
    return [level or None for level in np.where(numbers > 0, firsts, 0).tolist()]


def _picks(report: Report) -> list[tuple[Field, list[Any]]]:
    """Return the columns that What worked sums and counts by; the steps that a stint fits are live."""
    picks = report.picks
    bands = len(picks.labels[TEMPERATURE])
    steps = [Live(fits_formula(bands), len(STEPS))] * len(picks.stints)
    columns = {key: picks.stints[source].tolist() for key, (source, *_) in _PICK_COLUMNS.items()}
    made = [(Field(key, heading, look), columns[key]) for key, (_, heading, look) in _PICK_COLUMNS.items()]
    fits = Field("fits", "Steps it fits", "plain", help="How many of the choices on What worked, in order.")
    return [*made, (fits, list(steps))]


def _wind(degrees: float) -> str:
    if np.isnan(degrees):
        return ""
    return "light" if degrees < 0 else compass_point(degrees)
