"""What a row needs: rows that lack it are set aside, other unread cells are left out alone."""

from collections.abc import Callable

from reporter.schema.column import Column
from reporter.tidy.sheet import TidySheet
from reporter.tidy.words import NotRead

Excused = Callable[[int, str], bool]
Instead = Callable[[str], str]

_UNREAD = "required_unread"


def require(
    tidy: TidySheet,
    excused: Excused = lambda _index, _key: False,
    instead: Instead = lambda _key: "",
    whole: str = "",
) -> None:
    """Take out every row that lacks a needed cell, and say every cell that is not used.

    excused: whether a row (index) may do without a column (key). instead: what an unread optional cell of a
    column counts as, as ", counted as 1". whole: the finding by which any unread cell takes its row, where
    a row means something else without it. Columns that the sheet lacks altogether are not asked for here.
    """
    grouped = {key for group in tidy.sheet.one_of for key in group}
    for column in tidy.sheet.columns:
        needed = bool(column.required) and _is_there(tidy, column)
        for index, why in sorted(tidy.unread.get(column.key, {}).items()):
            if whole or (needed and not excused(index, column.key)):
                _take_out(tidy, index, column.key, why, whole or _UNREAD)
            elif column.key not in grouped or _group_filled(tidy, index):
                _leave_out(tidy, index, column.key, why, instead(column.key))
        if needed and not column.blank_is_above:
            _require_filled(tidy, column, excused)
    if any(all(key in tidy.rows.cells for key in group) for group in tidy.sheet.one_of):
        _require_group(tidy)
    _say_merged(tidy)


def _is_there(tidy: TidySheet, column: Column) -> bool:
    return column.key in tidy.rows.cells or any(v is not None for v in tidy.columns[column.key])


def _take_out(tidy: TidySheet, index: int, key: str, why: NotRead, code: str = _UNREAD) -> None:
    if tidy.used[index] and why.said:
        tidy.used[index] = False
    elif tidy.used[index]:
        tidy.set_aside(code, index, key, why=why.why, remedy=why.remedy)


def _leave_out(tidy: TidySheet, index: int, key: str, why: NotRead, instead: str) -> None:
    if why.said:
        return
    code = "cell_impossible" if why.impossible else "cell_unread"
    tidy.say(code, index, key, why=why.why, remedy=why.remedy, instead=instead)


def _require_filled(tidy: TidySheet, column: Column, excused: Excused) -> None:
    merged = tidy.rows.merged.get(column.key, {})
    stopped = set(tidy.rows.uncalculated.get(column.key, ()))
    below: dict[tuple[int, int], list[int]] = {}
    for index, value in enumerate(tidy.columns[column.key]):
        if value is not None or not tidy.used[index] or index in stopped or excused(index, column.key):
            continue
        if index in merged:
            below.setdefault(merged[index], []).append(index)
        else:
            missing = tidy.rows.heading(column.key, index)
            tidy.set_aside("required_blank", index, column.key, filled=_filled(tidy, index), missing=missing)
    for (first, last), rows in below.items():
        done = "The rows below it are not used." if len(rows) > 1 else "Row not used."
        tidy.set_aside_once("merged", rows, column.key, first=first, last=last, done=done)


def _filled(tidy: TidySheet, index: int) -> str:
    """Return the heading of the first filled cell of a row."""
    for key, cells in tidy.rows.cells.items():
        if cells[index] is not None:
            return tidy.rows.heading(key, index)
    return "an error"


def _group_filled(tidy: TidySheet, index: int) -> bool:
    return any(all(tidy.columns[key][index] is not None for key in group) for group in tidy.sheet.one_of)


def _require_group(tidy: TidySheet) -> None:
    missing = " or ".join(
        " + ".join(tidy.sheet.column(key).heading for key in group) for group in tidy.sheet.one_of
    )
    keys = [key for group in tidy.sheet.one_of for key in group]
    stopped = {index for key in keys for index in tidy.rows.uncalculated.get(key, ())}
    for index in range(len(tidy.used)):
        if not tidy.used[index] or index in stopped or _group_filled(tidy, index):
            continue
        unread = [(key, tidy.unread[key][index]) for key in keys if index in tidy.unread.get(key, {})]
        if unread:
            for key, why in unread[:1]:
                _take_out(tidy, index, key, why)
        else:
            tidy.set_aside("required_blank", index, filled=_filled(tidy, index), missing=missing)


def _say_merged(tidy: TidySheet) -> None:
    """Say where a merge leaves optional cells blank; a merged cell that means 'as above' is fine."""
    for key, hidden in tidy.rows.merged.items():
        column = tidy.sheet.column(key)
        if column.required or column.blank_is_above:
            continue
        for first, last in sorted(set(hidden.values())):
            index = min(i for i, span in hidden.items() if span == (first, last))
            tidy.say("merged_below", index, key, first=first, last=last)
