"""Logs made into open data, and files of archives read back without the code that wrote them."""

from pathlib import Path

from reporter.compute.open_data.archive import OpenData, open_data
from reporter.run.season import read_season
from reporter.write.darwin_core import write_archive

Row = list[object]

TRIPS: Row = ["Trip", "Date", "Water", "Start", "End", "Anglers"]
CATCH: Row = ["Trip", "Technique", "Species", "Count", "Length (in)", "Weight (lb)", "Measured", "Fate"]
WATERS: Row = ["Water", "Region", "County", "Agency code", "Share name", "Masked name"]


def data_of(log: Path) -> OpenData:
    reading = read_season(log)
    assert reading.season is not None, [stop.message for stop in reading.stops]
    return open_data(reading.season, reading.log)


def archive_of(log: Path, folder: Path) -> Path:
    write_archive(data_of(log), folder)
    return folder


def rows_of(path: Path) -> list[dict[str, str]]:
    heading, *lines = path.read_bytes().decode("utf-8").removesuffix("\n").split("\n")
    names = heading.split("\t")
    return [dict(zip(names, line.split("\t"), strict=True)) for line in lines]
