"""What is drawn on worksheets: notes with their boxes, charts with their axes and cells."""

from collections.abc import Iterator
from xml.etree import ElementTree as ET

from tests.programs.package import MAIN, Package
from tests.programs.places import box, on_sheets
from tests.programs.rules_package import repeated


def notes(package: Package) -> Iterator[str]:
    """Say which notes on cells have no author or no box of their own to show them in."""
    for sheet, part in package.sheets.items():
        listed = [package.tree(name) for name in package.linked(part, "comments")]
        boxes = [package.tree(name) for name in package.linked(part, "vmlDrawing")]
        refs = [note.attrib["ref"] for tree in listed for note in tree.iter(f"{MAIN}comment")]
        yield from (f"{sheet}: two notes on {ref}" for ref in repeated(refs))
        for tree in listed:
            authors = len(tree.findall(f"{MAIN}authors/{MAIN}author"))
            for note in tree.iter(f"{MAIN}comment"):
                if int(note.attrib["authorId"]) >= authors:
                    yield f"{sheet}!{note.attrib['ref']}: a note of nobody"
        noted = sorted((place.top - 1, place.left - 1) for ref in refs if (place := box(ref)))
        boxed = sorted(spot for tree in boxes for spot in _boxed(tree))
        if noted != boxed or len(noted) < len(refs):
            yield f"{sheet}: notes on {noted}, boxes for {boxed}"
        yield from (f"{sheet}: no legacy drawing" for _ in boxes if _lacks(package, part, "legacyDrawing"))


def _boxed(tree: ET.Element) -> Iterator[tuple[int, int]]:
    for data in tree.iterfind(".//{*}ClientData"):
        row, column = (data.findtext(f"{{*}}{tag}") for tag in ("Row", "Column"))
        yield int(row or -1), int(column or -1)


def _lacks(package: Package, part: str, tag: str) -> bool:
    return package.tree(part).find(f"{MAIN}{tag}") is None


def drawings(package: Package) -> Iterator[str]:
    """Say which drawn things have an id twice, or end before they begin."""
    for part in (name for name in package.names if name.startswith("xl/drawings/drawing")):
        tree = package.tree(part)
        ids = [each.attrib["id"] for each in tree.iterfind(".//{*}cNvPr")]
        yield from (f"{part}: the id {key} twice" for key in repeated(ids))
        for anchor in tree.iterfind("{*}twoCellAnchor"):
            (top, left), (bottom, right) = (
                tuple(int(anchor.findtext(f"{{*}}{end}/{{*}}{way}") or -1) for way in ("row", "col"))
                for end in ("from", "to")
            )
            if not (0 <= top <= bottom and 0 <= left <= right):
                yield f"{part}: from {top}, {left} to {bottom}, {right}"


def charts(package: Package) -> Iterator[str]:
    """Say which charts use an axis or cells that are not there, or store more points than they count."""
    for part in (name for name in package.names if name.startswith("xl/charts/")):
        tree = package.tree(part)
        axes = {
            axis.find("{*}axId").get("val"): axis.find("{*}crossAx").get("val")  # type: ignore[union-attr]
            for kind in ("catAx", "valAx", "dateAx")
            for axis in tree.iterfind(f".//{{*}}{kind}")
        }
        used = {each.get("val") for plot in tree.iterfind(".//{*}plotArea/*") for each in _own_axes(plot)}
        if used != set(axes) or set(axes.values()) != set(axes):
            yield f"{part}: axes {axes}, used {used}"
        for formula in tree.iterfind(".//{*}f"):
            areas = on_sheets(formula.text or "")
            if areas is None or any(sheet not in package.sheets for sheet, _ in areas):
                yield f"{part}: cells that are not there: {formula.text}"
        for cache in (*tree.iterfind(".//{*}numCache"), *tree.iterfind(".//{*}strCache")):
            points = [int(point.attrib["idx"]) for point in cache.iterfind("{*}pt")]
            count = int(cache.find("{*}ptCount").get("val"))  # type: ignore[union-attr, arg-type]
            if points != sorted(set(points)) or max(points, default=-1) >= count:
                yield f"{part}: {len(points)} points of {count}"


def _own_axes(plot: ET.Element) -> list[ET.Element]:
    return plot.findall("{*}axId") if plot.tag.endswith("Chart") else []


RULES = (notes, drawings, charts)
