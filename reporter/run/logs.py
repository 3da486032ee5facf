"""Which logs a command line means: files, and folders that stand for every log in them."""

from collections.abc import Sequence
from contextlib import suppress
from pathlib import Path

from reporter.files.csv_log import is_csv_log
from reporter.files.mark import read_mark

_ENDINGS = frozenset({".xlsx", ".xlsm", ".xlsb", ".xls", ".ods"})
_LOG_MARKS = frozenset({None, "log"})


def find_logs(paths: Sequence[Path]) -> tuple[list[Path], list[str]]:
    """Return the logs in a stable order, each once, and a sentence for every path that gives none."""
    logs: list[Path] = []
    sentences: list[str] = []
    for path in paths:
        if not path.is_dir() or is_csv_log(path):
            logs.append(path)
            continue
        try:
            inside = logs_in(path)
        except OSError as error:
            sentences.append(f"I cannot look into {path}: {error.strerror or error}; check its permissions.")
            continue
        logs += inside
        if not inside:
            sentences.append(f"I cannot find a season log in {path}: it holds no .xlsx workbook of yours.")
    return list(dict.fromkeys(logs)), sentences


def logs_in(folder: Path) -> list[Path]:
    """Return the logs of a folder by name: workbooks that are not our own outputs, folders of .csv files.

    What has a workbook's ending and is no file, as a pipe or a link that leads nowhere, is there too: whoever
    reads it says why it cannot be read, and nothing is left out unsaid.
    """
    return [
        path
        for path in sorted(folder.iterdir(), key=lambda path: path.name)
        if not path.name.startswith(("~$", ".~", ".")) and _is_log(path)
    ]


def left_out(paths: Sequence[Path]) -> list[str]:
    """Return a sentence for every folder whose own folders hold logs: these it does not stand for."""
    sentences = []
    for path in paths:
        if path.is_dir() and not is_csv_log(path):
            inside = {folder.name: len(_logs_or_none(folder)) for folder in _folders_in(path)}
            logs, names = sum(inside.values()), ", ".join(name for name, logs in inside.items() if logs)
            if logs:
                many = f"{logs:,} logs" if logs > 1 else "a log"
                sentences.append(
                    f"Not read: {many} in folders within {path} ({names}). A folder stands for the logs that "
                    "lie in it itself."
                )
    return sentences


def _folders_in(folder: Path) -> list[Path]:
    with suppress(OSError):
        inside = sorted(folder.iterdir(), key=lambda path: path.name)
        return [path for path in inside if path.is_dir() and not path.name.startswith(".")]
    return []


def _logs_or_none(folder: Path) -> list[Path]:
    if is_csv_log(folder):
        return []
    with suppress(OSError):
        return logs_in(folder)
    return []


def _is_log(path: Path) -> bool:
    if path.is_dir():
        return is_csv_log(path)
    if path.suffix.lower() not in _ENDINGS:
        return False
    return not path.is_file() or read_mark(path) in _LOG_MARKS
