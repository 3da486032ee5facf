"""The demo season with a distinctive text in every private cell: no copy holds what is not its client's."""

from pathlib import Path

import openpyxl
import pytest
from openpyxl.worksheet.worksheet import Worksheet

from reporter.schema.log import SHEETS
from reporter.schema.sheets.season import SETTINGS
from tests.demo.people import CLIENTS
from tests.privacy.planted import Secret
from tests.privacy.test_bytes import ROOT, copies_of, leaks, unzipped

SAMPLE = ROOT / "sample_workbooks" / "demo season.xlsx"
AGREED = [code for code, _, consent, *_ in CLIENTS if consent == "yes"]
PRIVATE_NAMES = {
    "trips": ("trip",),
    "waters": ("agency_code", "region", "county"),
    "clients": ("licence_number",),
    "documents": ("document", "number"),
}
"""Columns that are no free text and yet are nobody's business."""


def plant(path: Path) -> tuple[list[Secret], dict[str, str]]:
    """Write the sample with planted texts; return the secrets, and code -> name of every client."""
    book = openpyxl.load_workbook(SAMPLE)
    secrets = [Secret("Season", text) for text in _settings(book["Season"])]
    for sheet in SHEETS:
        page = book[sheet.name]
        names = PRIVATE_NAMES.get(sheet.key, ())
        for place, column in enumerate(sheet.columns, start=1):
            if column.audience == "guide" and (column.kind == "text" and sheet.key != "season"):
                secrets += _fill(page, place, f"{sheet.name} {column.heading}")
            elif column.key in names:
                secrets += _there(page, place, f"{sheet.name} {column.heading}")
    secrets += _hidden_waters(book["Waters"])
    clients = _rename_clients(book)
    book.save(path)
    return secrets, clients


def _settings(page: Worksheet) -> list[str]:
    hidden = {setting.heading for setting in SETTINGS if setting.kind == "text"} & {
        "Season name",
        "Guide code",
    }
    texts = []
    for row in page.iter_rows(min_row=2):
        if str(row[0].value).partition(" (")[0] in hidden:
            row[1].value = f"zqset{row[0].row}x"
            texts.append(row[1].value)
    assert len(texts) == len(hidden)
    return texts


def _fill(page: Worksheet, column: int, what: str) -> list[Secret]:
    made = []
    for row in range(2, page.max_row + 1):
        if page.cell(row, 1).value is not None or page.cell(row, 2).value is not None:
            text = f"zq{page.title[:3]}{column}r{row}x"
            page.cell(row, column).value = text
            made.append(Secret(what, text))
    return made


def _there(page: Worksheet, column: int, what: str) -> list[Secret]:
    found = (page.cell(row, column).value for row in range(2, page.max_row + 1))
    return [Secret(what, str(value)) for value in found if value]


def _hidden_waters(page: Worksheet) -> list[Secret]:
    heads = [cell.value for cell in page[1]]
    share, also = heads.index("Share name"), heads.index("Also called")
    rows = [[cell.value for cell in row] for row in page.iter_rows(min_row=2)]
    hidden = [row for row in rows if row[0] and row[share] != "yes"]
    assert len(hidden) == 2
    return [Secret("Waters", text) for row in hidden for text in (row[0], row[also]) if text]


def _rename_clients(book: openpyxl.Workbook) -> dict[str, str]:
    """Give every client a code and a name that stand nowhere else."""
    page = book["Clients"]
    codes = {row[0].value: f"zqk{row[0].row}y" for row in page.iter_rows(min_row=2) if row[0].value}
    names = {}
    for row in page.iter_rows(min_row=2):
        if row[0].value:
            row[0].value = codes[row[0].value]
            row[1].value = f"Zqn{row[0].row}y"
            names[row[0].value] = row[1].value
    for sheet, heading in (("Trips", "Client"), ("Effort", "Angler"), ("Catch", "Angler")):
        column = [cell.value for cell in book[sheet][1]].index(heading) + 1
        for row in range(2, book[sheet].max_row + 1):
            cell = book[sheet].cell(row, column)
            if cell.value and cell.value != "guide":
                cell.value = "; ".join(codes[code.strip()] for code in str(cell.value).split(";"))
    return names


@pytest.fixture(scope="module")
def planted(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, list[Secret], dict[str, str]]:
    path = tmp_path_factory.mktemp("planted") / "log.xlsx"
    secrets, clients = plant(path)
    return path, secrets, clients


def test_no_copy_of_the_sample_holds_what_is_not_its_clients(
    planted: tuple[Path, list[Secret], dict[str, str]], tmp_path: Path
) -> None:
    log, secrets, clients = planted
    copies = copies_of([log], tmp_path)
    assert set(copies.files) == set(clients)
    for code, name in clients.items():
        himself = frozenset({code}) if copies.joined.copies[code].name else frozenset()
        secrets = [*secrets, Secret("name", name, himself), Secret("code", code)]
    assert len(secrets) > 1000
    assert leaks(copies, secrets) == []


def test_copies_of_the_sample_are_named_and_told(
    planted: tuple[Path, list[Secret], dict[str, str]], tmp_path: Path
) -> None:
    """The same search finds every name that may be printed, the waters shared, and no author anywhere."""
    log, _, clients = planted
    copies = copies_of([log], tmp_path)
    agreed = [code for code, path in copies.files.items() if clients[code].encode() in unzipped(path)]
    assert len(agreed) == len(AGREED)
    for path in copies.files.values():
        content = unzipped(path)
        assert b"<dc:creator></dc:creator>" in content or b"<dc:creator/>" in content
        assert b"<cp:lastModifiedBy></cp:lastModifiedBy>" in content
        assert b"externalLink" not in content
        assert b'state="hidden"' not in content
    every = b"".join(unzipped(path) for path in copies.files.values())
    assert b"Lake Arden" in every
    assert b"a reservoir in the hills" in every
