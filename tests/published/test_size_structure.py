"""Length categories and PSD against published figures, each with its source beside it."""

import numpy as np
import pandas as pd
import pytest

from reporter.compute.fish.psd import size_structure
from reporter.compute.fish.sizes import fish_sizes
from reporter.compute.fish.species import species_table
from reporter.compute.shares import simultaneous
from reporter.schema.length_categories import LENGTH_CATEGORIES, LENGTH_NAMES
from reporter.schema.relative_weight import METRIC_LINES
from reporter.schema.units import System

# Second public sources, apart from the compilation that the tool has its numbers from.
OPEN_DATA_MM = {  # open data of a study of fish stomachs, in mm
    "SMB": (180, 280, 350, 430, 510),
    "WAE": (250, 380, 510, 630, 760),
}
OUTREACH_IN = {  # two agencies' pages for anglers: lengths in inches by category
    ("LMB", "stock"): 8,
    ("LMB", "quality"): 12,
    ("LMB", "preferred"): 15,
    ("LMB", "memorable"): 20,
    ("WAE", "stock"): 10,
    ("WAE", "trophy"): 30,
}


@pytest.mark.parametrize("code", OPEN_DATA_MM)
def test_metric_categories_are_those_of_a_second_source(code: str) -> None:
    assert tuple(10 * cm for cm in LENGTH_CATEGORIES[code].cm) == OPEN_DATA_MM[code]


@pytest.mark.parametrize(("code", "name"), OUTREACH_IN)
def test_categories_in_inches_are_those_of_a_second_source(code: str, name: str) -> None:
    assert LENGTH_CATEGORIES[code].inches[LENGTH_NAMES.index(name)] == OUTREACH_IN[code, name]


def test_white_crappie_is_of_stock_length_at_5_in_or_13_cm() -> None:
    # Willis, Murphy & Guy 1993, Rev. Fish. Sci.: 5 in or 130 mm, not 125 mm.
    categories = LENGTH_CATEGORIES["WHC"]
    assert (categories.inches[0], categories.cm[0]) == (5, 13)


def test_categories_ascend_and_lie_close_to_each_other_in_both_systems() -> None:
    for code, found in LENGTH_CATEGORIES.items():
        for bounds in (found.inches, found.cm):
            assert list(bounds) == sorted(set(bounds)), code
        # Both were rounded from one rule; 10 % apart would be a slip of the pen, as the 35 in of one species
        # in the open data is.
        assert np.allclose(np.multiply(found.inches, 2.54), found.cm, rtol=0.1), code


def test_species_without_published_categories_have_none() -> None:
    # Alabama, Guadalupe, redeye ... and black bass without a kind stand in no table of categories.
    assert not {"ALB", "GUB", "REB", "SHB", "SUB", "FLB", "BLB"} & LENGTH_CATEGORIES.keys()
    assert LENGTH_CATEGORIES.keys() == METRIC_LINES.keys()


# Brenden et al. 2008, table 2: 445 fish of stock length; share of each class and simultaneous limits, in
# whole per cent as printed there, and with more digits as recomputed with R 4.2.2 (qchisq(.95, 3)).
BRENDEN = [
    ("S-Q", 0.130, (9, 17), (8.543, 17.457)),
    ("Q-P", 0.491, (42, 56), (42.475, 55.725)),
    ("P-M", 0.253, (20, 31), (19.539, 31.061)),
    ("M-T", 0.123, (8, 17), (7.948, 16.652)),
    ("PSD", 0.867, (82, 91), (82.200, 91.200)),
    ("PSD-P", 0.376, (31, 44), (31.181, 44.019)),
]


@pytest.mark.parametrize(("name", "share", "printed", "recomputed"), BRENDEN)
def test_limits_of_brenden(
    name: str, share: float, printed: tuple[int, int], recomputed: tuple[float, float]
) -> None:
    low, high = simultaneous(share, 445, 4)
    assert (round(100 * float(low)), round(100 * float(high))) == printed, name
    assert (100 * low, 100 * high) == pytest.approx(recomputed, abs=6e-4), name


def test_simultaneous_limits_end_at_none_and_all_and_say_nothing_of_these() -> None:
    low, high = simultaneous([0.02, 0.98, 0.0, 1.0], [10.0] * 4, 5)
    assert low[0] == 0
    assert high[1] == 1
    assert np.isnan([low[2:], high[2:]]).all()


def caught(lengths: list[tuple[int, float]], system: System, code: str = "LMB") -> pd.DataFrame:
    """Rows of fish measured in inches or centimetres: (trip, length)."""
    scale = 25.4 if system == "us" else 10.0
    count = len(lengths)
    return pd.DataFrame(
        {
            "trip_no": [trip for trip, _ in lengths],
            "species": [code] * count,
            "fish": [1.0] * count,
            "length_mm": [length * scale for _, length in lengths],
            "length_system": [system] * count,
            "weight_g": [np.nan] * count,
            "measured": [""] * count,
            "fate": ["released"] * count,
            "counted": [True] * count,
        }
    )


def test_psd_of_the_clustered_example() -> None:
    # Six trips with 6, 3, 8, 5, 7, 4 largemouth bass of stock length, of them 4, 1, 7, 2, 6, 3 of quality
    # length (12 in). Computed with R survey::svyratio and Wilson's limits: .6969697 (.4565303, .8629649).
    lengths = [
        (trip, 12.0 if number < quality else 11.75)
        for trip, (stock, quality) in enumerate(zip((6, 3, 8, 5, 7, 4), (4, 1, 7, 2, 6, 3), strict=True), 1)
        for number in range(stock)
    ]
    trips = pd.DataFrame({"trip_no": range(1, 7), "fished": True})
    sizes = fish_sizes(caught(lengths, "us"), trips, "us")
    table, classes = size_structure(sizes, species_table(sizes), 0.0, all_measured=False)
    assert table[["stock_fish", "trips", "why"]].to_numpy().tolist() == [[33, 6, ""]]
    psd = classes[classes["class_no"] == 2].iloc[0]
    found = [psd[key] / 100 for key in ("psd", "psd_low", "psd_high")]
    assert found == pytest.approx([0.6969697, 0.4565303, 0.8629649], rel=1e-6)


@pytest.mark.parametrize(
    ("code", "system", "length", "class_no"),
    [
        ("LMB", "us", 12.0, 2),
        ("LMB", "us", 11.99, 1),
        ("LMB", "metric", 30.0, 2),
        ("LMB", "metric", 30.48, 2),
        ("LMB", "metric", 29.9, 1),
        ("LMB", "us", 7.99, 0),
        ("LMB", "us", 25.0, 5),
        ("LMB", "metric", 63.0, 5),  # 24.8 in, which is not of trophy length in inches
        ("LMB", "us", 24.8, 4),
        ("WHC", "us", 5.0, 1),  # 12.7 cm, which is not of stock length in centimetres
        ("WHC", "metric", 12.7, 0),
        ("WHC", "metric", 13.0, 1),
        ("WAE", "us", 29.99, 4),
    ],
)
def test_fish_lies_in_the_class_of_the_unit_in_which_it_was_measured(
    code: str, system: System, length: float, class_no: int
) -> None:
    trips = pd.DataFrame({"trip_no": [1], "fished": [True]})
    for other in ("us", "metric"):  # whatever the log's own units
        sizes = fish_sizes(caught([(1, length)], system, code), trips, other)
        assert sizes["class_no"].tolist() == [class_no]
