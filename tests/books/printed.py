"""What a workbook looks like on paper, by a real spreadsheet program."""

import os
import re
import shutil
import subprocess
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import numpy as np
import pytest

_PAGE = re.compile(rb"/Type\s*/Page\b")
_FOOTER = re.compile(r"^\s*(.+?)(?: – private: names and places)?\s+Page (\d+) of \d+\s*$")
DPI = 80


@dataclass(frozen=True)
class Page:
    """A printed page: its number, the sheet that its footer names, its words."""

    number: int
    sheet: str
    text: str


def printed(path: Path, folder: Path) -> Path:
    """Print a workbook into a PDF below `folder`; skips without LibreOffice, under CI it fails."""
    program = shutil.which("soffice") or shutil.which("libreoffice")
    if program is None:
        _missing("LibreOffice is not installed (no soffice)")
    profile = (folder / "profile").resolve().as_uri()
    command = [str(program), f"-env:UserInstallation={profile}", "--headless", "--norestore"]
    subprocess.run(
        [*command, "--convert-to", "pdf", "--outdir", str(folder), str(path)],
        capture_output=True,
        timeout=240,
        check=False,
    )
    made = folder / f"{path.stem}.pdf"
    # The program gives no error where it fails.
    assert made.exists()
    return made


def pages_printed(path: Path, folder: Path) -> int:
    """Print a workbook and count its pages."""
    return len(_PAGE.findall(printed(path, folder).read_bytes()))


def pages(pdf: Path) -> list[Page]:
    """Return the pages of a PDF that a workbook of ours was printed into; skips without poppler's tools."""
    text = _poppler("pdftotext", "-layout", str(pdf), "-").decode("utf-8")
    found = []
    for number, page in enumerate(text.split("\f")[:-1], start=1):
        (footer,) = (match for line in page.splitlines() if (match := _FOOTER.match(line)))
        assert int(footer[2]) == number
        found.append(Page(number, footer[1], page))
    return found


def pixels(pdf: Path, page: int) -> np.ndarray:
    """Return a page as a picture, (rows, columns, 3) from 0 to 255."""
    options = ["-r", str(DPI), "-f", str(page), "-l", str(page), "-singlefile"]
    data = _poppler("pdftoppm", *options, str(pdf))
    magic, width, height, _, rest = data.split(maxsplit=4)
    assert magic == b"P6"
    size = int(width) * int(height) * 3
    return np.frombuffer(rest[-size:], dtype=np.uint8).reshape(int(height), int(width), 3)


def of_colour(picture: np.ndarray, colour: str, within: int = 12) -> int:
    """Count the pixels that are about of a colour such as #3B83A8."""
    wanted = np.array([int(colour[at : at + 2], 16) for at in (1, 3, 5)])
    return int((np.abs(picture.astype(int) - wanted).max(axis=-1) <= within).sum())


def titled(found: list[Page], title: str) -> Iterator[Page]:
    """Give the pages on which a title stands, however it is broken over lines."""
    words = title.split()
    for page in found:
        if all(word in page.text for word in words):
            yield page


def _poppler(tool: str, *arguments: str) -> bytes:
    program = shutil.which(tool)
    if program is None:
        _missing(f"poppler's tools are not installed (no {tool})")
    return subprocess.run([str(program), *arguments], capture_output=True, check=True).stdout


def _missing(reason: str) -> None:
    (pytest.fail if os.environ.get("CI") else pytest.skip)(reason)
