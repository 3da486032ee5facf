"""Totals of kept and released, where another layout has a column for them."""

from collections import defaultdict

from reporter.schema.own_layout import TOTAL
from reporter.tidy.sheet import TidySheet


def check_kept_and_released(tidy: TidySheet) -> None:
    """Set aside the rows of kept and released fish that do not add up to the total beside them.

    Where only one of the two has a column, the row that stands for the total keeps the rest of it.
    """
    totals = tidy.columns.get(TOTAL.key)
    if totals is None:
        return
    counts = tidy.columns["count"]
    together: dict[tuple[int, str], list[int]] = defaultdict(list)
    rests: dict[tuple[int, str], int] = {}
    for index, total in enumerate(totals):
        if not tidy.used[index]:
            continue
        number = tidy.rows.numbers[index]
        if total is not None:
            together[number, tidy.rows.cell(index, TOTAL.key)].append(index)
        else:
            rests[number, tidy.rows.cell(index, "count")] = index
    for at, indexes in together.items():
        rest = rests.get(at)
        added = sum(counts[index] or 0 for index in indexes)
        total = totals[indexes[0]]
        if rest is not None and added <= total:
            counts[rest] = total - added
        elif rest is not None or added != total:
            _differ(tidy, indexes if rest is None else [*indexes, rest], added)


def _differ(tidy: TidySheet, indexes: list[int], added: float) -> None:
    counts, fates = tidy.columns["count"], tidy.columns["fate"]
    fish = {fates[index]: counts[index] or 0 for index in indexes}
    said = {fate: f"{fish.get(fate, 0):g}" for fate in ("kept", "released")}
    for index in indexes[1:]:
        tidy.used[index] = False
    tidy.set_aside("own_total_differs", indexes[0], TOTAL.key, sum=f"{added:g}", **said)
