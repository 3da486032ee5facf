"""Prints each budget with its measured ratio; exit 1 where one is missed three times running."""

import sys
from collections.abc import Callable
from functools import partial

from tests.benchmarks import clients, many, rows, weather
from tests.benchmarks.budgets import BUDGETS, ratio

_TRIES = 3


def met(name: str, most: float, measure: Callable[[], float]) -> bool:
    for _ in range(_TRIES):
        measured = measure()
        sys.stdout.write(f"{name}: {measured:.2f} x its floor (at most {most:g})\n")
        if measured <= most:
            return True
    return False


if __name__ == "__main__":
    results = [met(budget.name, budget.most, partial(ratio, budget)) for budget in BUDGETS]
    results.append(met(f"{weather.HOURS:,} hours of weather, added to it", weather.MOST, weather.added))
    growth = "a client's copy among 500 clients, to one among 50"
    results.append(met(growth, clients.MOST, clients.growth))
    apart = f"{many.LOGS} logs by two workers, to two processes on half of them each"
    results.append(met(apart, many.MOST, many.slowdown))
    for name, figure, budget, at_most in rows.measured():
        sys.stdout.write(f"{name}: {figure:.2f} (at {'most' if at_most else 'least'} {budget:g})\n")
        results.append(figure <= budget if at_most else figure >= budget)
    sys.exit(int(not all(results)))
