"""No byte of an archive may not be published: no person, no place that is not shared, no note, no paper."""

from pathlib import Path

import pytest

from tests.compute.open_data.archives import archive_of
from tests.privacy.planted import Season, planted_season, save

PUBLISHED = {"waters County", "Season name", "Catch Length"}


def may_be_told(season: Season) -> set[str]:
    """Texts that the archive may hold: what is published, and name and number of waters shared by name."""
    shared = [row for row in season.rows["waters"] if row["share_name"] == "yes"]
    named = {str(row[key]) for row in shared for key in ("water", "agency_code")}
    return named | {secret.text for secret in season.secrets if secret.what in PUBLISHED}


@pytest.mark.parametrize("seed", range(30))
def test_archive_of_a_generated_season_holds_nothing_private(seed: int, tmp_path: Path) -> None:
    season = planted_season(seed)
    save(season, tmp_path / "log.xlsx")
    folder = archive_of(tmp_path / "log.xlsx", tmp_path / "out")
    content = b"\n".join(path.read_bytes() for path in sorted(folder.iterdir()))
    told = may_be_told(season)
    leaks = [
        (secret.what, secret.text)
        for secret in season.secrets
        if secret.text not in told and secret.in_bytes(content)
    ]
    assert leaks == []


def test_planted_waters_that_are_shared_are_found(tmp_path: Path) -> None:
    # The search itself works: over all seasons a shared water is in its archive.
    found = 0
    for seed in range(5):
        season = planted_season(seed)
        save(season, tmp_path / f"{seed}.xlsx")
        events = (archive_of(tmp_path / f"{seed}.xlsx", tmp_path / str(seed)) / "event.txt").read_text(
            "utf-8"
        )
        (shared,) = (row for row in season.rows["waters"] if row["share_name"] == "yes")
        found += str(shared["water"]) in events
    assert found
