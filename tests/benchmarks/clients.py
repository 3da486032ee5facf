"""What a client's copy costs in a log of 500 clients, held against its cost in one of 50, in the same run."""

import datetime as dt
import statistics
import sys
from collections.abc import Callable
from pathlib import Path
from tempfile import TemporaryDirectory

import openpyxl
from openpyxl.worksheet.worksheet import Worksheet

from tests.benchmarks.budgets import seconds

MOST = 1.25
MANY, FEW, ONE = 500, 50, 1
RUNS = 5
TRIPS_EACH, FISH_A_TRIP = 3, 8

_CLIENTS = (sys.executable, "-c", "from reporter.cli.main import run; run()", "clients")


def write_log(path: Path, clients: int) -> None:
    """Write a log in which every client came on three trips, every third of them with another client."""
    book = openpyxl.Workbook()
    book.remove(book.active)
    pages = {name: book.create_sheet(name) for name in ("Season", "Trips", "Effort", "Catch", "Clients")}
    for row in (["Setting", "Value"], ["Units", "us"], ["Fate if blank", "released"]):
        pages["Season"].append(row)
    pages["Trips"].append(["Trip", "Date", "Water", "Start", "End", "Anglers", "Client"])
    pages["Effort"].append(["Trip", "Technique", "Minutes", "Landed"])
    pages["Catch"].append(["Trip", "Technique", "Species", "Length (in)", "Angler"])
    pages["Clients"].append(["Client", "Name on summary", "Consent to name"])
    for client in range(clients):
        code = f"K{client:04d}"
        pages["Clients"].append([code, f"Guest {client}", "yes"])
        for trip in range(TRIPS_EACH):
            _write_trip(pages, client, trip, clients)
    book.save(path)


def _write_trip(pages: dict[str, Worksheet], client: int, trip: int, clients: int) -> None:
    name, code = f"T-{client * TRIPS_EACH + trip:05d}", f"K{client:04d}"
    shared = trip == 0 and clients > 1
    both = f"{code}; K{(client + 1) % clients:04d}" if shared else code
    day = dt.date(2026, 3, 1) + dt.timedelta(days=(client * TRIPS_EACH + trip) % 200)
    pages["Trips"].append([name, day, "Lake Arden", dt.time(6), dt.time(11), 1 + shared, both])
    for technique in ("Drop shot", "Jerkbait"):
        pages["Effort"].append([name, technique, 150, FISH_A_TRIP // 2])
    for fish in range(FISH_A_TRIP):
        technique = ("Drop shot", "Jerkbait")[fish % 2]
        angler = code if shared and fish % 3 == 0 else None
        pages["Catch"].append([name, technique, "largemouth bass", 12 + fish / 4, angler])


def growth(run: Callable[[tuple[str, ...]], float] = seconds) -> float:
    """Return the median over runs of (cost of a copy among 500) / (cost of one among 50).

    A run's cost with one client, start-up and all, is taken off both.
    """
    with TemporaryDirectory() as folder:
        commands = {}
        for clients in (ONE, FEW, MANY):
            log = Path(folder) / f"{clients}.xlsx"
            write_log(log, clients)
            commands[clients] = (*_CLIENTS, str(log), "--out", str(Path(folder) / str(clients)))
            run(commands[clients])
        ratios = []
        for _ in range(RUNS):
            took = {clients: run(command) for clients, command in commands.items()}
            many, few = ((took[n] - took[ONE]) / (n - ONE) for n in (MANY, FEW))
            ratios.append(many / few)
    return statistics.median(ratios)
