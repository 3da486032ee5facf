"""A file's bytes as lines of text, or the reason why there are none."""

import gzip
import hashlib
import io
import zlib
from pathlib import Path

from reporter.read.errors import Refused
from reporter.read.sniff import Kind, sniff

_LARGEST = 256 << 20  # bytes unpacked: more than a year of one-minute reports of five stations
_GZIP = b"\x1f\x8b"
_AGAIN = "fetch it again from where it came"
_CSV = "save its table as CSV and give me that, or the text file as the weather service gave it out"

_SENTENCES: dict[Kind, str] = {
    "xlsx": f"it is a workbook, not a text file; {_CSV}",
    "xlsb": f"it is a workbook, not a text file; {_CSV}",
    "xls": f"it is a workbook, not a text file; {_CSV}",
    "ods": f"it is a workbook, not a text file; {_CSV}",
    "locked": f"it is a workbook locked with a password; {_CSV}",
    "empty": f"it is empty; {_AGAIN}",
    "cut short": f"it is a damaged archive; {_AGAIN}",
    "zip": "it is a zip archive; take the weather file out of it and give me that",
    "xml": f"it is an XML file; {_AGAIN} as CSV",
    "web page": f"it is a web page under a file's name; {_AGAIN} as CSV",
    "unknown": f"it holds no text; {_AGAIN} as CSV",
}


def lines_of(path: Path) -> tuple[list[str], str]:
    """Return a file's lines and its fingerprint; raises Refused, with the reason, for what is no text."""
    packed = _bytes_of(path)
    fingerprint = hashlib.sha256(packed).hexdigest()
    data = _unpacked(packed) if packed.startswith(_GZIP) else packed
    kind = sniff(io.BytesIO(data))
    if kind in _SENTENCES:
        raise Refused(_SENTENCES[kind])
    text = _decoded(data)
    if "\0" in text:
        raise Refused(_SENTENCES["unknown"])
    if not text.strip():
        raise Refused(_SENTENCES["empty"])
    return text.replace("\r\n", "\n").replace("\r", "\n").split("\n"), fingerprint


def _bytes_of(path: Path) -> bytes:
    try:
        if path.is_dir():
            raise Refused("that is a folder; give me the weather file in it")
        if path.stat().st_size > _LARGEST:
            raise Refused(_too_large())
        return path.read_bytes()
    except FileNotFoundError as error:
        raise Refused("there is no such file; check the name and the folder") from error
    except PermissionError as error:
        raise Refused("you have no permission to open it; copy it to another place and try again") from error
    except (OSError, ValueError) as error:
        raise Refused("the computer cannot open it; check the name, or copy it to another place") from error


def _unpacked(packed: bytes) -> bytes:
    try:
        with gzip.GzipFile(fileobj=io.BytesIO(packed)) as file:
            data = file.read(_LARGEST + 1)
    except (OSError, EOFError, zlib.error) as error:
        raise Refused(f"it is a damaged archive; {_AGAIN}") from error
    if len(data) > _LARGEST:
        raise Refused(_too_large())
    return data


def _too_large() -> str:
    return f"it holds more than {_LARGEST >> 20} MB; fetch one station and one season"


def _decoded(data: bytes) -> str:
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        return data.decode("utf-16", errors="replace")
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return data.decode("cp1252", errors="replace")
