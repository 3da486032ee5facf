"""PSD: from how many fish, of which species, and what plain counting makes of random fish."""

import math
import random
from collections import Counter
from fractions import Fraction

import pytest

from tests.compute.fish_logs import LMB, NO_TALLY, SMB, fish_row, read, tallied
from tests.conftest import WriteLog


@pytest.mark.parametrize(
    ("extra", "unspecified", "answer", "why"),
    [
        # 20 measured of 20 + extra + unspecified; 70 % of 28 is 19.6, of 29 is 20.3.
        (8, 0, "no", ""),
        (9, 0, "no", "few_measured"),
        (9, 0, "yes", ""),
        (0, 8, "no", ""),
        (0, 9, "no", "few_measured"),
        (4, 5, "no", "few_measured"),
    ],
)
def test_psd_asks_for_seven_fish_of_ten_that_may_have_been_of_the_species(
    extra: int, unspecified: int, answer: str, why: str, write_log: WriteLog
) -> None:
    rows = [fish_row(1, LMB, 12 + n / 4) for n in range(20)]
    rows += [fish_row(1, "black bass", 15) for _ in range(unspecified)]
    effort = tallied(extra + unspecified)
    _, page = read(write_log, rows, [["All fish measured", answer]], Effort=effort)
    (row,) = page.structure.to_dict("records")
    assert (row["species"], row["caught"], row["may_be_more"]) == ("LMB", 20, extra + unspecified)
    assert row["why"] == why
    assert len(page.classes) == (5 if why == "" else 0)


def test_tallied_fish_are_held_against_species_that_landed_counts_alone(write_log: WriteLog) -> None:
    rows = [fish_row(1, LMB, 12 + n / 4) for n in range(20)] + [fish_row(1, "bluegill", 6) for _ in range(20)]
    _, page = read(write_log, rows, [["Species counted", "black bass"]], Effort=tallied(30))
    why = dict(zip(page.structure["species"], page.structure["why"], strict=True))
    more = dict(zip(page.structure["species"], page.structure["may_be_more"], strict=True))
    assert why == {"LMB": "few_measured", "BLG": ""}
    assert more == {"LMB": 30, "BLG": 0}


def test_psd_asks_for_20_fish_of_stock_length(write_log: WriteLog) -> None:
    rows = [fish_row(1 + n % 3, LMB, 9) for n in range(19)]
    for last, why in ((7.75, "few_stock"), (8, "")):
        _, page = read(write_log, [*rows, fish_row(1, LMB, last)], Effort=NO_TALLY)
        assert page.structure["why"].tolist() == [why]


def test_black_bass_without_a_kind_has_no_psd_and_no_class(write_log: WriteLog) -> None:
    _, page = read(write_log, [fish_row(1, "black bass", 15)] * 30, Effort=NO_TALLY)
    assert page.structure.empty
    assert set(page.sizes["class_no"]) == {-1}


def test_psd_on_a_single_trip_has_no_range(write_log: WriteLog) -> None:
    rows = [fish_row(1, LMB, 10 + n / 4) for n in range(20)]
    _, page = read(write_log, rows, Effort=NO_TALLY)
    psd = page.classes[page.classes["class_no"] == 2].iloc[0]
    # 10 to 14.75 in by quarters: 12 of 20 are 12 in or longer.
    assert psd["psd"] == pytest.approx(60)
    assert math.isnan(psd["psd_low"])
    assert math.isnan(psd["low"])


BOUNDS_IN = {LMB: (8, 12, 15, 20, 25), SMB: (7, 11, 14, 17, 20)}  # as published, in inches


@pytest.mark.parametrize("seed", range(5))
def test_sizes_of_random_fish_are_what_plain_counting_gives(seed: int, write_log: WriteLog) -> None:
    draw = random.Random(seed)  # noqa: S311 - no secrets
    fish: list[tuple[int, str, Fraction, bool, int]] = [
        (
            draw.randint(1, 3),
            draw.choice((LMB, SMB)),
            Fraction(draw.randint(20, 108), 4),
            draw.random() < 0.2,
            draw.choice((1, 1, 1, 2)),
        )
        for _ in range(160)
    ]
    fish = [one for one in fish if one[1] == LMB or one[2] < 28]
    rows = [
        fish_row(trip, name, float(length), None, "estimated" if guessed else None, count)
        for trip, name, length, guessed, count in fish
    ]
    _, page = read(write_log, rows, [["All fish measured", "yes"]], Effort=NO_TALLY)
    for name, bounds in BOUNDS_IN.items():
        mine = [
            (trip, length, count)
            for trip, kind, length, guessed, count in fish
            if kind == name and not guessed
        ]
        by_class: Counter[int] = Counter()
        by_bin: Counter[int] = Counter()
        for _, length, count in mine:
            by_class[sum(length >= bound for bound in bounds)] += count
            by_bin[math.floor(length)] += count
        stock = sum(count for number, count in by_class.items() if number)
        table = page.classes[page.classes["name"] == name].set_index("class_no")
        for number in range(1, 6):
            assert table.loc[number, "fish"] == by_class[number]
            assert table.loc[number, "share"] == pytest.approx(by_class[number] / stock)
            from_here = sum(by_class[higher] for higher in range(number, 6))
            assert table.loc[number, "fish_from"] == from_here
            if number > 1:
                assert table.loc[number, "psd"] == pytest.approx(100 * from_here / stock)
        assert table["share"].sum() == pytest.approx(1)
        shown = page.frequency[page.frequency["name"] == name]
        assert {b: n for b, n in zip(shown["bin"], shown["fish"], strict=True) if n} == by_bin
        bins = shown["bin"].tolist()
        assert bins == list(range(int(bins[0]), int(bins[-1]) + 1))
