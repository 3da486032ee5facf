"""No file of a client, unzipped, holds anything that is somebody else's or the guide's own."""

import zipfile
from pathlib import Path

import pytest

from reporter.compute.clients.figures import count
from reporter.run.clients import Copies, plan_copies, read_logs, write_copies
from tests.privacy.planted import Secret, planted_season, save, save_in_two

ROOT = Path(__file__).parent.parent.parent
SEASONS = 50
MAY_BE_TOLD = {
    "Clients Name",
    "Waters Water",
    "Waters Masked name",
    "Trips For the client",
    "Catch Length",
    "Techniques Technique",
    "techniques Rigging",
    "techniques Tackle list",
    *(f"effort {heading}" for heading in ("Variant", "Retrieve", "Size", "Colour")),
}


def copies_of(logs: list[Path], out: Path) -> Copies:
    readings = read_logs(logs)
    copies = plan_copies(readings, out)
    assert copies is not None, [stop.message for reading in readings for stop in reading.stops]
    write_copies(copies, list(copies.files), logs, out, whole=True)
    return copies


def unzipped(path: Path) -> bytes:
    with zipfile.ZipFile(path) as archive:
        return b"\n".join(name.encode() + b"\n" + archive.read(name) for name in archive.namelist())


def leaks(copies: Copies, secrets: list[Secret]) -> list[tuple[str, str, str]]:
    """Client, what it is and the text of every secret that a copy holds though it is not the client's."""
    return [
        (code, secret.what, secret.text)
        for code, path in copies.files.items()
        for content in (unzipped(path),)
        for secret in secrets
        if code not in secret.readers and secret.in_bytes(content)
    ]


@pytest.mark.parametrize("seed", range(SEASONS))
def test_no_copy_of_a_generated_season_holds_what_is_not_its_clients(seed: int, tmp_path: Path) -> None:
    season = planted_season(seed)
    if seed % 2:
        logs = save_in_two(season, tmp_path)
    else:
        logs = [tmp_path / "log.xlsx"]
        save(season, logs[0])
    copies = copies_of(logs, tmp_path / "out")
    assert set(copies.files) == {code for code, _ in season.landed}
    assert leaks(copies, season.secrets) == []


def test_the_search_finds_what_may_be_told(tmp_path: Path) -> None:
    """Were nothing of a kind ever found, where it may stand, the search for it would prove nothing."""
    found: set[str] = set()
    for seed in range(0, SEASONS, 2):
        season = planted_season(seed)
        save(season, tmp_path / f"{seed}.xlsx")
        copies = copies_of([tmp_path / f"{seed}.xlsx"], tmp_path / str(seed))
        contents = {code: unzipped(path) for code, path in copies.files.items()}
        told = [secret for secret in season.secrets if secret.readers & set(contents)]
        found |= {
            secret.what
            for secret in told
            if any(secret.in_bytes(contents[code]) for code in secret.readers & set(contents))
        }
        if found >= MAY_BE_TOLD:
            break
    assert found >= MAY_BE_TOLD


@pytest.mark.parametrize("seed", range(SEASONS))
def test_each_client_is_told_his_own_fish_and_never_more_than_others_leave(seed: int, tmp_path: Path) -> None:
    season = planted_season(seed)
    save(season, tmp_path / "log.xlsx")
    copies = plan_copies(read_logs([tmp_path / "log.xlsx"]), tmp_path)
    assert copies is not None
    days = {row["trip"]: row["date"] for row in season.rows["trips"]}
    bounds = {(code, days[trip]): of_trip for (code, trip), of_trip in season.landed.items()}
    told = {(code, day.date): day for code, client in copies.joined.copies.items() for day in client.days}
    assert set(told) == set(bounds)
    for key, day in told.items():
        own, every = count(day.own), count(day.caught)
        assert bounds[key].own <= own, key
        assert bounds[key].least <= every <= bounds[key].most, key
