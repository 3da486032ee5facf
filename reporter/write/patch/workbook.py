"""A copy of a workbook in which some cells, and only those, differ."""

import datetime as dt
import zipfile
from collections.abc import Mapping
from pathlib import Path
from typing import Final, NamedTuple
from xml.parsers import expat

from reporter.read.errors import Refused
from reporter.read.look import look_at
from reporter.read.package import SheetPart, linked_part, sheets_in
from reporter.read.raw import Address, CellValue
from reporter.schema.a1 import address
from reporter.write.patch.book import counts_from_1904, holds_formulas, recalculated, without_chain
from reporter.write.patch.content import as_iso, content_of, first_day_of
from reporter.write.patch.errors import CannotPatch, CellsRefused
from reporter.write.patch.locate import SheetAt, inside, locate
from reporter.write.patch.pack import differing_parts, repack
from reporter.write.patch.splice import NewCell, spliced
from reporter.write.patch.styles import Styles

Corrections = Mapping[str, Mapping[Address, CellValue]]
"""Name of the worksheet, as the workbook has it -> (row, column) -> value; None makes a cell blank."""

_LEADS: Final = "its formula also works out other cells; mend it in the log itself"
_SPANS: Final = "it is part of a formula over several cells; mend it in the log itself"
_MERGED: Final = "it lies hidden inside merged cells; unmerge them in the log itself"


class _Plan(NamedTuple):
    """A worksheet to be changed: its part, its bytes, where its cells are, what they shall hold."""

    sheet: SheetPart
    data: bytes
    found: SheetAt
    cells: dict[Address, NewCell]

    @property
    def loses_formulas(self) -> bool:
        """Whether a value takes the place of a formula."""
        return any(cell is not None and cell.formula for cell in map(self.found.cell, self.cells))


def patch_workbook(source: Path, target: Path, corrections: Corrections) -> None:
    """Write a copy of an .xlsx or .xlsm file to `target` in which these cells hold these values.

    Only the bytes of these cells change, and what cannot stay with them: the order of calculation where a
    formula went, and a note to calculate anew where the workbook has formulas. CannotPatch or CellsRefused
    where that cannot be; what stands at `target` is then of no use.
    """
    try:
        with zipfile.ZipFile(source) as archive:
            look_at(archive)
            changed, dropped = _changed_parts(archive, corrections)
            repack(archive, target, changed, dropped)
            _check_parts(archive, target, {*changed, *dropped})
    except (CannotPatch, CellsRefused, OSError):
        raise
    except MemoryError as error:
        raise CannotPatch("it needs more memory than this computer has free") from error
    except Refused as refused:
        raise CannotPatch(str(refused)) from refused
    except Exception as error:  # a damaged file can fail at any depth of the libraries
        raise CannotPatch("it is damaged") from error


def has_formulas(path: Path) -> bool:
    """Whether a workbook that was patched holds formulas, which its program must work out anew."""
    with zipfile.ZipFile(path) as archive:
        return holds_formulas(archive)


def _changed_parts(
    archive: zipfile.ZipFile, corrections: Corrections
) -> tuple[dict[str, bytes], frozenset[str]]:
    """Return the parts that differ in the copy, and the names of those that it does not have."""
    part = linked_part(archive, "styles")
    styles = Styles(archive.read(part)) if part in archive.namelist() else None
    plans = _plans(archive, corrections, styles)
    changed = {plan.sheet.part: spliced(plan.data, plan.found, plan.cells) for plan in plans}
    if styles is not None:
        changed[part] = styles.patched()
    dropped: frozenset[str] = frozenset()
    if holds_formulas(archive):
        book, data = recalculated(archive)
        changed[book] = data
    if any(plan.loses_formulas for plan in plans):
        chain, without_it = without_chain(archive)
        changed |= without_it
        dropped = frozenset({chain} - {""})
    return {name: data for name, data in changed.items() if data != archive.read(name)}, dropped


def _plans(archive: zipfile.ZipFile, corrections: Corrections, styles: Styles | None) -> list[_Plan]:
    sheets = {sheet.name: sheet for sheet in sheets_in(archive) if sheet.kind == "worksheet"}
    day_0 = first_day_of(counts_from_1904(archive))
    plans: list[_Plan] = []
    reasons: dict[tuple[str, str], str] = {}
    for name, values in corrections.items():
        if name not in sheets:
            raise CannotPatch(f"it has no sheet “{name}”")
        data = archive.read(sheets[name].part)
        found = locate(data, values)
        reasons |= {(name, address(*at)): why for at in values if (why := _why_not(found, at))}
        cells = {at: _new_cell(value, found.style_of(at), styles, day_0) for at, value in values.items()}
        plans.append(_Plan(sheets[name], data, found, cells))
    if reasons:
        raise CellsRefused(reasons)
    return plans


def _why_not(found: SheetAt, at: Address) -> str:
    """Return why a cell cannot be changed without changing others, or nothing."""
    cell = found.cell(at)
    if cell is not None and cell.formula == "leads":
        return _LEADS
    if inside(found.spanned, at):
        return _SPANS
    merge = inside(found.merged, at)
    return _MERGED if merge and merge[:2] != at else ""


def _new_cell(value: CellValue, style: int, styles: Styles | None, day_0: dt.datetime) -> NewCell:
    """Return what a cell shall hold; without number formats a day or a time can only be text."""
    if styles is None or not styles.known:
        return NewCell(content_of(as_iso(value), day_0), style)
    content = content_of(value, day_0)
    return NewCell(content, styles.fitting(style, content.form))


def _check_parts(archive: zipfile.ZipFile, target: Path, expected: set[str]) -> None:
    """Refuse a copy in which another part differs, or in which a changed part is not well formed."""
    with zipfile.ZipFile(target) as copy:
        if not differing_parts(archive, copy) <= expected:
            raise CannotPatch("a copy of it would differ in more than these cells")
        for name in expected & set(copy.namelist()):
            expat.ParserCreate(namespace_separator=" ").Parse(copy.read(name), True)
