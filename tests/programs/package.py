"""A written workbook as the parts that it is packed of: XML, relationships, kinds of content."""

import posixpath
import zipfile
from collections.abc import Iterator
from functools import cached_property
from pathlib import Path
from xml.etree import ElementTree as ET

MAIN = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
RELATED = "{http://schemas.openxmlformats.org/officeDocument/2006/relationships}"
TYPES = "[Content_Types].xml"


class Package:
    """The parts of a workbook by name, read once."""

    def __init__(self, path: Path) -> None:
        with zipfile.ZipFile(path) as archive:
            self.names = archive.namelist()
            self.parts = {name: archive.read(name) for name in self.names}
        self._trees: dict[str, ET.Element] = {}

    def tree(self, name: str) -> ET.Element:
        """Parse a part; a KeyError where there is none."""
        if name not in self._trees:
            self._trees[name] = ET.fromstring(self.parts[name])  # noqa: S314 - we wrote it
        return self._trees[name]

    def links(self, part: str) -> list[tuple[str, str, str]]:
        """Give the relationships of a part ("" is the package): id, kind, part or outer address."""
        folder, name = posixpath.split(part)
        rels = posixpath.join(folder, "_rels", f"{name}.rels")
        if rels not in self.parts:
            return []
        found = []
        for link in self.tree(rels):
            target = link.attrib["Target"]
            if link.get("TargetMode") != "External":
                target = posixpath.normpath(posixpath.join("/", folder, target)).lstrip("/")
            found.append((link.attrib["Id"], link.attrib["Type"].rsplit("/", 1)[1], target))
        return found

    def linked(self, part: str, kind: str) -> list[str]:
        """Give the parts of a kind to which a part is related."""
        return [target for _, found, target in self.links(part) if found == kind]

    @cached_property
    def sheets(self) -> dict[str, str]:
        """Name of every worksheet -> its part, in order."""
        targets = {key: target for key, _, target in self.links("xl/workbook.xml")}
        sheets = self.tree("xl/workbook.xml").iter(f"{MAIN}sheet")
        return {sheet.attrib["name"]: targets[sheet.attrib[f"{RELATED}id"]] for sheet in sheets}

    @cached_property
    def strings(self) -> list[str]:
        """The shared strings, in order."""
        if "xl/sharedStrings.xml" not in self.parts:
            return []
        return ["".join(item.itertext()) for item in self.tree("xl/sharedStrings.xml")]

    @cached_property
    def cell_formulas(self) -> dict[tuple[str, str], str]:
        """Sheet and address of every cell with a formula -> the formula as it is written."""
        return {
            (sheet, cell.attrib["r"]): formula.text or ""
            for sheet, part in self.sheets.items()
            for cell in self.tree(part).iter(f"{MAIN}c")
            for formula in cell.iterfind(f"{MAIN}f")
        }

    def formulas(self) -> Iterator[tuple[str, str]]:
        """Give every formula as it is written: of cells, names, drop-downs and charts, with where it is."""
        for name in self.tree("xl/workbook.xml").iter(f"{MAIN}definedName"):
            yield f"the name {name.attrib['name']}", name.text or ""
        for (sheet, address), formula in self.cell_formulas.items():
            yield f"{sheet}!{address}", formula
        for sheet, part in self.sheets.items():
            for tag in ("formula1", "formula2", "formula"):
                for found in self.tree(part).iter(f"{MAIN}{tag}"):
                    yield f"{tag} on {sheet}", found.text or ""
        for part in (name for name in self.names if name.startswith("xl/charts/")):
            for found in self.tree(part).iterfind(".//{*}f"):
                yield part, found.text or ""
