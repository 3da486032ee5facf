"""What stands around the cells of a worksheet: merged cells, drop-downs, links, headers, page breaks."""

import re
from collections.abc import Iterator

from tests.programs.package import MAIN, RELATED, Package
from tests.programs.places import Box, box, on_sheets, overlaps
from tests.programs.rules_book import STYLES
from tests.programs.rules_package import repeated

_MOST_LINKS, _LONGEST_LINK, _LONGEST_HEADER, _LONGEST_LIST, _MOST_BREAKS = 65_530, 2_079, 255, 255, 1_026
_LONGEST = {"promptTitle": 32, "errorTitle": 32, "prompt": 255, "error": 255}
_COUNTED = ("mergeCells", "dataValidations", "rowBreaks", "colBreaks")


def merged(package: Package) -> Iterator[str]:
    """Say which merged cells overlap, or are a single one."""
    for sheet, part in package.sheets.items():
        areas = [each.attrib["ref"] for each in package.tree(part).iter(f"{MAIN}mergeCell")]
        boxes = [found for area in areas if (found := box(area)) is not None]
        if len(boxes) < len(areas) or any(one[:2] == one[2:] for one in boxes):
            yield f"{sheet}: merges what are no cells: {areas}"
        yield from (f"{sheet}: merged cells overlap: {two}" for two in overlaps(boxes))


def drop_downs(package: Package) -> Iterator[str]:
    """Say which drop-downs and messages beside cells are too long, overlap or offer what is not there."""
    for sheet, part in package.sheets.items():
        rules = list(package.tree(part).iter(f"{MAIN}dataValidation"))
        boxes: list[Box] = []
        for rule in rules:
            areas = [box(area) for area in rule.attrib["sqref"].split()]
            boxes += [area for area in areas if area is not None]
            if None in areas:
                yield f"{sheet}: a drop-down on no cells: {rule.attrib['sqref']}"
            for key, longest in _LONGEST.items():
                if len(rule.get(key, "").encode("utf-16-le")) // 2 > longest:
                    yield f"{sheet}: {key} is too long: {rule.attrib[key]}"
            if rule.get("type") == "list":
                source = rule.findtext(f"{MAIN}formula1") or ""
                yield from (f"{sheet}: {said}" for said in _offered(source, package))
        yield from (f"{sheet}: drop-downs overlap: {two}" for two in overlaps(boxes))


def _offered(source: str, package: Package) -> Iterator[str]:
    if source.startswith('"'):
        if len(source.encode("utf-16-le")) // 2 - 2 > _LONGEST_LIST:
            yield f"a list too long for a drop-down: {source[:40]}"
        return
    areas = on_sheets(source)
    if areas is None or any(sheet not in package.sheets for sheet, _ in areas):
        yield f"a drop-down of what is not there: {source}"


def links(package: Package) -> Iterator[str]:
    """Say which links lead to no sheet or cell of the book, or are too many or too long."""
    for sheet, part in package.sheets.items():
        found = [each.attrib for each in package.tree(part).iter(f"{MAIN}hyperlink")]
        if len(found) > _MOST_LINKS:
            yield f"{sheet}: {len(found)} links"
        yield from (f"{sheet}: two links on {ref}" for ref in repeated(each["ref"] for each in found))
        outer = {key: target for key, _, target in package.links(part)}
        for each in found:
            location, file = each.get("location", ""), outer.get(each.get(f"{RELATED}id", ""), "")
            areas = on_sheets(location)
            if (location or not file) and areas is None:
                yield f"{sheet}!{each['ref']}: leads to {location!r}, which is no cell"
            elif not file and any(name not in package.sheets for name, _ in areas or ()):
                yield f"{sheet}!{each['ref']}: leads to {location!r}, which is no sheet here"
            if max(len(location), len(file)) > _LONGEST_LINK or re.search(r"[\s\"<>]", file):
                yield f"{sheet}!{each['ref']}: no address: {file}"


def headers(package: Package) -> Iterator[str]:
    """Say which headers and footers are longer than a program takes."""
    for sheet, part in package.sheets.items():
        for each in package.tree(part).iterfind(f"{MAIN}headerFooter/*"):
            if len(each.text or "") > _LONGEST_HEADER:
                yield f"{sheet}: a header of {len(each.text or '')} characters"


def page_breaks(package: Package) -> Iterator[str]:
    """Say where page breaks are too many, out of order or on a row twice."""
    for sheet, part in package.sheets.items():
        rows = [int(each.attrib["id"]) for each in package.tree(part).iterfind(f"{MAIN}rowBreaks/{MAIN}brk")]
        if rows != sorted(set(rows)) or len(rows) > _MOST_BREAKS:
            yield f"{sheet}: page breaks below the rows {rows}"


def counts(package: Package) -> Iterator[str]:
    """Say where a list has not as many entries as it says, or a highlight a format that is not there."""
    highlights = len(package.tree(STYLES).find(f"{MAIN}dxfs") or ())
    for sheet, part in package.sheets.items():
        tree = package.tree(part)
        for tag in _COUNTED:
            listed = tree.find(f"{MAIN}{tag}")
            if listed is not None and int(listed.attrib["count"]) != len(listed):
                yield f"{sheet}: {tag} says {listed.attrib['count']} and has {len(listed)}"
        rules = list(tree.iter(f"{MAIN}cfRule"))
        yield from (
            f"{sheet}: no format {r.get('dxfId')}" for r in rules if int(r.get("dxfId", 0)) >= highlights
        )


RULES = (merged, drop_downs, links, headers, page_breaks, counts)
