"""A generated season with so many rows of Catch, written as fast as a workbook can be."""

import datetime as dt
import random
from pathlib import Path

import xlsxwriter

_FISH_A_STINT, _STINTS_A_TRIP, _TECHNIQUES, _WATERS = 4, 4, 12, 8
_SPECIES = ("largemouth bass", "smallmouth bass", "spotted bass")
_FIRST = dt.date(2026, 1, 1)
_DAYS = 330


def write_season(path: Path, fish: int) -> Path:
    """Write a log with so many rows of Catch; the same one every time."""
    chance = random.Random(fish)  # noqa: S311 - a season, no secret
    techniques = [f"Technique {number}" for number in range(_TECHNIQUES)]
    stints = -(-fish // _FISH_A_STINT)
    trips = -(-stints // _STINTS_A_TRIP)
    used = [(trip, chance.sample(techniques, _STINTS_A_TRIP)) for trip in range(trips)]
    sheets: dict[str, list[list[object]]] = {
        "Season": [["Setting", "Value"], ["Units", "us"], ["First day", _FIRST]],
        "Trips": [["Trip", "Date", "Water", "Start", "End", "Anglers", "Client"]],
        "Effort": [["Trip", "Technique", "Minutes", "Anglers on it"]],
        "Catch": [["Trip", "Technique", "Species", "Length (in)", "Weight (lb)", "Fate"]],
    }
    for trip, own in used:
        day = _FIRST + dt.timedelta(days=trip * _DAYS // trips)
        water, client = f"Water {trip % _WATERS}", f"C{trip % 90:02d}"
        sheets["Trips"].append([f"T-{trip}", day, water, dt.time(6), dt.time(14), 2, client])
        sheets["Effort"] += [[f"T-{trip}", name, 120, 2] for name in own]
    places = [(f"T-{trip}", name) for trip, own in used for name in own]
    for number in range(fish):
        length = round(4 * chance.triangular(8, 22, 13)) / 4
        weight = round(length**3 / 1600 * chance.uniform(0.9, 1.1), 2)
        fate = chance.choice(("released", "kept"))
        species = chance.choice(_SPECIES)
        sheets["Catch"].append([*places[number // _FISH_A_STINT], species, length, weight, fate])
    _write(path, sheets)
    return path


def _write(path: Path, sheets: dict[str, list[list[object]]]) -> None:
    with xlsxwriter.Workbook(path) as book:
        day, clock = (book.add_format({"num_format": form}) for form in ("yyyy-mm-dd", "hh:mm"))
        for name, rows in sheets.items():
            sheet = book.add_worksheet(name)
            for at, row in enumerate(rows):
                for column, value in enumerate(row):
                    if isinstance(value, dt.date):
                        sheet.write_datetime(at, column, value, day)
                    elif isinstance(value, dt.time):
                        sheet.write_datetime(at, column, value, clock)
                    else:
                        sheet.write(at, column, value)
