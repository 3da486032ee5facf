"""Every workbook keeps the rules for which a program would refuse it or offer to repair it.

The rules are those of ECMA-376 and of the limits that Excel states, and what is known to make it repair a
file: the schemas say nothing of most of them. Each is tried on a report or log in which it is broken.
"""

import re
import zipfile
from pathlib import Path

import pytest

from tests.programs import rules_book, rules_cells, rules_drawn, rules_package, rules_sheet
from tests.programs.breaks import BREAKS, Break
from tests.programs.conftest import KINDS, Workbook
from tests.programs.package import Package

# Where one stage fails, the next cannot be read.
STAGES = [
    [rules_package.malformed],
    [rules_package.relationships],
    [rules_book.sheets, rules_book.defined_names],
    [
        *rules_package.RULES,
        *rules_book.RULES,
        *rules_cells.RULES,
        *rules_sheet.RULES,
        *rules_drawn.RULES,
    ],
]


def faults(path: Path) -> list[str]:
    package = Package(path)
    for rules in STAGES:
        if found := [said for rule in rules for said in rule(package)]:
            return found
    return []


@pytest.mark.parametrize("kind", KINDS)
def test_no_program_has_anything_to_repair(kind: str, workbook: Workbook) -> None:
    assert faults(workbook(kind)) == []


@pytest.mark.parametrize("broken", BREAKS, ids=lambda broken: f"{broken.part}: {broken.said}")
def test_a_rule_that_is_broken_is_found_out(broken: Break, workbook: Workbook, tmp_path: Path) -> None:
    with zipfile.ZipFile(workbook(broken.kind)) as archive:
        parts = {name: archive.read(name).decode() for name in archive.namelist()}
    changed = re.sub(broken.pattern, broken.into, parts[broken.part], count=1, flags=re.DOTALL)
    assert changed != parts[broken.part]
    with zipfile.ZipFile(tmp_path / "broken.xlsx", "w") as archive:
        for name, content in parts.items():
            archive.writestr(name, changed if name == broken.part else content)
    assert any(broken.said in fault for fault in faults(tmp_path / "broken.xlsx"))
