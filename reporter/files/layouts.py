"""Where the layout of a log is kept: beside it, under its name."""

from pathlib import Path


def layout_path(log: Path) -> Path:
    """Return where the layout of a log, a workbook or a folder, is kept."""
    name = log.name if log.is_dir() else log.stem
    return log.parent / f"{name} layout.xlsx"
