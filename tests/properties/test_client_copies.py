"""Whatever is typed in a log, its clients' copies are written, and all that was typed is text in them."""

from pathlib import Path

import openpyxl
import pytest

from reporter.run.clients import plan_copies, read_logs, write_copies
from tests.properties.test_survival import STARTS, texts
from tests.properties.typed_logs import save_workbook, typed_log


@pytest.mark.parametrize("seed", range(6))
def test_what_was_typed_is_text_in_a_copy(seed: int, tmp_path: Path) -> None:
    spelled = texts(STARTS, seed)
    # Texts in the settings and in columns that all trips need would stop the log.
    log = typed_log(lambda at: "" if at[0] == "season" else next(spelled))
    save_workbook(log, tmp_path / "log.xlsx")
    readings = read_logs([tmp_path / "log.xlsx"])
    copies = plan_copies(readings, tmp_path / "out")
    assert copies is not None, [stop.message for stop in readings[0].stops]
    write_copies(copies, list(copies.files), [], tmp_path / "out", whole=True)
    assert copies.files
    for path in copies.files.values():
        book = openpyxl.load_workbook(path)
        for sheet in book:
            cells = [cell for row in sheet.iter_rows() for cell in row]
            assert {cell.data_type for cell in cells} <= {"s", "n", "d"}
            assert not [cell for cell in cells if cell.hyperlink]
