"""What a spreadsheet refuses: a ValueError before anything is drawn. Books are to keep within it."""

import re
from collections.abc import Collection, Iterable
from typing import Final

from reporter.books.blocks import Block, Book, Figures, Sheet, Table, Text
from reporter.files.mark import KINDS
from reporter.write.clean import clean, one_line, units

LONGEST_SHEET_NAME: Final = 31
LONGEST_HELP: Final = 255
LONGEST_HELP_TITLE: Final = 32
LONGEST_LIST: Final = 255
LONGEST_FORMULA: Final = 8_192

_KEY = re.compile(r"[a-z][a-z0-9_]*")
_FORBIDDEN_IN_NAMES = re.compile(r"[\[\]:*?/\\]")
_RESERVED_SHEET = "history"
_RESERVED_KEY = "row"  # as in {row.column}


def check_names(book: Book) -> None:
    """Refuse an unknown kind of book, sheet names that a spreadsheet refuses, and keys used twice."""
    if book.mark not in KINDS:
        raise ValueError(f"no kind of workbook: {book.mark!r}")
    names = [one_line(sheet.name) for sheet in book.sheets]
    for name in names:
        _check_sheet_name(name)
    _once((name.casefold() for name in names), "sheet name")
    blocks = [block for sheet in book.sheets for block in sheet.blocks]
    keys = [block.key for block in blocks if isinstance(block, Table | Figures)]
    _once(keys, "key of a table or of figures")
    for key in keys:
        check_key(key)
        if key == _RESERVED_KEY:
            raise ValueError(f"{key!r} means the formula's own row and cannot be a key")
    for block in (block for block in blocks if isinstance(block, Figures)):
        _once((item.key for item in block.items), f"item of {block.key!r}")
        for item in block.items:
            check_key(item.key)


def check_links(book: Book) -> None:
    """Refuse what leads to a sheet that the book has not."""
    names = {sheet.name for sheet in book.sheets}
    for sheet in book.sheets:
        for block in sheet.blocks:
            for led_to in _led_to(block):
                if led_to and led_to not in names:
                    raise ValueError(
                        f"something on {sheet.name!r} leads to {led_to!r}, which is no sheet here"
                    )


def _led_to(block: Block) -> list[str]:
    """Return the sheets of its own book to which a block leads."""
    if isinstance(block, Text):
        return [line.sheet for line in block.lines]
    if isinstance(block, Figures):
        return [item.sheet for item in block.items]
    return [block.behind] if isinstance(block, Table) else []


def check_key(key: str) -> None:
    """Refuse a key that cannot be a part of a defined name."""
    if not _KEY.fullmatch(key):
        raise ValueError(f"a key is lower case letters, digits and underscores: {key!r}")


def check_table(table: Table, sheet: Sheet) -> None:
    """Refuse a table whose parts do not fit together, or that cannot stand where it is."""
    keys = [field.key for field in table.fields]
    if not keys:
        raise ValueError(f"the table {table.key!r} has no fields")
    _once(keys, f"column of {table.key!r}")
    for key in keys:
        check_key(key)
    for key in (*table.columns, *table.total):
        if key not in keys:
            raise ValueError(f"the table {table.key!r} has cells for {key!r}, which is none of its fields")
    lengths = {len(cells) for cells in table.columns.values()}
    if len(lengths) > 1 or (len(table.grey) and len(table.grey) != table.rows):
        raise ValueError(f"the columns of the table {table.key!r} differ in length: {sorted(lengths)}")
    _check_own_fields(table, keys)
    for field in (*table.fields, *(own for row in table.own_fields.values() for own in row.values())):
        if units(clean(field.help)) > LONGEST_HELP:
            raise ValueError(f"the help of {table.key}.{field.key} is longer than {LONGEST_HELP}")
    _check_place(table, sheet)


def _check_own_fields(table: Table, keys: Collection[str]) -> None:
    for row, own in table.own_fields.items():
        if not 0 <= row < table.rows or any(key not in keys for key in own):
            raise ValueError(f"the table {table.key!r} has no cells for its own fields of row {row}")


def _check_place(table: Table, sheet: Sheet) -> None:
    if sheet.bare and (table is not sheet.blocks[0] or table.title or table.total):
        raise ValueError(f"the sheet {sheet.name!r} is to type in: its table stands alone in row 1")
    filtered = [block for block in sheet.blocks if isinstance(block, Table) and block.filtered]
    if len(filtered) > 1:
        raise ValueError(f"the sheet {sheet.name!r} has more than one table that can be filtered")


def _check_sheet_name(name: str) -> None:
    wrong = (
        not name
        or units(name) > LONGEST_SHEET_NAME
        or _FORBIDDEN_IN_NAMES.search(name)
        or name[0] == "'"
        or name[-1] == "'"
        or name.casefold() == _RESERVED_SHEET
    )
    if wrong:
        raise ValueError(f"not a name for a sheet: {name!r}")


def _once(things: Iterable[str], what: str) -> None:
    seen: set[str] = set()
    for thing in things:
        if thing in seen:
            raise ValueError(f"twice the same {what}: {thing!r}")
        seen.add(thing)
