"""No byte of a roll-up, of its tables or of its store is a client's, a private place's or a note's."""

import datetime as dt
import zipfile
from importlib.util import find_spec
from pathlib import Path

import pytest

from reporter.compute.paperwork.period import OPEN
from reporter.run.logs import logs_in
from reporter.run.rollup import RollupJob, roll_up
from reporter.run.tell import silent
from tests.conftest import book_of
from tests.privacy.planted import Season, planted_season, save
from tests.rollup_logs import WATERS, Day, GuideLog, save_all

PARQUET = find_spec("pyarrow") is not None  # CI runs this once with it
TOLD = {"Guide code", "trips Permit", "waters Permit"}


def everything(folder: Path, *, names: bool = False) -> bytes:
    """All that a roll-up of a folder writes, unzipped."""
    out = folder.parent / "out"
    roll_up(RollupJob(logs_in(folder), out / "r.xlsx", OPEN, out / "tables", PARQUET, names), silent)
    parts = [path.read_bytes() for path in sorted(out.rglob("*")) if path.is_file()]
    for book in ("r.xlsx", "r guides.xlsx"):
        with zipfile.ZipFile(out / book) as archive:
            parts += [archive.read(name) for name in archive.namelist()]
    return b"\n".join(parts)


def may_be_told(seasons: list[Season]) -> set[str]:
    """Codes of guides, permits, and waters as far as their Share name says."""
    told = {secret.text for season in seasons for secret in season.secrets if secret.what in TOLD}
    for season in seasons:
        for row in season.rows["waters"]:
            share = row["share_name"]
            told |= {str(row["water"])} if share == "yes" else set()
            told |= {str(row["masked_name"])} if share in ("masked", None) else set()
    return told


@pytest.mark.parametrize("first", range(0, 16, 4))
@pytest.mark.parametrize("names", [False, True])
def test_roll_up_of_generated_seasons_holds_nothing_private(first: int, names: bool, tmp_path: Path) -> None:
    (tmp_path / "logs").mkdir()
    seasons = [planted_season(seed) for seed in range(first, first + 4)]
    for number, season in enumerate(seasons):
        save(season, tmp_path / "logs" / f"{number}.xlsx")
    content, told = everything(tmp_path / "logs", names=names), may_be_told(seasons)
    found = [
        (secret.what, secret.text)
        for season in seasons
        for secret in season.secrets
        if secret.text not in told and secret.in_bytes(content)
    ]
    assert found == []
    codes = [secret for season in seasons for secret in season.secrets if secret.what == "Guide code"]
    assert all(secret.in_bytes(content) for secret in codes)  # the search finds what is there


def named_logs(folder: Path) -> Path:
    """Five guides with names in Season and file names; the last log stops, quoting a client's name."""
    day = Day(
        dt.date(2026, 6, 2), "Lake Arden", client="Zelmyra", site="Quillon", fish=(("walleye", 1, "kept"),)
    )
    logs = [GuideLog(f"G{number}", [day], WATERS, name=f"Vorrik{number}") for number in range(4)]
    save_all(logs, folder)
    for path in sorted(folder.iterdir()):
        path.rename(path.with_name(f"Wendlin {path.name}"))
    twice = GuideLog("G9", [day, day], WATERS).sheets()
    twice["Trips"][2][0] = "T-001"  # type: ignore[index]
    book_of(twice, {}).save(folder / "Wendlin stops.xlsx")
    return folder


def test_names_of_guides_and_of_files_are_only_where_they_are_asked_for(tmp_path: Path) -> None:
    folder = named_logs(tmp_path / "logs")
    pages = everything(folder)
    store = (tmp_path / "out" / "r rollup.sqlite").read_bytes()
    for word in (b"Vorrik1", b"Wendlin"):
        assert word in store  # kept for --names, and said in the README
        assert word not in pages.replace(store, b"")
    named = everything(folder, names=True).replace((tmp_path / "out" / "r rollup.sqlite").read_bytes(), b"")
    assert b"Vorrik1" in named
    assert b"Wendlin stops.xlsx" in named
    for word in (b"Zelmyra", b"Quillon"):
        assert word not in pages + named + store
    assert b"Lake Arden" in pages


@pytest.mark.parametrize(
    ("share", "masked", "shown"),
    [
        ("yes", "a lake", "Lake Arden"),
        ("masked", "a lake", "a lake"),
        (None, "a lake", "a lake"),
        ("no", "a lake", ""),
    ],
)
def test_water_is_called_as_its_log_shares_it(
    share: str | None, masked: str, shown: str, tmp_path: Path
) -> None:
    waters = [("Lake Arden", share, masked, "Arden permit")]
    day = Day(dt.date(2026, 6, 2), "Lake Arden")
    save_all([GuideLog(f"G{number}", [day], waters) for number in range(3)], tmp_path / "logs")
    content = everything(tmp_path / "logs")
    assert (b"Lake Arden" in content) == (share == "yes")
    assert (b"Arden permit" in content) == (share == "yes")  # a permit's name would give the water away
    assert (shown or "waters not shared by name").encode() in content
