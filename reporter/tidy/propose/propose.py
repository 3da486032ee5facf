"""A layout proposed for a whole log."""

import datetime as dt
from collections import Counter

from reporter.read.raw import RawBook
from reporter.schema.log import TEXT_SHEETS, folded
from reporter.schema.own_layout import own_sheet
from reporter.schema.own_words import TECHNIQUE_SHORT
from reporter.schema.units import USUAL
from reporter.tidy.moments import DateReading, read_date
from reporter.tidy.near import nearest
from reporter.tidy.propose.answers import open_questions
from reporter.tidy.propose.columns import Trips
from reporter.tidy.propose.doubles import is_double, not_read, points_at
from reporter.tidy.propose.fit import known_technique, style_of, technique_words
from reporter.tidy.propose.grouped import grouped
from reporter.tidy.propose.look import look
from reporter.tidy.propose.model import Meaning, Proposal, ProposedName, ProposedSheet, SeenColumn
from reporter.tidy.propose.ours import as_ours
from reporter.tidy.propose.sheets import propose_sheet
from reporter.tidy.words import NotRead, trimmed

_LINKED = ("effort", "catch", "")
"""Kinds of row that point at trips; worksheets of no kind may turn out to, once trips are known."""
_TEXTS = frozenset(folded(name) for name in TEXT_SHEETS)
_MOST_NAMES = 60
_LONGEST_BASS_IN = 30.0  # no bass is longer, so what reads so is in centimetres
_WARMEST_C = 40.0  # water is never warmer, so what reads so is in °F


def propose(book: RawBook) -> Proposal:
    """Propose what every worksheet and column of a log may mean."""
    seen = [(raw, look(raw)) for raw in book.sheets if folded(raw.name) not in _TEXTS]
    kept = [(sheet, grouped(sheet.columns)) for _, sheet in seen if sheet is not None]
    alone = [propose_sheet(sheet, groups, None) for sheet, groups in kept]
    trips = [sheet for sheet in alone if sheet.row_is == "trips"]
    pointing = [sheet.row_is in _LINKED or points_at(sheet, trips) for sheet in alone]
    numbers = _numbers([sheet for sheet in trips if not points_at(sheet, trips)])
    sheets = [
        propose_sheet(one.seen, groups, numbers) if points and numbers is not None else one
        for one, (_, groups), points in zip(alone, kept, pointing, strict=True)
    ]
    sheets = [not_read(one, why) if (why := _why_double(one, trips)) else one for one in sheets]
    sheets = as_ours(sheets, book)
    unread = tuple(raw.name for raw, sheet in seen if sheet is None)
    return Proposal(tuple(sheets), _settings(sheets), _techniques(sheets), open_questions(sheets), unread)


def _why_double(sheet: ProposedSheet, trips: list[ProposedSheet]) -> str:
    return is_double(sheet, trips) if sheet.row_is == "trips" and len(trips) > 1 else ""


def _numbers(trips: list[ProposedSheet]) -> Trips:
    """Return the numbers of trips, in whatever column of their worksheets; None where there are no such."""
    if not trips:
        return None
    numbered = [column for sheet in trips for column, meant in sheet.columns if meant.key == "trip"]
    return {value for column in numbered for value in column.values}


def _meant(sheets: list[ProposedSheet]) -> list[tuple[SeenColumn, Meaning]]:
    return [(column, meaning) for sheet in sheets for column, meaning in sheet.columns if meaning.target]


def _settings(sheets: list[ProposedSheet]) -> dict[str, str | dt.date]:
    """Return the settings that the log itself answers: its units and its season."""
    settings: dict[str, str | dt.date] = {}
    system = _system(sheets)
    if system:
        settings["units"] = system
    years = {day.year for day in _days(sheets)}
    if len(years) == 1:
        year = years.pop()
        settings |= {
            "season_name": f"Season {year}",
            "first_day": dt.date(year, 1, 1),
            "last_day": dt.date(year, 12, 31),
        }
    return settings


def _days(sheets: list[ProposedSheet]) -> list[dt.date]:
    """Return the dates of the log, in whichever order of day and month each can be read."""
    values = [value for column, meant in _meant(sheets) if meant.key == "date" for value in column.values]
    orders = [DateReading("month first"), DateReading("day first")]
    read = [[read_date(value, order) for order in orders] for value in values]
    return [next(day for day in days if isinstance(day, dt.date)) for days in read if _any_date(days)]


def _any_date(days: list[dt.date | NotRead]) -> bool:
    return any(isinstance(day, dt.date) for day in days)


def _system(sheets: list[ProposedSheet]) -> str:
    votes: Counter[str] = Counter()
    for column, meaning in _meant(sheets):
        quantity = own_sheet(meaning.target).column(meaning.key).quantity
        if quantity is None:
            continue
        for system, label in USUAL[quantity].items():
            if meaning.unit == label and len(set(USUAL[quantity].values())) > 1:
                votes[system] += 1
        numbers = [float(v) for v in column.values if isinstance(v, int | float)]
        if quantity == "temperature" and not meaning.unit and numbers:
            votes["us" if max(numbers) > _WARMEST_C else "metric"] += 1
        if quantity == "fish length" and not meaning.unit and numbers:
            votes["us" if max(numbers) < _LONGEST_BASS_IN else "metric"] += 1
    return votes.most_common(1)[0][0] if votes else ""


def _is_number(group: str) -> bool:
    return not group or group.isdigit()


def _techniques(sheets: list[ProposedSheet]) -> tuple[ProposedName, ...]:
    """Return the names of techniques in the log, each spelling once, with the nearest of the others."""
    if any(sheet.row_is == "techniques" for sheet in sheets):
        return ()
    names: dict[str, str] = {}
    for column, meaning in _meant(sheets):
        if meaning.target not in ("effort", "catch"):
            continue
        if meaning.key == "technique":
            texts = [trimmed(value) for value in column.values if isinstance(value, str)]
        else:
            texts = [meaning.group] if meaning.target == "effort" and not _is_number(meaning.group) else []
        for text in texts:
            names.setdefault(folded(text) or text, text)
    found: list[ProposedName] = []
    for name in list(names.values())[:_MOST_NAMES]:
        known = known_technique(name)
        others = [one.name for one in found] + [usual for usual, _ in technique_words().values()]
        found.append(ProposedName(name, style_of(name), "" if known else _near(name, others)))
    return tuple(found)


def _near(name: str, others: list[str]) -> str:
    return TECHNIQUE_SHORT.get(name.casefold()) or nearest(name, others) or ""
