import os
import struct
import zipfile
from collections.abc import Callable
from pathlib import Path

import openpyxl
import pytest

from reporter.files.mark import read_mark
from reporter.read.door import open_log

MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
STRICT = "http://purl.oclc.org/ooxml/spreadsheetml/main"
Say = Callable[[Path], str]
OLE = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"", "it is empty"),
        (b"<html><body><table><tr><td>Trip</td></tr></table></body></html>", "web page"),
        (b"\xef\xbb\xbf\r\n<!DOCTYPE HTML><p>", "web page"),
        (b"<?xml version='1.0'?><Workbook/>", "XML file"),
        (b"Trip,Water\r\n1,Lake\r\n", "plain text"),
        ("Trip\tWater\r\n".encode("utf-16"), "plain text"),
        (OLE + bytes(504) + "Workbook".encode("utf-16-le"), "of a kind that I cannot read"),
        (OLE + bytes(9000) + "EncryptedPackage".encode("utf-16-le") + bytes(99), "locked with a password"),
        (b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR", "not a spreadsheet that I know"),
        (b"PK\x03\x04 and then nothing of use", "only part of it is here"),
    ],
)
def test_what_is_no_workbook_is_named_for_what_it_is(
    content: bytes, said: str, tmp_path: Path, sentence: Say
) -> None:
    (tmp_path / "my log.xlsx").write_bytes(content)
    assert said in sentence(tmp_path / "my log.xlsx")


@pytest.mark.parametrize(
    ("parts", "said"),
    [
        (
            {"mimetype": "application/vnd.oasis.opendocument.spreadsheet", "content.xml": "<a/>"},
            "I cannot read",
        ),
        ({"mimetype": "application/epub+zip"}, "no spreadsheet in it"),
        ({"photo.jpg": "x"}, "no spreadsheet in it"),
        ({"[Content_Types].xml": "<Types/>", "xl/workbook.bin": "x"}, "of a kind that I cannot read"),
        ({"[Content_Types].xml": "<Types/>", "word/document.xml": "<w/>"}, "damaged"),
    ],
)
def test_other_archives_are_named_for_what_they_are(
    parts: dict[str, str], said: str, tmp_path: Path, sentence: Say
) -> None:
    with zipfile.ZipFile(tmp_path / "log.xlsx", "w") as archive:
        for name, text in parts.items():
            archive.writestr(name, text)
    assert said in sentence(tmp_path / "log.xlsx")


def test_a_text_document_packed_like_a_workbook_is_no_spreadsheet(
    log: Path, patched: Callable[..., Path], sentence: Say
) -> None:
    path = patched(log, {"xl/workbook.xml": b'<w:document xmlns:w="urn:words"/>'})
    assert "no spreadsheet in it" in sentence(path)


def test_what_is_not_there_and_what_is_a_folder(tmp_path: Path, sentence: Say) -> None:
    assert "no such file" in sentence(tmp_path / "gone.xlsx")
    assert "that is a folder" in sentence(tmp_path)
    assert "the computer says" in sentence(tmp_path / f"{'r' * 120}{'ü' * 120}.xlsx")


@pytest.mark.skipif(not hasattr(os, "geteuid") or os.geteuid() == 0, reason="nothing is forbidden to root")
def test_a_file_that_may_not_be_read(log: Path, sentence: Say) -> None:
    log.chmod(0)
    assert "no permission" in sentence(log)


def test_a_file_that_another_program_has_locked(
    log: Path, monkeypatch: pytest.MonkeyPatch, sentence: Say
) -> None:
    def locked(_: Path) -> bytes:
        raise PermissionError(13, "in use")

    monkeypatch.setattr(Path, "read_bytes", locked)
    assert "no permission to open it, or another program has it locked" in sentence(log)


def test_a_workbook_of_the_strict_kind_is_not_read_as_empty(
    log: Path, patched: Callable[..., Path], sentence: Say
) -> None:
    path = patched(log, {"xl/workbook.xml": lambda xml: xml.replace(MAIN.encode(), STRICT.encode())})
    assert "Strict Open XML" in sentence(path)


@pytest.mark.parametrize("part", ["xl/worksheets/sheet1.xml", "xl/sharedStrings.xml", "docProps/app.xml"])
def test_a_document_type_declaration_is_refused_in_any_part(
    part: str, log: Path, patched: Callable[..., Path], sentence: Say
) -> None:
    declared = b'<?xml version="1.0"?><!-- first --><!DOCTYPE x [<!ENTITY a "b">]><x>&a;</x>'
    assert "document type declaration" in sentence(patched(log, {part: declared}))


def test_a_sheet_in_wide_characters_is_refused(
    log: Path, patched: Callable[..., Path], sentence: Say
) -> None:
    def widen(xml: bytes) -> bytes:
        return xml.decode().replace('encoding="UTF-8"', 'encoding="UTF-16"').encode("utf-16")

    assert "unusual character code" in sentence(patched(log, {"xl/worksheets/sheet1.xml": widen}))


def test_a_bomb_is_refused_before_it_is_unpacked(
    log: Path, patched: Callable[..., Path], sentence: Say
) -> None:
    path = patched(log, {"xl/worksheets/sheet1.xml": b"<a>" + bytes(2 << 20)})
    assert "unpacks to more than 200 times its size" in sentence(path)


def test_a_part_that_claims_to_be_huge_is_refused_without_looking_into_it(log: Path, sentence: Say) -> None:
    data = bytearray(log.read_bytes())
    entry = data.rindex(b"PK\x01\x02")
    data[entry + 24 : entry + 28] = struct.pack("<L", (256 << 20) + 1)  # its size in the directory
    log.write_bytes(data)
    assert "unpacks to more than 256 MiB in one part" in sentence(log)


@pytest.mark.parametrize("limit", ["MAX_PART", "MAX_UNPACKED"])
def test_each_limit_on_size_holds_by_itself(
    limit: str, log: Path, monkeypatch: pytest.MonkeyPatch, sentence: Say
) -> None:
    with zipfile.ZipFile(log) as archive:
        sizes = [entry.file_size for entry in archive.infolist()]
    exact = max(sizes) if limit == "MAX_PART" else sum(sizes)
    monkeypatch.setattr(f"reporter.read.look.{limit}", exact)
    assert open_log(log, lambda _: True).sheets
    monkeypatch.setattr(f"reporter.read.look.{limit}", exact - 1)
    assert "unpacks to more than" in sentence(log)


def test_too_many_entries_are_refused(log: Path, sentence: Say) -> None:
    with zipfile.ZipFile(log, "a") as archive:
        for number in range(5000):
            archive.writestr(f"x/{number}", b"")
    assert "packed of more than 5,000 parts" in sentence(log)
    assert read_mark(log) is None


def test_a_part_locked_inside_the_archive_is_refused(log: Path, sentence: Say) -> None:
    data = bytearray(log.read_bytes())
    data[data.rindex(b"PK\x01\x02") + 8] |= 1  # the flag of an encrypted entry
    log.write_bytes(data)
    assert "password" in sentence(log)


@pytest.mark.parametrize("limit", ["MAX_VALUES", "MAX_CELLS"])
def test_more_cells_than_any_log_are_refused_over_all_wanted_sheets(
    limit: str, log: Path, monkeypatch: pytest.MonkeyPatch, sentence: Say
) -> None:
    book = openpyxl.load_workbook(log)
    book.copy_worksheet(book.active)
    book.save(log)
    monkeypatch.setattr(f"reporter.read.xlsx.{limit}", 12)
    assert len(open_log(log, lambda _: True).sheets) == 2
    monkeypatch.setattr(f"reporter.read.xlsx.{limit}", 11)
    said = "11 filled cells" if limit == "MAX_VALUES" else "11 cells, blank or not"
    assert f"holds more than {said}" in sentence(log)
    assert len(open_log(log, {"Trips"}.__contains__).sheets) == 1


def test_many_rows_that_reach_far_to_the_right_are_refused(tmp_path: Path, sentence: Say) -> None:
    book = openpyxl.Workbook()
    for row in range(1, 1300):
        book.active.cell(row, 16384, "x")
    book.save(tmp_path / "log.xlsx")
    said = "more than 20,000,000 cells, blank ones before a row's last counted"
    assert said in sentence(tmp_path / "log.xlsx")


def test_too_little_memory_is_a_sentence(log: Path, monkeypatch: pytest.MonkeyPatch, sentence: Say) -> None:
    def starved(*_: object) -> None:
        raise MemoryError

    monkeypatch.setattr("reporter.read.door.read_xlsx", starved)
    assert "needs more memory" in sentence(log)
