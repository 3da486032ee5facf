"""Small season logs from a seed, in which every rule of the rows turns up, several at once."""

import datetime as dt
from random import Random

from tests.reference.careless import TECHNIQUES, UNLISTED, WATERS, Writer
from tests.reference.log import Cell, Log, Row
from tests.reference.random_rows import stints, write_fish, write_stints, write_strays

SPECIES_COUNTED: tuple[tuple[str | None, str | None], ...] = (
    (None, None),
    (None, "largemouth bass"),
    ("black bass", None),
    ("black bass", None),
    ("largemouth bass; smallmouth bass", None),
    ("black bass; walleye", "smallmouth bass"),
)
SOUND: Row = {
    "date": dt.date(2026, 4, 5),
    "water": "Otter Mere",
    "start": dt.time(6, 0),
    "end": dt.time(11, 0),
    "anglers": 2,
    "status": None,
}
"""The first trip of every log can be used: a log without any gives no report."""


def random_log(seed: int) -> Log:
    """Return the log of a seed."""
    rng = Random(seed)  # noqa: S311
    listed = rng.sample([name for name, *_ in TECHNIQUES], rng.randint(1, 5))
    names = listed + ([rng.choice(UNLISTED)] if rng.random() < 0.5 else [])
    if rng.random() < 0.12:
        names = names[:1]
    if rng.random() < 0.25:
        names.append("flipping")
    writer = Writer(rng, names, rng.choice([0.0, 0.4, 0.8]))
    settings = _settings(rng)
    count = rng.choice([rng.randint(1, 4), rng.randint(7, 11), rng.randint(12, 16)])
    luck = 0.0 if rng.random() < 0.08 else rng.uniform(0.1, 1.2)
    day = dt.date(2026, 4, 5)
    for number in range(1, count + 1):
        day += dt.timedelta(days=rng.choice([0, 1, 1, 2, 4, 9]) if number > 1 else 0)
        _write_trip(writer, settings, number, day, luck)
    if writer.slip(0.25):
        _write_trip(writer, settings, count + 1, dt.date(2026, 3, 30), luck)
    write_strays(writer)
    techniques: list[Row] = [
        {"technique": name, "style": style, "also_called": also} for name, style, also in TECHNIQUES
    ]
    waters: list[Row] = [{"water": name, "also_called": also} for name, also in WATERS]
    return Log(settings, techniques, waters, writer.trips, writer.effort, writer.catch)


def _settings(rng: Random) -> Row:
    counted, bass = rng.choice(SPECIES_COUNTED)
    return {
        "units": "us",
        "species_counted": counted,
        "bass_means": bass,
        "fate_if_blank": rng.choice([None, "released", "kept"]),
        "rods_per_angler": rng.choice([None, 1, 1, 2]),
        "usual_start": rng.choice([None, dt.time(6, 30)]),
        "usual_end": dt.time(11, 0),
        "first_day": rng.choice([None, None, dt.date(2026, 4, 5)]),
        "last_day": rng.choice([None, dt.date(2026, 7, 15)]),
        "as_of": rng.choice([None, None, dt.date(2026, 6, 15)]),
    }


def _write_trip(writer: Writer, settings: Row, number: int, day: dt.date, luck: float) -> None:
    rng = writer.rng
    names: list[Cell] = [f"T-{number:03}", f"t{number}", number]
    name = rng.choice(names)
    row, hours, rods = _trip_row(writer, settings, name, day)
    if number == 1:
        row |= SOUND
    writer.lines(writer.trips)
    writer.trips.append(row)
    if writer.slip(0.06):
        writer.trips.append(dict(row))
    if writer.slip(0.04):
        return
    pointers: list[Cell] = [name, name, str(name).upper(), f" {name} ", day]
    fished = stints(writer, hours, rods)
    landed = write_stints(writer, fished, luck, rng.choice(pointers))
    write_fish(writer, landed, luck, rng.choice(pointers))


def _trip_row(writer: Writer, settings: Row, name: Cell, day: dt.date) -> tuple[Row, float, int]:
    """Return a row of Trips, with its boat hours and its rods."""
    rng = writer.rng
    start, hours = rng.choice([(dt.time(6, 0), 5.0), (dt.time(7, 30), 4.25), (dt.time(20, 30), 7.0)])
    end = (dt.datetime.combine(day, start) + dt.timedelta(hours=hours)).time()
    anglers, fished = rng.choice([(1, None), (2, None), (3, "no"), (0, "yes"), (2, "yes")])
    off = rng.choice([None, None, 0.5, 1])
    status = rng.choice([None, None, "done", "cut short"])
    if writer.slip(0.25):
        status = rng.choice(["log not finished", "log not finished", "cancelled", "void"])
    row: Row = {
        "trip": name,
        "date": writer.spoiled(day, "soon", share=0.02),
        "water": writer.spelled(rng.choice([*(water for water, _ in WATERS), "Hollin Pool"])),
        "start": writer.spoiled(start, "dawn", share=0.02),
        "end": writer.spoiled(end, "dark", share=0.02),
        "anglers": writer.spoiled(anglers, "crew", 1.5, share=0.02),
        "guide_fished": fished,
        "hours_off": writer.spoiled(off, "lunch", -1) if not writer.slip(0.05) else 13,
        "kind": rng.choice([None, None, "own"]),
        "status": status,
    }
    if writer.slip(0.1) and settings["usual_start"]:
        row["start"], hours = None, 5.0
    if writer.slip(0.08):
        row["start"], row["end"] = rng.choice(
            [
                (dt.time(9, 0), dt.time(8, 0)),
                (dt.time(9, 0), dt.time(9, 0)),
                (dt.time(4, 0), dt.time(21, 0)),
                (dt.time(18, 0), dt.time(6, 0)),
            ]
        )
        row["end_date"] = rng.choice([None, day + dt.timedelta(days=1)])
    rods = (anglers + (fished == "yes")) * int(str(settings["rods_per_angler"] or 1))
    return row, hours - (off or 0), rods
