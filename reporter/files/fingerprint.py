"""The fingerprint of a file: SHA-256 in hexadecimal."""

import hashlib
from pathlib import Path


def sha256_of(path: Path) -> str:
    """SHA-256 of the file's bytes, read piece by piece; what cannot be read is an OSError."""
    with path.open("rb") as file:
        return hashlib.file_digest(file, "sha256").hexdigest()


def sha256_of_text(*parts: str) -> str:
    """SHA-256 of some texts, told apart."""
    return hashlib.sha256("\0".join(parts).encode("utf-8", "surrogateescape")).hexdigest()
