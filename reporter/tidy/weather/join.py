"""Hours of one station from several files."""

from dataclasses import replace

import pandas as pd

from reporter.tidy.weather.hours import StationHours


def join_stations(stations: list[StationHours]) -> list[StationHours]:
    """Join files of one station, one kind of file and one kind of pressure, in the order of the files.

    Where two files have an hour, the earlier file's counts.
    """
    groups: dict[tuple[str, str, str], list[StationHours]] = {}
    for station in stations:
        groups.setdefault((station.station, station.format, station.pressure_kind), []).append(station)
    return [_joined(files) if len(files) > 1 else files[0] for files in groups.values()]


def _joined(files: list[StationHours]) -> StationHours:
    table = pd.concat([file.table for file in files], ignore_index=True)
    table = table.drop_duplicates("hour", keep="first").sort_values("hour", ignore_index=True)
    fronts = pd.concat([file.fropa for file in files]).drop_duplicates().sort_values(ignore_index=True)
    heights = [file.elevation_m for file in files if not pd.isna(file.elevation_m)]
    elevation_m = heights[0] if heights else files[0].elevation_m
    return replace(files[0], table=table, fropa=fronts, elevation_m=elevation_m)
