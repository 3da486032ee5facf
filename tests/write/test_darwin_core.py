"""The files of an archive: what meta.xml says of them is so, and nothing that is not ours is written over."""

import datetime as dt
import os
import re
import subprocess
import sys
import xml.etree.ElementTree as ET
from pathlib import Path

import pytest
from dwca.read import DwCAReader

from reporter.files.errors import CannotWrite
from reporter.write.darwin_core import guard_archive
from tests.compute.open_data.archives import CATCH, TRIPS, WATERS, Row, archive_of, rows_of
from tests.conftest import Change, WriteLog

ROOT = Path(__file__).parent.parent.parent
DEMO = ROOT / "sample_workbooks" / "demo season.xlsx"
METRIC = ROOT / "sample_workbooks" / "demo season metric, saved by LibreOffice Calc.xlsx"
NAMES = ["eml.xml", "event.txt", "measurementorfact.txt", "meta.xml", "occurrence.txt"]
TEXT = "{http://rs.tdwg.org/dwc/text/}"
EML = "{https://eml.ecoinformatics.org/eml-2.2.0}eml"


@pytest.fixture(scope="module", params=[DEMO, METRIC], ids=["us", "metric"])
def archive(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Path:
    return archive_of(request.param, tmp_path_factory.mktemp("archive"))


@pytest.fixture(scope="module")
def small(write_log: WriteLog, tmp_path_factory: pytest.TempPathFactory) -> Path:
    return archive_of(write_log(), tmp_path_factory.mktemp("small"))


def parsed(path: Path) -> ET.Element:
    return ET.fromstring(path.read_bytes())  # noqa: S314 - our own file


def contents(folder: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in folder.iterdir()}


def test_files_are_those_of_an_archive(archive: Path) -> None:
    assert sorted(path.name for path in archive.iterdir()) == NAMES


def test_metafile_describes_every_column_of_every_file(archive: Path) -> None:
    for part in parsed(archive / "meta.xml"):
        path = archive / str(part.findtext(f"{TEXT}files/{TEXT}location"))
        heading, *lines = path.read_bytes().decode("utf-8").removesuffix("\n").split("\n")
        fields = list(part.iter(f"{TEXT}field"))
        assert [int(str(field.get("index"))) for field in fields] == list(range(len(fields)))
        assert [str(field.get("term")).rpartition("/")[2] for field in fields] == heading.split("\t")
        assert {line.count("\t") for line in lines} == {len(fields) - 1}
        form = (part.get("encoding"), part.get("fieldsTerminatedBy"), part.get("linesTerminatedBy"))
        assert form == ("UTF-8", "\\t", "\\n")
        assert (part.get("fieldsEnclosedBy"), part.get("ignoreHeaderLines")) == ("", "1")


def test_key_is_the_first_column_and_every_row_of_an_extension_has_its_event(archive: Path) -> None:
    core, *extensions = parsed(archive / "meta.xml")
    assert [part.find(f"{TEXT}coreid").get("index") for part in extensions] == ["0", "0"]
    assert core.find(f"{TEXT}id").get("index") == "0"
    events = [row["eventID"] for row in rows_of(archive / "event.txt")]
    assert len(set(events)) == len(events)
    assert {row["parentEventID"] for row in rows_of(archive / "event.txt")} <= {"", *events}
    for name in ("occurrence.txt", "measurementorfact.txt"):
        assert {row["eventID"] for row in rows_of(archive / name)} <= set(events)


def test_measurement_stands_with_the_event_of_its_fish(archive: Path) -> None:
    event_of = {row["occurrenceID"]: row["eventID"] for row in rows_of(archive / "occurrence.txt")}
    of_fish = [row for row in rows_of(archive / "measurementorfact.txt") if row["occurrenceID"]]
    assert of_fish
    assert all(event_of[row["occurrenceID"]] == row["eventID"] for row in of_fish)


def test_values_have_the_form_that_the_standard_recommends(archive: Path) -> None:
    day = r"\d{4}-\d\d-\d\d"
    for row in rows_of(archive / "event.txt"):
        assert re.fullmatch(rf"{day}(/{day})?", row["eventDate"])
        assert re.fullmatch(r"(\d+(\.\d+)? angler-hours)?", row["samplingEffort"])
        assert (row["sampleSizeValue"] == "") == (row["sampleSizeUnit"] == "")
        assert (row["decimalLatitude"], row["decimalLongitude"]) == ("", "")
    for row in rows_of(archive / "occurrence.txt"):
        assert row["basisOfRecord"] == "HumanObservation"
        assert row["recordedBy"] == ""
        assert (row["occurrenceStatus"] == "detected") == (int(row["individualCount"]) > 0)
        assert row["occurrenceStatus"] in ("detected", "notDetected")
        assert re.fullmatch(r"(urn:lsid:itis\.gov:itis_tsn:\d+)?", row["scientificNameID"])


def test_independent_reader_of_archives_finds_everything(archive: Path) -> None:
    with DwCAReader(str(archive)) as reader:
        assert reader.metadata.tag == EML
        events = list(reader)
        assert [event.id for event in events] == [row["eventID"] for row in rows_of(archive / "event.txt")]
        assert reader.orphaned_extension_rows() == {"occurrence.txt": {}, "measurementorfact.txt": {}}
        lines = sum(len(event.extensions) for event in events)
    assert lines == sum(len(rows_of(archive / name)) for name in ("occurrence.txt", "measurementorfact.txt"))


def test_description_has_what_the_profile_asks_for_in_its_order(archive: Path) -> None:
    # GBIF metadata profile 1.3: title, creator, pubDate, abstract and contact must be there.
    root = parsed(archive / "eml.xml")
    assert root.tag == EML
    assert root.get("packageId")
    assert root.get("system")
    (dataset,) = root
    assert [child.tag for child in dataset] == [
        *("title", "creator", "metadataProvider", "pubDate", "language", "abstract", "additionalInfo"),
        *("intellectualRights", "coverage", "contact"),
    ]
    assert {dataset.findtext(f"{who}/organizationName") for who in ("creator", "contact")} == {
        "An invented guide"
    }
    place = dataset.find("coverage/geographicCoverage")
    assert [child.tag for child in place] == ["geographicDescription", "boundingCoordinates"]
    corners = [corner.tag.removesuffix("BoundingCoordinate") for corner in place.find("boundingCoordinates")]
    assert corners == ["west", "east", "north", "south"]
    assert all(element.text.strip() for element in dataset.iter() if len(element) == 0)


def test_rights_are_left_to_the_guide(small: Path) -> None:
    assert str(parsed(small / "eml.xml").findtext(".//intellectualRights/para")).startswith("Fill in")


def test_first_line_of_the_abstract_says_what_is_generalised(write_log: WriteLog, tmp_path: Path) -> None:
    hidden = archive_of(write_log(), tmp_path / "hidden")
    (first, *_) = parsed(hidden / "eml.xml").findall(".//abstract/para")
    assert str(first.text).startswith("Generalised: 2 of 2 waters are not named")
    names = ("Lake Arden", "Bell River")
    waters: list[Row] = [WATERS, *([name, "US-MI", "Fulton", None, "yes", None] for name in names)]
    shared = archive_of(write_log({"Waters": waters}), tmp_path / "shared")
    (first, *_) = parsed(shared / "eml.xml").findall(".//abstract/para")
    assert str(first.text).startswith("Not generalised: every water is named.")


PROGRAM = """
import sys
from pathlib import Path
from tests.compute.open_data.archives import archive_of
archive_of(Path(sys.argv[1]), Path(sys.argv[2]))
"""


def test_same_log_gives_the_same_bytes_in_another_process(tmp_path: Path) -> None:
    for seed in ("1", "2"):
        environment = {**os.environ, "PYTHONHASHSEED": seed}
        command = [sys.executable, "-c", PROGRAM, str(DEMO), str(tmp_path / seed)]
        subprocess.run(command, cwd=ROOT, env=environment, check=True)
    assert contents(tmp_path / "1") == contents(tmp_path / "2")


def nasty(text: str) -> dict[str, Change]:
    trip: Row = ["T-1", dt.date(2026, 4, 18), text, dt.time(6), dt.time(10), 2]
    return {
        "Trips": [TRIPS, trip],
        "Effort": [["Trip", "Technique", "Minutes"], ["T-1", "Drop shot", 60]],
        "Catch": [CATCH, ["T-1", "Drop shot", "walleye"]],
        "Waters": [WATERS, [text, "US-MI", text, text, "yes", None]],
        "Season": [["Setting", "Value"], ["Guide or outfit", text], ["Season name", text]],
    }


@pytest.mark.parametrize("text", ["a\tb\nc", "a\rb", 'a "b" <c> & d', "ä\u2028ö\u00a0ü", "<r>x</r>"])
def test_text_as_typed_breaks_no_line_and_no_document(text: str, write_log: WriteLog, tmp_path: Path) -> None:
    folder = archive_of(write_log(nasty(text)), tmp_path / "out")
    (event,) = rows_of(folder / "event.txt")
    assert event["waterBody"].split() == text.split()
    assert event["county"].split() == text.split()
    assert str(parsed(folder / "eml.xml").findtext(".//creator/organizationName")).split() == text.split()
    with DwCAReader(str(folder)) as reader:
        assert len(list(reader)) == 1


@pytest.mark.parametrize("text", ["'=1+1", "+1-1", "@SUM(A1)", "-1+1"])
def test_text_as_typed_is_no_formula(text: str, write_log: WriteLog, tmp_path: Path) -> None:
    (event,) = rows_of(archive_of(write_log(nasty(text)), tmp_path / "out") / "event.txt")
    assert event["waterBody"].startswith("'")
    assert event["locationID"].startswith("'")


def test_archive_of_ours_is_replaced(write_log: WriteLog, tmp_path: Path) -> None:
    log, out = write_log(), tmp_path / "out"
    before = contents(archive_of(log, out))
    changed = write_log({"Season": [["Setting", "Value"], ["Season name", "Another name"]]})
    guard_archive(out, [changed])
    assert contents(archive_of(changed, out)) != before


@pytest.mark.parametrize("name", NAMES)
def test_file_of_somebody_else_is_not_written_over(name: str, tmp_path: Path) -> None:
    (tmp_path / name).write_text("<eml/>", encoding="utf-8")
    with pytest.raises(CannotWrite, match=f"{re.escape(name)} is there and was not written by reporter"):
        guard_archive(tmp_path, [])


def test_description_that_was_filled_in_is_not_written_over(write_log: WriteLog, tmp_path: Path) -> None:
    eml = archive_of(write_log(), tmp_path / "out") / "eml.xml"
    filled = eml.read_text(encoding="utf-8").replace("Fill in: under which licence", "CC0, whichever licence")
    eml.write_text(filled, encoding="utf-8", newline="\r\n")
    with pytest.raises(CannotWrite, match=r"its eml\.xml was changed by hand"):
        guard_archive(eml.parent, [])


def test_description_saved_with_other_line_ends_alone_is_still_ours(
    write_log: WriteLog, tmp_path: Path
) -> None:
    eml = archive_of(write_log(), tmp_path / "out") / "eml.xml"
    eml.write_text(eml.read_text(encoding="utf-8"), encoding="utf-8", newline="\r\n")
    guard_archive(eml.parent, [])


def test_neither_a_file_nor_a_log_nor_what_is_read_is_a_target(write_log: WriteLog, tmp_path: Path) -> None:
    log = write_log(folder=tmp_path)
    with pytest.raises(CannotWrite, match="it is a file, not a folder"):
        guard_archive(log, [log])
    archive_of(log, tmp_path / "out")
    with pytest.raises(CannotWrite, match="a file I am reading"):
        guard_archive(tmp_path / "out", [tmp_path / "out" / "event.txt"])
    (tmp_path / "log").mkdir()
    (tmp_path / "log" / "Trips.csv").write_text("Trip,Date\n", encoding="utf-8")
    with pytest.raises(CannotWrite, match=r"a log of \.csv files"):
        guard_archive(tmp_path / "log", [])


def test_season_without_a_trip_that_may_be_told_is_an_archive_without_rows(
    write_log: WriteLog, tmp_path: Path
) -> None:
    trip: Row = ["T-1", dt.date(2026, 4, 18), "Lake Arden", dt.time(6), dt.time(10), 2, "own"]
    sheets: dict[str, Change] = {
        "Trips": [[*TRIPS, "Kind"], trip],
        "Effort": [["Trip", "Technique", "Minutes"], ["T-1", "Drop shot", 60]],
        "Catch": [CATCH],
    }
    folder = archive_of(write_log(sheets), tmp_path / "out")
    assert [len(rows_of(folder / name)) for name in NAMES if name.endswith(".txt")] == [0, 0, 0]
    assert parsed(folder / "eml.xml").find(".//temporalCoverage") is None
