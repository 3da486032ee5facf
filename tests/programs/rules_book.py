"""What the workbook part and its styles must hold to: names of sheets, defined names, formats."""

import re
from collections.abc import Iterator

from tests.programs.package import MAIN, Package
from tests.programs.places import box, on_sheets
from tests.programs.rules_package import repeated

BOOK, STYLES = "xl/workbook.xml", "xl/styles.xml"
_NAME = re.compile(r"[A-Za-z_\\][A-Za-z0-9_.\\]{0,254}")
_LIKE_A_CELL = re.compile(r"[A-Za-z]{1,3}[0-9]{1,7}|[Rr][0-9]*[Cc][0-9]*|[Rr][0-9]*|[Cc][0-9]*")
_BUILT_IN = {"_xlnm._FilterDatabase", "_xlnm.Print_Area", "_xlnm.Print_Titles"}
_FIRST_OWN_FORMAT = 164
_LONGEST_SHEET, _LONGEST_FORMAT, _MOST_FORMATS = 31, 255, 65_490
_LISTS = {"fontId": "fonts", "fillId": "fills", "borderId": "borders"}


def sheets(package: Package) -> Iterator[str]:
    """Say which sheets have a name that a program would change."""
    listed = [sheet.attrib for sheet in package.tree(BOOK).iter(f"{MAIN}sheet")]
    yield from (f"two sheets {name}" for name in repeated(one["name"].casefold() for one in listed))
    yield from (f"two sheets of the id {key}" for key in repeated(one["sheetId"] for one in listed))
    for name in (one["name"] for one in listed):
        units = len(name.encode("utf-16-le")) // 2
        if not 0 < units <= _LONGEST_SHEET or re.search(r"[\[\]:*?/\\]|^'|'$", name):
            yield f"no name for a sheet: {name}"
        if name.casefold() == "history":
            yield f"a name that programs keep for themselves: {name}"


def defined_names(package: Package) -> Iterator[str]:
    """Say which defined names are not valid, are there twice, or stand for no cells of this book."""
    names = list(package.tree(BOOK).iter(f"{MAIN}definedName"))
    keys = [(name.attrib["name"].casefold(), name.get("localSheetId")) for name in names]
    yield from (f"two names {key}" for key in repeated(keys))
    for name in names:
        title = name.attrib["name"]
        if title not in _BUILT_IN and (not _NAME.fullmatch(title) or _LIKE_A_CELL.fullmatch(title)):
            yield f"no name for cells: {title}"
        if int(name.get("localSheetId", 0)) >= len(package.sheets):
            yield f"{title}: of a sheet that is not there"
        areas = on_sheets(name.text or "")
        if areas is None:
            yield f"{title}: no cells: {name.text}"
        elif strange := {sheet for sheet, _ in areas} - set(package.sheets):
            yield f"{title}: on {sorted(strange)}, which is not there"


def filters(package: Package) -> Iterator[str]:
    """Say where a filter and the hidden name that goes with it do not agree."""
    order = list(package.sheets)
    named = {
        order[int(name.attrib["localSheetId"])]: on_sheets(name.text or "")
        for name in package.tree(BOOK).iter(f"{MAIN}definedName")
        if name.attrib["name"] == "_xlnm._FilterDatabase"
    }
    for sheet, part in package.sheets.items():
        found = package.tree(part).find(f"{MAIN}autoFilter")
        area = None if found is None else box(found.attrib["ref"])
        if (named.get(sheet) or None) != ([(sheet, area)] if area else None):
            yield f"{sheet}: a filter of {area}, named as {named.get(sheet)}"


def styles(package: Package) -> Iterator[str]:
    """Say which formats of styles and cells use a font, fill, border or number format that is not there."""
    tree = package.tree(STYLES)
    own = {int(one.attrib["numFmtId"]): one.attrib["formatCode"] for one in tree.iter(f"{MAIN}numFmt")}
    yield from (f"a number format too long: {code}" for code in own.values() if len(code) > _LONGEST_FORMAT)
    sizes = {key: len(tree.find(f"{MAIN}{tag}") or ()) for key, tag in _LISTS.items()}
    forms = [form for tag in ("cellStyleXfs", "cellXfs") for form in tree.iterfind(f"{MAIN}{tag}/{MAIN}xf")]
    if len(forms) > _MOST_FORMATS:
        yield f"{len(forms)} formats of cells"
    for number, form in enumerate(forms):
        number_format = int(form.attrib["numFmtId"])
        if number_format >= _FIRST_OWN_FORMAT and number_format not in own:
            yield f"format {number}: no number format {number_format}"
        for key, size in sizes.items():
            if int(form.attrib[key]) >= size:
                yield f"format {number}: no {key} {form.attrib[key]}"


RULES = (sheets, defined_names, filters, styles)
