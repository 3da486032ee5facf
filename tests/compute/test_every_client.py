"""Whether every named client caught one: what the fish of a guided trip tell, and what they do not."""

import math
from collections.abc import Sequence

import pandas as pd
import pytest

from reporter.compute.glance import every_client_caught

Row = tuple[str, int, bool]
"""Angler ("" where none is written), fish, whether of the species counted."""
YES, NO, NOT_TOLD = 1.0, 0.0, math.nan
BASS, PICKEREL = True, False


def told(clients: str, persons: int, total: int, rows: Sequence[Row], *, guide: bool = False) -> float:
    """What one trip tells. total: fish landed of the species counted, tallied ones too."""
    trips = pd.DataFrame(
        {
            "trip_no": [7],
            "in_rates": [True],
            "kind": ["guided"],
            "clients": [tuple(clients.split())],
            "anglers": [float(persons)],
            "guide_fished": [guide],
            "fish": [float(total)],
        }
    )
    fish = pd.DataFrame(rows, columns=["angler", "fish", "counted"]).assign(trip_no=7)
    return float(every_client_caught(trips, fish).get(7, NOT_TOLD))


@pytest.mark.parametrize(
    ("clients", "persons", "total", "rows", "said"),
    [
        ("C02", 1, 1, [("", 1, BASS)], YES),
        ("C02", 1, 3, [], YES),
        ("C02", 1, 0, [], NO),
        ("C02", 3, 1, [("", 1, BASS)], NOT_TOLD),
        ("C02", 3, 1, [("C02", 1, BASS)], YES),
        ("C02 C03", 2, 0, [], NO),
        ("C02 C03", 2, 2, [("C02", 1, BASS), ("C03", 1, BASS)], YES),
        ("C02 C03", 2, 2, [("C02", 2, BASS)], NO),
        ("C02 C03", 2, 2, [("C02", 1, BASS), ("C03", 1, PICKEREL)], NOT_TOLD),
        ("C02 C03", 2, 1, [("C02", 1, BASS), ("C03", 1, PICKEREL)], NO),
        ("C02 C03 C04", 3, 2, [("", 2, BASS)], NO),
        ("C02 C03 C04", 3, 3, [("", 3, BASS)], NOT_TOLD),
        ("C02 C03 C04", 3, 4, [("C02", 2, BASS), ("", 1, BASS)], NOT_TOLD),
        ("C02 C03 C04", 3, 3, [("C02", 2, BASS), ("", 1, BASS)], NO),
    ],
)
def test_trip_tells_what_its_fish_tell(
    clients: str, persons: int, total: int, rows: list[Row], said: float
) -> None:
    assert told(clients, persons, total, rows) == pytest.approx(said, nan_ok=True)


@pytest.mark.parametrize(
    ("total", "rows", "said"),
    [
        (1, [("", 1, BASS)], NOT_TOLD),
        (3, [("guide", 1, BASS)], NOT_TOLD),
        (1, [("guide", 1, BASS)], NO),
        (2, [("guide", 1, BASS), ("C02", 1, BASS)], YES),
    ],
)
def test_guide_who_fished_may_have_caught_what_has_no_name(total: int, rows: list[Row], said: float) -> None:
    assert told("C02", 1, total, rows, guide=True) == pytest.approx(said, nan_ok=True)
