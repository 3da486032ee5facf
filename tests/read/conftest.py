import os
import zipfile
from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import suppress
from pathlib import Path
from typing import BinaryIO

import openpyxl
import pytest

from reporter.read import door, xlsx
from reporter.read.door import open_log
from reporter.read.errors import Unreadable
from reporter.read.package import SheetPart
from reporter.read.raw import RawSheet
from reporter.read.rows import Rows
from reporter.read.scan import Scan


def worked() -> float:
    """Seconds of a processor that this process and its ended children have used."""
    return sum(os.times()[:4])


def exact(found: tuple[list[RawSheet], list[str]]) -> object:
    """Sheets in a form in which 3 is not 3.0, a date no moment and True not 1."""
    sheets, unread = found
    return [(sheet, repr(sheet.rows)) for sheet in sheets], unread


@pytest.fixture(autouse=True)
def both_ways(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Every workbook that a test opens is read by the quick way and by the other, which must agree.

    The quick way may read what the other calls damaged: it looks at less.
    """
    read, quick = door.read_xlsx, xlsx.quick_rows
    differing: list[object] = []

    def read_twice(
        archive: zipfile.ZipFile, file: BinaryIO, wanted: Callable[[str], bool]
    ) -> tuple[list[RawSheet], list[str]]:
        found = read(archive, file, wanted)
        monkeypatch.setattr(xlsx, "quick_rows", lambda *_: {})
        with suppress(Exception):
            other = read(archive, file, wanted)
            if exact(found) != exact(other):
                differing.append((found, other))
        monkeypatch.setattr(xlsx, "quick_rows", quick)
        return found

    monkeypatch.setattr(door, "read_xlsx", read_twice)
    yield
    assert not differing


@pytest.fixture
def way_of(monkeypatch: pytest.MonkeyPatch) -> Callable[..., dict[str, str]]:
    """Opens a workbook and tells of each sheet asked for which way it was read."""
    quick = xlsx.quick_rows
    ways: dict[str, str] = {}

    def watched(
        archive: zipfile.ZipFile, sheets: Iterable[SheetPart], scans: Mapping[str, Scan]
    ) -> dict[str, Rows]:
        found = quick(archive, sheets, scans)
        ways.update({sheet.name: "quick" if sheet.part in found else "full" for sheet in sheets})
        return found

    def way(path: Path, wanted: Callable[[str], bool] = lambda _: True) -> dict[str, str]:
        ways.clear()
        with monkeypatch.context() as patch:
            patch.setattr(xlsx, "quick_rows", watched)
            with suppress(Unreadable):  # said by the other way, which has been asked
                open_log(path, wanted)
        return dict(ways)

    return way


Patch = dict[str, bytes | Callable[[bytes], bytes] | None]


@pytest.fixture
def patched(tmp_path: Path) -> Callable[[Path, Patch], Path]:
    """Copies a workbook with some of its parts changed, added, or (None) left out."""

    def copy(source: Path, changes: Patch, name: str = "patched.xlsx") -> Path:
        target = tmp_path / name
        with zipfile.ZipFile(source) as old, zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED) as new:
            parts = {entry: old.read(entry) for entry in old.namelist()}
            for part, change in changes.items():
                if change is None:
                    parts.pop(part)
                else:
                    parts[part] = change(parts[part]) if callable(change) else change
            for part, data in parts.items():
                new.writestr(part, data)
        return target

    return copy


@pytest.fixture
def sheet_of() -> Callable[..., RawSheet]:
    """Reads one sheet, the first unless named."""

    def read(path: Path, name: str | None = None) -> RawSheet:
        return next(sheet for sheet in open_log(path, lambda _: True).sheets if name in (None, sheet.name))

    return read


@pytest.fixture
def sheet_xml(tmp_path: Path, patched: Callable[[Path, Patch], Path]) -> Callable[..., Path]:
    """A workbook of one sheet, Log, with exactly this XML as the sheet."""

    def make(xml: str, name: str = "log.xlsx") -> Path:
        plain = tmp_path / "plain.xlsx"
        book = openpyxl.Workbook()
        book.active.title = "Log"
        book.save(plain)
        return patched(plain, {"xl/worksheets/sheet1.xml": xml.encode()}, name)

    return make


@pytest.fixture
def log(tmp_path: Path) -> Path:
    """A sound workbook of one sheet and three rows."""
    book = openpyxl.Workbook()
    book.active.title = "Trips"
    for row in (["Trip", "Water"], [1, "Lake"], [2, "River"]):
        book.active.append(row)
    book.save(tmp_path / "log.xlsx")
    return tmp_path / "log.xlsx"


@pytest.fixture
def sentence() -> Callable[[Path], str]:
    """What is said about a file that cannot be read, checked for form."""

    def say(path: Path) -> str:
        with pytest.raises(Unreadable) as caught:
            open_log(path, lambda _: True)
        said = str(caught.value)
        assert said.startswith(f"I cannot read {path.name}: ")
        assert said.endswith(".")
        assert "\n" not in said
        assert len(said) < 250 + len(path.name)
        assert "Error" not in said
        return said

    return say
