"""What a live formula may hold: only what Excel 2016, LibreOffice 7.4 and web spreadsheets share."""

import re
from typing import Final

# fmt: off
_PLAIN: Final = frozenset({
    "ABS", "AND", "AVERAGE", "AVERAGEIF", "AVERAGEIFS", "CHOOSE", "COLUMN", "COLUMNS", "CONCATENATE",
    "COUNT", "COUNTA", "COUNTBLANK", "COUNTIF", "COUNTIFS", "DATE", "DAY", "EXACT", "EXP", "FALSE",
    "FIND", "HLOOKUP", "HOUR", "HYPERLINK", "IF", "IFERROR", "INDEX", "INT", "ISBLANK", "ISERROR",
    "ISNA", "ISNUMBER", "ISTEXT", "LARGE", "LEFT", "LEN", "LN", "LOG10", "LOOKUP", "LOWER", "MATCH",
    "MAX", "MEDIAN", "MID", "MIN", "MINUTE", "MOD", "MONTH", "N", "NA", "NOT", "OR", "POWER", "RANK",
    "REPT", "RIGHT", "ROUND", "ROUNDDOWN", "ROUNDUP", "ROW", "ROWS", "SEARCH", "SIGN", "SMALL", "SQRT",
    "SUBSTITUTE", "SUBTOTAL", "SUM", "SUMIF", "SUMIFS", "SUMPRODUCT", "SUMSQ", "TEXT", "TIME", "TRIM",
    "TRUE", "UPPER", "VALUE", "VLOOKUP", "WEEKDAY", "YEAR",
})
# Newer ones, which a file writes with a prefix.
_PREFIXED: Final = frozenset({
    "BETA.INV", "CHISQ.INV", "GAMMA.INV", "IFNA", "PERCENTILE.INC", "STDEV.S", "T.INV.2T",
})
# fmt: on

_TEXT = re.compile(r'("(?:[^"]|"")*")')
_CALL = re.compile(r"\b([A-Za-z_][A-Za-z0-9_.]*)\(")
_WHOLE_COLUMN = re.compile(r"\$?\b[A-Z]{1,3}:\$?[A-Z]{1,3}\b(?![(\d])")


def portable(formula: str) -> str:
    """Return the formula with the prefixes that a file wants; a ValueError where a program would not know it.

    xlsxwriter can add the prefixes too (`use_future_functions`), at five times the cost of a formula.
    """
    parts = _TEXT.split(formula)
    parts[::2] = [_prefixed(part, formula) for part in parts[::2]]
    return "".join(parts)


def _prefixed(part: str, formula: str) -> str:
    if "[" in part or _WHOLE_COLUMN.search(part):
        raise ValueError(f"a live formula uses bounded ranges only: {formula}")

    if _PLAIN.issuperset(_CALL.findall(part)):
        return part

    def call(found: re.Match[str]) -> str:
        name = found[1]
        if name in _PREFIXED:
            return f"_xlfn.{name}("
        if name not in _PLAIN:
            raise ValueError(f"not every spreadsheet knows {name}: {formula}")
        return f"{name}("

    return _CALL.sub(call, part)
