"""Which logs a command line means: files, and folders that stand for every log in them."""

from collections.abc import Sequence
from pathlib import Path

from reporter.files.mark import read_mark

_ENDINGS = frozenset({".xlsx", ".xlsm", ".xlsb", ".xls", ".ods"})
_LOG_MARKS = frozenset({None, "log"})


def find_logs(paths: Sequence[Path]) -> tuple[list[Path], list[str]]:
    """Return the logs in a stable order, each once, and a sentence for every path that gives none."""
    logs: list[Path] = []
    sentences: list[str] = []
    for path in paths:
        if not path.is_dir():
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
    """Return the workbooks of a folder that are not our own outputs, by name."""
    return [
        path
        for path in sorted(folder.iterdir(), key=lambda path: path.name)
        if path.suffix.lower() in _ENDINGS
        and not path.name.startswith(("~$", ".~", "."))
        and path.is_file()
        and read_mark(path) in _LOG_MARKS
    ]
