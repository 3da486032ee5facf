"""What may be written over: nothing that was read, nothing that someone else made, nothing typed in."""

import errno
from collections.abc import Sequence
from pathlib import Path

from reporter.files.errors import IS_A_FILE, refusal, refusal_for
from reporter.files.mark import TYPED_IN, read_mark


def guard_target(target: Path, inputs: Sequence[Path], may_replace: frozenset[str]) -> None:
    """Raise CannotWrite unless ``target`` is free, or ours and of a kind in ``may_replace``.

    ``inputs`` are the files being read: none of them is ever a target, whatever name leads to it.
    Kinds that people type in are never replaced, whatever ``may_replace`` says.
    """
    try:
        if target.is_dir():
            raise IsADirectoryError(errno.EISDIR, "a folder")
        if target.parent.exists() and not target.parent.is_dir():
            raise refusal(target, f"'{target.parent.name}' {IS_A_FILE}")
        if not target.parent.is_dir():
            raise FileNotFoundError(errno.ENOENT, "no folder")
        exists = target.exists()
    except OSError as error:
        raise refusal_for(target, error) from error
    guard_input(target, inputs)
    if exists:
        _guard_existing(target, may_replace)


def guard_input(target: Path, inputs: Sequence[Path]) -> None:
    """Raise CannotWrite where ``target`` is one of the files being read, under whatever name."""
    if any(_same(source, target) for source in inputs):
        raise refusal(target, "that is a file I am reading; choose another name")


def _guard_existing(target: Path, may_replace: frozenset[str]) -> None:
    kind = read_mark(target)
    if kind in TYPED_IN:
        raise refusal(target, f"it is a {kind} that you may have typed in; choose another name or move it")
    if kind not in may_replace:
        raise refusal(target, f"it exists and {_not_this(kind)}; choose another name or move it")


def _not_this(kind: str | None) -> str:
    if kind is None:
        return "was not written by reporter"
    return f"is another of reporter's workbooks (its kind is “{kind}”)"


def _same(source: Path, target: Path) -> bool:
    try:
        return source.samefile(target)
    except OSError:
        return False  # one of the two is not there, so they cannot be one file
