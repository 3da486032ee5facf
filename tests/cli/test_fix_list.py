"""The fix list and the mended copy as one uses them: from the command line, with a spreadsheet program."""

import datetime as dt
import shutil
from collections.abc import Callable, Mapping
from pathlib import Path

import openpyxl
import pytest

from reporter.files.mark import read_mark
from tests.cli.conftest import Run
from tests.cli.shared_formula import with_shared_formula
from tests.conftest import WriteLog
from tests.demo import make

WRONG = {"Trips": {"D3": "half past", "F4": 2.5}, "Catch": {"C3": "walleye pike thing", "D3": 99}}
"""A clean log with four mistakes: a start, a number of anglers, a species, a length."""

Contents = Callable[[Path], dict[str, bytes]]


@pytest.fixture
def log(write_log: WriteLog, tmp_path: Path) -> Path:
    return write_log(WRONG, folder=tmp_path)


def lines(path: Path) -> dict[str, dict[str, object]]:
    """The lines of a fix list by where they are, each by heading, as a spreadsheet program shows them."""
    page = openpyxl.load_workbook(path)["Fix list"]
    rows = [[cell.value for cell in row] for row in page.iter_rows()]
    head = next(index for index, row in enumerate(rows) if row[:2] == ["No", "Where"])
    return {str(row[1]): dict(zip(rows[head], row, strict=True)) for row in rows[head + 1 :]}


def fill(path: Path, values: Mapping[str, object], name: str = "Corrected value") -> None:
    """Type values into a fix list: where -> value."""
    book = openpyxl.load_workbook(path)
    page = book["Fix list"]
    rows = list(page.iter_rows())
    head = next(row for row in rows if row[0].value == "No")
    column = next(cell.column for cell in head if cell.value == name)
    for where, value in values.items():
        (row,) = [row[0].row for row in rows if row[1].value == where]
        page.cell(row, column).value = value
    book.save(path)


@pytest.fixture
def fix_list(log: Path, run: Run) -> Path:
    """The fix list of the log."""
    assert run("check", log, "--fix-list", log.parent / "fix.xlsx").code == 0
    return log.parent / "fix.xlsx"


def cells(path: Path) -> dict[tuple[str, str], object]:
    book = openpyxl.load_workbook(path)
    return {(page.title, cell.coordinate): cell.value for page in book for row in page for cell in row}


def test_fix_list_has_a_line_a_problem_in_the_order_of_the_log(fix_list: Path) -> None:
    found = lines(fix_list)
    assert [line["No"] for line in found.values()] == [1, 2, 3, 4, 5, 6, 7]
    assert list(found) == [
        "Trips D3, Start",
        "Trips F4, Anglers",
        "Effort A4, Trip",
        "Effort A5, Trip",
        "Catch C3, Species",
        "Catch D3, Length (in)",
        "Catch A4, Trip",
    ]
    start = found["Trips D3, Start"]
    assert start["Found"] == "half past"
    assert str(start["What was done"]).startswith("Set aside: 'half past' ")
    assert str(start["What was done"]).endswith("Row not used.")
    assert start["What to do"]
    assert start["Corrected value"] is None
    assert read_mark(fix_list) == "fix list"


def test_mended_copy_has_the_typed_values_and_no_other_change(
    log: Path, fix_list: Path, run: Run, contents: Contents
) -> None:
    fill(fix_list, {"Trips D3, Start": dt.time(6, 30), "Catch C3, Species": "walleye"})
    before = contents(log.parent)
    ran = run("check", log, "--apply", fix_list)
    mended = log.with_name("log mended.xlsx")
    assert ran.code == 0
    assert ran.err == ""
    assert ran.out.startswith("2 corrected, ")
    assert ran.out.rstrip().endswith(f'\n  reporter check "{mended}"')
    after = contents(log.parent)
    assert after.pop("log mended.xlsx")
    assert after == before
    old, new = cells(log), cells(mended)
    assert {place: new[place] for place in new if new[place] != old.get(place)} == {
        ("Trips", "D3"): dt.time(6, 30),
        ("Catch", "C3"): "walleye",
    }
    checked = run("check", mended).out
    assert "half past" not in checked
    assert "walleye pike" not in checked
    assert "2.5" in checked


def test_number_of_problems_left_is_what_a_check_of_the_copy_says(
    log: Path, fix_list: Path, run: Run
) -> None:
    every = {
        "Trips D3, Start": dt.time(6),
        "Trips F4, Anglers": 2,
        "Catch C3, Species": "largemouth bass",
        "Catch D3, Length (in)": 14.5,
    }
    fill(fix_list, every)
    assert run("check", log, "--apply", fix_list).out.startswith("4 corrected, no problems left. ")
    assert "Nothing to mend" in run("check", log.with_name("log mended.xlsx")).out


def test_word_blank_makes_a_cell_blank(log: Path, fix_list: Path, run: Run) -> None:
    fill(fix_list, {"Catch D3, Length (in)": " (Blank) "})
    assert run("check", log, "--apply", fix_list).code == 0
    assert cells(log.with_name("log mended.xlsx"))["Catch", "D3"] is None


def test_lines_may_be_sorted_and_struck_out_before_they_are_applied(
    log: Path, fix_list: Path, run: Run
) -> None:
    fill(fix_list, {"Catch C3, Species": "walleye"})
    book = openpyxl.load_workbook(fix_list)
    page = book["Fix list"]
    head = next(row[0].row for row in page.iter_rows() if row[0].value == "No")
    kept = [[cell.value for cell in row] for row in page.iter_rows(min_row=head + 1)]
    page.delete_rows(head + 1, len(kept))
    for row in reversed(kept[2:]):
        page.append(row)
    book.save(fix_list)
    assert run("check", log, "--apply", fix_list).code == 0
    assert cells(log.with_name("log mended.xlsx"))["Catch", "C3"] == "walleye"


def test_text_that_looks_like_a_formula_stays_text(log: Path, fix_list: Path, run: Run) -> None:
    book = openpyxl.load_workbook(fix_list)
    page = book["Fix list"]
    row = next(row for row in page.iter_rows() if row[1].value == "Catch C3, Species")
    row[5].value = "=1+1"
    row[5].data_type = "s"
    book.save(fix_list)
    assert run("check", log, "--apply", fix_list).code == 0
    cell = openpyxl.load_workbook(log.with_name("log mended.xlsx"))["Catch"]["C3"]
    assert (cell.value, cell.data_type) == ("=1+1", "s")


def refused(run: Run, contents: Contents, log: Path, fix_list: Path) -> str:
    """What is said when a fix list is not applied; nothing is written then."""
    before = contents(log.parent)
    ran = run("check", log, "--apply", fix_list)
    assert ran.code == 1
    assert ran.out == ""
    assert contents(log.parent) == before
    return ran.err


def test_list_is_refused_once_the_log_has_changed(
    log: Path, fix_list: Path, run: Run, contents: Contents
) -> None:
    fill(fix_list, {"Catch C3, Species": "walleye"})
    book = openpyxl.load_workbook(log)
    book["Catch"]["A2"] = "T-002"
    book.save(log)
    said = refused(run, contents, log, fix_list)
    assert said == "log.xlsx has changed since fix.xlsx was made; make a new fix list and fill that in."


def test_list_of_another_log_is_refused(log: Path, fix_list: Path, run: Run, contents: Contents) -> None:
    fill(fix_list, {"Catch C3, Species": "walleye"})
    other = log.with_name("other.xlsx")
    book = openpyxl.load_workbook(log)
    book["Catch"]["A2"] = "T-002"
    book.save(other)
    said = refused(run, contents, other, fix_list)
    assert said == "fix.xlsx is the fix list of log.xlsx, not of other.xlsx."


def test_log_that_was_only_renamed_takes_its_list(log: Path, fix_list: Path, run: Run) -> None:
    fill(fix_list, {"Catch C3, Species": "walleye"})
    log.rename(log.with_name("renamed.xlsm"))
    assert run("check", log.with_name("renamed.xlsm"), "--apply", fix_list).code == 0
    assert log.with_name("renamed mended.xlsm").exists()


def test_list_that_is_not_filled_in_is_refused(
    log: Path, fix_list: Path, run: Run, contents: Contents
) -> None:
    said = refused(run, contents, log, fix_list)
    assert said == "Nothing is filled in: fix.xlsx has no corrected value."


def test_workbook_that_is_no_fix_list_is_refused(log: Path, run: Run, contents: Contents) -> None:
    assert "log.xlsx: it is not a fix list that reporter wrote" in refused(run, contents, log, log)
    said = refused(run, contents, log, log.with_name("none.xlsx"))
    assert said == "I cannot read none.xlsx: there is no such file; check the name and the folder."


def test_mended_copy_is_never_overwritten(log: Path, fix_list: Path, run: Run, contents: Contents) -> None:
    fill(fix_list, {"Catch C3, Species": "walleye"})
    log.with_name("log mended.xlsx").write_text("mine")
    assert "log mended.xlsx: it exists" in refused(run, contents, log, fix_list)
    log.with_name("log mended.xlsx").unlink()
    assert run("check", log, "--apply", fix_list).code == 0
    assert "log mended.xlsx: it exists" in refused(run, contents, log, fix_list)


def test_fix_list_is_never_overwritten(log: Path, fix_list: Path, run: Run, contents: Contents) -> None:
    before = contents(log.parent)
    for target in (fix_list, log):
        ran = run("check", log, "--fix-list", target)
        assert ran.code == 1
        assert f"I cannot write to {target}" in ran.err
    assert contents(log.parent) == before


def two_lines_of_one_cell(write_log: WriteLog, folder: Path, run: Run) -> tuple[Path, Path]:
    """A log with a name that is unknown in two ways: not on Techniques, and without a stint on Effort."""
    log = write_log({"Catch": {"B3": "Ned rig"}}, folder=folder)
    assert run("check", log, "--fix-list", folder / "fix.xlsx").code == 0
    return log, folder / "fix.xlsx"


def test_two_corrections_of_one_cell_are_refused_unless_they_agree(
    write_log: WriteLog, tmp_path: Path, run: Run, contents: Contents
) -> None:
    log, fix_list = two_lines_of_one_cell(write_log, tmp_path, run)
    book = openpyxl.load_workbook(fix_list)
    same = [row for row in book["Fix list"].iter_rows() if str(row[1].value).startswith("Catch B3")]
    assert len(same) == 2
    for row, name in zip(same, ("Drop shot", "Jerkbait"), strict=True):
        row[5].value = name
    book.save(fix_list)
    said = refused(run, contents, log, fix_list)
    assert said.startswith("Catch B3 has two corrections, 'Drop shot' on line ")
    same[1][5].value = "Drop shot"
    book.save(fix_list)
    assert run("check", log, "--apply", fix_list).out.startswith("1 corrected, ")


def test_line_without_a_place_for_a_value_is_refused_when_something_is_typed_there(
    write_log: WriteLog, tmp_path: Path, run: Run, contents: Contents
) -> None:
    log = write_log({"Trips": {"G1": "Tip", "G2": 20}}, folder=tmp_path)
    run("check", log, "--fix-list", tmp_path / "fix.xlsx")
    assert lines(tmp_path / "fix.xlsx")["Trips G1"]["Corrected value"] == "in the log itself"
    fill(tmp_path / "fix.xlsx", {"Trips G1": "Notes"})
    said = refused(run, contents, log, tmp_path / "fix.xlsx")
    assert said.startswith("Line 1 (Trips G1) can only be mended in the log itself; clear F")


@pytest.mark.parametrize(
    ("heading", "value", "reason"),
    [
        ("No", 77, "has been changed; clear it"),
        ("No", "x", "has been changed; clear it"),
        ("Where", "Trips A1", "has been changed; clear it"),
        ("Corrected value", "#REF!", "shows #REF!; type the value in"),
        ("Corrected value", "=1+1", "is a formula without a result"),
    ],
)
def test_line_that_cannot_be_understood_is_refused(
    heading: str, value: object, reason: str, log: Path, fix_list: Path, run: Run, contents: Contents
) -> None:
    fill(fix_list, {"Catch C3, Species": "walleye"})
    fill(fix_list, {"Catch C3, Species": value}, heading)
    said = refused(run, contents, log, fix_list)
    assert reason in said
    assert said.endswith("Nothing was written.")


@pytest.mark.parametrize("cell", ["x", "B0", "A1048577", "XFE1", 7])
def test_list_whose_places_were_changed_is_refused(
    cell: object, log: Path, fix_list: Path, run: Run, contents: Contents
) -> None:
    fill(fix_list, {"Catch C3, Species": "walleye"})
    book = openpyxl.load_workbook(fix_list)
    for row in book["For reporter"].iter_rows():
        if row[1].value == "Catch C3, Species":
            row[3].value = cell
    book.save(fix_list)
    assert "what says where it belongs has been changed" in refused(run, contents, log, fix_list)


def test_list_that_names_another_sheet_is_refused(
    log: Path, fix_list: Path, run: Run, contents: Contents
) -> None:
    fill(fix_list, {"Catch C3, Species": "walleye"})
    book = openpyxl.load_workbook(fix_list)
    for row in book["For reporter"].iter_rows():
        if row[1].value == "Catch C3, Species":
            row[2].value = "Nowhere"
    book.save(fix_list)
    assert "it has no sheet “Nowhere”" in refused(run, contents, log, fix_list)


def test_list_that_lost_its_headings_is_refused(
    log: Path, fix_list: Path, run: Run, contents: Contents
) -> None:
    book = openpyxl.load_workbook(fix_list)
    for row in book["Fix list"].iter_rows():
        if row[0].value == "No":
            row[5].value = "Mine"
    book.save(fix_list)
    assert "its headings have been changed" in refused(run, contents, log, fix_list)


def test_cell_with_a_formula_that_others_share_is_refused_by_its_line(
    write_log: WriteLog, tmp_path: Path, run: Run, contents: Contents
) -> None:
    log = with_shared_formula(write_log({"Catch": {"D3": 98}}, folder=tmp_path), "Catch", "D3")
    assert run("check", log, "--fix-list", tmp_path / "fix.xlsx").code == 0
    fill(tmp_path / "fix.xlsx", {"Catch D3, Length (in)": 14})
    said = refused(run, contents, log, tmp_path / "fix.xlsx")
    assert "(Catch D3): its formula also works out other cells; mend it in the log itself" in said


def test_log_in_another_format_gets_a_list_and_a_sentence_instead_of_a_copy(
    tmp_path: Path, run: Run, contents: Contents, write_log: WriteLog
) -> None:
    folder = tmp_path / "csv log"
    folder.mkdir()
    book = openpyxl.load_workbook(write_log(WRONG))
    for page in book:
        rows = [",".join("" if cell.value is None else str(cell.value) for cell in row) for row in page]
        (folder / f"{page.title}.csv").write_text("\n".join(rows), encoding="utf-8")
    fix_list = tmp_path / "fix.xlsx"
    made = run("check", folder, "--fix-list", fix_list)
    assert "Its first lines say how to mend a log of this format." in " ".join(made.out.split())
    assert "--apply" not in made.out
    page = openpyxl.load_workbook(fix_list)["Fix list"]
    assert any(str(row[0].value).startswith("Mend these in your log.") for row in page)
    links = {cell.hyperlink.target for row in page for cell in row if cell.hyperlink}
    assert {"csv%20log\\Trips.csv", "csv%20log\\Catch.csv"} <= links
    before = contents(tmp_path)
    ran = run("check", folder, "--apply", fix_list)
    assert (ran.code, ran.out) == (1, "")
    assert ran.err.startswith(
        "I cannot mend csv log: it is a folder of .csv files, in which no single cell can be changed; save "
        "it as an Excel workbook (.xlsx)"
    )
    assert contents(tmp_path) == before


def test_log_with_formulas_is_to_be_opened_and_saved(write_log: WriteLog, tmp_path: Path, run: Run) -> None:
    log = write_log({"Catch": {"C3": "wallaye"}, "My sums": [["=1+1"]]}, folder=tmp_path)
    run("check", log, "--fix-list", tmp_path / "fix.xlsx")
    fill(tmp_path / "fix.xlsx", {"Catch C3, Species": "walleye"})
    ran = run("check", log, "--apply", tmp_path / "fix.xlsx")
    assert ran.out.startswith("1 corrected, ")
    assert "It holds formulas. Open it in your spreadsheet program and save it" in ran.out


def test_clean_log_gets_no_fix_list(write_log: WriteLog, tmp_path: Path, run: Run) -> None:
    ran = run("check", write_log(folder=tmp_path), "--fix-list", tmp_path / "fix.xlsx")
    assert ran.code == 0
    assert "No fix list was written: there is nothing to mend." in ran.out
    assert not (tmp_path / "fix.xlsx").exists()


def test_log_with_a_stop_gets_its_list_and_exit_1(tmp_path: Path, run: Run) -> None:
    ran = run("check", make.SAMPLES / make.STOPS, "--fix-list", tmp_path / "fix")
    assert ran.code == 1
    found = lines(tmp_path / "fix.xlsx")
    assert found["Trips A11, Trip"]["What was done"].startswith("Stop: Trip T-009 is also row 10")
    assert found["Catch"]["Corrected value"] == "in the log itself"


def test_folder_stands_for_mended_copies_and_not_for_fix_lists(log: Path, fix_list: Path, run: Run) -> None:
    fill(fix_list, {"Catch C3, Species": "walleye"})
    run("check", log, "--apply", fix_list)
    shutil.copy(fix_list, log.with_name("zz fix.xlsx"))
    named = [line for line in run("check", log.parent).out.splitlines() if line.endswith(".xlsx")]
    assert named == ["log mended.xlsx", "log.xlsx"]


@pytest.mark.parametrize(
    "arguments",
    [
        ["{log}", "{log}", "--fix-list", "a.xlsx"],
        ["{folder}", "--fix-list", "a.xlsx"],
        ["{folder}", "--apply", "{fix}"],
        ["{log}", "{log}", "--apply", "{fix}"],
        ["{log}", "--apply", "{fix}", "--fix-list", "a.xlsx"],
        ["{log}", "--fix-list", "a.ods"],
        ["--fix-list", "a.xlsx"],
    ],
)
def test_options_that_do_not_fit_exit_2_and_write_nothing(
    arguments: list[str], log: Path, fix_list: Path, run: Run, contents: Contents
) -> None:
    before = contents(log.parent)
    ran = run("check", *(a.format(log=log, folder=log.parent, fix=fix_list) for a in arguments))
    assert ran.code == 2
    assert ran.out == ""
    assert contents(log.parent) == before
