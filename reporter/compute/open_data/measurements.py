"""Measurements: length, weight and fate of fish, and what was read of water and air on their trips."""

from typing import Any

import pandas as pd

from reporter.compute.open_data.identifiers import Key, identifier
from reporter.compute.season import Season
from reporter.schema.darwin_core_tables import MEASUREMENTS

_COLUMNS = [field.name for field in MEASUREMENTS.fields]
_OF_FISH = (("length_mm", "total length", "mm"), ("weight_g", "weight", "g"))
_READINGS = (
    ("water_temp_c", "water temperature", "°C"),
    ("visibility_m", "water visibility", "m"),
    ("air_temp_c", "air temperature", "°C"),
    ("wind_speed_ms", "wind speed", "m/s"),
)
_READING_DECIMALS = 1  # thermometers and guesses of wind bear no more


def make_measurements(
    season: Season, keys: dict[int, Key], caught: pd.DataFrame, surplus: pd.Series
) -> pd.DataFrame:
    """Return the measurements, columns as MEASUREMENTS: of fish by kind, then of trips by kind.

    caught: rows of Catch with their occurrenceID. surplus: trip_no -> fish that stand on no row. Lengths are
    whole mm, weights whole g.
    """
    fish = [*(_of_fish(caught, *kind) for kind in _OF_FISH), _fates(caught)]
    parts = [*fish, _surplus(keys, surplus[surplus > 0]), *_readings(season, keys)]
    table = pd.concat(parts, ignore_index=True)
    events = {number: identifier("event", *key) for number, key in keys.items()}
    made = table.assign(
        eventID=table["trip_no"].map(events),
        measurementID=[
            identifier("measurement", *what)
            for what in zip(table["of"], table["measurementType"], strict=True)
        ],
    )
    return made.astype(dict.fromkeys(_COLUMNS, object))[_COLUMNS]


def _of_fish(caught: pd.DataFrame, column: str, kind: str, unit: str) -> pd.DataFrame:
    rows = caught[caught[column].notna()]
    return _shaped(
        rows,
        of=rows["occurrenceID"],
        occurrenceID=rows["occurrenceID"],
        measurementType=kind,
        measurementValue=[f"{value:.0f}" for value in rows[column]],
        measurementUnit=unit,
        measurementMethod=rows["measured"],
        measurementRemarks=[f"Each of {fish:g} fish alike." if fish > 1 else "" for fish in rows["fish"]],
    )


def _fates(caught: pd.DataFrame) -> pd.DataFrame:
    """Return what became of the fish, where the log says: in no way where the specimen is kept."""
    rows = caught[caught["fate"].isin(("kept", "released"))]
    return _shaped(
        rows,
        of=rows["occurrenceID"],
        occurrenceID=rows["occurrenceID"],
        measurementType="fate",
        measurementValue=rows["fate"],
    )


def _surplus(keys: dict[int, Key], fish: pd.Series) -> pd.DataFrame:
    rows = fish.rename("fish").rename_axis("trip_no").reset_index()
    return _shaped(
        rows,
        of=[identifier("event", *keys[number]) for number in rows["trip_no"]],
        measurementType="further fish landed, species not written down",
        measurementValue=rows["fish"].astype(str),
        measurementUnit="fish",
    )


def _readings(season: Season, keys: dict[int, Key]) -> list[pd.DataFrame]:
    readings = season.readings[season.readings["trip_no"].isin(keys)]
    orders = (readings.groupby("trip_no").cumcount() + 1).astype(str)
    of = [
        identifier("reading", *keys[number], order)
        for number, order in zip(readings["trip_no"], orders, strict=True)
    ]
    timed = readings.assign(of=of, taken=_taken(readings))
    return [_of_trips(timed[timed[column].notna()], column, kind, unit) for column, kind, unit in _READINGS]


def _of_trips(rows: pd.DataFrame, column: str, kind: str, unit: str) -> pd.DataFrame:
    return _shaped(
        rows,
        of=rows["of"],
        measurementType=kind,
        measurementValue=[f"{value:.{_READING_DECIMALS}f}" for value in rows[column]],
        measurementUnit=unit,
        measurementDeterminedDate=rows["taken"],
    )


def _taken(readings: pd.DataFrame) -> list[str]:
    """Return when readings were taken: the clock where it was written, else the day alone."""
    moments = zip(readings["at"], readings["timed"], strict=True)
    return [f"{at:%Y-%m-%dT%H:%M}" if timed else f"{at:%Y-%m-%d}" for at, timed in moments]


def _shaped(rows: pd.DataFrame, **columns: Any) -> pd.DataFrame:
    """Return rows with the columns given; the others of a measurement are blank."""
    blank = pd.DataFrame("", index=rows.index, columns=_COLUMNS, dtype=object)
    return blank.assign(trip_no=rows["trip_no"], **columns)
