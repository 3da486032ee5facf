"""A season in which every text and every number that matters is distinctive, and known to whom it may go."""

import datetime as dt
import re
from dataclasses import dataclass, field
from pathlib import Path
from random import Random

import openpyxl

from reporter.schema.column import Column
from reporter.schema.log import BY_KEY, SHEETS
from reporter.schema.sheets.season import SETTINGS

Row = dict[str, object]

_SPECIES = ("largemouth bass", "smallmouth bass", "bluegill", "walleye")
_UNMARKED = frozenset({"date", "choice", "time", "compass", "species", "month day"})


@dataclass(frozen=True)
class Secret:
    """Something distinctive, and the clients' codes whose copies may hold it."""

    what: str
    text: str
    readers: frozenset[str] = frozenset()

    def in_bytes(self, content: bytes) -> bool:
        if self.text.replace(".", "", 1).isdigit():
            return re.search(rb"(?<![\d.])" + re.escape(self.text.encode()) + rb"(?!\d)", content) is not None
        return self.text.casefold().encode() in content.lower()


@dataclass(frozen=True)
class Bounds:
    """Fish of a client on a trip: his by name, these and those that must be nobody's, all but others'."""

    own: int
    least: int
    most: int


@dataclass
class Season:
    """Rows by sheet, what is secret in them, and what each client's copy may tell of the fish.

    landed: (client, trip) -> bounds.
    """

    rows: dict[str, list[Row]] = field(default_factory=dict)
    secrets: list[Secret] = field(default_factory=list)
    clients: list[str] = field(default_factory=list)
    landed: dict[tuple[str, str], Bounds] = field(default_factory=dict)

    def keep(self, what: str, text: object, readers: frozenset[str] = frozenset()) -> object:
        self.secrets.append(Secret(what, f"{text:.2f}" if isinstance(text, float) else str(text), readers))
        return text


class Writer:
    """Writes a season from a seed."""

    def __init__(self, seed: int) -> None:
        self.rng = Random(seed)  # noqa: S311 - nothing secret
        self.season = Season()
        self._words = 0
        self._lengths = self.rng.sample(range(801, 2399), 600)

    def word(self) -> str:
        self._words += 1
        return f"zq{self._words:04d}{self.rng.choice('bcdfgk')}x"

    def size(self) -> float:
        """A length or weight that no other fish has; never a whole number."""
        hundredths = self._lengths.pop()
        return (hundredths + (hundredths % 10 == 0)) / 100

    def private(self, sheet: str, row: Row, readers: frozenset[str] = frozenset()) -> Row:
        """Fill every blank column of a row with something distinctive; client columns may go to readers."""
        for column in BY_KEY[sheet].columns:
            if column.key not in row and column.kind not in _UNMARKED:
                row[column.key] = self._filling(sheet, column, readers)
        return row

    def _filling(self, sheet: str, column: Column, readers: frozenset[str]) -> object:
        if column.kind in ("count", "number") or column.refers:
            return None
        allowed = readers if column.audience == "client" else frozenset()
        return self.season.keep(f"{sheet} {column.heading}", self.word(), allowed)


def planted_season(seed: int) -> Season:
    """Make the season of a seed: a few clients, single and shared trips, named and unnamed fish."""
    writer = Writer(seed)
    season, rng = writer.season, writer.rng
    season.rows = {sheet.key: [] for sheet in SHEETS}
    _settings(writer)
    season.clients = [writer.word() for _ in range(rng.randint(3, 6))]
    for code in season.clients:
        _client(writer, code)
    waters = [_water(writer, share) for share in ("yes", "masked", "no", None)]
    techniques = [writer.word() for _ in range(4)]
    users: dict[str, set[str]] = {technique: set() for technique in techniques}
    readers: dict[str, set[str]] = {water["water"]: set() for water in waters}
    for number in range(rng.randint(4, 9)):
        _trip(writer, number, readers, users)
    for water in waters:
        _name_water(writer, water, frozenset(readers[str(water["water"])]))
    for technique in techniques:
        may = frozenset(users[technique])
        season.keep("Techniques Technique", technique, may)
        row: Row = {"technique": technique, "style": rng.choice(["moving", "slow"])}
        season.rows["techniques"].append(writer.private("techniques", row, may))
    _papers(writer)
    return season


def _settings(writer: Writer) -> None:
    latitude, longitude = 33.0 + writer.rng.random() * 9, 85.0 + writer.rng.random() * 9
    given: Row = {
        "units": writer.rng.choice(["us", "us", "metric"]),
        "first_day": dt.date(2026, 1, 1),
        "last_day": dt.date(2026, 12, 31),
        "latitude": writer.season.keep("Latitude", round(latitude, 2)),
        "longitude": -float(str(writer.season.keep("Longitude", round(longitude, 2)))),
        "fate_if_blank": "released",
        "thanks": "Thank you.",
        "contact": "Write to the dock.",
        "guide": "The outfit",
        "guide_code": writer.season.keep("Guide code", writer.word()),
        "season_name": writer.season.keep("Season name", writer.word()),
    }
    for setting in SETTINGS:
        writer.season.rows["season"].append({"setting": setting.heading, "value": given.get(setting.key)})


def _client(writer: Writer, code: str) -> None:
    first, last, consent = writer.word(), writer.word(), writer.rng.choice(["yes", "yes", "no", None])
    name = f"{first} {last}"
    himself = frozenset({code}) if consent == "yes" else frozenset()
    writer.season.keep("Clients Name", first, himself)
    writer.season.keep("Clients Name", last, himself)
    writer.season.keep("Clients Client", code, himself)
    row: Row = {
        "client": code,
        "name_on_summary": name,
        "consent_to_name": consent,
        "youth": writer.rng.choice(["yes", "no", None]),
    }
    writer.season.rows["clients"].append(writer.private("clients", row))


def _water(writer: Writer, share: str | None) -> Row:
    row: Row = {"water": writer.word(), "share_name": share, "masked_name": writer.word()}
    writer.season.rows["waters"].append(writer.private("waters", row))
    return row


def _name_water(writer: Writer, row: Row, readers: frozenset[str]) -> None:
    nobody: frozenset[str] = frozenset()
    shared = row["share_name"] == "yes"
    masked = row["share_name"] in ("masked", None)
    writer.season.keep("Waters Water", row["water"], readers if shared else nobody)
    writer.season.keep("Waters Masked name", row["masked_name"], readers if masked else nobody)


def _trip(writer: Writer, number: int, readers: dict[str, set[str]], users: dict[str, set[str]]) -> None:
    """Write a trip with its stints and fish; now and then scouting, unfinished, or told to name too much."""
    season, rng = writer.season, writer.rng
    name = str(season.keep("Trips Trip", writer.word()))
    clients = rng.sample(season.clients, rng.choice([1, 1, 2, 2, 3]))
    kind = rng.choice(["guided", None, None, None, "scouting"])
    status = rng.choice(["done", None, None, "cut short", "log not finished"])
    told = clients if kind != "scouting" and status != "log not finished" else []
    water = rng.choice(list(readers))
    readers[water].update(told)
    row: Row = {
        "trip": name,
        "date": dt.date(2026, 3, 1) + dt.timedelta(days=20 * number + rng.randrange(15)),
        "water": water,
        "start": dt.time(6),
        "end": dt.time(11),
        "anglers": len(clients) if rng.random() < 0.7 else len(clients) + 1,
        "client": "; ".join(clients),
        "kind": kind,
        "status": status,
        "water_temp_c": 62,
        "sky": "overcast",
    }
    row["for_client"] = _for_client(writer, clients, told)
    season.rows["trips"].append(writer.private("trips", row))
    _effort_and_fish(writer, name, clients, int(str(row["anglers"])), told, users)


def _for_client(writer: Writer, clients: list[str], told: list[str]) -> str:
    """Return words for the clients of a trip; now and then they name one, whom alone they may reach."""
    word = writer.word()
    if writer.rng.random() < 0.4:
        one = writer.rng.choice(writer.season.rows["clients"])
        agreed = {str(one["client"])} if one["consent_to_name"] == "yes" else set()
        writer.season.keep("Trips For the client", word, frozenset(told) & agreed)
        called = writer.rng.choice(
            [one["client"], one["name_on_summary"], *str(one["name_on_summary"]).split()]
        )
        return f"{word} for {str(called).title()}'s sake"
    writer.season.keep("Trips For the client", word, frozenset(told))
    return f"a day of {word}"


def _effort_and_fish(
    writer: Writer, trip: str, clients: list[str], anglers: int, told: list[str], users: dict[str, set[str]]
) -> None:
    season, rng = writer.season, writer.rng
    techniques = rng.sample(list(users), rng.randint(1, 3))
    outsiders = [code for code in season.clients if code not in clients]
    stints = [
        (technique, rng.choice(["", "", "", *clients, "guide"]), rng.choice([None, None, rng.randint(0, 4)]))
        for technique in techniques
    ]
    fish = [
        (rng.choice(techniques), rng.choice(["", "", *clients, "guide", *outsiders[:1]]), rng.randint(1, 2))
        for _ in range(rng.choice([0, 1, 3, 6]))
    ]
    # A fish that names nobody on a stint of somebody is that one's.
    on_stint = {technique: who for technique, who, _ in stints}
    fish_of = [(technique, who or on_stint[technique], count) for technique, who, count in fish]
    aboard = {*clients, *(who for _, who, _ in (*stints, *fish) if who not in ("", "guide"))}
    alone = len(aboard) == 1
    for technique, who, tally in stints:
        may = frozenset(code for code in told if who in ("", code))
        users[technique].update(may)
        row: Row = {
            "trip": trip,
            "technique": technique,
            "minutes": 60,
            "rods": 1,
            "landed": tally,
            "missed": 3,
            "angler": who or None,
        }
        season.rows["effort"].append(writer.private("effort", row, may))
    for (technique, who, count), (_, whose, _) in zip(fish, fish_of, strict=True):
        may = frozenset(code for code in told if whose == code or (alone and whose == ""))
        users_of = frozenset(code for code in told if whose in ("", code))
        users[technique].update(users_of)
        size: Row = {}
        if count == 1 and rng.random() < 0.7:
            size["length_mm"] = season.keep("Catch Length", writer.size(), may)
        row = {
            "trip": trip,
            "technique": technique,
            "species": rng.choice(_SPECIES),
            "count": count,
            **size,
            "fate": rng.choice(["kept", "released", None]),
            "angler": who or None,
        }
        season.rows["catch"].append(writer.private("catch", row))
    for code in told:
        season.landed[code, trip] = _bounds(code, stints, fish_of)


def _bounds(code: str, stints: list[tuple[str, str, int | None]], fish: list[tuple[str, str, int]]) -> Bounds:
    """Return what a client's copy may tell of a trip at least and at most, whatever the rule between."""
    techniques = {technique for technique, *_ in (*stints, *fish)}
    landed = sum(
        max(
            sum(tally or 0 for name, _, tally in stints if name == technique),
            sum(count for name, _, count in fish if name == technique),
        )
        for technique in techniques
    )
    others = sum(count for _, who, count in fish if who not in ("", code))
    named = {name for name, who, _ in stints if who}
    own = sum(count for _, who, count in fish if who == code)
    nobodys = sum(count for name, who, count in fish if not who and name not in named)
    return Bounds(own, own + nobodys, landed - others)


def _papers(writer: Writer) -> None:
    for sheet in ("documents", "reports", "fees"):
        keys = {"documents": "document", "reports": "report", "fees": "document"}
        row: Row = {keys[sheet]: writer.season.keep(f"{sheet} name", writer.word())}
        writer.season.rows[sheet].append(writer.private(sheet, row))


def save_in_two(season: Season, folder: Path) -> list[Path]:
    """Write a season as two logs, the older of which says nothing of clients, waters or techniques."""
    trips = [str(row["trip"]) for row in season.rows["trips"]]
    older = set(trips[: len(trips) // 2])
    paths = []
    for name, told in (("older", older), ("newer", set(trips) - older)):
        rows = {
            key: [row for row in of_sheet if "trip" not in row or row["trip"] in told]
            for key, of_sheet in season.rows.items()
            if name == "newer" or key in ("season", "trips", "effort", "catch")
        }
        paths.append(folder / f"{name}.xlsx")
        save(Season(rows), paths[-1])
    return paths


def save(season: Season, path: Path) -> None:
    """Write a season as a workbook."""
    book = openpyxl.Workbook()
    book.remove(book.active)
    for sheet in SHEETS:
        page = book.create_sheet(sheet.name)
        page.append([column.headed("us") for column in sheet.columns])
        for row in season.rows.get(sheet.key, []):
            page.append([row.get(column.key) for column in sheet.columns])
    book.save(path)
