"""Puts cells into the bytes of a worksheet; every byte of the rest stays as it was."""

from collections import defaultdict
from collections.abc import Mapping
from typing import NamedTuple

from reporter.read.raw import Address
from reporter.schema.a1 import address
from reporter.write.patch.content import Content
from reporter.write.patch.locate import CellAt, RowAt, SheetAt
from reporter.write.patch.tags import Edit, StartTag, edited

_VALUE_METADATA = {"cm": None, "vm": None}  # what only the old value had: a spilling formula, a picture


class NewCell(NamedTuple):
    """What a cell shall store, and the number of its style."""

    content: Content
    style: int


def spliced(data: bytes, found: SheetAt, cells: Mapping[Address, NewCell]) -> bytes:
    """Return a worksheet part with these cells in it, those that were not there in their order."""
    by_row: dict[int, dict[int, NewCell]] = defaultdict(dict)
    for (row, column), cell in sorted(cells.items()):
        by_row[row][column] = cell
    new_rows: dict[int, bytes] = {}
    edits: list[Edit] = []
    for number, wanted in by_row.items():
        there = found.rows.get(number)
        if there is None:
            new_rows[number] = _new_row(_prefix(found), number, wanted)
        else:
            edits += _in_row(data, found, there, number, wanted)
    return edited(data, [*edits, *_new_rows(found, new_rows)])


def _prefix(found: SheetAt) -> bytes:
    return found.data.prefix if found.data else b""


def _new_rows(found: SheetAt, rows: Mapping[int, bytes]) -> list[Edit]:
    if found.data and found.data.empty:
        return [_filled(found.data, b"".join(rows.values()), {})] if any(rows.values()) else []
    return [Edit(found.before[number], found.before[number], row) for number, row in rows.items() if row]


def _filled(tag: StartTag, inside: bytes, change: Mapping[str, None]) -> Edit:
    """Open an empty element and put something in it."""
    new = tag.made(change, empty=False) + inside + b"</" + tag.name + b">"
    return Edit(tag.start, tag.end, new)


def _new_row(prefix: bytes, number: int, wanted: Mapping[int, NewCell]) -> bytes:
    inside = b"".join(_new_cell(prefix, (number, column), cell) for column, cell in wanted.items())
    return _element(prefix, b"row", {"r": str(number)}, inside) if inside else b""


def _in_row(
    data: bytes, found: SheetAt, row: RowAt, number: int, wanted: Mapping[int, NewCell]
) -> list[Edit]:
    edits: list[Edit] = []
    more: list[tuple[int, bytes]] = []
    for column, cell in wanted.items():
        old = row.cells.get(column)
        if old is not None:
            restyled = cell.style != found.style_of((number, column))
            edits.append(_replaced(data, old, (number, column), cell, restyled=restyled))
        elif new := _new_cell(row.tag.prefix, (number, column), cell):
            more.append((row.before.get(column, row.end_of_cells), new))
    if not more:
        return edits
    # Which columns a row spans is a hint that no program needs and that would be wrong now.
    if row.tag.empty:
        return [_filled(row.tag, b"".join(new for _, new in more), {"spans": None})]
    if row.tag.has("spans"):
        edits.append(Edit(row.tag.start, row.tag.end, row.tag.made({"spans": None})))
    return edits + [Edit(place, place, new) for place, new in more]


def _replaced(data: bytes, old: CellAt, at: Address, cell: NewCell, *, restyled: bool) -> Edit:
    kept = b"".join(data[start:end] for start, end in old.kept)
    inside = _prefixed(old.tag.prefix, cell.content.inside) + kept
    change = {"t": cell.content.type, **_VALUE_METADATA}
    if not old.tag.has("r"):
        change["r"] = address(*at)
    if restyled:
        change["s"] = str(cell.style)
    tag = old.tag.made(change, empty=not inside)
    return Edit(old.tag.start, old.end, tag + inside + (b"</" + old.tag.name + b">" if inside else b""))


def _new_cell(prefix: bytes, at: Address, cell: NewCell) -> bytes:
    """Return a cell that was not there; nothing where it is to be blank."""
    if not cell.content.inside:
        return b""
    attributes = {"r": address(*at)}
    if cell.style:
        attributes["s"] = str(cell.style)
    if cell.content.type:
        attributes["t"] = cell.content.type
    return _element(prefix, b"c", attributes, _prefixed(prefix, cell.content.inside))


def _element(prefix: bytes, name: bytes, attributes: Mapping[str, str], inside: bytes) -> bytes:
    shown = "".join(f' {key}="{value}"' for key, value in attributes.items()).encode("ascii")
    return b"<" + prefix + name + shown + b">" + inside + b"</" + prefix + name + b">"


def _prefixed(prefix: bytes, inside: bytes) -> bytes:
    """Give the tags of a content (which hold no other < than their own) the sheet's prefix."""
    if not prefix:
        return inside
    return inside.replace(b"<", b"<" + prefix).replace(b"<" + prefix + b"/", b"</" + prefix)
