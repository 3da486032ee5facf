"""What comes through the door for weather, and the one sentence for what does not."""

import gzip
import hashlib
from pathlib import Path

import openpyxl
import pytest

from reporter.read.errors import Unreadable
from reporter.read.weather.door import open_weather
from reporter.schema.weather_files.formats import FORMATS

ASOS = "station,valid,tmpf,drct,sknt,alti\nDSM,2024-03-05 11:54,50.00,270.00,10.00,30.00\n"
CANADA = (
    '"Station Name","Climate ID","Date/Time (LST)","Temp (°C)","Wind Dir (10s deg)","Stn Press (kPa)"\n'
    '"TRURO","8205990","2024-07-01 00:00","15.5","36","99.50"\n'
)


def sentence(path: Path) -> str:
    with pytest.raises(Unreadable) as refused:
        open_weather(path)
    text = str(refused.value)
    assert text.startswith("I cannot read ")
    assert text.endswith(".")
    assert "\n" not in text
    return text


def test_missing_file_and_folder_are_said(tmp_path: Path) -> None:
    assert "there is no such file" in sentence(tmp_path / "none.csv")
    assert "that is a folder" in sentence(tmp_path)


def test_workbook_is_not_taken_for_text(tmp_path: Path) -> None:
    openpyxl.Workbook().save(tmp_path / "weather.csv")
    assert "it is a workbook" in sentence(tmp_path / "weather.csv")


@pytest.mark.parametrize(
    ("content", "why"),
    [
        (b"", "it is empty"),
        (b" \r\n\r\n", "it is empty"),
        (b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR", "it holds no text"),
        (b"station,valid\n" + b"x" * 5000 + b"\0", "it holds no text"),
        (b"PK\x03\x04 cut", "it is a damaged archive"),
        (b"\x1f\x8b\x08 cut", "it is a damaged archive"),
        (b"<!doctype html><html><body>Busy</body></html>", "it is a web page"),
        (b"<?xml version='1.0'?><response/>", "it is an XML file"),
        (b"Trip,Date,Water\nT-1,2026-04-18,Lake Arden\n", "it is none of the weather files that I know"),
    ],
)
def test_what_is_no_weather_file_is_named_for_what_it_is(content: bytes, why: str, tmp_path: Path) -> None:
    (tmp_path / "weather.csv").write_bytes(content)
    assert why in sentence(tmp_path / "weather.csv")


def test_unknown_file_is_told_what_was_looked_for(tmp_path: Path) -> None:
    (tmp_path / "weather.csv").write_text("a,b\n1,2\n")
    said = sentence(tmp_path / "weather.csv")
    assert all(known.name in said for known in FORMATS)
    assert "(station, valid, tmpf)" in said


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "cp1252"])
def test_text_is_read_in_any_usual_encoding(encoding: str, tmp_path: Path) -> None:
    path = tmp_path / "weather.csv"
    path.write_bytes(CANADA.encode(encoding))
    raw = open_weather(path)
    assert raw.format.name == "Environment Canada hourly"
    assert raw.columns["temperature"] == ["15.5"]
    assert raw.zone == "LST"


def test_packed_file_is_read_and_its_fingerprint_is_of_the_file_as_it_is(tmp_path: Path) -> None:
    path = tmp_path / "weather.csv.gz"
    path.write_bytes(gzip.compress(ASOS.encode()))
    raw = open_weather(path)
    assert (raw.name, raw.path, raw.lines) == ("weather.csv.gz", path, [2])
    assert raw.sha256 == hashlib.sha256(path.read_bytes()).hexdigest()


def test_only_wanted_columns_are_kept_with_their_lines_and_headings(tmp_path: Path) -> None:
    path = tmp_path / "weather.csv"
    path.write_text(
        "#DEBUG: one\nStation,VALID,tmpf,vsby\n\nDSM, 2024-03-05 11:54 ,50.00,10\nAMW,2024-03-05 11:53,M,10\n"
    )
    raw = open_weather(path)
    assert raw.columns == {
        "station": ["DSM", "AMW"],
        "time": ["2024-03-05 11:54", "2024-03-05 11:53"],
        "temperature": ["50.00", "M"],
    }
    assert raw.headings == {"station": "Station", "time": "VALID", "temperature": "tmpf"}
    assert raw.lines == [4, 5]


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_any_line_ends_count_as_one(end: str, tmp_path: Path) -> None:
    path = tmp_path / "weather.csv"
    path.write_bytes(ASOS.replace("\n", end).encode())
    assert open_weather(path).lines == [2]


def test_lines_of_another_width_are_left_out_and_shift_nothing(tmp_path: Path) -> None:
    path = tmp_path / "weather.csv"
    path.write_text(
        "station,valid,tmpf,alti\n"
        "DSM,2024-03-05 10:54,50.00,30.00\n"
        "DSM,2024-03-05 11:54,5\n"
        "DSM,2024-03-05 12:54,50,00,30.00\n"
        "DSM,2024-03-05 13:54,51.00,30.01\n"
    )
    raw = open_weather(path)
    assert raw.columns["temperature"] == ["50.00", "51.00"]
    assert raw.lines == [2, 5]
    (left,) = raw.left_out
    assert (left.lines, left.first) == ([3, 4], "DSM,2024-03-05 11:54,5")


def test_stray_quote_swallows_no_lines(tmp_path: Path) -> None:
    path = tmp_path / "weather.csv"
    path.write_text(
        "station,valid,tmpf,metar\n"
        'DSM,2024-03-05 10:54,50.00,"KDSM\n'
        'DSM,2024-03-05 11:54,51.00,"KDSM, calm"\n'
        "DSM,2024-03-05 12:54,52.00,KDSM\n"
    )
    assert open_weather(path).columns["temperature"] == ["50.00", "51.00", "52.00"]


def test_files_joined_end_to_end_are_read_by_the_headings_of_each_part(tmp_path: Path) -> None:
    path = tmp_path / "weather.csv"
    path.write_text(
        "station,valid,tmpf,alti\nDSM,2024-03-05 10:54,50.00,30.00\n"
        "station,valid,alti,tmpf,mslp\nDSM,2024-03-05 11:54,30.01,51.00,1016.2\n"
    )
    raw = open_weather(path)
    assert raw.columns["temperature"] == ["50.00", "51.00"]
    assert raw.columns["altimeter"] == ["30.00", "30.01"]
    assert raw.columns["sea_level"] == ["", "1016.2"]
    assert raw.lines == [2, 4]


def test_file_of_headings_alone_is_a_file_without_lines(tmp_path: Path) -> None:
    path = tmp_path / "weather.csv"
    path.write_text("station,valid,tmpf\n")
    assert open_weather(path).lines == []
