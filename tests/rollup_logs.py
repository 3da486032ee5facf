"""Logs of an invented association, and a plain account of what was typed in them."""

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass, field
from pathlib import Path
from random import Random

from tests.conftest import book_of

SIX = dt.time(6)
SPECIES = ("largemouth bass", "smallmouth bass", "walleye", "bluegill")
FATES = ("kept", "released", None)


@dataclass
class Day:
    """A trip as typed: hours on the water, fish as (species, count, fate)."""

    date: dt.date
    water: str
    anglers: int = 2
    hours: int = 4
    fish: tuple[tuple[str, int, str | None], ...] = ()
    permit: str | None = None
    status: str | None = None
    kind: str | None = None
    client: str | None = None
    site: str | None = None


@dataclass
class GuideLog:
    """A guide's log: what Season says, trips, waters as (name, share, masked name, permit)."""

    code: str | None
    days: list[Day]
    waters: Sequence[tuple[str, str | None, str | None, str | None]] = ()
    name: str | None = None
    settings: dict[str, object] = field(default_factory=dict)

    def sheets(self) -> dict[str, list[list[object]] | None]:
        season: list[list[object]] = [["Setting", "Value"], ["Units", "us"]]
        given = {"Guide or outfit": self.name, "Guide code": self.code, **self.settings}
        season += [[key, value] for key, value in given.items()]
        trips: list[list[object]] = [
            ["Trip", "Date", "Water", "Start", "End", "Anglers", "Permit", "Status", "Kind", "Client", "Site"]
        ]
        effort: list[list[object]] = [["Trip", "Technique", "Minutes", "Anglers on it"]]
        catch: list[list[object]] = [["Trip", "Technique", "Species", "Count", "Fate"]]
        for number, day in enumerate(self.days, start=1):
            trip, end = f"T-{number:03d}", dt.time(6 + day.hours)
            row = [trip, day.date, day.water, SIX, end, day.anglers]
            trips.append([*row, day.permit, day.status, day.kind, day.client, day.site])
            if day.status in ("cancelled", "void"):
                continue
            effort.append([trip, "Drop shot", day.hours * 60, day.anglers])
            catch += [[trip, "Drop shot", *fish] for fish in day.fish]
        waters: list[list[object]] = [["Water", "Share name", "Masked name", "Permit"]]
        waters += [list(water) for water in self.waters]
        return {"Season": season, "Trips": trips, "Effort": effort, "Catch": catch, "Waters": waters}

    def save(self, path: Path) -> Path:
        book_of(self.sheets(), {}).save(path)
        return path


WATERS = (
    ("Lake Arden", "yes", None, "North permit"),
    ("Bell River", "yes", None, "North permit"),
    ("Elm Pond", "yes", None, "South permit"),
    ("Hollin Pool", "yes", None, None),
    ("Otter Mere", "yes", None, "South permit"),
)


def random_association(
    seed: int, guides: int = 7, trips: tuple[int, int] = (2, 6), own_permits: bool = True
) -> list[GuideLog]:
    """Logs in which some waters, months, permits and species have few guides, and others many.

    trips: fewest and most a guide. own_permits: some trips are not on their water's permit.
    """
    chance = Random(seed)  # noqa: S311 - a season, no secret
    logs = []
    for number in range(guides):
        waters = chance.sample(WATERS, chance.randint(1, 3))
        days = [
            Day(
                dt.date(2026, chance.choice((4, 5, 6, 6, 7)), chance.randint(1, 28)),
                chance.choice(waters)[0],
                chance.randint(1, 3),
                chance.randint(2, 6),
                tuple(
                    (chance.choice(SPECIES[: chance.choice((2, 2, 4))]), chance.randint(1, 5), fate)
                    for fate in chance.sample(FATES, chance.randint(0, 3))
                ),
                permit=chance.choice((None, None, None, "South permit")) if own_permits else None,
            )
            for _ in range(chance.randint(*trips))
        ]
        logs.append(GuideLog(f"G{number:02d}", days, WATERS))
    return logs


def save_all(logs: Sequence[GuideLog], folder: Path) -> list[Path]:
    folder.mkdir(exist_ok=True)
    return [log.save(folder / f"log {number:02d}.xlsx") for number, log in enumerate(logs, start=1)]
