"""The one door: any file a guide may hand over comes in here, as a RawBook or as one sentence why not."""

import hashlib
import io
import stat
import zipfile
from collections.abc import Callable
from contextlib import ExitStack
from pathlib import Path
from typing import BinaryIO

from reporter.files.csv_log import holds_csv, holds_tables, is_csv_log
from reporter.files.fingerprint import sha256_of, sha256_of_text
from reporter.files.mark import mark_in
from reporter.files.real import real_path
from reporter.read.errors import COPY_AGAIN, Refused, Unreadable
from reporter.read.limits import MAX_FILE, MIB, check_texts
from reporter.read.look import look_at
from reporter.read.raw import RawBook, RawSheet
from reporter.read.sniff import FOREIGN, SENTENCES, sniff
from reporter.read.xlsx import read_xlsx

_IN_MEMORY = 64 << 20  # bytes: files up to this size are read from disk once, larger ones by piece


def open_log(path: Path, wanted: Callable[[str], bool], *, any_folder: bool = False) -> RawBook:
    """Read the sheets of a log whose names are ``wanted``; Unreadable, one sentence, where that cannot be.

    any_folder: whether a folder with any CSV file is a log.
    """
    try:
        book = _open(path, wanted, any_folder=any_folder)
        check_texts(book.sheets)
        return book
    except Refused as refused:
        raise _unreadable(path, str(refused)) from refused
    except MemoryError as error:
        reason = "it needs more memory than this computer has free; close other programs or split the log"
        raise _unreadable(path, reason) from error


def fingerprint_of(path: Path) -> str:
    """SHA-256 of a file, or of the files in a folder; Unreadable as `open_log` says where that cannot be."""
    try:
        if path.is_dir():
            inside = (file for file in sorted(path.iterdir()) if file.is_file())
            return sha256_of_text(*(f"{file.name} {sha256_of(file)}" for file in inside))
        _size_of(path)
        return sha256_of(path)
    except OSError as error:
        raise _unreadable(path, _why_not_opened(error)) from error
    except Refused as refused:
        raise _unreadable(path, str(refused)) from refused


def _unreadable(path: Path, reason: str) -> Unreadable:
    return Unreadable(f"I cannot read {path.name or path}: {reason}.")


def _open(path: Path, wanted: Callable[[str], bool], *, any_folder: bool) -> RawBook:
    with ExitStack() as stack:
        try:
            if path.is_dir():
                return _open_folder(path, wanted, any_folder=any_folder)
            file, sha256 = _file_and_fingerprint(path, stack)
        except OSError as error:
            raise Refused(_why_not_opened(error)) from error
        kind = sniff(file)
        if kind != "xlsx" and kind not in FOREIGN:
            raise Refused(SENTENCES[kind])
        try:
            archive = None if kind == "xls" else stack.enter_context(zipfile.ZipFile(file))
            if kind == "xlsx" and archive is not None:
                sheets, unread = read_xlsx(archive, file, wanted)
            else:
                sheets, unread = _foreign(archive, file, wanted)
        except (Refused, MemoryError):
            raise
        except Exception as error:  # a damaged file can fail at any depth of the libraries
            raise Refused(f"it is damaged; {COPY_AGAIN}") from error
        mark = mark_in(archive) if archive is not None else None
        return RawBook(path, path.name, sha256, mark, tuple(sheets), tuple(unread), FOREIGN.get(kind, ""))


def _open_folder(path: Path, wanted: Callable[[str], bool], *, any_folder: bool) -> RawBook:
    """Read a folder of .csv files as one log; an OSError where one of them cannot be read."""
    if not (is_csv_log(path) or (any_folder and holds_csv(path) and not holds_tables(path))):
        raise Refused("that is a folder; give me the workbook in it")
    from reporter.read.csv_folder import read_folder

    sheets, unread, sha256 = read_folder(path, wanted)
    return RawBook(path, real_path(path).name, sha256, None, tuple(sheets), tuple(unread))


def _foreign(
    archive: zipfile.ZipFile | None, file: BinaryIO, wanted: Callable[[str], bool]
) -> tuple[list[RawSheet], list[str]]:
    """Read another format, after the same look at what is packed."""
    if archive is not None:
        look_at(archive)
    from reporter.read.foreign import read_foreign

    return read_foreign(file, wanted)


def _file_and_fingerprint(path: Path, stack: ExitStack) -> tuple[BinaryIO, str]:
    if _size_of(path) > _IN_MEMORY:
        return stack.enter_context(path.open("rb")), sha256_of(path)
    data = path.read_bytes()
    return io.BytesIO(data), hashlib.sha256(data).hexdigest()


def _size_of(path: Path) -> int:
    """Return the bytes of what is a file and not too large to be a log; else Refused."""
    found = path.stat()
    if not stat.S_ISREG(found.st_mode):
        raise Refused("that is a device or a pipe, not a file; give me the workbook itself")
    if found.st_size > MAX_FILE:
        reason = f"it is larger than {MAX_FILE // MIB} MiB, far more than any season log"
        raise Refused(f"{reason}; copy your sheets into a new workbook, without pictures, and save that")
    return found.st_size


def _why_not_opened(error: OSError) -> str:
    if isinstance(error, FileNotFoundError):
        return "there is no such file; check the name and the folder"
    if isinstance(error, PermissionError):
        return (
            "you have no permission to open it, or another program has it locked; close it there or copy it"
        )
    return f"the computer says “{error.strerror or error}”; copy it to another place and try again"
