"""Totals of kept and released, where another layout has a column for them: a check, never a count."""

from collections import defaultdict

from reporter.schema.own_layout import TOTAL
from reporter.tidy.sheet import TidySheet


def check_kept_and_released(tidy: TidySheet) -> None:
    """Set aside the rows of kept and released fish that do not add up to the total beside them."""
    totals = tidy.columns.get(TOTAL.key)
    if totals is None:
        return
    together: dict[tuple[int, str], list[int]] = defaultdict(list)
    for index, total in enumerate(totals):
        if total is not None and tidy.used[index]:
            together[tidy.rows.numbers[index], tidy.rows.cell(index, TOTAL.key)].append(index)
    counts, fates = tidy.columns["count"], tidy.columns["fate"]
    for indexes in together.values():
        fish = {fates[index]: counts[index] or 0 for index in indexes}
        added = sum(fish.values())
        if added != totals[indexes[0]]:
            said = {fate: f"{fish.get(fate, 0):g}" for fate in ("kept", "released")}
            for index in indexes[1:]:
                tidy.used[index] = False
            tidy.set_aside("own_total_differs", indexes[0], TOTAL.key, sum=f"{added:g}", **said)
