"""Techniques in the order of their steadied rates."""

import pandas as pd
import pytest

from reporter.books.season.ranking import ranking_blocks, ranking_sentence
from reporter.compute.ranking import Ranking, rank
from reporter.compute.rates import rate_table
from reporter.compute.spread import Spread

# Computed with R spdep::EBest.
FISH = (42.0, 25.0, 9.0, 3.0, 0.0, 14.0)
HOURS = (60.0, 22.5, 6.0, 1.5, 2.0, 40.0)
STEADIED = (0.70052665, 1.0058258, 1.0488274, 0.91208724, 0.56167687, 0.40824427)
# Computed with R integrate for the same posteriors.
CHANCES = (0.006262629, 0.3165506, 0.4133685, 0.2375307, 0.02627655, 1.0988e-05)

ONE_BY_ONE = Spread(0.0, 100)


def ranked(fish: tuple[float, ...], hours: tuple[float, ...], trips: int = 1) -> Ranking:
    """Rank techniques A, B, ... whose fish and rod-hours are shared out over so many trips."""
    rows = [
        {
            "technique": chr(65 + place),
            "trip_no": trip + 1,
            "landed": caught / trips,
            "rod_hours": spent / trips,
        }
        for place, (caught, spent) in enumerate(zip(fish, hours, strict=True))
        for trip in range(trips)
    ]
    pairs = pd.DataFrame(rows).assign(in_rates=True, kept=0.0, released=0.0, unknown=0.0, missed=0.0)
    pairs = pairs.assign(boat_hours=1.0)
    names = sorted(set(pairs["technique"]))
    rates = rate_table(pairs, "technique", names, ONE_BY_ONE).assign(technique_no=range(1, len(names) + 1))
    return rank(rates, pairs, ONE_BY_ONE)


def test_steadied_rates_and_chances_are_those_of_the_published_example() -> None:
    table = ranked(FISH, HOURS).table.set_index("technique").loc[list("ABCDEF")]
    assert table["shrunken_rate"].tolist() == pytest.approx(STEADIED, rel=1e-6)
    assert table["probability_best"].tolist() == pytest.approx(CHANCES, abs=1e-6)


def test_best_steadied_rate_comes_first_though_a_small_sample_has_the_best_plain_one() -> None:
    table = ranked(FISH, HOURS).table
    assert table["technique"].tolist()[:2] == ["C", "B"]
    assert table["fish_per_rod_hour"].idxmax() == table.index[table["technique"] == "D"][0]


def test_nothing_under_five_trips_leads() -> None:
    made = ranked((200.0, 10.0, 10.0), (50.0, 50.0, 50.0), trips=4)
    assert (made.word, made.leader) == ("close", "")
    made = ranked((200.0, 10.0, 10.0), (50.0, 50.0, 50.0), trips=5)
    assert (made.word, made.leader) == ("clear", "A")
    assert ranking_sentence(made).startswith("As fished, A is the clear leader: a chance of 100 %")


def test_two_techniques_are_not_ranked() -> None:
    made = ranked((5.0, 9.0), (10.0, 10.0))
    assert not made.offered
    assert ranking_sentence(made).startswith("No ranking")
    assert len(ranking_blocks(made)) == 1


def test_techniques_that_differ_by_chance_alone_are_said_not_to() -> None:
    made = ranked((10.0, 11.0, 9.0), (20.0, 20.0, 20.0))
    assert not made.detectable
    assert ranking_sentence(made).startswith("No detectable difference")
    assert made.table["probability_best"].isna().all()
    assert made.table["shrunken_rate"].tolist() == pytest.approx([0.5] * 3)
