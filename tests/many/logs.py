"""Many season logs, each of its own: some 400 rows in the guise of a small season."""

import datetime as dt
import os
import random
from pathlib import Path

import openpyxl

TRIPS, STINTS_A_TRIP, FISH_A_TRIP = 40, 3, 6

_TECHNIQUES = (
    ("Drop shot", "slow"),
    ("Jerkbait", "moving"),
    ("Bladed jig", "moving"),
    ("Casting jig", "slow"),
)
_WATERS = ("Lake Arden", "Bell River", "Otter Mere")
_SPECIES = ("largemouth bass", "smallmouth bass")

LOCKED = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + bytes(504) + "EncryptedPackage".encode("utf-16-le") + bytes(99)
"""As a workbook with a password begins: the container of old files, with the name of its stream."""


def write_season(path: Path, seed: int, trips: int = TRIPS) -> None:
    """Write the log of one guide."""
    dice = random.Random(seed)  # noqa: S311 - guards nothing
    book = openpyxl.Workbook()
    book.remove(book.active)
    pages = {name: book.create_sheet(name) for name in ("Season", "Trips", "Effort", "Catch", "Techniques")}
    for row in (
        ["Setting", "Value"],
        ["Units", "us"],
        ["Fate if blank", "released"],
        ["Guide code", f"G{seed}"],
    ):
        pages["Season"].append(row)
    pages["Trips"].append(["Trip", "Date", "Water", "Start", "End", "Anglers"])
    pages["Effort"].append(["Trip", "Technique", "Minutes", "Landed"])
    pages["Catch"].append(["Trip", "Technique", "Species", "Length (in)"])
    pages["Techniques"].append(["Technique", "Style"])
    for technique in _TECHNIQUES:
        pages["Techniques"].append(list(technique))
    for trip in range(trips):
        name, day = f"T-{trip:03d}", dt.date(2026, 3, 1) + dt.timedelta(days=5 * trip)
        pages["Trips"].append([name, day, dice.choice(_WATERS), dt.time(6), dt.time(11), 1])
        techniques = dice.sample([technique for technique, _ in _TECHNIQUES], STINTS_A_TRIP)
        fish = [dice.choice(techniques) for _ in range(FISH_A_TRIP)]
        for technique in techniques:
            pages["Effort"].append([name, technique, 100, fish.count(technique)])
        for technique in fish:
            length = dice.randrange(40, 80) / 4
            pages["Catch"].append([name, technique, dice.choice(_SPECIES), length])
    book.save(path)


def write_seasons(folder: Path, logs: int, trips: int = TRIPS) -> list[Path]:
    """Write so many logs into a new folder; returned in the order of their names."""
    folder.mkdir()
    paths = [folder / f"guide {number:04d}.xlsx" for number in range(logs)]
    for number, path in enumerate(paths):
        write_season(path, number, trips)
    return paths


def spoil(logs: list[Path]) -> dict[str, str]:
    """Put four logs that cannot be done among the others; name -> what becomes of it.

    One is cut short, one has a password, one is a pipe, and of one the layout beside it is a pipe that
    nobody writes to: to open that never ends. That pipe has a workbook's ending, and is told too.
    """
    short, locked, pipe, hanging = (logs[len(logs) * part // 5] for part in (1, 2, 3, 4))
    short.write_bytes(short.read_bytes()[:4000])
    locked.write_bytes(LOCKED)
    pipe.unlink()
    os.mkfifo(pipe)
    layout = hanging.with_name(f"{hanging.stem} layout.xlsx")
    os.mkfifo(layout)
    return {
        short.name: "unreadable",
        locked.name: "unreadable",
        pipe.name: "unreadable",
        hanging.name: "too slow",
        layout.name: "unreadable",
    }
