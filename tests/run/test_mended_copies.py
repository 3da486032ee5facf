"""The season with mistakes, mended from its fix list: what was corrected is gone, all else is as it was."""

import csv
import shutil
import subprocess
import zipfile
from collections import Counter
from pathlib import Path

import openpyxl
import pytest

from reporter.run.fix_list import write_fix_list
from reporter.run.mend import Mended, mend
from reporter.run.season import read_season
from tests.demo import make
from tests.demo.fix_list import CORRECTED
from tests.recalculate import soffice

Found = Counter[tuple[str, int, str]]

GONE: Found = Counter(
    {
        ("Trips", 64, "end_before_start"): 1,
        ("Effort", 222, "trip_set_aside"): 1,  # the stints of that trip
        ("Effort", 223, "trip_set_aside"): 1,
        ("Trips", 29, "name_unknown"): 1,
        ("Catch", 265, "cell_unread"): 1,
        ("Catch", 6, "cell_impossible"): 1,
        ("Catch", 268, "weight_impossible"): 1,
        ("Weather", 139, "required_unread"): 1,
    }
)
"""Season row 26 keeps a problem: an answer without a setting."""


def found(path: Path) -> Found:
    return Counter((problem.sheet, problem.row, problem.code) for problem in read_season(path).problems)


def fill(fix_list: Path, corrections: dict[tuple[str, str], object]) -> None:
    book = openpyxl.load_workbook(fix_list)
    lines = {str(row[1].value).partition(",")[0]: row[5] for row in book["Fix list"].iter_rows(min_row=5)}
    for (sheet, cell), value in corrections.items():
        lines[f"{sheet} {cell}"].value = "(blank)" if value is None else value
    book.save(fix_list)


@pytest.fixture(scope="module")
def log(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return Path(shutil.copy(make.SAMPLES / make.MESSY, tmp_path_factory.mktemp("season")))


@pytest.fixture(scope="module")
def fix_list(log: Path) -> Path:
    target = log.with_name("fix list.xlsx")
    write_fix_list(read_season(log), target)
    return target


@pytest.fixture(scope="module")
def mended(log: Path, fix_list: Path) -> Mended:
    filled = Path(shutil.copy(fix_list, log.with_name("filled in.xlsx")))
    fill(filled, CORRECTED)
    return mend(log, filled)


def test_every_problem_has_its_line_and_every_cell_its_link(log: Path, fix_list: Path) -> None:
    problems = read_season(log).problems
    rows = [row for row in openpyxl.load_workbook(fix_list)["Fix list"].iter_rows() if row[1].hyperlink]
    linked = Counter(row[1].hyperlink.location for row in rows)
    with_cell = Counter(f"'{problem.sheet}'!{problem.cell}" for problem in problems if problem.cell)
    assert with_cell <= linked
    assert {row[1].hyperlink.target for row in rows} == {"demo%20season%20with%20mistakes.xlsx"}
    assert len(rows) == len(problems) - 1  # the sheet that is not read has none


def test_corrected_problems_are_gone_and_no_others_changed(log: Path, mended: Mended) -> None:
    before, after = found(log), found(mended.path)
    after[("Season", 26, "setting_unknown")] += 1
    after[("Season", 26, "required_blank")] -= 1
    assert before - GONE == +after
    assert (mended.corrected, len(mended.reading.problems)) == (7, sum(found(mended.path).values()))


def test_cells_differ_where_they_were_corrected_and_nowhere_else(log: Path, mended: Mended) -> None:
    def cells(path: Path) -> dict[tuple[str, str], object]:
        book = openpyxl.load_workbook(path)
        return {(page.title, cell.coordinate): cell.value for page in book for row in page for cell in row}

    old, new = cells(log), cells(mended.path)
    assert {
        place: new.get(place) for place in old.keys() | new.keys() if old.get(place) != new.get(place)
    } == (CORRECTED)


def test_other_parts_are_the_same_bytes(log: Path, mended: Mended) -> None:
    with zipfile.ZipFile(log) as old, zipfile.ZipFile(mended.path) as new:
        assert old.namelist() == new.namelist()
        changed = {name for name in old.namelist() if old.read(name) != new.read(name)}
        sheets = {
            f"xl/worksheets/sheet{1 + openpyxl.load_workbook(log).sheetnames.index(name)}.xml"
            for name in ("Season", "Trips", "Catch", "Weather")
        }
    assert changed == sheets


def test_sample_of_a_filled_in_list_fits_the_sample_that_it_was_made_of(log: Path, mended: Mended) -> None:
    own = Path(shutil.copy(log, log.parent / "again.xlsx"))
    again = mend(own, make.SAMPLES / make.FILLED_IN)
    assert again.path.read_bytes() == mended.path.read_bytes()


@pytest.mark.libreoffice
def test_spreadsheet_program_opens_the_mended_copy_and_shows_the_values(
    mended: Mended, tmp_path: Path
) -> None:
    sheet = openpyxl.load_workbook(mended.path).sheetnames.index("Catch") + 1
    convert(
        mended.path,
        tmp_path,
        f"csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,false,false,false,{sheet}",
    )
    with next(tmp_path.glob("*.csv")).open(encoding="utf-8") as file:
        rows = list(csv.reader(file))
    assert rows[264][3] == "2"
    assert rows[267][5] == "1 lb 2 oz"


@pytest.mark.libreoffice
def test_list_that_a_spreadsheet_program_saved_is_applied(log: Path, fix_list: Path, tmp_path: Path) -> None:
    own = Path(shutil.copy(log, tmp_path))
    filled = Path(shutil.copy(fix_list, tmp_path / "filled in.xlsx"))
    fill(filled, CORRECTED)
    convert(filled, tmp_path / "saved", "xlsx")
    mended = mend(own, tmp_path / "saved" / "filled in.xlsx")
    assert mended.corrected == len(CORRECTED)
    assert found(mended.path) == found(log) - GONE - Counter([("Season", 26, "setting_unknown")]) + Counter(
        [("Season", 26, "required_blank")]
    )


def convert(path: Path, folder: Path, form: str) -> None:
    profile = f"-env:UserInstallation={(folder / 'profile').resolve().as_uri()}"
    command = [
        soffice(),
        profile,
        "--headless",
        "--norestore",
        "--convert-to",
        form,
        "--outdir",
        folder,
        path,
    ]
    subprocess.run(command, check=True, capture_output=True, timeout=120)
