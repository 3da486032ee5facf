"""The store of finished logs: what it gives, what is damaged, what is not ours."""

import datetime as dt
import os
import random
import sqlite3
from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

import pandas as pd
import pytest

from reporter.beside import finished_file
from reporter.beside.finished import finished_path, open_finished
from reporter.compute.rollup.kept import Kept
from reporter.files.errors import CannotWrite
from tests.compute.rollup.plain import kept_of
from tests.rollup_logs import Day, GuideLog, random_association, save_all
from tests.run.rolled import contents, rolled, table

DAMAGES = 12
NOBODY = 65534  # the user that has no rights, by custom


def kept(folder: Path, out: Path) -> Kept:
    rolled(folder, out)
    with open_finished(finished_path(out / "roll.xlsx")) as finished:
        return finished.kept({path.name: at for at, path in enumerate(sorted(folder.iterdir()), start=1)})


def test_store_gives_each_cell_with_its_sum_and_its_guides(tmp_path: Path) -> None:
    """Against a count in plain Python of the rows typed; the attackers of the tests are given that one."""
    logs = random_association(4, 9)
    save_all(logs, tmp_path / "logs")
    found, expected = kept(tmp_path / "logs", tmp_path / "out"), kept_of(logs)
    for name, keys in (
        ("cells", ["figure", "species", "water", "month", "permit"]),
        ("by_guide", ["guide", "species", "figure"]),
        ("lines", ["by", "name"]),
        ("months", ["guide", "month", "state"]),
    ):
        one, other = (getattr(each, name).sort_values(keys, ignore_index=True) for each in (found, expected))
        pd.testing.assert_frame_equal(one, other[one.columns], check_dtype=False, obj=name)


def test_water_under_several_spellings_is_one_with_all_its_guides(tmp_path: Path) -> None:
    waters = ("Lake Arden", "LAKE ARDEN", "Lake-Arden", "lake arden")
    logs = [
        GuideLog(
            f"G{at}", [Day(dt.date(2026, 6, 2), water)], [(water, "yes", None, f"North{' ' * at}permit")]
        )
        for at, water in enumerate(waters)
    ]
    save_all(logs, tmp_path / "logs")
    trips = kept(tmp_path / "logs", tmp_path / "out").cells.query("figure == 'trips'")
    assert trips[["value", "guides", "one", "other"]].to_numpy().tolist() == [[4, 4, 0, 3]]
    rows = table(tmp_path / "out" / "tables", "rollup_effort")
    assert [row["guides"] for row in rows] == ["4", "4", "4", "4"]  # all, water, month, permit


def test_store_that_is_not_ours_is_left_alone(association: Path, tmp_path: Path) -> None:
    store = finished_path(tmp_path / "roll.xlsx")
    for content in (b"some notes of mine, no database at all", None):
        store.unlink(missing_ok=True)
        if content is None:
            with sqlite3.connect(store) as other:
                other.execute("CREATE TABLE log (mine TEXT)")
            other.close()
        else:
            store.write_bytes(content)
        before = store.read_bytes()
        with pytest.raises(CannotWrite, match="move it away"):
            rolled(association, tmp_path)
        assert store.read_bytes() == before


@pytest.fixture
def nobody() -> Iterator[None]:
    """What is done as somebody to whom things are forbidden: nothing is to root."""
    if not hasattr(os, "geteuid"):
        pytest.skip("needs users")
    before = os.geteuid()
    if before == 0:
        os.seteuid(NOBODY)
    yield
    os.seteuid(before)


@pytest.mark.usefixtures("nobody")
def test_folder_and_store_that_may_not_be_written_to_are_said_to_be_that() -> None:
    with TemporaryDirectory(ignore_cleanup_errors=True) as folder:
        store = finished_path(Path(folder) / "roll.xlsx")
        with open_finished(store):
            pass
        store.chmod(0o400)
        refused(store)
        store.unlink()
        Path(folder).chmod(0o500)
        refused(store)
        Path(folder).chmod(0o700)


def refused(store: Path) -> None:
    with pytest.raises(CannotWrite) as refusal, open_finished(store) as finished:
        finished.keep_only({})
    said = "you have no permission to write there; choose another folder"
    assert str(refusal.value) == f"I cannot write to {store}: {said}."


def test_store_at_which_another_run_is_at_work_is_said_to_be_that(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(finished_file, "_WAIT_S", 0.1)
    store = finished_path(tmp_path / "roll.xlsx")
    with open_finished(store), sqlite3.connect(store, isolation_level=None) as other:
        other.execute("BEGIN EXCLUSIVE")
        with (
            pytest.raises(CannotWrite, match="see whether another run is at work on it"),
            open_finished(store),
        ):
            pass
        other.execute("ROLLBACK")
    other.close()


def test_store_of_another_layout_is_made_anew(association: Path, tmp_path: Path, reads: list[str]) -> None:
    rolled(association, tmp_path / "out")
    before = contents(tmp_path / "out")
    with sqlite3.connect(finished_path(tmp_path / "out" / "roll.xlsx")) as store:
        store.execute("CREATE TABLE older (mine TEXT)")
        store.execute("PRAGMA user_version = 999")
    store.close()
    reads.clear()
    rolled(association, tmp_path / "out")
    assert len(reads) == 6
    assert contents(tmp_path / "out") == before


def test_number_changed_in_the_store_is_read_again_from_its_log(
    association: Path, tmp_path: Path, reads: list[str]
) -> None:
    rolled(association, tmp_path / "out")
    before = contents(tmp_path / "out")
    with sqlite3.connect(finished_path(tmp_path / "out" / "roll.xlsx")) as store:
        changed = store.execute("UPDATE figure SET value = value + 1 WHERE name = 'log 04.xlsx'").rowcount
    store.close()
    assert changed > 0
    reads.clear()
    rolled(association, tmp_path / "out")
    assert reads == ["log 04.xlsx"]
    assert contents(tmp_path / "out") == before


def test_damaged_store_is_refused_or_read_again_and_never_believed(association: Path, tmp_path: Path) -> None:
    rolled(association, tmp_path / "out")
    before, store = contents(tmp_path / "out"), finished_path(tmp_path / "out" / "roll.xlsx")
    whole = store.read_bytes()
    chance = random.Random(20260712)  # noqa: S311 - guards nothing
    refused = 0
    for torn in range(DAMAGES):
        content = bytearray(whole)
        at = chance.randrange(100, len(whole) - 64)
        content[at : at + 8] = bytes(chance.randrange(256) for _ in range(8))
        store.write_bytes(bytes(content[: at + 8]) if torn % 4 == 0 else bytes(content))
        try:
            rolled(association, tmp_path / "out")
        except CannotWrite as refusal:
            assert "delete it, and the next run reads all logs again" in str(refusal)  # noqa: PT017 - either may be
            refused += 1
        else:
            names = [name for name in before if not name.endswith(".sqlite")]
            after = contents(tmp_path / "out")
            assert [name for name in names if after[name] != before[name]] == [], at
    assert 0 < refused < DAMAGES
