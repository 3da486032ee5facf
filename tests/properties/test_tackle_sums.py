"""Tackle of random logs against plain sums over their stints, one stint after the other.

The stints' rod-hours and fish are those of the table `stints`, which the reference holds to account;
hang-ups, lures lost, misses and names are those that were typed.
"""

import csv
import math
from collections import defaultdict
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from itertools import groupby
from pathlib import Path
from random import Random

import pytest

from reporter.compute.outputs import output_tables
from reporter.compute.report import make_report
from reporter.run.season import read_season
from reporter.write.tables import write_tables
from tests.reference.log import Log, folded, number
from tests.reference.random_log import random_log
from tests.reference.workbook import write_log

SEEDS = range(40)
SIZES = {"1/4 oz": "a quarter", "1/4-OZ": "a quarter", "14 oz": "fourteen", "3.5 in": "3 1/2", "35 in": "35"}
"""What may be typed as a size -> which one that is."""
NAMES: dict[str, tuple[str | None, ...]] = {
    "variant": (None, "Deep", "deep ", "shal-low", "Shallow"),
    "size": (None, *SIZES),
    "colour": (None, "dark", "DARK", "Light."),
    "cover": (None, "dock", "Dock", "weed line"),
}
COUNTS = ("hang_ups", "lures_lost")
Table = list[dict[str, str]]
Key = tuple[str, ...]


@dataclass(frozen=True)
class Stint:
    """A stint in the rates. fish: None where they cannot be told to be its own; pooled: its technique's."""

    trip: str
    technique: str
    hours: float
    fish: float | None
    pooled: float
    counts: dict[str, float | None]
    missed: float | None
    names: dict[str, str]

    @property
    def pair(self) -> Key:
        return self.trip, self.technique


def with_tackle(seed: int) -> Log:
    log, draw = random_log(seed), Random(seed + 1)  # noqa: S311
    shy = draw.random()
    names = {key: words if draw.random() < 0.4 else (None, words[1]) for key, words in NAMES.items()}
    plain = draw.random() < 0.5  # most guides write little beyond the technique
    for row in log.effort:
        if isinstance(row, dict):
            for key, words in names.items():
                row[key] = None if plain and draw.random() < 0.9 else draw.choice(words)
            for key in COUNTS:
                row[key] = None if draw.random() < shy else draw.choice([0, 0, 1, 3])
    return log


def tables_of(log: Log, folder: Path) -> dict[str, Table]:
    path = folder / "log.xlsx"
    write_log(log, path)
    season = read_season(path).season
    assert season is not None
    write_tables(output_tables(make_report(season)), "a random log", folder / "tables")
    found = {}
    for name in ("stints", "trip_techniques", "tackle", "tackle_used", "restock", "season"):
        with (folder / "tables" / f"{name}.csv").open(encoding="utf-8", newline="") as file:
            found[name] = list(csv.DictReader(file))
    return found


def stints_in_rates(log: Log, tables: dict[str, Table]) -> list[Stint]:
    pairs = {(row["trip"], row["technique"]): row for row in tables["trip_techniques"]}
    stints: list[Stint] = []
    for row in tables["stints"]:
        pair = pairs[row["trip"], row["technique"]]
        if pair["in_rates"] != "true":
            continue
        typed = log.effort[int(row["row"]) - 2]  # below the heading
        assert isinstance(typed, dict)
        first = not any(one.pair == (row["trip"], row["technique"]) for one in stints)
        stints.append(
            Stint(
                row["trip"],
                row["technique"],
                float(row["rod_hours"]),
                float(row["fish"]) if row["fish"] else None,
                float(pair["fish"]) if first else 0.0,
                {key: number(typed, key) for key in COUNTS},
                number(typed, "missed"),
                {key: name_of(key, typed[key]) for key in NAMES},
            )
        )
    return stints


def name_of(key: str, typed: object) -> str:
    """Return what is one, however it is typed; "" is not recorded."""
    text = "" if typed is None else str(typed)
    return SIZES[text] if key == "size" and text else folded(text)


def key_of(by: str) -> Callable[[Stint], Key]:
    """What a stint is grouped by; what is not recorded is one group."""
    if by == "technique":
        return lambda one: (folded(one.technique),)
    if by in ("size", "colour"):
        return lambda one: (folded(one.technique), one.names[by])
    if by == "cover":
        return lambda one: (one.names["cover"] or folded("not recorded"),)
    return lambda one: (
        (folded(one.technique + one.names["variant"]),) if one.names["variant"] else (folded("not recorded"),)
    )


def grouped(stints: Iterable[Stint], by: str) -> dict[Key, list[Stint]]:
    groups: dict[Key, list[Stint]] = defaultdict(list)
    for one in stints:
        groups[key_of(by)(one)].append(one)
    return groups


def own_fish(stints: list[Stint], by: str) -> list[Stint]:
    """The stints whose fish are told to be their group's."""
    spans = defaultdict(set)
    for one in stints:
        spans[one.pair].add(key_of(by)(one))
    return [one for one in stints if one.fish is not None or len(spans[one.pair]) == 1]


def fish_of(one: Stint) -> float:
    return one.pooled if one.fish is None else one.fish


def trips_of(stints: Iterable[Stint]) -> int:
    return len({one.trip for one in stints})


def same(written: str, expected: float | None) -> bool:
    if expected is None or not written:
        return expected is None and not written
    return math.isclose(float(written), expected, rel_tol=1e-9, abs_tol=1e-9)


def ratio(part: float, whole: float) -> float | None:
    return part / whole if whole else None


def expected_rates(group: list[Stint], bites: list[Stint]) -> dict[str, float | None]:
    expected: dict[str, float | None] = {
        "trips": trips_of(group),
        "rod_hours": sum(one.hours for one in group),
    }
    for key, name in (("hang_ups", "hang_up"), ("lures_lost", "lost")):
        say = [one for one in group if one.counts[key] is not None]
        count = sum(one.counts[key] or 0 for one in say)
        hours = sum(one.hours for one in say)
        expected |= {
            key: count if say else None,
            f"{name}_trips": trips_of(say),
            f"{name}_rod_hours": hours,
            f"{key}_per_rod_hour": ratio(count, hours),
        }
    missed, landed = sum(one.missed or 0 for one in bites), sum(map(fish_of, bites))
    return expected | {
        "missed": missed if bites else None,
        "landed": landed if bites else None,
        "bite_trips": trips_of(bites),
        "bite_rod_hours": sum(one.hours for one in bites),
        "share_landed": ratio(landed, missed + landed),
    }


def with_bites(stints: list[Stint], by: str) -> list[Stint]:
    """Stints that say what was missed; where the fish are pooled, only if all of the technique's do."""
    silent = {one.pair for one in stints if one.missed is None}
    told = [one for one in own_fish(stints, by) if one.missed is not None]
    return [one for one in told if one.fish is not None or one.pair not in silent]


@pytest.mark.parametrize("seed", SEEDS)
def test_tackle_is_a_plain_sum_over_the_stints(seed: int, tmp_path: Path) -> None:
    log = with_tackle(seed)
    tables = tables_of(log, tmp_path)
    stints = stints_in_rates(log, tables)
    for by in ("technique", "cover", "variant"):
        groups = grouped(stints, by)
        bites = grouped(with_bites(stints, by), by)
        rows = {(folded(row["group"]),): row for row in tables["tackle"] if row["by"] == by}
        assert set(rows) == set(groups)
        for key, group in groups.items():
            for field, value in expected_rates(group, bites.get(key, [])).items():
                assert same(rows[key][field], value), (by, key, field, rows[key][field], value)
        hours = sum(float(row["rod_hours"]) for row in rows.values())
        assert same(tables["season"][0]["rod_hours"], hours)
    check_used(stints, tables)
    check_restock(stints, tables["restock"])


def check_used(stints: list[Stint], tables: dict[str, Table]) -> None:
    techniques = grouped(stints, "technique")
    for by in ("technique", "size", "colour"):
        groups, placed = grouped(stints, by), grouped(own_fish(stints, by), by)
        if by != "technique":
            groups = {
                key: group
                for key, group in groups.items()
                if any(one.names[by] for one in techniques[key[:1]])
            }
        rows = {used_key(row): row for row in tables["tackle_used"] if row["by"] == by}
        assert set(rows) == set(groups)
        check_order(list(rows), groups, techniques)
        for key, group in groups.items():
            check_line(rows[key], group, placed.get(key), sum(one.hours for one in stints))


def check_order(shown: list[Key], groups: dict[Key, list[Stint]], techniques: dict[Key, list[Stint]]) -> None:
    """Techniques by their rod-hours; under each its lines by theirs, what is not recorded last."""
    blocks = [(technique, list(lines)) for technique, lines in groupby(shown, key=lambda key: key[:1])]
    assert len({technique for technique, _ in blocks}) == len(blocks)
    whole = [hours_of(techniques[technique]) for technique, _ in blocks]
    assert whole == sorted(whole, reverse=True)
    for _, lines in blocks:
        places = [(key[1:] == ("",), -hours_of(groups[key])) for key in lines]
        assert places == sorted(places)


def hours_of(group: list[Stint]) -> float:
    return round(sum(one.hours for one in group), 9)


def used_key(row: dict[str, str]) -> Key:
    technique = folded(row["technique"])
    return (technique,) if row["by"] == "technique" else (technique, name_of(row["by"], row["value"]))


def check_line(row: dict[str, str], group: list[Stint], placed: list[Stint] | None, season: float) -> None:
    trips, count, told_hours = lost(group)
    hours = sum(one.hours for one in group)
    assert same(row["stints"], len(group))
    assert same(row["trips"], trips_of(group))
    assert same(row["rod_hours"], hours)
    assert same(row["share"], hours / season)
    assert same(row["landed"], None if placed is None else sum(map(fish_of, placed))), row
    assert same(row["lures_lost"], count if trips else None)
    assert same(row["lost_trips"], trips)
    assert same(row["lost_rod_hours"], told_hours)


def check_restock(stints: list[Stint], table: Table) -> None:
    techniques = grouped(stints, "technique")
    rows = {(folded(row["technique"]),): row for row in table}
    assert set(rows) == set(techniques)
    for key, group in techniques.items():
        row = rows[key]
        trips, count, told_hours = lost(group)
        expected = count / told_hours * sum(one.hours for one in group) if trips else None
        assert same(row["trips"], trips)
        assert same(row["lures_lost"], count if trips else None)
        assert same(row["lures_lost_per_rod_hour"], ratio(count, told_hours))
        assert same(row["expected_losses"], expected)
        assert same(row["to_have"], None if expected is None else math.ceil(round(expected, 6)))


def lost(group: list[Stint]) -> tuple[int, float, float]:
    """Trips, lures lost and rod-hours of the stints that say."""
    say = [one for one in group if one.counts["lures_lost"] is not None]
    return trips_of(say), sum(one.counts["lures_lost"] or 0 for one in say), sum(one.hours for one in say)


def test_random_logs_reach_what_sums_can_go_wrong_by(tmp_path: Path) -> None:
    seen: dict[str, int] = defaultdict(int)
    for seed in SEEDS:
        log = with_tackle(seed)
        folder = tmp_path / str(seed)
        folder.mkdir()
        tables = tables_of(log, folder)
        stints = stints_in_rates(log, tables)
        sizes = grouped(stints, "size")
        recorded = {technique for technique, size in sizes if size}
        seen["several lost"] += any(row["to_have"] not in ("", "0", "1") for row in tables["restock"])
        seen["nothing told"] += any(not row["to_have"] for row in tables["restock"])
        seen["size not recorded"] += any(not size and technique in recorded for technique, size in sizes)
        seen["no size"] += any(technique not in recorded for technique, _ in sizes)
        seen["signs alone"] += {"a quarter", "fourteen"} <= {size for _, size in sizes}
        seen["left out by size"] += len(own_fish(stints, "size")) < len(stints)
        seen["left out by cover"] += len(own_fish(stints, "cover")) < len(stints)
        seen["pooled and kept"] += any(one.fish is None for one in own_fish(stints, "cover"))
        seen["outside"] += len(stints) < len(tables["stints"])
        if min(seen.values()) >= 2:
            break
    assert min(seen.values()) >= 2, dict(seen)
