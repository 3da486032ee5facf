"""What a workbook looks like on paper, by a real spreadsheet program."""

import html
import os
import re
import shutil
import subprocess
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import NamedTuple

import numpy as np
import pytest

_PAGE = re.compile(rb"/Type\s*/Page\b")
_FOOTER = re.compile(r"^\s*(.+?)(?: – private: names and places)?\s+Page (\d+) of \d+\s*$")
_WORD = re.compile(r'<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">(.*?)</word>')
_BOX_EM = 1.3
"""Height of a word's box in ems of the reports' face: that of 10 points has 13.0 points."""
DPI = 80
_FINE_DPI = 110
_SHORT_WORD = 3  # letters; a longer one is wider than it is high, unless an axis has it turned
_LEAST_INK = 30  # of 255, between a letter and its ground


@dataclass(frozen=True)
class Page:
    """A printed page: its number, the sheet that its footer names, its words as they stand, and as drawn.

    drawn: cell by cell, without a blank anywhere, so that no line break matters.
    words: every word with its box.
    """

    number: int
    sheet: str
    text: str
    drawn: str
    words: list["Word"]

    def letters(self) -> list[float]:
        """Size of every letter, in points."""
        return [(word.bottom - word.top) / _BOX_EM for word in self.words for _ in word.text]


class Word(NamedTuple):
    """A word on a page, with its box in points from the page's upper left corner."""

    text: str
    left: float
    top: float
    right: float
    bottom: float


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
    text, raw, boxes = (
        _poppler("pdftotext", option, str(pdf), "-").decode("utf-8")
        for option in ("-layout", "-raw", "-bbox")
    )
    cut = zip(text.split("\f")[:-1], raw.split("\f")[:-1], boxes.split("<page ")[1:], strict=True)
    found = []
    for number, (page, drawn, boxed) in enumerate(cut, start=1):
        (footer,) = (match for line in page.splitlines() if (match := _FOOTER.match(line)))
        assert int(footer[2]) == number
        found.append(Page(number, footer[1], page, unbroken(drawn), list(_words(boxed))))
    return found


def unbroken(text: str) -> str:
    """Return text without a blank, as a page breaks it over lines."""
    return "".join(text.split())


def _words(boxed: str) -> Iterator[Word]:
    for *box, word in _WORD.findall(boxed):
        yield Word(html.unescape(word), *map(float, box))


def out_of_sight(pdf: Path, page: Page) -> list[str]:
    """Return the words of a page whose last letter leaves no ink: a cell's edge cuts them off.

    The file holds such words whole.
    """
    picture = pixels(pdf, page.number, _FINE_DPI).min(axis=-1).astype(int)
    scale = _FINE_DPI / 72
    hidden = []
    for word in page.words:
        upright = word.bottom - word.top > word.right - word.left and len(word.text) > _SHORT_WORD
        letter = (word.right - word.left) / (1 if upright else len(word.text))
        left, right = int((word.right - letter) * scale) - 1, int(word.right * scale) + 2
        box = picture[int(word.top * scale) : int(word.bottom * scale) + 1, left:right]
        if not box.size or np.ptp(box) < _LEAST_INK:
            hidden.append(word.text)
    return hidden


def pixels(pdf: Path, page: int, dpi: int = DPI) -> np.ndarray:
    """Return a page as a picture, (rows, columns, 3) from 0 to 255."""
    options = ["-r", str(dpi), "-f", str(page), "-l", str(page), "-singlefile"]
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
