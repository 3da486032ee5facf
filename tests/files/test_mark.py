import shutil
import subprocess
import zipfile
from pathlib import Path

import openpyxl
import pytest
import xlsxwriter

from reporter.files.mark import KINDS, MARK_PROPERTY, TYPED_IN, read_mark


def _marked(path: Path, kind: str = "report") -> Path:
    book = xlsxwriter.Workbook(path)
    book.add_worksheet().write(0, 0, "Trip")
    book.set_custom_property("Author's own", "not ours")
    book.set_custom_property(MARK_PROPERTY, kind)
    book.set_custom_property("Another", 7)
    book.close()
    return path


def _custom(path: Path, xml: bytes) -> Path:
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("docProps/custom.xml", xml)
    return path


@pytest.mark.parametrize("kind", sorted(KINDS))
def test_every_kind_is_read_back(kind: str, tmp_path: Path) -> None:
    assert read_mark(_marked(tmp_path / "a.xlsx", kind)) == kind


def test_what_is_typed_in_is_among_the_kinds() -> None:
    assert TYPED_IN < KINDS
    assert len(KINDS) == 8


def test_the_mark_survives_openpyxl(tmp_path: Path) -> None:
    book = openpyxl.load_workbook(_marked(tmp_path / "a.xlsx", "fix list"))
    book.active["A2"] = "typed"
    book.save(tmp_path / "b.xlsx")
    assert read_mark(tmp_path / "b.xlsx") == "fix list"


@pytest.mark.libreoffice
def test_the_mark_survives_libreoffice(tmp_path: Path) -> None:
    if shutil.which("soffice") is None:
        pytest.skip("LibreOffice is not installed")
    profile = f"-env:UserInstallation={(tmp_path / 'profile').as_uri()}"
    command = [
        "soffice",
        profile,
        "--headless",
        "--norestore",
        "--convert-to",
        "xlsx",
        "--outdir",
        tmp_path / "out",
    ]
    marked = _marked(tmp_path / "a.xlsx", "client")
    subprocess.run([*command, marked], check=True, capture_output=True, timeout=120)
    again = tmp_path / "out" / "a.xlsx"
    assert again.exists()  # it reports success even when it fails
    assert again.read_bytes() != marked.read_bytes()
    assert read_mark(again) == "client"


def test_a_workbook_of_another_hand_has_no_mark(tmp_path: Path) -> None:
    openpyxl.Workbook().save(tmp_path / "a.xlsx")
    assert read_mark(tmp_path / "a.xlsx") is None
    assert read_mark(_marked(tmp_path / "b.xlsx", "novel")) is None


@pytest.mark.parametrize("content", [b"", b"PK\x03\x04", b"Trip,Water\n", bytes(1000)])
def test_what_is_no_workbook_has_no_mark(content: bytes, tmp_path: Path) -> None:
    (tmp_path / "a.xlsx").write_bytes(content)
    assert read_mark(tmp_path / "a.xlsx") is None


def test_a_folder_and_a_missing_file_have_no_mark(tmp_path: Path) -> None:
    assert read_mark(tmp_path) is None
    assert read_mark(tmp_path / "gone.xlsx") is None


PROPERTY = '<property name="season-reporter"><vt:lpwstr>report</vt:lpwstr></property>'


def test_only_a_small_well_formed_part_without_declarations_is_believed(tmp_path: Path) -> None:
    good = f'<Properties xmlns:vt="urn:vt">{PROPERTY}</Properties>'
    assert read_mark(_custom(tmp_path / "a.xlsx", good.encode())) == "report"
    for bad in (
        f"<!DOCTYPE x>{good}",
        good[:-3],
        f"{good}<!--{'x' * (1 << 20)}-->",
        good.replace("report<", "a report<"),
    ):
        assert read_mark(_custom(tmp_path / "a.xlsx", bad.encode())) is None


def test_a_damaged_file_has_no_mark_and_raises_nothing(tmp_path: Path) -> None:
    whole = _marked(tmp_path / "a.xlsx").read_bytes()
    read = set()
    for place in range(0, len(whole), 7):
        data = bytearray(whole)
        data[place] ^= 0xFF
        (tmp_path / "a.xlsx").write_bytes(data)
        read.add(read_mark(tmp_path / "a.xlsx"))
    for length in range(0, len(whole), 101):
        (tmp_path / "a.xlsx").write_bytes(whole[:length])
        assert read_mark(tmp_path / "a.xlsx") is None
    assert read == {"report", None}


def test_reading_the_mark_touches_no_sheet(tmp_path: Path) -> None:
    whole = bytearray(_marked(tmp_path / "a.xlsx").read_bytes())
    with zipfile.ZipFile(tmp_path / "a.xlsx") as archive:
        start = archive.getinfo("xl/worksheets/sheet1.xml").header_offset
    whole[start : start + 60] = bytes(60)
    (tmp_path / "a.xlsx").write_bytes(whole)
    assert read_mark(tmp_path / "a.xlsx") == "report"
