"""LIMIT rules on seeded random logs: what the check tells against the second computation."""

import random

import pytest

from reporter.schema.keep_tables import CANNOT_CHECK, CHECK_THIS, NO_PROBLEM, NOT_CHECKED
from tests.compute.keep_rules.logs import Fish, Row, Trip, check, rule
from tests.compute.keep_rules.second import Limit, Told, days, second
from tests.conftest import WriteLog

CODES = {"LMB": "largemouth bass", "SMB": "smallmouth bass", "WAE": "walleye", "BLC": "black crappie"}
WATERS = ("Lake Arden", "Pike Fork", "Otter River")
DATES = ("01-01", "12-31"), ("06-03", "06-06"), ("06-05", "03-01"), ("05-01", "06-04")
LENGTHS = (11.5, 13.875, 14.0, 14.125, 16.0, 18.0, 18.25, 21.0)


def random_rules(chance: random.Random) -> list[Limit]:
    """Rules that say different things each, so that no two contradict each other."""
    made = []
    for name, field in enumerate(("shortest", "slot", "daily", "daily", "over", "daily", "shortest")):
        species = chance.sample(sorted(CODES)[: 2 if name < 3 else 4], chance.choice((1, 2)))
        value = {
            "shortest": chance.choice((14.0, 16.0)),
            "slot": (14.0, 18.0, chance.choice(("IN", "OUT"))),
            "daily": chance.choice((0, 1, 3, 5)),
            "over": (chance.choice((14.0, 18.0)), chance.choice((0, 1))),
        }[field]
        first, last = chance.choice(DATES)
        made.append(
            Limit(
                f"R{name + 1}",
                "*" if name < 4 else chance.choice(WATERS),
                frozenset(CODES[code] for code in species),
                first,
                last,
                everywhere=name == 3,
                guide=chance.random() < 0.3,
                **{field: value},  # type: ignore[arg-type]
            )
        )
    return made


def typed(limit: Limit) -> Row:
    codes = ";".join(code for code, name in CODES.items() if name in limit.species)
    low, high, ends = limit.slot or (None, None, None)
    over, count = limit.over or (None, None)
    return rule(
        limit.name,
        limit.water,
        codes,
        (limit.first, limit.last),
        min=limit.shortest,
        slot_from=low,
        slot_to=high,
        slot_ends=ends,
        daily_limit=limit.daily,
        over_length=over,
        over_count=count,
        everywhere="Y" if limit.everywhere else None,
        guides_fish_count="Y" if limit.guide else None,
    )


def random_trips(chance: random.Random) -> list[Trip]:
    trips = []
    for _ in range(12):
        clients = chance.sample(("C01", "C02", "C03"), chance.randint(1, 3))
        people = (*clients, None, None, "guide")
        named = chance.random() < 0.5
        fish = [
            Fish(
                chance.choice(list(CODES.values())),
                chance.choice(LENGTHS),
                chance.choice((1, 1, 2, 4)),
                chance.choice(("kept", "kept", "released")),
                chance.choice(people) if named else None,
            )
            for _ in range(chance.randint(0, 7))
        ]
        trips.append(
            Trip(
                chance.choice(WATERS),
                chance.choice(days("2026-06-01", 7)),
                fish,
                anglers=len(clients) + (chance.random() < 0.2),
                clients=clients,
                guide_fished=chance.choice(("yes", "no")),
            )
        )
    return trips


@pytest.mark.parametrize("seed", range(25))
def test_check_tells_what_the_second_computation_tells(seed: int, write_log: WriteLog) -> None:
    chance = random.Random(seed)  # noqa: S311 - guards nothing
    rules, trips = random_rules(chance), random_trips(chance)
    table = check(write_log, trips, [typed(limit) for limit in rules]).table
    columns = (table["trip"], table["species"], table["result"], table["rule"])
    told: set[Told] = {
        (trip, tuple(sorted(species.split("; "))), result, tuple(filter(None, names.split("; "))))
        for trip, species, result, names in zip(*columns, strict=True)
    }
    assert told == second(trips, rules)


def test_random_logs_have_every_result_often() -> None:
    counts = dict.fromkeys((CHECK_THIS, CANNOT_CHECK, NOT_CHECKED, NO_PROBLEM), 0)
    for seed in range(25):
        chance = random.Random(seed)  # noqa: S311 - guards nothing
        rules = random_rules(chance)
        for line in second(random_trips(chance), rules):
            counts[line[2]] += 1
    assert min(counts.values()) >= 25
