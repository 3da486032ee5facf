"""Text that a user typed reaches the report as text: never as a formula, never as a link."""

import random
import re
import zipfile
from collections.abc import Callable
from pathlib import Path

import openpyxl
import pytest

from reporter.run.build import build, plan
from reporter.schema.column import Column, Sheet
from reporter.schema.log import SHEETS
from reporter.schema.sheets.season import SETTINGS

STARTS = [
    *("=1+1", '=HYPERLINK("http://x.example","y")', "+1+1", "-1+1", "@SUM(A1)", "{=1+1}", "=cmd|'/c x'!A0"),
    *("http://x.example/", "https://x.example/", "ftp://x.example/", "mailto:a@x.example", "file:///x/"),
    *(
        "internal:Trips!A1",
        "external:other.xlsx#A!B",
        "#Trips!A1",
        "\t=1",
        "\n=1",
        "'=1",
        '=A1&"',
        "</v><f>1</f>",
    ),
]
LINK = re.compile(r"""<hyperlink ref="[A-Z]+[0-9]+" (location="'[A-Za-z ]+'!A1") """)
FORMULA = re.compile(r"<(?:\w+:)?(?:f|formula|formula1|formula2|definedName)\b[^>]*>([^<]*)<")
TEXT_KINDS = {"text", "names", "species", "choice"}
SOUND = {"status", "kind", "guide_fished", "style"}
ROWS = 3
Spell = Callable[[str], str]


def save(path: Path, spell: Spell) -> None:
    """Write a log of three rows a sheet in which every text column goes through a spelling."""
    book = openpyxl.Workbook()
    book.remove(book.active)
    for sheet in SHEETS:
        page = book.create_sheet(sheet.name)
        page.append([column.headed("us") for column in sheet.columns])
        if sheet.key == "season":
            for setting in SETTINGS:
                page.append([setting.heading, None])
                answer = spell(setting.key) if setting.kind == "text" else setting.example
                put(page.cell(page.max_row, 2), answer)
            continue
        for index in range(ROWS):
            for position, column in enumerate(sheet.columns, start=1):
                put(page.cell(index + 2, position), cell_of(sheet, column, index, spell))
    book.save(path)


def cell_of(sheet: Sheet, column: Column, index: int, spell: Spell) -> object:
    """Sound values everywhere but in text; a name is that of the same row of its own sheet."""
    if column.key in SOUND or (column.kind == "species" and index):
        return column.example
    if column.kind == "key" or column.refers:
        return spell(f"{column.refers or sheet.key}-{index + 1}")
    return spell(f"{column.key} {index + 1}") if column.kind in TEXT_KINDS else column.example


def put(cell: openpyxl.cell.Cell, value: object) -> None:
    cell.value = value
    if isinstance(value, str):
        cell.data_type = "s"  # openpyxl would make a formula of some


def report_parts(log: Path) -> dict[str, str]:
    (job,) = plan([log], None, None)
    assert build(job, [log]).reading.season is not None
    with zipfile.ZipFile(job.report) as archive:
        return {name: archive.read(name).decode("utf-8") for name in archive.namelist()}


def formulas(parts: dict[str, str]) -> dict[str, list[str]]:
    """The formulas of every part, and where its links lead."""
    return {
        name: [*FORMULA.findall(text), *LINK.findall(text)]
        for name, text in parts.items()
        if FORMULA.search(text) or "<hyperlink" in text
    }


@pytest.fixture(scope="module")
def harmless(tmp_path_factory: pytest.TempPathFactory) -> dict[str, list[str]]:
    """The formulas in the report of the same log in plain words."""
    log = tmp_path_factory.mktemp("plain") / "log.xlsx"
    save(log, str)
    found = formulas(report_parts(log))
    assert sum(map(len, found.values())) > 100
    return found


@pytest.mark.parametrize("seed", range(6))
def test_formulas_of_a_report_are_our_own_whatever_is_typed(
    seed: int, harmless: dict[str, list[str]], tmp_path: Path
) -> None:
    dice = random.Random(seed)  # noqa: S311 - nothing secret
    spelled: dict[str, str] = {}
    log = tmp_path / "log.xlsx"
    save(log, lambda word: spelled.setdefault(word, dice.choice(STARTS) + word))
    parts = report_parts(log)
    assert formulas(parts) == harmless
    for name, text in parts.items():
        assert text.count("<hyperlink ") == len(LINK.findall(text)), name
        assert 'TargetMode="External"' not in text, name
    assert_typed_text_is_there(parts, [spelled[f"techniques-{index + 1}"] for index in range(ROWS)])


def assert_typed_text_is_there(parts: dict[str, str], names: list[str]) -> None:
    shared = parts["xl/sharedStrings.xml"].replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&")
    shared = shared.replace("&quot;", '"')
    for name in names:
        assert f">{name.strip()}</t>" in shared
