"""Several logs at a time: the same files and the same words with one worker, with several, on a cluster."""

import csv
import re
import socket
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from reporter.schema.summary_table import SUMMARY
from tests.cli.conftest import Run
from tests.conftest import WriteLog
from tests.many.logs import write_seasons
from tests.readme import README

Contents = Callable[[Path], dict[str, bytes]]

_PROGRAM = (sys.executable, "-c", "from reporter.cli.main import run; run()")


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory, write_log: WriteLog) -> Path:
    """Six logs: four to be built, one to be mended first, one that is no workbook."""
    folder = tmp_path_factory.mktemp("guides")
    for landed in range(4):
        write_log({"Effort": {"E2": 3 + landed}}, f"guide {landed}.xlsx", folder=folder)
    write_log({"Catch": None}, "guide 4.xlsx", folder=folder)
    (folder / "guide 5.xlsx").write_text("no workbook")
    return folder


Ran = tuple[int, str, str, dict[str, bytes]]


def built(folder: Path, contents: Contents, *options: str) -> Ran:
    """How a build of the folder ended, what it printed, and every file that it wrote."""
    before = contents(folder)
    command = [*_PROGRAM, "build", ".", "--tables", "out/tables", "--out", "out", "--summary", "out/sum.csv"]
    ran = subprocess.run(
        [*command, *options], cwd=folder, capture_output=True, text=True, timeout=120, check=False
    )
    after = contents(folder)
    made = {name: after.pop(name) for name in list(after) if name.startswith("out")}
    assert after == before
    for path in sorted((folder / "out").rglob("*"), reverse=True):
        path.rmdir() if path.is_dir() else path.unlink()
    (folder / "out").rmdir()
    return ran.returncode, ran.stdout, ran.stderr, made


@pytest.fixture(scope="module")
def by_one(folder: Path) -> Ran:
    return built(folder, files_below, "--workers", "1")


def files_below(folder: Path) -> dict[str, bytes]:
    return {
        path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()
    }


def test_logs_are_told_in_their_order_and_summed_up(by_one: Ran) -> None:
    code, out, err, made = by_one
    assert code == 1
    assert re.findall(r"^guide \d", out, re.MULTILINE) == [f"guide {n}" for n in range(4)]
    assert out.endswith(
        "\n\n6 logs: 4 with a report, 2 without.\n  rows      97 read, 97 used, 0 set aside\n"
        "  summary   out/sum.csv\n"
    )
    assert "No report of guide 4.xlsx" in err
    assert "I cannot read guide 5.xlsx" in err
    assert {name for name in made if name.endswith(".xlsx")} == {
        f"out/guide {n} report.xlsx" for n in range(4)
    }
    assert sum(name.endswith("datapackage.json") for name in made) == 4
    assert "out/sum.csv" in made


@pytest.mark.parametrize("options", [(), ("--workers", "2"), ("--workers", "5")])
def test_any_number_of_workers_gives_the_same_bytes_and_words(
    folder: Path, by_one: Ran, options: tuple[str, ...]
) -> None:
    assert built(folder, files_below, *options) == by_one


def test_summary_has_a_row_a_log(by_one: Ran) -> None:
    """Each log has 6 settings, 3 trips, 4 stints, 3 fish, 2 techniques, 2 waters: 20 rows; one has no fish.

    Landed are 3 to 6 on the first stint and 3 on the others; 24 rod-hours on 3 trips.
    """
    heading, *rows = csv.reader(by_one[3]["out/sum.csv"].decode().splitlines())
    assert heading == [field.name for field in SUMMARY.fields]
    found = [dict(zip(heading, row, strict=True)) for row in rows]
    assert [row["log"] for row in found] == [f"guide {n}.xlsx" for n in range(6)]
    assert [row["state"] for row in found] == [*["done"] * 4, "stopped", "unreadable"]
    for landed, row in enumerate(found[:4]):
        fish = 6 + landed
        assert (row["rows_read"], row["rows_used"], row["rows_set_aside"]) == ("20", "20", "0")
        assert (row["stops"], row["trips"], row["rod_hours"], row["fish"]) == ("0", "3", "24", str(fish))
        assert float(row["fish_per_rod_hour"]) == pytest.approx(fish / 24, rel=1e-11)
        assert row["report"] == f"out/guide {landed} report.xlsx"
        assert row["why"] == ""
    assert found[4]["stops"] == "1"
    assert "Catch" in found[4]["why"]
    assert (found[4]["report"], found[4]["trips"]) == ("", "")
    assert "plain text" in found[5]["why"]
    assert found[5]["rows_read"] == ""


def free_port() -> int:
    with socket.socket() as listening:
        listening.bind(("127.0.0.1", 0))
        port: int = listening.getsockname()[1]
    return port


@pytest.fixture
def cluster(tmp_path: Path) -> Iterator[tuple[str, list[subprocess.Popen[bytes]]]]:
    """The address of a scheduler with two workers, started as the README says, and the processes of both."""
    block = re.search(r"^```sh cluster\n(.*?)^```$", README.read_text(encoding="utf-8"), re.M | re.S)
    assert block is not None
    port = free_port()
    commands = [line.split("#")[0].split() for line in block[1].splitlines()]
    assert [command[:2] for command in commands] == [
        ["dask", "scheduler"],
        ["dask", "worker"],
        ["reporter", "build"],
    ]
    running: list[subprocess.Popen[bytes]] = []
    try:
        for place, command in enumerate(commands[:2]):
            here = [word.replace("HOST", "127.0.0.1").replace("8786", str(port)) for word in command[1:]]
            with (tmp_path / f"log {place}").open("w") as log:
                running.append(
                    subprocess.Popen(
                        [Path(sys.executable).with_name("dask"), *here, "--dashboard-address", ":0"],
                        cwd=tmp_path,
                        stdout=log,
                        stderr=log,
                    )
                )
        yield f"tcp://127.0.0.1:{port}", running
    finally:
        for process in reversed(running):
            process.terminate()
            process.wait(30)


@pytest.fixture
def scheduler(cluster: tuple[str, list[subprocess.Popen[bytes]]]) -> str:
    return cluster[0]


def wait_for_workers(address: str, count: int) -> None:
    from distributed import Client

    end = time.monotonic() + 60
    while time.monotonic() < end:
        try:
            with Client(address, timeout=5, set_as_default=False) as client:
                client.wait_for_workers(count, timeout=30)
                return
        except OSError:
            time.sleep(0.5)
    raise AssertionError(address)


def test_cluster_gives_the_same_bytes_and_words(folder: Path, by_one: Ran, scheduler: str) -> None:
    wait_for_workers(scheduler, 2)
    assert built(folder, files_below, "--cluster", scheduler) == by_one
    (folder / "guide 0.xlsx").touch()
    assert built(folder, files_below, "--cluster", scheduler) == by_one


def test_cluster_that_is_gone_is_told_for_each_log_that_it_still_had(
    tmp_path: Path, cluster: tuple[str, list[subprocess.Popen[bytes]]]
) -> None:
    """Killed, not asked to close: a scheduler that closes may get stuck and go on without workers."""
    scheduler, processes = cluster
    wait_for_workers(scheduler, 2)
    logs = write_seasons(tmp_path / "logs", 16)
    command = [*_PROGRAM, "build", "logs", "--out", "out", "--quiet", "--cluster", scheduler]
    with subprocess.Popen(command, cwd=tmp_path, stderr=subprocess.PIPE, text=True) as running:
        while not list(tmp_path.glob("out/guide*.xlsx")):
            assert running.poll() is None
            time.sleep(0.02)
        for process in processes:
            process.kill()
        try:
            _, said = running.communicate(timeout=60)
        except subprocess.TimeoutExpired:
            running.kill()
            raise
    told = re.findall(r"^I cannot build (guide \d+)", said, re.MULTILINE)
    made = [path.name for path in (tmp_path / "out").glob("guide*.xlsx")]
    assert running.returncode == 1
    assert told == sorted(told)
    assert {log.stem for log in logs} == {*told, *(name.removesuffix(" report.xlsx") for name in made)}
    assert len(said.splitlines()) <= 3 * len(told)


def test_cluster_that_is_not_there_is_a_sentence(folder: Path, run: Run) -> None:
    ran = run("build", folder, "--cluster", f"tcp://127.0.0.1:{free_port()}")
    assert (ran.code, ran.out) == (1, "")
    assert "I cannot reach a cluster" in ran.err


def test_cluster_needs_an_extra_and_names_the_command_that_installs_it(
    folder: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, "distributed", None)
    ran = run("build", folder, "--cluster", "tcp://127.0.0.1:1")
    assert (ran.code, ran.out) == (1, "")
    assert '-m pip install "dask[distributed]"' in ran.err


def test_a_cluster_is_loaded_only_when_it_is_asked_for(folder: Path) -> None:
    code = (
        "import sys\nfrom reporter.cli.main import main\n"
        "if __name__ == '__main__':\n"
        "    try:\n        main(['build', '.', '--out', 'none', '--quiet', '--workers', '2'])\n"
        "    except SystemExit:\n        pass\n"
        "    print([name for name in ('distributed', 'dask', 'pandas') if name in sys.modules])\n"
    )
    ran = subprocess.run(
        [sys.executable, "-c", code], cwd=folder, capture_output=True, text=True, timeout=60, check=True
    )
    for path in (folder / "none").iterdir():
        path.unlink()
    (folder / "none").rmdir()
    assert ran.stdout == "[]\n"
