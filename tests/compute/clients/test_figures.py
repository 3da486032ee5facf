"""The figures of a copy: plain counts, firsts, bests, the best five together, what it came on."""

import datetime as dt
import math

import pytest

from reporter.compute.clients.figures import (
    best_of,
    best_together,
    bests,
    came_on,
    firsts,
    species_counts,
)
from reporter.compute.clients.model import Caught, Client, Day

APRIL, MAY = dt.date(2026, 4, 18), dt.date(2026, 5, 2)


def landed(
    length_mm: float = math.nan,
    species: str = "LMB",
    technique: str = "Stick worm",
    count: int = 1,
    **more: object,
) -> Caught:
    return Caught(
        **{"own": True, "fate": "released", **more},
        technique=technique,
        species=species,
        count=count,
        length_mm=length_mm,
    )  # type: ignore[arg-type]


def day(*caught: Caught, date: dt.date = APRIL, alone: bool = True) -> Day:
    return Day(date, 360.0, "Lake Arden", 4.0, alone, caught=caught)


def client(*days: Day) -> Client:
    return Client("", youth=False, days=days)


def test_fish_are_counted_by_species_own_and_party_apart_with_the_untold_kind_last() -> None:
    counts = species_counts(
        [
            day(
                landed(count=2, fate="kept"),
                landed(own=False),
                landed(species="", count=9, own=False, fate="unknown"),
            ),
            day(landed(species="SMB", count=5)),
        ]
    )
    assert [
        (row.species, row.own.fish, row.own.kept, row.own.released, row.party.fish) for row in counts
    ] == [
        ("SMB", 5, 0, 5, 0),
        ("LMB", 2, 2, 0, 1),
        ("", 0, 0, 0, 9),
    ]


def test_best_of_a_kind_is_the_longest_then_the_heaviest_then_the_earlier() -> None:
    first, second = day(landed(400.0, weight_g=900.0)), day(landed(400.0, weight_g=950.0), date=MAY)
    assert bests(client(first, second))[0].fish.weight_g == 950.0
    alike = day(landed(400.0, weight_g=900.0), date=MAY)
    assert bests(client(first, alike))[0].day.date == APRIL


def test_fish_without_any_size_is_nobodys_best() -> None:
    assert bests(client(day(landed()))) == ()
    assert best_of([day(landed())]) is None


def test_unnamed_fish_are_bests_only_where_he_was_the_only_client() -> None:
    unnamed = landed(500.0, own=False)
    assert bests(client(day(unnamed, alone=False))) == ()
    assert bests(client(day(unnamed)))[0].fish is unnamed


def test_first_of_a_kind_is_on_its_first_day() -> None:
    found = firsts(client(day(landed()), day(landed(), landed(species="SMB"), date=MAY)))
    assert {kind: first.date for kind, first in found.items()} == {"LMB": APRIL, "SMB": MAY}


def test_best_five_are_the_longest_of_the_counted_kinds_over_all_trips() -> None:
    days = (
        day(
            landed(300.0, weight_g=400.0),
            landed(310.0, weight_g=410.0),
            landed(900.0, species="NOP", counted=False),
        ),
        day(landed(320.0, weight_g=420.0), landed(330.0, weight_g=430.0, estimated=True), date=MAY),
    )
    assert best_together(client(*days)) is None
    top = best_together(client(*days, day(landed(340.0, weight_g=440.0), landed(100.0, weight_g=10.0))))
    assert top is not None
    assert (top.length_mm, top.weight_g, top.estimated) == (1600.0, 2100.0, 1)


def test_best_five_have_a_weight_only_if_all_were_weighed() -> None:
    top = best_together(
        client(day(*(landed(300.0 + step, weight_g=400.0) for step in range(4)), landed(500.0)))
    )
    assert top is not None
    assert math.isnan(top.weight_g)


def test_row_of_several_alike_counts_as_often_in_the_best_five() -> None:
    top = best_together(client(day(landed(400.0, count=3), landed(300.0, count=4))))
    assert top is not None
    assert top.length_mm == pytest.approx(3 * 400.0 + 2 * 300.0)


def test_came_on_counts_fish_by_technique_most_first() -> None:
    fish = [landed(count=2), landed(technique="Tube", count=3), landed(technique="", count=9), landed()]
    assert came_on(fish) == [("Stick worm", 3), ("Tube", 3)]
