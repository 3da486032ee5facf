"""Make a mended copy of a log from a filled-in fix list; the log itself is never written to."""

from collections import defaultdict
from collections.abc import Sequence
from pathlib import Path
from typing import NamedTuple

from reporter.files.atomic import replace_file
from reporter.files.csv_log import is_csv_log
from reporter.files.fingerprint import sha256_of
from reporter.files.guard import guard_target
from reporter.read.door import open_log
from reporter.read.errors import Unreadable
from reporter.read.fix_list import Correction, FilledIn, read_fix_list
from reporter.read.raw import Address, CellValue
from reporter.run.season import Reading, read_season
from reporter.schema.a1 import row_and_column
from reporter.schema.fix_list import MENDED
from reporter.tidy.words import shown
from reporter.write.patch.errors import CannotPatch, CellsRefused
from reporter.write.patch.proof import prove
from reporter.write.patch.workbook import has_formulas, patch_workbook

Cells = dict[str, dict[Address, CellValue]]


class NotMended(Exception):  # noqa: N818 - named as it reads in an except clause
    """No copy was made; `sentences` say why and what to do."""

    def __init__(self, sentences: Sequence[str]) -> None:
        super().__init__(" ".join(sentences))
        self.sentences = tuple(sentences)


class Mended(NamedTuple):
    """A mended copy: where it is, how many cells were corrected, and what became of it when it was read.

    recalculate: whether it holds formulas, whose results are those of before.
    """

    path: Path
    corrected: int
    reading: Reading
    recalculate: bool


def mended_path(log: Path) -> Path:
    """Return where the mended copy of a log goes: beside it."""
    return log.with_name(f"{log.stem}{MENDED}{log.suffix}")


def mend(log: Path, fix_list: Path) -> Mended:
    """Write the mended copy of a log and read it again.

    Raises Unreadable, CannotWrite or NotMended, each in sentences; nothing is written then.
    """
    _check_format(log)
    filled = read_fix_list(fix_list)
    _check_log(log, fix_list, filled)
    cells = _cells(filled, fix_list)
    target = mended_path(log)
    guard_target(target, (log, fix_list), frozenset())
    replace_file(target, lambda path: _write(log, path, cells, filled))
    corrected = sum(map(len, cells.values()))
    return Mended(target, corrected, read_season(target), has_formulas(target))


def _check_format(log: Path) -> None:
    """Refuse what holds no cells that can be changed one by one; Unreadable where it is no log at all."""
    kind = "a folder of .csv files" if is_csv_log(log) else open_log(log, lambda _name: False).blind
    if kind:
        named = kind if kind.startswith("a ") else f"an {kind} file"
        raise NotMended(
            [
                f"I cannot mend {log.name}: it is {named}, in which no single cell can be changed; "
                "save it as an Excel workbook (.xlsx) and make a new fix list of that."
            ]
        )


def _check_log(log: Path, fix_list: Path, filled: FilledIn) -> None:
    if filled.sha256 == _fingerprint(log):
        return
    if filled.log_name != log.name:
        raise NotMended([f"{fix_list.name} is the fix list of {filled.log_name}, not of {log.name}."])
    raise NotMended(
        [f"{log.name} has changed since {fix_list.name} was made; make a new fix list and fill that in."]
    )


def _fingerprint(log: Path) -> str:
    try:
        return sha256_of(log)
    except OSError as error:
        raise Unreadable(f"I cannot read {log.name}: {error.strerror or error}.") from error


def _cells(filled: FilledIn, fix_list: Path) -> Cells:
    """Return the cells to be changed; NotMended where there are none, or where lines cannot be taken."""
    sentences = [*filled.refused, *_contradictions(filled.corrections)]
    if sentences:
        raise NotMended([*sentences, "Nothing was written."])
    if not filled.corrections:
        raise NotMended([f"Nothing is filled in: {fix_list.name} has no corrected value."])
    cells: Cells = defaultdict(dict)
    for one in filled.corrections:
        cells[one.sheet][row_and_column(one.cell)] = one.value
    return dict(cells)


def _contradictions(corrections: Sequence[Correction]) -> list[str]:
    first: dict[tuple[str, str], Correction] = {}
    sentences = []
    for one in corrections:
        other = first.setdefault((one.sheet, one.cell), one)
        if other.value != one.value:
            sentences.append(
                f"{one.sheet} {one.cell} has two corrections, {_named(other)} and {_named(one)}: keep one."
            )
    return sentences


def _named(one: Correction) -> str:
    return (
        f"'{shown(one.value)}' on line {one.line}" if one.value is not None else f"blank on line {one.line}"
    )


def _write(log: Path, target: Path, cells: Cells, filled: FilledIn) -> None:
    """Fill the file that becomes the copy, and prove it before it takes its place."""
    try:
        patch_workbook(log, target, cells)
        prove(log, target, cells)
    except CellsRefused as refused:
        lines = {(one.sheet, one.cell): one.line for one in filled.corrections}
        sentences = [
            f"Line {lines[sheet, cell]} ({sheet} {cell}): {why}, and clear the line."
            for (sheet, cell), why in refused.reasons.items()
        ]
        raise NotMended([*sentences, "Nothing was written."]) from refused
    except CannotPatch as refused:
        sentence = f"I cannot mend {log.name}: {refused}; correct the cells in the log itself."
        raise NotMended([sentence, "Nothing was written."]) from refused
    if sha256_of(log) != filled.sha256:
        raise NotMended([f"{log.name} changed while it was copied; make a new fix list and fill that in."])
