import errno
import os
from collections.abc import Callable
from pathlib import Path

import pytest
import xlsxwriter

from reporter.files.atomic import replace_file
from reporter.files.errors import CannotWrite

pytestmark = pytest.mark.skipif(os.name != "posix", reason="file modes and links as on POSIX")


def _writes(text: str) -> Callable[[Path], object]:
    return lambda path: path.write_text(text)


def _refused(target: Path, write: Callable[[Path], object] | None = None) -> str:
    with pytest.raises(CannotWrite) as caught:
        replace_file(target, write or _writes("new"))
    said = str(caught.value)
    assert said.startswith(f"I cannot write to {target}: ")
    assert said.endswith(".")
    assert "\n" not in said
    return said


def _only(folder: Path) -> list[str]:
    return sorted(entry.name for entry in folder.iterdir())


def test_the_new_file_takes_the_place_of_the_old_and_nothing_else_is_left(tmp_path: Path) -> None:
    target = tmp_path / "report.xlsx"
    replace_file(target, _writes("first"))
    replace_file(target, _writes("second"))
    assert target.read_text() == "second"
    assert _only(tmp_path) == ["report.xlsx"]


def test_it_is_written_hidden_beside_the_target_under_its_own_suffix(tmp_path: Path) -> None:
    seen: list[Path] = []

    def write(path: Path) -> None:
        seen.append(path)
        path.write_text("new")

    replace_file(tmp_path / "report.xlsx", write)
    assert seen[0].parent == tmp_path
    assert seen[0].name.startswith(".report.")
    assert f"-{os.getpid()}." in seen[0].name
    assert seen[0].suffix == ".xlsx"


def test_its_mode_is_that_of_an_ordinary_file(tmp_path: Path) -> None:
    old = os.umask(0o027)
    try:
        replace_file(tmp_path / "report.xlsx", _writes("new"))
    finally:
        os.umask(old)
    assert (tmp_path / "report.xlsx").stat().st_mode & 0o777 == 0o640


def test_the_new_file_is_on_the_disk_before_it_takes_the_place(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "report.xlsx").write_text("old")
    at_sync: list[str] = []
    monkeypatch.setattr(os, "fsync", lambda _: at_sync.append((tmp_path / "report.xlsx").read_text()))
    replace_file(tmp_path / "report.xlsx", _writes("new"))
    assert at_sync == ["old"]


def test_a_link_is_followed_and_stays_a_link(tmp_path: Path) -> None:
    (tmp_path / "real").mkdir()
    (tmp_path / "link.xlsx").symlink_to(tmp_path / "real" / "report.xlsx")
    replace_file(tmp_path / "link.xlsx", _writes("new"))
    assert (tmp_path / "link.xlsx").is_symlink()
    assert (tmp_path / "real" / "report.xlsx").read_text() == "new"
    assert _only(tmp_path / "real") == ["report.xlsx"]


def test_a_link_that_leads_round_in_a_circle_is_a_sentence(tmp_path: Path) -> None:
    (tmp_path / "report.xlsx").symlink_to("report.xlsx")
    assert "leads round in a circle" in _refused(tmp_path / "report.xlsx")
    assert _only(tmp_path) == ["report.xlsx"]


def test_a_writer_that_fails_leaves_the_old_file_and_no_other(tmp_path: Path) -> None:
    target = tmp_path / "report.xlsx"
    target.write_text("old")

    def fail(path: Path) -> None:
        path.write_text("half")
        raise ZeroDivisionError

    with pytest.raises(ZeroDivisionError):
        replace_file(target, fail)
    assert target.read_text() == "old"
    assert _only(tmp_path) == ["report.xlsx"]


def test_an_interrupt_leaves_the_old_file_and_no_other(tmp_path: Path) -> None:
    def stop(path: Path) -> None:
        path.write_text("half")
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        replace_file(tmp_path / "report.xlsx", stop)
    assert _only(tmp_path) == []


def test_a_folder_that_is_missing_and_a_target_that_is_one(tmp_path: Path) -> None:
    assert "the folder does not exist" in _refused(tmp_path / "gone" / "report.xlsx")
    assert "that is a folder" in _refused(tmp_path)
    (tmp_path / "file").write_text("")
    assert "not a folder" in _refused(tmp_path / "file" / "report.xlsx")


def test_a_name_that_is_too_long(tmp_path: Path) -> None:
    assert "the name is too long" in _refused(tmp_path / f"{'r' * 300}.xlsx")


def test_a_long_name_that_the_disk_can_hold_is_written(tmp_path: Path) -> None:
    target = tmp_path / f"{'ü' * 120}.xlsx"
    replace_file(target, _writes("new"))
    assert target.read_text() == "new"


@pytest.mark.parametrize(
    ("number", "said"),
    [
        (errno.ENOSPC, "the disk is full"),
        (errno.EACCES, "no permission"),
        (errno.EROFS, "read-only"),
        (errno.EIO, os.strerror(errno.EIO)),
    ],
)
def test_what_the_system_says_while_writing_is_a_sentence(number: int, said: str, tmp_path: Path) -> None:
    def fail(path: Path) -> None:
        path.write_text("half")
        raise OSError(number, os.strerror(number))

    assert said in _refused(tmp_path / "report.xlsx", fail)
    assert _only(tmp_path) == []


def test_a_full_disk_that_a_writing_library_wraps_is_still_a_full_disk(tmp_path: Path) -> None:
    def fail(path: Path) -> None:
        raise xlsxwriter.exceptions.FileCreateError(OSError(errno.ENOSPC, "No space left on device"))

    assert "the disk is full" in _refused(tmp_path / "report.xlsx", fail)


def test_a_target_held_by_another_program_is_tried_again(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    pauses, replace = [], Path.replace

    def held_once(self: Path, target: Path) -> Path:
        if not pauses:
            raise PermissionError(errno.EACCES, "in use")
        return replace(self, target)

    monkeypatch.setattr(Path, "replace", held_once)
    monkeypatch.setattr("reporter.files.atomic.time.sleep", pauses.append)
    replace_file(tmp_path / "report.xlsx", _writes("new"))
    assert len(pauses) == 1
    assert (tmp_path / "report.xlsx").read_text() == "new"


def test_a_target_that_stays_held_is_a_sentence_after_a_second(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "report.xlsx").write_text("old")
    pauses: list[float] = []

    def held(self: Path, target: Path) -> Path:
        raise PermissionError(errno.EACCES, "in use")

    monkeypatch.setattr(Path, "replace", held)
    monkeypatch.setattr("reporter.files.atomic.time.sleep", pauses.append)
    assert "open in another program" in _refused(tmp_path / "report.xlsx")
    assert (len(pauses), sum(pauses)) == (3, pytest.approx(1))
    assert (tmp_path / "report.xlsx").read_text() == "old"
    assert _only(tmp_path) == ["report.xlsx"]
