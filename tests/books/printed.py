"""How many pages a workbook prints on, by a real spreadsheet program."""

import os
import re
import shutil
import subprocess
from pathlib import Path

import pytest

_PAGE = re.compile(rb"/Type\s*/Page\b")


def pages_printed(path: Path, folder: Path) -> int:
    """Print a workbook into a PDF below `folder` and count its pages; skips without LibreOffice."""
    program = shutil.which("soffice") or shutil.which("libreoffice")
    if program is None:
        (pytest.fail if os.environ.get("CI") else pytest.skip)("LibreOffice is not installed (no soffice)")
    profile = (folder / "profile").resolve().as_uri()
    command = [program, f"-env:UserInstallation={profile}", "--headless", "--norestore"]
    subprocess.run(
        [*command, "--convert-to", "pdf", "--outdir", str(folder), str(path)],
        capture_output=True,
        timeout=180,
        check=False,
    )
    printed = folder / f"{path.stem}.pdf"
    # The program gives no error where it fails.
    assert printed.exists()
    return len(_PAGE.findall(printed.read_bytes()))
