"""Reads a columns file (see `reporter.schema.asked_columns`); every slip in it is a sentence."""

import re
import tomllib
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from reporter.read.errors import Unreadable
from reporter.schema.asked_columns import BY_FIELD, HOURS, ROWS, AskedColumn, AskedColumns

_LARGEST = 1 << 20  # bytes; a form has a few dozen columns
_MOST = 200  # columns
_DAY = re.compile(r"(?=.*YY)(?=.*M)(?=.*D)[YMD ./-]+")
_TOP = frozenset({"name", "rows", "date", "hours", "decimal_mark", "column"})
_OF_COLUMN = frozenset({"heading", "field", "text", "codes", "decimals"})


class _Slip(Exception):  # noqa: N818 - it is what a person typed
    """What is wrong in the file, and how to mend it."""


def read_asked_columns(path: Path) -> AskedColumns:
    """Read a columns file; Unreadable where there is none or something in it is not as documented."""
    try:
        return _asked(_parsed(path))
    except _Slip as slip:
        raise Unreadable(f"I cannot read the columns file {path.name}: {slip}") from slip


def _parsed(path: Path) -> dict[str, Any]:
    try:
        if path.stat().st_size > _LARGEST:
            raise _Slip("it is far larger than such a file is; is it the right one?")
        return tomllib.loads(path.read_text(encoding="utf-8-sig"))
    except FileNotFoundError as error:
        raise _Slip("there is no such file.") from error
    except OSError as error:
        raise _Slip(f"{error.strerror or error}.") from error
    except UnicodeDecodeError as error:
        raise _Slip("it is not text in UTF-8; save it as plain text.") from error
    except (tomllib.TOMLDecodeError, RecursionError) as error:
        raise _Slip(
            f'it is not TOML: {error}. Text stands between quotes, as name = "Lake sheet".'
        ) from error


def _asked(found: Mapping[str, Any]) -> AskedColumns:
    _known(found, _TOP, "the file")
    columns = found.get("column")
    if not isinstance(columns, list) or not columns:
        raise _Slip("it has no [[column]]; give each column one, with a heading and a field.")
    if len(columns) > _MOST:
        raise _Slip(f"it has {len(columns)} columns, more than {_MOST}.")
    rows = _one_of(found, "rows", ROWS)
    made = tuple(_column(column, number) for number, column in enumerate(columns, start=1))
    for column in made:
        if rows == "trip" and column.key and BY_FIELD[column.key].of_species:
            raise _Slip(f'{column.key} is told only where a row is a species; write rows = "species".')
    date = _text(found, "date", "YYYY-MM-DD")
    if not _DAY.fullmatch(date):
        raise _Slip(f"date is '{date}'; write it with YYYY or YY, MM and DD, as DD/MM/YYYY.")
    return AskedColumns(
        name=_text(found, "name", "") or "As asked for",
        rows="species" if rows == "species" else "trip",
        columns=made,
        date=date,
        hours="h:mm" if _one_of(found, "hours", HOURS) == "h:mm" else "decimal",
        decimal_mark=_one_of(found, "decimal_mark", (".", ",")),
    )


def _column(found: object, number: int) -> AskedColumn:
    where = f"column {number}"
    if not isinstance(found, dict):
        raise _Slip(f"{where} is no table; begin it with [[column]].")
    _known(found, _OF_COLUMN, where)
    heading, key, text = (_text(found, name, "", where) for name in ("heading", "field", "text"))
    if not heading:
        raise _Slip(f"{where} has no heading.")
    if bool(key) == ("text" in found):
        raise _Slip(f"{where} ({heading}) needs either a field or a fixed text.")
    if key and key not in BY_FIELD:
        raise _Slip(f"{where} ({heading}): there is no field '{key}'. The fields: {', '.join(BY_FIELD)}.")
    return AskedColumn(heading, key, text, _codes(found, where), _decimals(found, where))


def _codes(found: Mapping[str, Any], where: str) -> Mapping[str, str]:
    codes = found.get("codes", {})
    if not isinstance(codes, dict) or not all(isinstance(code, str | int) for code in codes.values()):
        raise _Slip(f'{where}: codes are written as codes = {{ "Lake Arden" = "0042" }}.')
    return {str(value): str(code) for value, code in codes.items()}


def _decimals(found: Mapping[str, Any], where: str) -> int | None:
    decimals = found.get("decimals")
    if decimals is not None and not (isinstance(decimals, int) and 0 <= decimals <= 6):
        raise _Slip(f"{where}: decimals is a whole number from 0 to 6.")
    return decimals


def _known(found: Mapping[str, Any], known: frozenset[str], where: str) -> None:
    for key in found:
        if key not in known:
            raise _Slip(f"{where} has '{key}', which is nothing I know; there is {', '.join(sorted(known))}.")


def _text(found: Mapping[str, Any], key: str, otherwise: str, where: str = "the file") -> str:
    value = found.get(key, otherwise)
    if not isinstance(value, str):
        raise _Slip(f"{where}: {key} is text between quotes.")
    return " ".join(value.split())


def _one_of(found: Mapping[str, Any], key: str, allowed: tuple[str, ...]) -> str:
    value = _text(found, key, allowed[0])
    if value not in allowed:
        raise _Slip(f"{key} is '{value}'; write one of: {', '.join(allowed)}.")
    return value
