"""Seeded logs against a second computation in plain Python, from the rows as they are typed."""

import datetime as dt
from collections import Counter
from dataclasses import dataclass, field
from random import Random

import pytest

from tests.compute.open_data.archives import CATCH, TRIPS, WATERS, Row, data_of
from tests.conftest import Change, WriteLog

SHARES = ("yes", "no", "masked", None)
SPECIES = ("largemouth bass", "smallmouth bass", "walleye", "bluegill")
COUNTED = ("largemouth bass", "smallmouth bass")
LATIN = {
    "largemouth bass": "Micropterus salmoides",
    "smallmouth bass": "Micropterus dolomieu",
    "walleye": "Sander vitreus",
    "bluegill": "Lepomis macrochirus",
}


@dataclass
class Expected:
    """What the archive must say: effort and water by event, fish by name, fates, surplus."""

    efforts: list[str] = field(default_factory=list)
    waters: list[str] = field(default_factory=list)
    fish: Counter[str] = field(default_factory=Counter)
    absent: Counter[str] = field(default_factory=Counter)
    fates: Counter[str] = field(default_factory=Counter)
    parents: int = 0
    surplus: int = 0


@dataclass
class Written:
    """Rows of a log."""

    trips: list[Row] = field(default_factory=list)
    effort: list[Row] = field(default_factory=list)
    catch: list[Row] = field(default_factory=list)


def season(rng: Random) -> tuple[dict[str, Change], Expected]:
    rows, expected = Written(), Expected()
    outings: Counter[str] = Counter()
    for number in range(rng.randint(3, 9)):
        told = trip(rng, number, rows, expected)
        if told and rows.trips[-1][-1]:
            outings[str(rows.trips[-1][-1])] += 1
    expected.parents = sum(trips > 1 for trips in outings.values())
    waters = [[f"Water {i}", "US-MI", "Fulton", f"00{i}", share, "a lake"] for i, share in enumerate(SHARES)]
    settings: list[Row] = [
        ["Setting", "Value"],
        ["Last day", dt.date(2026, 12, 31)],
        ["Species counted", "; ".join(COUNTED)],
    ]
    return {
        "Season": settings,
        "Trips": [[*TRIPS, "Guide fished", "Kind", "Status", "Outing"], *rows.trips],
        "Effort": [["Trip", "Technique", "Minutes", "Landed"], *rows.effort],
        "Catch": [CATCH, *rows.catch],
        "Waters": [WATERS, *waters],
    }, expected


def trip(rng: Random, number: int, rows: Written, expected: Expected) -> bool:
    """Write a trip and add what must be told of it; whether it is."""
    water, anglers, half_hours = rng.randrange(4), rng.randint(1, 4), rng.randint(4, 16)
    fished = rng.choice(["yes", None])
    kind, status = (
        rng.choice([None, None, "guided", "own"]),
        rng.choice([None, None, "log not finished", "void"]),
    )
    outing = rng.choice([None, None, "camp", "river"])
    end = dt.time(6 + half_hours // 2, 30 * (half_hours % 2))
    day = dt.date(2026, 3, 1) + dt.timedelta(days=number)
    place = [f"T-{number}", day, f"Water {water}", dt.time(6), end, anglers]
    rows.trips.append([*place, fished, kind, status, outing])
    tally = rng.choice([None, 0, 0, 5])
    rows.effort.append([f"T-{number}", "Drop shot", 60, tally])
    caught = [
        (rng.choice(SPECIES), rng.randint(1, 3), rng.choice(["kept", "released", None]))
        for _ in range(rng.choice([0, 0, 1, 4]))
    ]
    for name, count, fate in caught:
        rows.catch.append([f"T-{number}", "Drop shot", name, count, None, None, None, fate])
    if kind == "own" or status == "void":
        return False
    rods = anglers + (fished == "yes")
    expected.efforts.append(f"{rods * half_hours / 2:g} angler-hours")
    expected.waters.append(f"Water {water}" if SHARES[water] == "yes" else "")
    for name, count, fate in caught:
        expected.fish[LATIN[name]] += count
        expected.fates[str(fate)] += fate is not None
    counted = sum(count for name, count, _ in caught if name in COUNTED)
    expected.surplus += max(0, (tally or 0) - counted)
    if tally == 0 and counted == 0 and status is None:
        expected.absent.update(LATIN[name] for name in COUNTED)
    return True


@pytest.mark.parametrize("seed", range(30))
def test_archive_says_what_plain_arithmetic_says(seed: int, write_log: WriteLog) -> None:
    sheets, expected = season(Random(seed))  # noqa: S311 - nothing secret
    data = data_of(write_log(sheets))
    outings = data.events["samplingEffort"] == ""
    told = data.events[~outings]
    assert int(outings.sum()) == expected.parents
    assert told["samplingEffort"].tolist() == expected.efforts
    assert told["waterBody"].tolist() == expected.waters
    fish = data.occurrences[data.occurrences["occurrenceStatus"] == "detected"]
    none = data.occurrences[data.occurrences["occurrenceStatus"] == "notDetected"]
    assert fish.groupby("scientificName")["individualCount"].sum().to_dict() == dict(expected.fish)
    assert none["individualCount"].sum() == 0
    assert Counter(none["scientificName"]) == expected.absent
    fates = data.measurements[data.measurements["measurementType"] == "fate"]
    assert Counter(fates["measurementValue"]) == +expected.fates
    assert data.surplus == expected.surplus
