"""Prints each budget with its measured ratio; exit 1 where one is missed three times running."""

import sys

from tests.benchmarks.budgets import BUDGETS, Budget, ratio

_TRIES = 3


def met(budget: Budget) -> bool:
    for _ in range(_TRIES):
        measured = ratio(budget)
        sys.stdout.write(f"{budget.name}: {measured:.2f} x its floor (at most {budget.most:g})\n")
        if measured <= budget.most:
            return True
    return False


if __name__ == "__main__":
    results = [met(budget) for budget in BUDGETS]
    sys.exit(int(not all(results)))
