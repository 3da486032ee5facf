"""Folders for what is written."""

from pathlib import Path

from reporter.files.errors import IS_A_FILE, refusal, refusal_for


def make_folder(folder: Path) -> None:
    """Make a folder and those above it where they are missing; CannotWrite where that cannot be."""
    try:
        if folder.exists() and not folder.is_dir():
            raise refusal(folder, f"it {IS_A_FILE}")
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise refusal_for(folder, error) from error
