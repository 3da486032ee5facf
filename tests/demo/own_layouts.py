"""One invented season in layouts that are not ours, and in ours: what each of them says must be the same."""

import datetime as dt
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path

import openpyxl
from numpy.random import RandomState
from openpyxl.styles import Font
from openpyxl.worksheet.worksheet import Worksheet

SEED = 419
YEAR = 2026
TRIPS = 14
LAKES = ("Lake Arden", "Otter Mere")
TECHNIQUES = ("Drop shot", "Jerkbait", "Swim jig")
CLARITY = ("clear", "stained", "muddy")
KINDS = ("largemouth bass", "smallmouth bass")


@dataclass(frozen=True)
class Fish:
    technique: str
    species: str
    inches: float
    kept: bool


@dataclass(frozen=True)
class Trip:
    number: int
    date: dt.date
    lake: str
    start: dt.time
    end: dt.time
    anglers: int
    water_f: int
    clarity: str
    remark: str
    minutes: dict[str, int]
    fish: list[Fish] = field(default_factory=list)

    def landed(self, technique: str) -> int:
        return sum(fish.technique == technique for fish in self.fish)

    def count(self, species: str, *, kept: bool) -> int:
        return sum(fish.species == species and fish.kept is kept for fish in self.fish)


def season() -> list[Trip]:
    """Trips that share their time evenly between two or three techniques, so that every layout can say it."""
    rng = RandomState(SEED)
    trips = []
    for at in range(TRIPS):
        hours = int(rng.choice([4, 5, 6]))
        used = [TECHNIQUES[i] for i in sorted(rng.choice(3, size=int(rng.choice([2, 3])), replace=False))]
        trip = Trip(
            at + 1,
            dt.date(YEAR, 4, 2) + dt.timedelta(days=4 * at),
            LAKES[at % 3 == 2],
            dt.time(6, 30),
            dt.time(6 + hours, 30),
            int(rng.randint(1, 4)),
            52 + at,
            CLARITY[int(rng.randint(3))],
            "wind got up" if at == 3 else "",
            dict.fromkeys(used, hours * 60 // len(used)),
        )
        for technique in used:
            for _ in range(int(rng.poisson(1.6))):
                kind = KINDS[int(rng.rand() < 0.3)]
                inches = round((12 + 7 * float(rng.rand())) * 4) / 4
                trip.fish.append(Fish(technique, kind, inches, bool(rng.rand() < 0.2)))
        trips.append(trip)
    return trips


Rows = list[list[object]]


def _fill(page: Worksheet, rows: Rows) -> None:
    for row in rows:
        page.append(row)


def _book(**sheets: Rows) -> openpyxl.Workbook:
    book = openpyxl.Workbook()
    book.properties.created = dt.datetime(YEAR, 1, 1)  # a new run gives the same bytes
    book.remove(book.active)
    for name, rows in sheets.items():
        _fill(book.create_sheet(name.replace("_", " ")), rows)
    return book


def write_ours(path: Path, trips: list[Trip], *, sizes: bool = True, parts: bool = True) -> None:
    """The season in our own layout; without sizes fish are counts by kind, time is shares of the trip's."""
    effort: Rows = [["Trip", "Technique", "Parts" if parts else "Minutes", "Anglers on it", "Landed"]]
    catch: Rows = [["Trip", "Technique", "Species", "Count", "Length (in)", "Fate"]]
    for trip in trips:
        for technique, minutes in trip.minutes.items():
            effort.append(
                [
                    str(trip.number),
                    technique,
                    minutes / 60 if parts else minutes,
                    None,
                    trip.landed(technique),
                ]
            )
        if sizes:
            catch += [
                [str(trip.number), f.technique, f.species, None, f.inches, "kept" if f.kept else "released"]
                for f in trip.fish
            ]
        else:
            catch += [
                [
                    str(trip.number),
                    None,
                    kind,
                    trip.count(kind, kept=kept),
                    None,
                    "kept" if kept else "released",
                ]
                for kind in KINDS
                for kept in (True, False)
            ]
    _book(
        Season=[
            ["Setting", "Value"],
            ["Units", "us"],
            ["First day", dt.date(YEAR, 1, 1)],
            ["Last day", dt.date(YEAR, 12, 31)],
            ["As-of date", dt.date(YEAR, 12, 31)],
        ],
        Trips=[
            ["Trip", "Date", "Water", "Start", "End", "Anglers", "Water temp (°F)", "Clarity", "Notes"],
            *(
                [
                    str(t.number),
                    t.date,
                    t.lake,
                    t.start,
                    t.end,
                    t.anglers,
                    t.water_f,
                    t.clarity,
                    t.remark or None,
                ]
                for t in trips
            ),
        ],
        Effort=effort,
        Catch=catch,
        Techniques=[
            ["Technique", "Style"],
            ["Drop shot", "slow"],
            ["Jerkbait", "moving"],
            ["Swim jig", "moving"],
        ],
    ).save(path)


def write_sheets(path: Path, trips: list[Trip]) -> None:
    """Three sheets of other names and headings; the first has a title, groups of headings and units."""
    book = _book(
        Days_out=[
            ["My season on the water"],
            [],
            ["TRIP", None, None, "CLOCK", None, None, "WATER", None, "Remarks"],
            ["Outing no", "When", "Lake", "Lines in", "Lines out", "Guests", "Temp", "Vis", None],
            [None, None, None, None, None, None, "(°F)", None, None],
            *(
                [t.number, t.date, t.lake, t.start, t.end, t.anglers, t.water_f, t.clarity, t.remark or None]
                for t in trips
            ),
        ],
        What_we_threw=[
            ["Outing no", "Lure type", "Time on it (hrs)", "In the boat"],
            *([t.number, name, mins / 60, t.landed(name)] for t in trips for name, mins in t.minutes.items()),
        ],
        Fish_boated=[
            ["Outing no", "Lure type", "Kind of fish", "Inches", "Kept?"],
            *(
                [t.number, f.technique, f.species, f.inches, "kept" if f.kept else "rel"]
                for t in trips
                for f in t.fish
            ),
        ],
        Petrol=[["Station", "Litres"], ["North ramp", 31], ["Town", 22.5]],
    )
    page = book["Days out"]
    for span in ("A3:C3", "D3:F3", "G3:H3"):
        page.merge_cells(span)
    page["A1"].font = Font(bold=True, size=16)
    book.save(path)


def write_wide(path: Path, trips: list[Trip]) -> None:
    """A sheet a month, a row a trip, two columns a technique under its merged name, kept and released."""
    months = {month: [t for t in trips if f"{t.date:%B}" == month] for month in ("April", "May")}
    book = _book(**{month: _wide(some) for month, some in months.items()})
    for page in book.worksheets:
        for first in range(8, 14, 2):
            page.merge_cells(start_row=2, end_row=2, start_column=first, end_column=first + 1)
    book.save(path)


def _wide(trips: list[Trip]) -> Rows:
    over: list[object] = [None] * 7
    under: list[object] = [
        "Date",
        "Lake",
        "Time in",
        "Time out",
        "Party size",
        "Water temp °F",
        "Water colour",
    ]
    for name in TECHNIQUES:
        over += [name, None]
        under += ["hours", "fish"]
    under += ["LMB kept", "LMB released", "SMB kept", "SMB released", "What happened"]
    rows: Rows = [[f"{trips[0].date:%B %Y}"], over, under]
    for t in trips:
        row: list[object] = [t.date, t.lake, t.start, t.end, t.anglers, t.water_f, t.clarity]
        for name in TECHNIQUES:
            fished = name in t.minutes
            row += [t.minutes[name] / 60, t.landed(name)] if fished else [None, None]
        row += [t.count(kind, kept=kept) for kind in KINDS for kept in (True, False)]
        rows.append([*row, t.remark or None])
    totals: list[object] = ["TOTAL", *[None] * 6]
    for name in TECHNIQUES:
        totals += [sum(t.minutes.get(name, 0) for t in trips) / 60, sum(t.landed(name) for t in trips)]
    totals += [sum(t.count(kind, kept=kept) for t in trips) for kind in KINDS for kept in (True, False)]
    return [*rows, totals]


def write_fish_list(path: Path, trips: list[Trip]) -> None:
    """One sheet, a row a fish, the trip repeated; on further fish of a technique its cells are blank."""
    headings = "Day Where On_water Off_water People Bait_used Hrs_on_it Sp Len_(in) Fate"
    rows: Rows = [[word.replace("_", " ") for word in headings.split()]]
    for t in trips:
        for name, minutes in t.minutes.items():
            caught = [f for f in t.fish if f.technique == name]
            trip: list[object] = [f"{t.date:%B} {t.date.day}, {YEAR}", t.lake, t.start, t.end, t.anglers]
            for at, f in enumerate(caught):
                cells = trip if at == 0 else [None] * 5
                rows.append(
                    [*cells, name, minutes / 60, f.species, f.inches, "kept" if f.kept else "released"]
                )
            if not caught:
                rows.append([*trip, name, minutes / 60, None, None, None])
    _book(**{f"Fish_{YEAR}": rows}).save(path)


OWN_LAYOUTS: dict[str, Callable[[Path, list[Trip]], None]] = {
    "my season, three sheets.xlsx": write_sheets,
    "my season, a column a technique.xlsx": write_wide,
    "my season, a row a fish.xlsx": write_fish_list,
}
