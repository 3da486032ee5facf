import os
from pathlib import Path

import pytest
import xlsxwriter

from reporter.files.errors import CannotWrite
from reporter.files.guard import guard_target

REPORT = frozenset({"report"})


def _marked(path: Path, kind: str) -> Path:
    book = xlsxwriter.Workbook(path)
    book.add_worksheet()
    book.set_custom_property("season-reporter", kind)
    book.close()
    return path


def _refused(target: Path, inputs: list[Path], may_replace: frozenset[str] = REPORT) -> str:
    with pytest.raises(CannotWrite) as caught:
        guard_target(target, inputs, may_replace)
    assert str(target) in str(caught.value)
    return str(caught.value)


@pytest.fixture
def log(tmp_path: Path) -> Path:
    (tmp_path / "log.xlsx").write_bytes(b"typed by hand")
    return tmp_path / "log.xlsx"


def test_a_free_name_is_free(tmp_path: Path, log: Path) -> None:
    guard_target(tmp_path / "report.xlsx", [log], REPORT)


def test_a_report_of_ours_may_be_replaced_by_a_report(tmp_path: Path, log: Path) -> None:
    guard_target(_marked(tmp_path / "report.xlsx", "report"), [log], REPORT)


def test_the_log_itself_is_never_a_target(log: Path) -> None:
    assert "a file I am reading" in _refused(log, [log])
    assert "a file I am reading" in _refused(log.parent / "." / ".." / log.parent.name / log.name, [log])


def test_an_input_is_never_a_target_even_if_it_is_a_report_of_ours(tmp_path: Path) -> None:
    report = _marked(tmp_path / "report.xlsx", "report")
    assert "a file I am reading" in _refused(report, [tmp_path / "other.xlsx", report])


@pytest.mark.parametrize("link", ["hard", "symbolic"])
def test_another_name_for_the_log_is_never_a_target(link: str, tmp_path: Path, log: Path) -> None:
    other = tmp_path / "other.xlsx"
    os.link(log, other) if link == "hard" else other.symlink_to(log)
    assert "a file I am reading" in _refused(other, [log])


def test_what_we_did_not_write_is_never_replaced(tmp_path: Path, log: Path) -> None:
    (tmp_path / "sums.xlsx").write_bytes(b"mine")
    assert "exists and was not written by reporter; choose another name or move it" in _refused(
        tmp_path / "sums.xlsx", [log]
    )


def test_another_kind_of_ours_is_not_replaced(tmp_path: Path, log: Path) -> None:
    said = _refused(_marked(tmp_path / "june.xlsx", "filing"), [log])
    assert "another of reporter's workbooks" in said
    assert "filing" in said


@pytest.mark.parametrize("kind", ["log", "fix list", "layout"])
def test_what_people_type_in_is_never_replaced_whatever_is_allowed(
    kind: str, tmp_path: Path, log: Path
) -> None:
    typed = _marked(tmp_path / "typed.xlsx", kind)
    said = _refused(typed, [log], frozenset({kind}))
    assert f"it is a {kind} that you may have typed in" in said


def test_a_folder_and_a_missing_folder_are_refused(tmp_path: Path, log: Path) -> None:
    assert "that is a folder" in _refused(tmp_path, [log])
    assert "the folder does not exist" in _refused(tmp_path / "gone" / "report.xlsx", [log])


def test_a_name_that_no_disk_can_hold_is_refused(tmp_path: Path, log: Path) -> None:
    assert "the name is too long" in _refused(tmp_path / f"{'r' * 300}.xlsx", [log])
