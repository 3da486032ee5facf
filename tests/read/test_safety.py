"""What a workbook asks for beside its values is never done: nothing is fetched, opened, run or believed."""

import os
import struct
import subprocess
import sys
import zipfile
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

import pytest

from reporter.read.door import open_log
from reporter.read.errors import Unreadable
from reporter.run.season import read_season
from tests.conftest import WriteLog
from tests.read.conftest import worked
from tests.read.open_document import cell, ods, row, table

LINKED = "linked season.xlsx"
EXTERNAL = (
    '<?xml version="1.0"?><externalLink xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">'
    '<externalBook xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships" '
    'r:id="rId1"/>'
    "</externalLink>"
)
RELATIONS = (
    '<?xml version="1.0"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">'
    '<Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/'
    'externalLinkPath" Target="{target}" TargetMode="External"/></Relationships>'
)
CONNECTION = (
    '<?xml version="1.0"?><connections xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">'
    '<connection id="1" name="c" type="4" refreshOnLoad="1"><webPr url="http://localhost:9/x"/></connection>'
    "</connections>"
)
WATCHED = """
import sys
from pathlib import Path
seen = []
def watch(event, arguments):
    if event.startswith(("socket.", "subprocess.", "os.system", "os.exec", "ctypes.dlopen", "urllib.")):
        seen.append(event)
    elif event == "open" and str(arguments[0]).endswith((%r, "vbaProject.bin")):
        seen.append(f"open {arguments[0]}")
from reporter.run.build import build
from reporter.run.jobs import plan
import pandas, scipy.special, openpyxl, xlsxwriter
sys.addaudithook(watch)
log = Path(sys.argv[1])
(job,) = plan([log], log.parent / "out", None)
made = build(job, [log])
print(seen, made.reading.problems, made.reading.season.pairs["landed"].sum())
"""


@pytest.fixture
def tempting(write_log: WriteLog, patched: Callable[..., Path], tmp_path: Path) -> Path:
    """The clean log with macros, links to other files and to the web, and a value that comes from there."""
    (tmp_path / LINKED).write_bytes(b"a secret")
    kind = b"application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"
    macro = b"application/vnd.ms-excel.sheet.macroEnabled.main+xml"
    overrides = (
        b'<Default Extension="bin" ContentType="application/vnd.ms-office.vbaProject"/><Override '
        b'PartName="/xl/externalLinks/externalLink1.xml" ContentType="application/vnd.openxmlformats-'
        b'officedocument.spreadsheetml.externalLink+xml"/></Types>'
    )
    office = b"http://schemas.openxmlformats.org/officeDocument/2006/relationships"
    link = (
        b'<Relationship Id="rIdX" Type="%b/externalLink" Target="externalLinks/externalLink1.xml"/>' % office
    )
    formulas = b"<f>[1]Trips!$A$1+WEBSERVICE(&quot;http://localhost:9/&quot;)</f><v>3</v>"
    return patched(
        write_log(),
        {
            "[Content_Types].xml": lambda xml: xml.replace(kind, macro).replace(b"</Types>", overrides),
            "xl/_rels/workbook.xml.rels": lambda xml: xml.replace(
                b"</Relationships>", link + b"</Relationships>"
            ),
            "xl/workbook.xml": lambda xml: xml.replace(
                b"</sheets>",
                b'</sheets><externalReferences><externalReference xmlns:r="%b" r:id="rIdX"/>'
                b"</externalReferences>" % office,
            ),
            "xl/externalLinks/externalLink1.xml": EXTERNAL.encode(),
            "xl/externalLinks/_rels/externalLink1.xml.rels": RELATIONS.format(target=LINKED).encode(),
            "xl/connections.xml": CONNECTION.encode(),
            "xl/vbaProject.bin": b"\xd0\xcf\x11\xe0 macros",
            "xl/worksheets/sheet3.xml": lambda xml: xml.replace(b"<v>3</v>", formulas, 1),
        },
        "log.xlsm",
    )


def test_workbook_with_macros_and_links_is_read_by_its_stored_values_and_nothing_else_is_touched(
    tempting: Path,
) -> None:
    with zipfile.ZipFile(tempting) as archive:
        assert b"WEBSERVICE" in archive.read("xl/worksheets/sheet3.xml")
    run = subprocess.run(
        [sys.executable, "-c", WATCHED % LINKED, tempting], capture_output=True, text=True, check=True
    )
    assert run.stdout.strip() == "[] [] 6.0"
    with zipfile.ZipFile(tempting.parent / "out" / "log report.xlsx") as report:
        names = report.namelist()
        assert not [
            name for name in names if "external" in name.lower() or "vba" in name or "connect" in name
        ]
        assert not [name for name in names if b"WEBSERVICE" in report.read(name)]


def lying(path: Path, part: str, size: int) -> Path:
    """Change what both headers of a part say of its size when unpacked."""
    data = bytearray(path.read_bytes())
    local, central = data.index(b"PK\x03\x04"), data.index(b"PK\x01\x02")
    while data[local + 30 : local + 30 + len(part)] != part.encode():
        local = data.index(b"PK\x03\x04", local + 4)
    while data[central + 46 : central + 46 + len(part)] != part.encode():
        central = data.index(b"PK\x01\x02", central + 4)
    data[local + 22 : local + 26] = data[central + 24 : central + 28] = struct.pack("<L", size)
    path.write_bytes(data)
    return path


def test_part_that_unpacks_to_more_than_it_says_is_damaged(
    log: Path, sentence: Callable[[Path], str]
) -> None:
    said = sentence(lying(log, "xl/worksheets/sheet1.xml", 300))
    assert "damaged" in said


@pytest.mark.parametrize("says", [1, 3000])
def test_open_document_that_unpacks_to_more_than_it_says_is_bounded(says: int, tmp_path: Path) -> None:
    noise = "".join(f"<!--{os.urandom(20).hex()}-->" + " " * 4000 for _ in range(60_000))
    path = ods(tmp_path / "log.ods", table("Trips", row(cell("string", "Trip"))) + noise)
    lying(path, "content.xml", says)
    begun = worked()
    with suppress(Unreadable):
        assert open_log(path, lambda _: True).sheets[0].rows == [("Trip",)]
    assert worked() - begun < 5


def test_part_outside_the_archive_is_never_looked_for(
    write_log: WriteLog, patched: Callable[..., Path], tmp_path: Path
) -> None:
    (tmp_path / "outside.xml").write_text("secret")
    log = patched(
        write_log(),
        {
            "xl/_rels/workbook.xml.rels": lambda xml: xml.replace(
                b"worksheets/sheet2.xml", b"../../../../" + str(tmp_path / "outside.xml").encode()
            ).replace(b"/xl../../../../", b"../../../../")
        },
    )
    with pytest.raises(Unreadable, match="damaged"):
        read_season(log)
