"""Small logs with fish of given sizes, and what is computed from them."""

from reporter.compute.fish.page import FishPage, fish_page
from reporter.compute.season import Season
from reporter.run.season import read_season
from tests.conftest import Change, WriteLog

CATCH = ["Trip", "Technique", "Species", "Count", "Length (in)", "Weight (lb)", "Measured", "Fate"]
SEASON = [["Setting", "Value"], ["Units", "us"], ["Last day", "2026-11-30"]]
LMB, SMB = "largemouth bass", "smallmouth bass"
Row = list[object]


def fish_row(
    trip: int,
    species: str,
    length: object = None,
    weight: object = None,
    how: object = None,
    count: object = None,
) -> Row:
    return [
        f"T-00{trip}",
        "Drop shot" if trip < 3 else "Jerkbait",
        species,
        count,
        length,
        weight,
        how,
        "kept",
    ]


def read(
    write_log: WriteLog, rows: list[Row], settings: list[Row] | None = None, **changes: Change
) -> tuple[Season, FishPage]:
    sheets: dict[str, Change] = {"Catch": [CATCH, *rows], "Season": [*SEASON, *(settings or [])], **changes}
    season = read_season(write_log(sheets)).season
    assert season is not None
    return season, fish_page(season)


def of(page: FishPage, name: str) -> dict[str, object]:
    (row,) = (row for row in page.species.to_dict("records") if row["name"] == name)
    return {str(key): value for key, value in row.items()}


NO_TALLY: list[list[object]] = [
    ["Trip", "Technique", "Minutes", "Anglers on it"],
    ["T-001", "Drop shot", 120, 2],
    ["T-001", "Jerkbait", 120, 2],
    ["T-002", "Drop shot", 240, 2],
    ["T-003", "Jerkbait", 240, 2],
]


def tallied(extra: int) -> list[list[object]]:
    """The stints with Landed: the first has `extra` fish beyond 20 rows of Catch."""
    return [
        [*NO_TALLY[0], "Landed"],
        ["T-001", "Drop shot", 120, 2, 20 + extra],
        *([*row, 0] for row in NO_TALLY[2:]),
    ]
