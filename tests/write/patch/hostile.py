"""Workbooks written by hand, part by part: what other programs write and what nobody should have to read."""

import zipfile
from collections.abc import Mapping
from pathlib import Path

MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
_RELATIONS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
_PACKAGE = "http://schemas.openxmlformats.org/package/2006"
_HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n'
SHEET_PART = "xl/worksheets/sheet1.xml"

STYLES = (
    f'{_HEAD}<styleSheet xmlns="{MAIN}"><numFmts count="1">'
    '<numFmt numFmtId="164" formatCode="yyyy\\-mm\\-dd"/></numFmts><fonts count="1"><font/></fonts>'
    '<fills count="1"><fill><patternFill patternType="none"/></fill></fills><borders count="1">'
    '<border/></borders><cellStyleXfs count="1"><xf numFmtId="0"/></cellStyleXfs><cellXfs count="5">'
    '<xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/>'
    '<xf numFmtId="164" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"/>'
    '<xf numFmtId="49" fontId="0" fillId="0" borderId="0" xfId="0"><alignment horizontal="right"/></xf>'
    '<xf numFmtId="20" fontId="0" fillId="0" borderId="0" xfId="0"/>'
    '<xf numFmtId="46" fontId="0" fillId="0" borderId="0" xfId="0"/></cellXfs>'
    '<cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles></styleSheet>'
)
"""Cell styles 0 general, 1 date, 2 text (on the right), 3 clock time, 4 duration."""

_STRINGS = (
    f'{_HEAD}<sst xmlns="{MAIN}" count="2" uniqueCount="2"><si><t>old</t></si><si><t>other</t></si></sst>'
)
_TYPES = (
    f'{_HEAD}<Types xmlns="{_PACKAGE}/content-types">'
    '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>'
    '<Default Extension="xml" ContentType="application/xml"/>'
    '<Override PartName="/xl/workbook.xml" ContentType='
    '"application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/>'
    '<Override PartName="/xl/worksheets/sheet1.xml" ContentType='
    '"application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/>'
    '<Override PartName="/xl/styles.xml" ContentType='
    '"application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml"/>'
    '<Override PartName="/xl/sharedStrings.xml" ContentType='
    '"application/vnd.openxmlformats-officedocument.spreadsheetml.sharedStrings+xml"/>{more}</Types>'
)
_CHAIN_TYPE = (
    '<Override PartName="/xl/calcChain.xml" ContentType='
    '"application/vnd.openxmlformats-officedocument.spreadsheetml.calcChain+xml"/>'
)


def sheet_of(data: str, *, before: str = "", after: str = "", prefix: str = "") -> str:
    """A worksheet with this sheetData; what goes before and after it."""
    colon = f"{prefix}:" if prefix else ""
    named = f"xmlns:{prefix}" if prefix else "xmlns"
    return (
        f'{_HEAD}<{colon}worksheet {named}="{MAIN}" xmlns:r="{_RELATIONS}">{before}{data}{after}'
        f"</{colon}worksheet>"
    )


def write_workbook(
    path: Path,
    sheet: str,
    *,
    styles: str | None = STYLES,
    book: str = '<sheets><sheet name="Log" sheetId="1" r:id="rId1"/></sheets>',
    chain: str = "",
    more: Mapping[str, bytes] | None = None,
) -> Path:
    """Write a workbook of one sheet, Log, with exactly this XML as the sheet."""
    links = ["worksheet", "styles", "sharedStrings", "calcChain"]
    targets = ["worksheets/sheet1.xml", "styles.xml", "sharedStrings.xml", "calcChain.xml"]
    kept = [
        (number, kind, target)
        for number, (kind, target) in enumerate(zip(links, targets, strict=True), start=1)
        if (kind != "styles" or styles is not None) and (kind != "calcChain" or chain)
    ]
    relations = "".join(
        f'<Relationship Id="rId{number}" Type="{_RELATIONS}/{kind}" Target="{target}"/>'
        for number, kind, target in kept
    )
    parts: dict[str, str | bytes] = {
        "[Content_Types].xml": _TYPES.format(more=_CHAIN_TYPE if chain else ""),
        "_rels/.rels": f'{_HEAD}<Relationships xmlns="{_PACKAGE}/relationships"><Relationship Id="rId1" '
        f'Type="{_RELATIONS}/officeDocument" Target="xl/workbook.xml"/></Relationships>',
        "xl/workbook.xml": f'{_HEAD}<workbook xmlns="{MAIN}" xmlns:r="{_RELATIONS}">{book}</workbook>',
        "xl/_rels/workbook.xml.rels": f'{_HEAD}<Relationships xmlns="{_PACKAGE}/relationships">{relations}'
        "</Relationships>",
        SHEET_PART: sheet,
        "xl/sharedStrings.xml": _STRINGS,
    }
    if styles is not None:
        parts["xl/styles.xml"] = styles
    if chain:
        parts["xl/calcChain.xml"] = f'{_HEAD}<calcChain xmlns="{MAIN}">{chain}</calcChain>'
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, content in {**parts, **(more or {})}.items():
            archive.writestr(name, content)
    return path


def part(path: Path, name: str = SHEET_PART) -> str:
    """A part of a workbook as text."""
    with zipfile.ZipFile(path) as archive:
        return archive.read(name).decode()


def parts(path: Path) -> dict[str, bytes]:
    """Every part of a workbook, in order."""
    with zipfile.ZipFile(path) as archive:
        return {name: archive.read(name) for name in archive.namelist()}
