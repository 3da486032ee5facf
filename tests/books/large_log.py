"""An invented season of many techniques, waters, trips and fish: does its report still look intended?"""

import datetime as dt
import random
from pathlib import Path

import openpyxl

from tests.conftest import clean_sheets

TECHNIQUES, WATERS, TRIPS, FISH = 20, 40, 300, 2_000

_STINTS = 4
_SPECIES = ("largemouth bass", "smallmouth bass", "spotted bass")


def large_log(folder: Path) -> Path:
    """Write the log into a folder; the same one every time."""
    chance = random.Random(20)  # noqa: S311 - a season, no secret
    techniques = [f"Invented technique {number}" for number in range(1, TECHNIQUES + 1)]
    waters = [f"Invented water {number}" for number in range(1, WATERS + 1)]
    trips: list[list[object]] = [["Trip", "Date", "Water", "Start", "End", "Anglers", "Client"]]
    effort: list[list[object]] = [["Trip", "Technique", "Minutes", "Anglers on it"]]
    stints = []
    for number in range(TRIPS):
        name = f"T-{number + 1:03d}"
        day = dt.date(2026, 3, 1) + dt.timedelta(days=number * 270 // TRIPS)
        client = f"C{number % 60 + 1:02d}"
        trips.append([name, day, waters[number % WATERS], dt.time(6), dt.time(14), 2, client])
        for technique in chance.sample(techniques, _STINTS):
            effort.append([name, technique, 120, 2])
            stints.append((name, technique))
    catch: list[list[object]] = [["Trip", "Technique", "Species", "Length (in)", "Fate"]]
    for place in sorted(chance.choices(range(len(stints)), k=FISH)):
        length = round(chance.triangular(8, 22, 13) * 4) / 4
        fate = chance.choice(("released", "released", "kept"))
        catch.append([*stints[place], chance.choice(_SPECIES), length, fate])
    sheets = {
        **clean_sheets(),
        "Trips": trips,
        "Effort": effort,
        "Catch": catch,
        "Techniques": [
            ["Technique", "Style"],
            *([name, ("moving", "slow")[at % 2]] for at, name in enumerate(techniques)),
        ],
        "Waters": [["Water"], *([name] for name in waters)],
    }
    book = openpyxl.Workbook()
    book.remove(book.worksheets[0])
    for name, rows in sheets.items():
        sheet = book.create_sheet(name)
        for row in rows:
            sheet.append(row)
    path = folder / "large season.xlsx"
    book.save(path)
    return path
