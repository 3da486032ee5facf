"""The sheet Season of a blank log: one row a setting, each cell with its own help and drop-down."""

import datetime as dt
from collections.abc import Mapping
from dataclasses import replace

from reporter.books.blank.fields import entry_field
from reporter.books.blocks import Cell, Field, Table
from reporter.schema.column import Column
from reporter.schema.sheets.season import SEASON, SETTINGS
from reporter.schema.units import USUAL, System


def season_table(system: System, settings: Mapping[str, Cell]) -> Table:
    """Return the settings with the answers given (setting key -> cell); an unknown key is a KeyError."""
    unknown = settings.keys() - {setting.key for setting in SETTINGS}
    if unknown:
        raise KeyError(f"no settings: {sorted(unknown)}")
    return Table(
        SEASON.key,
        tuple(entry_field(SEASON.key, column, system) for column in SEASON.columns),
        {
            "setting": [setting.heading for setting in SETTINGS],
            "value": [settings.get(setting.key) for setting in SETTINGS],
        },
        own_fields={row: {"value": _value_field(setting, system)} for row, setting in enumerate(SETTINGS)},
    )


def usual_settings(system: System, season: int | None) -> dict[str, Cell]:
    """Return the settings that a blank log starts with; the season's own only where its year is known."""
    settings: dict[str, Cell] = {
        "units": system,
        "date_order": "month first" if system == "us" else "day first",
    }
    if season is not None:
        settings["season_name"] = f"Season {season}"
        settings["first_day"] = dt.date(season, 1, 1)
        settings["last_day"] = dt.date(season, 12, 31)
    return settings


def _value_field(setting: Column, system: System) -> Field:
    """Return the field of one answer; a setting has no unit in its name, so its help says it."""
    field = entry_field(SEASON.key, setting, system)
    unit = USUAL[setting.quantity][system] if setting.quantity else ""
    return replace(field, help=f"{field.help} Unit: {unit}.") if unit else field
