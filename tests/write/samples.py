"""Small books for the tests of the writer, and a look into the files that come of them."""

import datetime as dt
import zipfile
from pathlib import Path
from xml.parsers import expat

from reporter.books.blocks import Block, Book, Field, Sheet, Table
from reporter.write.workbook import write_book

DAY = dt.date(2026, 11, 30)


def book_of(*blocks: Block, bare: bool = False, name: str = "Page", title: str = "A season") -> Book:
    return Book(title, "report", (Sheet(name, blocks, "me", bare=bare),), "a4", DAY)


def book_with(*sheets: Sheet) -> Book:
    return Book("A season", "report", sheets, "letter", DAY)


def table(key: str, **columns: list) -> Table:
    return Table(key, tuple(Field(name, name.title()) for name in columns), columns)


def written(book: Book, folder: Path, name: str = "book.xlsx") -> Path:
    path = folder / name
    write_book(book, path)
    return path


def parts(path: Path) -> dict[str, str]:
    with zipfile.ZipFile(path) as archive:
        return {name: archive.read(name).decode("utf-8") for name in archive.namelist()}


def assert_well_formed(path: Path) -> None:
    for text in parts(path).values():
        expat.ParserCreate().Parse(text.encode("utf-8"), True)
