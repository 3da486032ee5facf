"""Small season logs from a seed, in which every rule of the rows turns up, several at once."""

import datetime as dt
from dataclasses import dataclass, field
from random import Random

from tests.reference.log import Cell, Line, Log, Row, Unread

TECHNIQUES: tuple[tuple[str, str, str | None], ...] = (
    ("Drop shot", "slow", "DS; finesse drop"),
    ("Jerkbait", "moving", "suspending jerkbait"),
    ("Casting jig", "slow", "skirted jig; flipping"),
    ("Bladed jig", "moving", "flipping; vibrating jig"),
    ("Topwater", "moving", None),
)
UNLISTED = ("Hair jig", "Float and fly")
WATERS = (("Lake Arden", "Arden; the big lake"), ("Otter Mere", None))
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
FISH = (
    "largemouth bass",
    "largemouth bass",
    "smallmouth bass",
    "spotted bass",
    "bass",
    "walleye",
    "bluegill",
)


@dataclass
class Writer:
    """A careless guide with a seed: what he is like this season, and what he has written so far."""

    rng: Random
    techniques: list[str]
    care: float
    trips: list[Row | Line] = field(default_factory=list)
    effort: list[Row | Line] = field(default_factory=list)
    catch: list[Row | Line] = field(default_factory=list)

    def chance(self, share: float) -> bool:
        return self.rng.random() < share

    def slip(self, share: float) -> bool:
        """Whether a slip of that share in a careless season happens in this one."""
        return self.chance(share * (1 - self.care))

    def spelled(self, name: str) -> str:
        """A name as it may be typed: case, spaces and hyphens differ, another name serves."""
        others = [
            other for known, *_, also in (*TECHNIQUES, *WATERS) if known == name for other in _split(also)
        ]
        others = [other for other in others if other != "flipping"]
        spellings = [
            name,
            name,
            name.lower(),
            name.upper(),
            name.replace(" ", "-"),
            name.replace(" ", ""),
            *others,
        ]
        return self.rng.choice(spellings)

    def spoiled(self, value: Cell, *unread: str | float, share: float = 0.05) -> Cell:
        return Unread(self.rng.choice(unread)) if self.slip(share) else value

    def lines(self, rows: list[Row | Line]) -> None:
        """A blank row, a totals line or a second heading, now and then."""
        if rows and self.slip(0.06):
            rows.append(self.rng.choice([Line.BLANK, Line.BLANK, Line.TOTALS, Line.HEADING]))


def _split(also: str | None) -> list[str]:
    return [part.strip() for part in (also or "").split(";") if part.strip()]


def random_log(seed: int) -> Log:
    """Return the log of a seed."""
    rng = Random(seed)
    listed = rng.sample([name for name, *_ in TECHNIQUES], rng.randint(1, 5))
    names = listed + ([rng.choice(UNLISTED)] if rng.random() < 0.5 else [])
    if rng.random() < 0.12:
        names = names[:1]
    if rng.random() < 0.25:
        names.append("flipping")
    writer = Writer(rng, names, rng.choice([0.0, 0.4, 0.8]))
    settings = _settings(rng)
    count = rng.choice([rng.randint(1, 4), rng.randint(8, 12), rng.randint(13, 20)])
    luck = 0.0 if rng.random() < 0.08 else rng.uniform(0.1, 1.2)
    day = dt.date(2026, 4, 5)
    for number in range(1, count + 1):
        day += dt.timedelta(days=rng.choice([0, 1, 1, 2, 4, 9]) if number > 1 else 0)
        _write_trip(writer, settings, number, day, luck)
    if writer.slip(0.25):
        _write_trip(writer, settings, count + 1, dt.date(2026, 3, 30), luck)
    _stray_rows(writer)
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
    name: Cell = rng.choice([f"T-{number:03}", f"t{number}", number])
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
    stints = _stints(writer, hours, rods)
    landed = _stint_rows(writer, stints, luck, rng.choice(pointers))
    _fish_rows(writer, landed, luck, rng.choice(pointers))


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


def _stints(writer: Writer, hours: float, rods: int) -> list[Row]:
    """Return rows of Effort with their timing: by minutes, clock or parts, or by several."""
    rng = writer.rng
    names = [rng.choice(writer.techniques) for _ in range(rng.randint(1, 4))]
    way = rng.choice(
        ["minutes", "clock", "parts", "parts", "timed", "mixed" if writer.slip(0.6) else "parts"]
    )
    ways = {"timed": ("minutes", "clock"), "mixed": ("minutes", "clock", "parts")}.get(way, (way,))
    scale = rng.choice([0.3, 1.2, 2.0]) if writer.slip(0.3) else 1.0
    clock = dt.datetime(2026, 4, 1, rng.choice([6, 6, 22]))
    rows: list[Row] = []
    for name in names:
        on_it = rng.choice([None, 1, rods])
        share = min(2800, max(10, int(60 * hours * rods / len(names) / (on_it or 1) * scale) // 5 * 5))
        row: Row = {"technique": writer.spelled(name), "rods": writer.spoiled(on_it or None, "both", -2)}
        chosen = rng.choice(ways)
        if chosen == "minutes" or writer.slip(0.08):
            row["minutes"] = writer.spoiled(share, "a while", 5000)
        if chosen == "clock" or writer.slip(0.05):
            row["start"], row["end"], clock = _clock(writer, clock, share)
        if chosen == "parts" or writer.slip(0.08):
            row["parts"] = writer.spoiled(rng.choice([1, 2, 3, 6, 0.5]), "some")
        rows.append(row)
    return rows


def _clock(writer: Writer, clock: dt.datetime, minutes: int) -> tuple[Cell, Cell, dt.datetime]:
    """Return a stint's start and end, and when the next one starts; rarely a clock that cannot be."""
    end = clock + dt.timedelta(minutes=min(minutes, 700))
    if writer.slip(0.06):
        return clock.time(), writer.rng.choice([None, clock.time(), Unread("late")]), end
    return clock.time(), end.time(), end


def _stint_rows(writer: Writer, stints: list[Row], luck: float, pointer: Cell) -> list[tuple[str, int]]:
    """Write the stints; returns what each technique really landed."""
    rng = writer.rng
    tallies = rng.choice(["all", "all", "some", "none"])
    landed = []
    for place, row in enumerate(stints):
        fish = sum(rng.random() < luck / 3 for _ in range(9)) if luck and rng.random() < 0.7 else 0
        landed.append((str(row["technique"]), fish))
        if tallies == "all" or (tallies == "some" and writer.chance(0.5)):
            row["landed"] = writer.spoiled(fish, "lots", 2.5, -1)
        if writer.chance(0.6):
            row["missed"] = writer.spoiled(rng.randint(0, 3) if luck else 0, "plenty")
        if place == 0 or writer.chance(0.4):
            row["trip"] = pointer
        if writer.slip(0.03):
            row["technique"] = None
        writer.lines(writer.effort)
        writer.effort.append(row)
    return landed


def _fish_rows(writer: Writer, landed: list[tuple[str, int]], luck: float, pointer: Cell) -> None:
    """Write rows of Catch: some fish, all of them, or more than were tallied."""
    rng = writer.rng
    habit = rng.choice(["few", "all", "more", "nothing"])
    rows: list[Row] = []
    for technique, fish in landed if luck and habit != "nothing" else []:
        share = fish // 2 if habit == "few" else fish + (habit == "more") * rng.randint(0, 2)
        while share > 0:
            count = rng.randint(1, share)
            share -= count
            rows.append(_fish_row(writer, None if writer.chance(0.12) else technique, count))
    if luck and writer.slip(0.15):
        rows.append(_fish_row(writer, writer.spelled(rng.choice([*writer.techniques, "Topwater"])), 1))
    if luck and writer.slip(0.1):
        rows.append(_fish_row(writer, None, rng.randint(1, 3)))
    if not rows and writer.chance(0.3):
        rows.append({"species": "none"})
    for place, row in enumerate(rows):
        if place == 0 or writer.chance(0.3):
            row["trip"] = pointer
        writer.lines(writer.catch)
        writer.catch.append(row)


def _fish_row(writer: Writer, technique: str | None, count: int) -> Row:
    rng = writer.rng
    species: Cell = rng.choice(FISH)
    return {
        "technique": technique,
        "species": Unread("mystery fish") if writer.slip(0.04) else species,
        "count": writer.spoiled(count if count > 1 else None, "several", 1.5),
        "fate": writer.spoiled(rng.choice([None, None, "released", "kept"]), "eaten?"),
    }


def _stray_rows(writer: Writer) -> None:
    """Rows that point at no trip: the first without one, and a number that is nowhere."""
    rng = writer.rng
    if writer.slip(0.15):
        writer.effort.insert(0, {"technique": "Jerkbait", "minutes": 60, "landed": 2})
    if writer.slip(0.15):
        writer.catch.insert(0, {"species": "largemouth bass", "count": 2})
    for rows, row in (
        (writer.effort, {"technique": "Jerkbait", "minutes": 30}),
        (writer.catch, {"species": "bass"}),
    ):
        if writer.slip(0.3):
            rows.append({"trip": rng.choice(["T-999", dt.date(2026, 1, 1)]), **row})
            rows.append(dict(row))
