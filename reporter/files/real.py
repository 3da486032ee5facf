"""The file that a path leads to."""

import os
from pathlib import Path


def real_path(path: Path) -> Path:
    """Return the absolute path without links; a link that leads round in a circle stays as it is."""
    return Path(os.path.realpath(path))
