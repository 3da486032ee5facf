"""Open data as a Darwin Core archive: three tables, their columns (meta.xml), a description (eml.xml).

After the standard's text guide: no sign encloses a value, so that tabs and line ends in text become spaces.
"""

import xml.etree.ElementTree as ET
from collections.abc import Mapping, Sequence
from functools import partial
from pathlib import Path
from typing import Final

import pandas as pd

from reporter.compute.open_data.archive import OpenData
from reporter.files.atomic import replace_file
from reporter.files.csv_log import is_csv_log
from reporter.files.errors import CannotWrite
from reporter.files.folders import make_folder
from reporter.files.guard import guard_input
from reporter.files.typed_over import find_mark, with_mark
from reporter.schema.darwin_core_tables import (
    CORE,
    EVENT_FILE,
    EXTENSIONS,
    MEASUREMENT_FILE,
    OCCURRENCE_FILE,
    TERMS,
    ArchiveFile,
)
from reporter.write.eml import eml_text
from reporter.write.tables import field_texts

META: Final = "meta.xml"
EML: Final = "eml.xml"

_NAMESPACE: Final = "http://rs.tdwg.org/dwc/text/"
_FORMAT: Final[Mapping[str, str]] = {
    "encoding": "UTF-8",
    "fieldsTerminatedBy": "\\t",
    "linesTerminatedBy": "\\n",
    "fieldsEnclosedBy": "",
    "ignoreHeaderLines": "1",
}


def guard_archive(folder: Path, inputs: Sequence[Path]) -> None:
    """Raise CannotWrite where it would write over a file that is read, is not ours, or was filled in."""
    said = f"I cannot write the Darwin Core archive into {folder}"
    if folder.exists() and not folder.is_dir():
        raise CannotWrite(f"{said}: it is a file, not a folder; choose another name.")
    if is_csv_log(folder):
        raise CannotWrite(f"{said}: it is a log of .csv files; choose another.")
    names = [EML, META, *(file.name for file in (CORE, *EXTENSIONS))]
    there = [name for name in names if (folder / name).exists()]
    for name in there:
        guard_input(folder / name, inputs)
    found = find_mark(folder / EML) if there else "ours"
    if found == "foreign":
        why = f"{there[0]} is there and was not written by reporter; choose another folder"
        raise CannotWrite(f"{said}: {why}.")
    if found == "typed over":
        why = f"its {EML} was changed by hand; choose another folder, then carry your changes over"
        raise CannotWrite(f"{said}: {why}.")


def write_archive(data: OpenData, folder: Path) -> None:
    """Write the archive; every file whole or not at all. Raises CannotWrite.

    The description goes first: by it the folder is known as ours, should the rest never be written.
    """
    make_folder(folder)
    tables = {EVENT_FILE: data.events, OCCURRENCE_FILE: data.occurrences, MEASUREMENT_FILE: data.measurements}
    texts = {
        EML: with_mark(eml_text(data)),
        META: _meta_text(),
        **{file.name: _table_text(table, file) for file, table in tables.items()},
    }
    for name, text in texts.items():
        replace_file(folder / name, partial(_write, text=text))


def _write(path: Path, text: str) -> None:
    path.write_text(text, encoding="utf-8", newline="\n")


def _table_text(table: pd.DataFrame, file: ArchiveFile) -> str:
    fields = file.table.fields
    columns = [[" ".join(text.split()) for text in field_texts(table[field.name], field)] for field in fields]
    lines = [[field.name for field in fields], *zip(*columns, strict=True)]
    return "".join("\t".join(line) + "\n" for line in lines)


def _meta_text() -> str:
    root = ET.Element("archive", xmlns=_NAMESPACE, metadata=EML)
    for file in (CORE, *EXTENSIONS):
        _describe(root, file)
    ET.indent(root)
    return f'<?xml version="1.0" encoding="UTF-8"?>\n{ET.tostring(root, encoding="unicode")}\n'


def _describe(root: ET.Element, file: ArchiveFile) -> None:
    is_core = file is CORE
    element = ET.SubElement(root, "core" if is_core else "extension", {**_FORMAT, "rowType": file.row_type})
    ET.SubElement(ET.SubElement(element, "files"), "location").text = file.name
    ET.SubElement(element, "id" if is_core else "coreid", index="0")
    for index, field in enumerate(file.table.fields):
        ET.SubElement(element, "field", index=str(index), term=f"{TERMS}{field.name}")
