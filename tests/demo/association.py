"""The sample folder of an association: small logs of eight invented guides, made from one seed."""

import datetime as dt
from pathlib import Path

from tests.rollup_logs import GuideLog, random_association

SEED, GUIDES, TRIPS = 2061, 8, (10, 16)
_SETTINGS = {
    "First day": dt.date(2026, 4, 1),
    "Last day": dt.date(2026, 7, 31),
    "As-of date": dt.date(2026, 7, 31),
    "Time zone": "America/Chicago",
}


def association() -> dict[str, GuideLog]:
    """File name -> log; the last guide has no code."""
    logs = random_association(SEED, GUIDES, TRIPS, own_permits=False)
    for log in logs:
        log.settings = dict(_SETTINGS)
    logs[-1].code = None
    return {f"log {number}.xlsx": log for number, log in enumerate(logs, start=1)}


def write_association(folder: Path) -> None:
    folder.mkdir(exist_ok=True)
    for name, log in association().items():
        log.save(folder / name)
