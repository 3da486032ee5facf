"""Every part of every workbook, with the first rows of its sheets, against the schemas of ECMA-376.

The validator is not ours: `ooxml-validate` (npm package @ooxml-tools/validate, MIT) is that of the Open
XML SDK, which Excel's makers publish under the same licence: schemas, and rules between parts that they keep.
"""

import json
import os
import re
import shutil
import subprocess
import zipfile
from pathlib import Path

import pytest

from tests.programs.conftest import KINDS, Workbook


def schema_errors(path: Path) -> list[str]:
    """Say what the validator finds; skips the test where it is missing, under CI it fails instead."""
    program = shutil.which("ooxml-validate")
    if program is None:
        (pytest.fail if os.environ.get("CI") else pytest.skip)("ooxml-validate is not installed")
    options = ["--office-version", "Office2016", "--output-format", "json", str(path)]
    run = subprocess.run(
        [*_quickly(program), *options], capture_output=True, text=True, timeout=300, check=True
    )
    return [f"{each['path']['partUri']}: {each['description']}" for each in json.loads(run.stdout)]


def _quickly(program: str) -> list[str]:
    """Have the code of a script optimised at once: else node runs a long check in its slow first version."""
    script = Path(program).resolve()
    return ["node", "--no-liftoff", str(script)] if script.suffix == ".js" else [program]


ROWS = 200
"""Of each sheet that are validated: those below are like them, and all of them take the validator minutes."""

_ROW = re.compile(rb'<row r="(\d+)"(?:[^>]*/>|.*?</row>)', re.DOTALL)


def shortened(path: Path, copy: Path) -> Path:
    """Copy a workbook without the rows below ROWS of each sheet."""

    def kept(row: re.Match[bytes]) -> bytes:
        return row[0] if int(row[1]) <= ROWS else b""

    with zipfile.ZipFile(path) as archive, zipfile.ZipFile(copy, "w") as short:
        for name in archive.namelist():
            part = archive.read(name)
            short.writestr(name, _ROW.sub(kept, part) if name.startswith("xl/worksheets/sheet") else part)
    return copy


@pytest.mark.parametrize("kind", KINDS)
def test_every_part_follows_the_schemas(kind: str, workbook: Workbook, tmp_path: Path) -> None:
    assert schema_errors(shortened(workbook(kind), tmp_path / "short.xlsx")) == []


def test_a_part_out_of_order_is_found_out(workbook: Workbook, tmp_path: Path) -> None:
    broken = tmp_path / "broken.xlsx"
    with zipfile.ZipFile(workbook("client copy")) as archive, zipfile.ZipFile(broken, "w") as copy:
        for name in archive.namelist():
            content = archive.read(name)
            if name == "xl/worksheets/sheet1.xml":
                content = content.replace(b"<sheetViews>", b"<pageMargins/><sheetViews>")
            copy.writestr(name, content)
    said = " ".join(schema_errors(broken))
    assert "unexpected child element" in said
    assert "/xl/worksheets/sheet1.xml" in said
