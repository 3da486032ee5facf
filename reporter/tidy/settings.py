"""The sheet Season: settings, each read like a column of its own."""

import datetime as dt
from dataclasses import dataclass
from typing import Any

from reporter.schema.column import Column
from reporter.schema.log import folded
from reporter.schema.sheets.season import SETTINGS
from reporter.schema.species import BLACK_BASS, SPECIES
from reporter.schema.units import System, Unit, find_unit
from reporter.tidy.cells import CellContext, Typed, needs_unit, reader_for
from reporter.tidy.moments import DateReading
from reporter.tidy.near import nearest
from reporter.tidy.ranges import impossible, own_unit
from reporter.tidy.sheet import TidySheet
from reporter.tidy.species import find_species
from reporter.tidy.time_zones import known_zone
from reporter.tidy.words import NotRead, plain, shown

_BY_NAME = {folded(setting.heading): setting for setting in SETTINGS}
_FIRST = ("units", "decimal_mark", "date_order", "first_day", "last_day")
"""Settings that decide how the others are read."""


@dataclass(frozen=True, slots=True)
class Settings:
    """What Season says: setting key -> typed value; settings that are blank or not there are not in it.

    unread: keys of settings whose value cannot be read, which was said.
    """

    given: dict[str, Typed]
    unread: frozenset[str] = frozenset()

    def __getitem__(self, key: str) -> Any:
        """Return a setting's value, None where it is blank."""
        return self.given.get(key)

    @property
    def system(self) -> System | None:
        """The system of units, if it is set."""
        found: System | None = self.given.get("units")
        return found

    @property
    def context(self) -> CellContext:
        """How the cells of the whole log are read."""
        first, last = self["first_day"], self["last_day"]
        dates = DateReading(self["date_order"], first, last)
        return CellContext(self.system, self["decimal_mark"], self["weight_point"], dates)

    @property
    def counted(self) -> frozenset[str] | None:
        """Codes of the species counted; None where every species counts."""
        codes = self.given.get("species_counted")
        return frozenset(codes) if codes else None

    @property
    def bare_bass(self) -> str | None:
        """Code of what the bare word bass means, None where it could be several fish."""
        named: str | None = self["bass_means"]
        if named:
            return named
        black = {kind.code for kind in SPECIES if kind.black_bass}
        return BLACK_BASS.code if self.counted and self.counted <= black else None

    @property
    def season_days(self) -> tuple[dt.date | None, dt.date | None]:
        """First and last day of the season, None where not set."""
        return self["first_day"], self["last_day"]


def read_settings(tidy: TidySheet | None) -> Settings:
    """Read the settings; rows that are unknown, doubled or unreadable are set aside and said."""
    values: dict[str, Typed] = {}
    if tidy is None:
        return Settings(values)
    rows = _rows_by_setting(tidy)
    unread: set[str] = set()
    for key in (*_FIRST, *(setting.key for setting in SETTINGS if setting.key not in _FIRST)):
        if key not in rows:
            continue
        index, setting = rows[key]
        value = _read_setting(tidy, index, setting, Settings(values).context)
        if isinstance(value, NotRead):
            tidy.set_aside("required_unread", index, "value", why=value.why, remedy=value.remedy)
            unread.add(key)
        elif value is not None:
            values[key] = value
    return Settings(values, frozenset(unread))


def setting_named(name: str) -> Column | None:
    """Return the setting that a name means, a unit in brackets behind it or not; None where there is none."""
    return _BY_NAME.get(folded(plain(name).partition("(")[0]))


def _rows_by_setting(tidy: TidySheet) -> dict[str, tuple[int, Column]]:
    rows: dict[str, tuple[int, Column]] = {}
    for index, name in enumerate(tidy.columns["setting"]):
        if name is None:
            _without_name(tidy, index)
            continue
        setting = setting_named(name)
        if setting is None:
            near = nearest(name, [known.heading for known in SETTINGS])
            tidy.set_aside(
                "setting_unknown", index, "setting", hint=f" Did you mean '{near}'?" if near else ""
            )
        elif setting.key in rows:
            other = tidy.rows.said(rows[setting.key][0])
            tidy.set_aside("setting_twice", index, "setting", other=other)
        else:
            rows[setting.key] = (index, setting)
    return rows


def _without_name(tidy: TidySheet, index: int) -> None:
    heading = tidy.rows.heading
    tidy.set_aside("required_blank", index, "setting", filled=heading("value"), missing=heading("setting"))


def _read_setting(tidy: TidySheet, index: int, setting: Column, context: CellContext) -> Typed | NotRead:
    cell = tidy.rows.cells.get("value", tidy.columns["value"])[index]
    if index in tidy.rows.errors.get("value", {}):
        return NotRead("is an error: a formula has lost its cell", "Type the value in.")
    if cell is None:
        return None
    if setting.key == "species_counted":
        return _species_list(shown(cell))
    if setting.key == "time_zone":
        return _time_zone(shown(cell))
    if setting.kind == "species":
        found = find_species(shown(cell), None)
        return found if isinstance(found, NotRead) else found.code
    unit = _named_unit(tidy.columns["setting"][index], setting)
    if needs_unit(setting, unit, context):
        text = plain(shown(cell))
        if text.replace(".", "", 1).isdigit():
            return NotRead("has no unit", f"Type it with its unit, as {setting.example} in, or set Units.")
    value = reader_for(setting, unit, context)(cell)
    if isinstance(value, float):
        return impossible(value, setting, own_unit(setting, unit, context.system)) or value
    return value


def _time_zone(text: str) -> str | NotRead:
    zone = known_zone(text)
    if zone is None:
        return NotRead("isn't a time zone I know", "Type it as America/Chicago, or Europe/Paris.")
    return zone.key


def _named_unit(name: str, setting: Column) -> Unit | None:
    """Return the unit in brackets behind a setting's name."""
    named = plain(name).partition("(")[2].rstrip(") *")
    return find_unit(setting.quantity, named) if setting.quantity else None


def _species_list(text: str) -> tuple[str, ...] | NotRead:
    """Read names of species with ; or , between; the words black bass stand for all of them."""
    codes: list[str] = []
    for part in text.replace(",", ";").split(";"):
        if not part.strip():
            continue
        if folded(part) in {folded(word) for word in (BLACK_BASS.name, *BLACK_BASS.also)}:
            codes += [kind.code for kind in SPECIES if kind.black_bass]
            continue
        if folded(part) in {"all", "every", "everything", "allspecies", "everyspecies"}:
            return ()
        found = find_species(part, None)
        if isinstance(found, NotRead):
            return found
        codes.append(found.code)
    return tuple(dict.fromkeys(codes))
