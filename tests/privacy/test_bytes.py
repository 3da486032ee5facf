"""No file of a client, unzipped, holds anything that is somebody else's or the guide's own."""

import zipfile
from pathlib import Path

import pytest

from reporter.compute.clients.figures import count
from reporter.run.clients import Copies, Read, plan_copies, read_logs, write_copies
from tests.privacy.planted import Secret, planted_season, save

ROOT = Path(__file__).parent.parent.parent
SEASONS = 50


def copies_of(log: Path, out: Path) -> tuple[Read, Copies]:
    read = read_logs([log])
    assert not read.stopped, [stop.message for reading in read.readings for stop in reading.stops]
    copies = plan_copies(read, out)
    write_copies(copies, list(copies.files), [log], out, whole=True)
    return read, copies


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
    save(season, tmp_path / "log.xlsx")
    _, copies = copies_of(tmp_path / "log.xlsx", tmp_path / "out")
    assert set(copies.files) == {code for code, _ in season.landed}
    assert leaks(copies, season.secrets) == []


def test_the_search_finds_what_may_be_told(tmp_path: Path) -> None:
    """Were nothing of a kind ever found, where it may stand, the search for it would prove nothing."""
    found = set()
    for seed in range(SEASONS):
        season = planted_season(seed)
        save(season, tmp_path / f"{seed}.xlsx")
        _, copies = copies_of(tmp_path / f"{seed}.xlsx", tmp_path / str(seed))
        contents = {code: unzipped(path) for code, path in copies.files.items()}
        told = [secret for secret in season.secrets if secret.readers & set(contents)]
        found |= {
            secret.what
            for secret in told
            if any(secret.in_bytes(contents[code]) for code in secret.readers & set(contents))
        }
    assert found >= {
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


@pytest.mark.parametrize("seed", range(SEASONS))
def test_each_client_is_told_just_his_own_fish_and_the_unnamed_ones(seed: int, tmp_path: Path) -> None:
    season = planted_season(seed)
    save(season, tmp_path / "log.xlsx")
    read = read_logs([tmp_path / "log.xlsx"])
    copies = plan_copies(read, tmp_path)
    names = {row["trip"]: row["date"] for row in season.rows["trips"]}
    owed = {(code, names[trip]): fish for (code, trip), fish in season.landed.items()}
    told = {
        (code, day.date): (count(day.own), count(day.party))
        for code, client in copies.joined.copies.items()
        for day in client.days
    }
    assert told == owed
